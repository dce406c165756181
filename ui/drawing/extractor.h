// The extractor looked into from above, as one stands before it: slot 1 at the top, clockwise,
// every frame a bar whose length is its mass, and two arrows from the axle that say how far the
// load is off balance at the start and at the end of the spin, each with the disc of its doubt.
#pragma once

#include <QPainter>
#include <QPointF>
#include <QRectF>
#include <QString>
#include <optional>
#include <vector>

#include "ui/look/tokens.h"

namespace combwright {

/// One slot with what stands in it.
struct SlotView {
    bool inUse = true;                      ///< false: left empty on purpose, dashed
    std::optional<double> startGrams = {};  ///< the frame as it goes in; absent: no frame yet
    std::optional<double> endGrams = {};    ///< wood and wet comb, what is left after the spin
    QString letter = {};                    ///< h, m or l where its heft is known by class
    QString label = {};                     ///< beside the drum ("M14"), behind the slot's number
    bool ringed = false;                    ///< not in its planned slot
    bool toWrite = false;                   ///< on paper: a blank circle for a letter, no bar
};

/// The vector sum of the frames, as a mass at the radius of the slots.
struct OffsetView {
    double grams = 0.0;
    double angle = 0.0;  ///< degrees clockwise from slot 1
    double doubt = 0.0;  ///< grams, 9 in 10
};

struct ExtractorView {
    std::vector<SlotView> slotViews;  ///< slot 1 first
    double fullGrams = 2600.0;        ///< what a bar from end to end stands for
    std::optional<OffsetView> start = {};
    std::optional<OffsetView> end = {};
    std::optional<double> ringGrams = {};  ///< largest offset that ran smooth before, or allowed
    bool ringRan = true;                   ///< false: what the balance grade allows, nothing known
    std::optional<int> selected = {};      ///< slot number from 1
    std::optional<double> marker = {};     ///< where the turning mark of the drum is, degrees
    bool numbered = false;                 ///< slot numbers (and labels) around the drum
};

/// Where the drum lies in the rectangle, room for the numbers left free.
QRectF extractorDrum(const QRectF& box, const ExtractorView& extractor, const Look& look);

/// Slot number (from 1) at that point, or nothing.
std::optional<int> slotAt(const QRectF& box, const ExtractorView& extractor, const Look& look,
                          QPointF point);

void paintExtractor(QPainter& painter, const QRectF& box, const ExtractorView& extractor,
                    const Look& look);

/// What the signs mean, for a legend.
enum class ExtractorSign { Start, End, DoubtStart, DoubtEnd, Ring, NotAsPlanned };
void paintExtractorSign(QPainter& painter, const QRectF& box, ExtractorSign sign, const Look& look);

/// "Extractor, 12 slots, 12 frames. Off balance at the start 94 g towards slot 6 …"
QString spoken(const ExtractorView& extractor);

}  // namespace combwright
