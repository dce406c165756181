// What somebody who helps may see of a program that misbehaves: versions and numbers from a list of
// what is allowed, never a word that was recorded, never a path, never a name.
#pragma once

#include <QJsonObject>
#include <optional>

#include "core/storage/file_facts.h"

namespace combwright {

/// Of the program alone, or with a season's numbers. Keys are added, never changed.
QJsonObject diagnostics(const std::optional<FileFacts>& season);

}  // namespace combwright
