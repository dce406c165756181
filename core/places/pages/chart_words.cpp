#include "core/places/pages/chart_words.h"

#include <QCoreApplication>
#include <algorithm>

#include "core/exchange/export.h"
#include "core/model/season_info.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString chartSay(const char* text) { return QCoreApplication::translate("charts", text); }

QString spokenSeries(const ChartBlock::Series& series) {
    const auto& points = series.points;
    const ChartBlock::Point& last = points.back();
    if (points.size() == 1)
        return chartSay("%1: %2 on %3.").arg(series.name, last.figure, dayAndMonth(last.on));
    const auto most = std::max_element(
        points.begin(), points.end(),
        [](const ChartBlock::Point& a, const ChartBlock::Point& b) { return a.value < b.value; });
    return chartSay("%1: %2 on %3, %4 on %5, at most %6 on %7.")
        .arg(series.name, points.front().figure, dayAndMonth(points.front().on), last.figure,
             dayAndMonth(last.on), most->figure, dayAndMonth(most->on));
}

}  // namespace

QString spoken(const ChartBlock& chart) {
    QStringList sentences;
    sentences << chartSay("%1 %2, %3.").arg(chart.title).arg(chart.year).arg(chart.axis);
    if (isEmpty(chart)) return (sentences << chart.empty).join(QLatin1Char(' '));
    std::size_t said = 0;
    std::size_t own = 0;
    for (const ChartBlock::Series& series : chart.series) {
        if (series.points.empty()) continue;
        own += !series.besideOf;
        if (said == mostSeries) continue;
        sentences << spokenSeries(series);
        ++said;
    }
    for (const ChartBlock::Limit& limit : chart.limits)
        if (!limit.steps.empty()) sentences << limit.label + QLatin1Char('.');
    for (const ChartBlock::Span& span : chart.spans) sentences << span.says;
    if (own > mostSeries) sentences << chartSay("%1 in all; the table has every one.").arg(own);
    if (!chart.note.isEmpty()) sentences << chart.note;
    return sentences.join(QLatin1Char(' '));
}

bool isEmpty(const ChartBlock& chart) {
    return std::all_of(chart.series.begin(), chart.series.end(),
                       [](const ChartBlock::Series& series) { return series.points.empty(); });
}

HarvestTable chartTable(const ChartBlock& chart) {
    HarvestTable table;
    for (const ChartBlock::Column& column : chart.columns) table.head << column.head;
    for (const ChartBlock::Series& series : chart.series)
        for (const ChartBlock::Point& point : series.points)
            table.rows.push_back(QStringList{series.name} + point.cells);
    for (const QStringList& row : chart.more) table.rows.push_back(row);
    return table;
}

std::optional<ChartMark> markOfRow(const ChartBlock& chart, std::size_t row) {
    for (std::size_t i = 0; i < chart.series.size(); ++i) {
        const std::size_t points = chart.series[i].points.size();
        if (row < points) return ChartMark{i, row};
        row -= points;
    }
    return std::nullopt;
}

std::size_t rowOfMark(const ChartBlock& chart, ChartMark mark) {
    std::size_t row = mark.point;
    for (std::size_t i = 0; i < mark.series && i < chart.series.size(); ++i)
        row += chart.series[i].points.size();
    return row;
}

QString csvText(const HarvestTable& table) {
    QString text;
    const auto write = [&text](const QStringList& row) {
        QStringList cells;
        for (const QString& cell : row) cells << fromUtf8(csvCell(cell.toStdString()));
        text += cells.join(QLatin1Char(',')) + QStringLiteral("\r\n");
    };
    write(table.head);
    for (const QStringList& row : table.rows) write(row);
    return text;
}

Page chartPage(const Read& file, ChartBlock chart, Day printed) {
    Page page;
    page.title = chartSay("%1 %2").arg(chart.title).arg(chart.year);
    page.day = chartSay("printed %1").arg(dayText(printed));
    if (const auto season = file.first<SeasonInfo>({})) {
        page.keeper = fromUtf8(season->name.text());
        page.invented = season->invented.value_or(false);
    }
    TextBlock note;
    note.small = true;
    note.text = isEmpty(chart) ? chart.empty : chart.note;
    chart.title.clear();
    if (!isEmpty(chart)) page.blocks.emplace_back(std::move(chart));
    if (!note.text.isEmpty()) page.blocks.emplace_back(std::move(note));
    return page;
}

}  // namespace combwright
