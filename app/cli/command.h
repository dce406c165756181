// The command line: a command is a row of a table with its name, its options and a function;
// streams, day and arguments are handed in, so that tests run it in the same process. The words and
// keys are a promise to scripts: only ever added to.
#pragma once

#include <QByteArray>
#include <QJsonValue>
#include <QString>
#include <QStringList>
#include <QTextStream>
#include <map>
#include <optional>
#include <vector>

#include "core/support/clock.h"
#include "core/support/refusal.h"

namespace combwright::cli {

enum Exit { Done = 0, Refused = 1, WrongUsage = 2, FileTrouble = 3, TooNew = 4 };

struct Streams {
    QTextStream& in;
    QTextStream& out;
    QTextStream& err;
};

/// What was written behind the command's name, already checked against the command's own list.
struct Arguments {
    QStringList positional;
    std::map<QString, QString> options;  ///< without the dashes; empty text for flags

    bool has(const char* option) const { return options.contains(QLatin1String(option)); }
    std::optional<QString> value(const char* option) const;
};

struct Option {
    const char* name;
    const char* value;  ///< what stands behind it in the help; nullptr for a flag
    const char* help;
};

struct Context {
    const Arguments& arguments;
    Streams& streams;
    const Clock& clock;
    bool json() const { return arguments.has("json"); }
};

struct Command {
    const char* name;
    const char* usage;  ///< its arguments: "FILE [SCRIPT]"
    const char* help;
    int fewest;  ///< arguments
    int most;
    std::vector<Option> options;
    int (*run)(Context& context);
};

const std::vector<Command>& commands();

/// Runs the program; `arguments` without the program's own name. Returns the exit code.
int run(const QStringList& arguments, Streams streams, const Clock& clock);

/// A refusal from the rules: exit 1, or `code` where given. Adds "line" and "kept" when set.
int refuse(Context& context, const Refusal& refusal, int code = Refused,
           std::optional<std::size_t> line = std::nullopt,
           std::optional<std::size_t> kept = std::nullopt);
/// Wrong usage: one line, exit 2.
int misused(Context& context, const QString& text);
/// Everything on standard input, byte for byte: what is no UTF-8 must be seen, not mended.
QByteArray allOf(QTextStream& in);
/// Prints one JSON value and a line's end.
void printJson(Context& context, const QJsonValue& value);

}  // namespace combwright::cli
