#include "app/cli/season_asked.h"

#include "core/storage/queries/names.h"

namespace combwright::cli {
namespace {

template <class Record>
Result<std::optional<Id<Record>>> recordNamed(const Context& context, const Read& file,
                                              const char* option) {
    const auto name = context.arguments.value(option);
    if (!name) return std::optional<Id<Record>>();
    const auto found = findNamed(
        file, Record::table, NameQuery{.name = name->toStdString(), .on = context.clock.today()});
    if (!found) return found.error();
    return std::optional(Id<Record>{*found});
}

}  // namespace

Season seasonToRead(const Context& context) {
    return Season::open(context.arguments.positional.front().toStdString(), context.clock,
                        Database::Mode::ReadOnly);
}

Result<std::optional<Id<Yard>>> yardNamed(const Context& context, const Read& file) {
    return recordNamed<Yard>(context, file, "yard");
}

Result<std::optional<Id<Extraction>>> runNamed(const Context& context, const Read& file) {
    return recordNamed<Extraction>(context, file, "run");
}

}  // namespace combwright::cli
