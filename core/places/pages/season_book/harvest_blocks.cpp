#include "core/places/pages/season_book/harvest_blocks.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>
#include <cmath>

#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString blockWord(const char* text) { return QCoreApplication::translate("harvest", text); }

double gramsOf(Mass mass) { return static_cast<double>(mass.grams()); }

Cell ledgerCell(const QString& text, bool strong = false) {
    Cell cell;
    cell.text = text;
    cell.strong = strong;
    return cell;
}

Cell quietCell(const QString& text) {
    Cell cell = ledgerCell(text);
    cell.muted = true;
    return cell;
}

Cell gramsCell(std::optional<Mass> mass, How how, bool strong = false) {
    if (!mass) return ledgerCell({});
    Cell cell = ledgerCell(massFigure(gramsOf(*mass), how), strong);
    cell.how = how;
    return cell;
}

/// Of the year beside: grey, and its letter only where it differs from weighed, which its head
/// says.
Cell besideCell(std::optional<Mass> mass, How how) {
    Cell cell = gramsCell(mass, how);
    cell.muted = true;
    if (how == How::Weighed) cell.how.reset();
    return cell;
}

QString inUnits(const char* figure) { return blockWord(figure).arg(massUnit()); }

/// "H2 ¹": a name with the marks of the footnotes that speak of it.
QString withMarks(const QString& name, const QString& marks) {
    return marks.isEmpty() ? name : name + QLatin1Char(' ') + marks;
}

Cell barCell(const HiveYield& hive, double top) {
    Cell cell;
    cell.look = Cell::Look::Bar;
    if (hive.mass) cell.bar = gramsOf(*hive.mass) / top;
    if (hive.before) cell.stroke = gramsOf(*hive.before) / top;
    cell.hatched = hive.how == How::ByDifference || hive.how == How::ByEye;
    cell.open = hive.noted;
    return cell;
}

TableRow withoutHiveRow(Mass mass, How how, double top, const QString& marks) {
    Cell bar;
    bar.look = Cell::Look::Bar;
    bar.bar = gramsOf(mass) / top;
    bar.dashed = true;
    TableRow row;
    row.cells = {ledgerCell(withMarks(QStringLiteral("   ") + blockWord("no tag"), marks), true),
                 gramsCell(mass, how),
                 ledgerCell({}),
                 ledgerCell({}),
                 bar,
                 quietCell(blockWord("hive not known"))};
    return row;
}

QString dayMonth(Day day) { return dayAndMonth(day); }

}  // namespace

QString howKnownText(const HiveYield& hive, bool wholeFromPaper) {
    if (!hive.mass)
        return wholeFromPaper ? blockWord("not known by hive") : blockWord("nothing taken");
    if (hive.noted) return blockWord("noted from paper");
    if (hive.revised) return blockWord("revised");
    switch (hive.partHow) {
        case How::Weighed:
            // The part is weighed; what it is a part of may be no better than a level by eye.
            return hive.how == How::Weighed ? blockWord("weighed boxes")
                                            : blockWord("weighed, total %1").arg(howWord(hive.how));
        case How::ByDifference:
            return blockWord("a box by difference");
        case How::ByEye:
            return blockWord("frames and fill");
        default:
            return howWord(hive.how);
    }
}

std::vector<ScaleMark> scaleMarks(double top, int most, const QString& unit) {
    std::vector<ScaleMark> marks;
    if (top <= 0) return marks;
    double step = std::pow(10.0, std::floor(std::log10(top)) - 1);
    for (int i = 0; top / step > most; ++i) step *= i % 3 == 1 ? 2.5 : 2.0;
    const int decimals = std::max(0, static_cast<int>(-std::floor(std::log10(step) + 1e-9)));
    for (int n = 1; n * step <= top * (1 + 1e-9); ++n)
        marks.push_back({n * step / top, QLocale().toString(n * step, 'f', decimals)});
    if (!marks.empty() && !unit.isEmpty()) marks.back().label += QLatin1Char(' ') + unit;
    return marks;
}

BarScale barScale(const SeasonYield& season) {
    BarScale scale;
    for (const YardYield& yard : season.yards) {
        for (const HiveYield& hive : yard.hives)
            for (const auto& mass : {hive.mass, hive.before})
                if (mass) scale.topGrams = std::max(scale.topGrams, gramsOf(*mass));
        if (yard.unknown) scale.topGrams = std::max(scale.topGrams, gramsOf(*yard.unknown));
    }
    if (season.nowhere) scale.topGrams = std::max(scale.topGrams, gramsOf(*season.nowhere));
    scale.topGrams *= 1.04;  // a stroke at the very top is still seen whole
    scale.marks = scaleMarks(inMassUnits(scale.topGrams), 5, massUnit());
    return scale;
}

