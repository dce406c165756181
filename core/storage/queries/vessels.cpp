#include "core/storage/queries/vessels.h"

#include <algorithm>

namespace combwright {
namespace {

template <class Record>
std::vector<Record> ofVessel(const Read& file, const Vessel& vessel) {
    return vessel.bucket ? file.where<Record>({is("bucket", *vessel.bucket)})
                         : file.where<Record>({is("lot", *vessel.lot)});
}

std::vector<LotPart> partsTaken(const Read& file, const Vessel& vessel) {
    return vessel.bucket ? file.where<LotPart>({is("bucket", *vessel.bucket)})
                         : file.where<LotPart>({is("from_lot", *vessel.lot)});
}

std::optional<Mass> massOf(const std::optional<Known<Mass>>& reading) {
    const auto middle = reading ? reading->middle() : std::nullopt;
    return middle ? std::optional(Mass::roundedGrams(*middle)) : std::nullopt;
}

/// What came into a vessel, and when.
VesselEntry filled(const Read& file, const Vessel& vessel) {
    VesselEntry entry;
    if (vessel.bucket) {
        const auto bucket = file.find(*vessel.bucket);
        if (!bucket) return entry;
        if (const auto run = file.find(bucket->extraction)) entry.on = run->on;
        entry.change = massOf(bucket->net);
        if (entry.change) entry.how = bucket->net->how;
        return entry;
    }
    const auto lot = file.find(*vessel.lot);
    if (!lot) return entry;
    entry.on = lot->on;
    entry.change = massOf(lot->net);
    if (entry.change) {
        entry.how = lot->net->how;
        return entry;
    }
    const auto parts = file.where<LotPart>({is("lot", *vessel.lot)});
    if (parts.empty()) return entry;
    Mass sum;
    entry.how = How::Weighed;
    for (const LotPart& each : parts) {
        sum += each.mass;
        entry.how = weaker(entry.how, each.how);
    }
    entry.change = sum;
    return entry;
}

/// Everything that took honey out of a vessel or said what was in it, in the order it counts.
std::vector<VesselEntry> happened(const Read& file, const Vessel& vessel) {
    std::vector<VesselEntry> entries{filled(file, vessel)};
    for (const HoneyStep& each : ofVessel<HoneyStep>(file, vessel)) {
        VesselEntry entry{VesselEvent::Worked, each.on};
        entry.left = massOf(each.after);
        if (entry.left) entry.how = each.after->how;
        entry.step = each.id;
        entries.push_back(entry);
    }
    for (const LotPart& each : partsTaken(file, vessel)) {
        VesselEntry entry{VesselEvent::IntoLot, each.on, -each.mass, each.how};
        entry.intoLot = each.lot;
        entries.push_back(entry);
    }
    for (const Bottling& each : ofVessel<Bottling>(file, vessel)) {
        const Drawn drawn = drawnFor(file, each);
        VesselEntry entry{VesselEvent::IntoJars, each.on, std::nullopt, drawn.how};
        if (drawn.mass) entry.change = -*drawn.mass;
        entry.bottling = each.id;
        entries.push_back(entry);
    }
    for (const GoingOut& each : ofVessel<GoingOut>(file, vessel)) {
        VesselEntry entry{VesselEvent::InBulk, each.on};
        if (const auto mass = massOf(each.mass)) {
            entry.change = each.how == OutHow::CameBack ? *mass : -*mass;
            entry.how = each.mass->how;
        }
        entry.out = each.id;
        entries.push_back(entry);
    }
    for (const HoneyLeft& each : ofVessel<HoneyLeft>(file, vessel)) {
        VesselEntry entry{VesselEvent::Weighed, each.on};
        entry.left = massOf(each.left);
        if (entry.left) entry.how = each.left->how;
        entries.push_back(entry);
    }
    std::stable_sort(entries.begin(), entries.end(),
                     [](const VesselEntry& a, const VesselEntry& b) {
                         return a.on != b.on ? a.on < b.on : a.event < b.event;
                     });
    return entries;
}

void book(VesselLedger& ledger, VesselEntry& entry, Mass lostBeside) {
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

std::string nameOf(const Read& file, const Vessel& vessel) {
    if (const auto lot = file.find(vessel.lot)) return lot->name.text();
    const auto bucket = file.find(vessel.bucket);
    if (!bucket) return "#" + std::to_string((vessel.lot ? vessel.lot->number : 0));
    const auto run = file.find(bucket->extraction);
    return run ? bucket->mark.text() + " of " + run->name.text() : bucket->mark.text();
}

std::vector<Vessel> allVessels(const Read& file) {
    std::vector<Vessel> vessels;
    for (const Bucket& each : file.all<Bucket>()) vessels.push_back({each.id, std::nullopt});
    for (const Lot& each : file.all<Lot>()) vessels.push_back({std::nullopt, each.id});
    return vessels;
}

VesselLedger vesselLedger(const Read& file, const Vessel& vessel, Day until) {
    VesselLedger ledger;
    ledger.vessel = vessel;
    for (VesselEntry& entry : happened(file, vessel)) {
        if (entry.event != VesselEvent::Filled && entry.on > until) continue;
        Mass lostBeside;
        if (const auto bottling = file.find(entry.bottling))
            lostBeside = drawnFor(file, *bottling).lost;
        book(ledger, entry, lostBeside);
        ledger.entries.push_back(entry);
    }
    return ledger;
}

std::optional<Mass> honeyInJars(const Read& file, Id<Bottling> bottling) {
    Mass sum;
    for (const BottledJars& each : file.where<BottledJars>({is("bottling", bottling)})) {
        const auto kind = file.find(each.kind);
        if (!kind || !kind->net) return std::nullopt;
        sum += *kind->net * each.count.value();
    }
    return sum;
}

Drawn drawnFor(const Read& file, const Bottling& bottling) {
    const auto inJars = honeyInJars(file, bottling.id);
    Drawn drawn;
    drawn.mass = massOf(bottling.drawn);
    if (drawn.mass) {
        drawn.how = bottling.drawn->how;
        if (inJars) drawn.lost = *drawn.mass - *inJars;
        return drawn;
    }
    if (!inJars) return drawn;
    drawn.how = How::Counted;
    const auto lost = massOf(bottling.lost);
    if (lost) {
        drawn.lost = *lost;
        drawn.how = weaker(drawn.how, bottling.lost->how);
    }
    drawn.mass = *inJars + drawn.lost;
    return drawn;
}

std::vector<VesselPart> partsOf(const Read& file, Id<Lot> lot) {
    std::vector<VesselPart> parts;
    for (const LotPart& each : file.where<LotPart>({is("lot", lot)})) {
        const Vessel from{each.bucket, each.from};
        const auto known = std::find_if(parts.begin(), parts.end(),
                                        [&](const VesselPart& part) { return part.from == from; });
        if (known == parts.end()) {
            parts.push_back({from, each.mass, each.how});
            continue;
        }
        known->mass += each.mass;
        known->how = weaker(known->how, each.how);
    }
    return parts;
}

std::vector<Id<Lot>> lotsFrom(const Read& file, const Vessel& vessel) {
    std::vector<Id<Lot>> lots;
    for (const LotPart& each : partsTaken(file, vessel))
        if (std::find(lots.begin(), lots.end(), each.lot) == lots.end()) lots.push_back(each.lot);
    return lots;
}

}  // namespace combwright
