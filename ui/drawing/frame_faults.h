// What each fault looks like on the comb. Only where a frame is drawn large enough to show it; the
// letter on its flag, and the word in table and sentence, carry the meaning.
#pragma once

#include <QPainter>
#include <QPainterPath>
#include <QRectF>

#include "ui/drawing/frame.h"
#include "ui/look/tokens.h"

namespace combwright {

/// Draws one fault over one side. Broken wood, old dark comb and granulated honey are drawn with
/// the frame's own parts and leave no mark here.
void paintFaultMark(QPainter& painter, const QRectF& sheet, const QPainterPath& comb,
                    FrameFault fault, std::uint64_t seed, const Look& look);

/// A row of lettered flags on the top bar, from x up to `right`; where not all fit, the grave ones
/// come first and the last flag says how many more ("+3").
void paintFaultFlags(QPainter& painter, double x, double right, double topBar,
                     const std::vector<FrameFault>& faults, const Look& look);

/// The letters on the frame itself, where it is too narrow for flags.
void paintFaultLetters(QPainter& painter, const QRectF& frame,
                       const std::vector<FrameFault>& faults, const Look& look);

/// Height of the flags above the top bar, px.
double faultFlagHeight(const Look& look);

}  // namespace combwright
