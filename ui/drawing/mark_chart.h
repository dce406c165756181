// Series of points over the days of a year: weighings, samples, frames, honey by yard or hive. Told
// apart by the shape of their marks and the pattern of their line as well as by colour, each named
// beside its line; six at most at once, and the one somebody is at always among them.
#pragma once

#include <QPainter>
#include <QRectF>
#include <QString>
#include <optional>
#include <vector>

#include "core/units/day.h"
#include "ui/drawing/steps_chart.h"
#include "ui/drawing/year_axis.h"
#include "ui/look/tokens.h"

namespace combwright {

struct MarksView {
    enum class Join { Lines, Steps, Stems };
    struct Point {
        Day on;
        double value = 0.0;
        std::optional<double> low = std::nullopt;  ///< how far it may be off, for the marked one
        std::optional<double> high = std::nullopt;
    };
    struct Series {
        QString end;  ///< beside its line
        std::vector<Point> points;
        std::optional<std::size_t> besideOf = std::nullopt;  ///< another year's: dashed, muted
    };
    struct LimitStep {
        Day on;
        double value = 0.0;
    };
    struct Limit {
        QString label;
        std::vector<LimitStep> steps;
    };
    struct Span {
        Day from;
        Day to;
        bool open = false;
    };
    struct At {
        std::size_t series = 0;
        std::size_t point = 0;
        bool operator==(const At&) const = default;
    };

    QString axis;
    int year = 0;
    Join join = Join::Lines;
    double top = 1.0;
    std::vector<AxisMark> marks;
    std::vector<Series> series;
    std::vector<Limit> limits;
    std::vector<Span> spans;
    bool namesAtHighest = false;  ///< names speak of a series' highest point, else of its last
    std::optional<At> current = std::nullopt;
    QString said = {};  ///< the marked point as a sentence, at the head
};

/// How a series looks: the first of those drawn has slot 0.
enum class MarkShape { Square, Ring, Triangle, Diamond, Dot, Cross };
struct SeriesStyle {
    QColor color;
    std::vector<qreal> dashes;  ///< empty: solid
    MarkShape shape = MarkShape::Square;
};
SeriesStyle seriesStyle(std::size_t slot, const Look& look);

/// A series that is drawn, and as which.
struct DrawnSeries {
    std::size_t series = 0;
    std::size_t slot = 0;
    bool beside = false;
};
/// At most six: the first ones and, where another is marked, that in the last one's stead; with
/// them what stands beside the marked one in other years.
std::vector<DrawnSeries> drawnSeries(const MarksView& view);

/// Where a point stands, px.
QPointF markPoint(const QRectF& box, const MarksView& view, MarksView::At at, const Look& look);
/// The drawn point nearest to a place; none where there is none within a finger's reach.
std::optional<MarksView::At> markNear(const QRectF& box, const MarksView& view,
                                      const QPointF& place, const Look& look);
/// Where the names stand; one that finds no free place is left out.
std::vector<PlacedLabel> seriesLabels(const QRectF& box, const MarksView& view, const Look& look);

void paintMarks(QPainter& painter, const QRectF& box, const MarksView& view, const Look& look);

}  // namespace combwright
