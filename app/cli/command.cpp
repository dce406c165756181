#include "app/cli/command.h"

#include <QIODevice>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

#include "app/cli/groups.h"
#include "core/exchange/or_null.h"
#include "core/storage/migrations.h"
#include "core/storage/sqlite/storage_error.h"
#include "core/support/version.h"
#include "core/words/units.h"
#include "core/words/words.h"

namespace combwright::cli {
namespace {

/// Today as the person said with --day, else as the given clock says.
class DayClock : public Clock {
  public:
    DayClock(const Clock& real, std::optional<Day> day) : m_real(real), m_day(day) {}
    Day today() const override { return m_day.value_or(m_real.today()); }
    Instant now() const override { return m_real.now(); }
    std::int64_t steadyMs() const override { return m_real.steadyMs(); }

  private:
    const Clock& m_real;
    std::optional<Day> m_day;
};

const std::vector<Option>& commonOptions() {
    static const std::vector<Option> options{
        {"json", nullptr, "print exactly one JSON value"},
        {"day", "YYYY-MM-DD", "what day it is today"},
        {"units", "metric|us", "units in text; JSON has the unit in its keys"},
        {"help", nullptr, "say what the command does"},
    };
    return options;
}

const Option* findOption(const Command& command, const QString& name) {
    for (const auto* list : {&command.options, &commonOptions()})
        for (const Option& option : *list)
            if (name == QLatin1String(option.name)) return &option;
    return nullptr;
}

/// Sorts the words behind a command; the text is what is wrong with them.
std::optional<QString> sortArguments(const Command& command, const QStringList& given,
                                     Arguments& arguments) {
    bool onlyPositional = false;
    for (int i = 0; i < given.size(); ++i) {
        const QString& word = given[i];
        if (onlyPositional || !word.startsWith(QLatin1String("--"))) {
            arguments.positional << word;
            continue;
        }
        if (word == QLatin1String("--")) {
            onlyPositional = true;
            continue;
        }
        const QString name = word.mid(2).section(QLatin1Char('='), 0, 0);
        const Option* option = findOption(command, name);
        if (!option)
            return QStringLiteral("%1 has no option --%2").arg(QLatin1String(command.name), name);
        QString value;
        if (option->value) {
            if (word.contains(QLatin1Char('=')))
                value = word.section(QLatin1Char('='), 1);
            else if (++i < given.size())
                value = given[i];
            else
                return QStringLiteral("--%1 needs %2 behind it")
                    .arg(name, QLatin1String(option->value));
        } else if (word.contains(QLatin1Char('='))) {
            return QStringLiteral("--%1 takes no value").arg(name);
        }
        arguments.options[name] = value;
    }
    return std::nullopt;
}

void printHelp(QTextStream& out) {
    out << "combwright-cli: a season file from the command line.\n\n"
           "  combwright-cli COMMAND [FILE] [options]\n\n";
    for (const Command& command : commands()) {
        const QString head =
            QLatin1String(command.name) + QLatin1Char(' ') + QLatin1String(command.usage);
        out << "  " << head.leftJustified(26) << ' ' << command.help << '\n';
    }
    out << "\n  --json prints one JSON value, --day YYYY-MM-DD says what day it is,\n"
           "  --units metric|us which units text is in,\n"
           "  COMMAND --help tells more. Exit: 0 done, 1 refused by a rule, 2 wrong usage,\n"
           "  3 the file cannot be read or written, 4 made by a newer program.\n";
}

void printCommandHelp(const Command& command, QTextStream& out) {
    out << "combwright-cli " << command.name << ' ' << command.usage << "\n\n  " << command.help
        << "\n\n";
    for (const auto* list : {&command.options, &commonOptions()})
        for (const Option& option : *list) {
            const QString head = QStringLiteral("--%1 %2").arg(
                QLatin1String(option.name), QLatin1String(option.value ? option.value : ""));
            out << "  " << head.leftJustified(26) << ' ' << option.help << '\n';
        }
}

QJsonObject refusedObject(const std::string_view code, const std::string& field,
                          const QString& says) {
    return {{QStringLiteral("code"), fromUtf8(code)},
            {QStringLiteral("field"), orNull(field)},
            {QStringLiteral("says"), says}};
}

void printRefused(Context& context, QJsonObject refused, const QString& text) {
    if (!context.json()) {
        // One line, whatever a file's name holds.
        context.streams.err << QString(text).replace(QLatin1Char('\n'), QLatin1Char(' ')) << '\n';
        return;
    }
    QJsonObject object{{QStringLiteral("refused"), refused}};
    for (const char* key : {"line", "kept"})
        if (refused.contains(QLatin1String(key)))
            object.insert(QLatin1String(key), refused.value(QLatin1String(key)));
    context.streams.err << QJsonDocument(object).toJson(QJsonDocument::Compact) << '\n';
}

int failed(Context& context, const StorageError& error) {
    const QString says = sentence(error);
    QJsonObject refused = refusedObject(key(error.trouble), {}, says);
    // The driver's own words are for a report, not for a person.
    refused.insert(QStringLiteral("detail"), fromUtf8(error.detail));
    printRefused(context, refused, says);
    return error.trouble == Trouble::Newer ? TooNew : FileTrouble;
}

int runCommand(const Command& command, const QStringList& given, Streams& streams,
               const Clock& clock) {
    Arguments arguments;
    const auto wrong = sortArguments(command, given, arguments);
    // Whoever asked for JSON gets it for what is wrong with the rest, too; compute knows nothing
    // else.
    if (given.contains(QStringLiteral("--json")) || command.name == std::string_view("compute"))
        arguments.options.try_emplace(QStringLiteral("json"));
    Context early{arguments, streams, clock};
    if (wrong) return misused(early, *wrong);
    if (arguments.has("help")) {
        printCommandHelp(command, streams.out);
        return Done;
    }
    const auto count = arguments.positional.size();
    if (count < command.fewest || count > command.most)
        return misused(early, QStringLiteral("it is: combwright-cli %1 %2")
                                  .arg(QLatin1String(command.name), QLatin1String(command.usage)));
    std::optional<Day> day;
    if (const auto text = arguments.value("day")) {
        day = parseDay(text->toStdString());
        if (!day)
            return misused(early,
                           QStringLiteral("--day %1 is no day; write year-month-day").arg(*text));
    }
    auto units = Units::Metric;
    if (const auto text = arguments.value("units")) {
        const auto named = unitsNamed(*text);
        if (!named)
            return misused(early,
                           QStringLiteral("--units %1 is not known; metric or us").arg(*text));
        units = *named;
    }
    const UnitsWhile shown(units);
    const DayClock dayClock(clock, day);
    Context context{arguments, streams, dayClock};
    try {
        return command.run(context);
    } catch (const StorageError& error) {
        return failed(context, error);
    }
}

}  // namespace

std::optional<QString> Arguments::value(const char* option) const {
    const auto found = options.find(QLatin1String(option));
    if (found == options.end()) return std::nullopt;
    return found->second;
}

const std::vector<Command>& commands() {
    static const std::vector<Command> all = [] {
        std::vector<Command> list;
        for (const auto& group :
             {seasonCommands(), journalCommands(),   pullCommands(),      loadCommands(),
              yieldCommands(),  yearCommands(),      storeroomCommands(), healthCommands(),
              colonyCommands(), freezerCommands(),   waitingCommands(),   storesCommands(),
              dueCommands(),    treatmentCommands(), constantCommands(),  honeyCommands(),
              traceCommands(),  labelCommands(),     goodsCommands(),     waxCommands(),
              computeCommands()})
            list.insert(list.end(), group.begin(), group.end());
        return list;
    }();
    return all;
}

int run(const QStringList& arguments, Streams streams, const Clock& clock) {
    const QString first = arguments.value(0);
    if (first == QLatin1String("--help") || first == QLatin1String("help")) {
        printHelp(streams.out);
        return Done;
    }
    if (first == QLatin1String("--version") && arguments.contains(QStringLiteral("--json"))) {
        const QJsonObject version{
            {QStringLiteral("program"), fromUtf8(programVersion)},
            {QStringLiteral("file_schema"), static_cast<qint64>(migrations().back().step)},
            {QStringLiteral("contract"), commandContract}};
        streams.out << QJsonDocument(version).toJson(QJsonDocument::Compact) << '\n';
        return Done;
    }
    if (first == QLatin1String("--version")) {
        streams.out << "combwright-cli " << fromUtf8(programVersion) << ", file schema "
                    << migrations().back().step << ", contract " << commandContract << '\n';
        return Done;
    }
    for (const Command& command : commands())
        if (first == QLatin1String(command.name))
            return runCommand(command, arguments.mid(1), streams, clock);
    if (first.isEmpty()) {
        printHelp(streams.err);
        return WrongUsage;
    }
    Arguments asked;
    const QStringList words = arguments.mid(0, arguments.indexOf(QStringLiteral("--")));
    if (words.contains(QStringLiteral("--json"))) asked.options[QStringLiteral("json")] = {};
    Context context{asked, streams, clock};
    return misused(
        context,
        QStringLiteral("there is no command %1. combwright-cli --help lists them").arg(first));
}

int refuse(Context& context, const Refusal& refusal, int code, std::optional<std::size_t> line,
           std::optional<std::size_t> kept) {
    const QString says = sentence(refusal);
    QJsonObject refused = refusedObject(key(refusal.code), refusal.field, says);
    QString text = says;
    if (line) {
        refused.insert(QStringLiteral("line"), static_cast<qint64>(*line));
        refused.insert(QStringLiteral("kept"), static_cast<qint64>(kept.value_or(0)));
        text = QStringLiteral("Line %1: %2 Kept before it: %3.")
                   .arg(*line)
                   .arg(says)
                   .arg(kept.value_or(0));
    } else {
        text += QLatin1String(" Nothing was changed.");
    }
    printRefused(context, refused, text);
    return code;
}

int misused(Context& context, const QString& text) {
    const QString says = text.left(1).toUpper() + text.mid(1) + QLatin1Char('.');
    printRefused(context, refusedObject("wrong_usage", {}, says), says);
    return WrongUsage;
}

QByteArray allOf(QTextStream& in) {
    return in.device() ? in.device()->readAll() : in.readAll().toUtf8();
}

void printJson(Context& context, const QJsonValue& value) {
    const QJsonDocument document =
        value.isArray() ? QJsonDocument(value.toArray()) : QJsonDocument(value.toObject());
    context.streams.out << document.toJson(QJsonDocument::Compact) << '\n';
}

}  // namespace combwright::cli
