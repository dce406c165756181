#include "core/places/trace_forward.h"

#include <algorithm>
#include <map>
#include <set>

#include "core/storage/queries/trace.h"

namespace combwright {
namespace {

const Day lastDay = *parseDay("9999-12-31");

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
    Spreading(const Read& file, const std::vector<TraceStart>& starts, TraceForward& traced)
        : m_traced(traced) {
        std::vector<Vessel> vessels;
        for (const TraceStart& each : starts) {
            vessels.push_back(each.vessel);
            // Asked for as a whole already, more of it cannot be in there.
            m_spread.try_emplace(each.vessel, Spread{each.part, each.how});
        }
        for (const LotPart& part : partsBeyond(file, vessels)) {
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

TracedVessel tracedVessel(const Read& file, const Vessel& vessel, const Spread& spread,
                          std::vector<TraceUnknown>& unknown) {
    const VesselLedger ledger = vesselLedger(file, vessel, lastDay);
    TracedVessel traced;
    traced.vessel = vessel;
    traced.name = nameOf(file, vessel);
    traced.on = ledger.since;
    traced.part = spread.part;
    traced.in = ledger.in;
    traced.ofIt = massOfPart(ledger.in, spread.part);
    traced.how = weaker(spread.how, ledger.inHow);
    traced.left = ledger.left;
    if (!ledger.in) sayOnce(unknown, {TraceGap::MassUnknown, traced.name});
    return traced;
}

TracedOut tracedOut(const Read& file, const GoingOut& each) {
    TracedOut out;
    out.on = each.on;
    out.how = each.how;
    if (const auto kind = file.find(each.kind)) out.kind = kind->name.text();
    if (each.count) out.count = each.count->value();
    out.mass = each.mass;
    out.place = each.place;
    out.buyer = each.buyer;
    return out;
}

/// Of a fair's line: what was sold, broke and was given; all of it in the box until somebody
/// counts.
std::vector<TracedOut> tracedFair(const Read& file, const FairLine& line) {
    const auto fair = file.find(line.fair);
    const auto kind = file.find(line.kind);
    if (!fair || !kind) return {};
    std::vector<TracedOut> all;
    const auto add = [&](OutHow how, std::int64_t count) {
        if (count <= 0) return;
        TracedOut out;
        out.on = fair->on;
        out.how = how;
        out.kind = kind->name.text();
        out.count = count;
        out.place = fair->place;
        out.fair = fair->name.text();
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

/// What the books say is on the shelf: counted last, else filled, less what went out since.
std::vector<TracedJars> jarsOf(const Read& file, const TracedFilling& filling) {
    std::vector<TracedJars> all;
    for (const BottledJars& each : file.where<BottledJars>({is("bottling", filling.bottling.id)})) {
        TracedJars jars;
        if (const auto kind = file.find(each.kind)) jars.kind = kind->name.text();
        jars.filled = each.count.value();
        std::optional<GoodsCount> counted;
        for (const GoodsCount& count : file.where<GoodsCount>(
                 {is("bottling", filling.bottling.id), is("goods_kind", each.kind)}))
            if (!counted || count.on >= counted->on) counted = count;
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

/// Somebody has it: who?
bool wantsBuyer(const TracedOut& out) {
    return out.buyer.empty() && !out.inTheBox &&
           (out.how == OutHow::Sold || out.how == OutHow::Given);
}

void takeFillings(const Read& file, const std::vector<Vessel>& vessels, const Spreading& spreading,
                  TraceForward& traced) {
    std::map<std::int64_t, std::size_t> at;
    std::vector<Id<Bottling>> ids;
    for (Bottling& bottling : fillingsFrom(file, vessels)) {
        TracedFilling filling;
        const Vessel vessel = vesselOf(bottling);
        filling.from = nameOf(file, vessel);
        filling.part = spreading.of(vessel).part;
        filling.honey = honeyInJars(file, bottling.id);
        filling.ofIt = massOfPart(filling.honey, filling.part);
        filling.complaints = file.where<Complaint>({is("bottling", bottling.id)});
        at[bottling.id.number] = traced.fillings.size();
        ids.push_back(bottling.id);
        filling.bottling = std::move(bottling);
        traced.fillings.push_back(std::move(filling));
    }
    for (const GoingOut& each : goneOf(file, ids))
        traced.fillings[at[each.bottling->number]].out.push_back(tracedOut(file, each));
    for (const FairLine& each : atFairsOf(file, ids))
        for (TracedOut& out : tracedFair(file, each))
            traced.fillings[at[each.bottling->number]].out.push_back(std::move(out));
    for (TracedFilling& filling : traced.fillings) {
        std::stable_sort(filling.out.begin(), filling.out.end(),
                         [](const TracedOut& a, const TracedOut& b) { return a.on < b.on; });
        filling.jars = jarsOf(file, filling);
        std::int64_t toNobody = 0;
        for (const TracedOut& out : filling.out)
            if (wantsBuyer(out)) toNobody += out.count.value_or(0);
        if (toNobody > 0)
            sayOnce(traced.unknown, {TraceGap::NoBuyer, filling.bottling.code.text(), toNobody});
    }
}

/// Jars that may be of these fillings, and complaints of nobody knows which jar.
void takeUncoded(const Read& file, TraceForward& traced) {
    if (traced.fillings.empty()) return;
    Day first = lastDay;
    std::vector<Id<GoodsKind>> kinds;
    for (const TracedFilling& filling : traced.fillings) {
        first = std::min(first, filling.bottling.on);
        for (const BottledJars& each :
             file.where<BottledJars>({is("bottling", filling.bottling.id)}))
            if (std::find(kinds.begin(), kinds.end(), each.kind) == kinds.end())
                kinds.push_back(each.kind);
    }
    std::map<std::string, std::int64_t> gone;
    for (const GoingOut& each : goneOfNoFilling(file, kinds, first)) {
        const TracedOut out = tracedOut(file, each);
        gone[out.kind] += taken(out);
    }
    for (const FairLine& each : atFairsOfNoFilling(file, kinds, first))
        for (const TracedOut& out : tracedFair(file, each)) gone[out.kind] += taken(out);
    for (const auto& [kind, count] : gone)
        if (count > 0) sayOnce(traced.unknown, {TraceGap::NoFilling, kind, count});
    std::int64_t complaints = 0;
    for (const Complaint& each : file.where<Complaint>({isUnknown("bottling")}))
        if (each.on >= first) ++complaints;
    if (complaints > 0) sayOnce(traced.unknown, {TraceGap::NoCode, {}, complaints});
}

}  // namespace

TraceForward traceForward(const Read& file, const std::vector<TraceStart>& starts) {
    TraceForward traced;
    const Spreading spreading(file, starts, traced);
    std::vector<Vessel> vessels;
    for (const TraceStart& each : starts) {
        if (std::find(vessels.begin(), vessels.end(), each.vessel) != vessels.end()) continue;
        vessels.push_back(each.vessel);
        traced.starts.push_back(
            tracedVessel(file, each.vessel, spreading.of(each.vessel), traced.unknown));
    }
    for (const Id<Lot> lot : spreading.lots()) {
        const Vessel vessel{std::nullopt, lot};
        if (std::find(vessels.begin(), vessels.end(), vessel) != vessels.end()) continue;
        vessels.push_back(vessel);
        traced.lots.push_back(tracedVessel(file, vessel, spreading.of(vessel), traced.unknown));
    }
    takeFillings(file, vessels, spreading, traced);
    for (const GoingOut& each : bulkFrom(file, vessels)) {
        const Vessel vessel{each.bucket, each.lot};
        TracedBulk bulk{nameOf(file, vessel), spreading.of(vessel).part, tracedOut(file, each)};
        if (wantsBuyer(bulk.out)) sayOnce(traced.unknown, {TraceGap::BulkNoBuyer, bulk.from});
        traced.bulk.push_back(std::move(bulk));
    }
    takeUncoded(file, traced);
    return traced;
}

}  // namespace combwright
