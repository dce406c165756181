#include "core/places/trace_back.h"

#include <algorithm>
#include <map>
#include <set>

#include "core/places/run_balance.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/runs.h"
#include "core/storage/queries/stays.h"
#include "core/storage/queries/trace.h"
#include "core/trade/honey/apportion.h"

namespace combwright {
namespace {

const Day endOfTime = *parseDay("9999-12-31");

struct MixedPart {
    double part = 0;
    How how = How::Weighed;
};

/// Pours the shares of the honey traced back through lots, nearest first, until each is in a bucket
/// or in a lot that goes no further back.
class Unmixing {
  public:
    Unmixing(const Read& file, TraceBack& back) : m_file(file), m_back(back) {}

    std::map<Vessel, MixedPart> of(const Vessel& vessel) {
        add(vessel, 1, How::Weighed);
        if (vessel.lot) {
            for (const LotPart& part : partsBehind(m_file, {*vessel.lot})) {
                m_parts[part.lot.number].push_back(part);
                if (part.from) ++m_waits[part.from->number];
            }
            openUp(*vessel.lot);
            for (std::size_t i = 0; i < m_ready.size(); ++i) openUp(m_ready[i]);
            for (const auto& [lot, waits] : m_waits)
                if (waits > 0)
                    sayOnce(m_back.unknown, {TraceGap::InARing, nameOfLot(Id<Lot>{lot})});
        }
        return std::move(m_shares);
    }

  private:
    std::string nameOfLot(Id<Lot> lot) const { return nameOf(m_file, Vessel{std::nullopt, lot}); }

    void add(const Vessel& vessel, double part, How how) {
        const auto [known, isNew] = m_shares.try_emplace(vessel, MixedPart{part, how});
        if (isNew) return;
        known->second.part += part;
        known->second.how = weaker(known->second.how, how);
    }

