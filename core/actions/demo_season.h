// The invented season: yards, hives and numbers are made up, and every page says so. It is played
// from the same scripts as demo/run plays, so what it shows can be made by hand. It tells of years
// of its own, so it has a day of its own on which it is best looked at.
#pragma once

#include <string>

#include "core/actions/play.h"

namespace combwright {

/// Makes a new file at that path and plays the whole season into it. Refused with PathTaken where
/// there is a file; throws StorageError.
Result<Season> makeDemoSeason(const std::string& path, const Clock& clock);

/// The last day the invented season tells of. As of that day it is whole, whatever day it is.
Day demoSeasonDay();

}  // namespace combwright
