#include "core/places/trace/trace_forward.h"

#include <algorithm>
#include <map>
#include <set>

#include "core/storage/queries/names.h"
#include "core/storage/queries/trace.h"
#include "core/storage/queries/vessel_books.h"

namespace combwright {
namespace {

struct Spread {
    std::optional<double> part;
    How how = How::Weighed;
};

std::optional<Mass> massOfPart(const std::optional<Mass>& all, const std::optional<double>& part) {
    if (!all || !part) return std::nullopt;
    return Mass::roundedGrams(static_cast<double>(all->grams()) * *part);
}

/// How much of each lot is honey asked for, from the nearest to the farthest.
class Spreading {
  public:
    Spreading(const Read& file, const std::vector<TraceStart>& starts, Day on, TraceForward& traced)
        : m_traced(traced) {
        std::vector<Vessel> vessels;
        for (const TraceStart& each : starts) {
            vessels.push_back(each.vessel);
            // Asked for as a whole already, more of it cannot be in there.
            m_spread.try_emplace(each.vessel, Spread{each.part, each.how});
        }
        for (const LotPart& part : partsBeyond(file, vessels, on)) {
            m_parts[part.lot.number].push_back(part);
            m_in[part.lot.number] = 0;
        }
        for (const auto& [lot, parts] : m_parts)
            for (const LotPart& part : parts)
                if (part.from && m_parts.contains(part.from->number)) {
                    ++m_in[lot];
                    m_into[part.from->number].push_back(Id<Lot>{lot});
                }
        for (const auto& [lot, waits] : m_in)
            if (waits == 0) reach(file, Id<Lot>{lot});
        for (std::size_t i = 0; i < m_order.size(); ++i) passOn(file, m_order[i]);
        if (m_order.size() < m_parts.size()) sayOnce(m_traced.unknown, {TraceGap::InARing, {}});
    }

    const std::vector<Id<Lot>>& lots() const { return m_order; }
    Spread of(const Vessel& vessel) const {
        const auto found = m_spread.find(vessel);
        return found == m_spread.end() ? Spread{0.0} : found->second;
    }

  private:
    void reach(const Read& file, Id<Lot> lot) {
        m_order.push_back(lot);
        const Vessel vessel{std::nullopt, lot};
        if (m_spread.contains(vessel)) return;
        Spread spread{0.0};
        double sum = 0;
        std::set<Day> filledOn;
        for (const LotPart& part : m_parts[lot.number]) {
            const auto grams = static_cast<double>(part.mass.grams());
            sum += grams;
            filledOn.insert(part.on);
            const auto from = m_spread.find({part.bucket, part.from});
            if (from == m_spread.end()) continue;
            spread.how = weaker(spread.how, weaker(from->second.how, part.how));
            if (!from->second.part)
                spread.part.reset();
            else if (spread.part)
                *spread.part += grams * *from->second.part;
        }
        if (spread.part) *spread.part = sum > 0 ? *spread.part / sum : 0;
        m_spread[vessel] = spread;
        if (filledOn.size() > 1)
            sayOnce(m_traced.unknown, {TraceGap::ToppedUp, nameOf(file, vessel),
                                       static_cast<std::int64_t>(filledOn.size())});
    }

    void passOn(const Read& file, Id<Lot> lot) {
        for (const Id<Lot> into : m_into[lot.number])
            if (--m_in[into.number] == 0) reach(file, into);
    }

