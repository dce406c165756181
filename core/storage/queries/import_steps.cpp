#include "core/storage/queries/import_steps.h"

#include "core/storage/journal.h"
#include "core/storage/sqlite/changes.h"

namespace combwright {

Result<void> takeBackStep(const Database& database, std::int64_t step) {
    const Bytes changes = Journal(database).changesOf(step);
    if (combwright::apply(database, inverted(database, changes)) == Applied::Conflict)
        return Refusal{Code::MovedOn, "import_step", {{"step", std::to_string(step)}}};
    return {};
}

}  // namespace combwright
