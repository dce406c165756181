#include "ui/drawing/chart_lines.h"

#include <QChart>
#include <QGraphicsLayout>
#include <QGraphicsScene>
#include <QLineSeries>
#include <QValueAxis>
#include <algorithm>
#include <array>
#include <cmath>

namespace combwright {

void paintChartLines(QPainter& painter, const QRectF& plot, const std::vector<ChartLine>& lines) {
    if (plot.width() <= 0 || plot.height() <= 0) return;
    QGraphicsScene scene;
    auto* chart = new QChart;
    scene.addItem(chart);
    chart->legend()->hide();
    chart->setBackgroundVisible(false);
    chart->setMargins(QMargins(0, 0, 0, 0));
    chart->setAnimationOptions(QChart::NoAnimation);
    // Two axes that are not seen, measured as the plot is.
    auto* across = new QValueAxis;
    across->setRange(0.0, plot.width());
    auto* up = new QValueAxis;
    up->setRange(0.0, plot.height());
    across->setVisible(false);
    up->setVisible(false);
    chart->addAxis(across, Qt::AlignBottom);
    chart->addAxis(up, Qt::AlignLeft);
    for (const ChartLine& line : lines) {
        auto* series = new QLineSeries(chart);
        QList<QPointF> points;
        points.reserve(line.through.size());
        for (const QPointF& point : line.through)
            points.append({point.x() - plot.left(), plot.bottom() - point.y()});
        series->replace(points);
        series->setPen(line.pen);
        chart->addSeries(series);
        series->attachAxis(across);
        series->attachAxis(up);
    }
    chart->setPlotArea(QRectF(QPointF(0, 0), plot.size()));
    chart->resize(plot.size());
    chart->layout()->activate();
    scene.render(&painter, plot, QRectF(QPointF(0, 0), plot.size()), Qt::IgnoreAspectRatio);
}

QPolygonF thinned(const QPolygonF& points) {
    QPolygonF seen;
    qsizetype from = 0;
    while (from < points.size()) {
        const double column = std::floor(points[from].x());
        qsizetype low = from;
        qsizetype high = from;
        qsizetype last = from;
        while (last + 1 < points.size() && std::floor(points[last + 1].x()) == column) {
            ++last;
            if (points[last].y() < points[low].y()) low = last;
            if (points[last].y() > points[high].y()) high = last;
        }
        std::array<qsizetype, 4> kept{from, low, high, last};
        std::sort(kept.begin(), kept.end());
        for (std::size_t i = 0; i < kept.size(); ++i)
            if (i == 0 || kept[i] != kept[i - 1]) seen << points[kept[i]];
        from = last + 1;
    }
    return seen;
}

}  // namespace combwright
