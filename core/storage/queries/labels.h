// What stands on the labels, and where this printer's paper lies, on a day.
#pragma once

#include <optional>
#include <string_view>

#include "core/model/honey/telling.h"
#include "core/storage/rows.h"

namespace combwright {

/// The newest text set up to that day; nothing where none was set.
std::optional<LabelText> labelTextInForce(const Read& file, Day on);
/// The newest offset of a grid up to that day; nothing where none was measured.
std::optional<LabelOffset> labelOffsetInForce(const Read& file, std::string_view grid, Day on);

}  // namespace combwright