    /// Puts what went into a lot in its place.
    void openUp(Id<Lot> id) {
        const auto lot = m_file.find(id);
        const auto parts = m_parts.find(id.number);
        if (!lot) return;
        if (parts == m_parts.end()) {
            const bool isBought = lot->origin == LotOrigin::BoughtIn;
            sayOnce(m_back.unknown, {isBought ? TraceGap::BoughtIn : TraceGap::NoParts,
                                     lot->name.text(), 0, isBought ? lot->supplier : ""});
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
            sayOnce(m_back.unknown, {TraceGap::ToppedUp, lot->name.text(),
                                     static_cast<std::int64_t>(filledOn.size())});
        if (sum <= 0) return;
        m_shares.erase({std::nullopt, id});
        TraceBlend blend{*lot, partsOf(m_file, id), {}};
        for (const VesselPart& part : blend.parts) blend.names.push_back(nameOf(m_file, part.from));
        m_back.blends.push_back(std::move(blend));
        for (const LotPart& part : parts->second) {
            add({part.bucket, part.from}, all.part * static_cast<double>(part.mass.grams()) / sum,
                weaker(all.how, part.how));
            if (part.from && --m_waits[part.from->number] == 0) m_ready.push_back(*part.from);
        }
    }

    const Read& m_file;
    TraceBack& m_back;
    std::map<Vessel, MixedPart> m_shares;
    std::map<std::int64_t, std::vector<LotPart>> m_parts;
    std::map<std::int64_t, std::int64_t> m_waits;  ///< parts of a lot not yet poured
    std::vector<Id<Lot>> m_ready;
};

std::vector<std::optional<Mass>> sharedOut(const std::optional<Mass>& whole,
                                           const std::vector<double>& parts) {
    std::vector<std::optional<Mass>> shares(parts.size());
    if (!whole) return shares;
    const auto grams = apportioned(whole->grams(), parts);
    for (std::size_t i = 0; i < parts.size(); ++i) shares[i] = Mass::grams(grams[i]);
    return shares;
}

void takeSources(const Read& file, std::map<Vessel, MixedPart> shares, TraceBack& back) {
    for (const auto& [vessel, share] : shares)
        back.sources.push_back({vessel, nameOf(file, vessel), share.part, {}, share.how});
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

std::vector<ShareThenNow> sharesOf(const Read& file, const RunBalance& balance) {
    std::vector<ShareThenNow> shares;
    for (const RunShare& each : balance.shares)
        shares.push_back({each.hive, each.mass, each.atClosing.value_or(each.mass), each.partHow});
    // A hive that was taken for another's box has a share no more, and had one then.
    for (const ClosingShare& each : file.where<ClosingShare>({is("extraction", balance.run.id)}))
        if (std::none_of(shares.begin(), shares.end(),
                         [&](const ShareThenNow& share) { return share.hive == each.hive; }))
            shares.push_back({each.hive, Mass{}, each.mass, each.how});
    std::stable_sort(shares.begin(), shares.end(),
                     [](const ShareThenNow& a, const ShareThenNow& b) {
                         return a.hive.has_value() > b.hive.has_value();
                     });
    return shares;
}

void takeHives(const Read& file, const RunBalance& balance, TraceRun& traced) {
    const auto shares = sharesOf(file, balance);
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
        if (line.hive) line.mark = calledOn(file, *line.hive, traced.run.on);
        line.part = now[i];
        line.mass = masses[i];
        line.how = weaker(shares[i].how, traced.how);
        if (before[i] != masses[i]) line.atClosing = before[i];
        traced.hives.push_back(std::move(line));
    }
}

void takeTracedBoxes(const Read& file, TraceRun& traced, std::vector<TraceUnknown>& unknown) {
    std::int64_t hiveless = 0, nobodyKnows = 0;
    for (const ExtractionBox& entry :
         file.where<ExtractionBox>({is("extraction", traced.run.id)})) {
        TraceBox box{entry, calledInRun(file, entry), {}, {}, {}};
        if (entry.hive) box.hive = calledOn(file, *entry.hive, traced.run.on);
        if (!entry.hive) ++hiveless;
        if (!entry.box) ++nobodyKnows;
        if (entry.box && entry.hive) {
            for (const auto& [hive, stay] : staysOf(file, *entry.box)) {
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

void takeMedicines(const Read& file, TraceRun& traced) {
    std::set<std::int64_t> inRun;
    for (const TraceBox& each : traced.boxes)
        if (each.entry.box) inRun.insert(each.entry.box->number);
    for (TreatmentLine& line : treatmentsBehind(file, traced.run.id)) {
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

void takeRuns(const Read& file, TraceBack& back) {
    std::map<std::int64_t, TraceRun> runs;
    for (const TraceSource& source : back.sources) {
        const auto bucket = file.find(source.vessel.bucket);
        const auto run = bucket ? file.find(bucket->extraction) : std::nullopt;
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
        const std::string name = traced.run.name.text();
        const auto balance = runBalance(file, traced.run.id);
        if (balance) {
            traced.yard = balance->yard;
            traced.revised = balance->revised;
            traced.revisions = balance->revisions;
            takeHives(file, *balance, traced);
        }
        const auto buckets = file.where<Bucket>({is("extraction", traced.run.id)}).size();
        if (!balance)
            sayOnce(back.unknown, {TraceGap::NotShared, name});
        else if (buckets > 1 && traced.hives.size() > 1)
            sayOnce(back.unknown, {TraceGap::MixedInRun, name, static_cast<std::int64_t>(buckets)});
        takeTracedBoxes(file, traced, back.unknown);
        takeMedicines(file, traced);
        back.runs.push_back(std::move(traced));
    }
    std::stable_sort(back.runs.begin(), back.runs.end(),
                     [](const TraceRun& a, const TraceRun& b) { return a.run.on < b.run.on; });
}

TraceBack wayBack(const Read& file, const Vessel& vessel, std::optional<Mass> mass, How how,
                  const std::string& name) {
    TraceBack back;
    back.mass = mass;
    back.how = how;
    if (!mass) sayOnce(back.unknown, {TraceGap::MassUnknown, name});
    takeSources(file, Unmixing(file, back).of(vessel), back);
    // A part is known no better than the whole.
    if (mass)
        for (TraceSource& each : back.sources) each.how = weaker(each.how, how);
    takeRuns(file, back);
    return back;
}

}  // namespace

TraceBack traceBack(const Read& file, const Vessel& vessel) {
    const VesselLedger ledger = vesselLedger(file, vessel, endOfTime);
    return wayBack(file, vessel, ledger.in, ledger.inHow, nameOf(file, vessel));
}

TraceBack traceBack(const Read& file, const Bottling& bottling) {
    const Vessel vessel = vesselOf(bottling);
    if (const auto inJars = honeyInJars(file, bottling.id); inJars && *inJars > Mass{})
        return wayBack(file, vessel, inJars, How::Counted, bottling.code.text());
    const Drawn drawn = drawnFor(file, bottling);
    return wayBack(file, vessel, drawn.mass, drawn.how, bottling.code.text());
}

}  // namespace combwright
