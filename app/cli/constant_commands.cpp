#include <QJsonArray>
#include <QJsonObject>

#include "app/cli/groups.h"
#include "core/places/pages/page_text.h"
#include "core/places/pages/season_book/constants_page.h"
#include "core/storage/queries/names.h"
#include "core/storage/season.h"
#include "core/words/words.h"

namespace combwright::cli {
namespace {

QJsonValue givenOrNull(const std::string& text) {
    return text.empty() ? QJsonValue() : QJsonValue(fromUtf8(text));
}

/// A figure as a number, a day of the year as text.
QJsonValue figureValue(const std::string& value) {
    bool isNumber = false;
    const double number = fromUtf8(value).toDouble(&isNumber);
    return isNumber ? QJsonValue(number) : givenOrNull(value);
}

QJsonObject constantObject(const Read& file, const ConstantRow& row) {
    QJsonValue own;
    if (row.own)
        own = QJsonObject{
            {QStringLiteral("value"), figureValue(row.own->value)},
            {QStringLiteral("since"),
             row.own->since ? givenOrNull(isoText(*row.own->since)) : QJsonValue()},
            {QStringLiteral("yard"),
             row.own->yard ? givenOrNull(nameOf(file, Yard::table, row.own->yard->number))
                           : QJsonValue()},
            {QStringLiteral("source"), givenOrNull(row.own->source)}};
    return {{QStringLiteral("key"), fromUtf8(row.key)},
            {QStringLiteral("value"), figureValue(row.value)},
            {QStringLiteral("unit"), givenOrNull(row.unit)},
            {QStringLiteral("source"), givenOrNull(row.source)},
            {QStringLiteral("edition"), givenOrNull(row.edition)},
            {QStringLiteral("region"), givenOrNull(row.region)},
            {QStringLiteral("own"), own}};
}

int runConstants(Context& context) {
    const Season season = Season::open(context.arguments.positional.front().toStdString(),
                                       context.clock, Database::Mode::ReadOnly);
    const Read& file = season.read();
    const Day on = context.clock.today();
    std::optional<Id<Yard>> yard;
    if (const auto name = context.arguments.value("yard")) {
        const auto found =
            findNamed(file, Yard::table, NameQuery{.name = name->toStdString(), .on = on});
        if (!found) return refuse(context, found.error());
        yard = Id<Yard>{*found};
    }
    auto rows = constantsOn(file, yard, on);
    if (context.arguments.has("own"))
        std::erase_if(rows, [](const ConstantRow& row) { return !row.own; });
    if (!context.json()) {
        context.streams.out << pageText(constantsPage(file, rows, on));
        return Done;
    }
    QJsonArray all;
    for (const ConstantRow& each : rows) all.append(constantObject(file, each));
    printJson(context, QJsonObject{{QStringLiteral("day"), fromUtf8(isoText(on))},
                                   {QStringLiteral("constants"), all}});
    return Done;
}

}  // namespace

std::vector<Command> constantCommands() {
    return {{"constants",
             "FILE",
             "every rate, limit and day reckoned with: published, and your own where it overrules",
             1,
             1,
             {{"yard", "NAME", "as they count in this yard"},
              {"own", nullptr, "only those you set yourself"}},
             &runConstants}};
}

}  // namespace combwright::cli
