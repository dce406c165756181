#include <QJsonArray>
#include <QJsonObject>

#include "app/cli/groups.h"
#include "app/cli/season_asked.h"
#include "app/cli/why.h"
#include "core/exchange/or_null.h"
#include "core/model/season_info.h"
#include "core/places/pages/due/due_calendar.h"
#include "core/places/pages/due/due_page.h"
#include "core/places/pages/due/due_words.h"
#include "core/places/pages/page_text.h"
#include "core/storage/season.h"
#include "core/storage/whole_file.h"
#include "core/words/words.h"

namespace combwright::cli {
namespace {

const char* groupKey(DueGroup group) {
    switch (group) {
        case DueGroup::Late:
            return "late";
        case DueGroup::Today:
            return "today";
        case DueGroup::ThisWeek:
            return "this_week";
        case DueGroup::Later:
            return "later";
    }
    return "later";
}

const char* whereKey(DueWhere where) {
    switch (where) {
        case DueWhere::Yard:
            return "yard";
        case DueWhere::Pull:
            return "pull";
        case DueWhere::HoneyRoom:
            return "honey_room";
        case DueWhere::Storeroom:
            return "storeroom";
        case DueWhere::WaxBench:
            return "wax_bench";
    }
    return "yard";
}

QJsonArray kitArray(const std::vector<DueKit>& kit) {
    QJsonArray list;
    for (const DueKit& each : kit) {
        QJsonObject thing{{QStringLiteral("item"), fromUtf8(each.item)}};
        if (each.mass)
            thing.insert(QStringLiteral("mass_g"), static_cast<qint64>(each.mass->grams()));
        else
            thing.insert(QStringLiteral("count"), static_cast<qint64>(each.count));
        list.append(thing);
    }
    return list;
}

QJsonObject dueObject(const DueItem& item, const std::string& hive) {
    QJsonObject object{{QStringLiteral("id"), fromUtf8(item.id)},
                       {QStringLiteral("rule"),
                        fromUtf8(Choices<DueRule>::words[static_cast<std::size_t>(item.rule)])},
                       {QStringLiteral("hive"), orNull(hive)},
                       {QStringLiteral("since"), orNull(item.since)},
                       {QStringLiteral("from"), orNull(item.from)},
                       {QStringLiteral("by"), orNull(item.by)},
                       {QStringLiteral("leave_shut"), item.leaveShut},
                       {QStringLiteral("about"), orNull(item.about)},
                       {QStringLiteral("do"), dueDoText(item)},
                       {QStringLiteral("why"), dueWhyText(item)},
                       {QStringLiteral("take"), kitArray(item.take)},
                       {QStringLiteral("minutes"), orNull(item.minutes)}};
    // The count of a note is the number it has in the file.
    if (item.count)
        object.insert(item.rule == DueRule::Task ? QStringLiteral("task") : QStringLiteral("count"),
                      static_cast<qint64>(*item.count));
    if (item.value) object.insert(QStringLiteral("value"), *item.value);
    if (item.mass) object.insert(QStringLiteral("mass_g"), static_cast<qint64>(item.mass->grams()));
    if (item.other) object.insert(QStringLiteral("other_day"), orNull(item.other));
    if (item.perDay) object.insert(QStringLiteral("per_day"), *item.perDay);
    if (!item.source.empty()) object.insert(QStringLiteral("source"), fromUtf8(item.source));
    if (item.rate) {
        object.insert(QStringLiteral("per_100"), item.rate->per100);
        object.insert(QStringLiteral("per_100_low"), item.rate->low);
        object.insert(QStringLiteral("per_100_high"), item.rate->high);
    }
    return object;
}

QJsonArray hivesArray(const std::vector<DueHive>& rows) {
    QJsonArray items;
    for (const DueHive& row : rows)
        for (const DueItem& item : row.items) items.append(dueObject(item, row.mark));
    return items;
}

QJsonObject dueListObject(const DueList& list) {
    QJsonArray trips;
    for (const DueTrip& trip : list.trips)
        trips.append(QJsonObject{{QStringLiteral("id"), fromUtf8(trip.id())},
                                 {QStringLiteral("group"), QLatin1String(groupKey(trip.group))},
                                 {QStringLiteral("where"), QLatin1String(whereKey(trip.where))},
                                 {QStringLiteral("yard"), orNull(trip.yardName)},
                                 {QStringLiteral("day"), orNull(trip.day)},
                                 {QStringLiteral("may_be_before"), trip.by},
                                 {QStringLiteral("says"), tripText(trip)},
                                 {QStringLiteral("minutes"), orNull(trip.minutes)},
                                 {QStringLiteral("take"), kitArray(trip.take)},
                                 {QStringLiteral("items"), hivesArray(trip.hives)},
                                 {QStringLiteral("not_to_open"), hivesArray(trip.shut)}});
    QJsonArray quieted;
    for (const Quieted& each : list.quieted) {
        QJsonObject object = dueObject(each.item, each.hive);
        object.insert(QStringLiteral("quiet"), static_cast<qint64>(each.quiet.id.number));
        object.insert(QStringLiteral("reason"), fromUtf8(each.quiet.reason.text()));
        object.insert(QStringLiteral("until"), orNull(each.quiet.until));
        quieted.append(object);
    }
    return {{QStringLiteral("as_of"), orNull(list.on)},
            {QStringLiteral("due_today"), list.today()},
            {QStringLiteral("late"), list.late()},
            {QStringLiteral("trips"), trips},
            {QStringLiteral("quieted"), quieted}};
}

int runDue(Context& context) {
    std::optional<int> alarm;
    if (const auto hour = context.arguments.value("alarm")) {
        bool number = false;
        alarm = hour->toInt(&number);
        if (!number || *alarm < 0 || *alarm > 23)
            return misused(context, QStringLiteral("--alarm is an hour, 0 to 23"));
        if (!context.arguments.has("calendar"))
            return misused(context, QStringLiteral("--alarm goes with --calendar"));
    }
    const Season season = seasonToRead(context);
    const Read& file = season.read();
    const Day today = context.clock.today();
    const auto yard = yardNamed(context, file);
    if (!yard) return refuse(context, yard.error());
    const DueList list = dueList(file, today, *yard);
    if (const auto path = context.arguments.value("calendar")) {
        const auto entries = *yard ? dueCalendar(list) : dueCalendar(file, list);
        const auto info = file.first<SeasonInfo>({});
        writeWholeFile(path->toStdString(),
                       icalendarText(entries, info ? info->name.text() : std::string(),
                                     context.clock.now(), alarm));
        if (context.json())
            printJson(context, QJsonObject{{QStringLiteral("calendar"), *path},
                                           {QStringLiteral("entries"),
                                            static_cast<qint64>(entries.size())}});
        else
            context.streams.out << entries.size() << " entries written to " << *path << ".\n";
        return Done;
    }
    const auto why = context.arguments.has("why") ? explainDue(list) : std::vector<Explained>();
    if (context.json()) {
        QJsonObject object = dueListObject(list);
        if (context.arguments.has("why")) object.insert(QStringLiteral("why"), whyArray(why));
        printJson(context, object);
        return Done;
    }
    context.streams.out << pageText(duePage(file, list));
    printWhy(context, why);
    return Done;
}

}  // namespace

std::vector<Command> dueCommands() {
    return {{"due",
             "FILE",
             "everything that is due, in trips by yard, and why",
             1,
             1,
             {{"yard", "NAME", "only this yard"},
              {"calendar", "OUT.ics", "write it as a calendar file instead"},
              {"alarm", "HOUR", "with an alarm at that hour of the day; else none"},
              {"why", nullptr, "how each figure came about"}},
             &runDue}};
}

}  // namespace combwright::cli
