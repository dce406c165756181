// The frame board on paper, pinned to the storeroom's wall: shelf by shelf the boxes with their
// frames as letters, in greys, and the counts at its head.
#pragma once

#include "core/places/pages/page.h"
#include "core/places/storeroom/frame_board.h"

namespace combwright {

Page frameBoardPage(const Read& file, const FrameBoard& board);

/// A row's frames as they hang: "W V · · · · · · ?": a letter for what was seen, a dot for none, a
/// figure for a verdict without a letter, "f" foundation, "b" bare, "?" not found.
QString frameLetters(const BoardRow& row);

}  // namespace combwright
