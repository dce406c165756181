// The frames of a box laid flat (core/places/storeroom/frames_flat.h) as they are drawn, for every
// place that lays one out.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/model/frames/box.h"
#include "core/places/storeroom/frames_flat.h"
#include "ui/drawing/frame_row.h"

namespace combwright {

/// Measures of a kind of frame; those nobody recorded, or of no kind at all, are a usual frame's.
FrameShape frameShapeOf(const std::optional<FrameKind>& kind);

/// One frame laid flat; its edge wobbles by the seed.
FrameView flatView(const FlatFrame& flat, const FrameShape& shape, std::uint64_t seed);

/// Those with a place first, then the counted ones; a frame looks the same every time it is drawn.
FrameRowView flatRow(const QString& mark, const std::vector<FlatFrame>& frames,
                     const FrameShape& shape);

}  // namespace combwright
