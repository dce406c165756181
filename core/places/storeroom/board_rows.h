// The rows of the frame-status board before anything is left out or grouped: every box with what
// happened to it since it was looked through, and the loose frames. Asked of the file all at once.
#pragma once

#include <vector>

#include "core/places/storeroom/frame_board.h"
#include "core/storage/queries/holds.h"

namespace combwright {

struct BoardRows {
    std::vector<BoardRow> rows;  ///< boxes by their name, then loose frames by shelf
    std::vector<FrameKind> kinds;
    std::vector<BoxKind> boxKinds;
    HeldThings held;
};

/// @param onHives boxes on hives too
BoardRows boardRows(const Read& file, Day on, bool onHives);

/// Where comb comes in a row, from 1 for drawn; 3 and under is comb, 6 unknown.
int boardCombRank(const std::optional<Comb>& comb);

/// Place of the first of the letters among faults(); -1 for none.
int letterRank(const std::string& letters);

/// Keeps the newer of two days.
void raise(std::optional<Day>& newest, const std::optional<Day>& day);

}  // namespace combwright
