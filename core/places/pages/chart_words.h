// A chart in words, rows and as a page: what is read out, what its table twin shows and what a file
// gets come from the same points as the drawing.
#pragma once

#include "core/places/pages/page.h"
#include "core/places/pages/season_book/harvest_blocks.h"

namespace combwright {

/// The whole chart in a few sentences: of each series its first, last and highest value; what it is
/// held against and what was treated. Of more than six series the others are counted.
QString spoken(const ChartBlock& chart);

/// So many series at most are drawn, named and spoken of.
constexpr std::size_t mostSeries = 6;

/// Whether there is nothing to draw.
bool isEmpty(const ChartBlock& chart);

/// Its rows: the marks in the order of the series, then what is no mark. Decimal points, ISO days.
HarvestTable chartTable(const ChartBlock& chart);

/// A mark by its series and its place in it.
struct ChartMark {
    std::size_t series = 0;
    std::size_t point = 0;
    bool operator==(const ChartMark&) const = default;
};
/// Which mark a row of chartTable is.
std::optional<ChartMark> markOfRow(const ChartBlock& chart, std::size_t row);
std::size_t rowOfMark(const ChartBlock& chart, ChartMark mark);

/// A table as a CSV file has it: RFC 4180, lines end with CR LF, no text is taken for a formula.
QString csvText(const HarvestTable& table);

/// The chart by itself on a page, with its notes.
Page chartPage(const Read& file, ChartBlock chart, Day printed);

}  // namespace combwright
