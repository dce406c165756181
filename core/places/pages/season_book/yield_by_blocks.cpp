#include "core/places/pages/season_book/yield_by_blocks.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "core/places/pages/yard/queen_words.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString bySay(const char* text) { return QCoreApplication::translate("harvest", text); }

double byGrams(Mass mass) { return static_cast<double>(mass.grams()); }

Cell byCell(const QString& text, bool strong = false, bool muted = false) {
    Cell cell;
    cell.text = text;
    cell.strong = strong;
    cell.muted = muted;
    return cell;
}

Cell byMassCell(const std::optional<Mass>& mass, How how, bool strong = false) {
    if (!mass) return byCell(bySay("none"), false, true);
    Cell cell = byCell(massFigure(byGrams(*mass), how), strong);
    cell.how = how;
    return cell;
}

Cell beforeCell(const std::optional<Mass>& mass, How how) {
    if (!mass) return byCell({});
    Cell cell = byCell(massFigure(byGrams(*mass), how), false, true);
    if (how != How::Weighed) cell.how = how;
    return cell;
}

QString headOfBy(YieldBy by) {
    switch (by) {
        case YieldBy::Hive:
            return bySay("Hive");
        case YieldBy::Colony:
            return bySay("Colony");
        case YieldBy::Queen:
            return bySay("Queen");
        case YieldBy::Yard:
            break;
    }
    return bySay("Yard");
}

QString nobodyName(YieldBy by) {
    return by == YieldBy::Queen ? bySay("queen not written down")
                                : bySay("colony not written down");
}

/// A plain decimal for a program to read.
QString plainMass(double grams) {
    QString text = QString::number(inMassUnits(grams), 'f', 3);
    while (text.endsWith(QLatin1Char('0'))) text.chop(1);
    if (text.endsWith(QLatin1Char('.'))) text.chop(1);
    return text;
}

QStringList plainPair(const std::optional<Mass>& mass) {
    if (!mass) return {QString(), QString()};
    return {plainMass(byGrams(*mass)), QString::number(mass->grams())};
}

}  // namespace

QString yieldOfName(const YieldOf& line) {
    return line.who ? queenShortText(*line.who) : fromUtf8(line.name);
}

QString yieldOfRow(const YieldOf& line) {
    QStringList stands;
    for (const std::string& stand : line.stands) stands << fromUtf8(stand);
    const QString all = stands.isEmpty() ? fromUtf8(line.name) : stands.join(bySay(" then "));
    if (!line.who) return all;
    return all.isEmpty() ? yieldOfName(line)
                         : bySay("%1 in %2").arg(queenShortText(*line.who), all);
}

QString yieldOfPlace(const YieldOf& line) {
    QStringList stands;
    for (const std::string& stand : line.stands) stands << fromUtf8(stand);
    const QString yard = fromUtf8(line.yardName);
    if (stands.size() > 1) return bySay("%1, %2").arg(yard, stands.join(bySay(" then ")));
    if (line.queen) return bySay("%1, %2").arg(yard, fromUtf8(line.name));
    return yard;
}

QString yieldOfKnown(const YieldOf& line) {
    if (!line.mass) return bySay("nothing taken");
    HiveYield as;
    as.mass = line.mass;
    as.how = line.how;
    as.partHow = line.partHow;
    as.noted = line.noted;
    as.revised = line.revised;
    return line.yard ? howWord(line.how) : howKnownText(as, false);
}

BarScale barScale(const YieldsBy& yields) {
    BarScale scale;
    const auto reach = [&scale](const std::optional<Mass>& mass) {
        if (mass) scale.topGrams = std::max(scale.topGrams, byGrams(*mass));
    };
    for (const YieldOf& line : yields.lines) {
        reach(line.mass);
        reach(line.before);
    }
    reach(yields.nobody);
    reach(yields.noHive);
    scale.topGrams *= 1.04;
    scale.marks = scaleMarks(inMassUnits(scale.topGrams), 5, massUnit());
    return scale;
}

QString yieldsByAverages(const YieldsBy& yields, bool brief) {
    // Where some are not written down nobody knows over how many it would be.
    if (yields.nobody || yields.total == Mass()) return {};
    const int producing = yields.allKnown ? yields.producing : 0;
    const bool queens = yields.by == YieldBy::Queen;
    if (brief || (!queens && yields.by != YieldBy::Colony))
        return averagesText(yields.total, yields.how, producing, yields.standing, brief);
    const auto each = [&](int many) {
        return massFigure(gramsPerHive(byGrams(yields.total), many), yields.how);
    };
    if (producing > 0 && yields.standing > 0)
        return (queens ? bySay("%1 per producing queen, %2 per queen on 1 May")
                       : bySay("%1 per producing colony, %2 per colony on 1 May"))
            .arg(each(producing), each(yields.standing));
    if (producing > 0)
        return (queens ? bySay("%1 per producing queen") : bySay("%1 per producing colony"))
            .arg(each(producing));
    if (yields.standing > 0)
        return (queens ? bySay("%1 per queen on 1 May") : bySay("%1 per colony on 1 May"))
            .arg(each(yields.standing));
    return {};
}

