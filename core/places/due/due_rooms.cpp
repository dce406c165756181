#include "core/places/due/due_rooms.h"

#include <algorithm>
#include <map>

#include "core/places/health/dead_outs.h"
#include "core/places/honey_room/room_boxes.h"
#include "core/places/pull/clearers.h"
#include "core/places/pull/wets_home.h"
#include "core/places/storeroom/freezer.h"
#include "core/storage/queries/hive_days.h"

namespace combwright {
namespace {

std::string dueNumber(std::int64_t number) { return std::to_string(number); }

bool wantedYard(std::optional<Id<Yard>> yard, std::optional<Id<Yard>> of) {
    return !yard || yard == of;
}

std::optional<Id<Yard>> yardUnder(const Read& file, std::optional<Id<Hive>> hive, Day today) {
    const auto found = file.find(hive);
    return found ? std::optional(asItWas(file, *found, today).yard) : std::nullopt;
}

void addExtract(const Read& file, Day today, std::optional<Id<Yard>> yard,
                std::vector<DueItem>& due) {
    std::map<std::string, DueItem> lots;
    for (const RoomBox& box : allWaiting(file, today).waiting) {
        if (!wantedYard(yard, box.yard)) continue;
        const bool stands = box.plannedFor.has_value();
        const auto run = box.entry && !stands ? file.find(box.entry->extraction) : std::nullopt;
        const Day began = stands ? *box.plannedFor : box.off.value_or(run ? run->on : today);
        const std::string of = dueNumber(box.yard ? box.yard->number : 0);
        const std::string id = stands ? "pull-y" + of + "-" + isoText(began)
                               : run  ? "extract-r" + dueNumber(run->id.number)
                                      : "extract-y" + of;
        auto [found, isNew] = lots.try_emplace(id);
        DueItem& lot = found->second;
        if (isNew) {
            lot.rule = DueRule::Extract;
            lot.where = stands ? DueWhere::Pull : DueWhere::HoneyRoom;
            lot.yard = box.yard;
            lot.since = lot.from = began;
            lot.about = run ? run->name.text() : std::string();
            lot.id = id;
            lot.count = 0;
        }
        if (lot.yard != box.yard) lot.yard.reset();
        lot.since = std::min(lot.since, began);
        lot.from = lot.since;
        const auto by = stands ? box.plannedFor : box.extractBy;
        if (by && (!lot.by || *by < *lot.by)) lot.by = by;
        ++*lot.count;
    }
    for (auto& [id, lot] : lots) due.push_back(std::move(lot));
}

void addClearers(const Read& file, Day today, std::optional<Id<Yard>> yard,
                 std::vector<DueItem>& due) {
    const Clearers boards = clearers(file, today);
    for (const ClearerIn& each : boards.in) {
        DueItem item;
        item.rule = DueRule::Clearers;
        item.hive = each.board.hive;
        item.yard = yardUnder(file, each.board.hive, today);
        if (!wantedYard(yard, item.yard)) continue;
        item.id = "clearer-out-" + dueNumber(each.board.id.number);
        item.since = each.board.on;
        // A board needs its night and day; the boxes come with it.
        item.from = std::min(each.board.on + days(1), each.outBy);
        item.by = each.outBy;
        item.about = "out";
        if (each.boxes > 0) item.count = each.boxes;
        due.push_back(std::move(item));
    }
    if (!boards.plan) return;
    for (const ClearerRound& round : boards.rounds)
        for (const Id<Hive> hive : round.ids) {
            DueItem item;
            item.rule = DueRule::Clearers;
            item.hive = hive;
            item.yard = yardUnder(file, hive, today);
            if (!wantedYard(yard, item.yard)) continue;
            item.id = "clearer-in-h" + dueNumber(hive.number) + "-" + isoText(boards.plan->forDay);
            item.since = boards.plan->on;
            item.from = round.in;
            item.by = round.in;
            item.other = round.out;
            item.about = "in";
            const auto need =
                std::find_if(boards.need.begin(), boards.need.end(),
                             [&](const ClearerNeed& each) { return each.hive == hive; });
            if (need != boards.need.end()) item.count = need->boxes;
            item.take = {{"clearer board", 1, std::nullopt}};
            due.push_back(std::move(item));
        }
}

void addWets(const Read& file, Day today, std::optional<Id<Yard>> yard,
             const std::vector<ShelfBox>& comb, std::vector<DueItem>& due) {
    const WetsHome home = wetsHome(file, today, comb);
    std::map<std::int64_t, DueItem> back;
    for (const WetBox& wet : home.go) {
        const auto to = yardUnder(file, wet.to, today);
        if (!wantedYard(yard, to)) continue;
        auto [found, isNew] = back.try_emplace(wet.to->number);
        DueItem& item = found->second;
        const Day off = wetSince(file, *wet.box.box);
        if (isNew) {
            item.rule = DueRule::Wets;
            item.hive = wet.to;
            item.yard = to;
            item.since = off;
            item.count = 0;
        }
        item.since = std::min(item.since, off);
        item.about += (item.about.empty() ? "" : ", ") + wet.box.name;
        ++*item.count;
    }
    for (auto& [hive, item] : back) {
        item.id = "wets-h" + dueNumber(hive) + "-" + isoText(item.since);
        item.from = std::min(item.since, today);
        item.take = {{"wet box", *item.count, std::nullopt}};
        due.push_back(std::move(item));
    }
    for (const WetsOut& out : home.out) {
        DueItem item;
        item.rule = DueRule::Wets;
        item.hive = out.box.hive;
        item.yard = yardUnder(file, out.box.hive, today);
        if (!wantedYard(yard, item.yard)) continue;
        item.id = "wets-off-b" + dueNumber(out.box.id.number) + "-" + isoText(out.since);
        item.since = out.since;
        item.other = out.since;
        item.from = out.from;
        item.by = out.to;
        item.about = out.name;
        item.count = 1;
        due.push_back(std::move(item));
    }
    if (home.stay.empty() || yard) return;
    DueItem stay;
    stay.rule = DueRule::Wets;
    stay.where = DueWhere::Storeroom;
    stay.since = today;
    stay.count = static_cast<std::int64_t>(home.stay.size());
    for (const WetBox& wet : home.stay) {
        stay.since = std::min(stay.since, wetSince(file, *wet.box.box));
        stay.about += (stay.about.empty() ? "" : ", ") + wet.box.name;
    }
    stay.from = stay.since;
    stay.id = "wets-stay-" + isoText(stay.since);
    due.push_back(std::move(stay));
}

void addFreezer(const Read& file, Day today, const std::vector<ShelfBox>& comb,
                std::vector<DueItem>& due) {
    const FreezerLane lane = freezerLane(file, today, comb);
    for (const FreezerRoundRow& row : lane.in) {
        DueItem item;
        item.rule = DueRule::Freezer;
        item.where = DueWhere::Storeroom;
        item.id = "freezer-out-" + dueNumber(row.round.id.number);
        item.since = row.round.in;
        item.from = row.due.value_or(row.round.in);
        item.about = "out";
        item.count = row.frames;
        if (row.round.hours) item.value = static_cast<double>(row.round.hours->value());
        due.push_back(std::move(item));
    }
    if (lane.next.rounds.empty()) return;
    const FreezerNext& next = lane.next.rounds.front();
    DueItem item;
    item.rule = DueRule::Freezer;
    item.where = DueWhere::Storeroom;
    item.id = "freezer-in-" + dueNumber(lane.freezer ? lane.freezer->id.number : 0);
    item.since = std::min(today, next.in);
    item.from = next.in;
    item.about = "in";
    item.count = next.frames();
    due.push_back(std::move(item));
}

void addDeadOuts(const Read& file, Day today, std::optional<Id<Yard>> yard,
                 std::vector<DueItem>& due) {
    for (const DeadOutCard& card : deadOuts(file, today)) {
        if (!card.unanswered() || !card.colony.ended) continue;
        DueItem item;
        item.rule = DueRule::DeadOut;
        item.where = DueWhere::Storeroom;
        item.hive = card.colony.hive;
        item.yard = yardUnder(file, card.colony.hive, today);
        if (!wantedYard(yard, item.yard)) continue;
        item.id = "dead-out-c" + dueNumber(card.colony.id.number);
        item.since = item.from = *card.colony.ended;
        // Its combs may be gone by now; what it died of is asked all the same.
        if (card.heldFrames() > 0) item.count = card.heldFrames();
        if (card.uncountedBoxes() > 0) item.value = static_cast<double>(card.uncountedBoxes());
        due.push_back(std::move(item));
    }
}

}  // namespace

Day wetSince(const Read& file, const Box& box) {
    Day since = box.since;
    for (const BoxMove& move : file.where<BoxMove>({is("box", box.id)}))
        if (move.toPlace == BoxPlace::Wet) since = move.on;
    return since;
}

void addDueRooms(const Read& file, Day today, std::optional<Id<Yard>> yard,
                 std::vector<DueItem>& due) {
    addExtract(file, today, yard, due);
    addClearers(file, today, yard, due);
    const auto comb = shelfComb(file, today);
    addWets(file, today, yard, comb, due);
    if (!yard) addFreezer(file, today, comb, due);
    addDeadOuts(file, today, yard, due);
}

}  // namespace combwright
