// What is said where something is held back: frames, boxes, honey, wax, and candles in a holder
// nobody burnt. One code, and each thing its own sentence, for what to do differs.
#pragma once

#include "core/support/refusal.h"

namespace combwright {

/// The sentence of a HeldBack refusal, to be translated in the context "refusals"; %1 is the field.
const char* heldBackText(const Refusal& refusal);

}  // namespace combwright
