// The winter bench: a box with its frames laid out flat, what was seen of them and what becomes of
// them; the sum of an evening, each part with where it has gone; and which boxes still wait.
// Window, print and command line show the same.
#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "core/model/season_info.h"
#include "core/model/storeroom/review.h"
#include "core/places/storeroom/frame_use.h"
#include "core/places/yard/box_changes.h"
#include "core/storage/rows.h"

namespace combwright {

struct BenchFrame {
    Frame frame;
    FrameKind kind;
    int slot = 0;            ///< from 1 at the left, where it is drawn
    bool pointedAt = false;  ///< it has that place; else it is one of those alike
    Verdict usual = Verdict::Keep;
    bool overruled = false;  ///< its verdict is another than what was seen usually means
    QString why;             ///< "refit: web of moth"; empty without a verdict
    bool held = false;       ///< by a hold of its own, of its box or colony
    FrameUse use = FrameUse::Unknown;
};

struct BenchBox {
    Box box;
    BoxKind kind;
    std::optional<FrameKind> takes;
    std::vector<BenchFrame> frames;  ///< left to right; those with a place stand there
    std::vector<Hold> holds;
    std::optional<BoxReview> last;
    /// What it went through since that look, and frames that came or went.
    std::vector<BoxChange> since;
    int cameSince = 0, wentSince = 0;
    std::optional<Count> expected;  ///< of the last look; before the first one, what is in it now
    std::optional<int> difference;  ///< found less expected; none where one of them is unknown
    bool overNominal = false;
    bool changedSince() const { return !since.empty() || cameSince > 0 || wentSince > 0; }
    /// Held because disease is suspected, of itself or its colony.
    bool underSuspicion() const;
    bool waits() const { return !last || changedSince(); }
    /// "moved on 9 Jan 2028, 2 frames gone": empty where nothing changed.
    QString changes() const;
};

/// A box as it lies on the bench on a day; nothing for one nobody knows.
std::optional<BenchBox> benchBox(const Read& file, Id<Box> box, Day on);

/// The whole line of a look as one would type it again: its counts as they were typed, then the
/// remarks, masses in the person's units where nothing is lost by that.
QString typedLine(const BoxReview& review);

/// Boxes in storeroom and freezer, in the order they stand: stack by stack, marks counting up.
std::vector<Box> boxesInShelfOrder(const Read& file);

/// Those of them that were never looked through or changed since.
struct BenchWaiting {
    Box box;
    std::optional<Day> last;
    bool changedSince = false;
};
std::vector<BenchWaiting> boxesWaiting(const Read& file, Day on);

/// One part of an evening's work and where it has gone.
struct EveningPart {
    enum class What { Scrapings, Propolis, Refit, Repair, Scrape, Freeze, Melt, Hold, Burn, Paint };
    What what = What::Refit;
    std::optional<Mass> mass;       ///< of scrapings and propolis
    std::optional<How> how;         ///< of the mass
    int notWeighed = 0;             ///< boxes whose scrapings were kept unweighed
    std::optional<FrameKind> kind;  ///< of frames
    int frames = 0;                 ///< or boxes that want paint
    QString says;                   ///< "12 medium combs to melt"
    QString gone;                   ///< "raw wax, about 720 g a"
};

struct EveningSum {
    Day day;
    int boxes = 0;
    Count found, expected;  ///< of the boxes whose frames somebody counted before
    int missing = 0, over = 0;
    int notExpected = 0;  ///< boxes nobody counted before
    int kept = 0;         ///< frames to keep as they are
    std::vector<EveningPart> parts;
    int boxesWaiting = 0;
    QString text() const;  ///< a line a part
};

/// What the looks of a day came to. Frames are counted by the verdict they were given on it.
EveningSum eveningSum(const Read& file, Day day);

}  // namespace combwright
