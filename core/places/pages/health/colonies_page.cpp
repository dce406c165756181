#include "core/places/pages/health/colonies_page.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>

#include "core/model/season_info.h"
#include "core/places/pages/yard/queen_words.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString colonySay(const char* text) { return QCoreApplication::translate("colonies", text); }

Cell colonyCell(const QString& text, bool strong = false, bool muted = false) {
    Cell cell;
    cell.text = text;
    cell.strong = strong;
    cell.muted = muted;
    return cell;
}

Page colonyPage(const Read& file, const QString& title, Day on) {
    Page page;
    page.title = title;
    page.day = colonySay("as it was on %1").arg(dayText(on));
    if (const auto season = file.first<SeasonInfo>({})) {
        page.keeper = fromUtf8(season->name.text());
        page.invented = season->invented.value_or(false);
    }
    return page;
}

QString shareText(double share) {
    return colonySay("%1 %").arg(QLocale().toString(share * 100, 'f', 1));
}

QString originText(const ColonyThere& there) {
    const QString origin = choiceText(word(there.colony.origin));
    if (there.mother.empty()) return origin;
    return colonySay("%1, from %2").arg(origin, fromUtf8(there.mother));
}

QString goneText(const ColonyGone& gone) {
    QString text =
        gone.colony.ending ? choiceText(word(*gone.colony.ending)) : colonySay("why is not known");
    if (!gone.into.empty()) text = colonySay("%1 with %2").arg(text, fromUtf8(gone.into));
    if (!gone.cause.empty()) text += QStringLiteral("; ") + fromUtf8(gone.cause);
    return text;
}

TableRow groupRow(const Yard& yard, const QString& about, int columns) {
    TableRow row;
    row.group = true;
    row.cells.push_back(colonyCell(fromUtf8(yard.name.text()), true));
    row.cells.push_back(colonyCell(about, false, true));
    while (static_cast<int>(row.cells.size()) < columns) row.cells.push_back(colonyCell({}));
    return row;
}

}  // namespace

QString coloniesCountedText(const YardColonies& yard) {
    QStringList origins;
    for (const auto& [origin, count] : yard.origins)
        origins << QStringLiteral("%1 %2").arg(count).arg(choiceText(word(origin)));
    const QString counted =
        yard.colonies.size() == 1
            ? colonySay("1 colony on %1")
                  .arg(yard.hives == 1 ? colonySay("1 stand")
                                       : colonySay("%1 stands").arg(yard.hives))
            : colonySay("%1 colonies on %2")
                  .arg(yard.colonies.size())
                  .arg(yard.hives == 1 ? colonySay("1 stand")
                                       : colonySay("%1 stands").arg(yard.hives));
    return origins.isEmpty() ? counted
                             : counted + QStringLiteral(": ") + origins.join(QStringLiteral(", "));
}

QString winterLossText(const WinterLoss& winter) {
    QStringList parts;
    parts << (winter.lasts ? colonySay("The winter since %1, up to %2:")
                                 .arg(dayText(winter.from), dayText(winter.to))
                           : colonySay("The winter from %1 to %2:")
                                 .arg(dayText(winter.from), dayText(winter.to)));
    if (!winter.loss) {
        parts << colonySay("no colony was at risk, so no loss can be told.");
        return parts.join(QLatin1Char(' '));
    }
    parts << colonySay("%1 of %2 at risk ended.").arg(winter.dead).arg(winter.atRisk);
    parts << colonySay("Of all together %1; the mean of the yards' own losses %2.")
                 .arg(shareText(winter.loss->totalShare), shareText(winter.loss->meanShare));
    parts << colonySay("By chance alone the rate behind the first may be anything from %1 to %2.")
                 .arg(shareText(winter.loss->total.low), shareText(winter.loss->total.high));
    if (winter.soldOrUnited > 0)
        parts << colonySay("%1 sold or united count neither way.").arg(winter.soldOrUnited);
    return parts.join(QLatin1Char(' '));
}

QString winterLossBrief(const WinterLoss& winter) {
    if (!winter.loss) return {};
    const int began = yearOf(winter.from);
    // A southern winter lies within one year.
    const bool within = !winter.lasts && yearOf(winter.to) == began;
    const QString years =
        within ? QString::number(began)
               : QStringLiteral("%1/%2").arg(began).arg((began + 1) % 100, 2, 10, QLatin1Char('0'));
    const QString text =
        winter.lasts ? colonySay(
                           "Winter %1 up to %2: %3 of %4 at risk ended, %5 of all (%6 to %7 "
                           "by chance alone), mean of the yards %8.")
                           .arg(years, dayAndMonth(winter.to))
                     : colonySay(
                           "Winter %1: %3 of %4 at risk ended, %5 of all (%6 to %7 by chance "
                           "alone), mean of the yards %8.")
                           .arg(years);
    return text.arg(winter.dead)
        .arg(winter.atRisk)
        .arg(shareText(winter.loss->totalShare),
             QLocale().toString(winter.loss->total.low * 100, 'f', 1),
             shareText(winter.loss->total.high), shareText(winter.loss->meanShare));
}

