// A hive on the scale through its years: each weighing with all that is no stores taken off, as far
// as it is known, and what was fed and carried off between two of them.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/yard/weighing.h"
#include "core/storage/rows.h"
#include "core/support/working.h"
#include "core/trade/colony/hive_weight.h"
#include "core/units/known.h"

namespace combwright {

/// Where what is taken off comes from, best first.
enum class TareFrom {
    Without,   ///< said with the weighing
    Hive,      ///< the hive's own wood weighed once; frames, bees and supers by the constants
    Kinds,     ///< all by the constants of its kinds of boxes
    NotKnown,  ///< a box nobody knows the weight of, or none at all
};
/// As JSON names it: "without", "hive", "kinds", "not_known".
std::string_view key(TareFrom from);

/// All that is no stores.
struct ReckonedTare {
    TareFrom from = TareFrom::NotKnown;
    HiveTare parts;
    How how = How::Unknown;
    bool known() const { return from != TareFrom::NotKnown; }
    double grams() const { return parts.wood_g + parts.frames_g + parts.bees_g; }
};

/// What the scale said, side by side; of a whole hive all of it stands left.
struct Lifted {
    double leftG = 0;
    double rightG = 0;
    How how = How::Unknown;
};
/// Nothing for one side alone.
std::optional<Lifted> liftedOf(const HiveWeighing& weighing);

/// One weighing, read.
struct ScaleReading {
    HiveWeighing weighing;
    std::optional<double> grossG;  ///< none: only one side was lifted
    ReckonedTare tare;
    std::optional<double> netG;  ///< stores; below 0 the tare is wrong
    How how = How::Unknown;
};

/// Gross minus tare; nothing for one side alone.
ScaleReading readScale(const Read& file, const Hive& hive, const HiveWeighing& weighing,
                       Working* working = nullptr);

/// Weighings of a hive from a day to another, oldest first.
std::vector<ScaleReading> scaleReadings(const Read& file, const Hive& hive, Day from, Day to);

/// The days later than `after` on which a box was carried off the hive, oldest first.
std::vector<Day> boxesLeftOn(const Read& file, Id<Hive> hive, Day after);
/// Whether one was carried off after a day and by another.
bool boxLeftBetween(const std::vector<Day>& left, Day after, Day by);

/// What feeding added to the stores.
struct FedBetween {
    double storesG = 0;  ///< sugar times stores_per_sugar; frames of stores as they are
    double sugarG = 0;
    int unknown = 0;  ///< feedings of which nobody said how much
};
/// From a day to before another; what was fed on the day of a weighing came after it.
FedBetween fedBetween(const Read& file, const Hive& hive, Day from, Day before);

/// What a hive uses a day by its own scale: the newest weighing and the nearest one a week or more,
/// and at most four months, before it, with no box carried off between.
struct OwnUse {
    Day from;
    Day to;
    double fromG = 0;  ///< stores
    double toG = 0;
    double fedG = 0;
    double gPerDay = 0;  ///< below 0: it gained
};
std::optional<OwnUse> ownUse(const Read& file, const Hive& hive,
                             const std::vector<ScaleReading>& readings,
                             const std::vector<Day>& left);

}  // namespace combwright