QString changeText(const std::optional<Mass>& now, const std::optional<Mass>& before, How how) {
    const auto change = changeGrams(now, before);
    if (!change) return {};
    const QString size = massFigure(std::abs(*change), how);
    return *change < 0 ? QStringLiteral("− ") + size : QStringLiteral("+ ") + size;
}

QString averagesText(Mass total, How how, int producing, int standing, bool brief) {
    if (total == Mass()) return {};
    const auto each = [&](int hives) {
        return massFigure(gramsPerHive(gramsOf(total), hives), how);
    };
    if (producing == 0 && standing == 0) return {};
    if (producing == 0)
        return (brief ? blockWord("%1 on 1 May") : blockWord("%1 per hive on 1 May"))
            .arg(each(standing));
    if (standing == 0)
        return (brief ? blockWord("%1 producing") : blockWord("%1 per producing hive"))
            .arg(each(producing));
    return (brief ? blockWord("%1 producing, %2 on 1 May")
                  : blockWord("%1 per producing hive, %2 per hive on 1 May"))
        .arg(each(producing), each(standing));
}

TableBlock yieldBlock(const SeasonYield& season) {
    const BarScale scale = barScale(season);
    const FootnoteMarks marks = footnoteMarks(season);
    TableBlock table;
    table.columns = {{blockWord("Hive"), 1.35, false},
                     {QStringLiteral("%1, %2").arg(season.year).arg(massUnit()), 0.9, true},
                     {QString::number(season.beforeYear), 0.8, true},
                     {blockWord("change"), 0.8, true},
                     {QString(), 3.95, false, scale.marks},
                     {blockWord("how it is known"), 1.9, false}};
    table.rowMm = 4.5;
    for (const YardYield& yard : season.yards) {
        if (yard.hives.empty() && yard.total == Mass() && !yard.before) continue;
        TableRow head;
        head.group = true;
        const auto total = yard.total > Mass() ? std::optional(yard.total) : std::nullopt;
        head.cells = {
            ledgerCell(fromUtf8(yard.yard.name.text()), true),
            total ? gramsCell(total, yard.how, true) : quietCell(blockWord("none")),
            besideCell(yard.before, yard.beforeHow),
            ledgerCell(changeText(yard.total, yard.before, weaker(yard.how, yard.beforeHow))),
            ledgerCell(averagesText(yard.total, yard.how, yard.averagedOver(), yard.standing)),
            yard.noted ? ledgerCell(blockWord("noted from paper")) : ledgerCell({})};
        head.cells[4].small = true;
        table.rows.push_back(head);
        for (const HiveYield& hive : yard.hives) {
            TableRow row;
            row.cells = {
                ledgerCell(withMarks(QStringLiteral("   ") + fromUtf8(hive.mark),
                                     marks.of(marks.ofHive, hive.hive.number))),
                hive.mass ? gramsCell(hive.mass, hive.how)
                          : quietCell(yard.noted ? QStringLiteral("?") : blockWord("none")),
                besideCell(hive.before, hive.beforeHow),
                ledgerCell(changeText(hive.mass, hive.before, weaker(hive.how, hive.beforeHow))),
                barCell(hive, scale.topGrams),
                quietCell(howKnownText(hive, yard.noted))};
            table.rows.push_back(row);
        }
        if (yard.unknown)
            table.rows.push_back(withoutHiveRow(*yard.unknown, yard.how, scale.topGrams,
                                                marks.of(marks.ofYard, yard.yard.id.number)));
        table.rows.back().below = Rule::Ink;
    }
    if (season.nowhere) {
        TableRow row = withoutHiveRow(*season.nowhere, season.how, scale.topGrams, {});
        row.cells[0].text = blockWord("no yard, no tag");
        row.below = Rule::Ink;
        table.rows.push_back(row);
    }
    TableRow all;
    all.below = Rule::Double;
    Cell stroke =
        quietCell(season.before ? blockWord("thick stroke across a bar: %1").arg(season.beforeYear)
                                : QString());
    stroke.small = true;
    all.cells = {
        ledgerCell(blockWord("All"), true),
        gramsCell(season.total, season.how, true),
        besideCell(season.before, season.beforeHow),
        ledgerCell(changeText(season.total, season.before, weaker(season.how, season.beforeHow))),
        stroke,
        ledgerCell({})};
    table.rows.push_back(all);
    return table;
}

