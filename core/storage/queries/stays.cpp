#include "core/storage/queries/stays.h"

#include <algorithm>

namespace combwright {
namespace {

/// The stays of one box on one hive, from its moves in the order they were made.
void addStays(std::vector<BoxStay>& stays, const std::vector<BoxMove>& moves, Id<Hive> hive) {
    std::optional<BoxStay> open;
    for (const BoxMove& move : moves) {
        const bool comes = move.toHive == hive;
        const bool leaves = move.fromHive == hive;
        if (leaves && !comes) {
            // A move without a coming: what was before it was not written down.
            if (!open) open = BoxStay{move.box, move.on, {}, {}, {}, {}};
            open->to = std::max(open->from, move.on);
            open->wentTo = move.toHive;
            open->wentToPlace = move.toPlace;
            stays.push_back(*open);
            open.reset();
        } else if (comes && !open) {
            open = BoxStay{move.box, move.on, {}, move.fromHive, {}, {}};
        }
    }
    if (open) stays.push_back(*open);
}

/// Of one box, by its moves.
std::vector<std::pair<Id<Hive>, BoxStay>> staysBy(const std::vector<BoxMove>& moves) {
    std::vector<std::pair<Id<Hive>, BoxStay>> all;
    std::vector<Id<Hive>> hives;
    for (const BoxMove& move : moves)
        for (const auto& hive : {move.fromHive, move.toHive})
            if (hive && std::find(hives.begin(), hives.end(), *hive) == hives.end())
                hives.push_back(*hive);
    for (const Id<Hive> hive : hives) {
        std::vector<BoxStay> stays;
        addStays(stays, moves, hive);
        for (const BoxStay& stay : stays) all.emplace_back(hive, stay);
    }
    std::stable_sort(all.begin(), all.end(),
                     [](const auto& a, const auto& b) { return a.second.from < b.second.from; });
    return all;
}

}  // namespace

std::vector<BoxStay> staysOn(const Read& file, Id<Hive> hive) {
    auto moves = file.where<BoxMove>({is("to_hive", hive)});
    for (BoxMove& move : file.where<BoxMove>({is("from_hive", hive)}))
        if (move.toHive != hive) moves.push_back(std::move(move));
    std::sort(moves.begin(), moves.end(), [](const BoxMove& a, const BoxMove& b) {
        return std::pair(a.box.number, a.id.number) < std::pair(b.box.number, b.id.number);
    });
    std::vector<BoxStay> stays;
    for (auto from = moves.begin(); from != moves.end();) {
        const auto to = std::find_if(from, moves.end(),
                                     [&](const BoxMove& move) { return move.box != from->box; });
        addStays(stays, std::vector<BoxMove>(from, to), hive);
        from = to;
    }
    return stays;
}

std::vector<std::pair<Id<Hive>, BoxStay>> staysOf(const Read& file, Id<Box> box) {
    return staysBy(file.where<BoxMove>({is("box", box)}));
}

std::map<std::int64_t, std::vector<std::pair<Id<Hive>, BoxStay>>> staysOfAny(
    const Read& file, const std::vector<Id<Box>>& boxes) {
    std::map<std::int64_t, std::vector<BoxMove>> moves;
    for (BoxMove& each : file.whereAny<BoxMove>("box", boxes))
        moves[each.box.number].push_back(std::move(each));
    std::map<std::int64_t, std::vector<std::pair<Id<Hive>, BoxStay>>> stays;
    for (const auto& [box, its] : moves) stays[box] = staysBy(its);
    return stays;
}

std::optional<Day> lastMoved(const Read& file, Id<Box> box, Day upTo) {
    Statement& statement =
        file.prepared("SELECT max(on_day) FROM box_move WHERE box_id = ? AND on_day <= ?");
    const std::string last = isoText(upTo);
    statement.bind(box.number).bind(std::string_view(last)).run();
    std::optional<Day> moved;
    while (statement.next()) moved = parseDay(statement.text(0));
    return moved;
}

std::optional<Id<Hive>> hiveUnder(const Read& file, Id<Box> box, Day on) {
    std::optional<Id<Hive>> hive;
    for (const BoxMove& move : file.where<BoxMove>({is("box", box)}))
        if (move.on <= on) hive = move.toHive;
    return hive;
}

}  // namespace combwright
