// The wax of a year from the left to the right: raw by source, what drained and washed away, clean
// blocks by shade, what is wanted of them. Bands are as wide as their mass; between the washing and
// the blocks the scale may change, and says so. What nobody weighed is dashed, what is missing or
// short is an open end in the warning colour.
#pragma once

#include <QPainter>
#include <QRectF>
#include <QString>
#include <optional>
#include <vector>

#include "ui/drawing/balance.h"

namespace combwright {

/// Candles of a shade, as a band from its blocks.
struct WaxLinkView {
    std::size_t shade = 0;
    std::size_t want = 0;
    double grams = 0.0;
};

struct WaxShadeView {
    BandView band = {};      ///< what is there now
    double castGrams = 0.0;  ///< came this year; its band from the washing
    double restGrams = 0.0;  ///< what nothing wanted takes
    QString rest = {};       ///< its words, "0.22 kg left"
};

struct WaxWantView {
    BandView band = {};       ///< what all of them take; its note in the second line
    double shortGrams = 0.0;  ///< no wax for these
    QString shortWord = {};
};

/// A head over a column.
struct WaxHeadView {
    QString what;
    FigureText figure = {};
    QString shortWord = {};  ///< in the warning colour, at the right edge
    FigureText shortFigure = {};
};

struct FlowOfWax {
    std::vector<BandView> raw;   ///< grams 0: not weighed, dashed
    std::vector<BandView> out;   ///< drained, washed away, waiting: at the first wall
    double throughGrams = 0.0;   ///< goes on to the second
    std::vector<BandView> lost;  ///< slumgum, missing, waiting washed: at the second wall
    std::vector<WaxShadeView> shades;
    std::vector<WaxLinkView> links;
    std::vector<WaxWantView> wants;
    WaxHeadView rawHead, washedHead, blocksHead, wantedHead;
    double times = 1.0;  ///< how much wider a gram is drawn from the second wall on
    double barInGrams = 5000.0, barOutGrams = 1000.0;
    QString barIn, barOut;  ///< what the bars of the scale stand for
};

/// Everything one can point at, in the order of the raw, out, lost, shades and wants.
std::vector<QRectF> waxFlowPlaces(const QRectF& box, const FlowOfWax& flow, const Look& look);
/// Narrower than that it cannot be drawn, px.
double waxFlowLeastWidth(const FlowOfWax& flow, const Look& look);
/// Lower than that neither.
double waxFlowLeastHeight(const FlowOfWax& flow, const Look& look);

void paintWaxFlow(QPainter& painter, const QRectF& box, const FlowOfWax& flow, const Look& look);

/// "Raw: cappings, Hill 11.0 kg weighed; … Blocks: light 3.40 kg … Wanted: 60 skeps …"
QString spoken(const FlowOfWax& flow);

/// Rounds to 1, 2, 5, 10, 20 … times, so that both halves are about as high.
double waxFlowTimes(double inGrams, double outGrams);

}  // namespace combwright
