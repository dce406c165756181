#include <QCoreApplication>
#include <QFileInfo>
#include <QJsonArray>
#include <QJsonObject>

#include "app/cli/groups.h"
#include "app/cli/season_asked.h"
#include "core/exchange/or_null.h"
#include "core/places/find/find.h"
#include "core/words/words.h"

namespace combwright::cli {
namespace {

constexpr std::size_t foundUnlessSaid = 10;

QString foundSaid(const char* text) { return QCoreApplication::translate("cli", text); }

/// Of each kind, whatever the person's language.
const char* kindKey(FindKind kind) {
    switch (kind) {
        case FindKind::Hive:
            return "hives";
        case FindKind::Queen:
            return "queens";
        case FindKind::Box:
            return "boxes";
        case FindKind::Visit:
            return "visits";
        case FindKind::Health:
            return "health";
        case FindKind::Honey:
            return "honey";
        case FindKind::Goods:
            return "goods";
        case FindKind::Wax:
            return "wax";
        case FindKind::Storeroom:
            return "storeroom";
        case FindKind::Note:
            return "notes";
    }
    return "notes";
}

QJsonArray hitArray(const FindGroup& group) {
    QJsonArray list;
    for (const FindHit& hit : group.hits)
        list.append(QJsonObject{{QStringLiteral("table"), fromUtf8(hit.table)},
                                {QStringLiteral("id"), static_cast<qint64>(hit.row)},
                                {QStringLiteral("title"), hit.title},
                                {QStringLiteral("context"), hit.context},
                                {QStringLiteral("on"), orNull(hit.on)},
                                {QStringLiteral("by_mark"), hit.byMark}});
    return list;
}

QJsonArray groupArray(const std::vector<FindGroup>& groups) {
    QJsonArray list;
    for (const FindGroup& group : groups)
        list.append(QJsonObject{{QStringLiteral("kind"), QLatin1String(kindKey(group.kind))},
                                {QStringLiteral("found"), hitArray(group)},
                                {QStringLiteral("more"), group.more}});
    return list;
}

void printGroups(Context& context, const std::vector<FindGroup>& groups) {
    for (const FindGroup& group : groups) {
        context.streams.out << group.title << '\n';
        for (const FindHit& hit : group.hits)
            context.streams.out << "  " << hit.title << "  " << hit.context << '\n';
        if (group.more) context.streams.out << "  " << foundSaid("and more") << '\n';
    }
}

/// The words the window gathered, where it did; it is made by nobody else.
FindCache cacheOf(const Season& season) {
    const std::string kept = FindCache::pathFor(season.path());
    return FindCache(QFileInfo::exists(fromUtf8(kept)) ? kept : std::string(":memory:"));
}

int find(Context& context) {
    std::size_t most = foundUnlessSaid;
    if (const auto given = context.arguments.value("most")) {
        bool isNumber = false;
        const int number = given->toInt(&isNumber);
        if (!isNumber || number < 1 || number > 1000)
            return misused(context, foundSaid("--most takes a number from 1 to 1000."));
        most = static_cast<std::size_t>(number);
    }
    const Season season = seasonToRead(context);
    FindCache cache = cacheOf(season);
    cache.bringUp(season.read());
    const QString typed = context.arguments.positional.mid(1).join(QLatin1Char(' '));
    const auto day = findDay(typed, context.clock.today());
    const auto ofDay = day ? findOnDay(cache, *day, most) : std::vector<FindGroup>();
    const auto groups = findRecords(cache, typed, most);
    if (context.json()) {
        printJson(context, QJsonObject{{QStringLiteral("day"), orNull(day)},
                                       {QStringLiteral("on_day"), groupArray(ofDay)},
                                       {QStringLiteral("groups"), groupArray(groups)}});
        return Done;
    }
    if (day) {
        context.streams.out << dayText(*day) << '\n';
        printGroups(context, ofDay);
    }
    printGroups(context, groups);
    if (groups.empty() && ofDay.empty())
        context.streams.out << foundSaid("Nothing is called or says that.") << '\n';
    return Done;
}

}  // namespace

std::vector<Command> findCommands() {
    return {{"find",
             "FILE WORD [WORD ...]",
             "what is called so or says so, or was written down on that day",
             2,
             20,
             {{"most", "NUMBER", "of each kind; 10 where it is left out"}},
             &find}};
}

}  // namespace combwright::cli