TableBlock runsBlock(const SeasonYield& season) {
    TableBlock table;
    table.title = inUnits("Runs and lots, %1");
    table.columns = {{blockWord("day"), 0.9, false},         {blockWord("lot"), 0.8, false},
                     {blockWord("yard"), 1.4, false},        {blockWord("boxes"), 0.7, true},
                     {blockWord("out of boxes"), 1.1, true}, {blockWord("buckets"), 1, true},
                     {blockWord("cappings"), 1, true},       {blockWord("missing"), 1.1, true},
                     {blockWord("water %"), 1.1, true}};
    table.rowMm = 4.6;
    double out = 0;
    Mass buckets;
    Mass cappings;
    std::int64_t boxes = 0;
    How bucketsHow = How::Weighed;
    bool allOut = true;
    bool allCappings = true;
    const QLocale locale;
    for (const RunBalance& run : season.runs) {
        const bool byDifference =
            std::any_of(run.boxes.begin(), run.boxes.end(),
                        [](const RunBoxLine& box) { return box.byDifference; });
        Cell missing = quietCell(QStringLiteral("?"));
        if (run.unaccountedG) {
            missing = ledgerCell(massFigure(*run.unaccountedG, run.missingHow()));
            missing.how = run.missingHow();
        }
        const auto off =
            run.outOfBoxesG ? std::optional(Mass::roundedGrams(*run.outOfBoxesG)) : std::nullopt;
        QString water;
        if (run.waterLow)
            water = *run.waterLow == *run.waterHigh
                        ? locale.toString(*run.waterLow, 'f', 1)
                        : QStringLiteral("%1–%2").arg(locale.toString(*run.waterLow, 'f', 1),
                                                      locale.toString(*run.waterHigh, 'f', 1));
        TableRow row;
        row.cells = {
            ledgerCell(dayMonth(run.run.on)),
            ledgerCell(fromUtf8(run.run.name.text())),
            ledgerCell(fromUtf8(run.yard)),
            ledgerCell(QString::number(run.boxes.size())),
            off ? gramsCell(off, byDifference ? How::ByDifference : How::Weighed)
                : quietCell(QStringLiteral("?")),
            gramsCell(run.buckets, run.bucketsHow, true),
            run.cappings ? gramsCell(run.cappings, How::Weighed) : quietCell(QStringLiteral("?")),
            missing,
            ledgerCell(water)};
        table.rows.push_back(row);
        boxes += static_cast<std::int64_t>(run.boxes.size());
        buckets += run.buckets;
        bucketsHow = weaker(bucketsHow, run.bucketsHow);
        out += run.outOfBoxesG.value_or(0);
        allOut = allOut && run.outOfBoxesG;
        cappings += run.cappings.value_or(Mass());
        allCappings = allCappings && run.cappings;
    }
    if (season.runs.size() < 2) return table;
    table.rows.back().below = Rule::Ink;
    TableRow sum;
    sum.below = Rule::Double;
    sum.cells = {ledgerCell({}),
                 ledgerCell({}),
                 ledgerCell(blockWord("together"), true),
                 ledgerCell(QString::number(boxes), true),
                 allOut ? ledgerCell(massFigure(out, How::Weighed), true) : ledgerCell({}),
                 gramsCell(buckets, bucketsHow, true),
                 allCappings ? ledgerCell(massFigure(gramsOf(cappings), How::Weighed), true)
                             : ledgerCell({}),
                 ledgerCell({}),
                 ledgerCell({})};
    table.rows.push_back(sum);
    return table;
}

StepsBlock timelineBlock(const SeasonYield& season, const std::vector<SeasonYield>& beside) {
    StepsBlock block;
    block.title = blockWord("Harvest timeline");
    block.axis = inUnits("%1 in buckets, added up");
    double most = 0;
    const auto add = [&](const SeasonYield& year, bool itself) {
        if (year.total == Mass()) return;
        StepsBlock::Line line;
        line.year = year.year;
        line.dashed = !itself;
        double sum = 0;
        for (const RunBalance& run : year.runs) {
            const double grams = gramsOf(run.buckets);
            const QString where =
                run.yard.empty() ? fromUtf8(run.run.name.text()) : fromUtf8(run.yard);
            line.steps.push_back(
                {run.run.on, inMassUnits(grams),
                 QStringLiteral("%1 %2 %3")
                     .arg(dayMonth(run.run.on), where, massText(grams, run.bucketsHow))});
            sum += inMassUnits(grams);
        }
        line.rest = std::max(0.0, inMassUnits(gramsOf(year.total)) - sum);
        // A run's gram more or less is no honey from paper.
        if (!year.noted) line.rest = 0;
        line.end =
            QStringLiteral("%1: %2").arg(year.year).arg(massFigure(gramsOf(year.total), year.how));
        if (year.noted == year.total) line.end += blockWord(", from paper");
        most = std::max(most, sum + line.rest);
        block.lines.push_back(std::move(line));
    };
    add(season, true);
    for (const SeasonYield& year : beside)
        if (block.lines.size() < 6) add(year, false);
    block.top = std::max(most * 1.05, 1.0);
    block.marks = scaleMarks(block.top, 5);
    return block;
}

