// The yard sheet for the clipboard: hives in walking order with what was last seen, and room to
// write.
#pragma once

#include "core/places/pages/page.h"
#include "core/places/yard/yard_sheet.h"
#include "core/words/shorthand.h"

namespace combwright {

/// The page for a visit on `forDay`, drawn up from the sheet as it stands.
Page yardSheetPage(const Read& file, const YardSheet& sheet, Day forDay);

/// What one has to mind, in a few words each: "no eggs 9 Jun, 1 cell left".
QString mindText(const Mind& mind, Day today);
/// What was counted where no rate can be told from it: "mites 5, bees not counted", "mites in 6 of
/// 100 drone cells", "board: 20 mites in 5 days".
QString mitesCountedText(const Mind& mind);
/// "mites 4.00 %", else as counted.
QString mitesText(const Mind& mind);
/// "4", "4 to 300"; the how-known letter stands beside it or goes without saying.
QString countedText(const Known<Count>& count);
/// "3 open queen cells"; nothing to say of a count that is unclear.
QString cellsSeenText(const Known<Count>& cells, const std::optional<CellState>& state);
/// "feeder and syrup", "wash jar" …
QString takeAlongText(const TakeAlong& take);
/// "7", "~6", "5–7", "?" for tables; the how-known letter stands beside it.
QString framesText(const Known<Frames>& frames);

}  // namespace combwright
