// How looks that are due are said, and what a look left open: cells nobody answered for, no eggs, a
// colony found dead, a nest without room.
#pragma once

#include <QString>

#include "core/places/due/due_item.h"

namespace combwright {

/// Cells that were seen, and nobody said whether one was left: `about` is "open", "capped"
/// or "seen" where that was not said either.
bool checksCells(const DueItem& item);
/// A colony found dead whose end is not written down.
bool foundDead(const DueItem& item);
/// Looked for eggs, none, and no young queen is waited for.
bool withoutEggs(const DueItem& item);
/// Its queen is written down as gone, and no young one is waited for.
bool withoutQueen(const DueItem& item);

/// "check the cells: open on 10 May, sealed by 15 May".
QString checkCellsText(const DueItem& item);
QString checkCellsWhy(const DueItem& item);
QString withoutEggsWhy(const DueItem& item);
QString withoutQueenWhy(const DueItem& item);
QString foundDeadWhy(const DueItem& item);
QString openedWhy(const DueItem& item);
QString addBoxWhy(const DueItem& item);

}  // namespace combwright
