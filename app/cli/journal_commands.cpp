#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <map>

#include "app/cli/groups.h"
#include "app/cli/season_asked.h"
#include "core/actions/amend/amend.h"
#include "core/actions/play.h"
#include "core/exchange/described_json.h"
#include "core/exchange/or_null.h"
#include "core/places/copies/history_steps.h"
#include "core/places/pages/copies/time_pages.h"
#include "core/places/pages/page_text.h"
#include "core/places/questions/questions.h"
#include "core/storage/queries/names.h"
#include "core/storage/sqlite/storage_error.h"
#include "core/words/words.h"

namespace combwright::cli {
namespace {

QJsonObject madeObject(const Made& made) {
    QJsonObject object;
    for (const auto& [table, id] : made) {
        const QString name = fromUtf8(table);
        if (!object.contains(name)) {
            object.insert(name, static_cast<qint64>(id));
            continue;
        }
        QJsonArray list = object.value(name).isArray() ? object.value(name).toArray()
                                                       : QJsonArray{object.value(name)};
        list.append(static_cast<qint64>(id));
        object.insert(name, list);
    }
    return object;
}

/// Says each step once it is kept, so that whoever reads knows what a crash cannot take any more.
void sayEach(Season& season, QTextStream& out) {
    season.onChange([&out](const Change& change) {
        out << "Kept step " << change.step << ".\n";
        out.flush();
    });
}

/// What was asked back about a line; a line that changed nothing raises no question.
std::vector<Question> questionsOf(const std::map<std::int64_t, std::vector<Question>>& questions,
                                  const Played& played) {
    const auto found = questions.find(played.step);
    return played.step == 0 || found == questions.end() ? std::vector<Question>() : found->second;
}

/// Which lines were dated ahead of today; nothing where none was.
QString aheadText(const Context& context, const PlayResult& result) {
    constexpr qsizetype mostNamed = 5;
    QStringList lines;
    for (const Played& played : result.steps)
        if (played.ahead) lines << QString::number(played.line);
    if (lines.isEmpty()) return {};
    const QString more = lines.size() > mostNamed ? QStringLiteral(" …") : QString();
    return QStringLiteral(
               "Dated ahead of today, %1: %2 of them, line %3%4. Kept; where the day is a slip, "
               "undo and write it again.\n")
        .arg(fromUtf8(isoText(context.clock.today())))
        .arg(lines.size())
        .arg(lines.mid(0, mostNamed).join(QStringLiteral(", ")), more);
}

int runPlay(Context& context) {
    const bool each = context.arguments.has("each");
    if (each && context.json())
        return misused(context, QStringLiteral("--json answers once, at the end; take it or "
                                               "--each"));
    QByteArray script;
    if (context.arguments.positional.size() > 1) {
        QFile file(context.arguments.positional[1]);
        if (!file.open(QIODevice::ReadOnly))
            return misused(context, QStringLiteral("the script %1 cannot be read: %2")
                                        .arg(file.fileName(), file.errorString()));
        script = file.readAll();
    } else {
        script = allOf(context.streams.in);
    }
    Season season = seasonToWrite(context);
    if (each) sayEach(season, context.streams.out);
    std::map<std::int64_t, std::vector<Question>> questions;
    season.onChange([&](const Change& change) {
        auto asked = questionsAfter(season.read(), change, context.clock.today());
        if (!asked.empty()) questions[change.step] = std::move(asked);
    });
    const bool all = context.arguments.has("all-or-nothing");
    const PlayResult result =
        play(season, {script.constData(), static_cast<std::size_t>(script.size())},
             all ? AllOrNothing::Yes : AllOrNothing::No);
    if (result.stopped) {
        const Refusal& refusal = result.stopped->refusal;
        const bool noJson = refusal.code == Code::WrongType && refusal.field.empty();
        return refuse(context, refusal, noJson ? WrongUsage : Refused, result.stopped->line,
                      result.stopped->kept);
    }
    if (!context.json()) {
        context.streams.out << result.steps.size() << " done.\n" << aheadText(context, result);
        for (const Played& played : result.steps)
            for (const Question& question : questionsOf(questions, played))
                // A day that has not come was said for all lines together.
                if (question.asked != Asked::NotComeYet)
                    context.streams.out << "Line " << played.line << ", kept: " << question.says
                                        << '\n';
        return Done;
    }
    QJsonArray steps;
    for (const Played& played : result.steps) {
        QJsonObject step{{QStringLiteral("line"), static_cast<qint64>(played.line)},
                         {QStringLiteral("step"), static_cast<qint64>(played.step)},
                         {QStringLiteral("made"), madeObject(played.made)}};
        QJsonArray asked;
        for (const Question& question : questionsOf(questions, played))
            asked.append(QJsonObject{{QStringLiteral("code"), fromUtf8(key(question.asked))},
                                     {QStringLiteral("says"), question.says}});
        if (!asked.isEmpty()) step.insert(QStringLiteral("questions"), asked);
        if (played.ahead) step.insert(QStringLiteral("ahead"), true);
        steps.append(step);
    }
    printJson(context,
              QJsonObject{{QStringLiteral("done"), static_cast<qint64>(result.steps.size())},
                          {QStringLiteral("steps"), steps}});
    return Done;
}

QJsonObject fieldObject(const FieldInfo& field) {
    QJsonObject object{{QStringLiteral("key"), fromUtf8(field.key())},
                       {QStringLiteral("type"), fromUtf8(spelling(field.kind).word)},
                       {QStringLiteral("optional"), field.optional}};
    if (!field.refersTo.empty()) object.insert(QStringLiteral("names"), fromUtf8(field.refersTo));
    if (!field.choices.empty()) {
        QJsonArray choices;
        for (const std::string_view choice : field.choices) choices.append(fromUtf8(choice));
        object.insert(QStringLiteral("choices"), choices);
    }
    return object;
}

int runActions(Context& context) {
    QJsonArray list;
    for (const ActionType& type : actionTypes()) {
        QJsonArray fields;
        for (const FieldInfo& field : type.fields()) fields.append(fieldObject(field));
        // What any action may say besides is not listed; what this one cannot do without is.
        if (type.needsWhy)
            fields.append(QJsonObject{{QStringLiteral("key"), QStringLiteral("why")},
                                      {QStringLiteral("type"), QStringLiteral("text")},
                                      {QStringLiteral("optional"), false}});
        list.append(QJsonObject{{QStringLiteral("do"), fromUtf8(type.name)},
                                {QStringLiteral("fields"), fields}});
        if (context.json()) continue;
        context.streams.out << fromUtf8(type.name) << '\n';
        for (const FieldInfo& field : type.fields()) {
            context.streams.out << "  " << fromUtf8(field.key()).leftJustified(24) << ' '
                                << fromUtf8(spelling(field.kind).word);
            if (!field.refersTo.empty())
                context.streams.out << " of a " << fromUtf8(field.refersTo);
            for (std::size_t i = 0; i < field.choices.size(); ++i)
                context.streams.out << (i ? " | " : ": ") << fromUtf8(field.choices[i]);
            context.streams.out << (field.optional ? "" : ", needed") << '\n';
        }
        if (type.needsWhy)
            context.streams.out << "  " << QStringLiteral("why").leftJustified(24)
                                << " text, needed\n";
    }
    // No actions, but lines for play as any: what `history --script` writes is all listed here.
    for (const std::string_view turn : turnLines()) {
        list.append(QJsonObject{{QStringLiteral("do"), fromUtf8(turn)},
                                {QStringLiteral("fields"), QJsonArray()}});
        if (!context.json()) context.streams.out << fromUtf8(turn) << '\n';
    }
    if (context.json()) printJson(context, list);
    return Done;
}

QString kindWord(StepKind kind) {
    return kind == StepKind::Do     ? QStringLiteral("do")
           : kind == StepKind::Undo ? QStringLiteral("undo")
                                    : QStringLiteral("redo");
}

QString shownValue(const FieldInfo& field, const Value& value) {
    const QByteArray text =
        QJsonDocument(QJsonArray{toJson(field, value)}).toJson(QJsonDocument::Compact);
    return QString::fromUtf8(text.mid(1, text.size() - 2));
}

/// What an amendment changed, so that the old value stands where one looks for it.
std::vector<Revised> revisedBy(const Season& season, const JournalEntry& entry) {
    const bool amends = entry.kind == StepKind::Do && entry.info.action == Amend::name;
    return amends ? season.revisedBy(entry.seq) : std::vector<Revised>{};
}

int printHistoryInWords(Context& context, const Read& file) {
    const auto steps = historyInWords(file);
    if (!context.json()) {
        context.streams.out << pageText(historyPage(file, steps));
        return Done;
    }
    QJsonArray list;
    for (const HistoryStep& step : steps)
        list.append(
            QJsonObject{{QStringLiteral("step"), static_cast<qint64>(step.step)},
                        {QStringLiteral("day"), orNull(step.day)},
                        {QStringLiteral("time"), step.time},
                        {QStringLiteral("kind"), kindWord(step.kind)},
                        {QStringLiteral("taken_back"), step.takenBack},
                        {QStringLiteral("says"), step.sentence},
                        {QStringLiteral("why"), orNull(step.why.toStdString())},
                        {QStringLiteral("changes"), QJsonArray::fromStringList(step.changes)}});
    printJson(context, list);
    return Done;
}

int runHistory(Context& context) {
    if (context.arguments.has("script") && context.json())
        return misused(context,
                       QStringLiteral("--script writes lines for play; take it or --json"));
    if (context.arguments.has("script") && context.arguments.has("words"))
        return misused(context, QStringLiteral("take either --script or --words"));
    const Season season = seasonToRead(context);
    if (context.arguments.has("words")) return printHistoryInWords(context, season.read());
    if (context.arguments.has("script")) {
        context.streams.out << fromUtf8(scriptOf(season));
        return Done;
    }
    QJsonArray list;
    for (const JournalEntry& entry : season.history()) {
        if (!context.json()) {
            context.streams.out << entry.seq << "  " << fromUtf8(entry.at) << "  "
                                << kindWord(entry.kind) << "  " << fromUtf8(entry.info.action)
                                << (entry.of ? QStringLiteral(" (step %1)").arg(*entry.of)
                                             : QString())
                                << (entry.kind == StepKind::Do && !entry.stands ? "  taken back"
                                                                                : "")
                                << (entry.info.why.empty()
                                        ? QString()
                                        : QStringLiteral("  because: ") + fromUtf8(entry.info.why))
                                << '\n';
            for (const Revised& each : revisedBy(season, entry))
                context.streams.out << "      " << fromUtf8(each.table) << ' '
                                    << fromUtf8(nameOf(season.read(), each.table, each.id)) << "  "
                                    << fromUtf8(each.field->key()) << "  "
                                    << shownValue(*each.field, each.was) << " -> "
                                    << shownValue(*each.field, each.is) << '\n';
            continue;
        }
        QJsonObject object{{QStringLiteral("step"), static_cast<qint64>(entry.seq)},
                           {QStringLiteral("at"), fromUtf8(entry.at)},
                           {QStringLiteral("kind"), kindWord(entry.kind)},
                           {QStringLiteral("action"), fromUtf8(entry.info.action)},
                           {QStringLiteral("line"), orNull(entry.info.line)},
                           {QStringLiteral("why"), orNull(entry.info.why)},
                           {QStringLiteral("sheet"), orNull(entry.info.sheet)},
                           {QStringLiteral("stands"), entry.stands}};
        object.insert(QStringLiteral("of"),
                      entry.of ? QJsonValue(static_cast<qint64>(*entry.of)) : QJsonValue());
        if (const auto revised = revisedBy(season, entry); !revised.empty()) {
            QJsonArray changed;
            for (const Revised& each : revised)
                changed.append(QJsonObject{{QStringLiteral("record"), fromUtf8(each.table)},
                                           {QStringLiteral("id"), static_cast<qint64>(each.id)},
                                           {QStringLiteral("field"), fromUtf8(each.field->key())},
                                           {QStringLiteral("was"), toJson(*each.field, each.was)},
                                           {QStringLiteral("is"), toJson(*each.field, each.is)}});
            object.insert(QStringLiteral("changed"), changed);
        }
        list.append(object);
    }
    if (context.json()) printJson(context, list);
    return Done;
}

int printTurn(Context& context, const Result<StepDone>& done) {
    if (!done) return refuse(context, done.error());
    if (context.json())
        printJson(context, QJsonObject{{QStringLiteral("step"), static_cast<qint64>(done->step)},
                                       {QStringLiteral("rows"),
                                        static_cast<qint64>(done->change.rows.size())}});
    else
        context.streams.out << "Done, step " << done->step << ".\n";
    return Done;
}

int runUndo(Context& context) {
    std::optional<std::int64_t> expected;
    if (const auto text = context.arguments.value("step")) {
        bool isNumber = false;
        expected = text->toLongLong(&isNumber);
        if (!isNumber) return misused(context, QStringLiteral("--step needs a number"));
    }
    Season season = seasonToWrite(context);
    return printTurn(context, season.undo(expected));
}

int runRedo(Context& context) {
    Season season = seasonToWrite(context);
    return printTurn(context, season.redo());
}

}  // namespace

std::vector<Command> journalCommands() {
    return {
        {"play",
         "FILE [SCRIPT]",
         "performs recorded actions, one JSON object a line",
         1,
         2,
         {{"all-or-nothing", nullptr, "keep nothing when a line is refused"},
          {"each", nullptr, "say each step as soon as it is kept"}},
         &runPlay},
        {"actions", "", "every action with its fields", 0, 0, {}, &runActions},
        {"history",
         "FILE",
         "the journal, newest first",
         1,
         1,
         {{"script", nullptr, "as lines for play, oldest first"},
          {"words", nullptr, "as sentences, by day, with what each changed"}},
         &runHistory},
        {"undo",
         "FILE",
         "takes the newest step back",
         1,
         1,
         {{"step", "N", "refuse where the step undone would not be N"}},
         &runUndo},
        {"redo", "FILE", "does again the step taken back last", 1, 1, {}, &runRedo},
    };
}

}  // namespace combwright::cli
