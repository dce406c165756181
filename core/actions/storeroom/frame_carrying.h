// The step every action that carries frames from box to box is made of: the move is written down,
// because a frame takes along what its box was held for, and a contact trace asks for it.
#pragma once

#include "core/actions/action.h"
#include "core/model/frames/frame.h"

namespace combwright {

/// Puts a frame into another box, or loose on a shelf where none is given, and writes the move
/// down. It has no place of its own there yet.
void moveFrameTo(Write& file, const Frame& frame, std::optional<Id<Box>> box,
                 const std::string& stack, Day on);

/// Whether something is known of this very frame, so that it is not to be taken for one of many
/// alike: a place, a mark, a hold of its own.
bool isKnownApart(const Read& file, const Frame& frame);

}  // namespace combwright
