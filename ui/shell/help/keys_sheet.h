// The keys there are, gathered from the window as it stands: whoever adds a key adds it here too,
// without knowing. The help window shows them, and they print to be pinned up beside the screen.
#pragma once

#include <vector>

#include "core/places/pages/page.h"
#include "ui/common/help_groups.h"
#include "ui/shell/place.h"

namespace combwright {

/// First the keys of the whole window, then each place's: its own actions with a key, and what it
/// hints at now. An action with several keys is one line; a place without keys has no group.
std::vector<HelpGroup> keysOf(const QWidget& window, const std::vector<Place*>& places);

/// As a sheet, a table a group.
Page keysPage(const std::vector<HelpGroup>& groups);

}  // namespace combwright
