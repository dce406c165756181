// What is typed in the honey room with sticky hands, one line at a time: "M07 21.4", "M07 wet 5.2",
// "M07 21.4 17.2 %", "B3 13.0 17.2", "B3 half", "cappings 11", "open 27-2 Hill", or a number alone
// for the box chosen.
#pragma once

#include <QString>
#include <optional>

#include "core/units/known.h"
#include "core/units/mass.h"

namespace combwright {

struct RoomLine {
    enum class About { Open, Box, Hive, Bucket, Cappings, Scrapings, Chosen, Nothing };
    About about = About::Nothing;
    QString name;                     ///< of the box, bucket or run
    QString behind;                   ///< the yard of a run, the hive of a box
    std::optional<Known<Mass>> mass;  ///< without a value: "?", nobody knows
    std::optional<bool> wet;          ///< said to be the wet weight, or the full one
    std::optional<double> level;      ///< of a bucket by eye, 0 to 1
    std::optional<double> water;      ///< of a bucket or a box, per cent
    std::optional<bool> lidded;
    std::optional<int> frames;  ///< in a box
    QString notRead;            ///< the part nobody can read; the line then does nothing
};

/// Never fails: what cannot be read is in `notRead`.
RoomLine readRoomLine(const QString& text);

/// "21.4" weighed, "~21" by eye, "?" nobody knows. Nothing for what is no mass.
std::optional<Known<Mass>> typedReading(const QString& text);

/// "half", "full", "3/4", "60 %": how full something is. Nothing for anything else.
std::optional<double> typedLevel(const QString& text);

}  // namespace combwright