QString yieldsByTitle(const YieldsBy& yields) {
    switch (yields.by) {
        case YieldBy::Hive:
            return bySay("Honey by hive %1").arg(yields.year);
        case YieldBy::Colony:
            return bySay("Honey by colony %1").arg(yields.year);
        case YieldBy::Queen:
            return bySay("Honey by queen %1").arg(yields.year);
        case YieldBy::Yard:
            break;
    }
    return bySay("Honey by yard %1").arg(yields.year);
}

QStringList yieldsByNotes(const YieldsBy& yields) {
    QStringList notes;
    if (yields.by == YieldBy::Colony)
        notes << bySay(
            "A colony is followed over its stands: a box counts for who lived in the hive on the "
            "day it was taken off.");
    if (yields.by == YieldBy::Queen)
        notes << bySay(
            "A box counts for the queen who headed the colony on the day it was taken off, though "
            "bees of the one before her may have filled it.");
    if (!yields.allKnown)
        notes << bySay("A part of the honey is of nobody by name, so how many gave is not known.");
    return notes;
}

TableBlock yieldsByBlock(const YieldsBy& yields) {
    const BarScale scale = barScale(yields);
    TableBlock table;
    table.columns = {{headOfBy(yields.by), 1.35, false},
                     {QStringLiteral("%1, %2").arg(yields.year).arg(massUnit()), 0.9, true},
                     {QString::number(yields.beforeYear), 0.8, true},
                     {QString(), 2.6, false, scale.marks},
                     {yields.by == YieldBy::Yard ? bySay("a hive") : bySay("where"), 1.7, false},
                     {bySay("how it is known"), 1.9, false}};
    table.rowMm = 4.75;
    const auto bar = [&](const std::optional<Mass>& mass) {
        Cell cell;
        cell.look = Cell::Look::Bar;
        if (mass) cell.bar = byGrams(*mass) / scale.topGrams;
        return cell;
    };
    for (const YieldOf& line : yields.lines) {
        Cell drawn = bar(line.mass);
        if (line.before) drawn.stroke = byGrams(*line.before) / scale.topGrams;
        drawn.hatched = line.how == How::ByDifference || line.how == How::ByEye;
        drawn.open = line.noted;
        TableRow row;
        row.cells = {byCell(yieldOfName(line), yields.by == YieldBy::Yard),
                     byMassCell(line.mass, line.how),
                     beforeCell(line.before, line.beforeHow),
                     drawn,
                     byCell(line.yard ? averagesText(line.mass.value_or(Mass()), line.how,
                                                     line.producingKnown ? line.producing : 0,
                                                     line.standing, true)
                                      : yieldOfPlace(line),
                            false, true),
                     byCell(yieldOfKnown(line), false, true)};
        table.rows.push_back(std::move(row));
    }
    const auto without = [&](const QString& name, const std::optional<Mass>& mass, How how) {
        if (!mass) return;
        Cell drawn = bar(mass);
        drawn.dashed = true;
        TableRow row;
        row.cells = {byCell(name, true), byMassCell(mass, how), byCell({}), drawn, byCell({}),
                     byCell({})};
        table.rows.push_back(std::move(row));
    };
    without(nobodyName(yields.by), yields.nobody, yields.nobodyHow);
    without(bySay("hive not known"), yields.noHive, yields.noHiveHow);
    if (!table.rows.empty()) table.rows.back().below = Rule::Ink;
    TableRow all;
    all.below = Rule::Double;
    Cell averages = byCell(yieldsByAverages(yields));
    averages.small = true;
    const auto total = yields.total > Mass() ? std::optional(yields.total) : std::nullopt;
    all.cells = {byCell(bySay("All"), true),
                 byMassCell(total, yields.how, true),
                 beforeCell(yields.before, yields.beforeHow),
                 averages,
                 byCell({}),
                 byCell({})};
    table.rows.push_back(std::move(all));
    return table;
}

HarvestTable yieldsByTable(const YieldsBy& yields) {
    HarvestTable table;
    const auto heads = [](const QString& what) {
        return QStringList{QStringLiteral("%1 (%2)").arg(what, massUnit()),
                           QStringLiteral("%1 (g)").arg(what)};
    };
    table.head = QStringList{headOfBy(yields.by).toLower(), bySay("where")} +
                 heads(QString::number(yields.year)) +
                 QStringList{bySay("how known"), bySay("from paper"), bySay("revised"),
                             bySay("stood on 1 May")} +
                 heads(QString::number(yields.beforeYear)) +
                 QStringList{bySay("%1 how known").arg(yields.beforeYear)};
    const auto yes = [](bool is) { return is ? bySay("yes") : QString(); };
    for (const YieldOf& line : yields.lines)
        table.rows.push_back(QStringList{yieldOfName(line), yieldOfPlace(line)} +
                             plainPair(line.mass) +
                             QStringList{line.mass ? howWord(line.how) : QString(), yes(line.noted),
                                         yes(line.revised), QString::number(line.standing)} +
                             plainPair(line.before) +
                             QStringList{line.before ? howWord(line.beforeHow) : QString()});
    const auto without = [&](const QString& name, const std::optional<Mass>& mass, How how) {
        if (mass)
            table.rows.push_back(QStringList{name, QString()} + plainPair(mass) +
                                 QStringList{howWord(how), QString(), QString(), QString(),
                                             QString(), QString(), QString()});
    };
    without(nobodyName(yields.by), yields.nobody, yields.nobodyHow);
    without(bySay("hive not known"), yields.noHive, yields.noHiveHow);
    return table;
}

}  // namespace combwright
