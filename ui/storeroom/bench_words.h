// The bench in words: what the panel shows of a box, how a typed line reads back, what an evening
// came to. Figures and rules come from core; here they are only put beside each other.
#pragma once

#include "core/places/storeroom/bench.h"
#include "ui/storeroom/bench_panel.h"

namespace combwright {

/// The box as it lies there; `frame` is the one under the cursor, counted from 0.
BenchView benchView(const BenchBox& box, std::optional<std::size_t> frame);

/// "9 frames of 9: 7 keep, 1 web of moth: refit, 1 broken wood: repair; box scraped", or why the
/// line cannot be kept.
BenchPanel::Echo readReviewBack(const BenchBox& box, const QString& line);

/// "8 boxes, 71 of 72 frames found; scrapings 600 g; …" Empty where nothing was looked
/// through that day.
QString eveningText(const EveningSum& sum);
/// Where each part of it has gone, a line each.
QString eveningGone(const EveningSum& sum);

}  // namespace combwright
