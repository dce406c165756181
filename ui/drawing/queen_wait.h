// The wait for a young queen as one line of days: left shut (hatched) until she may be mated, then
// looking, then giving eggs, then acting; the days below, today marked. One sees at a glance that a
// hive must not be opened, and until when.
#pragma once

#include <QDate>
#include <QPainter>
#include <QRectF>
#include <QString>

#include "ui/look/tokens.h"

namespace combwright {

struct QueenWaitView {
    QDate since;      ///< the day the cell was seen
    QDate queenOut;   ///< at the latest
    QDate lookFrom;   ///< the first day on which it may be opened
    QDate testFrame;  ///< from here a frame with eggs is given
    QDate actBy;
    QDate today = {};  ///< outside the line: not marked
};

/// What the line and the words below it need, px.
double queenWaitHeight(const Look& look);

/// Where that day lies across the rectangle, px.
double queenWaitX(const QRectF& box, const QueenWaitView& wait, QDate day);

void paintQueenWait(QPainter& painter, const QRectF& box, const QueenWaitView& wait,
                    const Look& look);

/// "Leave shut to 30 Jun; queen out by 17 Jun; look from 1 Jul; …"
QString spoken(const QueenWaitView& wait);

}  // namespace combwright
