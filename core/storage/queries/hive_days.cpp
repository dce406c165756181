#include "core/storage/queries/hive_days.h"

#include <algorithm>
#include <set>
#include <tuple>
#include <utility>

#include "core/storage/queries/yards.h"

namespace combwright {
namespace {

std::vector<ColonyStay> staysByMoves(const Colony& colony, const std::vector<ColonyMove>& moves) {
    std::vector<ColonyStay> stays;
    Day from = colony.since;
    for (const ColonyMove& move : moves) {
        stays.push_back({colony, move.fromHive, from, move.on});
        from = move.on;
    }
    stays.push_back({colony, colony.hive, from, colony.ended});
    return stays;
}

}  // namespace

std::map<std::int64_t, std::vector<HiveMove>> hiveMovesByHive(const Read& file) {
    std::map<std::int64_t, std::vector<HiveMove>> byHive;
    for (HiveMove& move : file.all<HiveMove>()) byHive[move.hive.number].push_back(std::move(move));
    return byHive;
}

Hive asItWas(Hive hive, const std::vector<HiveMove>& moves, Day on) {
    for (auto move = moves.rbegin(); move != moves.rend() && move->on > on; ++move) {
        hive.yard = move->fromYard;
        hive.mark = move->fromMark;
    }
    return hive;
}

Hive asItWas(const Read& file, Hive hive, Day on) {
    const auto moves = file.where<HiveMove>({is("hive", hive.id)});
    return asItWas(std::move(hive), moves, on);
}

std::string calledOn(const Read& file, Id<Hive> id, Day on) {
    const auto hive = file.find(id);
    return hive ? asItWas(file, *hive, on).mark.text() : "#" + std::to_string(id.number);
}

HivesCalled::HivesCalled(const Read& file, std::vector<Id<Hive>> hives) {
    std::sort(hives.begin(), hives.end());
    hives.erase(std::unique(hives.begin(), hives.end()), hives.end());
    m_hives = file.findAny(hives);
    for (HiveMove& move : file.whereAny<HiveMove>("hive", hives))
        m_moves[move.hive.number].push_back(std::move(move));
}

std::string HivesCalled::on(Id<Hive> id, Day day) const {
    const auto hive = m_hives.find(id.number);
    if (hive == m_hives.end()) return "#" + std::to_string(id.number);
    const auto moves = m_moves.find(id.number);
    return moves == m_moves.end() ? hive->second.mark.text()
                                  : asItWas(hive->second, moves->second, day).mark.text();
}

std::vector<Yard> yardsOn(const Read& file, Day on) {
    auto yards = file.all<Yard>();
    std::erase_if(yards, [on](const Yard& yard) { return yard.closed && *yard.closed <= on; });
    std::stable_sort(yards.begin(), yards.end(),
                     [](const Yard& a, const Yard& b) { return a.walkOrder < b.walkOrder; });
    return yards;
}

std::vector<Hive> hivesOn(const Read& file, Id<Yard> yard, Day on) {
    // Those of the yard now, and those that ever left it.
    std::vector<Hive> hives = file.where<Hive>({is("yard", yard)});
    std::set<std::int64_t> had;
    for (const Hive& hive : hives) had.insert(hive.id.number);
    for (const HiveMove& move : file.where<HiveMove>({is("from_yard", yard)}))
        if (had.insert(move.hive.number).second)
            if (auto hive = file.find(move.hive)) hives.push_back(*std::move(hive));
    std::vector<std::pair<bool, Hive>> then;
    for (const Hive& hive : hives) {
        if (hive.since > on || (hive.closed && *hive.closed <= on)) continue;
        const Hive was = asItWas(file, hive, on);
        if (was.yard == yard) then.emplace_back(hive.yard != yard, was);
    }
    std::stable_sort(then.begin(), then.end(), [](const auto& a, const auto& b) {
        return std::tuple(a.first, a.second.standOrder, a.second.id) <
               std::tuple(b.first, b.second.standOrder, b.second.id);
    });
    std::vector<Hive> stood;
    for (auto& [elsewhere, hive] : then) stood.push_back(std::move(hive));
    return stood;
}

std::vector<ColonyStay> colonyStaysOf(const Read& file, const Colony& colony) {
    return staysByMoves(colony, file.where<ColonyMove>({is("colony", colony.id)}));
}

std::vector<ColonyStay> colonyStaysIn(const Read& file, Id<Hive> hive) {
    std::vector<Colony> colonies = file.where<Colony>({is("hive", hive)});
    std::set<std::int64_t> had;
    for (const Colony& colony : colonies) had.insert(colony.id.number);
    for (const ColonyMove& move : file.where<ColonyMove>({is("from_hive", hive)}))
        if (had.insert(move.colony.number).second)
            if (auto colony = file.find(move.colony)) colonies.push_back(*std::move(colony));
    std::vector<ColonyStay> stays;
    for (const Colony& colony : colonies)
        for (ColonyStay& stay : colonyStaysOf(file, colony))
            if (stay.hive == hive) stays.push_back(std::move(stay));
    std::stable_sort(stays.begin(), stays.end(), [](const ColonyStay& a, const ColonyStay& b) {
        return std::tuple(a.from, !a.to, a.colony.id) < std::tuple(b.from, !b.to, b.colony.id);
    });
    return stays;
}

std::vector<ColonyStay> allColonyStays(const Read& file) {
    std::map<std::int64_t, std::vector<ColonyMove>> moves;
    for (ColonyMove& move : file.all<ColonyMove>())
        moves[move.colony.number].push_back(std::move(move));
    std::vector<ColonyStay> all;
    for (const Colony& colony : file.all<Colony>())
        for (ColonyStay& stay : staysByMoves(colony, moves[colony.id.number]))
            all.push_back(std::move(stay));
    return all;
}

std::optional<ColonyStay> colonyLivingOn(const Read& file, Id<Hive> hive, Day on) {
    // Of a hive that saw many come and go only those that may have lived there that day are read.
    auto colonies = file.where<Colony>({is("hive", hive), isUnknown("ended"), isUpTo("since", on)});
    const auto add = [&colonies](std::vector<Colony> more) {
        for (Colony& each : more)
            if (std::none_of(colonies.begin(), colonies.end(),
                             [&](const Colony& had) { return had.id == each.id; }))
                colonies.push_back(std::move(each));
    };
    add(file.where<Colony>({is("hive", hive), isAfter("ended", on), isUpTo("since", on)}));
    for (const ColonyMove& left :
         file.where<ColonyMove>({is("from_hive", hive), isAfter("on_day", on)}))
        if (auto colony = file.find(left.colony)) add({*std::move(colony)});
    std::optional<ColonyStay> living;
    for (const Colony& colony : colonies)
        for (ColonyStay& stay : colonyStaysOf(file, colony))
            if (stay.hive == hive && stay.holds(on) &&
                (!living || std::tuple(living->from, !living->to, living->colony.id) <=
                                std::tuple(stay.from, !stay.to, stay.colony.id)))
                living = std::move(stay);
    return living;
}

std::optional<Colony> colonyMetIn(const Read& file, Id<Hive> hive, Day on) {
    if (auto living = colonyLivingOn(file, hive, on)) return std::move(living->colony);
    std::optional<Colony> gone;
    for (ColonyStay& stay : colonyStaysIn(file, hive))
        if (stay.to == on) gone = std::move(stay.colony);
    return gone;
}

namespace {

/// On the day it left the stand was still its own, unless another came at once.
bool ownToTheLast(const Read& file, const ColonyStay& stay) {
    return stay.to && !colonyLivingOn(file, stay.hive, *stay.to);
}

}  // namespace

bool everLivedIn(const Read& file, Id<Hive> hive) {
    return file.first<Colony>({is("hive", hive)}) ||
           file.first<ColonyMove>({is("from_hive", hive)});
}

bool speaksOf(const Read& file, const std::vector<ColonyStay>& stays, Id<Hive> hive, Day on) {
    return std::any_of(stays.begin(), stays.end(), [&](const ColonyStay& stay) {
        return stay.hive == hive && (stay.holds(on) || (stay.to == on && ownToTheLast(file, stay)));
    });
}

std::vector<HiveDays> daysOfColonyIn(const Read& file, Id<Hive> hive, Day on) {
    std::vector<HiveDays> spoken;
    const auto living = colonyLivingOn(file, hive, on);
    if (!living) {
        if (!everLivedIn(file, hive)) spoken.push_back({hive, std::nullopt, on});
        return spoken;
    }
    for (const ColonyStay& stay : colonyStaysOf(file, living->colony)) {
        if (stay.from > on) break;
        Day to = on;
        if (stay.to && *stay.to <= on)
            to = ownToTheLast(file, stay) ? *stay.to : *stay.to - days(1);
        if (stay.from <= to) spoken.push_back({stay.hive, stay.from, to});
    }
    return spoken;
}

bool wentWithColony(const Read& file, const BoxMove& move) {
    if (!move.fromHive || !move.toHive) return false;
    return file
        .first<ColonyMove>(
            {is("from_hive", *move.fromHive), is("to_hive", *move.toHive), is("on_day", move.on)})
        .has_value();
}

void lookBackAtColony(const Read& file, Id<Hive> hive, Day on,
                      const std::function<bool(DatedInspection& each)>& more) {
    auto stays = daysOfColonyIn(file, hive, on);
    if (stays.empty()) stays.push_back({hive, std::nullopt, on});
    for (auto stay = stays.rbegin(); stay != stays.rend(); ++stay)
        if (!lookBack(file, stay->hive, stay->from, stay->to + days(1), more)) return;
}

std::optional<Day> foundDeadOn(const Read& file, Id<Hive> hive, Day on) {
    if (!colonyLivingOn(file, hive, on)) return std::nullopt;
    std::optional<Day> dead;
    lookBackAtColony(file, hive, on, [&](const DatedInspection& each) {
        const Looked looked = each.inspection.seen.looked;
        if (looked == Looked::FoundDead) dead = each.on;
        return looked == Looked::LidOnly || looked == Looked::NotOpened;
    });
    return dead;
}

namespace {

/// The newest look up to a day that found the bees of a hive dead, by hive.
std::map<std::int64_t, Day> newestFoundDead(const Read& file, Day on) {
    // The word stands in the question, so that the index of just these looks is used.
    Statement& statement = file.prepared(
        "SELECT inspection.hive_id, max(visit.on_day) FROM inspection CROSS JOIN visit ON visit.id "
        "= inspection.visit_id WHERE inspection.looked = 'found dead' AND visit.on_day <= ? GROUP "
        "BY inspection.hive_id");
    const std::string last = isoText(on);
    statement.bind(std::string_view(last)).run();
    std::map<std::int64_t, Day> newest;
    while (statement.next())
        if (const auto day = parseDay(statement.text(1))) newest.emplace(statement.number(0), *day);
    return newest;
}

}  // namespace

std::int64_t coloniesAliveOn(const Read& file, Day on) {
    const OneState still(file);
    auto colonies = file.where<Colony>({isUnknown("ended"), isUpTo("since", on)});
    for (Colony& each : file.where<Colony>({isAfter("ended", on), isUpTo("since", on)}))
        colonies.push_back(std::move(each));
    // A find is rare; only where there was one on a stand of the colony is it looked at closely.
    const auto found = newestFoundDead(file, on);
    std::map<std::int64_t, std::vector<Id<Hive>>> left;
    if (!found.empty())
        for (const ColonyMove& move : file.all<ColonyMove>())
            left[move.colony.number].push_back(move.fromHive);
    return std::count_if(colonies.begin(), colonies.end(), [&](const Colony& colony) {
        auto stands = left[colony.id.number];
        stands.push_back(colony.hive);
        const bool mayBeDead = std::any_of(stands.begin(), stands.end(), [&](Id<Hive> hive) {
            const auto dead = found.find(hive.number);
            return dead != found.end() && dead->second >= colony.since;
        });
        return !mayBeDead || !foundDeadOn(file, hiveOfColony(file, colony, on), on);
    });
}

Id<Hive> hiveOfColony(const Read& file, const Colony& colony, Day on) {
    const auto stays = colonyStaysOf(file, colony);
    Id<Hive> hive = stays.front().hive;
    for (const ColonyStay& stay : stays)
        if (stay.from <= on) hive = stay.hive;
    return hive;
}

}  // namespace combwright
