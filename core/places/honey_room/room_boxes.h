// The boxes of a day in the honey room: which wait for the extractor, since when and until when,
// and which stand wet, to go back. Boxes of the kept pull plan wait before anybody weighed them, so
// that nothing is typed twice.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <vector>

#include "core/model/honey/extraction.h"
#include "core/model/honey/pull.h"
#include "core/places/explain/explained.h"
#include "core/storage/queries/runs.h"
#include "core/storage/rows.h"

namespace combwright {

/// How long a box may wait once it is off its hive, and why.
struct ExtractLimit {
    enum class Why {
        NoLimit,  ///< the yard has none
        Beetle,   ///< small hive beetle is about
        Damp,     ///< and the room is damp: their eggs hatch where it is over half humid
        Setting,  ///< the crop sets in the comb: rape, ivy
        Usual     ///< nobody said what holds for the yard
    };
    Why why = Why::Usual;
    std::optional<std::int64_t> days;  ///< none: no limit
    std::optional<double> dampShare;   ///< of the room, where it was measured
    std::string source;
};

/// How warm and damp the room was on a day, by the newest run there that says so: what is in no run
/// yet stands in the same air.
struct RoomAir {
    std::optional<Temperature> warm;
    std::optional<Share> damp;
};
RoomAir roomAir(const Read& file, Day on);

/// The limit that holds for a yard in a room.
ExtractLimit extractLimit(const Read& file, const std::optional<Yard>& yard,
                          std::optional<Share> damp, Day on);

struct RoomBox {
    std::optional<ExtractionBox> entry;  ///< none: planned or brought in, but not in the run yet
    std::optional<Id<Box>> box;          ///< none: its tag was lost
    std::string mark;                    ///< painted on it, else what is known of it
    std::string hive;                    ///< empty where nobody knows
    std::optional<Known<Mass>> gross, wet;
    std::optional<std::int64_t> frames;
    FramesOfBox went;               ///< which of them were spun or lie set aside
    std::optional<BoxLook> look;    ///< the last before the day
    std::optional<Day> off;         ///< since when it waits: the day it came off its hive
    std::optional<Day> extractBy;   ///< until when; none: no limit, or not off yet
    ExtractLimit limit;             ///< what that follows from
    std::optional<Day> plannedFor;  ///< of a kept plan, and still on its hive
    double heightMm = 168.3;
    std::optional<std::int64_t> peg;     ///< the number on it that day
    std::optional<std::int64_t> pegWas;  ///< the one that came off it that day
    std::optional<Id<Yard>> yard;        ///< whose honey it is; none where nobody knows

    /// It still waits, and its last day was before `today`.
    bool late(Day today) const { return left() != 0 && extractBy && *extractBy < today; }
    std::optional<std::int64_t> left() const {
        return frames ? std::optional(went.left(*frames)) : std::nullopt;
    }
};

struct RoomBoxes {
    std::vector<RoomBox> waiting;  ///< oldest first, those of a day by peg; planned ones last
    std::vector<RoomBox> wet;
    std::optional<Day> extractBy;  ///< the earliest of those waiting
    int late = 0;                  ///< boxes waiting whose last day has passed
    std::int64_t framesLeft = 0;   ///< of those waiting whose frames are known
    std::optional<RoomBox> heaviest;
    /// Boxes of the plan that are on their hives by what is written down, and are taken to be in:
    /// they are among those of a run whose tag was lost. Not among those waiting.
    std::vector<std::string> presumed;
};

/// Boxes of a plan that nobody wrote down as brought in, yet no more of a yard than boxes without
/// a tag came into that yard's runs since: nothing is left to come then, whichever is which. By
/// the number of the box.
std::set<std::int64_t> presumedIn(const Read& file, const PullPlan& plan, Day on);

/// Boxes of the run, and those the newest plan takes off its yard that are in no run yet. Without a
/// run all that the plan takes and no run has.
RoomBoxes roomBoxes(const Read& file, std::optional<Id<Extraction>> run, Day on);

/// What waits for the extractor in all: of every run not closed, and what is in no run yet.
RoomBoxes allWaiting(const Read& file, Day on);

/// The last day of which anything of the honey room is written down, where that is later than the
/// day asked about: weights and loads are kept as they are known, so an earlier day is told by all
/// that came since.
std::optional<Day> toldByLaterDays(const Read& file, Day on);
/// "Told by all that is written down up to Sun 15 Aug 2027: …"; empty where nothing is later.
QString toldByLaterText(const Read& file, Day on);

/// "beetle country", "the crop sets in the comb: 1 to 2 days": why a box may wait no longer.
QString limitText(const ExtractLimit& limit);
/// Until when each waiting box is extracted, and by what limit.
std::vector<Explained> explainWaiting(const RoomBoxes& room, Day on);

/// A wet weight near the full one: more likely the full one again, or a slip of the pen. A
/// spun-out super weighs about a quarter of a full one; above 0.6 it is asked about. Common
/// practice, no source.
bool heavyForWet(const RoomBox& box, Mass wet);

/// What the next lot could be called ("27-4"), and the yard whose boxes wait.
struct NextLot {
    std::string name;
    std::optional<Id<Yard>> yard;
};
NextLot nextLot(const Read& file, Day on);

}  // namespace combwright
