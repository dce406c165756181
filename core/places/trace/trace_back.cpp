#include "core/places/trace/trace_back.h"

#include <algorithm>
#include <map>
#include <set>

#include "core/places/honey_room/run_balance.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/runs.h"
#include "core/storage/queries/stays.h"
#include "core/storage/queries/trace.h"
#include "core/storage/queries/vessel_books.h"
#include "core/trade/honey/apportion.h"

namespace combwright {
namespace {

struct MixedPart {
    double part = 0;
    How how = How::Weighed;
};

/// Pours the shares of the honey traced back through lots, nearest first, until each is in a bucket
/// or in a lot that goes no further back.
class Unmixing {
  public:
    Unmixing(const Read& file, const Vessel& vessel, Day on, TraceBack& back) : m_back(back) {
        add(vessel, 1, How::Weighed);
        if (!vessel.lot) return;
        std::vector<Id<Lot>> met{*vessel.lot};
        for (const LotPart& part : partsBehind(file, met, on)) {
            m_parts[part.lot.number].push_back(part);
            if (!part.from) continue;
            if (++m_waits[part.from->number] == 1) met.push_back(*part.from);
        }
        m_lots = file.findAny(met);
        openUp(*vessel.lot);
        for (std::size_t i = 0; i < m_ready.size(); ++i) openUp(m_ready[i]);
        for (const auto& [lot, waits] : m_waits)
            if (waits > 0 && m_lots.contains(lot))
                sayOnce(m_back.unknown, {TraceGap::InARing, m_lots.at(lot).name.text()});
    }

    const std::map<Vessel, MixedPart>& shares() const { return m_shares; }

  private:
    void add(const Vessel& vessel, double part, How how) {
        const auto [known, isNew] = m_shares.try_emplace(vessel, MixedPart{part, how});
        if (isNew) return;
        known->second.part += part;
        known->second.how = weaker(known->second.how, how);
    }

    /// Puts what went into a lot in its place.
    void openUp(Id<Lot> id) {
        const auto lot = m_lots.find(id.number);
        const auto parts = m_parts.find(id.number);
        if (lot == m_lots.end()) return;
        const std::string& name = lot->second.name.text();
        if (parts == m_parts.end()) {
            const bool isBought = lot->second.origin == LotOrigin::BoughtIn;
            sayOnce(m_back.unknown, {isBought ? TraceGap::BoughtIn : TraceGap::NoParts, name, 0,
                                     isBought ? lot->second.supplier : ""});
            return;
        }
        const MixedPart all = m_shares[{std::nullopt, id}];
        double sum = 0;
        std::set<Day> filledOn;
        for (const LotPart& part : parts->second) {
            sum += static_cast<double>(part.mass.grams());
            filledOn.insert(part.on);
        }
        if (filledOn.size() > 1)
            sayOnce(m_back.unknown,
                    {TraceGap::ToppedUp, name, static_cast<std::int64_t>(filledOn.size())});
        if (sum <= 0) return;
        m_shares.erase({std::nullopt, id});
        m_back.blends.push_back({lot->second, eachOnce(parts->second), {}});
        for (const LotPart& part : parts->second) {
            add({part.bucket, part.from}, all.part * static_cast<double>(part.mass.grams()) / sum,
                weaker(all.how, part.how));
            if (part.from && --m_waits[part.from->number] == 0) m_ready.push_back(*part.from);
        }
    }

