#include "core/actions/boxes/late_moves.h"

#include <algorithm>
#include <set>
#include <tuple>

#include "core/storage/queries/names.h"
#include "core/storage/queries/yards.h"

namespace combwright {
namespace {

using Stack = std::vector<std::int64_t>;

bool leavesStack(const BoxMove& move, Id<Hive> hive) {
    return move.fromHive == hive && move.fromPlace == BoxPlace::OnHive;
}

bool joinsStack(const BoxMove& move, Id<Hive> hive) {
    return move.toHive == hive && move.toPlace == BoxPlace::OnHive;
}

void sortByDay(std::vector<BoxMove>& moves) {
    std::sort(moves.begin(), moves.end(), [](const BoxMove& a, const BoxMove& b) {
        return std::tuple(a.on, a.id.number) < std::tuple(b.on, b.id.number);
    });
}

/// The level a move names, no higher than the top.
std::size_t levelIn(const Stack& stack, const std::optional<Count>& level) {
    if (!level) return stack.size();
    return std::min(static_cast<std::size_t>(level->value()), stack.size());
}

/// Where a box that was put into the old stack stands in the new one: under the same box, or on
/// top.
std::size_t placeIn(const Stack& now, const Stack& old, std::size_t level) {
    for (std::size_t at = level; at < old.size(); ++at) {
        const auto above = std::find(now.begin(), now.end(), old[at]);
        if (above != now.end()) return static_cast<std::size_t>(above - now.begin());
    }
    return now.size();
}

}  // namespace

std::vector<BoxMove> movesAt(const Read& file, Id<Hive> hive) {
    std::vector<BoxMove> moves = file.where<BoxMove>({is("to_hive", hive)});
    for (BoxMove& move : file.where<BoxMove>({is("from_hive", hive)}))
        if (move.toHive != hive) moves.push_back(std::move(move));
    sortByDay(moves);
    return moves;
}

std::vector<BoxMove> lateMovesAt(const Read& file, Id<Hive> hive, Day on) {
    const bool late = file.first<BoxMove>({is("to_hive", hive), isAfter("on_day", on)}) ||
                      file.first<BoxMove>({is("from_hive", hive), isAfter("on_day", on)});
    return late ? movesAt(file, hive) : std::vector<BoxMove>{};
}

bool anyAfter(const std::vector<BoxMove>& moves, Day on) {
    return !moves.empty() && moves.back().on > on;
}

void followLate(Write& file, Id<Hive> hive, const std::vector<BoxMove>& before, Day from) {
    const std::vector<BoxMove> after = movesAt(file, hive);
    std::set<std::int64_t> had;
    std::set<std::int64_t> has;
    for (const BoxMove& move : before) had.insert(move.id.number);
    for (const BoxMove& move : after) has.insert(move.id.number);
    std::vector<BoxMove> all = after;
    for (const BoxMove& move : before)
        if (!has.contains(move.id.number)) all.push_back(move);
    sortByDay(all);

    Stack old;
    Stack now;
    std::vector<BoxMove> changed;
    for (const BoxMove& each : all) {
        const bool wasThere = had.contains(each.id.number);
        const bool isThere = has.contains(each.id.number);
        BoxMove move = each;
        if (leavesStack(move, hive)) {
            if (wasThere) std::erase(old, move.box.number);
            const auto found = std::find(now.begin(), now.end(), move.box.number);
            if (isThere && found != now.end()) {
                move.fromLevel = Count(found - now.begin());
                now.erase(found);
            }
        }
        if (joinsStack(move, hive)) {
            const std::size_t wasAt = levelIn(old, move.toLevel);
            const std::size_t at = wasThere ? placeIn(now, old, wasAt) : levelIn(now, move.toLevel);
            if (wasThere)
                old.insert(old.begin() + static_cast<std::ptrdiff_t>(wasAt), move.box.number);
            if (isThere) {
                now.insert(now.begin() + static_cast<std::ptrdiff_t>(at), move.box.number);
                move.toLevel = Count(static_cast<std::int64_t>(at));
            }
        }
        if (isThere && move.on >= from &&
            (move.fromLevel != each.fromLevel || move.toLevel != each.toLevel))
            changed.push_back(std::move(move));
    }

    std::vector<Box> standing = boxesOn(file, hive);
    Stack stands;
    for (const Box& box : standing) stands.push_back(box.id.number);
    if (!std::is_permutation(stands.begin(), stands.end(), now.begin(), now.end())) return;
    for (BoxMove& move : changed) file.change(move);
    for (Box& box : standing) {
        const Count level(std::find(now.begin(), now.end(), box.id.number) - now.begin());
        if (box.level == level) continue;
        box.level = level;
        file.change(box);
    }
}

Result<void> demandNotMovedSince(const Read& file, const Box& box, Day on, const char* field) {
    const auto moves = file.where<BoxMove>({is("box", box.id)});
    if (moves.empty() || moves.back().on <= on) return {};
    return Refusal{
        Code::MovedOn,
        field,
        {{"box", nameOf(file, Box::table, box.id.number)}, {"moved", isoText(moves.back().on)}}};
}

}  // namespace combwright
