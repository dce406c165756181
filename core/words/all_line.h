// What a line for all hives of a visit may say: anything but that they are dead, which is said of
// each hive by itself, for a death holds its combs back.
#pragma once

#include <string_view>

#include "core/support/result.h"

namespace combwright {

/// Whether a line for all, or of a whole yard ("all dead"), says that hives are dead. "Dead bees on
/// the floor" is a note.
bool saysAllDead(std::string_view all);

/// Refused with OtherAction, under "all", where it does.
Result<void> demandSaidOfAll(std::string_view all);

}  // namespace combwright
