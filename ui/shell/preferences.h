// What belongs to the person and not to the season file: units and text size. Kept where the
// desktop keeps settings; a setting that cannot be read is as if it had never been made.
#pragma once

#include "core/words/units.h"

namespace combwright {

struct Preferences {
    Units units = Units::Metric;
    double textFactor = 1.0;  ///< 1.0 to 2.0
};

Preferences readPreferences();
void keepPreferences(const Preferences& preferences);

}  // namespace combwright
