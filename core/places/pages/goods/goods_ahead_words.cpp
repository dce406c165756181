#include "core/places/pages/goods/goods_ahead_words.h"

#include <QCoreApplication>

#include "core/places/pages/goods/fair_pages.h"
#include "core/places/pages/goods/goods_pages.h"
#include "core/places/pages/honey/honey_store_page.h"
#include "core/places/pages/honey/vessel_words.h"
#include "core/words/figures.h"
#include "core/words/money_words.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString aheadSay(const char* text) { return QCoreApplication::translate("goods_ahead", text); }

QString packingAheadName(const PackingAhead& packing) {
    return packing.kind ? aheadSay("Empty %1").arg(fromUtf8(packing.kind->name.text()))
                        : aheadSay("Lids %1").arg(fromUtf8(packing.lid));
}

}  // namespace

QStringList fillingAheadText(const FillingAhead& ahead) {
    QStringList said;
    const QString name = fromUtf8(ahead.honey.view.name);
    const auto there = ahead.honey.view.ledger.left;
    if (!ahead.inJars)
        said << aheadSay("What such a jar holds is not written down, so the honey is not known.");
    else if (ahead.lost && *ahead.lost > Mass{})
        said << aheadSay("%1 in jars and %2 g lost: %3 out of %4.")
                    .arg(massToTheGram(*ahead.inJars))
                    .arg(ahead.lost->grams())
                    .arg(massToTheGram(*ahead.takes), name);
    else
        said << aheadSay("%1 in jars, out of %2.").arg(massToTheGram(*ahead.inJars), name);
    if (!there)
        said << aheadSay("How much is in it nobody weighed.");
    else if (ahead.left && *ahead.left >= Mass{})
        said << aheadSay("%1 stay in it.").arg(massToTheGram(*ahead.left));
    for (const PackingAhead& each : ahead.packing)
        if (each.left >= 0)
            said << aheadSay("%1: %2 are left.").arg(packingAheadName(each)).arg(each.left);
    return said;
}

QStringList fillingAheadCautions(const FillingAhead& ahead, Day on) {
    QStringList said;
    const StoredHoney& honey = ahead.honey;
    if (const QStringList lacks = lackTexts(honey, on); !lacks.isEmpty())
        said << aheadSay("Not ready, %1: %2.")
                    .arg(fromUtf8(honey.view.name), lacks.join(QStringLiteral("; ")));
    if (!honey.view.held.empty())
        said << aheadSay("Say why it is filled all the same, or lift the hold first.");
    if (const QString treated = treatedText(honey.view.treated); !treated.isEmpty())
        said << treated + QLatin1Char('.');
    if (honey.setAtRisk && honey.whenSetFrom && honey.whenSetTo)
        said << aheadSay("Sound now; %1 of water between the crystals: it can ferment then.")
                    .arg(settingText(honey));
    if (ahead.left && *ahead.left < Mass{})
        said << aheadSay("That is %1 more than is written down as there.")
                    .arg(massToTheGram(-*ahead.left));
    if (ahead.lost && *ahead.lost < Mass{})
        said << aheadSay("The jars hold %1 g more than was drawn.").arg(-ahead.lost->grams());
    for (const PackingAhead& each : ahead.packing)
        if (each.left < 0)
            said << aheadSay("%1: %2 too few. Buy some, or count them.")
                        .arg(packingAheadName(each))
                        .arg(-each.left);
    return said;
}

QString bulkAheadText(const FillingAhead& ahead) {
    const QString name = fromUtf8(ahead.honey.view.name);
    const auto there = ahead.left ? ahead.left : ahead.honey.view.ledger.left;
    if (!there) return aheadSay("How much is in %1 nobody weighed.").arg(name);
    if (*there < Mass{}) return {};
    return aheadSay("%1 stay in %2.").arg(massToTheGram(*there), name);
}

QString onTheJarsText(const std::optional<std::string>& code,
                      const std::optional<Day>& bestBefore) {
    const QString lot = code ? aheadSay("lot %1").arg(fromUtf8(*code))
                             : aheadSay("a lot code you type, by your own rule");
    return bestBefore ? aheadSay("On the jars: %1, best before %2.").arg(lot, dayText(*bestBefore))
                      : aheadSay("On the jars: %1, and no best-before day.").arg(lot);
}

QStringList outAheadText(const OutAhead& ahead, OutHow how, const std::string& currency) {
    QStringList said;
    for (const OutAhead::Kind& each : ahead.kinds) {
        if (each.left < 0) continue;
        QString text = aheadSay("%1: %2 on the shelf then.")
                           .arg(fromUtf8(each.kind.name.text()))
                           .arg(each.left);
        if (each.each)
            text += QLatin1Char(' ') + aheadSay("One is %1.").arg(moneyText(*each.each, currency));
        said << text;
    }
    if (how == OutHow::Sold && !ahead.kinds.empty()) {
        QString text = aheadSay("Takings %1").arg(moneyText(ahead.takings, currency));
        if (ahead.unpriced > 0)
            text += aheadSay("; %1 without a price written down").arg(ahead.unpriced);
        said << text + QLatin1Char('.');
    }
    if (how == OutHow::CameBack && ahead.takings != Money{})
        said << aheadSay("Paid back %1.").arg(moneyText(-ahead.takings, currency));
    return said;
}

QStringList outAheadCautions(const OutAhead& ahead) {
    QStringList said;
    for (const OutAhead::Kind& each : ahead.kinds)
        if (each.left < 0)
            said << aheadSay("%1: %2 more than stand on the shelf. Count them first.")
                        .arg(fromUtf8(each.kind.name.text()))
                        .arg(-each.left);
    return said;
}

QString fairOfferText(const FairOffer& offer) {
    QStringList said{aheadSay("%1 on the shelf").arg(offer.shelf.left)};
    if (offer.inBox > 0) said << aheadSay("%1 in the box already").arg(offer.inBox);
    if (offer.packedBefore) {
        QString last = aheadSay("last time %1 packed").arg(*offer.packedBefore);
        if (offer.soldBefore) last += aheadSay(", %1 sold").arg(*offer.soldBefore);
        if (offer.ranOutBefore) last += aheadSay(", ran out");
        said << last;
    }
    return said.join(QStringLiteral("; "));
}

QString fairRowSoldText(const FairRow& row, const std::string& currency) {
    if (!row.sold) return aheadSay("not counted yet");
    QString text = aheadSay("%1 sold").arg(*row.sold);
    if (row.takings && row.line.each)
        text += QStringLiteral(", ") + moneyText(*row.takings, currency);
    else if (*row.sold > 0)
        text += aheadSay(", no price written down");
    if (row.ranOut) text += aheadSay("; ran out");
    return text;
}

QStringList fairSumText(const FairSheet& sheet) {
    QString sold = fairSoldText(sheet);
    if (sheet.notCounted > 0)
        sold += aheadSay(sheet.notCounted == 1 ? "; %1 kind is not counted yet"
                                               : "; %1 kinds are not counted yet")
                    .arg(sheet.notCounted);
    QStringList said{sold + QLatin1Char('.')};
    if (sheet.fair.cash) said << fairCashText(sheet);
    return said;
}

}  // namespace combwright
