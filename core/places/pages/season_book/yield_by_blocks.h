// Yields by hive, colony, queen and yard as a table: for the window, for paper and for a file.
#pragma once

#include <QStringList>

#include "core/places/pages/page.h"
#include "core/places/pages/season_book/harvest_blocks.h"
#include "core/places/season_book/yield_by.h"

namespace combwright {

/// What a line is of: "H1", "42 of 2025".
QString yieldOfName(const YieldOf& line);
/// Name and place as one short mark for a row: "N1 then C2", "42 of 2025 in H1".
QString yieldOfRow(const YieldOf& line);
/// Where it stood: "Hill, N1 then C2"; of a queen the hive she headed.
QString yieldOfPlace(const YieldOf& line);
/// How its figure is known.
QString yieldOfKnown(const YieldOf& line);

/// "14.0 per producing colony, 20.7 per colony on 1 May"; `brief` as averagesText has it.
QString yieldsByAverages(const YieldsBy& yields, bool brief = false);
/// The scale of the bars.
BarScale barScale(const YieldsBy& yields);
/// "Honey by colony 2027".
QString yieldsByTitle(const YieldsBy& yields);
/// What it is that the honey goes to, and where nobody knows.
QStringList yieldsByNotes(const YieldsBy& yields);
TableBlock yieldsByBlock(const YieldsBy& yields);
HarvestTable yieldsByTable(const YieldsBy& yields);

}  // namespace combwright
