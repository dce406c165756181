// Labels as they go to the printer, the page to find out where the printer puts them, and what a
// keeper is reminded of before they are stuck on.
#pragma once

#include "core/places/goods/label_sheet.h"
#include "core/places/pages/page.h"

namespace combwright {

/// The labels alone: the sheet is bought and holds nothing else.
Page labelsPage(const LabelSheet& sheet);
/// Every cell's edge with a scale, on plain paper, to hold against a sheet of labels.
Page labelCalibrationPage(const LabelSheet& empty);
/// What stands on the labels, what the table reminds of and what of it lacks.
Page labelWordsPage(const Read& file, const LabelSheet& sheet, Day on);

/// The same of the newest filling, on the grid whose offset was measured last, else on 3 by 7 of
/// A4; a page saying that there is none where no jar was filled.
Page newestLabelsPage(const Read& file, Day on);
Page newestLabelWordsPage(const Read& file, Day on);
Page usualCalibrationPage(const Read& file, Day on);

/// "Honey", "Heather honey".
QString labelHead(const JarLabel& label);
/// "454 g"; with ounces beside it where the region wants both: "16.0 oz (454 g)".
QString labelNet(const JarLabel& label);

}  // namespace combwright
