#include "ui/honey_room/room_sheets.h"

#include <QCoreApplication>
#include <utility>

#include "core/places/pages/bucket_labels_page.h"
#include "core/places/pages/day_log_page.h"
#include "core/places/pages/extraction_sheet_page.h"
#include "core/places/pages/honey_store_page.h"
#include "core/places/pages/room_tags_page.h"
#include "core/places/pages/waiting_sign_page.h"

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
            {QStringLiteral("honey-store"), sheetTitle("Honey in the room"), [&session, today] {
                 return honeyStorePage(session.read(), honeyStore(session.read(), today()));
             }}};
}

}  // namespace combwright
