#include "ui/wax_bench/wax_forms.h"

#include <QCoreApplication>

#include "core/actions/wax/batches.h"
#include "core/actions/wax/blocks.h"
#include "core/places/wax_bench/heat_watch.h"
#include "core/places/wax_bench/wax_bench.h"
#include "core/places/wax_bench/wax_outlook.h"
#include "core/storage/queries/names.h"
#include "core/words/figures.h"
#include "core/words/wax_figures.h"
#include "core/words/words.h"
#include "ui/shell/form_reading.h"
#include "ui/shell/small_form.h"
#include "ui/wax_bench/wax_choices.h"

namespace combwright {
namespace {

QString waxForm(const char* text) { return QCoreApplication::translate("wax_forms", text); }

/// What the temperature typed means, said while it is typed.
void sayHeat(SmallForm& form, QLineEdit* degrees, QLabel* says) {
    const auto look = [&form, degrees, says] {
        const auto said = heatSaid(typedTemperature(degrees->text()));
        form.sayAgain(says, said ? said->words : QString());
    };
    QObject::connect(degrees, &QLineEdit::textChanged, &form, look);
    look();
}

QLabel* heatWords(SmallForm& form) {
    auto* says = form.say(QStringLiteral(" "));
    says->setObjectName(QStringLiteral("heat_says"));
    return says;
}

}  // namespace

QString hotWaxCaution() {
    return waxForm(
        "Hot wax burns: over water only, with a thermometer, the lid to hand; never leave it. "
        "Burning wax: lid on, heat off, never water.");
}

bool askToGatherWax(QWidget* parent, Session& session, Day on) {
    SmallForm form(parent, session, waxForm("Gather wax"));
    form.scrollFields();
    auto* name = form.line(waxForm("Name"), "batch", waxForm("Hill cappings 27"), 20);
    auto* source = form.choice(waxForm("What it is"), "source");
    addChoices<RawWaxSource>(source, {});
    auto* state = form.choice(waxForm("How far it had come"), "state");
    addChoices<WaxState>(state, waxForm("nobody said"));
    auto* raw = form.line(waxForm("Weighs"), "raw", waxForm("11.0; may stay empty"));
    auto* runs = form.line(waxForm("Cappings of runs"), "runs", waxForm("27-1, 27-2"), 20);
    auto* boxes = form.line(waxForm("Comb out of boxes"), "boxes", waxForm("M4, M7"), 20);
    auto* combs = form.line(waxForm("Combs cut out"), "combs", waxForm("may stay empty"));
    auto* bench = form.choice(waxForm("What the bench scraped"), "from_bench");
    bench->addItem(waxForm("stays where it is"), 0);
    bench->addItem(waxForm("comes along, all that waits"), 1);
    auto* shade = form.choice(waxForm("Shade, as far as seen"), "shade");
    addChoices<WaxShade>(shade, waxForm("nobody said"));
    auto* kept = form.choice(waxForm("Kept until it is melted"), "kept");
    addChoices<WaxKeeping>(kept, waxForm("melted today, or nobody said"));
    auto* note = form.line(waxForm("Note"), "note", waxForm("may stay empty"));
    auto* comes = form.say(QStringLiteral(" "));
    comes->setObjectName(QStringLiteral("outlook"));
    form.caution(
        waxForm("Disease stays in wax: comb of held or quarantined hives cannot come in. Washed "
                "cappings are melted the same day; wet ones kept over winter are frozen or under a "
                "tight lid."));
    const auto look = [&] {
        std::optional<Known<Mass>> mass;
        readsAs(raw->text(), mass);
        form.sayAgain(comes,
                      expectedCleanText(session.read(),
                                        chosen<RawWaxSource>(source).value_or(RawWaxSource::Mixed),
                                        chosen<WaxState>(state), mass, on));
    };
    QObject::connect(raw, &QLineEdit::textChanged, &form, look);
    for (QComboBox* each : {source, state})
        QObject::connect(each, &QComboBox::currentIndexChanged, &form, look);
    look();
    form.beginIn(name);
    form.keepDraft(QStringLiteral("wax gather"));
    form.onAccept([&] {
        GatherWax deed;
        deed.on = on;
        if (!readWaxName(session, name, deed.batch)) return false;
        deed.source = chosen<RawWaxSource>(source).value_or(RawWaxSource::Mixed);
        deed.state = chosen<WaxState>(state);
        deed.shade = chosen<WaxShade>(shade);
        deed.kept = chosen<WaxKeeping>(kept);
        if (!readField(session, raw, deed.raw) || !readField(session, combs, deed.combs))
            return false;
        deed.runs = typedWords(runs);
        deed.boxes = typedWords(boxes);
        if (bench->currentData().toInt() == 1) deed.fromBench = true;
        deed.note = typedWords(note);
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToWorkWax(QWidget* parent, Session& session, Day on) {
    const WaxBench bench = waxBench(session.read(), on);
    if (bench.batches.empty()) {
        session.tell(waxForm("No wax was gathered yet: G gathers some."), true);
        return false;
    }
    SmallForm form(parent, session, waxForm("A step of a batch"));
    form.scrollFields();
    auto* batch = form.choice(waxForm("Batch"), "batch");
    addBatches(batch, bench, {});
    auto* work = form.choice(waxForm("What was done"), "work");
    addChoices<WaxWork>(work, {});
    work->setCurrentIndex(work->findData(static_cast<int>(WaxWork::Washed)));
    auto* in = form.line(waxForm("Went in"), "put_in", waxForm("if weighed"));
    auto* out = form.line(waxForm("Came out"), "came_out", waxForm("if weighed"));
    auto* bucket = form.choice(waxForm("Honey dripped into"), "bucket");
    addBuckets(bucket, session.read(), waxForm("no bucket"));
    auto* into = form.choice(waxForm("Went together with"), "into");
    addBatches(into, bench, waxForm("none"));
    auto* hive = form.choice(waxForm("Cleaned by the bees of"), "hive");
    addHives(hive, session.read(), on, waxForm("none, or in the open"));
    auto* degrees =
        form.line(waxForm("The warmest it was"), "temperature", shownTemperature(75).text());
    auto* says = heatWords(form);
    auto* note = form.line(waxForm("Note"), "note", waxForm("may stay empty"));
    auto* mind = form.caution(QStringLiteral(" "));
    form.fitWith(work, [&] {
        const auto did = chosen<WaxWork>(work).value_or(WaxWork::Melted);
        form.showField(bucket, did == WaxWork::Dripped || did == WaxWork::Pressed);
        form.showField(into, did == WaxWork::GoneTogether);
        form.showField(hive, did == WaxWork::BeesCleaned);
        const bool hot = did == WaxWork::Melted || did == WaxWork::MeltedAgain ||
                         did == WaxWork::Strained || did == WaxWork::Pressed;
        form.showField(degrees, hot);
        form.sayAgain(mind,
                      did == WaxWork::BeesCleaned
                          ? waxForm("Only in warm weather, from healthy hives of your own, far "
                                    "from other people's: honey set out makes bees rob, and "
                                    "disease travels with it.")
                      : did == WaxWork::Washed
                          ? waxForm("Melt it today: washed cappings ferment. The wash water goes "
                                    "where no bee finds it.")
                      : hot ? hotWaxCaution()
                            : QString());
    });
    sayHeat(form, degrees, says);
    form.keepDraft(QStringLiteral("wax step"));
    form.onAccept([&] {
        WorkWax deed;
        deed.on = on;
        const auto of = chosenId<WaxBatch>(batch);
        if (!of) return false;
        deed.batch = *of;
        deed.work = chosen<WaxWork>(work).value_or(WaxWork::Melted);
        if (!readField(session, in, deed.putIn) || !readField(session, out, deed.cameOut))
            return false;
        if (degrees->isVisible() && !readField(session, degrees, deed.temperature)) return false;
        if (bucket->isVisible()) deed.bucket = chosenId<Bucket>(bucket);
        if (into->isVisible()) deed.into = chosenId<WaxBatch>(into);
        if (hive->isVisible()) deed.hive = chosenId<Hive>(hive);
        deed.note = typedWords(note);
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToKeepWax(QWidget* parent, Session& session, Day on) {
    const WaxBench bench = waxBench(session.read(), on);
    SmallForm form(parent, session, waxForm("How raw wax is kept"));
    auto* batch = form.choice(waxForm("Batch"), "batch");
    for (const BatchShown& each : bench.batches)
        if (each.waits)
            batch->addItem(batchText(each), static_cast<qlonglong>(each.ledger.batch.id.number));
    if (batch->count() == 0) {
        session.tell(waxForm("No raw wax waits."), true);
        return false;
    }
    auto* kept = form.choice(waxForm("From today"), "kept");
    addChoices<WaxKeeping>(kept, {});
    kept->setCurrentIndex(kept->findData(static_cast<int>(WaxKeeping::Frozen)));
    form.say(
        waxForm("Wet cappings in the open ferment and draw moths: frozen or under a tight lid "
                "they keep over winter."));
    form.onAccept([&] {
        const auto of = chosenId<WaxBatch>(batch);
        return of && session
                         .run(KeepWax{.on = on,
                                      .batch = *of,
                                      .kept = chosen<WaxKeeping>(kept).value_or(WaxKeeping::Open)})
                         .has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToCastBlock(QWidget* parent, Session& session, Day on) {
    const WaxBench bench = waxBench(session.read(), on);
    SmallForm form(parent, session, waxForm("Cast a block"));
    auto* name = form.line(waxForm("Name"), "block", waxForm("L1"));
    auto* batch = form.choice(waxForm("Cast from"), "batch");
    addBatches(batch, bench, waxForm("bought, or of before"));
    // No batch of raw wax: what came back from the moulds was clean already.
    constexpr int ofCandles = -1;
    if (bench.returned > Mass())
        batch->addItem(waxForm("failed candles and sprues, %1 wait").arg(waxText(bench.returned)),
                       ofCandles);
    const auto castOfCandles = [batch] { return batch->currentData().toInt() == ofCandles; };
    // The newest batch that has no block yet is what one most likely stands at.
    for (const BatchShown& each : bench.batches)
        if (each.ledger.blocks.empty() && !each.ledger.wentInto)
            choose(batch, std::optional(each.ledger.batch.id));
    auto* shade = form.choice(waxForm("Shade"), "shade");
    addChoices<WaxShade>(shade, {});
    auto* mass = form.line(waxForm("Weighs"), "mass", waxForm("3.40"));
    auto* supplier = form.line(waxForm("Bought of"), "supplier", waxForm("may stay empty"));
    auto* note = form.line(waxForm("Note"), "note", waxForm("may stay empty"));
    auto* comes = form.say(QStringLiteral(" "));
    comes->setObjectName(QStringLiteral("outlook"));
    form.caution(hotWaxCaution());
    form.fitWith(batch, [&] {
        const auto of = chosenId<WaxBatch>(batch);
        form.showField(supplier, !of && !castOfCandles());
        QString said = castOfCandles()
                           ? waxForm("It is no new wax: it goes back to the blocks it came from.")
                           : QString();
        for (const BatchShown& each : bench.batches)
            if (of == each.ledger.batch.id && each.raw)
                said = expectedCleanText(session.read(), each.ledger.batch.source,
                                         each.ledger.batch.state, each.ledger.batch.raw, on);
        form.sayAgain(comes, said);
    });
    form.beginIn(name);
    form.keepDraft(QStringLiteral("wax block"));
    form.onAccept([&] {
        CastBlock deed;
        deed.on = on;
        if (!readWaxName(session, name, deed.block)) return false;
        deed.batch = chosenId<WaxBatch>(batch);
        deed.shade = chosen<WaxShade>(shade).value_or(WaxShade::Light);
        if (!readField(session, mass, deed.mass)) return false;
        if (castOfCandles())
            deed.fromCandles = true;
        else if (!deed.batch)
            deed.supplier = typedWords(supplier);
        deed.note = typedWords(note);
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToUseWax(QWidget* parent, Session& session, Day on) {
    const WaxBench bench = waxBench(session.read(), on);
    if (bench.blocks.empty()) {
        session.tell(waxForm("There is no block: C casts one."), true);
        return false;
    }
    SmallForm form(parent, session, waxForm("Wax that leaves"));
    auto* block = form.choice(waxForm("Block"), "block");
    for (const BlockLedger& each : bench.blocks)
        block->addItem(blockText(each), static_cast<qlonglong>(each.block.id.number));
    auto* went = form.choice(waxForm("Where it goes"), "went");
    for (const WaxWent each :
         {WaxWent::Sold, WaxWent::Given, WaxWent::Traded, WaxWent::MeltedAgain, WaxWent::Lost})
        went->addItem(choiceText(word(each)), static_cast<int>(each));
    auto* mass = form.line(waxForm("How much"), "mass", waxForm("0.50"));
    auto* batch = form.choice(waxForm("Melted again with"), "batch");
    addBatches(batch, bench, waxForm("choose one"));
    auto* buyer = form.line(waxForm("To whom"), "buyer", waxForm("in trade, or if wished"));
    auto* note = form.line(waxForm("Note"), "note", waxForm("may stay empty"));
    form.fitWith(went, [&] {
        const auto where = chosen<WaxWent>(went).value_or(WaxWent::Sold);
        form.showField(batch, where == WaxWent::MeltedAgain);
        form.showField(buyer, where != WaxWent::MeltedAgain && where != WaxWent::Lost);
    });
    form.keepDraft(QStringLiteral("wax out"));
    form.onAccept([&] {
        UseWax deed;
        deed.on = on;
        const auto of = chosenId<WaxBlock>(block);
        if (!of) return false;
        deed.block = *of;
        deed.went = chosen<WaxWent>(went).value_or(WaxWent::Sold);
        std::optional<Mass> grams;
        if (!readField(session, mass, grams)) return false;
        if (!grams) {
            session.tell(waxForm("Say how much, in %1.").arg(massUnit()), true);
            mass->setFocus();
            return false;
        }
        deed.mass = *grams;
        if (batch->isVisible()) deed.batch = chosenId<WaxBatch>(batch);
        if (buyer->isVisible()) deed.buyer = typedWords(buyer);
        deed.note = typedWords(note);
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToHeatWax(QWidget* parent, Session& session, Day on) {
    const WaxBench bench = waxBench(session.read(), on);
    SmallForm form(parent, session, waxForm("A pot on heat"));
    auto* what = form.line(waxForm("What is on"), "what", waxForm("wax pot in the water bath"), 30);
    auto* batch = form.choice(waxForm("Batch"), "batch");
    addBatches(batch, bench, waxForm("none of these"));
    auto* degrees = form.line(waxForm("Temperature"), "temperature", shownTemperature(75).text());
    auto* says = heatWords(form);
    form.say(waxForm("From now on it stands in every place until O ticks that it is off; after %1 "
                     "minutes without a word the clock calls, loudly.")
                 .arg(static_cast<qlonglong>(heatCallMinutes)));
    form.caution(hotWaxCaution());
    sayHeat(form, degrees, says);
    auto* energy = form.say(QStringLiteral(" "));
    energy->setObjectName(QStringLiteral("energy_says"));
    const auto sayEnergy = [&] {
        std::optional<Mass> wax;
        for (const BatchShown& each : bench.batches)
            if (each.ledger.batch.id == chosenId<WaxBatch>(batch)) wax = each.raw;
        form.sayAgain(energy, meltHeatText(wax, typedTemperature(degrees->text())));
    };
    QObject::connect(degrees, &QLineEdit::textChanged, &form, sayEnergy);
    QObject::connect(batch, &QComboBox::currentIndexChanged, &form, sayEnergy);
    sayEnergy();
    form.beginIn(what);
    form.onAccept([&] {
        HeatOn deed;
        deed.on = on;
        deed.begun = session.clock().now();
        // What is usual need not be typed.
        const std::string typed = typedWords(what);
        const auto called =
            Name::of(typed.empty() ? waxForm("wax pot in the water bath").toStdString() : typed);
        if (!called) return readWaxName(session, what, deed.what);
        deed.what = *called;
        deed.batch = chosenId<WaxBatch>(batch);
        if (!readField(session, degrees, deed.temperature)) return false;
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

}  // namespace combwright
