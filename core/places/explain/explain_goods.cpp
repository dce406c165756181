#include "core/places/explain/explain_goods.h"

#include <QCoreApplication>
#include <QLocale>

#include "core/storage/queries/labels.h"
#include "core/words/money_words.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString goodsWhy(const char* text) { return QCoreApplication::translate("goods", text); }

}  // namespace

std::vector<Explained> explainFair(const Read& file, const Fair& fair) {
    Explained why;
    const FairSheet sheet = fairSheet(file, fair, &why.working);
    if (!fair.closed) return {};
    why.what = goodsWhy("Sold at %1").arg(fromUtf8(fair.name.text()));
    why.answer = goodsWhy("%1, %2").arg(sheet.sold).arg(moneyText(sheet.takings, sheet.currency));
    return {why};
}

std::vector<Explained> explainNet(const Read& file, const GoodsStock& stock) {
    std::vector<Explained> figures;
    const auto text = labelTextInForce(file, stock.on);
    for (const FillingSheet& sheet : stock.fillings)
        for (FilledJars jars : sheet.jars) {
            if (!jars.meanHolds) continue;
            Explained why;
            why.what =
                goodsWhy("Net of %1, filling %2")
                    .arg(fromUtf8(jars.kind.name.text()), fromUtf8(sheet.bottling.code.text()));
            judgeNet(jars, text ? text->region : std::string(), &why.working);
            why.answer =
                goodsWhy("mean %1 g").arg(QLocale().toString(jars.line.mean->value(), 'f', 1));
            figures.push_back(std::move(why));
        }
    return figures;
}

}  // namespace combwright
