// --why: how the figures a command answers with came about, behind its text or in its JSON.
#pragma once

#include <QJsonArray>
#include <vector>

#include "app/cli/command.h"
#include "core/places/explain/explained.h"

namespace combwright::cli {

/// [{"what":…,"answer":…,"steps":[{"what":…,"value":…,"unit":…,"how":…,"source":…}]}]; the "what"
/// of a step is a key, in English whatever the person's language.
QJsonArray whyArray(const std::vector<Explained>& figures);

/// The same as text.
void printWhy(Context& context, const std::vector<Explained>& figures);

}  // namespace combwright::cli
