#include "core/trade/storeroom/fit.h"

namespace combwright {
namespace {

// Measures in tenths of a millimetre or in inches leave crumbs far below this when subtracted.
constexpr double measureCrumbMm = 1e-9;

constexpr const char* fitSource = "S62 S63 S64 S42 S69 S39b";

bool hangAlike(const BoxMeasures& box, const BoxMeasures& below) {
    const bool sameSystem = !box.system.empty() && box.system == below.system;
    const bool restsKnown = box.restDepth && below.restDepth;
    if (!box.beeSpace || !below.beeSpace) return sameSystem;
    if (box.beeSpace != below.beeSpace) return false;
    if (box.beeSpace == BeeSpaceAt::Bottom) return true;  // top bars flush in both
    return restsKnown ? *box.restDepth == *below.restDepth : sameSystem;
}

/// Clear height above the top bars of a box, mm.
std::optional<double> topSpace(const BoxMeasures& box) {
    if (!box.beeSpace) return std::nullopt;
    if (*box.beeSpace == BeeSpaceAt::Bottom) return 0.0;
    if (!box.restDepth) return std::nullopt;
    return *box.restDepth - lugThicknessMm;
}

Result<double> stackGap(const BoxMeasures& box, const FrameMeasures& frame,
                        const std::optional<BoxMeasures>& below, Working* working) {
    if (!frame.height) return Refusal{Code::UnknownSize, "frame"};
    if (!box.height) return Refusal{Code::UnknownSize, "box"};
    note(working, "box_height_mm", *box.height, "mm");
    note(working, "frame_height_mm", *frame.height, "mm");
    if (!below || hangAlike(box, *below)) {
        const double gap = *box.height - *frame.height;
        note(working, "gap_mm", gap, "mm", "box height − frame height");
        return gap;
    }
    const auto above = topSpace(box);
    if (!above) return Refusal{Code::UnknownSize, "box"};
    const auto lower = topSpace(*below);
    if (!lower) return Refusal{Code::UnknownSize, "over"};
    const double bottom = *box.height - *above - *frame.height;
    note(working, "top_space_mm", *lower, "mm", "rest depth − lug; 0 where the bars lie flush",
         "lug 9.525 mm: from memory");
    note(working, "bottom_space_mm", bottom, "mm", "box height − top space − frame height");
    note(working, "gap_mm", *lower + bottom, "mm", "top space below + bottom space above");
    return *lower + bottom;
}

/// A gap with its verdict; what is missing is no gap.
void judgeInto(std::optional<double>& gapMm, std::optional<GapVerdict>& verdict, double gap,
               const BeeSpaceLimits& limits) {
    verdict = judgeGap(gap, limits);
    if (*verdict != GapVerdict::DoesNotFit) gapMm = gap;
}

}  // namespace

std::string_view key(GapVerdict verdict) {
    switch (verdict) {
        case GapVerdict::Propolis:
            return "propolis";
        case GapVerdict::Passage:
            return "passage";
        case GapVerdict::WideButUsual:
            return "wide but usual";
        case GapVerdict::BurrComb:
            return "burr comb";
        case GapVerdict::DoesNotFit:
            return "does not fit";
    }
    return {};
}

std::string_view key(Misfit misfit) {
    switch (misfit) {
        case Misfit::TooTall:
            return "too_tall";
        case Misfit::BottomBarTooLong:
            return "bottom_bar_too_long";
        case Misfit::TopBarTooShort:
            return "top_bar_too_short";
    }
    return {};
}

std::string_view key(FaceVerdict verdict) {
    switch (verdict) {
        case FaceVerdict::TooTight:
            return "too_tight";
        case FaceVerdict::BackToBack:
            return "back_to_back";
        case FaceVerdict::Fattened:
            return "fattened";
        case FaceVerdict::CombBetween:
            return "comb_between";
    }
    return {};
}

GapVerdict judgeGap(double gapMm, const BeeSpaceLimits& limits) {
    if (gapMm < -measureCrumbMm) return GapVerdict::DoesNotFit;
    if (gapMm < limits.from - measureCrumbMm) return GapVerdict::Propolis;
    if (gapMm <= limits.to + measureCrumbMm) return GapVerdict::Passage;
    if (gapMm <= limits.usualTo + measureCrumbMm) return GapVerdict::WideButUsual;
    return GapVerdict::BurrComb;
}

Result<FrameFit> fitFrame(const BoxMeasures& box, const FrameMeasures& frame,
                          const std::optional<BoxMeasures>& below,
                          std::optional<std::int64_t> framesInBox, const BeeSpaceLimits& limits,
                          Working* working) {
    const auto gap = stackGap(box, frame, below, working);
    if (!gap) return gap.error();
    FrameFit fit;
    fit.verdict = judgeGap(*gap, limits);
    if (fit.verdict == GapVerdict::DoesNotFit)
        fit.misfit = Misfit::TooTall;
    else
        fit.gapMm = *gap;

    if (box.innerLength && frame.bottomBarLength) {
        const double end = (*box.innerLength - *frame.bottomBarLength) / 2;
        judgeInto(fit.endGapMm, fit.endVerdict, end, limits);
        note(working, "end_gap_mm", end, "mm", "(inside length − bottom bar) ÷ 2", fitSource);
        if (fit.endVerdict == GapVerdict::DoesNotFit && !fit.misfit)
            fit.misfit = Misfit::BottomBarTooLong;
    }
    if (box.innerLength && frame.topBarLength && !fit.misfit &&
        *frame.topBarLength < *box.innerLength - measureCrumbMm)
        fit.misfit = Misfit::TopBarTooShort;
    if (fit.misfit) fit.verdict = GapVerdict::DoesNotFit;

    if (framesInBox && box.innerWidth && frame.spacing) {
        const double side = spareWidthMm(*box.innerWidth, *framesInBox, *frame.spacing) / 2;
        judgeInto(fit.sideGapMm, fit.sideVerdict, side, limits);
        note(working, "side_gap_mm", side, "mm", "(inside width − frames · spacing) ÷ 2",
             fitSource);
    }
    return fit;
}

EvenSpread spreadEvenly(double innerWidthMm, std::int64_t frames, double beeSpace) {
    EvenSpread spread;
    spread.combThicknessMm = combThicknessMm(innerWidthMm, frames, beeSpace);
    spread.pitchMm = spread.combThicknessMm + beeSpace;
    spread.totalCombMm = static_cast<double>(frames) * spread.combThicknessMm;
    return spread;
}

double spareWidthMm(double innerWidthMm, std::int64_t frames, double spacingMm) {
    return innerWidthMm - static_cast<double>(frames) * spacingMm;
}

FaceGap gapBetweenFaces(double pitchMm, double combThicknessMm, const FaceLimits& limits) {
    FaceGap face;
    face.gapMm = pitchMm - combThicknessMm;
    // One comb more, and a way on either side of it.
    const double roomForComb = limits.broodCombMm + 2 * beeSpaceMm;
    if (face.gapMm < limits.from - measureCrumbMm)
        face.verdict = FaceVerdict::TooTight;
    else if (face.gapMm <= limits.to + measureCrumbMm)
        face.verdict = FaceVerdict::BackToBack;
    else if (face.gapMm < roomForComb - measureCrumbMm)
        face.verdict = FaceVerdict::Fattened;
    else
        face.verdict = FaceVerdict::CombBetween;
    return face;
}

}  // namespace combwright
