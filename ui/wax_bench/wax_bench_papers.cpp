// What the wax bench prints, how its figures came about, and F1.
#include "core/places/explain/explain_wax.h"
#include "core/places/pages/wax_bench/candle_plan_page.h"
#include "core/places/pages/wax_bench/wax_pages.h"
#include "core/places/wax_bench/wax_flow.h"
#include "ui/common/help_groups.h"
#include "ui/wax_bench/wax_bench_place.h"
#include "ui/wax_bench/wax_forms.h"

namespace combwright {

std::vector<PrintSheet> WaxBenchPlace::sheets() const {
    const Day today = session().clock().today();
    return {{QStringLiteral("candle-plan"), tr("Candle plan"),
             [this, today] {
                 return m_plan ? candlePlanPage(session().read(), *m_plan)
                               : nextCandlePlanPage(session().read(), today);
             }},
            {QStringLiteral("wax-bench"), tr("Wax bench"),
             [this] { return waxBenchPage(session().read(), m_bench); }},
            {QStringLiteral("wax-balance"), tr("Wax of the year"),
             [this] { return waxBalancePage(session().read(), m_bench); }},
            {QStringLiteral("wax-batch"), tr("Batch sheet"),
             [this] { return nextBatchSheetPage(session().read(), m_bench); }},
            {QStringLiteral("care-cards"), tr("Care cards"),
             [this] { return careCardsPage(session().read(), m_bench); }},
            {QStringLiteral("propolis-card"), tr("Propolis card"),
             [this, today] { return propolisCardPage(session().read(), today); }},
            {QStringLiteral("comb-jars"), tr("Comb jars"),
             [this, today] { return combJarsPage(session().read(), today); }}};
}

std::vector<Explained> WaxBenchPlace::explained() const {
    std::vector<Explained> all;
    if (m_plan) all = explainCandlePlan(session().read(), *m_plan);
    for (Explained& each : explainWax(session().read(), m_bench)) all.push_back(std::move(each));
    return all;
}

QString WaxBenchPlace::help() const {
    std::vector<HelpGroup> groups;
    groups.push_back(
        {tr("Safety"),
         {{{}, hotWaxCaution()},
          {QStringLiteral("H"), tr("a pot comes on heat: it stands in every place until it is off, "
                                   "and the clock calls until somebody says to be there")},
          {QStringLiteral("O"), tr("the pot is off")},
          {QStringLiteral("Q"), tr("I am here: the clock is quiet for a quarter of an hour")}}});
    groups.push_back(
        {tr("What it shows"),
         {{{},
           tr("From the left to the right the wax of the year: raw by where it came from, what "
              "drained and washed away, clean blocks by shade, and what the candles wanted take "
              "of them. A band is as wide as its mass; the scale may change once, and says so. "
              "Dashed: nobody weighed it, or it is missing or short.")},
          {QStringLiteral("↑ ↓ ← →"), tr("from band to band")},
          {QStringLiteral("↵"), tr("the records behind a band")},
          {QStringLiteral("T"), tr("all of it as a table, and back")},
          {QStringLiteral("D"), tr("the day candles are wanted by")}}});
    groups.push_back(
        {tr("Evenings and moulds"),
         {{{},
           tr("A column a free evening, a row a kind. On an ink line: poured. Filled: planned, "
              "in the shade it will be of. Dashed: no wax for it.")},
          {QStringLiteral("0…9"), tr("in a field of moulds: what if there were so many cavities; "
                                     "nothing is kept")},
          {QStringLiteral("↵"), tr("there: moulds like the first come, or the last go")},
          {QStringLiteral("Esc"), tr("there: as it was")}}});
    groups.push_back(
        {tr("Wax"),
         {{QStringLiteral("G S"), tr("gather wax · a step of a batch: only the raw mass and the "
                                     "clean block are asked for, the rest if weighed")},
          {QStringLiteral("C U K"), tr("cast a block · wax leaves · how raw wax is kept")},
          {QStringLiteral("R"), tr("propolis scraped, sold, given")}}});
    groups.push_back(
        {tr("Candles"),
         {{QStringLiteral("P F"), tr("pour · finish: out of the mould, trimmed, labelled")},
          {QStringLiteral("W V"), tr("wanted by a day · no longer wanted")},
          {QStringLiteral("E A"), tr("free evenings · one evening, or kept for finishing")},
          {QStringLiteral("M X"), tr("moulds come · go")},
          {QStringLiteral("B N"), tr("a burn test · wick on the spool")}}});
    groups.push_back({tr("On a hive"),
                      {{QStringLiteral("J I L"),
                        tr("comb jars or another small project · its next step · a look at it")}}});
    return helpOf(groups);
}

}  // namespace combwright
