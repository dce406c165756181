// The freezer as time: rounds one after the other along a line of days, what is dry already, what
// is in until when, what waits. Solid where it happened, shaded while it is in, dashed where it is
// only planned.
#pragma once

#include <QDate>
#include <QPainter>
#include <QRectF>
#include <QString>
#include <optional>
#include <vector>

#include "ui/drawing/frame.h"
#include "ui/look/tokens.h"

namespace combwright {

enum class RoundState { Done, In, Planned };

/// So many frames of one kind in a round.
struct RoundFrames {
    FrameShape shape = {};
    int count = 0;
    QString what = {};  ///< "deeps", for the words below and the spoken sentence
};

struct RoundView {
    QDate in;
    QDate out;  ///< the day it comes out, or is to come out
    RoundState state = RoundState::Planned;
    std::vector<RoundFrames> frames = {};
    QString words = {};  ///< below it; made up from the state where left out
};

struct FreezerLaneView {
    std::vector<RoundView> rounds;  ///< in order of time
    QDate today = {};
    double todayShare = 0.0;  ///< how far the day has gone, 0 to 1
};

/// What the lane needs, px.
double freezerLaneHeight(const Look& look);

/// Where each round lies in that rectangle; as many as fit, from the first. The widths follow the
/// days, but none is too narrow for its words.
std::vector<QRectF> freezerLanePlaces(const QRectF& box, const FreezerLaneView& lane,
                                      const Look& look);

void paintFreezerLane(QPainter& painter, const QRectF& box, const FreezerLaneView& lane,
                      const Look& look);

/// "10 Jan to 12 Jan: 10 deeps, dry. … In until 18 Jan: 16 mediums. …"
QString spoken(const FreezerLaneView& lane);

}  // namespace combwright
