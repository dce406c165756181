#include "core/places/wax_bench/wax_outlook.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>
#include <algorithm>

#include "core/storage/queries/constants.h"
#include "core/trade/wax/wax_heat.h"
#include "core/words/figures.h"
#include "core/words/wax_figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

// Where nobody measured it: wax that stood in the room. Planning assumption, no source.
constexpr double roomC = 20;

QString outlook(const char* text) { return QCoreApplication::translate("wax_outlook", text); }

QString gramsWord(double grams) {
    return grams < 1000 ? shownPortion(grams).text() : waxText(grams);
}

QString hoursInWords(double hours) {
    return QLocale().toString(hours, 'f', hours < 10 && hours != static_cast<int>(hours) ? 1 : 0) +
           QStringLiteral(" h");
}

QString testsText(const MouldShown& mould) {
    QStringList tests;
    for (const BurnTest& test : lastTests(mould)) {
        if (tests.size() == 3) break;
        tests << outlook("%1 %2 (%3)")
                     .arg(fromUtf8(test.wick.text()), choiceText(word(test.verdict)),
                          shortDayText(test.on));
    }
    return tests.join(QStringLiteral(", "));
}

}  // namespace

QString expectedCleanText(const Read& file, RawWaxSource source,
                          const std::optional<WaxState>& state,
                          const std::optional<Known<Mass>>& raw, Day on) {
    const auto middle = raw ? raw->middle() : std::nullopt;
    if (!middle || *middle <= 0) return {};
    BatchLedger ledger;
    ledger.batch.source = source;
    ledger.batch.state = state;
    const WaxMaterial material = materialOf(ledger);
    const auto yield = waxYield(material, weighedBatches(file, material, on));
    if (!yield || !*yield)
        return outlook("What comes of it nobody can know: weigh the clean block.");
    const auto clean = cleanWaxG(*middle, **yield);
    if (!clean) return {};
    const auto own = static_cast<int>((*yield)->ownBatches);
    return outlook("Expected: %1 to %2 clean, likely %3; %4.")
        .arg(gramsWord(clean->low), gramsWord(clean->high), gramsWord(clean->likely),
             own == 0   ? outlook("from what is published")
             : own == 1 ? outlook("with one batch of your own")
                        : outlook("with %1 batches of your own").arg(own));
}

QString mouldOutlookText(const MouldShown& mould) {
    QStringList said;
    if (mould.mass)
        said << outlook("One weighs %1 (%2 ml): pour %3, top up with up to %4 as it shrinks.")
                    .arg(gramsWord(mould.mass->massG),
                         QLocale().toString(mould.mass->volumeMl, 'f', 0),
                         gramsWord(mould.mass->firstPourG),
                         // The three as they stand there add up.
                         gramsWord(portionShownG(mould.mass->massG) -
                                   portionShownG(mould.mass->firstPourG)));
    else
        said << outlook(
            "What one weighs nobody knows: fill a cavity with water and weigh that, or "
            "give its size.");
    if (mould.setHours) said << outlook("Sets in about %1.").arg(hoursInWords(*mould.setHours));
    if (!mould.tests.empty()) said << outlook("Your own burn tests: %1.").arg(testsText(mould));
    if (mould.guess)
        said << (mould.guess->thinnest == mould.guess->thickest
                     ? outlook("A first guess for the wick: %1%2; common practice, no source. Burn "
                               "one to test.")
                           .arg(fromUtf8(mould.guess->thinnest),
                                mould.guess->orThicker ? outlook(" or thicker") : QString())
                     : outlook("A first guess for the wick: %1 to %2%3; common practice, no "
                               "source. Burn one to test.")
                           .arg(fromUtf8(mould.guess->thinnest), fromUtf8(mould.guess->thickest),
                                mould.guess->orThicker ? outlook(" or thicker") : QString()));
    return said.join(QLatin1Char(' '));
}

QString pourOutlookText(const Read& file, const MouldShown& mould, std::int64_t pieces,
                        const std::vector<BlockLedger>& blocks, Day on) {
    if (pieces <= 0) return {};
    if (!mould.mass)
        return outlook("What they take nobody knows: say it behind each block, \"L 180 g\".");
    const double spare = constantOr(file, "candle_spare_share", {}, on, 0.08);
    const auto melt = candleBatchG(pieces, mould.mass->massG, spare);
    const auto net = candleBatchG(pieces, mould.mass->massG, 0.0);
    if (!melt || !net) return {};
    double left = 0;
    for (const BlockLedger& each : blocks)
        if (each.left) left += static_cast<double>(each.left->grams());
    QString said = outlook("%1 pieces take %2; melt %3 for film and sprues. In stock: %4.")
                       .arg(static_cast<qlonglong>(pieces))
                       .arg(gramsWord(*net), gramsWord(*melt), gramsWord(left));
    if (*net > left) said += QLatin1Char(' ') + outlook("That is more than there is.");
    return said;
}

QString meltHeatText(const std::optional<Mass>& wax, const std::optional<Temperature>& to) {
    if (!wax || wax->grams() <= 0 || !to || to->celsius() < waxMeltedC) return {};
    const auto grams = static_cast<double>(wax->grams());
    const auto kj = meltKj(grams, roomC, to->celsius());
    if (!kj) return {};
    const auto kwh = [](double each) { return QLocale().toString(each / kjPerKwh, 'f', 2); };
    return outlook(
               "From %1 to %2 takes %3 to %4 kWh into %5 of wax alone; pot, water and what the "
               "room takes come on top. From memory, the figures scatter widely.")
        .arg(shownTemperature(roomC).text(), shownTemperature(to->celsius()).text(), kwh(kj->low),
             kwh(kj->high), gramsWord(grams));
}

}  // namespace combwright
