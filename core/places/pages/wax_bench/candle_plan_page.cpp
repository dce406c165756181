#include "core/places/pages/wax_bench/candle_plan_page.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>

#include "core/places/pages/honey_room/room_paper.h"
#include "core/places/pages/wax_bench/wax_words.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString planSay(const char* text) { return QCoreApplication::translate("candle_plan", text); }

Cell candleCell(const QString& text, bool strong = false) {
    Cell cell;
    cell.text = text;
    cell.strong = strong;
    return cell;
}

Cell candleCount(std::int64_t count) { return candleCell(QString::number(count)); }

TextBlock candleLines(const QString& title, const QStringList& lines) {
    TextBlock block;
    block.title = title;
    block.text = lines.join(QLatin1Char('\n'));
    return block;
}

QString waxLeftText(const std::vector<ShadeOfWax>& left) {
    QStringList parts;
    for (const ShadeOfWax& each : left)
        parts << (each.shade.empty()
                      ? waxText(each.massG)
                      : shadeText(each.shade) + QLatin1Char(' ') + waxText(each.massG));
    return parts.isEmpty() ? planSay("none") : parts.join(QStringLiteral(", "));
}

TableBlock wantedTable(const CandleEvenings& plan) {
    TableBlock table;
    table.title = planSay("Wanted");
    table.columns = {{planSay("candle"), 1.4, false},   {planSay("wanted"), 0.8, true},
                     {planSay("ready"), 0.7, true},     {planSay("to pour"), 0.8, true},
                     {planSay("of one"), 0.8, true},    {planSay("evenings"), 0.9, true},
                     {planSay("by moulds"), 0.9, true}, {planSay("by wax"), 0.8, true},
                     {planSay("by wick"), 0.8, true},   {planSay("come out"), 0.9, true}};
    std::size_t want = 0;
    for (const CandlesWantedShown& kind : plan.kinds) {
        TableRow row;
        row.cells = {candleCell(fromUtf8(kind.kind.name.text()), true), candleCount(kind.wished),
                     candleCount(kind.ready)};
        if (!kind.massG || *kind.massG <= 0) {
            for (int i = 0; i < 7; ++i) row.cells.push_back(candleCell(QStringLiteral("?")));
            table.rows.push_back(std::move(row));
            continue;
        }
        const auto& needs = plan.needs.kinds[want];
        const CandleReach& reach = plan.reach.kinds[want];
        row.cells.push_back(candleCount(plan.wants[want].count));
        row.cells.push_back(candleCell(shownPortion(*kind.massG).text()));
        row.cells.push_back(candleCell(needs.eveningsNeeded ? QString::number(*needs.eveningsNeeded)
                                                            : planSay("no mould")));
        row.cells.push_back(candleCount(reach.byMoulds));
        row.cells.push_back(candleCount(reach.byWax));
        row.cells.push_back(candleCount(reach.byWick));
        row.cells.push_back(candleCell(QString::number(reach.made), true));
        table.rows.push_back(std::move(row));
        ++want;
    }
    return table;
}

std::int64_t wishedInAll(const CandleEvenings& plan) {
    std::int64_t all = 0;
    for (const CandlesWantedShown& kind : plan.kinds) all += kind.wished;
    return all;
}

TextBlock waxBlock(const CandleEvenings& plan) {
    QStringList lines;
    QStringList stock;
    double stockG = 0;
    for (const ShadeOfWax& each : plan.stock.wax) {
        stock << shadeText(each.shade) + QLatin1Char(' ') + waxText(each.massG);
        stockG += each.massG;
    }
    lines << planSay("In the candles %1, with %2 % loss %3 of block wax; there is %4 (%5).")
                 .arg(waxText(plan.needs.waxNetG),
                      QLocale().toString(plan.lossShare * 100.0, 'f', 0),
                      waxText(plan.needs.waxNeededG), waxText(stockG),
                      stock.isEmpty() ? planSay("no block weighed")
                                      : stock.join(QStringLiteral(", ")));
    if (plan.needs.waxShortG > 0)
        lines << planSay("Short of wax: %1.").arg(waxText(plan.needs.waxShortG));
    lines << planSay("With this wax, shades kept apart: %1; left %2.")
                 .arg(ofShadeText(plan, plan.needs.fromStock), waxLeftText(plan.needs.waxLeft));
    lines << planSay("With this wax, shades mixed: %1; left %2. Mixing loses the pale colour.")
                 .arg(ofShadeText(plan, plan.mixed.fromStock), waxLeftText(plan.mixed.waxLeft));
    return candleLines(planSay("Wax"), lines);
}

QStringList biteLines(const CandleEvenings& plan) {
    QStringList lines;
    for (std::size_t want = 0; want < plan.wants.size(); ++want) {
        const QString name = fromUtf8(plan.wants[want].what);
        const QString bites = bitesText(plan, want);
        lines << (bites.isEmpty() ? planSay("%1: all come out").arg(name)
                                  : name + QStringLiteral(": ") + bites);
        const auto& needs = plan.needs.kinds[want];
        if (needs.missing > 0)
            lines.last() += !needs.cavitiesToAdd ? planSay("; no evening is left to pour on")
                            : *needs.cavitiesToAdd == 1
                                ? planSay("; the moulds want one cavity more for all of them")
                                : planSay("; the moulds want %1 cavities more for all of them")
                                      .arg(*needs.cavitiesToAdd);
    }
    return lines;
}

QStringList wickLines(const CandleEvenings& plan) {
    QStringList lines;
    for (const auto& [size, left] : plan.needs.wickLeftM) {
        if (size.empty()) continue;
        lines << (left < 0 ? planSay("%1: %2 short").arg(fromUtf8(size), wickText(-left))
                           : planSay("%1: %2 left").arg(fromUtf8(size), wickText(left)));
    }
    return lines;
}

