// Kinds of boxes and frames the trade does not sell: home-made ones, measured with a rule. What
// nobody measured stays unknown.
#pragma once

#include "core/actions/action.h"
#include "core/model/frames/box.h"

namespace combwright {

/// Writes down a kind of frame by its measures. Said again under the same name, the measures given
/// take the place of those before; the others stay. Refused with Taken where the trade's catalogue
/// has the name, with OutOfRange for a measure of 0, with Contradiction for a bottom bar as long as
/// the top bar or a comb larger than the frame.
struct MeasureFrameKind {
    static constexpr std::string_view name = "measure-frame-kind";
    using Answer = Id<FrameKind>;
    Day on;
    Name called;
    std::optional<Length> topBarLength, topBarWidth, topBarThickness;
    std::optional<Length> height, bottomBarLength, spacing, combWidth, combHeight;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// The same for a kind of box. Refused as MeasureFrameKind, with Contradiction where it is not
/// smaller inside than outside, or deeper rebated than it is high.
struct MeasureBoxKind {
    static constexpr std::string_view name = "measure-box-kind";
    using Answer = Id<BoxKind>;
    Day on;
    Name called;
    std::optional<Count> framesNominal;
    std::optional<Length> outerLength, outerWidth, outerHeight, innerLength, innerWidth, restDepth;
    std::optional<BeeSpace> beeSpace;
    std::optional<Id<FrameKind>> takes;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

}  // namespace combwright
