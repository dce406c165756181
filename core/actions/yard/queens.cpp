#include "core/actions/yard/queens.h"

#include "core/actions/storeroom/quarantine.h"
#include "core/actions/yard/colony_steps.h"
#include "core/places/yard/queens.h"
#include "core/storage/queries/queens.h"

namespace combwright {
namespace {

constexpr std::int64_t firstYear = 1900;

/// Colour and number are worn by a queen that is marked.
bool wearsMark(const std::string& colour, const std::string& number) {
    return !colour.empty() || !number.empty();
}

/// The colony of a hive, on a day by which its queens are known.
Result<LivingColony> headedColony(const Read& file, Id<Hive> hive, Day on,
                                  const std::string& field) {
    auto colony = livingColony(file, hive, on, field);
    if (!colony) return colony;
    if (auto by = demandQueenBy(file, colony->colony.id, on); !by) {
        Refusal refusal = by.error();
        refusal.values.front().second = colony->hive.mark.text();
        return refusal;
    }
    return colony;
}

}  // namespace

Result<void> demandRearedBy(const std::optional<Count>& reared, Day on) {
    if (!reared) return {};
    if (reared->value() < firstYear)
        return Refusal{Code::OutOfRange,
                       "reared",
                       {{"low", std::to_string(firstYear)}, {"high", std::to_string(yearOf(on))}}};
    if (reared->value() > yearOf(on))
        return Refusal{Code::InTheFuture, "reared", {{"value", std::to_string(reared->value())}}};
    return {};
}

const Fields& PutQueen::fields() {
    static const Fields all =
        describe(field<&PutQueen::on>("on"), field<&PutQueen::hive>("hive"),
                 field<&PutQueen::reared>("reared"), field<&PutQueen::from>("origin"),
                 field<&PutQueen::mother>("mother"), field<&PutQueen::marked>("marked"),
                 field<&PutQueen::colour>("colour"), field<&PutQueen::number>("number"),
                 field<&PutQueen::clipped>("clipped"), field<&PutQueen::left>("left_how"),
                 field<&PutQueen::note>("note"));
    return all;
}

Result<Id<Queen>> PutQueen::perform(Write& file) const {
    const auto colony = headedColony(file, hive, on, "hive");
    if (!colony) return colony.error();
    if (auto free = demandHiveFree(file, hive, on, "hive"); !free) return free.error();
    if (auto may = demandRearedBy(reared, on); !may) return may.error();
    if (left == QueenLeft::Moved)
        return Refusal{Code::OtherAction, "left_how", {{"action", "move-queen"}}};
    if (mother) {
        const auto older = file.find(*mother);
        if (!older) return Refusal{Code::NotFound, "mother", {}};
        if (older->reared && reared && *older->reared > *reared)
            return Refusal{Code::Contradiction, "mother", {{"other", "reared"}}};
    }
    endQueenStay(file, colony->colony.id, on, left.value_or(QueenLeft::Replaced));
    endWaits(file, colony->colony.id, on);
    Queen queen;
    queen.reared = reared;
    queen.mother = mother;
    queen.from = from.value_or(QueenFrom::NotKnown);
    queen.marked = wearsMark(colour, number) ? std::optional(true) : marked;
    queen.colour = colour;
    queen.number = number;
    queen.clipped = clipped;
    queen.note = note;
    const Id<Queen> put = file.add(queen);
    beginQueenStay(file, put, colony->colony.id, on);
    return put;
}

const Fields& MarkQueen::fields() {
    static const Fields all =
        describe(field<&MarkQueen::on>("on"), field<&MarkQueen::hive>("hive"),
                 field<&MarkQueen::marked>("marked"), field<&MarkQueen::colour>("colour"),
                 field<&MarkQueen::number>("number"), field<&MarkQueen::clipped>("clipped"),
                 field<&MarkQueen::reared>("reared"), field<&MarkQueen::note>("note"));
    return all;
}

Result<Id<Queen>> MarkQueen::perform(Write& file) const {
    const auto colony = headedColony(file, hive, on, "hive");
    if (!colony) return colony.error();
    if (auto may = demandRearedBy(reared, on); !may) return may.error();
    const bool said = wearsMark(colour, number) || marked || clipped || reared || !note.empty();
    if (!said) return Refusal{Code::NothingToDo, "colour", {{"name", colony->hive.mark.text()}}};
    auto queen = file.find(metQueen(file, colony->colony.id, on).queen);
    const Row before = toRow(*queen);
    if (wearsMark(colour, number)) queen->marked = true;
    if (marked) queen->marked = marked;
    if (!colour.empty()) queen->colour = colour;
    if (!number.empty()) queen->number = number;
    if (clipped) queen->clipped = clipped;
    if (reared) queen->reared = reared;
    addNote(queen->note, note);
    if (toRow(*queen) == before)
        return Refusal{Code::NothingToDo, "colour", {{"name", colony->hive.mark.text()}}};
    file.change(*queen);
    return queen->id;
}

const Fields& MoveQueen::fields() {
    static const Fields all =
        describe(field<&MoveQueen::on>("on"), field<&MoveQueen::hive>("hive"),
                 field<&MoveQueen::to>("to_hive"), field<&MoveQueen::left>("left_how"),
                 field<&MoveQueen::step>("step"), field<&MoveQueen::notSeenOn>("not_seen_on"));
    return all;
}

Result<Id<Queen>> MoveQueen::perform(Write& file) const {
    if (hive == to) return Refusal{Code::NothingToDo, "to_hive", {}};
    const auto from = headedColony(file, hive, on, "hive");
    if (!from) return from.error();
    const auto there = headedColony(file, to, on, "to_hive");
    if (!there) return there.error();
    if (auto free = demandHiveFree(file, hive, on, "hive"); !free) return free.error();
    if (auto free = demandHiveFree(file, to, on, "to_hive"); !free) return free.error();
    if (auto wait = demandWait({step, notSeenOn}, on); !wait) return wait.error();
    if (left == QueenLeft::Moved)
        return Refusal{Code::OtherAction, "left_how", {{"action", "move-queen"}}};
    const QueenStay stay = metQueen(file, from->colony.id, on);
    endQueenStay(file, from->colony.id, on, QueenLeft::Moved);
    endQueenStay(file, there->colony.id, on, left.value_or(QueenLeft::Replaced));
    endWaits(file, there->colony.id, on);
    beginQueenStay(file, stay.queen, there->colony.id, on);
    if (step) beginWait(file, hive, from->colony.id, on, *step, notSeenOn, {});
    return stay.queen;
}

const Fields& LoseQueen::fields() {
    static const Fields all =
        describe(field<&LoseQueen::on>("on"), field<&LoseQueen::hive>("hive"),
                 field<&LoseQueen::left>("left_how"), field<&LoseQueen::step>("step"),
                 field<&LoseQueen::notSeenOn>("not_seen_on"), field<&LoseQueen::note>("note"));
    return all;
}

Result<Id<Queen>> LoseQueen::perform(Write& file) const {
    const auto colony = headedColony(file, hive, on, "hive");
    if (!colony) return colony.error();
    if (left == QueenLeft::Moved)
        return Refusal{Code::OtherAction, "left_how", {{"action", "move-queen"}}};
    if (left == QueenLeft::Swarmed)
        return Refusal{Code::OtherAction, "left_how", {{"action", "swarmed"}}};
    if (left == QueenLeft::WithColony)
        return Refusal{Code::OtherAction, "left_how", {{"action", "end-colony"}}};
    if (auto wait = demandWait({step, notSeenOn}, on); !wait) return wait.error();
    const QueenStay stay = metQueen(file, colony->colony.id, on);
    endQueenStay(file, colony->colony.id, on, left.value_or(QueenLeft::Lost));
    if (!note.empty()) {
        auto queen = file.find(stay.queen);
        addNote(queen->note, note);
        file.change(*queen);
    }
    if (step) beginWait(file, hive, colony->colony.id, on, *step, notSeenOn, {});
    return stay.queen;
}

const Fields& WaitForQueen::fields() {
    static const Fields all =
        describe(field<&WaitForQueen::on>("on"), field<&WaitForQueen::hive>("hive"),
                 field<&WaitForQueen::step>("step"), field<&WaitForQueen::notSeenOn>("not_seen_on"),
                 field<&WaitForQueen::note>("note"));
    return all;
}

Result<Id<QueenWait>> WaitForQueen::perform(Write& file) const {
    const auto colony = livingColony(file, hive, on, "hive");
    if (!colony) return colony.error();
    if (auto wait = demandWait({step, notSeenOn}, on); !wait) return wait.error();
    return beginWait(file, hive, colony->colony.id, on, step, notSeenOn, note);
}

const Fields& EndQueenWait::fields() {
    static const Fields all =
        describe(field<&EndQueenWait::on>("on"), field<&EndQueenWait::hive>("hive"),
                 field<&EndQueenWait::note>("note"));
    return all;
}

Result<Id<QueenWait>> EndQueenWait::perform(Write& file) const {
    const auto colony = livingColony(file, hive, on, "hive");
    if (!colony) return colony.error();
    const auto waits = waitingFor(file, colony->hive, on);
    if (!waits) return Refusal{Code::NothingToDo, "hive", {{"name", colony->hive.mark.text()}}};
    // Where a look alone began it there is no record yet that could be ended.
    const Id<QueenWait> id = waits->record ? *waits->record
                                           : beginWait(file, hive, colony->colony.id, waits->since,
                                                       waits->step, waits->notSeenOn, {});
    auto wait = file.find(id);
    wait->over = on;
    addNote(wait->note, note);
    file.change(*wait);
    return id;
}

const Fields& SetQueenColour::fields() {
    static const Fields all =
        describe(field<&SetQueenColour::on>("on"), field<&SetQueenColour::digit>("digit"),
                 field<&SetQueenColour::colour>("colour"));
    return all;
}

Result<Id<QueenColour>> SetQueenColour::perform(Write& file) const {
    if (digit.value() > 9) return Refusal{Code::OutOfRange, "digit", {{"low", "0"}, {"high", "9"}}};
    const int year = yearOf(on) / 10 * 10 + static_cast<int>(digit.value());
    if (marksQueensOf(file, year, on) == colour.text())
        return Refusal{Code::NothingToDo, "colour", {{"name", colour.text()}}};
    if (auto same = file.first<QueenColour>({is("digit", digit), is("since", on)})) {
        same->colour = colour;
        file.change(*same);
        return same->id;
    }
    return file.add(QueenColour{{}, digit, colour, on});
}

}  // namespace combwright
