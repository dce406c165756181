#include "core/places/pages/season_book/through_year_charts.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>
#include <cmath>

#include "core/places/pages/chart_words.h"
#include "core/places/pages/health/health_words.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString throughSay(const char* text) { return QCoreApplication::translate("charts", text); }

QString oneDecimalIn(double number) { return QLocale().toString(number, 'f', 1); }
/// For a file: a decimal point in every language.
QString oneInFile(double number) { return QString::number(number, 'f', 1); }
/// "7", "6.5".
QString framesFigure(double frames) {
    return QLocale().toString(frames, 'f', frames == std::round(frames) ? 0 : 1);
}

template <class Point>
QString lineName(const ColonyLine<Point>& line) {
    const QString mark = fromUtf8(line.mark);
    if (line.ordinal == 1) return mark;
    return throughSay("%1, colony %2 there").arg(mark).arg(line.ordinal);
}

void setTop(ChartBlock& chart) {
    double most = 0;
    for (const ChartBlock::Series& series : chart.series)
        for (const ChartBlock::Point& point : series.points) most = std::max(most, point.value);
    for (const ChartBlock::Limit& limit : chart.limits)
        for (const ChartBlock::Limit::From& step : limit.steps) most = std::max(most, step.value);
    chart.top = std::max(most * 1.15, 1.0);
    chart.marks = scaleMarks(chart.top, 5);
}

QString limitLabel(const MiteLineThroughYear& limit) {
    double low = limit.steps.front().per100;
    double high = low;
    bool own = true;
    for (const MiteLineFrom& step : limit.steps) {
        low = std::min(low, step.per100);
        high = std::max(high, step.per100);
        own = own && step.whose != MiteLineInForce::From::Table;
    }
    const QLocale locale;
    QString label;
    if (low == high)
        label =
            (own ? throughSay("your line: %1 in 100") : throughSay("line of the table: %1 in 100"))
                .arg(locale.toString(low));
    else
        label = (own ? throughSay("your line: %1 to %2 in 100")
                     : throughSay("line of the table: %1 to %2 in 100"))
                    .arg(locale.toString(low), locale.toString(high));
    return limit.yard.empty() ? label : throughSay("%1, %2").arg(fromUtf8(limit.yard), label);
}

void addLimits(ChartBlock& chart, const MitesThroughYear& mites) {
    for (const MiteLineThroughYear& each : mites.limits) {
        if (each.steps.empty()) continue;
        ChartBlock::Limit limit;
        limit.label = limitLabel(each);
        for (const MiteLineFrom& step : each.steps) {
            limit.steps.push_back({step.from, step.per100});
            chart.more.push_back(
                {throughSay("line to act at"), fromUtf8(each.yard), fromUtf8(isoText(step.from)),
                 QString(),
                 step.whose == MiteLineInForce::From::Table ? throughSay("of the table")
                                                            : throughSay("your own"),
                 QString(), QString(), oneInFile(step.per100), QString(), QString(), QString()});
        }
        chart.limits.push_back(std::move(limit));
    }
}

void addTreated(ChartBlock& chart, const MitesThroughYear& mites) {
    QStringList days;
    for (const TreatedSpan& each : mites.treated) {
        const QString hives = listed(each.hives);
        ChartBlock::Span span;
        span.from = each.from;
        span.to = each.to.value_or(mites.upTo);
        span.open = !each.to;
        span.says = each.to ? throughSay("%1 in %2 (%3) from %4 to %5.")
                                  .arg(fromUtf8(each.name), hives, fromUtf8(each.yard),
                                       dayAndMonth(each.from), dayAndMonth(*each.to))
                            : throughSay("%1 in %2 (%3) from %4, until when is not written down.")
                                  .arg(fromUtf8(each.name), hives, fromUtf8(each.yard),
                                       dayAndMonth(each.from));
        chart.spans.push_back(std::move(span));
        chart.more.push_back({hives, fromUtf8(each.yard), fromUtf8(isoText(each.from)),
                              each.to ? fromUtf8(isoText(*each.to)) : QString(),
                              throughSay("treated: %1").arg(fromUtf8(each.name)), QString(),
                              QString(), QString(), QString(), QString(), QString()});
        const QString day = throughSay("%1 (%2)").arg(dayAndMonth(each.from), fromUtf8(each.yard));
        if (yearOf(each.from) == mites.year && !days.contains(day)) days << day;
    }
    constexpr qsizetype mostDays = 3;
    if (days.isEmpty()) return;
    const qsizetype others = days.size() - mostDays;
    const QString listedDays = days.mid(0, mostDays).join(QStringLiteral(", "));
    chart.about =
        others > 0 ? throughSay("treated from %1 and on %2 more days").arg(listedDays).arg(others)
                   : throughSay("treated from %1").arg(listedDays);
}

