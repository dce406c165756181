// Which frame hangs in which box, for the keeper's kinds as for the trade's, and what bees do with
// the room that is left: told before a short frame in a deep box becomes burr comb.
#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "core/model/frames/box.h"
#include "core/storage/rows.h"
#include "core/trade/storeroom/fit.h"

namespace combwright {

/// A kind of frame hung in a kind of box.
struct FitRow {
    FrameKind frame;
    bool madeFor = false;         ///< the frame the box is made for
    std::optional<FrameFit> fit;  ///< none: a measure nobody recorded, named in `unknown`
    std::string unknown;          ///< "frame" or "box"
    /// Between the faces of brood combs with the frames pushed together, mm; none where the spacing
    /// is not known.
    std::optional<FaceGap> faces;

    bool hangs() const { return fit && !fit->misfit; }
};

struct FitTable {
    BoxKind box;
    std::optional<BoxKind> below;  ///< it stands on a box of this kind; none: on its own kind
    std::int64_t frames = 0;       ///< in the box, for the walls; 0 where nobody knows
    /// What the box is made for first, then what hangs in it by the gap below, then what does not.
    std::vector<FitRow> rows;
};

/// How every kind of frame would hang in a box. Without `frames` as many as it is made for.
FitTable fitTable(const Read& file, const BoxKind& box, const std::optional<BoxKind>& below = {},
                  std::optional<std::int64_t> frames = {});

/// A box that holds frames it was not made for, and what comes of it.
struct MixedBox {
    Id<Box> box;
    std::string name;
    FitRow row;
    std::int64_t frames = 0;  ///< of that kind
};
/// Boxes in use with frames of another kind than theirs.
std::vector<MixedBox> mixedBoxes(const Read& file);

/// What bees do with a gap, in words: "bees leave it open as a way".
QString gapWords(GapVerdict verdict);
QString faceWords(FaceVerdict verdict);
/// Why it does not hang: "too tall for the box".
QString misfitWords(Misfit misfit);
/// Up to which gap bees do what, in the person's units.
QString fitNote();
/// "12.7 mm below, wide but usual; 9.5 mm at each end, …" in the person's units.
QString fitText(const FitRow& row);

}  // namespace combwright
