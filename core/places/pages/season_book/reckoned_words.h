// The words of reckoned and got: what each line is called, its figures with their unit, what is
// compared, what is offered and by which rule. Shown in the season book and, after a run, in the
// honey room; printed and told by the command line.
#pragma once

#include <QString>

#include "core/places/pages/page.h"
#include "core/places/season_book/reckoned_got.h"

namespace combwright {

/// "honey a Langstroth medium frame", with the yard where the line is of one; and the figures of a
/// line with their unit.
QString gotName(const GotLine& line);
QString gotFigure(const GotLine& line, double value);
QString gotUnit(const GotLine& line);
/// "63 frames, 3 runs".
QString gotCount(const GotLine& line);
/// "1.88 kg ± 0.06": what is offered, with its doubt where that is known; empty where nothing is.
QString gotOffer(const GotLine& line);
/// The rule the new value comes by, with its numbers; empty where nothing is offered.
QString gotRule(const GotLine& line);
/// Why some lines are of one yard; empty where none is.
QString yardRule(const ReckonedAndGot& reckoned);
/// What is compared and what a new value would do: "Your 1.36 was 1.6 × 85 % full …".
QString gotSentence(const GotLine& line);

TableBlock reckonedBlock(const ReckonedAndGot& reckoned);

}  // namespace combwright
