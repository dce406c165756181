// What a kind of frame or box is called in a column's head: the trade's short word, where the full
// name of the catalogue would not fit.
#pragma once

#include <QString>
#include <cstdint>

#include "core/model/frames/box.h"
#include "core/model/frames/frame.h"

namespace combwright {

/// "medium frames": the name without its maker's family and without what stands in brackets.
QString frameKindText(const FrameKind& kind);
/// "1 medium frame", "2 medium frames".
QString framesText(std::int64_t many, const FrameKind& kind);

/// "web of moth".
QString faultText(const Fault& fault);

}  // namespace combwright
