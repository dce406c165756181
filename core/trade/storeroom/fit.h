// Which frame hangs in which box, and what the bees do with the room that is left. Bees keep a way
// of about 6 to 9.5 mm open, glue up what is narrower and build comb into what is wider; so a short
// frame in a deep box is worth a word before it becomes burr comb. Plain millimetres come in, so
// that inches stay exact (9 5/8 in = 244.475 mm); the catalogue itself prints to 0.1 mm.
//
// Not judged: the room under the lowest frames, over the floor, where bees leave 20 to 35 mm open
// (S22 S25 S55); and boxes with an excluder, a clearer board or a feeder between them, which add
// rims of their own.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "core/support/result.h"
#include "core/support/working.h"
#include "core/trade/frames/frame_honey.h"

namespace combwright {

/// What bees do with a gap.
enum class GapVerdict {
    Propolis,      ///< too narrow to walk: glued up
    Passage,       ///< left open
    WideButUsual,  ///< above the textbook, but ordinary trade boxes leave it
    BurrComb,      ///< built full of comb
    DoesNotFit,    ///< no gap at all: the frame cannot hang there
};
/// "propolis", "passage", "wide but usual", "burr comb", "does not fit".
std::string_view key(GapVerdict verdict);

/// Where one turns into the next, mm; a keeper's own take their place. Both ends belong to
/// the passage. Printed in six sources: S62 S63 S64 S42 S69 S39b; others print 4.5 to 10.
struct BeeSpaceLimits {
    double from = 6.0;      ///< below it propolis
    double to = 9.53;       ///< above it comb, by the book; 3/8 in
    double usualTo = 13.0;  ///< a deep box and frame leave 12.7 (S03); comb is told above this
};

/// What bees do with a gap of so many mm; a negative one does not fit.
GapVerdict judgeGap(double gapMm, const BeeSpaceLimits& limits = {});

/// Where a box keeps its bees' way: above its top bars or below its frames.
enum class BeeSpaceAt { Top, Bottom };

/// A box in mm; nothing where nobody measured. Lengths run along the frames, widths across.
struct BoxMeasures {
    std::string system;  ///< boxes of one system hang their frames alike ("Langstroth"); or empty
    std::optional<double> height;
    std::optional<double> innerLength;
    std::optional<double> innerWidth;
    std::optional<double> restDepth;  ///< from the top edge down to where the lugs sit
    std::optional<BeeSpaceAt> beeSpace;
};

/// A frame in mm; nothing where nobody measured.
struct FrameMeasures {
    std::optional<double> height;           ///< top of the top bar to underside of the bottom bar
    std::optional<double> topBarLength;     ///< with both lugs
    std::optional<double> bottomBarLength;  ///< also the frame's outside width
    std::optional<double> spacing;          ///< from comb to comb when the frames touch
};

/// Lugs are so thick, mm: 3/8 in, from memory. Needed only between boxes of different systems.
inline constexpr double lugThicknessMm = 9.525;

/// Why a frame cannot hang in a box.
enum class Misfit { TooTall, BottomBarTooLong, TopBarTooShort };
std::string_view key(Misfit misfit);

struct FrameFit {
    /// Between the bottom bars of the upper box and the top bars below, mm; nothing where the
    /// frame is too tall for it: what is missing is no gap.
    std::optional<double> gapMm;
    GapVerdict verdict = GapVerdict::DoesNotFit;
    std::optional<Misfit> misfit;  ///< the first that holds; with DoesNotFit only
    /// At each end, mm: nothing where a length is unknown (then no verdict either) or the frame is
    /// longer than the box (then the verdict says so).
    std::optional<double> endGapMm;
    std::optional<GapVerdict> endVerdict;
    /// At each wall with the frames pushed together in the middle; as the ends.
    std::optional<double> sideGapMm;
    std::optional<GapVerdict> sideVerdict;
};

/// How a frame hangs in a box that stands over another, or over one of its own kind where `below`
/// is absent. Heights: box − frame where both boxes hang their frames alike (same system, or the
/// same bee space with rests that are both known); else top space of the lower and bottom space of
/// the upper box, the top space being rest depth − lug. Ends: (inner length − bottom bar) / 2.
/// Walls: (inner width − frames · spacing) / 2, only with `framesInBox` (0 or more).
/// Refused, UnknownSize: no height of the frame ("frame") or of the box ("box"); two boxes of
/// different systems where the place or depth of a bee space is unknown ("box" or "over").
Result<FrameFit> fitFrame(const BoxMeasures& box, const FrameMeasures& frame,
                          const std::optional<BoxMeasures>& below = {},
                          std::optional<std::int64_t> framesInBox = {},
                          const BeeSpaceLimits& limits = {}, Working* working = nullptr);

/// Combs spread evenly over a box's width, one bee space at every face and at both walls.
struct EvenSpread {
    double pitchMm = 0;          ///< from the middle of a comb to the next: T + b
    double combThicknessMm = 0;  ///< T; zero or less where so many do not fit
    double totalCombMm = 0;      ///< n · T
};
/// `frames` 1 or more; widths in mm. Ten to nine frames gain one bee space of comb, ten to eight
/// two (S73). On drawn comb only: on foundation bees build across (S40 S12 S18).
EvenSpread spreadEvenly(double innerWidthMm, std::int64_t frames, double beeSpace = beeSpaceMm);

/// Width left over when the frames are pushed together, mm; below 0 they do not fit.
double spareWidthMm(double innerWidthMm, std::int64_t frames, double spacingMm);

/// What bees do between the faces of two neighbouring combs.
enum class FaceVerdict {
    TooTight,    ///< bees cannot work back to back
    BackToBack,  ///< about two bee spaces: brood comb as it should hang
    Fattened,    ///< honey comb is drawn out until one bee space is left; cells of brood are not
    CombBetween  ///< room for one comb more: they build it
};
std::string_view key(FaceVerdict verdict);

/// Gap between two faces and what comes of it, all mm. 9 to 13 mm between brood combs are printed
/// in three sources: S67 S71 S72; a brood comb is 22.2 mm thick (S70; 21 to 25 are printed).
struct FaceGap {
    double gapMm = 0;  ///< pitch − thickness
    FaceVerdict verdict = FaceVerdict::TooTight;
};
struct FaceLimits {
    double from = 9.0;
    double to = 13.0;
    double broodCombMm = 22.2;  ///< thickness of a comb with brood, both faces
};
FaceGap gapBetweenFaces(double pitchMm, double combThicknessMm, const FaceLimits& limits = {});

}  // namespace combwright
