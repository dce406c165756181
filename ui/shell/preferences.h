// What belongs to the person and not to the season file: units, text size and language. Kept where
// the desktop keeps settings; a setting that cannot be read is as if it had never been made.
#pragma once

#include <optional>

#include "core/words/language.h"
#include "core/words/units.h"

namespace combwright {

struct Preferences {
    Units units = Units::Metric;
    double textFactor = 1.0;           ///< 1.0 to 2.0
    std::optional<Language> language;  ///< nothing: as the desktop speaks
};

Preferences readPreferences();
void keepPreferences(const Preferences& preferences);

}  // namespace combwright
