// A hive as it stands in the yard, seen from the front: plain boxes to scale of height, each with
// its painted mark, one chalk line across at the height of what is in it, and a few chalk words. No
// frame is ever seen from the front.
#pragma once

#include <QPainter>
#include <QRectF>
#include <QString>
#include <QStringList>
#include <optional>
#include <vector>

#include "ui/drawing/figure.h"
#include "ui/look/tokens.h"

namespace combwright {

/// What is to be done with a box, in words over it ("take 12 kg", "leave", "look first").
struct BoxVerdict {
    QString word;
    Tone tone = Tone::Ink;
    FigureText figure = {};
    QString reason = {};  ///< a second line, muted
    QString beside = {};  ///< muted, behind the figure: "no mark"
    bool operator==(const BoxVerdict&) const = default;
};

struct BoxView {
    QString mark;                       ///< as painted on the box; empty when it has none
    double heightMm = 168.3;            ///< outer height
    bool brood = false;                 ///< carries words and no chalk line
    bool lookedInto = true;             ///< false: no chalk line and one "?"
    bool faded = false;                 ///< not opened this time: the last chalk, at 0.4
    std::optional<double> filled = {};  ///< share of the box for the chalk line, 0 to 1
    QStringList words = {};             ///< chalk words, two lines at most
    QString corner = {};                ///< one chalk word at the upper right ("today")
    QString peg = {};                   ///< number on its peg; empty when none is clipped
    bool take = false;                  ///< lifted off and moved to the right
    bool excluderBelow = false;
    std::optional<BoxVerdict> verdict = {};
};

struct StackView {
    QString name;                ///< the hive, for the spoken sentence
    double widthMm = 412.8;      ///< outside width of the front
    std::vector<BoxView> boxes;  ///< from the top down
    bool lid = true;
    bool floor = true;  ///< false: boxes waiting, standing on the ground
};

/// Where everything of a stack lies, px.
struct StackLayout {
    double pxPerMm = 0.0;
    std::vector<QRectF> boxes;    ///< fronts, from the top down, in the order of the view
    std::vector<QRectF> regions;  ///< the same with the room for each verdict, to click and to ring
    QRectF lid;                   ///< empty when there is none
    QRectF floor;
};

/// Room at the sides of the box fronts for lid, pegs and boxes moved aside, px: left and right.
double stackLeftRoom(const Look& look);
double stackRightRoom(const StackView& stack, const Look& look);

/// Height of the stack at that scale, lid, floor and verdicts included, px.
double stackHeight(const StackView& stack, double pxPerMm, const Look& look);

/// The stack standing on the rectangle's lower edge, its fronts against the left room.
/// @param pxPerMm the scale shared by a row of stacks; 0 for the largest that fits the rectangle
StackLayout layoutStack(const QRectF& box, const StackView& stack, const Look& look,
                        double pxPerMm = 0.0);

/// How wide the words over a box are, px.
double verdictWidth(const BoxVerdict& verdict, const Look& look);

void paintStack(QPainter& painter, const QRectF& box, const StackView& stack, const Look& look,
                double pxPerMm = 0.0);

/// One box front alone, to fill the rectangle; words, mark and peg only where they fit.
void paintBoxFront(QPainter& painter, const QRectF& front, const BoxView& box, const Look& look);

/// A clothes peg with its number, its jaws 10 px left of x, its middle at y.
void paintPeg(QPainter& painter, QPointF edgeMiddle, const QString& number, const Look& look);

/// "Hive ML1, 2 boxes from the top: M43, today; excluder; D31, brood box, 7 brood, 3 stores."
QString spoken(const StackView& stack);

}  // namespace combwright
