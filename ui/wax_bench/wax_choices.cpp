#include "ui/wax_bench/wax_choices.h"

#include <QCoreApplication>

#include "core/storage/queries/names.h"
#include "core/words/figures.h"
#include "core/words/wax_figures.h"
#include "core/words/words.h"
#include "ui/shell/form_reading.h"

namespace combwright {
namespace {

QString waxChoice(const char* text) { return QCoreApplication::translate("wax_choices", text); }

QString kilosOf(Mass mass) {
    return massRateFigure(static_cast<double>(mass.grams())) + QLatin1Char(' ') + massUnit();
}

}  // namespace

QString candlesText(const std::string& kind, std::int64_t count) {
    const QString name = fromUtf8(kind);
    if (count == 1 || name.endsWith(QLatin1Char('s'))) return name;
    return waxChoice("%1s").arg(name);
}

QString batchText(const BatchShown& batch) {
    const QString name = fromUtf8(batch.ledger.batch.name.text());
    const QString what = choiceText(word(batch.ledger.batch.source));
    return batch.raw ? waxChoice("%1: %2, %3").arg(name, what, kilosOf(*batch.raw))
                     : waxChoice("%1: %2, not weighed").arg(name, what);
}

QString blockText(const BlockLedger& block) {
    const QString name = fromUtf8(block.block.name.text());
    const QString shade = shadeText(block.block.shade);
    return block.left ? waxChoice("%1: %2, %3 left").arg(name, shade, kilosOf(*block.left))
                      : waxChoice("%1: %2, not weighed").arg(name, shade);
}

void addBatches(QComboBox* choice, const WaxBench& bench, const QString& none) {
    if (!none.isEmpty()) choice->addItem(none, 0);
    // The newest first: it is what one stands at.
    for (auto each = bench.batches.rbegin(); each != bench.batches.rend(); ++each)
        if (!each->ledger.wentInto)
            choice->addItem(batchText(*each), static_cast<qlonglong>(each->ledger.batch.id.number));
}

void addBuckets(QComboBox* choice, const Read& file, const QString& none) {
    choice->addItem(none, 0);
    const auto all = file.all<Bucket>();
    for (auto each = all.rbegin(); each != all.rend() && choice->count() < 60; ++each)
        choice->addItem(fromUtf8(nameOf(file, Bucket::table, each->id.number)),
                        static_cast<qlonglong>(each->id.number));
}

void addHives(QComboBox* choice, const Read& file, Day on, const QString& none) {
    choice->addItem(none, 0);
    for (const Hive& hive : file.all<Hive>())
        if (hive.since <= on && (!hive.closed || on <= *hive.closed))
            choice->addItem(fromUtf8(nameOf(file, Hive::table, hive.id.number)),
                            static_cast<qlonglong>(hive.id.number));
}

void addMoulds(QComboBox* choice, const WaxBench& bench) {
    for (const MouldShown& each : bench.moulds)
        choice->addItem(each.candle.empty()
                            ? waxChoice("%1, %2 cavities")
                                  .arg(fromUtf8(each.mould.name.text()))
                                  .arg(static_cast<qlonglong>(each.mould.cavities.value()))
                            : waxChoice("%1: %2, %3 cavities")
                                  .arg(fromUtf8(each.mould.name.text()), fromUtf8(each.candle))
                                  .arg(static_cast<qlonglong>(each.mould.cavities.value())),
                        static_cast<qlonglong>(each.mould.id.number));
}

void addGoods(QComboBox* choice, const Read& file, GoodsWhat what, const QString& none) {
    if (!none.isEmpty()) choice->addItem(none, 0);
    for (const GoodsKind& kind : file.all<GoodsKind>())
        if (kind.what == what)
            choice->addItem(fromUtf8(kind.name.text()), static_cast<qlonglong>(kind.id.number));
}

bool readWaxName(Session& session, QLineEdit* field, Name& name) {
    if (const auto typed = Name::of(typedWords(field))) {
        name = *typed;
        return true;
    }
    session.tell(
        waxChoice("%1 needs a word or two, at most 200 letters.").arg(field->accessibleName()),
        true);
    field->setFocus();
    return false;
}

}  // namespace combwright
