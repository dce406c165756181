// What goes into the extractor next: the frames of a run's boxes that are not spun yet, load by
// load, with the offset each leaves and its doubt, because nobody weighs a hundred frames.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/model/honey/room.h"
#include "core/places/honey_room/extractor.h"
#include "core/storage/rows.h"
#include "core/support/result.h"
#include "core/support/working.h"
#include "core/trade/extractor/heft.h"
#include "core/trade/extractor/spin_loads.h"

namespace combwright {

struct LoadFrame {
    std::string box;          ///< what its box is called; empty for an empty frame put in
    Id<ExtractionBox> entry;  ///< none for an empty frame put in
    std::string lot;
    std::string kind;
    double startG = 0;
    double endG = 0;
    double sdG = 0;
    double radiusMm = 0;                 ///< of its middle, top bar outwards
    bool emptied = false;                ///< put in drawn and empty, only for the balance
    std::optional<FrameHeft> heft = {};  ///< as it felt; its masses are then those of its class
    bool assumed = false;  ///< nobody weighed or judged its box: it is taken as usually filled
    bool operator==(const LoadFrame&) const = default;
};

struct SheetLoad {
    /// Counted on from what the open runs have spun; a closed run's loads, laid out anew, from 1.
    std::int64_t number = 1;
    std::string lot;                               ///< of several: "27-2 + 27-3"
    std::vector<std::optional<LoadFrame>> places;  ///< by slot
    LoadOffsets offset;
    double startAngle = 0;  ///< of the offset, degrees clockwise from slot 1
    double endAngle = 0;
    double doubtG = 0;     ///< of the start: 9 in 10 of the real offsets lie within this of it
    double endDoubtG = 0;  ///< likewise at the end, where only wood and wet comb differ
    std::int64_t frames = 0;
    bool proven = false;          ///< no other arrangement of these masses is nearer balance
    std::optional<Ran> ran = {};  ///< of a load that was spun
    /// Of a load that was spun only what was written down is known, and the doubt at its end never
    /// is; a load to come is reckoned.
    bool startKnown = true, endKnown = true, doubtKnown = true, endDoubtKnown = true;
};

/// Frames of a kind nobody said how many of hang in the machine.
struct KindLeftOut {
    std::string kind;
    std::int64_t frames = 0;
};

/// What the keeper allows; left alone, lots and sizes of frame stay apart.
struct LoadRules {
    bool mixLots = false;
    bool mixKinds = false;
    std::optional<Id<Equipment>> machine = {};  ///< of several; else the first
};

struct LoadSheet {
    std::int64_t slotCount = 12;
    double allowedG = 0;               ///< what the balance grade allows at that speed
    std::optional<double> ranSmoothG;  ///< the largest offset, doubt included, that ran smooth
    std::optional<double> walkedG;     ///< the smallest at which the machine walked or was stopped
    bool ringContradicted = false;     ///< it walked since below all that ran smooth
    std::vector<SheetLoad> loads;
    std::vector<std::string> runs;
    std::int64_t loadsIfMixed = 0;
    std::int64_t loadsDone = 0;  ///< spun before, those stopped included
    std::int64_t framesLeft = 0;
    bool severalKinds = false;
    Extractor machine;
    std::map<std::string, std::int64_t> slotsOfKind;  ///< by the kind's code
    std::vector<KindLeftOut> leftOut;                 ///< not in the loads
    std::vector<SheetLoad> spun;  ///< loads whose slots were written down, as they hung

    /// The ring drawn: what ran smooth on this machine before, else what the grade allows.
    double ringG() const;
};

/// The loads of the open runs, or of the runs given. Of an open run only what is not spun yet; a
/// closed one is laid out as it was when its boxes came in.
Result<LoadSheet> loadSheet(const Read& file, const std::vector<Id<Extraction>>& runs, Day on,
                            const LoadRules& allowed = {});
/// Reckons offsets and doubts of a load anew, after frames changed places.
void weighOffsets(SheetLoad& load);
/// A load typed frame by frame as each comes off the fork, heavy, middling or light, up to the
/// slots. `felt.box` is left out where the next frame of the next waiting box is meant: boxes in
/// their order in the runs, frame by frame; that box is kept until it has no frame left, or another
/// is named. The letter sorts a frame among those of the runs' boxes, and what its own box weighed
/// or was judged counts with it; a box nobody knows anything of is like those weighed full and wet,
/// where there are two of the kind, else as usually filled. Frames typed as empty are drawn
/// ones put in for the balance. Refused with TooMany beyond the slots or the frames there are, with
/// Contradiction where kinds do not hang together, with NotFound for a box of no run given.
struct FeltFrame {
    FrameHeft heft = FrameHeft::Middling;
    std::optional<Id<ExtractionBox>> box = {};
    bool emptied = false;
};
struct FeltLoad {
    SheetLoad load;
    HeftClasses classes;    ///< honey a frame of the last kind typed
    std::size_t boxes = 0;  ///< weighed, from which the classes were learned; 0: assumed
    double endG = 0;        ///< wood and wet comb of such a frame
};
Result<FeltLoad> feltLoad(const Read& file, const std::vector<Id<Extraction>>& runs,
                          const std::vector<FeltFrame>& felt, Day on, const LoadRules& allowed = {},
                          Working* working = nullptr);
/// The same at once, within a few milliseconds, not proven where that takes longer.
Result<FeltLoad> feltLoadAtOnce(const Read& file, const std::vector<Id<Extraction>>& runs,
                                const std::vector<FeltFrame>& felt, Day on,
                                const LoadRules& allowed = {});

/// Runs that are not closed, oldest first.
std::vector<Extraction> openRuns(const Read& file);

/// A frame of a box as it is reckoned for the loads, with every step noted; nothing where nobody
/// knows how many frames the box holds.
std::optional<LoadFrame> reckonFrame(const Read& file, const ExtractionBox& box,
                                     const Extraction& run, Working* working = nullptr);

/// What helps a load that does not balance: the frame left out, or where an empty one goes.
struct LoadAdvice {
    std::string box;  ///< whose frame is left out; empty: an empty frame is put in
    SheetLoad after;
};
/// Nothing where the load has fewer than two frames or nothing is gained.
std::optional<LoadAdvice> leaveOneOut(const SheetLoad& load);
/// Nothing where no slot is free or nothing is gained.
std::optional<LoadAdvice> addAnEmptyFrame(const SheetLoad& load);

}  // namespace combwright
