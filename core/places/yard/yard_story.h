// A hive's story, newest first: what was seen, what was put on and taken off with what was in it,
// what was counted, planned, fed, held back and taken. Pages word it; nothing here is a sentence.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "core/model/frames/frame.h"
#include "core/model/health/medicine.h"
#include "core/model/photos/photo.h"
#include "core/model/season_info.h"
#include "core/model/wax/hive_goods.h"
#include "core/model/yard/queen.h"
#include "core/model/yard/sheet_line.h"
#include "core/model/yard/weighing.h"
#include "core/places/health/mites.h"
#include "core/places/yard/line_revisions.h"
#include "core/storage/rows.h"

namespace combwright {

/// A box as a story speaks of it.
struct StoryBox {
    std::string mark;
    std::string kind;
    std::vector<BoxCount> counts;  ///< what was counted in it last, before that day or on it
};

struct StoryEntry {
    enum class What {
        Look,     ///< a line of the yard sheet
        Began,    ///< the hive was set up with its boxes
        BoxesOn,  ///< from `place`, `otherHive`
        BoxesOff,
        BoxLooked,
        BoxCounted,
        Planned,  ///< a pull plan: `boxes` to take, `left` to leave
        Honey,    ///< taken in a run
        Fed,
        Weighed,
        Found,       ///< a pest or sign looked for or met, other than in a line
        MedicineIn,  ///< given
        MedicineOut,
        ProjectOn,  ///< comb jars and the like were put on
        ProjectOff,
        HeldBack,
        HoldLifted,
        ColonyCame,   ///< began here, or came from `otherHive` to live here
        ColonyEnded,  ///< with `cause` where somebody said it of the dead-out
        ColonyWent,   ///< lives on `otherHive` since
        SplitOff,     ///< bees of it live in `otherHive`
        SwarmCaught,  ///< a swarm of it lives in `otherHive`
        Joined,       ///< the colony of `otherHive` was united with it
        HiveMoved,    ///< stood in `otherYard` before
        Relabelled,   ///< was called `otherHive` before
        QueenCame,
        QueenWent,
        QueenWait,      ///< a young queen is waited for
        QueenWaitOver,  ///< no longer
        Photographed,
    } what;
    Day on;
    SheetLine line = {};  ///< of a look
    Looked looked = Looked::Opened;
    std::vector<StoryBox> boxes = {};
    std::vector<StoryBox> left = {};
    std::optional<BoxPlace> place = {};  ///< where boxes came from or went to
    std::string otherHive = {};
    std::optional<BoxLook> look = {};
    std::optional<Day> forDay = {};  ///< of a plan
    std::string run = {};
    std::optional<Mass> honey = {};  ///< nothing where the run's balance cannot be drawn up yet
    std::optional<Known<Mass>> fed = {};
    How how = How::Unknown;
    std::optional<HoldWhy> why = {};
    std::string note = {};
    std::string by = {};
    std::optional<Origin> origin = {};
    std::string mother = {};  ///< the hive it was split from
    std::optional<Ending> ending = {};
    std::string cause = {};
    std::string otherYard = {};
    std::optional<Queen> queen = {};
    std::string colour = {};  ///< she wears, or her year's
    std::optional<QueenLeft> queenLeft = {};
    std::optional<QueenStep> step = {};
    std::optional<FeedKind> fedAs = {};
    std::optional<Count> packs = {};  ///< of feed given
    std::optional<HiveWeighing> weighing = {};
    std::optional<MiteSample> sample = {};  ///< of a finding; judged where it is of mites
    std::optional<Treatment> treatment = {};
    std::optional<Medicine> medicine = {};
    std::optional<HiveProject> project = {};
    std::optional<Photo> photo = {};
    bool fromNucleus = false;  ///< of a colony that moved: out of a nucleus box into a full one
    std::vector<LineWas> was = {};  ///< of a look, oldest first
};

/// Of one hive up to a day, newest first.
std::vector<StoryEntry> hiveStory(const Read& file, Id<Hive> hive, Day until);

/// Who lived in a hive on a day, as its card says it.
struct HiveHead {
    std::string mark;  ///< what the hive was called that day …
    std::string yard;  ///< … and where it stood
    std::optional<Colony> colony;
    std::string mother;  ///< the hive it was split from, where that is known
    std::optional<Day> queenSeen;
    std::optional<Queen> queen;  ///< who heads it, where she was written down
    std::optional<Day> queenSince;
    std::string colour;  ///< she wears, or her year's
    std::optional<Queen> queenMother;
    std::optional<QueenStay> queenLeft;  ///< where none heads it: the stay of the last that left
    std::optional<Day> lookFrom;         ///< a young queen is waited for: not opened before
};
HiveHead hiveHead(const Read& file, Id<Hive> hive, Day on);

}  // namespace combwright
