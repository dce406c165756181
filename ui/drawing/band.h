// A band of honey or wax that flows from one height to another: as wide as it is heavy, filled with
// what it is made of, dashed where nobody knows or where it is missing.
#pragma once

#include <QPainter>

#include "ui/look/tokens.h"

namespace combwright {

enum class BandFill {
    Honey,
    Cappings,  ///< hatched
    WaxLight,
    WaxMid,
    WaxDark,
    Refuse,   ///< slumgum
    Unknown,  ///< weighed, but nobody knows whose: dashed, unfilled
    Missing,  ///< found by difference: a dashed open end in the warning colour
};

/// Where a band stands upright, px.
struct BandSpan {
    double top = 0.0, height = 0.0;
    double bottom() const { return top + height; }
    double middle() const { return top + height / 2.0; }
};

/// What a band of it is filled with; Unknown and Missing have no filling.
Paint bandPaint(BandFill fill);

/// From `one` at x1 to `two` at x2, with a slow bend; its two long edges drawn, its ends open.
void paintFlowingBand(QPainter& painter, BandFill fill, double x1, BandSpan one, double x2,
                      BandSpan two, const Look& look);

}  // namespace combwright
