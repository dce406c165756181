// The keys there are, gathered from the window as it stands: whoever adds a key adds it here too,
// without knowing. The help window shows them, and they print to be pinned up beside the screen.
#pragma once

#include <vector>

#include "core/places/pages/page.h"
#include "ui/common/help_groups.h"
#include "ui/shell/place.h"

namespace combwright {

/// First the keys of the whole window, then each place's: what it hints at now, and its own actions
/// and shortcuts. One thing with several keys is one line, a key stands once in its group and never
/// in a place's where the whole window has it; a place without keys has no group.
std::vector<HelpGroup> keysOf(const QWidget& window, const std::vector<Place*>& places);

/// The few that every place's page names: actions of the window that say at more length what they
/// are for.
HelpGroup keysEverywhere(const QWidget& window);

/// As a sheet, a table a group.
Page keysPage(const std::vector<HelpGroup>& groups);

}  // namespace combwright
