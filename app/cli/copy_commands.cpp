#include <QFile>
#include <QJsonArray>
#include <QJsonObject>

#include "app/cli/groups.h"
#include "app/cli/season_asked.h"
#include "core/actions/copies/adopt.h"
#include "core/actions/copies/merge_copy.h"
#include "core/exchange/or_null.h"
#include "core/exchange/strict_json.h"
#include "core/places/copies/merge_plan.h"
#include "core/places/pages/copies/copy_pages.h"
#include "core/places/pages/page_text.h"
#include "core/storage/what_if.h"
#include "core/words/words.h"

namespace combwright::cli {
namespace {

int runWhatIf(Context& context) {
    const Season season = seasonToRead(context);
    const QString to = context.arguments.positional[1];
    const std::string name =
        context.arguments.value("name").value_or(QString()).trimmed().toStdString();
    const auto made =
        beginWhatIf(season.read().database(), to.toStdString(), name, context.clock.today());
    if (!made) return refuse(context, made.error());
    if (context.json())
        printJson(context, QJsonObject{{QStringLiteral("made"), to},
                                       {QStringLiteral("name"), orNull(name)}});
    else
        context.streams.out << "Made " << to
                            << ", a what-if to plan in. The season stays as it is.\n";
    return Done;
}

QString conflictKind(AdoptConflict::Kind kind) {
    switch (kind) {
        case AdoptConflict::Kind::Refused:
            return QStringLiteral("refused");
        case AdoptConflict::Kind::OtherRecords:
            return QStringLiteral("other_records");
        case AdoptConflict::Kind::ChangedSince:
            break;
    }
    return QStringLiteral("changed_since");
}

int runAdopt(Context& context) {
    const bool tries = context.arguments.has("dry-run");
    Season season = seasonToWrite(context);
    const Season whatIf = Season::open(context.arguments.positional[1].toStdString(), context.clock,
                                       Database::Mode::ReadOnly);
    const auto adopted = adoptWhatIf(season, whatIf, tries ? AdoptHow::Try : AdoptHow::Keep);
    if (!adopted) return refuse(context, adopted.error());
    QJsonArray conflicts;
    for (const AdoptConflict& each : adopted->conflicts) {
        const QString says = conflictText(season.read(), each);
        conflicts.append(QJsonObject{{QStringLiteral("step"), static_cast<qint64>(each.step)},
                                     {QStringLiteral("action"), fromUtf8(each.action)},
                                     {QStringLiteral("kind"), conflictKind(each.kind)},
                                     {QStringLiteral("says"), says}});
        if (!context.json()) context.streams.out << says << '\n';
    }
    const bool fits = adopted->conflicts.empty();
    if (context.json()) {
        QJsonArray steps;
        for (const std::int64_t step : adopted->steps) steps.append(static_cast<qint64>(step));
        printJson(context, QJsonObject{{QStringLiteral("steps"), steps},
                                       {QStringLiteral("conflicts"), conflicts}});
    } else if (!fits) {
        context.streams.out << "Nothing was changed.\n";
    } else if (tries) {
        context.streams.out << "All of it can be done in the season. Nothing was changed.\n";
    } else {
        context.streams.out << adopted->steps.size() << " steps done in the season.\n";
    }
    return fits ? Done : Refused;
}

int runDrop(Context& context) {
    const QString path = context.arguments.positional.front();
    // A file that cannot be read is told as such, not as one that is no what-if.
    (void)seasonToRead(context);
    const auto dropped = dropWhatIf(path.toStdString());
    if (!dropped) return refuse(context, dropped.error());
    if (context.json())
        printJson(context, QJsonObject{{QStringLiteral("dropped"), path}});
    else
        context.streams.out << "Dropped " << path << ". The season was not touched.\n";
    return Done;
}

/// {"hive/3/note":"theirs","visit/14=12":"one"}
Result<MergeAnswers> answersIn(const QByteArray& text) {
    const auto object = strictObject({text.constData(), static_cast<std::size_t>(text.size())});
    if (!object) return object.error();
    MergeAnswers answers;
    for (const QString& key : object->keys()) {
        const std::string said = object->value(key).toString().toStdString();
        const auto choice = mergeChoiceNamed(said);
        if (!choice)
            return Refusal{Code::NotAChoice,
                           key.toStdString(),
                           {{"value", said}, {"choices", "ours, theirs, one, two"}}};
        answers[key.toStdString()] = *choice;
    }
    return answers;
}

QJsonObject planObject(const MergePlan& plan, std::optional<std::int64_t> step) {
    QJsonArray questions;
    for (const MergeQuestion& each : plan.questions) {
        QJsonArray choices;
        for (const MergeChoice choice : choicesFor(each.asked))
            choices.append(fromUtf8(key(choice)));
        questions.append(
            QJsonObject{{QStringLiteral("key"), fromUtf8(each.key)},
                        {QStringLiteral("asked"), fromUtf8(key(each.asked))},
                        {QStringLiteral("about"), each.about},
                        {QStringLiteral("ours"), each.ours},
                        {QStringLiteral("theirs"), each.theirs},
                        {QStringLiteral("was"), orNull(each.was.toStdString())},
                        {QStringLiteral("choices"), choices},
                        {QStringLiteral("chosen"),
                         each.chosen ? QJsonValue(fromUtf8(key(*each.chosen))) : QJsonValue()}});
    }
    return {{QStringLiteral("other"), fromUtf8(plan.from)},
            {QStringLiteral("added"), static_cast<qint64>(plan.count(ChangeKind::Added))},
            {QStringLiteral("changed"), static_cast<qint64>(plan.count(ChangeKind::Changed))},
            {QStringLiteral("removed"), static_cast<qint64>(plan.count(ChangeKind::Removed))},
            {QStringLiteral("same"), static_cast<qint64>(plan.same.size())},
            {QStringLiteral("notes"), QJsonArray::fromStringList(plan.notes)},
            {QStringLiteral("questions"), questions},
            {QStringLiteral("open"), static_cast<qint64>(plan.open())},
            {QStringLiteral("step"), orNull(step)}};
}

int runMerge(Context& context) {
    MergeAnswers answers;
    if (const auto path = context.arguments.value("answers")) {
        QFile file(*path);
        if (!file.open(QIODevice::ReadOnly))
            return misused(
                context,
                QStringLiteral("the answers %1 cannot be read: %2").arg(*path, file.errorString()));
        auto read = answersIn(file.readAll());
        if (!read) return refuse(context, read.error());
        answers = *std::move(read);
    }
    const bool tries = context.arguments.has("dry-run");
    Season season = tries ? seasonToRead(context) : seasonToWrite(context);
    const auto copies = CopiesToMerge::of(
        season.read(), context.arguments.positional[1].toStdString(), context.clock);
    if (!copies) return refuse(context, copies.error());
    const MergePlan plan = copies->plan(season.read(), answers);
    if (!tries && plan.open() == 0 && !plan.edits.empty()) {
        const auto step = takeIn(season, plan, context.clock.today());
        if (!step) return refuse(context, step.error());
        if (context.json())
            printJson(context, planObject(plan, *step));
        else
            context.streams.out << pageText(mergePage(season.read(), plan)) << "\nTaken in, step "
                                << *step << ".\n";
        return Done;
    }
    if (context.json())
        printJson(context, planObject(plan, std::nullopt));
    else
        context.streams.out << pageText(mergePage(season.read(), plan))
                            << "\nNothing was changed.\n";
    return plan.open() > 0 && !tries ? Refused : Done;
}

}  // namespace

std::vector<Command> copyCommands() {
    return {
        {"merge",
         "FILE OTHER",
         "takes in what another copy of the season has, as one step",
         2,
         2,
         {{"dry-run", nullptr, "only say what would come and what is to be chosen"},
          {"answers", "FILE.json", "what holds where both say something: {\"KEY\":\"ours\"}"}},
         &runMerge},
        {"what-if",
         "FILE DEST",
         "a marked copy to plan in; refuses an existing DEST",
         2,
         2,
         {{"name", "TEXT", "what it is called"}},
         &runWhatIf},
        {"adopt",
         "FILE WHAT-IF",
         "does in the season what was planned in its what-if",
         2,
         2,
         {{"dry-run", nullptr, "only say whether it can be done"}},
         &runAdopt},
        {"drop-what-if", "FILE", "removes a what-if; refuses any other file", 1, 1, {}, &runDrop},
    };
}

}  // namespace combwright::cli
