#include "core/places/pages/due/due_page.h"

#include <QCoreApplication>

#include "core/model/season_info.h"
#include "core/places/pages/due/due_words.h"
#include "core/places/pages/yard/queen_words.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString duePageTr(const char* text) { return QCoreApplication::translate("due_page", text); }

Page duePageBegun(const Read& file, const QString& title, Day on) {
    Page page;
    page.title = title;
    page.day = duePageTr("for %1").arg(dayText(on));
    if (const auto season = file.first<SeasonInfo>({})) {
        page.keeper = fromUtf8(season->name.text());
        page.invented = season->invented.value_or(false);
    }
    return page;
}

TableRow dueRow(const QString& mark, const QString& what, const QString& why) {
    TableRow row;
    row.cells.resize(3);
    row.cells[0].text = mark;
    row.cells[0].strong = row.cells[0].big = true;
    row.cells[1].text = what;
    row.cells[1].big = true;
    row.cells[1].second = why;
    row.cells[2].look = Cell::Look::Blank;
    return row;
}

TableBlock tripTable(const DueTrip& trip, Day on) {
    TableBlock table;
    const QString when = trip.group == DueGroup::Late
                             ? duePageTr("late by %1").arg(tripWhenText(trip, on))
                         : trip.day == on ? groupText(DueGroup::Today)
                                          : tripWhenText(trip, on);
    table.title = tripText(trip) + QStringLiteral("  ·  ") + when;
    table.columns = {{trip.isTrip() ? duePageTr("hive") : QString(), 1, false},
                     {duePageTr("what, and why"), 6, false},
                     {duePageTr("done"), 1.2, false}};
    table.rowMm = 12;
    for (const DueHive& row : trip.hives)
        for (const DueItem& item : row.items)
            table.rows.push_back(dueRow(
                fromUtf8(row.mark),
                trip.isTrip() || trip.group == DueGroup::Late ? dueDoText(item) : tripText(trip),
                dueWhyText(item)));
    for (const DueHive& row : trip.shut) {
        TableRow shut =
            dueRow(fromUtf8(row.mark), leaveShutText(row.items.front().from - days(1)), {});
        shut.cells[1].look = Cell::Look::Shut;
        shut.cells[2].look = Cell::Look::Text;
        table.rows.push_back(std::move(shut));
    }
    return table;
}

void addTripBlocks(Page& page, const DueTrip& trip, Day on) {
    page.blocks.push_back(tripTable(trip, on));
    if (trip.take.empty()) return;
    TickBlock kit;
    kit.title = duePageTr("Take along");
    for (const DueKit& each : trip.take) kit.lines.push_back({kitText(each), {}});
    page.blocks.push_back(std::move(kit));
}

void addStings(Page& page) {
    TextBlock caution;
    caution.caution = true;
    caution.text = duePageTr(
                       "Bees sting: wear what you wear, and have help at hand where a sting could "
                       "harm you.") +
                   QLatin1Char(' ') + liftCaution();
    page.blocks.push_back(std::move(caution));
}

}  // namespace

Page duePage(const Read& file, const DueList& list) {
    Page page = duePageBegun(file, duePageTr("Due"), list.on);
    if (list.trips.empty()) {
        TextBlock none;
        none.text = duePageTr("Nothing is due by what is written down.");
        page.blocks.push_back(std::move(none));
    }
    bool driven = false;
    for (const DueTrip& trip : list.trips) {
        addTripBlocks(page, trip, list.on);
        driven = driven || trip.where == DueWhere::Yard;
    }
    if (!list.quieted.empty()) {
        TextBlock quiet;
        quiet.title = duePageTr("Quieted: %1").arg(list.quieted.size());
        quiet.small = true;
        QStringList lines;
        for (const Quieted& each : list.quieted) lines << quietedText(each);
        quiet.text = lines.join(QStringLiteral("; ")) + QLatin1Char('.');
        page.blocks.push_back(std::move(quiet));
    }
    if (driven) addStings(page);
    return page;
}

Page tripPage(const Read& file, const DueTrip& trip, Day on) {
    Page page = duePageBegun(
        file, trip.yardName.empty() ? whereText(trip.where) : fromUtf8(trip.yardName), on);
    addTripBlocks(page, trip, on);
    if (trip.where == DueWhere::Yard) addStings(page);
    return page;
}

}  // namespace combwright
