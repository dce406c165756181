#include <QCoreApplication>
#include <cmath>

#include "core/places/pages/season_book/harvest_blocks.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString tableWord(const char* text) { return QCoreApplication::translate("harvest", text); }

/// For a file a program reads: a decimal point in every language, gram for gram.
QString shownMass(double grams) {
    QString text = QString::number(inMassUnits(grams), 'f', 3);
    while (text.endsWith(QLatin1Char('0'))) text.chop(1);
    if (text.endsWith(QLatin1Char('.'))) text.chop(1);
    return text;
}

/// In the unit shown, then in grams; both empty where it is unknown.
QStringList massPair(std::optional<double> grams) {
    if (!grams) return {QString(), QString()};
    return {shownMass(*grams), QString::number(std::llround(*grams))};
}

std::optional<double> maybeGrams(const std::optional<Mass>& mass) {
    return mass ? std::optional(static_cast<double>(mass->grams())) : std::nullopt;
}

QStringList massHeads(const QString& what) {
    return {QStringLiteral("%1 (%2)").arg(what, massUnit()), QStringLiteral("%1 (g)").arg(what)};
}

QString known(const std::optional<Mass>& mass, How how) { return mass ? howWord(how) : QString(); }

}  // namespace

HarvestTable yieldTable(const SeasonYield& season) {
    HarvestTable table;
    table.head =
        QStringList{tableWord("yard"), tableWord("hive")} +
        massHeads(QString::number(season.year)) +
        QStringList{tableWord("how known"), tableWord("from paper"), tableWord("revised")} +
        massHeads(QString::number(season.beforeYear)) +
        QStringList{tableWord("%1 how known").arg(season.beforeYear)};
    const auto yes = [](bool is) { return is ? tableWord("yes") : QString(); };
    for (const YardYield& yard : season.yards) {
        const QString name = fromUtf8(yard.yard.name.text());
        for (const HiveYield& hive : yard.hives) {
            // Nothing was taken is known, unless only the yard's total is.
            const auto mass = hive.mass || yard.noted ? maybeGrams(hive.mass) : std::optional(0.0);
            table.rows.push_back(
                QStringList{name, fromUtf8(hive.mark)} + massPair(mass) +
                QStringList{known(hive.mass, hive.how), yes(hive.noted), yes(hive.revised)} +
                massPair(maybeGrams(hive.before)) +
                QStringList{known(hive.before, hive.beforeHow)});
        }
        if (yard.unknown)
            table.rows.push_back(QStringList{name, QString()} + massPair(maybeGrams(yard.unknown)) +
                                 QStringList{howWord(yard.how), QString(), QString()} +
                                 massPair(std::nullopt) + QStringList{QString()});
        if (yard.noted)
            table.rows.push_back(QStringList{name, QString()} + massPair(maybeGrams(yard.total)) +
                                 QStringList{howWord(yard.how), yes(true), QString()} +
                                 massPair(maybeGrams(yard.before)) +
                                 QStringList{known(yard.before, yard.beforeHow)});
    }
    if (season.nowhere)
        table.rows.push_back(QStringList{QString(), QString()} +
                             massPair(maybeGrams(season.nowhere)) +
                             QStringList{howWord(season.how), QString(), QString()} +
                             massPair(std::nullopt) + QStringList{QString()});
    return table;
}

HarvestTable timelineTable(const SeasonYield& season, const std::vector<SeasonYield>& beside) {
    HarvestTable table;
    table.head =
        QStringList{tableWord("year"), tableWord("day"), tableWord("lot"), tableWord("yard")} +
        massHeads(tableWord("buckets")) + QStringList{tableWord("how known")} +
        massHeads(tableWord("added up"));
    const auto add = [&](const SeasonYield& year) {
        double sum = 0;
        for (const RunBalance& run : year.runs) {
            const auto grams = static_cast<double>(run.buckets.grams());
            sum += grams;
            table.rows.push_back(
                QStringList{QString::number(year.year), fromUtf8(isoText(run.run.on)),
                            fromUtf8(run.run.name.text()), fromUtf8(run.yard)} +
                massPair(grams) + QStringList{howWord(run.bucketsHow)} + massPair(sum));
        }
        if (!year.noted) return;
        const auto grams = static_cast<double>(year.noted->grams());
        table.rows.push_back(QStringList{QString::number(year.year), QString(),
                                         tableWord("noted from paper"), QString()} +
                             massPair(grams) + QStringList{howWord(year.how)} +
                             massPair(sum + grams));
    };
    add(season);
    for (const SeasonYield& year : beside) add(year);
    return table;
}

