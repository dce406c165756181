// A box laid out flat, as on the bench: its frames side by side. Frames one has pointed at stand in
// their places; those known only as a count lie sorted at the right under one thin rule.
#pragma once

#include <QPainter>
#include <QRectF>
#include <QString>
#include <vector>

#include "ui/drawing/frame.h"
#include "ui/look/tokens.h"

namespace combwright {

struct FrameRowView {
    QString mark;                    ///< of the box, for the spoken sentence
    std::vector<FrameView> pointed;  ///< with a place of their own, in order
    std::vector<FrameView> counted;  ///< known only as a count, sorted
    double frameWidth = 33.0;        ///< length of a top bar, px at the base font
};

/// Where each frame lies in the rectangle: those pointed at first, then those counted.
std::vector<QRectF> frameRowPlaces(const QRectF& box, const FrameRowView& row, const Look& look);

/// Height of a row with its rule, px.
double frameRowHeight(const FrameRowView& row, const Look& look);

/// Draws the row from the left of the rectangle, standing on its lower edge.
void paintFrameRow(QPainter& painter, const QRectF& box, const FrameRowView& row, const Look& look);

/// Between two frames, and more between those pointed at and those counted, px.
double frameGap(const Look& look);
double countedGap(const Look& look);
/// The rule over counted frames, from the upper left of the first to the right of the last.
void paintCountedRule(QPainter& painter, QPointF topLeft, double right, const Look& look);

/// "M11: 1 frame, drawn comb; W web of moth. … 6 counted: …"
QString spoken(const FrameRowView& row);

}  // namespace combwright