QString mitesNote(const MitesThroughYear& mites) {
    QStringList notes;
    if (mites.withoutBees == 1)
        notes << throughSay("1 sample without its bees has no rate and is not drawn.");
    if (mites.withoutBees > 1)
        notes << throughSay("%1 samples without their bees have no rate and are not drawn.")
                     .arg(mites.withoutBees);
    if (mites.otherMethods > 0)
        notes << throughSay(
                     "%1 counts on boards or drone brood are no rate on bees; they stand in the "
                     "hives' stories.")
                     .arg(mites.otherMethods);
    return notes.join(QLatin1Char(' '));
}

ChartBlock combsChart(const CombsThroughYear& combs, bool brood) {
    ChartBlock chart;
    chart.year = combs.year;
    chart.title = brood ? throughSay("Brood") : throughSay("Stores");
    chart.axis = brood ? throughSay("frames of brood") : throughSay("frames of stores");
    chart.empty =
        brood
            ? throughSay("No frames of brood were written down in %1; on the yard sheet b7 says 7.")
                  .arg(combs.year)
            : throughSay(
                  "No frames of stores were written down in %1; on the yard sheet s4 says 4.")
                  .arg(combs.year);
    chart.columns = {{throughSay("hive"), false, false},
                     {throughSay("yard"), false, false},
                     {throughSay("day"), false, false},
                     {chart.axis, true, false},
                     {throughSay("how known"), false, false}};
    for (const ColonyLine<CombPoint>& line : combs.lines) {
        ChartBlock::Series series;
        series.name = lineName(line);
        for (const CombPoint& each : line.points) {
            const auto frames = brood ? each.brood : each.stores;
            const How how = brood ? each.broodHow : each.storesHow;
            if (!frames) continue;
            ChartBlock::Point point;
            point.on = each.on;
            point.value = *frames;
            point.figure = framesFigure(*frames);
            point.hive = each.hive.number;
            point.look = each.inspection.number;
            point.says = (brood ? throughSay("%1 on %2: %3 frames of brood, %4.")
                                : throughSay("%1 on %2: %3 frames of stores, %4."))
                             .arg(series.name, dayText(each.on), point.figure, howWord(how));
            point.cells = {fromUtf8(line.yard), fromUtf8(isoText(each.on)), oneInFile(*frames),
                           howWord(how)};
            series.points.push_back(std::move(point));
        }
        if (series.points.empty()) continue;
        series.end = throughSay("%1 %2").arg(series.name, series.points.back().figure);
        chart.series.push_back(std::move(series));
    }
    std::stable_sort(chart.series.begin(), chart.series.end(),
                     [](const ChartBlock::Series& a, const ChartBlock::Series& b) {
                         return a.points.size() > b.points.size();
                     });
    setTop(chart);
    return chart;
}

}  // namespace

