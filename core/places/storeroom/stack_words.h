// Stacks of boxes in words: where, how heavy, and what not to lift alone.
#pragma once

#include <QString>

#include "core/places/storeroom/stacks.h"

namespace combwright {

/// "north", "freezer"; "storeroom" where nobody said which stack.
QString stackText(const BoxStack& stack);
/// "41 kg", "41 kg and 2 boxes not known", "not known".
QString stackMassText(const BoxStack& stack);
/// What is too heavy for one person, as it stands or once full; empty where nothing is.
QString stackCaution(const BoxStack& stack);
/// Its heaviest box as it stands, "M07, 24 kg", and what its heaviest would weigh full.
QString heaviestNowText(const BoxStack& stack);
QString heaviestFullText(const BoxStack& stack);

}  // namespace combwright
