#include "core/places/wax_bench/wax_records.h"

#include <QCoreApplication>
#include <algorithm>

#include "core/storage/queries/names.h"
#include "core/words/figures.h"
#include "core/words/wax_figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString waxRecord(const char* text) { return QCoreApplication::translate("wax_records", text); }

QString twoDecimals(double grams, How how) {
    return massRateFigure(grams) + QLatin1Char(' ') + massUnit() + QLatin1Char(' ') +
           QLatin1Char(letter(how));
}

QString weighedText(const std::optional<Known<Mass>>& mass) {
    const auto middle = mass ? mass->middle() : std::nullopt;
    return middle ? twoDecimals(*middle, mass->how) : QString();
}

void addBatch(std::vector<WaxRecordLine>& lines, const Read& file, const BatchLedger& ledger) {
    const WaxBatch& batch = ledger.batch;
    lines.push_back({batch.on,
                     waxRecord("%1 gathered: %2")
                         .arg(fromUtf8(batch.name.text()), choiceText(word(batch.source))),
                     weighedText(batch.raw), fromUtf8(batch.note)});
    for (const WaxStep& step : ledger.steps) {
        QString what =
            waxRecord("%1: %2").arg(fromUtf8(batch.name.text()), choiceText(word(step.work)));
        if (step.bucket)
            what += waxRecord(", honey into %1")
                        .arg(fromUtf8(nameOf(file, Bucket::table, step.bucket->number)));
        if (step.temperature)
            what += waxRecord(", %1 at the warmest")
                        .arg(shownTemperature(step.temperature->celsius()).text());
        lines.push_back({step.on, what, weighedText(step.cameOut ? step.cameOut : step.putIn),
                         fromUtf8(step.note)});
    }
    for (const WaxBlock& block : ledger.blocks)
        lines.push_back({block.on,
                         waxRecord("%1: block %2 cast, %3")
                             .arg(fromUtf8(batch.name.text()), fromUtf8(block.name.text()),
                                  shadeText(block.shade)),
                         weighedText(block.mass), fromUtf8(block.note)});
}

void addBlock(std::vector<WaxRecordLine>& lines, const Read& file, const BlockLedger& ledger) {
    const WaxBlock& block = ledger.block;
    const QString name = fromUtf8(block.name.text());
    lines.push_back(
        {block.on,
         block.batch ? waxRecord("block %1 cast from %2")
                           .arg(name, fromUtf8(nameOf(file, WaxBatch::table, block.batch->number)))
                     : waxRecord("block %1 bought, or of before").arg(name),
         weighedText(block.mass), fromUtf8(block.note)});
    for (const WaxUse& use : ledger.uses)
        lines.push_back({use.on, waxRecord("block %1: %2").arg(name, choiceText(word(use.went))),
                         twoDecimals(static_cast<double>(use.mass.grams()), use.how),
                         fromUtf8(use.note)});
}

void addKind(std::vector<WaxRecordLine>& lines, const Read& file, Id<GoodsKind> kind, Day until) {
    const QString name = fromUtf8(nameOf(file, GoodsKind::table, kind.number));
    for (const CandleWish& wish : file.where<CandleWish>({is("goods_kind", kind)}))
        if (wish.on <= until)
            lines.push_back({wish.on,
                             (wish.dropped ? waxRecord("%1 %2 wanted by %3, dropped since")
                                           : waxRecord("%1 %2 wanted by %3"))
                                 .arg(static_cast<qlonglong>(wish.count.value()))
                                 .arg(name, dayText(wish.by)),
                             {},
                             fromUtf8(wish.whatFor)});
    for (const Pour& pour : file.where<Pour>({is("goods_kind", kind)})) {
        if (pour.on > until) continue;
        double drawn = 0;
        for (const WaxUse& use : file.where<WaxUse>({is("pour", pour.id)}))
            drawn += static_cast<double>(use.mass.grams());
        lines.push_back({pour.on,
                         waxRecord("%1 %2 poured in %3%4")
                             .arg(static_cast<qlonglong>(pour.good.value()))
                             .arg(name, fromUtf8(nameOf(file, Mould::table, pour.mould.number)),
                                  pour.labelled ? waxRecord(", on the shelf") : QString()),
                         twoDecimals(drawn, How::ByDifference), fromUtf8(pour.note)});
    }
}

}  // namespace

std::vector<WaxRecordLine> waxRecords(const Read& file, const WaxRecordsOf& of, Day until) {
    const OneState still(file);
    std::vector<WaxRecordLine> lines;
    if (of.kind) {
        addKind(lines, file, *of.kind, until);
    } else if (of.shade) {
        for (const BlockLedger& ledger : blockLedgers(file, until))
            if (ledger.block.shade == *of.shade) addBlock(lines, file, ledger);
    } else {
        for (const BatchLedger& ledger : batchLedgers(file, until))
            if (!of.batch || ledger.batch.id == *of.batch) addBatch(lines, file, ledger);
    }
    std::stable_sort(lines.begin(), lines.end(),
                     [](const WaxRecordLine& a, const WaxRecordLine& b) { return a.on < b.on; });
    return lines;
}

}  // namespace combwright
