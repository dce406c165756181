#include "ui/honey_room/room_sheets.h"

#include <QCoreApplication>
#include <utility>

#include "core/places/pages/goods/jar_leaf_page.h"
#include "core/places/pages/goods/label_pages.h"
#include "core/places/pages/honey/bucket_labels_page.h"
#include "core/places/pages/honey/honey_store_page.h"
#include "core/places/pages/honey_room/day_log_page.h"
#include "core/places/pages/honey_room/extraction_sheet_page.h"
#include "core/places/pages/honey_room/room_tags_page.h"
#include "core/places/pages/honey_room/waiting_sign_page.h"
#include "core/places/pages/trace/trace_page.h"

namespace combwright {
namespace {

QString sheetTitle(const char* text) { return QCoreApplication::translate("room_sheets", text); }

}  // namespace

std::vector<PrintSheet> roomSheets(Session& session, std::function<std::vector<LoadSheet>()> loads,
                                   std::function<std::optional<Id<Extraction>>()> run) {
    const auto today = [&session] { return session.clock().today(); };
    return {{QStringLiteral("box-tags"), sheetTitle("Box tags"),
             [&session, today] { return roomTagsPage(session.read(), today()); }},
            {QStringLiteral("waiting-sign"), sheetTitle("Sign for the waiting stack"),
             [&session, today] { return waitingSignPage(session.read(), today()); }},
            {QStringLiteral("extraction-sheet"), sheetTitle("Extraction sheet"),
             [&session, today, loads = std::move(loads)] {
                 return extractionSheetPage(session.read(), loads(), today());
             }},
            {QStringLiteral("bucket-labels"), sheetTitle("Bucket labels"),
             [&session, today, run = std::move(run)] {
                 return bucketLabelsPage(session.read(), run(), today());
             }},
            {QStringLiteral("day-log"), sheetTitle("Log of the day"),
             [&session, today] { return dayLogPage(session.read(), today()); }},
            {QStringLiteral("honey-store"), sheetTitle("Honey in the room"),
             [&session, today] {
                 return honeyStorePage(session.read(), honeyStore(session.read(), today()));
             }},
            {QStringLiteral("blend"), sheetTitle("Blend to your line of water"),
             [&session, today] { return usualBlendPage(session.read(), today()); }},
            {QStringLiteral("trace"), sheetTitle("Trace of the newest filling"),
             [&session, today] { return newestTracePage(session.read(), today()); }},
            {QStringLiteral("jar-leaf"), sheetTitle("Leaf for a jar"),
             [&session, today] { return newestJarLeafPage(session.read(), today()); }},
            {QStringLiteral("labels"), sheetTitle("Labels of the newest filling"),
             [&session, today] { return newestLabelsPage(session.read(), today()); }},
            {QStringLiteral("label-words"), sheetTitle("Before labels are stuck on"),
             [&session, today] { return newestLabelWordsPage(session.read(), today()); }},
            {QStringLiteral("label-test"), sheetTitle("Where the printer puts labels"),
             [&session, today] { return usualCalibrationPage(session.read(), today()); }}};
}

}  // namespace combwright
