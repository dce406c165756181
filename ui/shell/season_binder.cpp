#include "ui/shell/season_binder.h"

#include <QCoreApplication>
#include <algorithm>
#include <array>

#include "core/places/pages/honey_room/room_paper.h"
#include "core/places/pages/trace/trace_page.h"
#include "core/places/season_book/season_yield.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString binderWord(const char* text) { return QCoreApplication::translate("binder", text); }

/// What is bound, in the order of a year told: the crop, the bees, the honey, what was sold, the
/// wax, and what next season needs.
constexpr std::array boundSheets{"harvest-summary",
                                 "season-strip",
                                 "run-balance",
                                 "colonies",
                                 "queens",
                                 "mites",
                                 "treatments",
                                 "medicine-record",
                                 "inspector-list",
                                 "feeding-sheet",
                                 "honey-store",
                                 "trace",
                                 "jars",
                                 "sales",
                                 "price-list",
                                 "wax-bench",
                                 "wax-balance",
                                 "comb-jars",
                                 "candle-plan",
                                 "frame-board",
                                 "winter-to-do",
                                 "order-list",
                                 "due"};

Cell binderCell(const QString& text, bool strong = false, bool muted = false) {
    Cell cell;
    cell.text = text;
    cell.strong = strong;
    cell.muted = muted;
    return cell;
}

std::vector<Page> tracesOf(const Session& session, int year) {
    const Day today = session.clock().today();
    std::vector<Page> pages;
    for (const TraceOf& of : tracedOfYear(session.read(), year, today))
        if (const auto traced = trace(session.read(), of, today))
            pages.push_back(tracePage(session.read(), *traced));
    return pages;
}

}  // namespace

Page seasonBinder(const Session& session, const std::vector<Place*>& places) {
    const Day today = session.clock().today();
    const int year = newestHarvest(session.read(), today);
    Page binder =
        roomPaper(session.read(), binderWord("Season binder %1").arg(year), dayText(today));
    std::vector<PrintSheet> offered;
    for (Place* place : places)
        for (PrintSheet& sheet : place->sheets()) offered.push_back(std::move(sheet));
    TableBlock list;
    list.columns = {{binderWord("sheet"), 3, false},
                    {binderWord("of"), 3, false},
                    {binderWord("begins on page"), 1.2, true}};
    list.rowMm = 6;
    for (const char* id : boundSheets) {
        const auto sheet =
            std::find_if(offered.begin(), offered.end(),
                         [&](const PrintSheet& each) { return each.id == QLatin1String(id); });
        if (sheet == offered.end()) continue;
        // Not the newest alone: whoever asks what is in a jar asks about any of them.
        std::vector<Page> pages =
            sheet->id == QLatin1String("trace") ? tracesOf(session, year) : std::vector<Page>();
        if (pages.empty()) pages.push_back(sheet->page());
        for (Page& page : pages) {
            TableRow row;
            row.cells = {binderCell(page.title, true), binderCell(page.day, false, true),
                         binderCell({}, true)};
            list.rows.push_back(std::move(row));
            binder.bound.push_back(std::move(page));
        }
    }
    binder.blocks.emplace_back(std::move(list));
    TextBlock about;
    about.small = true;
    about.text = binderWord(
        "Everything as it is recorded today; the season file holds what stands behind each figure. "
        "Unknown stays unknown.");
    binder.blocks.emplace_back(std::move(about));
    return binder;
}

}  // namespace combwright
