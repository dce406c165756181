// Lines laid over a plot by Qt Charts. Axes, words and marks are ours, so that they stand the same
// in the window, in a picture and on every paper.
#pragma once

#include <QPainter>
#include <QPen>
#include <QPolygonF>
#include <QRectF>
#include <vector>

namespace combwright {

struct ChartLine {
    QPolygonF through;  ///< where the painter has them
    QPen pen;
};

/// Draws the lines, the first below the others, cut off at the plot.
void paintChartLines(QPainter& painter, const QRectF& plot, const std::vector<ChartLine>& lines);

/// The points of a line that are seen when it is drawn into columns of one pixel, in their order:
/// of each column the first, the lowest, the highest and the last. A line of ten thousand points
/// and one of a hundred thousand are then as dear to draw. The points go from left to right.
QPolygonF thinned(const QPolygonF& points);

}  // namespace combwright