    TraceForward& m_traced;
    std::map<Vessel, Spread> m_spread;
    std::map<std::int64_t, std::vector<LotPart>> m_parts;
    std::map<std::int64_t, std::int64_t> m_in;  ///< parts of a lot that were not reached yet
    std::map<std::int64_t, std::vector<Id<Lot>>> m_into;  ///< lots a lot went into, once a part
    std::vector<Id<Lot>> m_order;
};

TracedVessel tracedVessel(const VesselBooks& books, const Vessel& vessel, const Spread& spread,
                          Day on, std::vector<TraceUnknown>& unknown) {
    const VesselLedger ledger = books.ledger(vessel, on);
    TracedVessel traced;
    traced.vessel = vessel;
    traced.name = books.heads().name(vessel);
    traced.on = ledger.since;
    traced.part = spread.part;
    traced.in = ledger.in;
    traced.ofIt = massOfPart(ledger.in, spread.part);
    traced.how = weaker(spread.how, ledger.inHow);
    traced.left = ledger.left;
    if (!ledger.in) sayOnce(unknown, {TraceGap::MassUnknown, traced.name});
    return traced;
}

TracedOut tracedOut(const GoingOut& each, const std::string& kind) {
    TracedOut out;
    out.on = each.on;
    out.how = each.how;
    out.kind = kind;
    if (each.count) out.count = each.count->value();
    out.mass = each.mass;
    out.place = each.place;
    out.buyer = each.buyer;
    return out;
}

/// Of a fair's line: what was sold, broke and was given; all of it in the box until somebody
/// counts.
std::vector<TracedOut> tracedFair(const PackedLine& packed, const std::string& kind) {
    const FairLine& line = packed.line;
    std::vector<TracedOut> all;
    const auto add = [&](OutHow how, std::int64_t count) {
        if (count <= 0) return;
        TracedOut out;
        out.on = packed.fair.on;
        out.how = how;
        out.kind = kind;
        out.count = count;
        out.place = packed.fair.place;
        out.fair = packed.fair.name.text();
        out.inTheBox = !line.home;
        all.push_back(std::move(out));
    };
    const std::int64_t broken = line.broken ? line.broken->value() : 0;
    const std::int64_t given = line.given ? line.given->value() : 0;
    add(OutHow::Sold, line.packed.value() - (line.home ? line.home->value() : 0) - broken - given);
    add(OutHow::Broken, broken);
    add(OutHow::Given, given);
    return all;
}

/// Jars less; those that came back are there again.
std::int64_t taken(const TracedOut& out) {
    return out.how == OutHow::CameBack ? -out.count.value_or(0) : out.count.value_or(0);
}

std::string kindCalled(const VesselBooks& books, const std::optional<Id<GoodsKind>>& id) {
    const GoodsKind* kind = id ? books.kind(*id) : nullptr;
    return kind ? kind->name.text() : std::string();
}

/// What the books say is on the shelf: counted last, else filled, less what went out since.
std::vector<TracedJars> jarsOf(const VesselBooks& books, const TracedFilling& filling,
                               const std::vector<GoodsCount>& counts) {
    std::vector<TracedJars> all;
    for (const BottledJars& each : books.jars(filling.bottling.id)) {
        TracedJars jars;
        jars.kind = kindCalled(books, each.kind);
        jars.filled = each.count.value();
        const GoodsCount* counted = nullptr;
        for (const GoodsCount& count : counts)
            if (count.kind == each.kind && (!counted || count.on >= counted->on)) counted = &count;
        jars.left = counted ? counted->count.value() : jars.filled;
        for (const TracedOut& out : filling.out) {
            if (out.kind != jars.kind) continue;
            jars.gone += taken(out);
            if (!counted || out.on > counted->on) jars.left -= taken(out);
        }
        all.push_back(std::move(jars));
    }
    return all;
}

/// As it was known on a day: one that was answered later waited for its answer still.
std::optional<Complaint> knownOn(Complaint complaint, Day on) {
    if (complaint.on > on) return std::nullopt;
    if (complaint.closed && *complaint.closed > on) {
        complaint.closed.reset();
        complaint.became.clear();
    }
    return complaint;
}

void takeFillings(const Read& file, const VesselBooks& books, const Spreading& spreading, Day on,
                  TraceForward& traced) {
    std::map<std::int64_t, std::size_t> at;
    std::vector<Id<Bottling>> ids;
    for (const Bottling& bottling : books.fillings()) {
        if (bottling.on > on) continue;
        TracedFilling filling;
        const Vessel vessel = vesselOf(bottling);
        filling.from = books.heads().name(vessel);
        filling.part = spreading.of(vessel).part;
        filling.honey = books.inJars(bottling.id);
        filling.ofIt = massOfPart(filling.honey, filling.part);
        at[bottling.id.number] = traced.fillings.size();
        ids.push_back(bottling.id);
        filling.bottling = bottling;
        traced.fillings.push_back(std::move(filling));
    }
    const auto of = [&](const std::optional<Id<Bottling>>& filling) -> TracedFilling& {
        return traced.fillings[at[filling->number]];
    };
    for (Complaint& each : file.whereAny<Complaint>("bottling", ids))
        if (auto known = knownOn(std::move(each), on)) {
            auto& complaints = of(known->bottling).complaints;
            complaints.push_back(*std::move(known));
        }
    for (const GoingOut& each : goneOf(file, ids, on))
        of(each.bottling).out.push_back(tracedOut(each, kindCalled(books, each.kind)));
    for (const PackedLine& each : packedOf(file, ids, on))
        for (TracedOut& out : tracedFair(each, kindCalled(books, each.line.kind)))
            of(each.line.bottling).out.push_back(std::move(out));
    std::map<std::int64_t, std::vector<GoodsCount>> counts;
    for (GoodsCount& each : file.whereAny<GoodsCount>("bottling", ids))
        if (each.on <= on) counts[each.bottling->number].push_back(std::move(each));
    for (TracedFilling& filling : traced.fillings) {
        std::stable_sort(filling.out.begin(), filling.out.end(),
                         [](const TracedOut& a, const TracedOut& b) { return a.on < b.on; });
        filling.jars = jarsOf(books, filling, counts[filling.bottling.id.number]);
        std::int64_t toNobody = 0;
        for (const TracedOut& out : filling.out)
            if (wantsBuyer(out)) toNobody += out.count.value_or(0);
        if (toNobody > 0)
            sayOnce(traced.unknown, {TraceGap::NoBuyer, filling.bottling.code.text(), toNobody});
    }
}

/// Jars that may be of these fillings, and complaints of nobody knows which jar.
void takeUncoded(const Read& file, const VesselBooks& books, Day on, TraceForward& traced) {
    if (traced.fillings.empty()) return;
    Day first = on;
    std::vector<Id<GoodsKind>> kinds;
    for (const TracedFilling& filling : traced.fillings) {
        first = std::min(first, filling.bottling.on);
        for (const BottledJars& each : books.jars(filling.bottling.id))
            if (std::find(kinds.begin(), kinds.end(), each.kind) == kinds.end())
                kinds.push_back(each.kind);
    }
    std::map<std::string, std::int64_t> gone;
    for (const GoingOut& each : goneOfNoFilling(file, kinds, first, on)) {
        const TracedOut out = tracedOut(each, kindCalled(books, each.kind));
        gone[out.kind] += taken(out);
    }
    for (const PackedLine& each : packedOfNoFilling(file, kinds, first, on))
        for (const TracedOut& out : tracedFair(each, kindCalled(books, each.line.kind)))
            gone[out.kind] += taken(out);
    for (const auto& [kind, count] : gone)
        if (count > 0) sayOnce(traced.unknown, {TraceGap::NoFilling, kind, count});
    const auto complaints = static_cast<std::int64_t>(
        file.where<Complaint>(
                {isUnknown("bottling"), isFrom("on_day", first), isUpTo("on_day", on)})
            .size());
    if (complaints > 0) sayOnce(traced.unknown, {TraceGap::NoCode, {}, complaints});
}

}  // namespace

TraceForward traceForward(const Read& file, const std::vector<TraceStart>& starts, Day on) {
    TraceForward traced;
    const Spreading spreading(file, starts, on, traced);
    std::vector<Vessel> vessels;
    for (const TraceStart& each : starts)
        if (std::find(vessels.begin(), vessels.end(), each.vessel) == vessels.end())
            vessels.push_back(each.vessel);
    const std::size_t whereItStarts = vessels.size();
    for (const Id<Lot> lot : spreading.lots()) {
        const Vessel vessel{std::nullopt, lot};
        if (std::find(vessels.begin(), vessels.end(), vessel) == vessels.end())
            vessels.push_back(vessel);
    }
    const VesselBooks books(file, vessels);
    for (std::size_t i = 0; i < vessels.size(); ++i)
        (i < whereItStarts ? traced.starts : traced.lots)
            .push_back(
                tracedVessel(books, vessels[i], spreading.of(vessels[i]), on, traced.unknown));
    takeFillings(file, books, spreading, on, traced);
    for (const GoingOut& each : books.bulk()) {
        if (each.on > on) continue;
        const Vessel vessel = vesselOf(each);
        TracedBulk bulk{books.heads().name(vessel), spreading.of(vessel).part, tracedOut(each, {})};
        if (wantsBuyer(bulk.out)) sayOnce(traced.unknown, {TraceGap::BulkNoBuyer, bulk.from});
        traced.bulk.push_back(std::move(bulk));
    }
    std::stable_sort(traced.bulk.begin(), traced.bulk.end(),
                     [](const TracedBulk& a, const TracedBulk& b) { return a.out.on < b.out.on; });
    takeUncoded(file, books, on, traced);
    return traced;
}

bool wantsBuyer(const TracedOut& out) {
    return out.buyer.empty() && !out.inTheBox &&
           (out.how == OutHow::Sold || out.how == OutHow::Given);
}

std::vector<TracedOut> outOfNoFilling(const Read& file, Id<GoodsKind> kind, Day from, Day until) {
    const std::string called = nameOf(file, GoodsKind::table, kind.number);
    std::vector<TracedOut> all;
    for (const GoingOut& each : goneOfNoFilling(file, {kind}, from, until))
        all.push_back(tracedOut(each, called));
    for (const PackedLine& each : packedOfNoFilling(file, {kind}, from, until))
        for (TracedOut& out : tracedFair(each, called)) all.push_back(std::move(out));
    std::stable_sort(all.begin(), all.end(),
                     [](const TracedOut& a, const TracedOut& b) { return a.on < b.on; });
    return all;
}

}  // namespace combwright