TableBlock eveningsTable(const CandleEvenings& plan) {
    TableBlock table;
    table.title = planSay("Which evening pours what");
    table.columns = {{planSay("evening"), 1.4, false}};
    for (const CandleWanted& want : plan.wants)
        table.columns.push_back({fromUtf8(want.what), 1, true});
    table.columns.push_back({planSay("out"), 1.2, true});
    table.columns.push_back({planSay("good / failed"), 1.8, true});
    table.rowMm = 9;
    for (const PouringEvening& evening : plan.plan.evenings) {
        TableRow row;
        row.cells = {candleCell(shortDayText(evening.day), true)};
        Day out = evening.day;
        for (std::size_t want = 0; want < plan.wants.size(); ++want) {
            QString text;
            for (const PouringEvening::Pours& pours : evening.pours)
                if (pours.want == want) {
                    text = QString::number(pours.count);
                    if (pours.cycles > 1)
                        text = planSay("%1 in %2 pours").arg(text).arg(pours.cycles);
                    out = std::max(out, pours.outFrom);
                }
            row.cells.push_back(candleCell(text));
        }
        row.cells.push_back(candleCell(shortDayText(out)));
        Cell write;
        write.look = Cell::Look::Blank;
        row.cells.push_back(write);
        table.rows.push_back(std::move(row));
    }
    TableRow sum;
    sum.cells = {candleCell(planSay("in all"), true)};
    for (std::size_t want = 0; want < plan.wants.size(); ++want)
        sum.cells.push_back(candleCell(QString::number(plan.plan.poured[want]), true));
    sum.cells.push_back(candleCell({}));
    sum.cells.push_back(candleCell({}));
    if (!table.rows.empty()) table.rows.back().below = Rule::Ink;
    table.rows.push_back(std::move(sum));
    return table;
}

QString finishingText(const CandleEvenings& plan) {
    QStringList lines;
    if (plan.plan.finishing)
        lines << planSay("%1 is kept for trimming, wicks and labels.")
                     .arg(dayText(*plan.plan.finishing));
    else if (plan.plan.lastPour)
        lines << planSay("No evening is kept for trimming, wicks and labels.");
    lines << planSay(
        "By moulds and evenings, as if wax and wick were enough: what bites stands above.");
    return lines.join(QLatin1Char(' '));
}

}  // namespace

Page candlePlanPage(const Read& file, const CandleEvenings& plan) {
    const QString what = plan.date.whatFor.empty() ? planSay("the day they are wanted")
                                                   : fromUtf8(plan.date.whatFor);
    Page page = roomPaper(file, planSay("Candle plan: %1").arg(what),
                          planSay("printed %1").arg(dayText(plan.on)));
    page.blocks.emplace_back(
        candleLines({}, {planSay("%1 candles wanted by %2; %3 evenings free for pouring.")
                             .arg(QString::number(wishedInAll(plan)), dayText(plan.date.by),
                                  QString::number(plan.eveningsFree))}));
    page.blocks.emplace_back(wantedTable(plan));
    if (const QString counted = countedInText(plan); !counted.isEmpty())
        page.blocks.emplace_back(candleLines({}, {counted}));
    if (!plan.unknown.empty()) {
        QStringList names;
        for (const std::string& name : plan.unknown) names << fromUtf8(name);
        page.blocks.emplace_back(
            candleLines({}, {planSay("Nobody knows what one weighs, so it is not reckoned: %1.")
                                 .arg(names.join(QStringLiteral(", ")))}));
    }
    QStringList notSafe;
    for (const CandlesWantedShown& kind : plan.kinds)
        if (!kind.safe) notSafe << fromUtf8(kind.kind.name.text());
    if (!notSafe.isEmpty()) {
        TextBlock caution = candleLines(
            {}, {planSay("%1: the holder burns. Not for sale before a test burn went well.")
                     .arg(notSafe.join(QStringLiteral(", ")))});
        caution.caution = true;
        page.blocks.emplace_back(std::move(caution));
    }
    page.blocks.emplace_back(waxBlock(plan));
    page.blocks.emplace_back(candleLines(planSay("What bites"), biteLines(plan)));
    if (const QStringList wick = wickLines(plan); !wick.isEmpty())
        page.blocks.emplace_back(candleLines(planSay("Wick, once all are made"), wick));
    QStringList more;
    for (const OneMoreCandleThing& each : plan.oneMore) more << oneMoreText(plan, each);
    if (!more.isEmpty())
        page.blocks.emplace_back(candleLines(planSay("What one thing more would change"), more));
    if (!plan.plan.evenings.empty()) {
        page.blocks.emplace_back(eveningsTable(plan));
        page.blocks.emplace_back(candleLines({}, {finishingText(plan)}));
    }
    BlanksBlock enter;
    enter.framed = true;
    enter.labels = {planSay("entered up to"), planSay("by"), planSay("on")};
    page.blocks.emplace_back(std::move(enter));
    page.blocks.emplace_back(waxSafetyBlock());
    return page;
}

Page nextCandlePlanPage(const Read& file, Day on) {
    const auto plan = candleEvenings(file, on);
    if (plan && *plan) return candlePlanPage(file, **plan);
    Page page = roomPaper(file, planSay("Candle plan"), dayText(on));
    page.blocks.emplace_back(candleLines(
        {}, {plan ? planSay("No candles are wanted by a day.") : sentence(plan.error())}));
    return page;
}

}  // namespace combwright
