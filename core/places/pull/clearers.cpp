#include "core/places/pull/clearers.h"

#include <QCoreApplication>
#include <algorithm>
#include <map>
#include <set>

#include "core/model/storeroom/equipment.h"
#include "core/places/honey_room/room_boxes.h"
#include "core/places/pull/pull_input.h"
#include "core/storage/queries/constants.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/yards.h"
#include "core/trade/pull/clearer_rounds.h"
#include "core/words/words.h"

namespace combwright {
namespace {

/// Bad weather puts a pull off; a plan whose day is longer ago is past. Planning assumption, no
/// source.
constexpr int planHoldsDays = 14;

bool isIn(const ClearerBoard& board, Day on) {
    return board.on <= on && (!board.off || on < *board.off);
}

std::optional<PullPlan> planInHand(const Read& file, Day on) {
    std::optional<PullPlan> plan;
    for (PullPlan& each : file.all<PullPlan>())
        if (each.on <= on) plan = std::move(each);
    if (plan && plan->forDay + days(planHoldsDays) < on) return std::nullopt;
    return plan;
}

/// Where a box stood that evening, by its moves: a past day is told as it was.
bool stoodOn(const Read& file, const Box& box, Id<Hive> hive, Day on) {
    std::optional<BoxMove> last;
    std::optional<BoxMove> next;
    for (BoxMove& move : file.where<BoxMove>({is("box", box.id)})) {
        auto& nearest = move.on <= on ? last : next;
        if (!nearest || (move.on <= on ? move.on >= nearest->on : move.on < nearest->on))
            nearest = std::move(move);
    }
    if (last) return last->toPlace == BoxPlace::OnHive && last->toHive == hive;
    if (next) return next->fromPlace == BoxPlace::OnHive && next->fromHive == hive;
    return box.place == BoxPlace::OnHive && box.hive == hive;
}

/// How many boxes the plan takes off each hive and that still stand there, by the hive's number.
std::map<std::int64_t, int> boxesToCome(const Read& file, const std::optional<PullPlan>& plan,
                                        Day on) {
    std::map<std::int64_t, int> boxes;
    if (!plan) return boxes;
    const std::set<std::int64_t> presumed = presumedIn(file, *plan, on);
    for (const PullLine& line : file.where<PullLine>({is("plan", plan->id)})) {
        const auto box = file.find(line.box);
        if (line.verdict == PullVerdict::Take && box && stoodOn(file, *box, line.hive, on) &&
            !presumed.contains(box->id.number))
            ++boxes[line.hive.number];
    }
    return boxes;
}

ClearerIn boardRow(const Read& file, const ClearerBoard& board, std::int64_t outByDays, Day on) {
    ClearerIn row;
    row.board = board;
    row.hive = nameOf(file, Hive::table, board.hive.number);
    if (const auto hive = file.find(board.hive))
        row.yard = nameOf(file, Yard::table, hive->yard.number);
    row.daysIn = (on - board.on).count();
    row.outBy = board.on + days(outByDays);
    row.state = on > row.outBy    ? ClearerIn::State::Overdue
                : on == row.outBy ? ClearerIn::State::Due
                                  : ClearerIn::State::Clearing;
    return row;
}

void planRounds(Clearers& boards, Day on) {
    std::vector<std::int64_t> boxes;
    std::vector<std::int64_t> yards;
    for (const ClearerNeed& each : boards.need) {
        boxes.push_back(each.boxes);
        yards.push_back(each.of.number);
    }
    const auto many = static_cast<std::int64_t>(boxes.size());
    const std::int64_t owned = boards.owned.value_or(many);
    const std::int64_t now = boards.free().value_or(many);
    // Two days before the pull, or this evening where that has come; where all boards are in, when
    // the first of them come out.
    Day in = boards.plan ? std::max(on, boards.plan->forDay - days(boardDays)) : on;
    if (now < 1 && !boards.in.empty())
        in = std::max(in, boards.in.front().board.on + days(boardDays));
    for (const auto& round : clearerRounds(boxes, now, owned, yards)) {
        ClearerRound made{in, in + days(boardDays), {}, {}};
        for (const std::size_t index : round) {
            made.hives.push_back(boards.need[index].mark);
            made.ids.push_back(boards.need[index].hive);
        }
        boards.rounds.push_back(std::move(made));
        in = in + days(boardDays);
    }
}

QString clearerSay(const char* text) { return QCoreApplication::translate("pull", text); }

}  // namespace

std::optional<std::int64_t> Clearers::free() const {
    if (!owned) return std::nullopt;
    return std::max<std::int64_t>(0, *owned - static_cast<std::int64_t>(in.size()));
}

int Clearers::due() const {
    return static_cast<int>(std::count_if(in.begin(), in.end(), [](const ClearerIn& each) {
        return each.state != ClearerIn::State::Clearing;
    }));
}

std::vector<Id<Hive>> clearedHives(const Read& file, Day on) {
    std::vector<Id<Hive>> hives;
    for (const ClearerBoard& board : file.all<ClearerBoard>())
        if (isIn(board, on)) hives.push_back(board.hive);
    return hives;
}

std::optional<std::int64_t> clearerBoardsOwned(const Read& file, Day on) {
    std::optional<std::int64_t> owned;
    Day counted{};
    for (const Equipment& each : file.all<Equipment>()) {
        if (each.item != EquipmentItem::ClearerBoard || !each.onHand || each.since > on) continue;
        Count onHand = *each.onHand;
        Day since = each.since;
        for (const EquipmentCount& count : file.where<EquipmentCount>({is("equipment", each.id)}))
            if (count.on <= on && count.on >= since) {
                since = count.on;
                onHand = count.onHand;
            }
        owned = owned.value_or(0) + onHand.value();
        counted = std::max(counted, since);
    }
    if (!owned) return std::nullopt;
    // What was under supers that day lay not in the shed.
    for (const ClearerBoard& board : file.all<ClearerBoard>())
        if (board.on < counted && isIn(board, counted)) ++*owned;
    return owned;
}

Clearers clearers(const Read& file, Day on) {
    Clearers boards;
    boards.plan = planInHand(file, on);
    boards.owned = clearerBoardsOwned(file, on);
    boards.outByDays = static_cast<std::int64_t>(constantOr(file, "clearer_out_days", {}, on, 3));
    std::map<std::int64_t, int> boxes = boxesToCome(file, boards.plan, on);
    for (const ClearerBoard& board : file.all<ClearerBoard>()) {
        if (!isIn(board, on)) continue;
        boards.in.push_back(boardRow(file, board, boards.outByDays, on));
        if (const auto found = boxes.find(board.hive.number); found != boxes.end()) {
            boards.in.back().boxes = found->second;
            boxes.erase(found);
        }
    }
    std::stable_sort(boards.in.begin(), boards.in.end(),
                     [](const auto& a, const auto& b) { return a.board.on < b.board.on; });
    for (const Yard& yard : openYards(file))
        for (const Hive& hive : openHives(file, yard.id))
            if (const auto found = boxes.find(hive.id.number); found != boxes.end())
                boards.need.push_back(
                    {hive.id, hive.mark.text(), yard.id, yard.name.text(), found->second});
    planRounds(boards, on);
    return boards;
}

std::vector<Explained> explainClearers(const Read& file, const Clearers& boards, Day on) {
    std::vector<Explained> figures;
    const auto out = constantInForce(file, "clearer_out_days", {}, on);
    const std::string source =
        out ? constantSource(*out) : std::string("common practice, no source");
    for (const ClearerIn& each : boards.in) {
        Explained figure;
        figure.what = clearerSay("Board under the supers of %1").arg(fromUtf8(each.hive));
        figure.answer = clearerSay("out by %1").arg(shortDayText(each.outBy));
        note(&figure.working, "days_in", static_cast<double>(each.daysIn), "days",
             "since " + isoText(each.board.on));
        note(&figure.working, "clearer_out_days", static_cast<double>(boards.outByDays), "days", {},
             source);
        figures.push_back(std::move(figure));
    }
    if (!boards.rounds.empty()) {
        Explained figure;
        figure.what = clearerSay("Rounds of boards");
        figure.answer = QString::number(boards.rounds.size());
        note(&figure.working, "hives_needing_boards", static_cast<double>(boards.need.size()), "");
        if (boards.owned) {
            note(&figure.working, "boards_owned", static_cast<double>(*boards.owned), "",
                 "in the shed when counted + in hives that day");
            note(&figure.working, "boards_in", static_cast<double>(boards.in.size()), "");
        }
        note(&figure.working, "board_days", boardDays, "days", {}, "common practice, no source");
        note(&figure.working, "board_rounds", static_cast<double>(boards.rounds.size()), "",
             "a yard in one trip, most boxes first; a round goes in when the one before comes "
             "out");
        figures.push_back(std::move(figure));
    }
    return figures;
}

}  // namespace combwright
