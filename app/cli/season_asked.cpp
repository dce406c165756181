#include "app/cli/season_asked.h"

#include "core/places/copies/copy_words.h"
#include "core/storage/queries/names.h"
#include "core/words/paper_mark.h"

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

Season opened(const Context& context, Database::Mode mode) {
    Season season =
        Season::open(context.arguments.positional.front().toStdString(), context.clock, mode);
    if (const auto& mark = season.copyMark()) {
        setPaperMark(copyTitle(*mark));
        // A script is for playing: nothing else may stand in it.
        if (!context.json() && !context.arguments.has("script"))
            context.streams.out << copySentence(*mark) << '\n';
    }
    return season;
}

}  // namespace

Season seasonToRead(const Context& context) { return opened(context, Database::Mode::ReadOnly); }

Season seasonToWrite(const Context& context) { return opened(context, Database::Mode::ReadWrite); }

Result<std::optional<Id<Yard>>> yardNamed(const Context& context, const Read& file) {
    return recordNamed<Yard>(context, file, "yard");
}

Result<std::optional<Id<Extraction>>> runNamed(const Context& context, const Read& file) {
    return recordNamed<Extraction>(context, file, "run");
}

}  // namespace combwright::cli
