#include <QJsonArray>

#include "app/cli/groups.h"
#include "core/exchange/compute/computations.h"
#include "core/exchange/strict_json.h"
#include "core/storage/sqlite/storage_error.h"
#include "core/words/words.h"

namespace combwright::cli {
namespace {

int runCompute(Context& context) {
    // compute speaks JSON whatever was asked for; its refusals too.
    Arguments arguments = context.arguments;
    arguments.options[QStringLiteral("json")] = QString();
    Context asJson{arguments, context.streams, context.clock};

    const std::string name = context.arguments.positional.front().toStdString();
    const Computation* computation = findComputation(name);
    if (!computation)
        return refuse(asJson, Refusal{Code::NoSuchCommand, {}, {{"name", name}}}, WrongUsage);
    const QByteArray given = allOf(context.streams.in);
    const auto input = strictObject({given.constData(), static_cast<std::size_t>(given.size())});
    if (!input && input.error().code == Code::Duplicate) return refuse(asJson, input.error());
    if (!input)
        return misused(asJson, QStringLiteral("give exactly one JSON object on standard input, as "
                                              "text in UTF-8"));
    const auto output = computation->run(*input);
    if (!output) return refuse(asJson, output.error());
    printJson(asJson, *output);
    return Done;
}

int runCodes(Context& context) {
    QStringList codes;
    for (const Code code : allCodes()) codes << fromUtf8(key(code));
    // What the world does to a file, and wrong usage, stand in "refused" under a code too.
    for (const Trouble trouble : allTroubles()) codes << fromUtf8(key(trouble));
    codes << QStringLiteral("wrong_usage");
    if (context.json())
        printJson(context, QJsonArray::fromStringList(codes));
    else
        context.streams.out << codes.join(QLatin1Char('\n')) << '\n';
    return Done;
}

}  // namespace

std::vector<Command> computeCommands() {
    return {
        {"compute",
         "NAME",
         "one JSON object in on standard input, one out; no file",
         1,
         1,
         {},
         &runCompute},
        {"codes", "", "every reason for which something may be refused", 0, 0, {}, &runCodes},
    };
}

}  // namespace combwright::cli
