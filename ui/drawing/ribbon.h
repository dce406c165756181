// The year as one line: months as long as their days, work as ticks on labelled lanes, what is done
// solid, what is planned open, today as a line.
#pragma once

#include <QDate>
#include <QPainter>
#include <QRectF>
#include <QString>
#include <vector>

#include "ui/look/tokens.h"

namespace combwright {

struct RibbonMark {
    QDate from;
    QDate to = {};      ///< last day; invalid for a single day
    bool done = true;   ///< false: planned, drawn open
    QString what = {};  ///< for the spoken sentence
};

struct RibbonLane {
    QString name;
    std::vector<RibbonMark> marks;
};

struct RibbonView {
    int year = 0;
    std::vector<RibbonLane> lanes;
    QDate today = {};         ///< invalid, or of another year: no line
    QString todayWords = {};  ///< over the line
};

/// What the ribbon needs, px.
double ribbonHeight(const RibbonView& ribbon, const Look& look);

/// Where that day begins across the ribbon, px; the first of January of the next year ends it.
double ribbonX(const QRectF& box, const RibbonView& ribbon, const Look& look, QDate day);

void paintRibbon(QPainter& painter, const QRectF& box, const RibbonView& ribbon, const Look& look);

/// "2027. Yard visits: 14 done, 2 planned; …"
QString spoken(const RibbonView& ribbon);

}  // namespace combwright