QString recordsTitle(const YieldRecords& records) {
    QString name = fromUtf8(records.name);
    if (records.of.run) return blockWord("Run %1").arg(name);
    if (records.of.colony)
        return blockWord("Colony of %1, %2").arg(name, QString::number(records.year));
    if (records.of.queen) return blockWord("Queen %1, %2").arg(name, QString::number(records.year));
    if (records.of.anyYard) return blockWord("hive not known, %1").arg(records.year);
    if (records.of.nobody)
        return (records.of.nobody == YieldBy::Colony ? blockWord("colony not written down, %1")
                                                     : blockWord("queen not written down, %1"))
            .arg(records.year);
    if (records.of.withoutHive)
        name = name.isEmpty() ? blockWord("no yard, no tag") : name + blockWord(", no tag");
    if (name.isEmpty()) name = blockWord("All");
    return QStringLiteral("%1, %2").arg(name).arg(records.year);
}

TableBlock recordsBlock(const YieldRecords& records) {
    TableBlock table;
    table.title = recordsTitle(records);
    table.columns = {{blockWord("run, box"), 2.2, false}, {blockWord("hive"), 0.9, false},
                     {blockWord("frames"), 0.7, true},    {inUnits("full, %1"), 0.9, true},
                     {blockWord("wet"), 0.8, true},       {blockWord("came out"), 1, true},
                     {blockWord("share"), 1, true}};
    table.rowMm = 5.3;
    const auto reading = [](const std::optional<Known<Mass>>& known) {
        const auto grams = known ? known->middle() : std::nullopt;
        return grams ? gramsCell(Mass::roundedGrams(*grams), known->how)
                     : quietCell(QStringLiteral("?"));
    };
    for (const RunRecord& run : records.runs) {
        TableRow head;
        head.group = true;
        head.cells = {ledgerCell(QStringLiteral("%1 %2 %3")
                                     .arg(dayMonth(run.on), fromUtf8(run.name), fromUtf8(run.yard)),
                                 true),
                      ledgerCell({}),
                      ledgerCell({}),
                      ledgerCell({}),
                      ledgerCell({}),
                      run.byEye ? quietCell(blockWord("by eye"))
                                : gramsCell(Mass::roundedGrams(run.offG), How::Weighed),
                      gramsCell(run.share, run.how, true)};
        if (!run.byEye)
            for (const RunBoxLine& box : run.boxes)
                if (box.byDifference) head.cells[5].how = How::ByDifference;
        table.rows.push_back(head);
        for (const RunBoxLine& box : run.boxes) {
            const How how = run.byEye          ? How::ByEye
                            : box.byDifference ? How::ByDifference
                                               : How::Weighed;
            TableRow row;
            row.cells = {
                ledgerCell(QStringLiteral("   ") + fromUtf8(box.mark)),
                box.hive.empty() ? quietCell(QStringLiteral("?")) : ledgerCell(fromUtf8(box.hive)),
                box.box.frames ? ledgerCell(QString::number(box.box.frames->value()))
                               : quietCell(QStringLiteral("?")),
                reading(box.box.gross),
                reading(box.box.wet),
                box.offG ? gramsCell(Mass::roundedGrams(*box.offG), how)
                         : quietCell(QStringLiteral("?")),
                ledgerCell({})};
            table.rows.push_back(row);
        }
        table.rows.back().below = Rule::Ink;
    }
    for (const PaperRecord& paper : records.paper) {
        TableRow row;
        row.cells = {ledgerCell(blockWord("noted from paper") +
                                (paper.note.empty() ? QString()
                                                    : QStringLiteral(": ") + fromUtf8(paper.note))),
                     ledgerCell(fromUtf8(paper.of)),
                     ledgerCell({}),
                     ledgerCell({}),
                     ledgerCell({}),
                     paper.counted ? ledgerCell({}) : quietCell(blockWord("not counted")),
                     gramsCell(paper.mass, paper.how, paper.counted)};
        row.cells[6].muted = !paper.counted;
        table.rows.push_back(row);
    }
    return table;
}

}  // namespace combwright