Page coloniesPage(const Read& file, const ColoniesOn& colonies) {
    Page page = colonyPage(file, colonySay("Colonies"), colonies.on);
    TextBlock summary;
    summary.text = colonies.colonies == 1 ? colonySay("1 colony.")
                                          : colonySay("%1 colonies.").arg(colonies.colonies);
    summary.text += QLatin1Char(' ') + winterLossText(colonies.winter);
    page.blocks.push_back(summary);
    TableBlock table;
    table.columns = {{colonySay("hive"), 1, false},
                     {colonySay("came from"), 2.4, false},
                     {colonySay("since"), 1.4, false}};
    table.rowMm = 6;
    TableBlock ended;
    ended.title = colonySay("Ended since %1").arg(dayText(colonies.since));
    ended.columns = {{colonySay("hive"), 1, false},
                     {colonySay("how"), 2.4, false},
                     {colonySay("on"), 1.4, false}};
    ended.rowMm = 6;
    for (const YardColonies& yard : colonies.yards) {
        QString about = coloniesCountedText(yard);
        if (!yard.yard.registration.empty())
            about += QStringLiteral("; ") +
                     colonySay("registered as %1").arg(fromUtf8(yard.yard.registration));
        table.rows.push_back(groupRow(yard.yard, about, 3));
        for (const ColonyThere& there : yard.colonies) {
            TableRow row;
            row.cells = {colonyCell(fromUtf8(there.hive.mark.text()), true),
                         colonyCell(originText(there)), colonyCell(dayText(there.colony.since))};
            table.rows.push_back(std::move(row));
        }
        if (yard.ended.empty()) continue;
        ended.rows.push_back(groupRow(yard.yard, {}, 3));
        for (const ColonyGone& gone : yard.ended) {
            TableRow row;
            row.cells = {colonyCell(fromUtf8(gone.hive.mark.text()), true),
                         colonyCell(goneText(gone)), colonyCell(dayText(*gone.colony.ended))};
            ended.rows.push_back(std::move(row));
        }
    }
    if (!table.rows.empty()) page.blocks.push_back(std::move(table));
    if (!ended.rows.empty()) page.blocks.push_back(std::move(ended));
    return page;
}

Page queensPage(const Read& file, const Queens& queens) {
    Page page = colonyPage(file, colonySay("Queens"), queens.on);
    TableBlock table;
    table.columns = {{colonySay("hive"), 0.7, false},
                     {colonySay("queen"), 2.6, false},
                     {colonySay("since"), 1.1, false},
                     {colonySay("last seen"), 1.1, false},
                     {colonySay("mother"), 1.2, false}};
    table.rowMm = 7;
    std::optional<Id<Yard>> yard;
    TextBlock waits;
    waits.title = colonySay("Young queens waited for");
    QStringList waiting;
    for (const HeadedColony& each : queens.colonies) {
        if (yard != each.yard.id) table.rows.push_back(groupRow(each.yard, {}, 5));
        yard = each.yard.id;
        TableRow row;
        QString who = colonySay("not written down");
        if (each.queen)
            who = queenText(*each.queen, each.colour);
        else if (each.lastLeft && each.lastLeft->left)
            who =
                colonySay("the last one %1, %2")
                    .arg(queenLeftText(*each.lastLeft->left), shortDayText(*each.lastLeft->until));
        QString mother;
        if (!each.mothers.empty()) {
            const Queen& first = each.mothers.front();
            mother = first.number.empty() ? QStringLiteral("#%1").arg(first.id.number)
                                          : fromUtf8(first.number);
        }
        row.cells = {colonyCell(fromUtf8(each.hive.mark.text()), true),
                     colonyCell(who, false, !each.queen),
                     colonyCell(each.stay ? dayText(each.stay->since) : QString()),
                     colonyCell(each.seen ? dayText(*each.seen) : QString()), colonyCell(mother)};
        table.rows.push_back(std::move(row));
        if (each.waiting)
            waiting << colonySay("%1: %2").arg(fromUtf8(each.hive.mark.text()),
                                               waitingText(*each.waiting, queens.on));
    }
    if (!waiting.isEmpty()) {
        waits.text = waiting.join(QLatin1Char('\n'));
        page.blocks.push_back(waits);
    }
    if (table.rows.empty()) {
        TextBlock none;
        none.text = colonySay("No colony is written down.");
        page.blocks.push_back(none);
    } else {
        page.blocks.push_back(std::move(table));
    }
    return page;
}

}  // namespace combwright
