#include "core/actions/honey/fairs.h"

#include <algorithm>

#include "core/actions/honey/going_out.h"
#include "core/actions/honey/goods.h"
#include "core/actions/honey/goods_line.h"
#include "core/actions/storeroom/quarantine.h"
#include "core/storage/queries/vessel_holds.h"

namespace combwright {
namespace {

std::optional<Fair> fairCalled(const Read& file, const Name& name, Day day) {
    for (Fair& each : file.where<Fair>({is("on_day", day)}))
        if (each.name == name) return std::move(each);
    return std::nullopt;
}

/// Writes on the fair that something held was packed all the same.
void noteHeldPacked(const Read& file, Fair& fair, const std::optional<Id<Bottling>>& bottling,
                    Day on, const std::string& reason) {
    if (!bottling || reason.empty()) return;
    const auto holds = holdsOn(file, *bottling, on);
    if (!holds.empty()) addOverruled(fair.note, on, word(holds.front().why), reason);
}

/// The line of the box that is meant; refused as FairHome says.
Result<FairLine*> lineMeant(std::vector<FairLine>& lines, const HomeMeant& said, std::size_t place,
                            std::size_t groups) {
    if (!said.kind) {
        if (groups != lines.size())
            return Refusal{
                Code::WrongType,
                "home",
                {{"wanted", "which kind came home"}, {"value", std::to_string(said.home)}}};
        return &lines[place];
    }
    std::vector<FairLine*> of;
    for (FairLine& line : lines)
        if (line.kind == said.kind->id && (!said.bottling || line.bottling == said.bottling))
            of.push_back(&line);
    const std::string name = said.kind->name.text();
    if (of.empty()) return Refusal{Code::NotFound, "home", {{"name", name}}};
    if (of.size() > 1)
        return Refusal{
            Code::Ambiguous, "home", {{"name", name}, {"count", std::to_string(of.size())}}};
    return of.front();
}

Result<void> addPacked(Write& file, const Fair& fair, const GoodsMeant& goods,
                       const std::optional<Id<Bottling>>& bottling) {
    const auto price = goods.each ? goods.each : goods.kind.price;
    for (FairLine& line : file.where<FairLine>({is("fair", fair.id)})) {
        if (line.kind != goods.kind.id || line.bottling != bottling) continue;
        line.packed += Count(goods.count);
        if (goods.each) line.each = goods.each;
        file.change(line);
        return demandShelfHolds(file, goods.kind, line.packed.value(), "goods");
    }
    FairLine line;
    line.fair = fair.id;
    line.kind = goods.kind.id;
    line.bottling = bottling;
    line.packed = Count(goods.count);
    line.each = price;
    file.add(line);
    return demandShelfHolds(file, goods.kind, goods.count, "goods");
}

}  // namespace

Result<void> demandFairLine(const Read& file, const FairLine& line) {
    const auto fair = file.find(line.fair);
    if (line.packed.value() < 1) return Refusal{Code::OutOfRange, "brought", {{"low", "0"}}};
    if (fair && fair->closed && !line.home) return Refusal{Code::Missing, "home", {}};
    const std::int64_t not_sold = (line.home ? line.home->value() : 0) +
                                  (line.broken ? line.broken->value() : 0) +
                                  (line.given ? line.given->value() : 0);
    if (not_sold <= line.packed.value()) return {};
    const auto kind = file.find(line.kind);
    return Refusal{Code::TooMany,
                   "home",
                   {{"packed_of", kind ? kind->name.text() : std::string()},
                    {"most", std::to_string(line.packed.value())},
                    {"found", std::to_string(not_sold)}}};
}

const Fields& PackFair::fields() {
    static const Fields all =
        describe(field<&PackFair::on>("on"), field<&PackFair::fair>("fair_name"),
                 field<&PackFair::fairDay>("fair_day"), field<&PackFair::place>("place"),
                 field<&PackFair::goods>("goods"), field<&PackFair::change>("change_money"),
                 field<&PackFair::reason>("reason"), field<&PackFair::note>("note"));
    return all;
}

Result<Id<Fair>> PackFair::perform(Write& file) const {
    const Day held = fairDay.value_or(on);
    if (held < on) return Refusal{Code::Contradiction, "fair_day", {{"other", "on"}}};
    const auto meant = readGoods(file, goods, "goods");
    if (!meant) return meant.error();
    auto day = fairCalled(file, fair, held);
    if (day && day->closed) return Refusal{Code::Closed, "fair_name", {{"name", fair.text()}}};
    if (!day) {
        day = Fair{};
        day->name = fair;
        day->on = held;
        file.add(*day);
    }
    if (!place.empty()) day->place = place;
    if (change) day->change = change;
    if (!note.empty()) day->note = day->note.empty() ? note : day->note + "; " + note;
    for (const GoodsMeant& each : *meant) {
        const auto bottling = fillingOf(file, each.kind, each.bottling, held);
        if (auto ok = demandFillingOf(file, each.kind.id, bottling, held); !ok) return ok.error();
        if (auto tested = demandBurnTested(file, each.kind, on, "goods"); !tested)
            return tested.error();
        if (auto free = demandGoodsFree(file, each.kind, bottling, on, reason, "goods"); !free)
            return free.error();
        noteHeldPacked(file, *day, bottling, on, reason);
        if (auto packed = addPacked(file, *day, each, bottling); !packed) return packed.error();
    }
    file.change(*day);
    return day->id;
}

const Fields& FairHome::fields() {
    static const Fields all = describe(
        field<&FairHome::on>("on"), field<&FairHome::fair>("fair"), field<&FairHome::home>("home"),
        field<&FairHome::cash>("cash"), field<&FairHome::note>("note"));
    return all;
}

Result<Id<Fair>> FairHome::perform(Write& file) const {
    auto day = file.find(fair);
    if (!day) return Refusal{Code::NotFound, "fair", {}};
    if (day->closed) return Refusal{Code::OtherAction, "fair", {{"action", "amend fair_line"}}};
    if (on < day->on)
        return Refusal{
            Code::BeforeItBegan, "on", {{"name", day->name.text()}, {"since", isoText(day->on)}}};
    auto lines = file.where<FairLine>({is("fair", fair)});
    if (lines.empty()) return Refusal{Code::Missing, "goods", {}};
    const auto said = readHome(file, home, "home");
    if (!said) return said.error();
    for (std::size_t i = 0; i < said->size(); ++i) {
        const HomeMeant& each = (*said)[i];
        const auto line = lineMeant(lines, each, i, said->size());
        if (!line) return line.error();
        if ((*line)->home) {
            const auto kind = file.find((*line)->kind);
            return Refusal{Code::Duplicate, "home", {{"name", kind->name.text()}}};
        }
        (*line)->home = Count(each.home);
        if (each.broken) (*line)->broken = Count(*each.broken);
        if (each.given) (*line)->given = Count(*each.given);
    }
    day->closed = on;
    day->cash = cash;
    if (!note.empty()) day->note = day->note.empty() ? note : day->note + "; " + note;
    file.change(*day);
    for (FairLine& line : lines) {
        if (!line.home) line.home = Count(0);
        if (auto ok = demandFairLine(file, line); !ok) return ok.error();
        file.change(line);
    }
    return day->id;
}

}  // namespace combwright
