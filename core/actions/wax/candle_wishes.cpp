#include "core/actions/wax/candle_wishes.h"

#include <algorithm>

#include "core/actions/wax/wax_rules.h"
#include "core/storage/queries/wax_ledger.h"

namespace combwright {

const Fields& WishCandles::fields() {
    static const Fields all =
        describe(field<&WishCandles::on>("on"), field<&WishCandles::kind>("goods_kind"),
                 field<&WishCandles::count>("count"), field<&WishCandles::by>("wanted_by"),
                 field<&WishCandles::whatFor>("what_for"), field<&WishCandles::fair>("fair"),
                 field<&WishCandles::order>("wish_order"), field<&WishCandles::shades>("shades"),
                 field<&WishCandles::note>("note"));
    return all;
}

Result<Id<CandleWish>> WishCandles::perform(Write& file) const {
    CandleWish wish;
    wish.kind = kind;
    wish.count = count;
    wish.on = on;
    wish.by = by;
    wish.whatFor = whatFor;
    wish.fair = fair;
    wish.order = order;
    wish.shades = shades;
    wish.note = note;
    if (auto ok = demandWish(file, wish); !ok) return ok.error();
    return file.add(wish);
}

const Fields& DropWish::fields() {
    static const Fields all =
        describe(field<&DropWish::on>("on"), field<&DropWish::wish>("candle_wish"),
                 field<&DropWish::note>("note"));
    return all;
}

Result<Id<CandleWish>> DropWish::perform(Write& file) const {
    auto found = file.find(wish);
    if (!found) return Refusal{Code::NotFound, "candle_wish"};
    if (on < found->on) return Refusal{Code::BeforeItBegan, "on", {{"since", isoText(found->on)}}};
    if (found->dropped)
        return Refusal{Code::Closed, "candle_wish", {{"since", isoText(*found->dropped)}}};
    found->dropped = on;
    if (!note.empty()) found->note += (found->note.empty() ? "" : "; ") + note;
    file.change(*found);
    return wish;
}

const Fields& SetEvenings::fields() {
    static const Fields all = describe(
        field<&SetEvenings::on>("on"), field<&SetEvenings::from>("from_day"),
        field<&SetEvenings::to>("to_day"), field<&SetEvenings::weekdays>("weekdays"),
        field<&SetEvenings::cycles>("cycles"), field<&SetEvenings::lastFinishing>("last_finishing"),
        field<&SetEvenings::note>("note"));
    return all;
}

Result<std::vector<Id<FreeEvening>>> SetEvenings::perform(Write& file) const {
    if (to < from) return liesBefore("to_day", to, "from_day", from);
    if (from + days(366) < to)
        return Refusal{Code::OutOfRange, "to_day", {{"high", isoText(from + days(366))}}};
    if (cycles && cycles->value() < 1) return Refusal{Code::OutOfRange, "cycles", {{"low", "1"}}};
    const auto meant = readWeekdays(weekdays);
    if (!meant) return meant.error();
    std::vector<Day> evenings;
    for (Day day = from; day <= to; day = day + days(1))
        if ((*meant)[weekdayOf(day)]) evenings.push_back(day);
    const auto there = freeEvenings(file, from, to);
    std::vector<Id<FreeEvening>> made;
    for (const Day day : evenings) {
        FreeEvening evening;
        evening.on = day;
        evening.cycles = cycles;
        if (lastFinishing == true && day == evenings.back()) evening.finishing = true;
        evening.note = note;
        const bool same = std::any_of(there.begin(), there.end(), [&](const FreeEvening& each) {
            return each.on == day && each.cycles == evening.cycles &&
                   each.finishing == evening.finishing;
        });
        if (!same) made.push_back(file.add(evening));
    }
    if (made.empty()) return Refusal{Code::NothingToDo, "weekdays"};
    return made;
}

const Fields& SetEvening::fields() {
    static const Fields all =
        describe(field<&SetEvening::on>("on"), field<&SetEvening::evening>("evening_day"),
                 field<&SetEvening::free>("free"), field<&SetEvening::cycles>("cycles"),
                 field<&SetEvening::finishing>("finishing"), field<&SetEvening::note>("note"));
    return all;
}

Result<Id<FreeEvening>> SetEvening::perform(Write& file) const {
    if (cycles && cycles->value() < 1) return Refusal{Code::OutOfRange, "cycles", {{"low", "1"}}};
    if (free == false && (cycles || finishing == true))
        return Refusal{Code::Contradiction, "free", {{"other", cycles ? "cycles" : "finishing"}}};
    const auto there = freeEvenings(file, evening, evening);
    const bool same = there.empty() ? free == false
                                    : free != false && there.front().cycles == cycles &&
                                          there.front().finishing == finishing;
    if (same) return Refusal{Code::NothingToDo, "evening_day"};
    FreeEvening made;
    made.on = evening;
    made.cycles = cycles;
    made.finishing = finishing;
    made.free = free;
    made.note = note;
    return file.add(made);
}

}  // namespace combwright
