// The season bound into one file: what a keeper keeps of a year on paper, one sheet behind the
// other under a list of them, numbered through. Labels and cards are made to be cut and stay out,
// and so does what is only for a day's work.
#pragma once

#include <vector>

#include "core/places/pages/page.h"
#include "ui/shell/place.h"

namespace combwright {

/// The list, with the sheets bound behind it. Of the sheets the places offer today; one that cannot
/// be read throws as it does by itself.
Page seasonBinder(const Session& session, const std::vector<Place*>& places);

}  // namespace combwright
