#include "ui/wax_bench/candle_forms.h"

#include <QCoreApplication>

#include "core/actions/wax/candle_wishes.h"
#include "core/actions/wax/pours.h"
#include "core/places/wax_bench/candle_evenings.h"
#include "core/places/wax_bench/heat_watch.h"
#include "core/places/wax_bench/wax_bench.h"
#include "core/places/wax_bench/wax_outlook.h"
#include "core/storage/queries/names.h"
#include "core/words/figures.h"
#include "core/words/typed_words.h"
#include "core/words/words.h"
#include "ui/shell/form_reading.h"
#include "ui/shell/small_form.h"
#include "ui/wax_bench/wax_choices.h"
#include "ui/wax_bench/wax_forms.h"

namespace combwright {
namespace {

QString candleForm(const char* text) { return QCoreApplication::translate("candle_forms", text); }

/// A day that has to be said.
bool readDay(Session& session, QLineEdit* field, Day& day) {
    std::optional<Day> said;
    if (!readDayField(session, field, true, said)) return false;
    if (said) {
        day = *said;
        return true;
    }
    session.tell(candleForm("%1: say the day, for instance 11 Dec.").arg(field->accessibleName()),
                 true);
    field->setFocus();
    return false;
}

/// The blocks there are, as pour-candles reads them; the first one is offered.
QString blocksTyped(const WaxBench& bench) {
    for (const BlockLedger& each : bench.blocks)
        if (each.left) return fromUtf8(each.block.name.text());
    return {};
}

}  // namespace

bool askToPour(QWidget* parent, Session& session, Day on) {
    const WaxBench bench = waxBench(session.read(), on);
    if (bench.moulds.empty()) {
        session.tell(candleForm("No mould is written down yet: M adds one."), true);
        return false;
    }
    SmallForm form(parent, session, candleForm("Pour candles"));
    form.scrollFields();
    // First of all: below so many fields it would be out of sight.
    form.caution(hotWaxCaution() + QLatin1Char(' ') +
                 candleForm("Beeswax shrinks: fill twice. A holder of bark, tin or glass is sold "
                            "only after a burn test."));
    auto* mould = form.choice(candleForm("Moulds"), "mould");
    addMoulds(mould, bench);
    auto* good = form.line(candleForm("Good ones"), "good", candleForm("4"));
    auto* failed = form.line(candleForm("Failed"), "failed", candleForm("go back as wax"));
    auto* seconds = form.line(candleForm("Seconds"), "seconds", candleForm("kept or given"));
    auto* cycles = form.line(candleForm("Filled how often"), "cycles", candleForm("the mould's"));
    auto* blocks = form.line(candleForm("Wax of blocks"), "blocks",
                             candleForm("L 180 g, or L alone: as much as they take"), 30);
    auto* returned = form.line(candleForm("Back to the pot"), "returned",
                               candleForm("50 g of sprues and failed ones"), 30);
    auto* degrees = form.line(candleForm("Poured at"), "temperature", shownTemperature(72).text());
    auto* says = form.say(QStringLiteral(" "));
    says->setObjectName(QStringLiteral("heat_says"));
    auto* wick = form.line(candleForm("Wick"), "wick", candleForm("the mould's"));
    auto* used = form.line(candleForm("Wick used in all"), "wick_used",
                           candleForm("the mould's length for each"));
    auto* note = form.line(candleForm("Note"), "note", candleForm("may stay empty"));
    auto* comes = form.say(QStringLiteral(" "));
    comes->setObjectName(QStringLiteral("outlook"));
    blocks->setText(blocksTyped(bench));
    const auto mouldChosen = [&]() -> const MouldShown* {
        for (const MouldShown& each : bench.moulds)
            if (chosenId<Mould>(mould) == each.mould.id) return &each;
        return nullptr;
    };
    const auto look = [&] {
        const MouldShown* of = mouldChosen();
        std::int64_t pieces = 0;
        for (QLineEdit* each : {good, failed, seconds}) {
            std::optional<Count> count;
            if (readsAs(each->text(), count) && count) pieces += count->value();
        }
        form.sayAgain(comes, !of ? QString()
                             : pieces > 0
                                 ? pourOutlookText(session.read(), *of, pieces, bench.blocks, on)
                                 : mouldOutlookText(*of));
        const auto said = heatSaid(typedTemperature(degrees->text()));
        form.sayAgain(says, said ? said->words : QString());
    };
    form.fitWith(mould, [&] {
        if (const MouldShown* of = mouldChosen(); of && good->text().isEmpty())
            good->setPlaceholderText(QString::number(of->mould.cavities.value()));
        look();
    });
    for (QLineEdit* each : {good, failed, seconds, degrees})
        QObject::connect(each, &QLineEdit::textChanged, &form, look);
    form.beginIn(bench.moulds.size() > 1 ? static_cast<QWidget*>(mould) : good);
    form.keepDraft(QStringLiteral("wax pour"));
    form.onAccept([&] {
        PourCandles deed;
        deed.on = on;
        const auto of = chosenId<Mould>(mould);
        if (!of) return false;
        deed.mould = *of;
        std::optional<Count> many;
        if (!readField(session, good, many) || !readField(session, failed, deed.failed) ||
            !readField(session, seconds, deed.seconds) ||
            !readField(session, cycles, deed.cycles) ||
            !readField(session, returned, deed.returned) ||
            !readField(session, degrees, deed.temperature) ||
            !readField(session, used, deed.wickUsed))
            return false;
        deed.good = many.value_or(Count(0));
        deed.blocks = typedWords(blocks);
        deed.wick = typedWords(wick);
        deed.note = typedWords(note);
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToFinish(QWidget* parent, Session& session, Day on) {
    const WaxBench bench = waxBench(session.read(), on);
    if (bench.unfinished.empty()) {
        session.tell(candleForm("Nothing waits to be finished."), true);
        return false;
    }
    SmallForm form(parent, session, candleForm("Finish candles"));
    auto* pour = form.choice(candleForm("Pour"), "pour");
    for (const PourShown& each : bench.unfinished)
        pour->addItem(candleForm("%1 %2, %3")
                          .arg(static_cast<qlonglong>(each.pour.good.value()))
                          .arg(fromUtf8(each.candle), shortDayText(each.pour.on)),
                      static_cast<qlonglong>(each.pour.id.number));
    auto* work = form.choice(candleForm("What was done"), "work");
    work->addItem(candleForm("out of the mould"), static_cast<int>(CandleWork::Released));
    work->addItem(candleForm("foot trimmed to the holder, wick cut"),
                  static_cast<int>(CandleWork::Trimmed));
    work->addItem(candleForm("paired and labelled: on the shelf"),
                  static_cast<int>(CandleWork::Labelled));
    auto* broke = form.line(candleForm("Broke on the way"), "broke", candleForm("go back as wax"));
    auto* note = form.line(candleForm("Note"), "note", candleForm("may stay empty"));
    auto* comes = form.say(QStringLiteral(" "));
    comes->setObjectName(QStringLiteral("outlook"));
    form.say(candleForm("On the label: trim the wick to %1, never leave it burning, on a plate, "
                        "away from children and animals.")
                 .arg(shownLength(trimmedWickMm).text()));
    form.fitWith(pour, [&] {
        for (const PourShown& each : bench.unfinished) {
            if (chosenId<Pour>(pour) != each.pour.id) continue;
            work->setCurrentIndex(each.pour.trimmed ? 2 : each.pour.released ? 1 : 0);
            const bool early = each.setBy && *each.setBy > on;
            form.sayAgain(comes, early ? candleForm("It sets until %1: taken out earlier it tears.")
                                             .arg(shortDayText(*each.setBy))
                                       : QString());
        }
    });
    form.onAccept([&] {
        FinishCandles deed;
        deed.on = on;
        const auto of = chosenId<Pour>(pour);
        if (!of) return false;
        deed.pour = *of;
        deed.work = static_cast<CandleWork>(work->currentData().toInt());
        if (!readField(session, broke, deed.broke)) return false;
        deed.note = typedWords(note);
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToWish(QWidget* parent, Session& session, Day on) {
    SmallForm form(parent, session, candleForm("Candles wanted"));
    auto* kind = form.choice(candleForm("Candle"), "kind");
    addGoods(kind, session.read(), GoodsWhat::Candle, {});
    if (kind->count() == 0) {
        session.tell(candleForm("No candle is written down yet: M adds a mould and the candle it "
                                "makes."),
                     true);
        return false;
    }
    auto* count = form.line(candleForm("How many"), "count", candleForm("60"));
    auto* by = form.line(candleForm("Wanted by"), "by", candleForm("11 Dec"));
    auto* what = form.line(candleForm("What for"), "what_for", candleForm("fair"));
    auto* order = form.line(candleForm("Wanted most is 1"), "order", candleForm("may stay empty"));
    auto* shades = form.line(candleForm("Shades it may be of"), "shades",
                             candleForm("light, mid; empty for any"));
    auto* note = form.line(candleForm("Note"), "note", candleForm("may stay empty"));
    // What was wished last is most likely for the same day.
    const auto dates = candleDates(session.read(), on);
    if (!dates.empty()) {
        by->setText(fromUtf8(isoText(dates.front().by)));
        what->setText(fromUtf8(dates.front().whatFor));
    }
    form.beginIn(kind);
    form.keepDraft(QStringLiteral("wax wish"));
    form.onAccept([&] {
        WishCandles deed;
        deed.on = on;
        const auto of = chosenId<GoodsKind>(kind);
        if (!of) return false;
        deed.kind = *of;
        std::optional<Count> many;
        if (!readField(session, count, many)) return false;
        deed.count = many.value_or(Count(0));
        if (!readDay(session, by, deed.by) || !readField(session, order, deed.order)) return false;
        deed.whatFor = typedWords(what);
        deed.shades = shadesInEnglish(shades->text().simplified()).toStdString();
        deed.note = typedWords(note);
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToDropWish(QWidget* parent, Session& session, Day on) {
    SmallForm form(parent, session, candleForm("No longer wanted"));
    auto* wish = form.choice(candleForm("Which"), "wish");
    for (const CandleWish& each : session.read().where<CandleWish>({isFrom("wanted_by", on)}))
        if (!each.dropped)
            wish->addItem(
                candleForm("%1 %2 by %3 %4")
                    .arg(static_cast<qlonglong>(each.count.value()))
                    .arg(fromUtf8(nameOf(session.read(), GoodsKind::table, each.kind.number)),
                         shortDayText(each.by), fromUtf8(each.whatFor)),
                static_cast<qlonglong>(each.id.number));
    if (wish->count() == 0) {
        session.tell(candleForm("No candles are wanted from today on."), true);
        return false;
    }
    auto* note = form.line(candleForm("Why"), "note", candleForm("may stay empty"));
    form.onAccept([&] {
        const auto of = chosenId<CandleWish>(wish);
        return of &&
               session.run(DropWish{.on = on, .wish = *of, .note = typedWords(note)}).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askForEvenings(QWidget* parent, Session& session, Day on) {
    SmallForm form(parent, session, candleForm("Free evenings"));
    auto* from = form.line(candleForm("From"), "from", candleForm("15 Nov"));
    auto* to = form.line(candleForm("To"), "to", candleForm("10 Dec"));
    auto* weekdays =
        form.line(candleForm("Weekdays"), "weekdays", candleForm("mon wed fri; empty for all"), 20);
    auto* cycles =
        form.line(candleForm("Pours an evening"), "cycles", candleForm("as the mould says"));
    auto* last = form.choice(candleForm("The last one"), "last");
    last->addItem(candleForm("for pouring too"), 0);
    last->addItem(candleForm("kept for trimming, wicks and labels"), 1);
    form.say(
        candleForm("Both hands free: wax on heat is never left alone. A small mould gives one "
                   "pour a weekday evening, at most two."));
    const auto dates = candleDates(session.read(), on);
    if (!dates.empty()) to->setPlaceholderText(dayText(dates.front().by - days(1)));
    form.beginIn(from);
    form.keepDraft(QStringLiteral("wax evenings"));
    form.onAccept([&] {
        SetEvenings deed;
        deed.on = on;
        if (!readDay(session, from, deed.from) || !readDay(session, to, deed.to)) return false;
        deed.weekdays = weekdaysInEnglish(weekdays->text().simplified()).toStdString();
        if (!readField(session, cycles, deed.cycles)) return false;
        if (last->currentData().toInt() == 1) deed.lastFinishing = true;
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askForEvening(QWidget* parent, Session& session, Day on) {
    SmallForm form(parent, session, candleForm("One evening"));
    auto* day = form.line(candleForm("Evening"), "evening", candleForm("10 Dec"));
    auto* what = form.choice(candleForm("It is"), "what");
    what->addItem(candleForm("free for pouring"), 0);
    what->addItem(candleForm("kept for trimming, wicks and labels"), 1);
    what->addItem(candleForm("not free any more"), 2);
    auto* cycles =
        form.line(candleForm("Pours that evening"), "cycles", candleForm("as the mould says"));
    form.fitWith(what, [&] { form.showField(cycles, what->currentData().toInt() == 0); });
    form.beginIn(day);
    form.onAccept([&] {
        SetEvening deed;
        deed.on = on;
        if (!readDay(session, day, deed.evening)) return false;
        const int is = what->currentData().toInt();
        if (is == 1) deed.finishing = true;
        if (is == 2) deed.free = false;
        if (is == 0 && !readField(session, cycles, deed.cycles)) return false;
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

}  // namespace combwright
