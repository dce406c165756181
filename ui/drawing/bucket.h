// A bucket from the side, filled to its level, with the figure that decides what may be done with
// it.
#pragma once

#include <QPainter>
#include <QRectF>
#include <QString>
#include <optional>

#include "ui/look/tokens.h"

namespace combwright {

struct BucketView {
    QString name;                      ///< "B9"; for the spoken sentence
    std::optional<double> level = {};  ///< share of its height, 0 to 1; absent: "?"
    QString water = {};                ///< water % in figures; empty when not measured
    bool lidded = false;
    bool doNotBottle = false;  ///< cross-hatched
    bool underGate = false;    ///< a caret over it
};

/// Room above a bucket for the caret, px; kept for every bucket so that a row stands level.
double bucketCaretRoom(const Look& look);

void paintBucket(QPainter& painter, const QRectF& box, const BucketView& bucket, const Look& look);

/// "B6, 96 % full, 18.9 % water, lidded, do not bottle."
QString spoken(const BucketView& bucket);

}  // namespace combwright
