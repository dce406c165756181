#include "core/places/explain/explain_wax.h"

#include <QCoreApplication>
#include <QLocale>

#include "core/storage/queries/constants.h"
#include "core/words/figures.h"
#include "core/words/wax_figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString waxWhy(const char* text) { return QCoreApplication::translate("wax_why", text); }

double waxGramsOf(Mass mass) { return static_cast<double>(mass.grams()); }

std::string readAs(How how) { return std::string(word(how)); }

/// One step's source where the keeper has a constant of his own.
void noteDensity(Working& working, const Read& file, Day on) {
    if (const auto density = constantInForce(file, "wax_solid_g_per_ml", {}, on))
        note(&working, "wax_solid_g_per_ml", density->value, "g/ml", {}, constantSource(*density));
}

Explained explainExpected(const BatchShown& batch) {
    Explained why;
    why.what = waxWhy("Clean wax to expect of %1").arg(fromUtf8(batch.ledger.batch.name.text()));
    why.answer = waxText(batch.expectedG->likely);
    if (batch.yield->ownBatches > 0)
        note(&why.working, "own_batches", static_cast<double>(batch.yield->ownBatches), "",
             "weighed in and out");
    (void)cleanWaxG(waxGramsOf(*batch.weighed), *batch.yield, &why.working);
    return why;
}

Explained explainRendered(const BatchShown& batch) {
    Explained why;
    why.what = waxWhy("What %1 gave").arg(fromUtf8(batch.ledger.batch.name.text()));
    why.answer = QLocale().toString(batch.lost->yield * 100.0, 'f', 1) + QStringLiteral(" %");
    for (const WaxBlock& block : batch.ledger.blocks)
        if (block.mass && block.mass->middle())
            note(&why.working, "wax_block_g", *block.mass->middle(), "g", block.name.text());
    (void)renderedBalance({waxGramsOf(*batch.ledger.in), waxGramsOf(batch.ledger.clean),
                           waxGramsOf(batch.ledger.drained), waxGramsOf(batch.ledger.slumgum)},
                          &why.working);
    note(&why.working, "wax_yield_share", batch.lost->yield, "", "clean ÷ raw");
    return why;
}

Explained explainShade(const WaxBench& bench, const ShadeStock& shade) {
    Explained why;
    why.what = waxWhy("Clean wax in stock, %1").arg(shadeText(shade.shade));
    why.answer = waxText(shade.left);
    for (const BlockLedger& block : bench.blocks) {
        if (block.block.shade != shade.shade || !block.mass) continue;
        const std::string name = block.block.name.text();
        note(&why.working, "wax_block_g", waxGramsOf(*block.mass), "g",
             name + ", " + readAs(block.how));
        if (block.used > Mass())
            note(&why.working, "wax_used_g", waxGramsOf(block.used), "g", name);
    }
    note(&why.working, "wax_stock_g", waxGramsOf(shade.left), "g", "Σ block − used");
    return why;
}

Explained explainMould(const Read& file, const MouldShown& shown, Day on) {
    Explained why;
    const Mould& mould = shown.mould;
    why.what = waxWhy("Wax in one of %1").arg(fromUtf8(mould.name.text()));
    why.answer = shownPortion(shown.mass->massG).text();
    noteDensity(why.working, file, on);
    const WaxDensities wax{constantOr(file, "wax_solid_g_per_ml", {}, on, solidWaxGPerMl),
                           constantOr(file, "wax_liquid_g_per_ml", {}, on, liquidWaxGPerMl)};
    const auto millimetres = [](const std::optional<Length>& length) {
        return length ? static_cast<double>(length->count()) / 10.0 : 0.0;
    };
    if (mould.oneWeighs) {
        (void)weighedCandle(waxGramsOf(*mould.oneWeighs), wax, &why.working);
        return why;
    }
    if (mould.volume) {
        note(&why.working, "candle_volume_ml", mould.volume->value(), "ml",
             mould.measured == true ? "measured with water" : "as said");
    } else {
        note(&why.working, "mould_diameter_mm", millimetres(mould.diameter), "mm");
        if (mould.tip) note(&why.working, "mould_tip_mm", millimetres(mould.tip), "mm");
        note(&why.working, "mould_height_mm", millimetres(mould.height), "mm");
    }
    (void)candleMass(shown.mass->volumeMl, wax, &why.working);
    return why;
}

}  // namespace

