#include "core/places/season_book/harvest_line.h"

#include <algorithm>
#include <array>

namespace combwright {
namespace {

constexpr std::array<std::string_view, 4> harvestByKeys{"run", "lot", "yard", "hive"};

HarvestCame cameOf(const RunBalance& run, Mass mass, How how) {
    return {run.run.on, mass, how, run.run.id, run.run.name.text(), run.yard};
}

/// Several shares of one run are one coming.
void addCame(HarvestPart& part, const RunBalance& run, Mass mass, How how) {
    if (mass == Mass()) return;
    if (!part.came.empty() && part.came.back().run == run.run.id) {
        part.came.back().mass += mass;
        part.came.back().how = weaker(part.came.back().how, how);
        return;
    }
    part.came.push_back(cameOf(run, mass, how));
}

/// What is left of the total when all that came on a day is taken off.
void setTotal(HarvestPart& part, Mass total, How how) {
    part.total = total;
    part.how = how;
    Mass dated;
    for (const HarvestCame& came : part.came) dated += came.mass;
    part.undated = total - dated;
}

/// What the parts leave of the year: a total from paper for the year as a whole.
void addRest(HarvestLine& line, const SeasonYield& season) {
    Mass sum;
    for (const HarvestPart& part : line.parts) sum += part.total;
    if (sum == season.total) return;
    HarvestPart rest;
    rest.withoutHive = line.by == HarvestBy::Yard || line.by == HarvestBy::Hive;
    setTotal(rest, season.total - sum, season.how);
    line.parts.push_back(std::move(rest));
}

void addRuns(HarvestLine& line, const SeasonYield& season) {
    HarvestPart whole;
    for (const RunBalance& run : season.runs) addCame(whole, run, run.buckets, run.bucketsHow);
    setTotal(whole, season.total, season.how);
    if (whole.total > Mass()) line.parts.push_back(std::move(whole));
}

void addLots(HarvestLine& line, const SeasonYield& season) {
    for (const RunBalance& run : season.runs) {
        if (run.buckets == Mass()) continue;
        HarvestPart lot;
        lot.run = run.run.id;
        lot.name = run.run.name.text();
        addCame(lot, run, run.buckets, run.bucketsHow);
        setTotal(lot, run.buckets, run.bucketsHow);
        line.parts.push_back(std::move(lot));
    }
}

std::optional<Id<Yard>> yardCounting(const SeasonYield& season, Id<Hive> hive) {
    for (const YardYield& yard : season.yards)
        for (const HiveYield& each : yard.hives)
            if (each.hive == hive) return yard.yard.id;
    return std::nullopt;
}

/// Where a share counts: in its hive's yard as the book has it, else in its run's.
std::optional<Id<Yard>> yardOfShare(const SeasonYield& season, const RunBalance& run,
                                    const RunShare& share) {
    if (share.hive)
        if (const auto yard = yardCounting(season, *share.hive)) return yard;
    return run.run.yard;
}

template <class Belongs>
void takeShares(HarvestPart& part, const SeasonYield& season, const Belongs& belongs) {
    for (const RunBalance& run : season.runs)
        for (const RunShare& share : run.shares)
            if (belongs(run, share)) addCame(part, run, share.mass, share.how);
}

/// What is in the buckets was weighed together, whatever is known of each hive's share: where a
/// part has all of a run it is known as they are.
void wholeRunsAsTheirBuckets(HarvestPart& part, const SeasonYield& season) {
    for (HarvestCame& came : part.came)
        for (const RunBalance& run : season.runs)
            if (run.run.id == came.run && run.buckets == came.mass) came.how = run.bucketsHow;
}

void addYards(HarvestLine& line, const SeasonYield& season) {
    for (const YardYield& yard : season.yards) {
        if (yard.total == Mass()) continue;
        HarvestPart part;
        part.yard = yard.yard.id;
        part.name = yard.yard.name.text();
        takeShares(part, season, [&](const RunBalance& run, const RunShare& share) {
            return yardOfShare(season, run, share) == yard.yard.id;
        });
        wholeRunsAsTheirBuckets(part, season);
        setTotal(part, yard.total, yard.how);
        line.parts.push_back(std::move(part));
    }
}

/// Honey nobody knows the yard of.
void addNowhere(HarvestLine& line, const SeasonYield& season) {
    if (!season.nowhere) return;
    HarvestPart part;
    part.withoutHive = true;
    takeShares(part, season, [&](const RunBalance& run, const RunShare& share) {
        return !share.hive && !yardOfShare(season, run, share);
    });
    setTotal(part, *season.nowhere, season.how);
    line.parts.push_back(std::move(part));
}

void addHives(HarvestLine& line, const SeasonYield& season) {
    for (const YardYield& yard : season.yards) {
        Mass known;
        for (const HiveYield& hive : yard.hives) {
            if (!hive.mass || *hive.mass == Mass()) continue;
            HarvestPart part;
            part.yard = yard.yard.id;
            part.hive = hive.hive;
            part.name = hive.mark;
            takeShares(part, season, [&](const RunBalance&, const RunShare& share) {
                return share.hive == hive.hive;
            });
            setTotal(part, *hive.mass, hive.how);
            known += part.total;
            line.parts.push_back(std::move(part));
        }
        if (yard.total == known) continue;
        HarvestPart rest;
        rest.yard = yard.yard.id;
        rest.withoutHive = true;
        rest.name = yard.yard.name.text();
        takeShares(rest, season, [&](const RunBalance& run, const RunShare& share) {
            return !share.hive && run.run.yard == yard.yard.id;
        });
        setTotal(rest, yard.total - known, yard.how);
        line.parts.push_back(std::move(rest));
    }
}

}  // namespace

std::string_view key(HarvestBy by) { return harvestByKeys[static_cast<std::size_t>(by)]; }

std::optional<HarvestBy> harvestByOf(std::string_view text) {
    for (std::size_t i = 0; i < harvestByKeys.size(); ++i)
        if (harvestByKeys[i] == text) return static_cast<HarvestBy>(i);
    return std::nullopt;
}

const HarvestPart* HarvestLine::partLike(const HarvestPart& other) const {
    for (const HarvestPart& part : parts)
        if (part.yard == other.yard && part.hive == other.hive && part.run == other.run &&
            part.withoutHive == other.withoutHive)
            return &part;
    return nullptr;
}

HarvestLine harvestLine(const SeasonYield& season, HarvestBy by) {
    HarvestLine line;
    line.year = season.year;
    line.by = by;
    line.total = season.total;
    line.how = season.how;
    switch (by) {
        case HarvestBy::Run:
            addRuns(line, season);
            break;
        case HarvestBy::Lot:
            addLots(line, season);
            break;
        case HarvestBy::Yard:
            addYards(line, season);
            addNowhere(line, season);
            break;
        case HarvestBy::Hive:
            addHives(line, season);
            addNowhere(line, season);
            break;
    }
    addRest(line, season);
    return line;
}

}  // namespace combwright