ChartBlock mitesChart(const MitesThroughYear& mites) {
    ChartBlock chart;
    chart.year = mites.year;
    chart.title = throughSay("Mites");
    chart.axis = throughSay("mites in 100 bees");
    chart.empty = throughSay(
                      "No wash or roll was written down in %1; on the yard sheet w6/300 says 6 "
                      "mites in 300 bees.")
                      .arg(mites.year);
    chart.note = mitesNote(mites);
    chart.columns = {
        {throughSay("hive"), false, false},     {throughSay("yard"), false, false},
        {throughSay("day"), false, false},      {throughSay("until"), false, false},
        {throughSay("what"), false, false},     {throughSay("mites"), true, false},
        {throughSay("bees"), true, false},      {throughSay("in 100 bees"), true, false},
        {throughSay("at least"), true, false},  {throughSay("at most"), true, false},
        {throughSay("how known"), false, false}};
    for (const ColonyLine<MitePoint>& line : mites.lines) {
        ChartBlock::Series series;
        series.name = lineName(line);
        const MitePoint* most = nullptr;
        for (const MitePoint& each : line.points) {
            ChartBlock::Point point;
            point.on = each.on;
            point.value = each.rate.per100;
            point.low = each.rate.low;
            point.high = each.rate.high;
            point.figure = oneDecimalIn(each.rate.per100);
            point.hive = each.hive.number;
            point.finding = each.finding.number;
            point.says = (each.over ? throughSay("%1 on %2: %3 of %4, %5; over the line.")
                                    : throughSay("%1 on %2: %3 of %4, %5."))
                             .arg(series.name, dayText(each.on))
                             .arg(each.mites)
                             .arg(each.bees)
                             .arg(miteRateText(each.rate));
            point.cells = {fromUtf8(line.yard),
                           fromUtf8(isoText(each.on)),
                           QString(),
                           fromUtf8(word(each.method)),
                           QString::number(each.mites),
                           QString::number(each.bees),
                           oneInFile(each.rate.per100),
                           oneInFile(each.rate.low),
                           oneInFile(each.rate.high),
                           howWord(each.how)};
            series.points.push_back(std::move(point));
            if (!most || each.rate.per100 > most->rate.per100) most = &each;
        }
        if (!most) continue;
        series.end = throughSay("%1 %2 in %3").arg(series.name).arg(most->mites).arg(most->bees);
        chart.series.push_back(std::move(series));
    }
    if (isEmpty(chart)) return chart;
    addTreated(chart, mites);
    addLimits(chart, mites);
    setTop(chart);
    return chart;
}

ChartBlock weightsChart(const WeightsThroughYear& weights) {
    ChartBlock chart;
    chart.year = weights.year;
    chart.title = throughSay("Weights");
    chart.axis = throughSay("%1, the whole hive").arg(massUnit());
    chart.empty = throughSay(
                      "No hive was weighed in %1. A luggage scale under each side is enough: both "
                      "sides added.")
                      .arg(weights.year);
    if (weights.oneSide == 1)
        chart.note = throughSay("1 weighing of one side alone is no weight and is not drawn.");
    if (weights.oneSide > 1)
        chart.note = throughSay("%1 weighings of one side alone are no weights and are not drawn.")
                         .arg(weights.oneSide);
    chart.columns = {{throughSay("hive"), false, false},
                     {throughSay("yard"), false, false},
                     {throughSay("day"), false, false},
                     {throughSay("weight (%1)").arg(massUnit()), true, false},
                     {throughSay("weight (g)"), true, true},
                     {throughSay("how known"), false, false}};
    for (const ColonyLine<WeightPoint>& line : weights.lines) {
        ChartBlock::Series series;
        series.name = lineName(line);
        for (const WeightPoint& each : line.points) {
            ChartBlock::Point point;
            point.on = each.on;
            point.value = inMassUnits(each.grossG);
            point.figure = massText(each.grossG, each.how);
            point.hive = each.hive.number;
            point.weighing = each.weighing.number;
            point.says =
                throughSay("%1 on %2: the whole hive %3.")
                    .arg(series.name, dayText(each.on), massInWords(each.grossG, each.how));
            point.cells = {fromUtf8(line.yard), fromUtf8(isoText(each.on)),
                           QString::number(inMassUnits(each.grossG), 'f', 3),
                           QString::number(std::llround(each.grossG)), howWord(each.how)};
            series.points.push_back(std::move(point));
        }
        series.end = throughSay("%1 %2").arg(series.name, series.points.back().figure);
        chart.series.push_back(std::move(series));
    }
    setTop(chart);
    return chart;
}

ChartBlock broodChart(const CombsThroughYear& combs) { return combsChart(combs, true); }
ChartBlock storesChart(const CombsThroughYear& combs) { return combsChart(combs, false); }

}  // namespace combwright
