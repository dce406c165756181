// The ground charts of a year are drawn on: days along, amounts up, months named below. One ground,
// so that the timeline and the charts under it lie month under month.
#pragma once

#include <QPainter>
#include <QRectF>
#include <QString>
#include <vector>

#include "core/units/day.h"
#include "ui/look/tokens.h"

namespace combwright {

/// A mark on the axis of amounts.
struct AxisMark {
    double at = 0.0;  ///< share of the axis, 0 to 1
    QString label;
};

/// The day of another year laid over one: the same day of the same month.
Day laidOver(Day day, int year);
double dayNumber(Day day);

/// What is drawn where: months from April to October, or wider where something lies outside them.
struct YearAxis {
    QRectF plot;
    int year = 0;
    unsigned first = 4;
    unsigned last = 10;
    double top = 1.0;

    /// Takes the month of a day in.
    void widen(Day day);
    Day begin() const { return *makeDay(year, first, 1); }
    /// The first day after the last month.
    Day end() const { return last == 12 ? *makeDay(year + 1, 1, 1) : *makeDay(year, last + 1, 1); }
    double x(Day day) const;
    double y(double amount) const { return plot.bottom() - plot.height() * amount / top; }
};

/// The plot within a box, the axis' labels and the months left out.
QRectF yearPlot(const QRectF& box, const std::vector<AxisMark>& marks, const Look& look);
void paintYearGrid(QPainter& painter, const YearAxis& axis, const std::vector<AxisMark>& marks,
                   const Look& look);
void paintYearMonths(QPainter& painter, const YearAxis& axis, const Look& look);

/// The words over a plot: what the mark one is at says, at the left; else what the axis measures,
/// at the right. Both where there is room.
void paintChartHead(QPainter& painter, const QRectF& box, const QString& said, const QString& axis,
                    const Look& look);

}  // namespace combwright
