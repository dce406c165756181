// The boxes of a day in the honey room: which wait for the extractor, since when and until when,
// and which stand wet, to go back. Boxes of the kept pull plan wait before anybody weighed them, so
// that nothing is typed twice.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/honey/extraction.h"
#include "core/model/honey/pull.h"
#include "core/storage/rows.h"

namespace combwright {

struct RoomBox {
    std::optional<ExtractionBox> entry;  ///< none: planned or brought in, but not in the run yet
    std::optional<Id<Box>> box;          ///< none: its tag was lost
    std::string mark;                    ///< painted on it, else what is known of it
    std::string hive;                    ///< empty where nobody knows
    std::optional<Known<Mass>> gross, wet;
    std::optional<std::int64_t> frames;
    std::int64_t spun = 0;
    std::optional<BoxLook> look;    ///< the last before the day
    std::optional<Day> off;         ///< when it came off its hive
    std::optional<Day> extractBy;   ///< by the yard's limit; none: no limit, or not off yet
    std::optional<Day> plannedFor;  ///< of a kept plan, and still on its hive
    double heightMm = 168.3;

    std::optional<std::int64_t> left() const {
        return frames ? std::optional(*frames - spun) : std::nullopt;
    }
};

struct RoomBoxes {
    std::vector<RoomBox> waiting;  ///< oldest first; planned ones last
    std::vector<RoomBox> wet;
    std::optional<Day> extractBy;  ///< the earliest of those waiting
    std::int64_t framesLeft = 0;   ///< of those waiting whose frames are known
    std::optional<RoomBox> heaviest;
};

/// Boxes of the run, and those the newest plan takes off its yard that are in no run yet. Without a
/// run all that the plan takes and no run has.
RoomBoxes roomBoxes(const Read& file, std::optional<Id<Extraction>> run, Day on);

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
