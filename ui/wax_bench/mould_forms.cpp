#include "ui/wax_bench/mould_forms.h"

#include <QCoreApplication>

#include "core/actions/honey/goods.h"
#include "core/actions/wax/moulds.h"
#include "core/places/wax_bench/mould_change.h"
#include "core/places/wax_bench/wax_bench.h"
#include "core/places/wax_bench/wax_outlook.h"
#include "core/words/figures.h"
#include "core/words/words.h"
#include "ui/shell/form_reading.h"
#include "ui/shell/small_form.h"
#include "ui/wax_bench/wax_choices.h"

namespace combwright {
namespace {

QString mouldForm(const char* text) { return QCoreApplication::translate("mould_forms", text); }

QString burnCaution() {
    return mouldForm(
        "Bark burns, wood chars, glass cracks: a holder that goes with the candle is "
        "not sold before one was burnt to the end, watched, on a plate.");
}

/// What water, the scales or the size say a cavity holds: one of them.
enum class VolumeBy { Water = 100, Said = 101, Nobody = 102, Scales = 103 };

/// A candle is weighed in grams: a figure alone is no kilograms.
bool readCandle(const QString& text, std::optional<Mass>& mass) {
    std::optional<Number> grams;
    if (!readsAs(text, grams)) return readsAs(text, mass);
    mass = grams ? std::optional(Mass::roundedGrams(grams->value())) : std::nullopt;
    return true;
}

AddMould addLike(const Mould& mould, Day on) {
    AddMould deed;
    deed.on = on;
    deed.mould = mould.name;
    deed.kind = mould.kind;
    deed.cavities = mould.cavities;
    deed.volume = mould.volume;
    deed.measured = mould.measured;
    deed.shape = mould.shape;
    deed.diameter = mould.diameter;
    deed.tip = mould.tip;
    deed.height = mould.height;
    deed.oneWay = mould.oneWay;
    deed.madeOf = mould.madeOf;
    deed.wick = mould.wick;
    deed.wickLength = mould.wickLength;
    deed.cycles = mould.cycles;
    deed.setHours = mould.setHours;
    deed.oneWeighs = mould.oneWeighs;
    deed.note = mould.note;
    return deed;
}

}  // namespace

bool askToAddMould(QWidget* parent, Session& session, Day on) {
    SmallForm form(parent, session, mouldForm("Moulds and one-way holders"));
    form.scrollFields();
    auto* name = form.line(mouldForm("Name"), "mould", mouldForm("Skeps"));
    auto* kind = form.choice(mouldForm("The candle they make"), "kind");
    addGoods(kind, session.read(), GoodsWhat::Candle, mouldForm("a new kind"));
    // "Skeps" make the skep where there is one; what is called otherwise makes a new candle.
    QObject::connect(name, &QLineEdit::textEdited, &form, [kind](const QString& typed) {
        int makes = 0;
        for (int n = 1; n < kind->count(); ++n)
            if (typed.startsWith(kind->itemText(n), Qt::CaseInsensitive)) makes = n;
        kind->setCurrentIndex(makes);
    });
    auto* called = form.line(mouldForm("The new candle's name"), "new_kind", mouldForm("skep"));
    auto* cavities = form.line(mouldForm("Cavities in all"), "cavities", mouldForm("4"));
    auto* by = form.choice(mouldForm("One cavity's volume"), "volume_by");
    by->addItem(mouldForm("grams of water that fill it"), static_cast<int>(VolumeBy::Water));
    by->addItem(mouldForm("millilitres, as somebody said"), static_cast<int>(VolumeBy::Said));
    by->addItem(mouldForm("from its size: round and straight"),
                static_cast<int>(MouldShape::Cylinder));
    by->addItem(mouldForm("from its size: taper"), static_cast<int>(MouldShape::Taper));
    by->addItem(mouldForm("what one candle weighs"), static_cast<int>(VolumeBy::Scales));
    by->addItem(mouldForm("nobody knows yet"), static_cast<int>(VolumeBy::Nobody));
    auto* volume = form.line(mouldForm("Water in g, or ml"), "volume", mouldForm("47"));
    auto* weighs = form.line(mouldForm("One candle, in g"), "one_weighs", mouldForm("310"));
    auto* across = form.line(mouldForm("Across at the foot"), "diameter", shownLength(76.2).text());
    auto* tip = form.line(mouldForm("Across at the tip"), "tip", shownLength(15).text());
    auto* height = form.line(mouldForm("High"), "height", shownLength(69.9).text());
    auto* oneWay = form.choice(mouldForm("The mould"), "one_way");
    oneWay->addItem(mouldForm("comes off and is filled again"), 0);
    oneWay->addItem(mouldForm("goes with the candle: bark, tin, glass"), 1);
    auto* madeOf = form.line(mouldForm("Made of"), "made_of", mouldForm("bark"));
    auto* wick = form.line(mouldForm("Wick"), "wick", mouldForm("#1"));
    auto* length = form.line(mouldForm("Wick for one"), "wick_length", shownLength(120).text());
    auto* cycles = form.line(mouldForm("Pours an evening"), "cycles", mouldForm("1"));
    auto* hours = form.line(mouldForm("Sets in hours"), "set_hours", mouldForm("may stay empty"));
    auto* note = form.line(mouldForm("Note"), "note", mouldForm("may stay empty"));
    auto* comes = form.say(QStringLiteral(" "));
    comes->setObjectName(QStringLiteral("outlook"));
    auto* mind = form.caution(QStringLiteral(" "));
    const auto shaped = [by] { return by->currentData().toInt() < 100; };
    const auto is = [by](VolumeBy how) {
        return by->currentData().toInt() == static_cast<int>(how);
    };
    const auto look = [&] {
        Mould draft;
        draft.since = on;
        std::optional<Number> number;
        if (!shaped()) {
            if (is(VolumeBy::Scales))
                readCandle(weighs->text(), draft.oneWeighs);
            else if (!is(VolumeBy::Nobody))
                readsAs(volume->text(), number);
            if (number && number->value() > 0) draft.volume = number;
            draft.measured = is(VolumeBy::Water);
        } else {
            draft.shape = chosen<MouldShape>(by);
            readsAs(tip->text(), draft.tip);
            readsAs(height->text(), draft.height);
        }
        readsAs(across->text(), draft.diameter);
        readsAs(hours->text(), draft.setHours);
        form.sayAgain(comes, mouldOutlookText(mouldShown(session.read(), draft, on)));
    };
    form.fitWith(kind, [&] { form.showField(called, !chosenId<GoodsKind>(kind)); });
    form.fitWith(by, [&] {
        form.showField(volume, is(VolumeBy::Water) || is(VolumeBy::Said));
        form.showField(weighs, is(VolumeBy::Scales));
        form.showField(height, shaped());
        form.showField(tip, chosen<MouldShape>(by) == MouldShape::Taper && shaped());
        look();
    });
    form.fitWith(oneWay, [&] {
        const bool goes = oneWay->currentData().toInt() == 1;
        form.showField(madeOf, goes);
        form.sayAgain(mind, goes ? burnCaution() : QString());
    });
    for (QLineEdit* each : {volume, weighs, across, tip, height, hours})
        QObject::connect(each, &QLineEdit::textChanged, &form, look);
    form.beginIn(name);
    form.keepDraft(QStringLiteral("wax mould"));
    form.onAccept([&] {
        AddMould deed;
        deed.on = on;
        if (!readWaxName(session, name, deed.mould)) return false;
        std::optional<Count> many;
        if (!readField(session, cavities, many)) return false;
        deed.cavities = many.value_or(Count(0));
        if (!shaped()) {
            // In grams, or with its unit.
            if (is(VolumeBy::Scales) && !readCandle(weighs->text(), deed.oneWeighs))
                return readField(session, weighs, deed.oneWeighs);
            if (volume->isVisible() && !readField(session, volume, deed.volume)) return false;
            // Who says "by water" says what it weighed.
            if (is(VolumeBy::Water))
                deed.measured = true;
            else if (deed.volume)
                deed.measured = false;
        } else {
            deed.shape = chosen<MouldShape>(by);
            if (!readField(session, height, deed.height)) return false;
            if (tip->isVisible() && !readField(session, tip, deed.tip)) return false;
        }
        if (!readField(session, across, deed.diameter) ||
            !readField(session, length, deed.wickLength) ||
            !readField(session, cycles, deed.cycles) || !readField(session, hours, deed.setHours))
            return false;
        if (oneWay->currentData().toInt() == 1) {
            deed.oneWay = true;
            deed.madeOf = typedWords(madeOf);
        }
        deed.wick = typedWords(wick);
        deed.note = typedWords(note);
        deed.kind = chosenId<GoodsKind>(kind);
        if (deed.kind) return session.run(deed).has_value();
        AddGoods goods;
        goods.on = on;
        goods.what = GoodsWhat::Candle;
        if (!readWaxName(session, called, goods.kind)) return false;
        return session.together([&](Season& season) -> Result<void> {
            const auto made = perform(season, goods);
            if (!made) return made.error();
            deed.kind = *made;
            const auto mould = perform(season, deed);
            if (!mould) return mould.error();
            return {};
        });
    });
    return form.exec() == QDialog::Accepted;
}

bool askToRetireMould(QWidget* parent, Session& session, Day on) {
    const WaxBench bench = waxBench(session.read(), on);
    if (bench.moulds.empty()) {
        session.tell(mouldForm("No mould is written down yet."), true);
        return false;
    }
    SmallForm form(parent, session, mouldForm("Moulds that are gone"));
    auto* mould = form.choice(mouldForm("Which"), "mould");
    addMoulds(mould, bench);
    auto* note = form.line(mouldForm("Note"), "note", mouldForm("lent, broken; may stay empty"));
    form.onAccept([&] {
        const auto of = chosenId<Mould>(mould);
        return of && session.run(RetireMould{.on = on, .mould = *of, .note = typedWords(note)})
                         .has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToTestBurn(QWidget* parent, Session& session, Day on) {
    const WaxBench bench = waxBench(session.read(), on);
    if (bench.moulds.empty()) {
        session.tell(mouldForm("No mould is written down yet: M adds one."), true);
        return false;
    }
    SmallForm form(parent, session, mouldForm("One burnt to test"));
    auto* mould = form.choice(mouldForm("Candle of"), "mould");
    addMoulds(mould, bench);
    auto* comes = form.say(QStringLiteral(" "));
    comes->setObjectName(QStringLiteral("outlook"));
    auto* wick = form.line(mouldForm("Wick"), "wick", mouldForm("the mould's"));
    auto* block = form.choice(mouldForm("Wax of"), "block");
    block->addItem(mouldForm("nobody said"), 0);
    for (const BlockLedger& each : bench.blocks)
        block->addItem(blockText(each), static_cast<qlonglong>(each.block.id.number));
    auto* hours = form.line(mouldForm("Burnt for hours"), "hours", mouldForm("4"));
    auto* burnt = form.line(mouldForm("Wax burnt"), "burnt", mouldForm("15 g; may stay empty"));
    auto* verdict = form.choice(mouldForm("How it burnt"), "verdict");
    // No answer stands there by itself: it is what a sale hangs on.
    addChoices<BurnVerdict>(verdict, mouldForm("choose what was seen"));
    auto* note = form.line(mouldForm("Note"), "note", mouldForm("may stay empty"));
    form.caution(mouldForm("Never leave a burning candle: on a plate, away from what burns, from "
                           "draught, children and animals.") +
                 QLatin1Char(' ') + burnCaution());
    form.fitWith(mould, [&] {
        for (const MouldShown& each : bench.moulds)
            if (chosenId<Mould>(mould) == each.mould.id)
                form.sayAgain(comes, mouldOutlookText(each));
    });
    form.keepDraft(QStringLiteral("wax burn test"));
    form.onAccept([&] {
        TestBurn deed;
        deed.on = on;
        const auto of = chosenId<Mould>(mould);
        if (!of) return false;
        deed.mould = *of;
        deed.wick = typedWords(wick);
        deed.block = chosenId<WaxBlock>(block);
        if (!readField(session, hours, deed.hours) || !readField(session, burnt, deed.burnt))
            return false;
        const auto seen = chosen<BurnVerdict>(verdict);
        if (!seen) {
            session.tell(mouldForm("How it burnt: choose what was seen. Nothing was kept."), true);
            verdict->setFocus();
            return false;
        }
        deed.verdict = *seen;
        deed.note = typedWords(note);
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askAboutWick(QWidget* parent, Session& session, Day on) {
    const WaxBench bench = waxBench(session.read(), on);
    SmallForm form(parent, session, mouldForm("Wick on the spool"));
    QStringList there;
    for (const auto& [size, left] : bench.wick)
        there << mouldForm("%1 %2").arg(fromUtf8(size), shownLength(left.mm()).text());
    form.say(there.isEmpty() ? mouldForm("No wick is written down yet.")
                             : mouldForm("There is: %1.").arg(there.join(QStringLiteral(", "))));
    auto* wick = form.line(mouldForm("Size"), "wick", mouldForm("#1"));
    auto* what = form.choice(mouldForm("It was"), "what");
    what->addItem(mouldForm("bought"), 0);
    what->addItem(mouldForm("measured: that is all there is"), 1);
    auto* length = form.line(mouldForm("Length"), "length", mouldForm("5 m"));
    auto* supplier = form.line(mouldForm("Bought of"), "supplier", mouldForm("may stay empty"));
    form.fitWith(what, [&] { form.showField(supplier, what->currentData().toInt() == 0); });
    form.beginIn(wick);
    form.keepDraft(QStringLiteral("wax wick"));
    form.onAccept([&] {
        Name size;
        if (!readWaxName(session, wick, size)) return false;
        std::optional<Length> metres;
        const bool measured = what->currentData().toInt() == 1;
        // None may be left, and a length of nothing is not read as one.
        const QString typed = length->text().trimmed();
        if (measured && typed == QLatin1String("0"))
            metres = Length();
        else if (!readField(session, length, metres))
            return false;
        if (!metres) {
            session.tell(mouldForm("Say how long, for instance 5 m."), true);
            length->setFocus();
            return false;
        }
        if (measured)
            return session.run(MeasureWick{.on = on, .wick = size, .counted = *metres, .note = {}})
                .has_value();
        return session
            .run(BuyWick{.on = on,
                         .wick = size,
                         .bought = *metres,
                         .supplier = typedWords(supplier),
                         .note = {}})
            .has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool changeMoulds(QWidget* parent, Session& session, Id<GoodsKind> kind, std::int64_t cavities,
                  Day on) {
    const MouldChange change = mouldChange(session.read(), kind, cavities, on);
    if (!change.anything()) {
        const bool none = !session.read().first<Mould>({is("goods_kind", kind)});
        return none && cavities > 0 && askToAddMould(parent, session, on);
    }
    return session.together([&](Season& season) -> Result<void> {
        for (const Mould& each : change.gone) {
            const auto gone = perform(season, RetireMould{.on = on, .mould = each.id, .note = {}});
            if (!gone) return gone.error();
        }
        if (change.comes) {
            const auto comes = perform(season, addLike(*change.comes, on));
            if (!comes) return comes.error();
        }
        return {};
    });
}

}  // namespace combwright
