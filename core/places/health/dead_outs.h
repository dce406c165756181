// Colonies found dead: what was answered of each, what it looks like, what may become of its combs
// and what to do today. Never a diagnosis: that is the inspector's and the laboratory's.
#pragma once

#include <map>
#include <string_view>
#include <vector>

#include "core/model/season_info.h"
#include "core/model/storeroom/dead_out.h"
#include "core/places/storeroom/frame_use.h"
#include "core/storage/rows.h"
#include "core/trade/storeroom/dead_out.h"

namespace combwright {

/// Whether a cause, or who looked, is really given: "?", "unknown", "not known" and "don't know"
/// are blank.
bool saysSomething(std::string_view text);
/// All answers of a colony up to a day as one: the newest that was given to each question. Its day
/// is that of the newest answer; without any it is blank.
DeadOut answersOf(const Read& file, Id<Colony> colony, Day on);
/// The answers as the trade's card asks them. A large cluster says nothing by itself there.
DeadOutSigns signsOf(const DeadOut& said);
/// What the card says to answers, kept or not yet.
DeadOutReading readingOf(const DeadOut& said);
/// Brood that ropes, dried down, sank or lies twisted: call the inspector, move nothing. Sunken
/// brood stays under suspicion also where it did not rope.
bool looksLikeDisease(const DeadOut& said);
/// Scale and ropiness were both looked for and not found, and nothing else looks like disease.
bool foulbroodRuledOut(const DeadOut& said);
/// The colony that ended in a hive last and left combs to be explained.
std::optional<Colony> lastDeadIn(const Read& file, Id<Hive> hive);

/// A box that is held for a dead-out, wherever it is now.
struct HeldBox {
    Box box;
    std::string kind;
    std::int64_t frames = 0;  ///< counted in it; 0 where nobody counted
};

struct DeadOutCard {
    Colony colony;
    Hive hive;
    Yard yard;
    std::vector<DeadOut> given;  ///< as they were given, by day
    DeadOut answers;             ///< together; see answersOf
    DeadOutReading reading;
    std::optional<Hold> hold;   ///< that stands on the colony, a suspicion of disease first
    std::vector<Hold> history;  ///< every hold the colony ever had
    bool everSuspected = false;
    std::vector<HeldBox> boxes;               ///< held for it, by mark
    std::map<FrameUse, std::int64_t> frames;  ///< held for it, by what they would be
    std::int64_t looseFrames = 0;             ///< of those, taken out of its boxes since
    std::int64_t floors = 0;                  ///< of its stand, held with it
    std::int64_t lids = 0;
    std::vector<std::string_view> stillToAnswer;  ///< field names without which nothing is released

    bool unanswered() const { return hold && hold->why == HoldWhy::DeadOutUnexplained; }
    std::int64_t heldFrames() const;
    /// Boxes held for it in which nobody counted the frames.
    std::int64_t uncountedBoxes() const;
};

/// Nothing where that colony left no dead combs by that day.
std::optional<DeadOutCard> deadOutCard(const Read& file, Id<Colony> colony, Day on);
/// Of every colony that ended so by a day: those that are held first, then by the day it ended,
/// newest first.
std::vector<DeadOutCard> deadOuts(const Read& file, Day on);

}  // namespace combwright
