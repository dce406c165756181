#include <algorithm>

#include "core/places/run_balance.h"
#include "core/storage/queries/yards.h"

namespace combwright {
namespace {

struct HiveSum {
    Mass mass;
    How how = How::Weighed;
    bool revised = false;
};

using HiveSums = std::map<std::int64_t, HiveSum>;

void addTo(HiveSums& sums, std::int64_t hive, Mass mass, How how, bool revised) {
    HiveSum& sum = sums[hive];
    sum.mass += mass;
    sum.how = weaker(sum.how, how);
    sum.revised = sum.revised || revised;
}

struct YearSums {
    HiveSums hives;
    HiveSums yards;  ///< boxes of a yard whose hive nobody knows, and yard totals from paper
    Mass nowhere;    ///< unknown, and not even the yard is known
    std::map<std::int64_t, How> totals;  ///< how a yard's total is known: as its buckets are
    std::vector<RunBalance> runs;
    std::vector<std::string> unclosed;
};

YearSums sumsOf(const Read& file, int year) {
    YearSums sums;
    for (const Extraction& run : file.all<Extraction>()) {
        if (yearOf(run.on) != year) continue;
        auto balance = runBalance(file, run.id);
        if (!balance) {
            sums.unclosed.push_back(run.name.text());
            continue;
        }
        if (run.yard) {
            const auto total = sums.totals.try_emplace(run.yard->number, How::Weighed).first;
            total->second = weaker(total->second, balance->bucketsHow);
        }
        for (const RunShare& share : balance->shares) {
            const bool revised = share.atClosing.has_value();
            if (share.hive)
                addTo(sums.hives, share.hive->number, share.mass, share.how, revised);
            else if (run.yard)
                addTo(sums.yards, run.yard->number, share.mass, share.how, revised);
            else
                sums.nowhere += share.mass;
        }
        sums.runs.push_back(*std::move(balance));
    }
    std::stable_sort(sums.runs.begin(), sums.runs.end(),
                     [](const RunBalance& a, const RunBalance& b) { return a.run.on < b.run.on; });
    return sums;
}

/// Crops of a year known only as a figure; used for the year before, beside what was computed.
YearSums withNotes(const Read& file, int year) {
    YearSums sums = sumsOf(file, year);
    for (const CropNote& note : file.where<CropNote>({is("year", Count(year))})) {
        const auto mass = note.mass ? note.mass->middle() : std::nullopt;
        if (!mass) continue;
        const Mass grams = Mass::roundedGrams(*mass);
        if (note.hive)
            addTo(sums.hives, note.hive->number, grams, note.mass->how, false);
        else if (note.yard)
            addTo(sums.yards, note.yard->number, grams, note.mass->how, false);
        else
            sums.nowhere += grams;
    }
    return sums;
}

bool hadColonyOn(const Read& file, Id<Hive> hive, Day day) {
    for (const Colony& colony : file.where<Colony>({is("hive", hive)}))
        if (colony.since <= day && (!colony.ended || day < *colony.ended)) return true;
    return false;
}

}  // namespace

SeasonYield seasonYield(const Read& file, int year) {
    SeasonYield season;
    season.year = year;
    YearSums now = sumsOf(file, year);
    const YearSums before = withNotes(file, year - 1);
    const Day firstOfMay = *makeDay(year, 5, 1);
    season.how = How::Weighed;
    Mass allBefore = before.nowhere;
    auto yards = file.all<Yard>();
    std::stable_sort(yards.begin(), yards.end(),
                     [](const Yard& a, const Yard& b) { return a.walkOrder < b.walkOrder; });
    for (const Yard& yard : yards) {
        YardYield row;
        row.yard = yard;
        row.how = How::Weighed;
        Mass yardBefore;
        for (const Hive& hive : hivesEver(file, yard.id)) {
            HiveYield line;
            line.hive = hive.id;
            line.mark = hive.mark.text();
            if (const auto sum = now.hives.find(hive.id.number); sum != now.hives.end()) {
                line.mass = sum->second.mass;
                line.how = sum->second.how;
                line.revised = sum->second.revised;
                row.total += sum->second.mass;
                row.how = weaker(row.how, line.how);
                ++row.producing;
            }
            if (const auto sum = before.hives.find(hive.id.number); sum != before.hives.end()) {
                line.before = sum->second.mass;
                line.beforeHow = sum->second.how;
                yardBefore += sum->second.mass;
            }
            const bool stood = hadColonyOn(file, hive.id, firstOfMay);
            row.standing += stood;
            const bool closedLongAgo = hive.closed && yearOf(*hive.closed) < year;
            if (closedLongAgo && !line.mass && !line.before) continue;
            row.hives.push_back(std::move(line));
        }
        if (const auto sum = now.yards.find(yard.id.number);
            sum != now.yards.end() && sum->second.mass > Mass()) {
            row.unknown = sum->second.mass;
            row.total += sum->second.mass;
            row.how = weaker(row.how, sum->second.how);
        }
        if (const auto sum = before.yards.find(yard.id.number); sum != before.yards.end())
            yardBefore += sum->second.mass;
        // What is in the buckets was weighed together, whatever is known of each hive's part.
        if (const auto total = now.totals.find(yard.id.number); total != now.totals.end())
            row.how = total->second;
        if (yardBefore > Mass()) row.before = yardBefore;
        allBefore += yardBefore;
        season.total += row.total;
        season.producing += row.producing;
        season.standing += row.standing;
        if (row.unknown) season.unknown = season.unknown.value_or(Mass()) + *row.unknown;
        if (row.total > Mass()) season.how = weaker(season.how, row.how);
        season.yards.push_back(std::move(row));
    }
    if (now.nowhere > Mass()) {
        season.unknown = season.unknown.value_or(Mass()) + now.nowhere;
        season.total += now.nowhere;
    }
    if (allBefore > Mass()) season.before = allBefore;
    if (season.total == Mass()) season.how = How::Unknown;
    season.runs = std::move(now.runs);
    season.unclosed = std::move(now.unclosed);
    return season;
}

}  // namespace combwright