std::vector<Explained> explainWax(const Read& file, const WaxBench& bench) {
    std::vector<Explained> figures;
    for (const BatchShown& batch : bench.batches) {
        if (batch.weighed && batch.yield && batch.expectedG)
            figures.push_back(explainExpected(batch));
        if (batch.lost) figures.push_back(explainRendered(batch));
    }
    for (const ShadeStock& shade : bench.shades) figures.push_back(explainShade(bench, shade));
    for (const MouldShown& mould : bench.moulds)
        if (mould.mass) figures.push_back(explainMould(file, mould, bench.on));
    Explained year;
    year.what = waxWhy("Wax balance %1").arg(bench.year.year);
    const WaxMoved& moved = bench.year.moved;
    note(&year.working, "wax_opening_g", moved.openingG, "g");
    note(&year.working, "wax_cast_g", moved.castG, "g");
    note(&year.working, "wax_brought_g", moved.broughtG, "g");
    if (moved.returnedG > 0)
        note(&year.working, "wax_returned_g", moved.returnedG, "g", "pieces that failed, sprues");
    note(&year.working, "wax_poured_g", moved.pouredG, "g");
    note(&year.working, "wax_given_g", moved.givenG, "g");
    note(&year.working, "wax_lost_away_g", moved.lostG, "g");
    const WaxYear again = waxYear(file, bench.year.year, bench.on, &year.working);
    year.answer =
        again.balance ? waxText(again.balance->inStockG) : waxWhy("more went out than there was");
    figures.push_back(std::move(year));
    return figures;
}

std::vector<Explained> explainCandlePlan(const Read& file, const CandleEvenings& plan) {
    std::vector<Explained> figures;
    Explained wax;
    wax.what = waxWhy("Wax for the candles wanted by %1").arg(dayText(plan.date.by));
    wax.answer = plan.needs.waxShortG > 0
                     ? waxWhy("%1 short").arg(waxText(plan.needs.waxShortG))
                     : waxWhy("%1 of block wax").arg(waxText(plan.needs.waxNeededG));
    for (const CandleWanted& want : plan.wants) {
        note(&wax.working, "candle_pieces", static_cast<double>(want.count), "", want.what);
        note(&wax.working, "candle_g", want.massG, "g", want.what);
    }
    if (const auto loss = constantInForce(file, "candle_loss_share", {}, plan.on))
        note(&wax.working, "candle_loss_share", loss->value, "", {}, constantSource(*loss));
    (void)candleNeeds(plan.stock, plan.eveningsFree, plan.wants, &wax.working);
    figures.push_back(std::move(wax));
    for (std::size_t want = 0; want < plan.wants.size(); ++want) {
        const CandleWanted& wanted = plan.wants[want];
        const CandleReach& reach = plan.reach.kinds[want];
        Explained why;
        why.what = waxWhy("How many %1 come out").arg(fromUtf8(wanted.what));
        why.answer = waxWhy("%1 of %2").arg(reach.made).arg(wanted.count);
        note(&why.working, "candle_cavities", static_cast<double>(wanted.cavities), "");
        note(&why.working, "candle_cycles", static_cast<double>(wanted.cyclesPerEvening), "",
             "an evening");
        note(&why.working, "evenings_free", static_cast<double>(plan.eveningsFree), "");
        note(&why.working, "candles_by_moulds", static_cast<double>(reach.byMoulds), "",
             "cavities × cycles × evenings, at most what is wanted");
        note(&why.working, "candles_by_wax", static_cast<double>(reach.byWax), "",
             "whole candles of each shade, after those before it in the order");
        note(&why.working, "candles_by_wick", static_cast<double>(reach.byWick), "",
             "m of wick ÷ m a candle, after those before it");
        note(&why.working, "candles_made", static_cast<double>(reach.made), "",
             "the least of them");
        figures.push_back(std::move(why));
    }
    for (const auto& [size, left] : plan.needs.wickLeftM) {
        if (size.empty()) continue;
        Explained why;
        why.what = waxWhy("Wick %1").arg(fromUtf8(size));
        why.answer = wickText(left);
        const auto there = plan.stock.wickM.find(size);
        note(&why.working, "wick_there_m", there == plan.stock.wickM.end() ? 0 : there->second,
             "m");
        for (const CandleWanted& want : plan.wants)
            if (want.wick == size)
                note(&why.working, "wick_needed_m", want.wickM * static_cast<double>(want.count),
                     "m", want.what + ": candles × length");
        note(&why.working, "wick_left_m", left, "m", "there − needed");
        figures.push_back(std::move(why));
    }
    return figures;
}

}  // namespace combwright
