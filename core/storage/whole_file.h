// A file beside the season, a table or a calendar: written whole, or what was there stays.
#pragma once

#include <string>
#include <string_view>

namespace combwright {

/// Puts the bytes under the path, in place of an older file. Throws StorageError: Full where there
/// is no room for them, NotWritable else, with nothing changed.
void writeWholeFile(const std::string& path, std::string_view bytes);

}  // namespace combwright
