// A frame as it is held up to the light: wood, comb hanging from the top bar, honey filling
// downward and inward, capping, and what is wrong with it as lettered flags. The shares are true by
// area, so that the eye may add them up. Nothing that was not recorded is drawn.
#pragma once

#include <QPainter>
#include <QRectF>
#include <QSizeF>
#include <QString>
#include <cstdint>
#include <optional>
#include <vector>

#include "ui/look/tokens.h"

namespace combwright {

/// Measures of one kind of frame, mm, as the frame table has them.
struct FrameShape {
    double topBarLength = 482.6;
    double topBarThickness = 19.1;
    double height = 158.8;  ///< top of the top bar to the foot of the bottom bar
    double bottomBarLength = 446.1;
    double combWidth = 428.6;  ///< between the end bars
    double combHeight = 130.2;
    bool operator==(const FrameShape&) const = default;
};

enum class CombState {
    Unknown,     ///< nobody recorded it: a dashed frame with "?"
    Bare,        ///< wires only
    Foundation,  ///< nothing drawn yet
    PartDrawn,   ///< the share `drawn` of the sheet
    Drawn,
};

/// What is seen on a frame; the letter is its key at the bench and its flag.
enum class FrameFault : char {
    Web = 'W',
    Slime = 'S',
    Bent = 'B',
    Mouse = 'U',
    Mould = 'O',
    DeadBrood = 'D',
    DeadBees = 'X',
    Drone = 'N',
    BrokenWood = 'V',
    OldDark = 'T',
    Granulated = 'G',
    Fermented = 'Y',
    Propolis = 'P',
    CrossComb = 'C',
    PollenBound = 'L',
    Foulbrood = 'Q',
};

/// All sixteen, in the order they are listed at the bench.
const std::vector<FrameFault>& allFaults();
/// The words for a fault ("web of moth").
QString faultWord(FrameFault fault);
/// The fault for its letter, either case; nothing for a letter that is none.
std::optional<FrameFault> faultFor(QChar letter);
/// Whether the fault means stop: drawn in the warning red beside its letter.
bool isGrave(FrameFault fault);

/// One side of the comb; what is absent was not recorded and is not drawn.
struct SideView {
    std::optional<double> filled;  ///< share of the comb with honey in it, 0 to 1
    std::optional<double> capped;  ///< share of the comb (not of the honey) that is capped, 0 to 1
    std::optional<double> brood;   ///< share of the comb with brood, 0 to 1
};

struct FrameView {
    FrameShape shape = {};
    CombState comb = CombState::Drawn;
    double drawn = 1.0;  ///< share of the sheet drawn, only with PartDrawn, 0 to 1
    bool wet = false;    ///< extracted, not yet licked dry
    SideView a = {};
    std::optional<SideView> b = {};  ///< absent: only one side, or the mean, is known
    std::vector<FrameFault> faults = {};
    bool found = true;       ///< false: it should be here and is not; dashed, "?"
    std::uint64_t seed = 0;  ///< from the frame's id: its edge always wobbles alike
};

/// Narrower than this, one side stands for the mean of both.
double twoSidesFrom(const Look& look);

/// What the frame needs at that length of its top bar, flags included, px.
QSizeF frameSize(const FrameView& frame, double width, const Look& look);

/// Draws the frame as wide as the rectangle (less where its height would not fit), standing on the
/// rectangle's lower edge: both sides, A above B, or their mean where it is narrow.
void paintFrame(QPainter& painter, const QRectF& box, const FrameView& frame, const Look& look);

/// Where the two sides lie in that rectangle (one entry when one is drawn), for marks beside them.
std::vector<QRectF> frameSides(const QRectF& box, const FrameView& frame, const Look& look);

/// "Drawn comb. Side A 75 % filled, 30 % capped. W web of moth."
QString spoken(const FrameView& frame);

}  // namespace combwright
