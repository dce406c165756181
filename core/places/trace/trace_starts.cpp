#include <algorithm>
#include <map>
#include <set>

#include "core/places/honey_room/run_balance.h"
#include "core/places/trace/trace_forward.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/treatments.h"

namespace combwright {
namespace {

constexpr int runsWithinDays = 365;

void startInBuckets(const Read& file, Id<Extraction> run, std::optional<double> part, How how,
                    std::vector<TraceStart>& starts) {
    for (const Bucket& bucket : file.where<Bucket>({is("extraction", run)}))
        starts.push_back({{bucket.id, std::nullopt}, part, how});
}

/// What of a run's honey came out of some of its boxes.
void startInBoxes(const Read& file, Id<Extraction> run, const std::set<std::int64_t>& boxes, Day on,
                  std::vector<TraceStart>& starts, std::vector<TraceUnknown>& unknown) {
    const auto balance = runBalanceOn(file, run, on);
    if (!balance) {
        const auto unshared = file.find(run);
        sayOnce(unknown, {TraceGap::NotShared, unshared ? unshared->name.text() : ""});
        startInBuckets(file, run, std::nullopt, How::Unknown, starts);
        return;
    }
    double all = 0, theirs = 0;
    bool isKnown = true;
    for (const RunBoxLine& line : balance->boxes) {
        isKnown = isKnown && line.offG.has_value();
        all += line.offG.value_or(0);
        if (line.box.box && boxes.contains(line.box.box->number)) theirs += line.offG.value_or(0);
    }
    isKnown = isKnown && all > 0;
    if (!isKnown) sayOnce(unknown, {TraceGap::PartUnknown, balance->run.name.text()});
    startInBuckets(file, run, isKnown ? std::optional(theirs / all) : std::nullopt,
                   isKnown ? balance->outHow() : How::Unknown, starts);
}

}  // namespace

std::vector<TraceStart> startsOfRun(const Read& file, Id<Extraction> run) {
    std::vector<TraceStart> starts;
    startInBuckets(file, run, 1.0, How::Weighed, starts);
    return starts;
}

std::vector<TraceStart> startsOfHive(const Read& file, Id<Hive> hive, Day on,
                                     std::vector<TraceUnknown>& unknown) {
    std::vector<TraceStart> starts;
    std::set<std::int64_t> met;
    for (const ExtractionBox& entry : file.where<ExtractionBox>({is("hive", hive)})) {
        if (!met.insert(entry.extraction.number).second) continue;
        const auto run = file.find(entry.extraction);
        if (!run || run->on > on) continue;
        const auto balance = runBalanceOn(file, run->id, on);
        if (!balance) {
            sayOnce(unknown, {TraceGap::NotShared, run->name.text()});
            startInBuckets(file, entry.extraction, std::nullopt, How::Unknown, starts);
            continue;
        }
        // A box that was named the hive's later was nobody's then.
        if (std::none_of(balance->boxes.begin(), balance->boxes.end(),
                         [hive](const RunBoxLine& line) { return line.box.hive == hive; }))
            continue;
        std::optional<double> part;
        How how = How::Unknown;
        double all = 0;
        std::int64_t hiveless = 0;
        for (const RunShare& share : balance->shares)
            all += static_cast<double>(share.mass.grams());
        for (const RunShare& share : balance->shares)
            if (share.hive == hive && all > 0) {
                part = static_cast<double>(share.mass.grams()) / all;
                how = share.partHow;
            }
        for (const RunBoxLine& line : balance->boxes) hiveless += line.box.hive ? 0 : 1;
        if (!part) sayOnce(unknown, {TraceGap::PartUnknown, balance->run.name.text()});
        if (balance->filled > 1 && balance->shares.size() > 1)
            sayOnce(unknown, {TraceGap::MixedInRun, balance->run.name.text(), balance->filled});
        if (hiveless > 0)
            sayOnce(unknown, {TraceGap::HiveUnknown, balance->run.name.text(), hiveless});
        startInBuckets(file, entry.extraction, part, how, starts);
    }
    return starts;
}

std::vector<TraceStart> startsOfBox(const Read& file, Id<Box> box, Day on,
                                    std::vector<TraceUnknown>& unknown) {
    std::vector<TraceStart> starts;
    std::set<std::int64_t> met;
    for (const ExtractionBox& entry : file.where<ExtractionBox>({is("box", box)})) {
        if (!met.insert(entry.extraction.number).second) continue;
        if (const auto run = file.find(entry.extraction); run && run->on <= on)
            startInBoxes(file, run->id, {box.number}, on, starts, unknown);
    }
    return starts;
}

std::vector<TraceStart> startsOfTreatment(const Read& file, const Treatment& treatment, Day on,
                                          std::vector<TraceUnknown>& unknown) {
    const auto mayHoldIt = [&](Id<Extraction> id, Day from) {
        const auto run = file.find(id);
        return run && run->on >= from && run->on <= std::min(on, from + days(runsWithinDays));
    };
    std::map<std::int64_t, std::set<std::int64_t>> boxesByRun;
    for (const SuperWhileIn& super : supersWhileIn(file, treatment))
        for (const ExtractionBox& entry : file.where<ExtractionBox>({is("box", super.box)}))
            if (mayHoldIt(entry.extraction, super.from))
                boxesByRun[entry.extraction.number].insert(super.box.number);
    std::map<std::int64_t, std::int64_t> unmarked;
    for (const ExtractionBox& entry : file.where<ExtractionBox>({is("hive", treatment.hive)}))
        if (!entry.box && mayHoldIt(entry.extraction, treatment.on))
            ++unmarked[entry.extraction.number];
    for (const auto& [number, count] : unmarked)
        if (const auto run = file.find(Id<Extraction>{number}))
            sayOnce(unknown, {TraceGap::MarkUnknown, run->name.text(), count,
                              calledOn(file, treatment.hive, run->on)});
    std::vector<TraceStart> starts;
    for (const auto& [run, boxes] : boxesByRun)
        startInBoxes(file, Id<Extraction>{run}, boxes, on, starts, unknown);
    return starts;
}

}  // namespace combwright
