// What is read and told of the honey in a bucket or lot: its water with the instrument behind it,
// its colour, its lid, where it stands, a word for its taste.
#pragma once

#include "core/actions/action.h"
#include "core/model/honey/lot.h"

namespace combwright {

/// Water read of a bucket or lot, on one of three scales: water, refraction, Brix. It stays as
/// read; where it was not taken at 20 °C and the instrument does not correct for that, the
/// correction is offered and taken by take-correction. Refused as vesselMeant and demandReading.
struct ReadWater {
    static constexpr std::string_view name = "read-water";
    using Answer = Id<WaterReading>;
    Day on;
    std::optional<Id<Bucket>> bucket;
    std::optional<Id<Lot>> lot;
    std::optional<WaterContent> water;
    std::optional<Number> index;
    std::optional<Number> brix;
    std::optional<Temperature> temperature;
    std::optional<bool> compensates;
    std::string instrument;
    std::optional<Day> calibrated;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Takes the reading of a bucket or lot as corrected to 20 °C: the newest up to the day. Refused
/// with NotFound where none was read, NothingToDo where it is right as read or corrected already,
/// Missing "temperature_c" where nobody said how warm the sample was, OutOfRange where the table
/// ends.
struct TakeCorrection {
    static constexpr std::string_view name = "take-correction";
    using Answer = Id<WaterReading>;
    Day on;
    std::optional<Id<Bucket>> bucket;
    std::optional<Id<Lot>> lot;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// What is told of a bucket or lot; what is left out stays. Refused with NothingToDo where nothing
/// is said, with NotAChoice where the kind is no bucket, with Contradiction for the kind of a lot,
/// with TooMany where more honey is in it than its tank takes.
struct DescribeHoney {
    static constexpr std::string_view name = "describe-honey";
    using Answer = Made;
    Day on;
    std::optional<Id<Bucket>> bucket;
    std::optional<Id<Lot>> lot;
    HoneyTraits traits;
    std::optional<bool> lidded;
    std::optional<Id<Equipment>> kind;  ///< which sort of bucket
    std::optional<Mass> tankHolds;      ///< of a lot
    std::optional<Length> tankWide;     ///< of a lot, inside, across
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

}  // namespace combwright
