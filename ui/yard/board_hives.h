// From the yard sheet's answer to stacks ready to be drawn.
#pragma once

#include "ui/yard/yard_board.h"

namespace combwright {

std::vector<HiveOnBoard> hivesOnBoard(const Read& file, const YardSheet& sheet);

}  // namespace combwright
