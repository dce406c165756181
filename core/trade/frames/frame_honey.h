// How much honey hangs in a frame that nobody weighed: the size of its comb, how full a person
// judged each side, and how fat the bees built it. Plans of buckets, loads and pulls rest on it, so
// every figure carries its spread, and sums know which errors even out and which do not.
//
// Spread is one standard deviation and has three parts:
//  - the crop: how well filled and how heavy combs are differs from crop to crop, and a whole crop
//    errs the same way. Three crops printed in S93 (1707, 1641 and 1157 g a comb at 39.1, 37.9 and
//    35.7 mm) differ by 16 % per mm of comb; taken as 15 %. Shared by all frames of a sum: it adds
//    up plainly and never evens out;
//  - the comb: one comb against its neighbours, 10 %. Planning assumption, no source;
//  - the eye: a side judged to the nearest quarter errs by 0.25/√12 = 0.07 of a full side where it
//    is half full, and by nothing where it is empty or full: 2 · 0.07 · √(f · (1 − f)). Planning
//    assumption, no source.
// The last two are each frame's own and add in quadrature. One full frame so comes to ± 18 %, a
// box of ten to ± 15 %: keepers plan with ± 15 to 25 %.
#pragma once

#include <cstdint>
#include <optional>
#include <span>

#include "core/support/result.h"
#include "core/support/working.h"

namespace combwright {

/// The published figures an estimate starts from; a keeper's own take their place.
struct HoneyRates {
    /// Both sides full and capped, per dm² of one side, at ordinary spacing (35 to 38 mm from comb
    /// to comb). Printed in three sources, 314 to 337: S14 S83 S20.
    double fullFrameGPerDm2 = 333.0;
    double cropSpreadShare = 0.15;  ///< of the honey; S93, see above
    double combSpreadShare = 0.10;  ///< of the honey; planning assumption, no source
    double fillByEye = 0.07;  ///< of a full side, at half full; planning assumption, no source
};

/// Air the bees leave between two combs and at each wall: 3/8 in. Printed in six sources (S62 S63
/// S64 S42 S69 S39b), which leave 6 to 9.5 mm.
inline constexpr double beeSpaceMm = 9.525;
/// kg/L; printed in S80 and S93 (1.40 to 1.44).
inline constexpr double combHoneyDensity = 1.42;
/// What honey takes of a comb's thickness, the rest being wax; computed: 25 mm then hold 333 g/dm².
inline constexpr double combFillFactor = 0.94;

/// Frames hung wider than their box was made for, on drawn comb.
struct BoxSpacing {
    double innerWidthMm;   ///< across the frames
    std::int64_t frames;   ///< that hang in it, evenly spaced
    std::int64_t nominal;  ///< it was made for
};

/// What is known of one frame.
struct FrameFill {
    double fullFrameG;   ///< both sides full and capped, as many frames as the box is made for
    double leftFilled;   ///< share of one side, 0 to 1
    double rightFilled;  ///< share of the other
    std::optional<BoxSpacing> spacing = {};  ///< absent: as many frames as the box is made for
};

/// Honey that was judged, not weighed.
struct HoneyEstimate {
    double grams = 0.0;
    double sharedG = 0.0;  ///< standard deviation of what the whole crop has in common
    double ownG = 0.0;     ///< standard deviation of each frame by itself

    /// One standard deviation of the whole, grams.
    double spreadG() const;
};

/// Honey of a frame with that much comb on one side (dm²), both sides full and capped. The other
/// form is for a comb whose thickness was measured (mm, wax to wax): area · thickness · density ·
/// fill factor; 25 mm give 333 g/dm², 36 mm give 481.
double fullFrameGrams(double combAreaDm2, const HoneyRates& rates = {});
double fullFrameGramsAtThickness(double combAreaDm2, double thicknessMm);

/// How thick each comb gets where `frames` share a box evenly, mm, one bee space b at every face:
/// T = (W − (n + 1) · b) / n. Zero or less where they do not fit.
double combThicknessMm(double innerWidthMm, std::int64_t frames, double beeSpace = beeSpaceMm);

/// Honey in one frame. Fewer frames than nominal are fatter: the ordinary figure is scaled by the
/// ratio of the comb's thickness, so a full box gains just the bee spaces saved (nine of ten in a
/// Langstroth box: + 3.5 %, a frame + 15 %), and with as many frames as nominal nothing changes.
/// Refused: a share outside 0 to 1 ("left_filled", "right_filled"); more frames than nominal
/// ("frames_in_box"); half of them or fewer, because one more comb then fits between every two and
/// the bees build that instead of a fatter one ("frames_in_box"); a box too narrow to hold its own
/// frames ("box_nominal").
Result<HoneyEstimate> frameHoney(const FrameFill& fill, const HoneyRates& rates = {},
                                 Working* working = nullptr);

/// Frames of a box, boxes of a hive, hives of a crop: their own errors add in quadrature, the
/// crop's adds plainly. Summing by boxes or all at once gives the same.
HoneyEstimate together(std::span<const HoneyEstimate> parts);
/// So many frames judged alike (a box entered as counts).
HoneyEstimate alike(const HoneyEstimate& one, std::int64_t frames);

}  // namespace combwright
