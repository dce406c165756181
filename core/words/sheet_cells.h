// The yard sheet's line taken apart into cells, one for each thing that may be seen: for those who
// would rather fill in fields than learn marks. Cells and line are two ways of typing the same; a
// blank cell says nothing and stays blank.
#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "core/model/yard/sheet_line.h"

namespace combwright {

enum class SheetCell {
    Opened,  ///< x not opened, lid, o opened; blank: by what was seen and done
    Eggs,
    OpenBrood,
    CappedBrood,
    Queen,
    Brood,
    Stores,
    Seams,
    QueenCells,
    CellsLeft,
    Boxes,   ///< +1, -1, +1d
    Wash,    ///< 4/300, sr4/300
    Board,   ///< 20/5
    Drones,  ///< 6/100
    Pests,   ///< shb2 wm cb0
    Weight,  ///< 20+21
    Fed,
    Temper,
    Heft,
    ComeBack,
    Note,
};

/// In the order they are gone through, the note last.
const std::vector<SheetCell>& sheetCells();

/// A short head for the cell: "eggs", "queen cells"; of what is fed with its unit.
QString cellHead(SheetCell cell);
/// What may be typed there: "7, ~6, 5-7 or ?".
QString cellExample(SheetCell cell);

/// What the line says there, as it would be typed; empty where it says nothing.
QString cellText(const SheetLine& line, SheetCell cell);

/// The line with the cell as typed, everything else as it was. Nothing where what was typed cannot
/// be meant there; a blank cell takes the value out again.
std::optional<SheetLine> withCell(const SheetLine& line, SheetCell cell, const QString& typed);

}  // namespace combwright
