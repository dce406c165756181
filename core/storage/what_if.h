// A marked copy to plan in: everything can be tried in it, and the season itself knows nothing of
// it until it is adopted.
#pragma once

#include <string>

#include "core/storage/copy_mark.h"
#include "core/support/result.h"

namespace combwright {

/// Makes a proven copy marked as a what-if. Refused with PathTaken where there is a file of that
/// name. Throws StorageError.
Result<void> beginWhatIf(const Database& season, const std::string& to, const std::string& name,
                         Day day);

/// Removes a what-if that is not open. Refused with NotFound where the file is none, so that no
/// season is ever removed by mistake. Throws StorageError.
Result<void> dropWhatIf(const std::string& path);

}  // namespace combwright
