#include "core/places/season_book/season_yield.h"

#include <algorithm>
#include <set>

#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/yards.h"

namespace combwright {
namespace {

struct HoneySum {
    Mass mass;
    How how = How::Weighed;
    How partHow = How::Weighed;
    bool revised = false;
    bool noted = false;
};

using HoneySums = std::map<std::int64_t, HoneySum>;

void addTo(HoneySum& sum, Mass mass, How how) {
    sum.mass += mass;
    sum.how = weaker(sum.how, how);
}

std::optional<HoneySum> sumIn(const HoneySums& sums, std::int64_t id) {
    const auto found = sums.find(id);
    return found == sums.end() ? std::nullopt : std::optional(found->second);
}

std::optional<Mass> massIn(const HoneySums& sums, std::int64_t id) {
    const auto sum = sumIn(sums, id);
    return sum ? std::optional(sum->mass) : std::nullopt;
}

struct YearSums {
    HoneySums hives;                     ///< from runs; a hive no run knows as noted
    HoneySums yards;                     ///< boxes of a yard whose hive nobody knows
    HoneySum nowhere;                    ///< unknown, and not even the yard is known
    std::map<std::int64_t, How> totals;  ///< how a yard's total is known: as its buckets are
    HoneySums hivePaper;                 ///< noted beside what runs say
    HoneySums yardPaper;                 ///< noted for a yard as a whole
    HoneySum paper;                      ///< noted for the year as a whole
    std::vector<RunBalance> runs;
    std::vector<std::string> unclosed;
    std::map<std::int64_t, Day> taken;  ///< when honey of a hive was taken last in the year
};

void takeRun(YearSums& sums, RunBalance balance) {
    const Extraction& run = balance.run;
    if (run.yard) {
        const auto total = sums.totals.try_emplace(run.yard->number, How::Weighed).first;
        total->second = weaker(total->second, balance.bucketsHow);
    }
    for (const RunShare& share : balance.shares) {
        if (share.hive) {
            Day& last = sums.taken.try_emplace(share.hive->number, run.on).first->second;
            last = std::max(last, run.on);
        }
        HoneySum& sum = share.hive ? sums.hives[share.hive->number]
                        : run.yard ? sums.yards[run.yard->number]
                                   : sums.nowhere;
        addTo(sum, share.mass, share.how);
        sum.partHow = weaker(sum.partHow, share.partHow);
        sum.revised = sum.revised || share.atClosing.has_value();
    }
    sums.runs.push_back(std::move(balance));
}

/// A run nobody can share out yet: its honey is there all the same, and has no hive.
void takeUnshared(YearSums& sums, const Extraction& run, const BucketSum& buckets) {
    sums.unclosed.push_back(run.name.text());
    if (buckets.mass == Mass()) return;
    HoneySum& sum = run.yard ? sums.yards[run.yard->number] : sums.nowhere;
    addTo(sum, buckets.mass, buckets.how);
    sum.partHow = weaker(sum.partHow, buckets.how);
    if (!run.yard) return;
    const auto total = sums.totals.try_emplace(run.yard->number, How::Weighed).first;
    total->second = weaker(total->second, buckets.how);
}

YearSums sumsOf(const Read& file, int year) {
    YearSums sums;
    for (const Extraction& run : file.all<Extraction>()) {
        if (yearOf(run.on) != year) continue;
        if (auto balance = runBalance(file, run.id))
            takeRun(sums, *std::move(balance));
        else
            takeUnshared(sums, run, bucketSum(file, run.id));
    }
    std::stable_sort(sums.runs.begin(), sums.runs.end(),
                     [](const RunBalance& a, const RunBalance& b) { return a.run.on < b.run.on; });
    HoneySums noted;
    for (const CropNote& note : file.where<CropNote>({is("year", Count(year))})) {
        const auto mass = note.mass ? note.mass->middle() : std::nullopt;
        if (!mass) continue;
        addTo(note.hive   ? noted[note.hive->number]
              : note.yard ? sums.yardPaper[note.yard->number]
                          : sums.paper,
              Mass::roundedGrams(*mass), note.mass->how);
    }
    for (const auto& [hive, sum] : noted) {
        if (sums.hives.contains(hive)) {
            sums.hivePaper[hive] = sum;
            continue;
        }
        sums.hives[hive] = sum;
        sums.hives[hive].partHow = sum.how;
        sums.hives[hive].noted = true;
    }
    return sums;
}

struct YardSum {
    HoneySum sum;
    bool any = false;  ///< hives, or boxes without one, gave something
    Mass noted;
    bool asWhole = false;  ///< only a total from paper is known
};

/// Nearer figures overrule: hives and boxes before a total noted for the whole yard.
YardSum yardSum(const YearSums& sums, const Yard& yard, const std::vector<Hive>& hives) {
    YardSum whole;
    for (const Hive& hive : hives) {
        const auto sum = sumIn(sums.hives, hive.id.number);
        if (!sum) continue;
        addTo(whole.sum, sum->mass, sum->how);
        if (sum->noted) whole.noted += sum->mass;
        whole.any = true;
    }
    if (const auto sum = sumIn(sums.yards, yard.id.number); sum && sum->mass > Mass()) {
        addTo(whole.sum, sum->mass, sum->how);
        whole.any = true;
    }
    if (whole.any) {
        // What is in the buckets was weighed together, whatever is known of each hive's part.
        const auto total = sums.totals.find(yard.id.number);
        if (total != sums.totals.end() && whole.noted == Mass()) whole.sum.how = total->second;
        return whole;
    }
    if (const auto sum = sumIn(sums.yardPaper, yard.id.number)) {
        whole.sum = *sum;
        whole.noted = sum->mass;
        whole.asWhole = true;
    }
    return whole;
}

/// A colony that was there at some time from one day to the other, both counted.
bool hadColony(const Read& file, Id<Hive> hive, Day from, Day to) {
    for (const ColonyStay& stay : colonyStaysIn(file, hive))
        if (stay.from <= to && (!stay.to || from < *stay.to)) return true;
    return false;
}

/// The hives whose honey of a year counts in a yard: those that stood there when it was taken last,
/// or where none was, at the year's end.
std::vector<Hive> hivesCounted(const Read& file, Id<Yard> yard, const YearSums& sums, int year) {
    auto hives = hivesEver(file, yard);
    const auto moves = hiveMovesByHive(file);
    if (moves.empty()) return hives;
    for (const auto& [number, own] : moves) {
        const bool there =
            std::any_of(hives.begin(), hives.end(),
                        [number = number](const Hive& h) { return h.id.number == number; });
        if (there) continue;
        if (auto hive = file.find(Id<Hive>{number})) hives.push_back(*std::move(hive));
    }
    std::erase_if(hives, [&](const Hive& hive) {
        const auto own = moves.find(hive.id.number);
        if (own == moves.end()) return false;
        const auto taken = sums.taken.find(hive.id.number);
        const Day on = taken == sums.taken.end() ? *makeDay(year, 12, 31) : taken->second;
        return asItWas(hive, own->second, on).yard != yard;
    });
    return hives;
}

bool stoodIn(const Hive& hive, int year) {
    return yearOf(hive.since) <= year && (!hive.closed || yearOf(*hive.closed) >= year);
}

HiveYield hiveLine(const Hive& hive, const YearSums& now, const YearSums& before) {
    HiveYield line;
    line.hive = hive.id;
    line.mark = hive.mark.text();
    if (const auto sum = sumIn(now.hives, hive.id.number)) {
        line.mass = sum->mass;
        line.how = sum->how;
        line.partHow = sum->partHow;
        line.revised = sum->revised;
        line.noted = sum->noted;
    }
    line.paperSays = massIn(now.hivePaper, hive.id.number);
    if (const auto sum = sumIn(before.hives, hive.id.number)) {
        line.before = sum->mass;
        line.beforeHow = sum->how;
        line.beforeNoted = sum->noted;
    }
    return line;
}

/// Sums up a whole year for the column beside; a yard's total from paper only where nothing nearer
/// is known, the year's only where no yard is.
struct WholeYear {
    HoneySum sum;
    Mass noted;
};

void addYard(WholeYear& whole, const YardSum& yard) {
    if (yard.sum.mass == Mass()) return;
    addTo(whole.sum, yard.sum.mass, yard.sum.how);
    whole.noted += yard.noted;
}

void addRest(WholeYear& whole, const YearSums& sums) {
    if (sums.nowhere.mass > Mass()) addTo(whole.sum, sums.nowhere.mass, sums.nowhere.how);
    if (whole.sum.mass == Mass() && sums.paper.mass > Mass()) {
        whole.sum = sums.paper;
        whole.noted = sums.paper.mass;
    }
}

std::optional<Mass> some(Mass mass) { return mass > Mass() ? std::optional(mass) : std::nullopt; }

}  // namespace

SeasonYield seasonYield(const Read& file, int year, std::optional<int> beside) {
    SeasonYield season;
    season.year = year;
    season.beforeYear = beside.value_or(year - 1);
    YearSums now = sumsOf(file, year);
    const YearSums before = sumsOf(file, season.beforeYear);
    const Day firstOfMay = *makeDay(year, 5, 1);
    const Day newYear = *makeDay(year, 1, 1);
    WholeYear total;
    WholeYear totalBefore;
    auto yards = file.all<Yard>();
    std::stable_sort(yards.begin(), yards.end(),
                     [](const Yard& a, const Yard& b) { return a.walkOrder < b.walkOrder; });
    for (const Yard& yard : yards) {
        YardYield row;
        row.yard = yard;
        const auto hives = hivesCounted(file, yard.id, now, year);
        for (const Hive& hive : hives) {
            HiveYield line = hiveLine(hive, now, before);
            row.producing += line.mass && *line.mass > Mass();
            line.standing = hadColony(file, hive.id, firstOfMay, firstOfMay);
            row.standing += line.standing;
            row.lived += hadColony(file, hive.id, newYear, *makeDay(year, 12, 31));
            if (line.mass || line.before || stoodIn(hive, year))
                row.hives.push_back(std::move(line));
        }
        const YardSum sum = yardSum(now, yard, hives);
        row.total = sum.sum.mass;
        row.how = sum.sum.how;
        row.noted = sum.asWhole;
        row.producingKnown = !sum.asWhole;
        if (!sum.asWhole) row.paperSays = massIn(now.yardPaper, yard.id.number);
        if (const auto unknown = massIn(now.yards, yard.id.number)) row.unknown = some(*unknown);
        const YardSum sumBefore =
            yardSum(before, yard, hivesCounted(file, yard.id, before, season.beforeYear));
        row.before = some(sumBefore.sum.mass);
        row.beforeHow = sumBefore.sum.how;
        addYard(total, sum);
        addYard(totalBefore, sumBefore);
        season.producing += row.producing;
        season.producingKnown = season.producingKnown && row.producingKnown;
        season.standing += row.standing;
        season.lived += row.lived;
        if (row.unknown) season.unknown = season.unknown.value_or(Mass()) + *row.unknown;
        season.yards.push_back(std::move(row));
    }
    addRest(total, now);
    addRest(totalBefore, before);
    season.nowhere = some(now.nowhere.mass);
    if (season.nowhere) season.unknown = season.unknown.value_or(Mass()) + *season.nowhere;
    season.total = total.sum.mass;
    season.how = season.total == Mass() ? How::Unknown : total.sum.how;
    season.noted = some(total.noted);
    // A total noted for the whole year counts only where nothing nearer is known.
    if (now.paper.mass > Mass() && season.total == now.paper.mass && season.producing == 0)
        season.producingKnown = false;
    season.before = some(totalBefore.sum.mass);
    season.beforeHow = totalBefore.sum.how;
    season.beforeNoted = some(totalBefore.noted);
    season.runs = std::move(now.runs);
    season.unclosed = std::move(now.unclosed);
    return season;
}

std::vector<int> seasonYears(const Read& file, Day today) {
    std::set<int> years{yearOf(today)};
    for (const Extraction& run : file.all<Extraction>()) years.insert(yearOf(run.on));
    for (const CropNote& note : file.all<CropNote>())
        years.insert(static_cast<int>(note.year.value()));
    return {years.begin(), years.end()};
}

int newestHarvest(const Read& file, Day today) {
    int newest = 0;
    for (const Extraction& run : file.all<Extraction>())
        if (yearOf(run.on) <= yearOf(today)) newest = std::max(newest, yearOf(run.on));
    for (const CropNote& note : file.all<CropNote>())
        if (note.year.value() <= yearOf(today))
            newest = std::max(newest, static_cast<int>(note.year.value()));
    return newest == 0 ? yearOf(today) : newest;
}

std::optional<double> changeGrams(const std::optional<Mass>& now,
                                  const std::optional<Mass>& before) {
    if (!now || !before) return std::nullopt;
    return static_cast<double>(now->grams() - before->grams());
}

}  // namespace combwright
