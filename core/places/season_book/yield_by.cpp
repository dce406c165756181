#include "core/places/season_book/yield_by.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include "core/places/yard/queens.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/queens.h"
#include "core/storage/queries/stays.h"
#include "core/trade/honey/apportion.h"

namespace combwright {
namespace {

constexpr std::array<std::pair<YieldBy, std::string_view>, 4> yieldByNames{
    {{YieldBy::Hive, "hive"},
     {YieldBy::Colony, "colony"},
     {YieldBy::Queen, "queen"},
     {YieldBy::Yard, "yard"}}};

using BoxStays = std::map<std::int64_t, std::vector<std::pair<Id<Hive>, BoxStay>>>;

/// The day a box came off its hive for a run; the run's own where nobody said.
Day takenOff(const BoxStays& stays, const RunBoxLine& line, Day run) {
    std::optional<Day> taken;
    if (!line.box.box || !line.box.hive) return run;
    const auto own = stays.find(line.box.box->number);
    if (own == stays.end()) return run;
    for (const auto& [hive, stay] : own->second)
        if (hive == *line.box.hive && stay.to && *stay.to <= run && (!taken || *taken < *stay.to))
            taken = stay.to;
    return taken.value_or(run);
}

/// Who headed a colony on a day, or left it that day and nobody came.
std::optional<Id<Queen>> headedOn(const Read& file, Id<Colony> colony, Day on) {
    if (const auto stay = queenStayOn(file, colony, on)) return stay->queen;
    for (const QueenStay& stay : file.where<QueenStay>({is("colony", colony)}))
        if (stay.until == on) return stay.queen;
    return std::nullopt;
}

bool inTheYear(Day from, const std::optional<Day>& to, int year) {
    return from <= *makeDay(year, 12, 31) && (!to || *to > *makeDay(year, 1, 1));
}

/// A sum that grows share by share.
struct GivenSum {
    Mass mass;
    How how = How::Weighed;
    How partHow = How::Weighed;
    bool noted = false;
    bool revised = false;
    void add(Mass more, How moreHow, How part) {
        mass += more;
        how = weaker(how, moreHow);
        partHow = weaker(partHow, part);
    }
};

struct GivenSums {
    std::map<std::int64_t, GivenSum> of;
    GivenSum nobody;
};

/// What each colony, or queen, gave in a year.
GivenSums givenIn(const Read& file, const SeasonYield& season, YieldBy by) {
    GivenSums sums;
    const auto sumOf = [&](const std::optional<Id<Colony>>& colony,
                           const std::optional<Id<Queen>>& queen) -> GivenSum& {
        if (by == YieldBy::Colony) return colony ? sums.of[colony->number] : sums.nobody;
        return queen ? sums.of[queen->number] : sums.nobody;
    };
    for (const RunBalance& run : season.runs)
        for (const TakenShare& share : takenShares(file, run)) {
            if (!share.hive) continue;
            GivenSum& sum = sumOf(share.colony, share.queen);
            sum.add(share.mass, share.how, share.partHow);
            sum.revised = sum.revised || share.atClosing.has_value();
        }
    for (const YardYield& yard : season.yards)
        for (const HiveYield& hive : yard.hives) {
            if (!hive.mass || !hive.noted) continue;
            GivenSum& sum = by == YieldBy::Colony
                                ? sumOf(onlyColonyIn(file, hive.hive, season.year), std::nullopt)
                                : sumOf(std::nullopt, onlyQueenIn(file, hive.hive, season.year));
            sum.add(*hive.mass, hive.how, hive.partHow);
            sum.noted = true;
        }
    return sums;
}

void give(YieldOf& line, const GivenSums& now, const GivenSums& before, std::int64_t id) {
    if (const auto sum = now.of.find(id); sum != now.of.end()) {
        line.mass = sum->second.mass;
        line.how = sum->second.how;
        line.partHow = sum->second.partHow;
        line.noted = sum->second.noted;
        line.revised = sum->second.revised;
        line.producing = sum->second.mass > Mass() ? 1 : 0;
    }
    if (const auto sum = before.of.find(id); sum != before.of.end()) {
        line.before = sum->second.mass;
        line.beforeHow = sum->second.how;
        line.beforeNoted = sum->second.noted;
    }
}

void addStand(YieldOf& line, const std::string& hive) {
    if (line.stands.empty() || line.stands.back() != hive) line.stands.push_back(hive);
}

std::vector<YieldOf> colonyLines(const Read& file, int year, const GivenSums& now,
                                 const GivenSums& before) {
    std::map<std::int64_t, YieldOf> lines;
    const Day firstOfMay = *makeDay(year, 5, 1);
    const Day last = *makeDay(year, 12, 31);
    std::vector<Id<Hive>> hives;
    const auto stays = allColonyStays(file);
    for (const ColonyStay& stay : stays) hives.push_back(stay.hive);
    const HivesCalled called(file, hives);
    const auto moves = hiveMovesByHive(file);
    for (const ColonyStay& stay : stays) {
        if (!inTheYear(stay.from, stay.to, year)) continue;
        YieldOf& line = lines[stay.colony.id.number];
        line.colony = stay.colony.id;
        const Day on = stay.to ? std::min(*stay.to - std::chrono::days(1), last) : last;
        line.name = called.on(stay.hive, std::max(stay.from, on));
        addStand(line, line.name);
        if (const auto hive = file.find(stay.hive)) {
            const auto own = moves.find(stay.hive.number);
            const Hive then = own == moves.end() ? *hive : asItWas(*hive, own->second, on);
            const auto yard = file.find(then.yard);
            line.yardName = yard ? yard->name.text() : std::string();
        }
        if (stay.holds(firstOfMay)) line.standing = 1;
    }
    std::vector<YieldOf> all;
    for (auto& [id, line] : lines) {
        give(line, now, before, id);
        all.push_back(std::move(line));
    }
    return all;
}

std::vector<YieldOf> queenLines(const Read& file, int year, const GivenSums& now,
                                const GivenSums& before) {
    std::vector<YieldOf> all;
    const Day firstOfMay = *makeDay(year, 5, 1);
    const Day last = *makeDay(year, 12, 31);
    for (const Queen& queen : file.all<Queen>()) {
        YieldOf line;
        line.queen = queen.id;
        line.who = queen;
        bool there = false;
        for (const QueenAt& at : wayOfQueen(file, queen.id, last)) {
            if (!inTheYear(at.from, at.to, year)) continue;
            there = true;
            line.name = at.hive;
            line.yardName = at.yard;
            addStand(line, at.hive);
            if (at.from <= firstOfMay && (!at.to || firstOfMay < *at.to)) line.standing = 1;
        }
        give(line, now, before, queen.id.number);
        if (there || line.mass) all.push_back(std::move(line));
    }
    return all;
}

/// How what has no hive is known: by its own boxes and notes, where they are all of it.
How withoutHiveHow(const SeasonYield& season, Mass noHive) {
    Mass sum;
    How how = How::Weighed;
    for (const RunBalance& run : season.runs)
        for (const RunShare& share : run.shares) {
            if (share.hive || share.mass == Mass()) continue;
            sum += share.mass;
            how = weaker(how, share.how);
        }
    for (const YardYield& yard : season.yards) {
        if (!yard.noted) continue;
        sum += yard.total;
        how = weaker(how, yard.how);
    }
    return sum == noHive ? how : weaker(how, season.how);
}

YieldOf hiveLineOf(const HiveYield& hive, const YardYield& yard) {
    YieldOf line;
    line.hive = hive.hive;
    line.name = hive.mark;
    line.yardName = yard.yard.name.text();
    line.stands = {hive.mark};
    line.mass = hive.mass;
    line.how = hive.how;
    line.partHow = hive.partHow;
    line.noted = hive.noted;
    line.revised = hive.revised;
    line.before = hive.before;
    line.beforeHow = hive.beforeHow;
    line.beforeNoted = hive.beforeNoted;
    line.producing = hive.mass && *hive.mass > Mass() ? 1 : 0;
    line.standing = hive.standing ? 1 : 0;
    return line;
}

YieldOf yardLineOf(const YardYield& yard) {
    YieldOf line;
    line.yard = yard.yard.id;
    line.name = yard.yard.name.text();
    if (yard.total > Mass()) line.mass = yard.total;
    line.how = yard.how;
    line.partHow = yard.how;
    line.noted = yard.noted;
    line.before = yard.before;
    line.beforeHow = yard.beforeHow;
    line.producing = yard.producing;
    line.producingKnown = yard.producingKnown;
    line.standing = yard.standing;
    for (const HiveYield& hive : yard.hives) {
        line.noted = line.noted || hive.noted;
        line.revised = line.revised || hive.revised;
    }
    return line;
}

}  // namespace

std::string_view key(YieldBy by) {
    for (const auto& [each, name] : yieldByNames)
        if (each == by) return name;
    return {};
}

std::optional<YieldBy> yieldByNamed(std::string_view name) {
    for (const auto& [by, each] : yieldByNames)
        if (each == name) return by;
    return std::nullopt;
}

std::vector<TakenShare> takenShares(const Read& file, const RunBalance& balance) {
    std::vector<Id<Box>> ids;
    for (const RunBoxLine& line : balance.boxes)
        if (line.box.box) ids.push_back(*line.box.box);
    const BoxStays stays = staysOfAny(file, ids);
    std::vector<TakenShare> all;
    for (const RunShare& share : balance.shares) {
        std::vector<TakenShare> parts;
        const auto partOf = [&](Day taken) -> TakenShare& {
            TakenShare part;
            part.hive = share.hive;
            part.taken = taken;
            part.how = share.how;
            part.partHow = share.partHow;
            if (share.hive)
                if (const auto colony = colonyMetIn(file, *share.hive, taken)) {
                    part.colony = colony->id;
                    part.queen = headedOn(file, colony->id, taken);
                }
            for (TakenShare& had : parts)
                if (had.colony == part.colony && had.queen == part.queen) {
                    had.taken = std::max(had.taken, taken);
                    return had;
                }
            return parts.emplace_back(std::move(part));
        };
        for (std::size_t i = 0; i < balance.boxes.size(); ++i) {
            const RunBoxLine& line = balance.boxes[i];
            if (line.box.hive != share.hive) continue;
            TakenShare& part = partOf(takenOff(stays, line, balance.run.on));
            part.boxes.push_back(i);
            part.offG += line.offG.value_or(0);
        }
        if (parts.empty()) partOf(balance.run.on);
        if (parts.size() == 1) {
            parts.front().mass = share.mass;
            parts.front().atClosing = share.atClosing;
        } else {
            std::vector<std::int64_t> weights;
            for (const TakenShare& part : parts)
                weights.push_back(std::max<std::int64_t>(0, std::llround(part.offG)));
            const auto grams = largestRemainder(share.mass.grams(), weights);
            for (std::size_t i = 0; i < parts.size(); ++i) parts[i].mass = Mass::grams(grams[i]);
        }
        for (TakenShare& part : parts) all.push_back(std::move(part));
    }
    return all;
}

std::optional<Id<Colony>> onlyColonyIn(const Read& file, Id<Hive> hive, int year) {
    std::optional<Id<Colony>> only;
    for (const ColonyStay& stay : colonyStaysIn(file, hive)) {
        if (!inTheYear(stay.from, stay.to, year)) continue;
        if (only && *only != stay.colony.id) return std::nullopt;
        only = stay.colony.id;
    }
    return only;
}

std::optional<Id<Queen>> onlyQueenIn(const Read& file, Id<Hive> hive, int year) {
    const auto colony = onlyColonyIn(file, hive, year);
    if (!colony) return std::nullopt;
    std::optional<Id<Queen>> only;
    for (const QueenStay& stay : file.where<QueenStay>({is("colony", *colony)})) {
        if (!inTheYear(stay.since, stay.until, year)) continue;
        if (only && *only != stay.queen) return std::nullopt;
        only = stay.queen;
    }
    return only;
}

YieldsBy yieldsBy(const Read& file, const SeasonYield& season, const SeasonYield& before,
                  YieldBy by) {
    const OneState still(file);
    YieldsBy yields;
    yields.by = by;
    yields.year = season.year;
    yields.beforeYear = season.beforeYear;
    yields.total = season.total;
    yields.how = season.how;
    yields.before = season.before;
    yields.beforeHow = season.beforeHow;
    yields.allKnown = season.producingKnown;
    Mass sum;
    if (by == YieldBy::Hive || by == YieldBy::Yard) {
        for (const YardYield& yard : season.yards) {
            if (by == YieldBy::Yard) {
                if (yard.hives.empty() && yard.total == Mass() && !yard.before) continue;
                yields.lines.push_back(yardLineOf(yard));
                continue;
            }
            for (const HiveYield& hive : yard.hives) yields.lines.push_back(hiveLineOf(hive, yard));
        }
    } else {
        const GivenSums now = givenIn(file, season, by);
        const GivenSums then = givenIn(file, before, by);
        yields.lines = by == YieldBy::Colony ? colonyLines(file, season.year, now, then)
                                             : queenLines(file, season.year, now, then);
        std::stable_sort(yields.lines.begin(), yields.lines.end(),
                         [](const YieldOf& a, const YieldOf& b) {
                             return a.mass.value_or(Mass()) > b.mass.value_or(Mass());
                         });
        if (now.nobody.mass > Mass()) {
            yields.nobody = now.nobody.mass;
            yields.nobodyHow = now.nobody.how;
            yields.allKnown = false;
            sum += now.nobody.mass;
        }
    }
    for (const YieldOf& line : yields.lines) {
        yields.producing += line.producing;
        yields.standing += line.standing;
        sum += line.mass.value_or(Mass());
    }
    if (sum < season.total) {
        yields.noHive = season.total - sum;
        yields.noHiveHow = withoutHiveHow(season, *yields.noHive);
    }
    return yields;
}

}  // namespace combwright
