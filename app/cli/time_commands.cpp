#include <QFileInfo>
#include <QJsonArray>
#include <QJsonObject>

#include "app/cli/groups.h"
#include "app/cli/season_asked.h"
#include "core/exchange/described_json.h"
#include "core/exchange/or_null.h"
#include "core/places/copies/copy_words.h"
#include "core/places/pages/copies/time_pages.h"
#include "core/places/pages/page_text.h"
#include "core/storage/as_it_stood.h"
#include "core/words/words.h"

namespace combwright::cli {
namespace {

/// The day in words behind a command or an option; nothing where it is none.
std::optional<Day> dayTyped(const QString& text) { return parseDay(text.toStdString()); }

int noDay(Context& context, const QString& text) {
    return misused(context, QStringLiteral("%1 is no day; write year-month-day").arg(text));
}

int runAsItStood(Context& context) {
    const auto& words = context.arguments.positional;
    const auto number = context.arguments.value("step");
    if (number.has_value() == (words.size() == 3))
        return misused(context, QStringLiteral("give either a DAY or --step N"));
    bool isNumber = true;
    std::int64_t step = number ? number->toLongLong(&isNumber) : 0;
    if (!isNumber) return misused(context, QStringLiteral("--step needs a number"));
    const std::optional<Day> day = number ? std::nullopt : dayTyped(words[1]);
    if (!number && !day) return noDay(context, words[1]);
    const Season season = seasonToRead(context);
    if (day) step = newestStepOn(season.read(), *day);
    const Day stood = day ? *day : dayOfStep(season.read(), step).value_or(context.clock.today());
    const QString to = words.back();
    const auto made = makeAsItStood(season.read().database(), to.toStdString(), step, stood);
    if (!made) return refuse(context, made.error());
    if (context.json())
        printJson(context, QJsonObject{{QStringLiteral("made"), to},
                                       {QStringLiteral("day"), fromUtf8(isoText(stood))},
                                       {QStringLiteral("step"), static_cast<qint64>(step)}});
    else
        context.streams.out << "Made " << to << ": the season as it stood on "
                            << fromUtf8(isoText(stood)) << ", after step " << step
                            << ". It is for reading.\n";
    return Done;
}

QString kindOfDifference(ChangeKind kind) {
    return kind == ChangeKind::Added     ? QStringLiteral("added")
           : kind == ChangeKind::Changed ? QStringLiteral("changed")
                                         : QStringLiteral("gone");
}

QJsonArray differencesArray(const Differences& differences) {
    QJsonArray list;
    for (const RecordDiffers& record : differences.records) {
        QJsonArray values;
        for (const ValueDiffers& value : record.values)
            values.append(QJsonObject{{QStringLiteral("field"), fromUtf8(value.field->key())},
                                      {QStringLiteral("was"), toJson(*value.field, value.was)},
                                      {QStringLiteral("is"), toJson(*value.field, value.is)}});
        list.append(QJsonObject{{QStringLiteral("record"), fromUtf8(record.type->table)},
                                {QStringLiteral("id"), static_cast<qint64>(record.id)},
                                {QStringLiteral("kind"), kindOfDifference(record.kind)},
                                {QStringLiteral("name"), record.name},
                                {QStringLiteral("says"), orNull(record.about.toStdString())},
                                {QStringLiteral("values"), values}});
    }
    return list;
}

int printDifferences(Context& context, const Read& file, const Differences& differences,
                     const QString& first, const QString& second) {
    if (context.json())
        printJson(context, QJsonObject{{QStringLiteral("first"), first},
                                       {QStringLiteral("second"), second},
                                       {QStringLiteral("records"), differencesArray(differences)}});
    else
        context.streams.out << pageText(differencesPage(file, differences, first, second));
    return Done;
}

int differencesOfFiles(Context& context, const Season& season) {
    const QString otherPath = context.arguments.positional[1];
    const CopyAside aside = seasonAside(otherPath.toStdString());
    const Season other = Season::open(aside.path, context.clock, Database::Mode::ReadOnly);
    const auto differences = differencesOfCopies(season.read(), other.read());
    if (!differences)
        return refuse(context, Refusal{Code::NotOfThis, {}, {{"path", otherPath.toStdString()}}});
    const auto called = [](const Season& each, const QString& path) {
        return each.copyMark() ? copyTitle(*each.copyMark()) : QFileInfo(path).fileName();
    };
    return printDifferences(context, season.read(), *differences,
                            called(season, context.arguments.positional[0]),
                            called(other, otherPath));
}

int runDifferences(Context& context) {
    const auto fromText = context.arguments.value("from");
    const auto toText = context.arguments.value("to");
    if (context.arguments.positional.size() > 1) {
        if (fromText || toText)
            return misused(context, QStringLiteral("give either OTHER or --from and --to"));
        return differencesOfFiles(context, seasonToRead(context));
    }
    if (!fromText) return misused(context, QStringLiteral("give OTHER, or a day with --from"));
    const auto from = dayTyped(*fromText);
    if (!from) return noDay(context, *fromText);
    const auto to = toText ? dayTyped(*toText) : std::optional(context.clock.today());
    if (!to) return noDay(context, *toText);
    const Season season = seasonToRead(context);
    const auto differences = differencesBetweenDays(season.read(), *from, *to, context.clock);
    if (!differences) return refuse(context, differences.error());
    return printDifferences(context, season.read(), *differences, fromUtf8(isoText(*from)),
                            fromUtf8(isoText(*to)));
}

}  // namespace

std::vector<Command> timeCommands() {
    return {
        {"as-it-stood",
         "FILE [DAY] DEST",
         "the season as it was recorded up to the end of a day",
         2,
         3,
         {{"step", "N", "after that step of the journal, in place of a day"}},
         &runAsItStood},
        {"differences",
         "FILE [OTHER]",
         "what differs between two days, or from another copy",
         1,
         2,
         {{"from", "YYYY-MM-DD", "as it stood at the end of that day"},
          {"to", "YYYY-MM-DD", "as it stood at the end of that one; today"}},
         &runDifferences},
    };
}

}  // namespace combwright::cli
