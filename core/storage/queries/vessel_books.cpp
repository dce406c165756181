#include "core/storage/queries/vessel_books.h"

#include <algorithm>

namespace combwright {
namespace {

struct VesselIds {
    std::vector<Id<Bucket>> buckets;
    std::vector<Id<Lot>> lots;
};

VesselIds idsOf(const std::vector<Vessel>& vessels) {
    VesselIds ids;
    for (const Vessel& each : vessels) {
        if (each.bucket) ids.buckets.push_back(*each.bucket);
        if (each.lot) ids.lots.push_back(*each.lot);
    }
    return ids;
}

/// Records of any of the vessels, in the order they were written down.
template <class Record>
std::vector<Record> ofVessels(const Read& file, const VesselIds& ids) {
    auto records = file.whereAny<Record>("bucket", ids.buckets);
    const auto ofBuckets = static_cast<std::ptrdiff_t>(records.size());
    for (Record& each : file.whereAny<Record>("lot", ids.lots)) records.push_back(std::move(each));
    std::inplace_merge(records.begin(), records.begin() + ofBuckets, records.end(),
                       [](const Record& a, const Record& b) { return a.id < b.id; });
    return records;
}

template <class Record>
std::map<Vessel, std::vector<Record>> byVessel(std::vector<Record> records) {
    std::map<Vessel, std::vector<Record>> sorted;
    for (Record& each : records) sorted[vesselOf(each)].push_back(std::move(each));
    return sorted;
}

template <class Key, class Kept>
const std::vector<Kept>& keptUnder(const std::map<Key, std::vector<Kept>>& map, const Key& key) {
    static const std::vector<Kept> none;
    const auto found = map.find(key);
    return found == map.end() ? none : found->second;
}

template <class Record>
const Record* among(const std::map<std::int64_t, Record>& records,
                    const std::optional<Id<Record>>& id) {
    const auto found = id ? records.find(id->number) : records.end();
    return found == records.end() ? nullptr : &found->second;
}

void bookEntry(VesselLedger& ledger, VesselEntry& entry, Mass lostBeside) {
    switch (entry.event) {
        case VesselEvent::Filled:
            ledger.since = entry.on;
            ledger.in = ledger.left = entry.change;
            ledger.inHow = ledger.leftHow = entry.how;
            break;
        case VesselEvent::Worked:
        case VesselEvent::Weighed:
            if (entry.left) {
                const Mass gone = ledger.left ? *ledger.left - *entry.left : Mass{};
                if (ledger.left) entry.change = -gone;
                (entry.event == VesselEvent::Worked ? ledger.offByWork : ledger.missing) += gone;
                ledger.left = entry.left;
                ledger.leftHow = entry.how;
            }
            break;
        case VesselEvent::IntoLot:
        case VesselEvent::IntoJars:
        case VesselEvent::InBulk: {
            if (!entry.change) {
                ledger.left.reset();
                ledger.leftHow = How::Unknown;
                break;
            }
            if (ledger.left) {
                *ledger.left += *entry.change;
                ledger.leftHow = weaker(ledger.leftHow, entry.how);
            }
            const Mass out = -*entry.change;
            if (entry.event == VesselEvent::IntoLot) ledger.intoLots += out;
            if (entry.event == VesselEvent::InBulk) ledger.inBulk += out;
            if (entry.event == VesselEvent::IntoJars) {
                ledger.lostInFilling += lostBeside;
                ledger.intoJars += out - lostBeside;
            }
            break;
        }
    }
    const bool isEmpty =
        ledger.left && *ledger.left <= Mass{} && entry.event != VesselEvent::Filled;
    if (!isEmpty)
        ledger.empty.reset();
    else if (!ledger.empty)
        ledger.empty = entry.on;
    entry.left = ledger.left;
}

}  // namespace

VesselHeads::VesselHeads(const Read& file, const std::vector<Vessel>& vessels) {
    const VesselIds ids = idsOf(vessels);
    m_buckets = file.findAny(ids.buckets);
    m_lots = file.findAny(ids.lots);
    std::vector<Id<Extraction>> runs;
    for (const auto& [number, bucket] : m_buckets)
        if (std::find(runs.begin(), runs.end(), bucket.extraction) == runs.end())
            runs.push_back(bucket.extraction);
    m_runs = file.findAny(runs);
}

const Bucket* VesselHeads::bucket(const Vessel& vessel) const {
    return among(m_buckets, vessel.bucket);
}

const Lot* VesselHeads::lot(const Vessel& vessel) const { return among(m_lots, vessel.lot); }

const Extraction* VesselHeads::run(const Vessel& vessel) const {
    const Bucket* of = bucket(vessel);
    return of ? among(m_runs, std::optional(of->extraction)) : nullptr;
}

std::string VesselHeads::name(const Vessel& vessel) const {
    if (const Lot* known = lot(vessel)) return known->name.text();
    const Bucket* known = bucket(vessel);
    if (!known) return "#" + std::to_string((vessel.lot ? vessel.lot->number : 0));
    const Extraction* of = run(vessel);
    return of ? known->mark.text() + " of " + of->name.text() : known->mark.text();
}

VesselBooks::VesselBooks(const Read& file, const std::vector<Vessel>& vessels)
    : m_heads(file, vessels) {
    const VesselIds ids = idsOf(vessels);
    for (LotPart& each : file.whereAny<LotPart>("lot", ids.lots))
        m_poured[each.lot.number].push_back(std::move(each));
    for (LotPart& each : file.whereAny<LotPart>("bucket", ids.buckets))
        m_taken[{each.bucket, std::nullopt}].push_back(std::move(each));
    for (LotPart& each : file.whereAny<LotPart>("from_lot", ids.lots))
        m_taken[{std::nullopt, each.from}].push_back(std::move(each));
    m_steps = byVessel(ofVessels<HoneyStep>(file, ids));
    m_left = byVessel(ofVessels<HoneyLeft>(file, ids));
    for (const WaxStep& each : file.whereAny<WaxStep>("bucket", ids.buckets)) {
        const auto [at, isFirst] = m_dripped.try_emplace(each.bucket->number, each.on);
        if (!isFirst) at->second = std::min(at->second, each.on);
    }
    m_fillings = ofVessels<Bottling>(file, ids);
    std::vector<Id<Bottling>> filled;
    for (std::size_t i = 0; i < m_fillings.size(); ++i) {
        m_filledFrom[vesselOf(m_fillings[i])].push_back(i);
        filled.push_back(m_fillings[i].id);
    }
    m_bulk = ofVessels<GoingOut>(file, ids);
    for (std::size_t i = 0; i < m_bulk.size(); ++i) m_bulkFrom[vesselOf(m_bulk[i])].push_back(i);
    std::vector<Id<GoodsKind>> kinds;
    for (BottledJars& each : file.whereAny<BottledJars>("bottling", filled)) {
        if (std::find(kinds.begin(), kinds.end(), each.kind) == kinds.end())
            kinds.push_back(each.kind);
        m_jars[each.bottling.number].push_back(std::move(each));
    }
    m_kinds = file.findAny(kinds);
}

const std::vector<BottledJars>& VesselBooks::jars(Id<Bottling> filling) const {
    return keptUnder(m_jars, filling.number);
}

const GoodsKind* VesselBooks::kind(Id<GoodsKind> id) const {
    return among(m_kinds, std::optional(id));
}

std::optional<Mass> VesselBooks::inJars(Id<Bottling> filling) const {
    Mass sum;
    for (const BottledJars& each : jars(filling)) {
        const GoodsKind* of = kind(each.kind);
        if (!of || !of->net) return std::nullopt;
        sum += *of->net * each.count.value();
    }
    return sum;
}

/// What came into a vessel up to a day, and since when it was there.
VesselEntry VesselBooks::filled(const Vessel& vessel, Day until) const {
    VesselEntry entry;
    if (vessel.bucket) {
        const Bucket* bucket = m_heads.bucket(vessel);
        if (!bucket) return entry;
        if (const Extraction* run = m_heads.run(vessel)) entry.on = run->on;
        entry.change = massSaid(bucket->net);
        if (entry.change) entry.how = bucket->net->how;
        return entry;
    }
    const Lot* lot = m_heads.lot(vessel);
    if (!lot) return entry;
    entry.on = lot->on;
    entry.change = massSaid(lot->net);
    if (entry.change) {
        entry.how = lot->net->how;
        return entry;
    }
    for (const LotPart& each : keptUnder(m_poured, vessel.lot->number)) {
        // What was poured on top later was not in it then.
        if (each.on > std::max(until, lot->on)) continue;
        entry.how = entry.change ? weaker(entry.how, each.how) : each.how;
        entry.change = entry.change.value_or(Mass{}) + each.mass;
    }
    return entry;
}

/// Everything that took honey out of a vessel or said what was in it, in the order it counts.
std::vector<VesselEntry> VesselBooks::happened(const Vessel& vessel, Day until) const {
    std::vector<VesselEntry> entries{filled(vessel, until)};
    for (const HoneyStep& each : keptUnder(m_steps, vessel)) {
        VesselEntry entry{VesselEvent::Worked, each.on};
        entry.left = massSaid(each.after);
        if (entry.left) entry.how = each.after->how;
        entry.step = each.id;
        entries.push_back(entry);
    }
    for (const LotPart& each : keptUnder(m_taken, vessel)) {
        VesselEntry entry{VesselEvent::IntoLot, each.on, -each.mass, each.how};
        entry.intoLot = each.lot;
        entries.push_back(entry);
    }
    for (const std::size_t i : keptUnder(m_filledFrom, vessel)) {
        const Drawn drawn = drawnFor(m_fillings[i], inJars(m_fillings[i].id));
        VesselEntry entry{VesselEvent::IntoJars, m_fillings[i].on, std::nullopt, drawn.how};
        if (drawn.mass) entry.change = -*drawn.mass;
        entry.bottling = m_fillings[i].id;
        entry.lostBeside = drawn.lost;
        entries.push_back(entry);
    }
    for (const std::size_t i : keptUnder(m_bulkFrom, vessel)) {
        const GoingOut& each = m_bulk[i];
        VesselEntry entry{VesselEvent::InBulk, each.on};
        if (const auto mass = massSaid(each.mass)) {
            entry.change = each.how == OutHow::CameBack ? *mass : -*mass;
            entry.how = each.mass->how;
        }
        entry.out = each.id;
        entries.push_back(entry);
    }
    for (const HoneyLeft& each : keptUnder(m_left, vessel)) {
        VesselEntry entry{VesselEvent::Weighed, each.on};
        entry.left = massSaid(each.left);
        if (entry.left) entry.how = each.left->how;
        entries.push_back(entry);
    }
    // Honey that dripped out of cappings came later than the run; where something was drawn before
    // that, there was honey in it already.
    if (const auto dripped = m_dripped.find(vessel.bucket ? vessel.bucket->number : 0);
        dripped != m_dripped.end()) {
        Day first = dripped->second;
        for (std::size_t i = 1; i < entries.size(); ++i) first = std::min(first, entries[i].on);
        entries.front().on = std::max(entries.front().on, first);
    }
    std::stable_sort(entries.begin(), entries.end(),
                     [](const VesselEntry& a, const VesselEntry& b) {
                         return a.on != b.on ? a.on < b.on : a.event < b.event;
                     });
    return entries;
}

VesselLedger VesselBooks::ledger(const Vessel& vessel, Day until) const {
    VesselLedger ledger;
    ledger.vessel = vessel;
    for (VesselEntry& entry : happened(vessel, until)) {
        if (entry.event != VesselEvent::Filled && entry.on > until) continue;
        bookEntry(ledger, entry, entry.lostBeside);
        ledger.entries.push_back(entry);
    }
    return ledger;
}

}  // namespace combwright