    TraceBack& m_back;
    std::map<Vessel, MixedPart> m_shares;
    std::map<std::int64_t, Lot> m_lots;
    std::map<std::int64_t, std::vector<LotPart>> m_parts;
    std::map<std::int64_t, std::int64_t> m_waits;  ///< parts of a lot not yet poured
    std::vector<Id<Lot>> m_ready;
};

/// The buckets and lots on the way, each once.
std::vector<Vessel> vesselsMet(const std::map<Vessel, MixedPart>& shares, const TraceBack& back) {
    std::set<Vessel> met;
    for (const auto& [vessel, share] : shares) met.insert(vessel);
    for (const TraceBlend& blend : back.blends)
        for (const VesselPart& part : blend.parts) met.insert(part.from);
    return {met.begin(), met.end()};
}

std::vector<std::optional<Mass>> sharedOut(const std::optional<Mass>& whole,
                                           const std::vector<double>& parts) {
    std::vector<std::optional<Mass>> shares(parts.size());
    if (!whole) return shares;
    const auto grams = apportioned(whole->grams(), parts);
    for (std::size_t i = 0; i < parts.size(); ++i) shares[i] = Mass::grams(grams[i]);
    return shares;
}

void takeSources(const VesselHeads& heads, const std::map<Vessel, MixedPart>& shares,
                 TraceBack& back) {
    for (TraceBlend& blend : back.blends)
        for (const VesselPart& part : blend.parts) blend.names.push_back(heads.name(part.from));
    for (const auto& [vessel, share] : shares)
        back.sources.push_back({vessel, heads.name(vessel), share.part, {}, share.how});
    // Buckets first, in the order they were filled.
    std::stable_sort(back.sources.begin(), back.sources.end(),
                     [](const TraceSource& a, const TraceSource& b) {
                         return a.vessel.bucket.has_value() > b.vessel.bucket.has_value();
                     });
    std::vector<double> parts;
    for (const TraceSource& each : back.sources) parts.push_back(each.part);
    const auto masses = sharedOut(back.mass, parts);
    for (std::size_t i = 0; i < masses.size(); ++i) back.sources[i].mass = masses[i];
}

/// A hive's share of its run now, and when it was closed where the run is revised.
struct ShareThenNow {
    std::optional<Id<Hive>> hive;
    Mass now, then;
    How how = How::Unknown;
};

std::vector<ShareThenNow> sharesOf(const RunBalance& balance) {
    std::vector<ShareThenNow> shares;
    for (const RunShare& each : balance.shares)
        shares.push_back({each.hive, each.mass, each.atClosing.value_or(each.mass), each.partHow});
    // A hive that was taken for another's box has a share no more, and had one then.
    for (const ClosingShare& each : balance.closing)
        if (std::none_of(shares.begin(), shares.end(),
                         [&](const ShareThenNow& share) { return share.hive == each.hive; }))
            shares.push_back({each.hive, Mass{}, each.mass, each.how});
    std::stable_sort(shares.begin(), shares.end(),
                     [](const ShareThenNow& a, const ShareThenNow& b) {
                         return a.hive.has_value() > b.hive.has_value();
                     });
    return shares;
}

void takeHives(const HivesCalled& called, const RunBalance& balance, TraceRun& traced) {
    const auto shares = sharesOf(balance);
    std::vector<double> now, then;
    double allNow = 0, allThen = 0;
    for (const ShareThenNow& each : shares) {
        allNow += static_cast<double>(each.now.grams());
        allThen += static_cast<double>(each.then.grams());
    }
    for (const ShareThenNow& each : shares) {
        now.push_back(allNow > 0 ? static_cast<double>(each.now.grams()) / allNow : 0);
        then.push_back(allThen > 0 ? static_cast<double>(each.then.grams()) / allThen : 0);
    }
    const auto masses = sharedOut(traced.mass, now);
    const auto before = sharedOut(traced.mass, then);
    for (std::size_t i = 0; i < shares.size(); ++i) {
        TraceHive line;
        line.hive = shares[i].hive;
        if (line.hive) line.mark = called.on(*line.hive, traced.run.on);
        line.part = now[i];
        line.mass = masses[i];
        line.how = weaker(shares[i].how, traced.how);
        if (before[i] != masses[i]) line.atClosing = before[i];
        traced.hives.push_back(std::move(line));
    }
}

void takeTracedBoxes(const Read& file, const HivesCalled& called, const RunRecords& records,
                     TraceRun& traced, std::vector<TraceUnknown>& unknown) {
    std::int64_t hiveless = 0, nobodyKnows = 0;
    const auto marks = calledInRun(file, records.boxes);
    std::vector<Id<Box>> known;
    for (const ExtractionBox& entry : records.boxes)
        if (entry.box && entry.hive) known.push_back(*entry.box);
    const auto stays = staysOfAny(file, known);
    for (std::size_t i = 0; i < records.boxes.size(); ++i) {
        const ExtractionBox& entry = records.boxes[i];
        TraceBox box{entry, marks[i], {}, {}, {}};
        if (entry.hive) box.hive = called.on(*entry.hive, traced.run.on);
        if (!entry.hive) ++hiveless;
        if (!entry.box) ++nobodyKnows;
        if (entry.box && entry.hive) {
            if (const auto of = stays.find(entry.box->number); of != stays.end())
                for (const auto& [hive, stay] : of->second) {
                    if (hive != *entry.hive || stay.from > traced.run.on) continue;
                    box.on = stay.from;
                    box.off = stay.to && *stay.to <= traced.run.on ? stay.to : std::nullopt;
                }
            if (!box.on) sayOnce(unknown, {TraceGap::StayNotWritten, box.mark, 0, box.hive});
        }
        traced.boxes.push_back(std::move(box));
    }
    const std::string name = traced.run.name.text();
    if (hiveless > 0) sayOnce(unknown, {TraceGap::HiveUnknown, name, hiveless});
    if (nobodyKnows > 0) sayOnce(unknown, {TraceGap::BoxUnknown, name, nobodyKnows});
}

void takeMedicines(const Read& file, Day on, TraceRun& traced) {
    std::set<std::int64_t> inRun;
    for (const TraceBox& each : traced.boxes)
        if (each.entry.box) inRun.insert(each.entry.box->number);
    for (TreatmentLine& line : treatmentsBehind(file, traced.run.id)) {
        // What was taken out later hung there still, as far as anybody knew.
        if (line.treatment.out && *line.treatment.out > on) line.treatment.out.reset();
        TraceMedicine medicine;
        medicine.hive = calledOn(file, line.hive.id, line.treatment.on);
        medicine.boxes = static_cast<int>(traced.boxes.size());
        if (line.boxWasOn)
            for (const SuperWhileIn& super : supersWhileIn(file, line.treatment))
                medicine.boxesOn += static_cast<int>(inRun.count(super.box.number));
        medicine.line = std::move(line);
        traced.medicines.push_back(std::move(medicine));
    }
}

void takeRun(const Read& file, Day on, TraceRun& traced, std::vector<TraceUnknown>& unknown) {
    const std::string name = traced.run.name.text();
    const auto balance = runBalanceOn(file, traced.run.id, on);
    RunRecords records;
    if (balance) {
        traced.yard = balance->yard;
        traced.revised = balance->revised;
        traced.revisions = balance->revisions;
        for (const RunBoxLine& each : balance->boxes) records.boxes.push_back(each.box);
        if (balance->filled > 1 && balance->shares.size() > 1)
            sayOnce(unknown, {TraceGap::MixedInRun, name, balance->filled});
    } else {
        records = runRecordsOn(file, traced.run.id, on).value_or(RunRecords{});
        sayOnce(unknown, {TraceGap::NotShared, name});
    }
    std::vector<Id<Hive>> hives;
    for (const ExtractionBox& each : records.boxes)
        if (each.hive) hives.push_back(*each.hive);
    if (balance)
        for (const ClosingShare& each : balance->closing)
            if (each.hive) hives.push_back(*each.hive);
    if (records.boxes.empty()) sayOnce(unknown, {TraceGap::NoBoxes, name});
    const HivesCalled called(file, std::move(hives));
    if (balance) takeHives(called, *balance, traced);
    takeTracedBoxes(file, called, records, traced, unknown);
    takeMedicines(file, on, traced);
}

void takeRuns(const Read& file, Day on, const VesselHeads& heads, TraceBack& back) {
    std::map<std::int64_t, TraceRun> runs;
    for (const TraceSource& source : back.sources) {
        const Extraction* run = heads.run(source.vessel);
        if (!run) continue;
        const auto [known, isNew] = runs.try_emplace(run->id.number);
        TraceRun& traced = known->second;
        if (isNew) {
            traced.run = *run;
            traced.how = How::Weighed;
        }
        traced.part += source.part;
        if (source.mass) traced.mass = traced.mass.value_or(Mass{}) + *source.mass;
        traced.how = weaker(traced.how, source.how);
    }
    for (auto& [number, traced] : runs) {
        takeRun(file, on, traced, back.unknown);
        back.runs.push_back(std::move(traced));
    }
    std::stable_sort(back.runs.begin(), back.runs.end(),
                     [](const TraceRun& a, const TraceRun& b) { return a.run.on < b.run.on; });
}

TraceBack wayBack(const Read& file, const Vessel& vessel, Day on, std::optional<Mass> mass, How how,
                  const std::string& name) {
    TraceBack back;
    back.mass = mass;
    back.how = how;
    if (!mass) sayOnce(back.unknown, {TraceGap::MassUnknown, name});
    const Unmixing unmixed(file, vessel, on, back);
    const VesselHeads heads(file, vesselsMet(unmixed.shares(), back));
    takeSources(heads, unmixed.shares(), back);
    // A part is known no better than the whole.
    if (mass)
        for (TraceSource& each : back.sources) each.how = weaker(each.how, how);
    takeRuns(file, on, heads, back);
    return back;
}

}  // namespace

TraceBack traceBack(const Read& file, const Vessel& vessel, Day on) {
    const VesselLedger ledger = vesselLedger(file, vessel, on);
    return wayBack(file, vessel, on, ledger.in, ledger.inHow, nameOf(file, vessel));
}

TraceBack traceBack(const Read& file, const Bottling& bottling, Day on) {
    const Vessel vessel = vesselOf(bottling);
    const auto inJars = honeyInJars(file, bottling.id);
    if (inJars && *inJars > Mass{})
        return wayBack(file, vessel, on, inJars, How::Counted, bottling.code.text());
    const Drawn drawn = drawnFor(bottling, inJars);
    return wayBack(file, vessel, on, drawn.mass, drawn.how, bottling.code.text());
}

}  // namespace combwright