HarvestTable reckonedTable(const ReckonedAndGot& reckoned) {
    HarvestTable table;
    table.head = {tableWord("what"),       tableWord("constant"),    tableWord("unit"),
                  tableWord("reckoned"),   tableWord("got"),         tableWord("how known"),
                  tableWord("lowest run"), tableWord("highest run"), tableWord("runs"),
                  tableWord("offered"),    tableWord("got (g)"),     tableWord("give or take"),
                  tableWord("rule")};
    for (const GotLine& line : reckoned.lines) {
        const auto value = [&](double number) {
            switch (line.what) {
                case GotWhat::Frame:
                    return shownMass(number);
                case GotWhat::Load:
                    return QString::number(number, 'f', 1);
                case GotWhat::Uncapping:
                    return QString::number(number, 'f', 2);
                default:
                    return QString::number(number * 100.0, 'f', 1);
            }
        };
        table.rows.push_back(
            {gotName(line), fromUtf8(line.constant), gotUnit(line), value(line.reckoned),
             value(line.got), howWord(line.how), line.spread ? value(line.spread->low) : QString(),
             line.spread ? value(line.spread->high) : QString(), QString::number(line.runs),
             line.learned ? value(line.offered) : QString(),
             line.what == GotWhat::Frame ? QString::number(std::llround(line.got)) : QString(),
             line.learned && line.learned->doubt ? value(*line.learned->doubt) : QString(),
             gotRule(line)});
    }
    return table;
}

HarvestTable recordsTable(const YieldRecords& records) {
    HarvestTable table;
    table.head = QStringList{tableWord("day"), tableWord("run"),  tableWord("yard"),
                             tableWord("box"), tableWord("hive"), tableWord("frames")} +
                 massHeads(tableWord("full")) + massHeads(tableWord("wet")) +
                 massHeads(tableWord("came out")) + massHeads(tableWord("share")) +
                 QStringList{tableWord("how known")};
    const auto reading = [](const std::optional<Known<Mass>>& mass) {
        return massPair(mass ? mass->middle() : std::nullopt);
    };
    for (const RunRecord& run : records.runs) {
        const QStringList of{fromUtf8(isoText(run.on)), fromUtf8(run.name), fromUtf8(run.yard)};
        for (const RunBoxLine& box : run.boxes)
            table.rows.push_back(
                of +
                QStringList{fromUtf8(box.mark), fromUtf8(box.hive),
                            box.box.frames ? QString::number(box.box.frames->value()) : QString()} +
                reading(box.box.gross) + reading(box.box.wet) + massPair(box.offG) +
                massPair(std::nullopt) +
                QStringList{howWord(run.byEye          ? How::ByEye
                                    : box.byDifference ? How::ByDifference
                                                       : How::Weighed)});
        table.rows.push_back(of + QStringList{QString(), QString(), QString()} +
                             massPair(std::nullopt) + massPair(std::nullopt) + massPair(run.offG) +
                             massPair(static_cast<double>(run.share.grams())) +
                             QStringList{howWord(run.how)});
    }
    for (const PaperRecord& paper : records.paper)
        table.rows.push_back(
            QStringList{QString(), tableWord("noted from paper"), QString(), QString(),
                        fromUtf8(paper.of), QString()} +
            massPair(std::nullopt) + massPair(std::nullopt) + massPair(std::nullopt) +
            massPair(static_cast<double>(paper.mass.grams())) + QStringList{howWord(paper.how)});
    return table;
}

}  // namespace combwright
