// Honey from the gate to the jar: what went together, what an instrument said of it, what was done
// to it and what was left. Every gram keeps its parents.
#pragma once

#include "core/model/honey/extraction.h"

namespace combwright {

/// How honey came to be a lot of its own.
enum class LotOrigin { Blended, BoughtIn, Other };
template <>
struct Choices<LotOrigin> {
    static constexpr auto words =
        std::to_array<std::string_view>({"blended", "bought in", "other"});
};

/// Honey handled together that is no longer one run's: a blend, or honey bought in. A run is a lot
/// too and needs no such record.
struct Lot {
    static constexpr std::string_view table = "lot";
    Id<Lot> id;
    Name name;  ///< unique in the file
    Day on;
    LotOrigin origin = LotOrigin::Blended;
    std::optional<Known<Mass>> net;  ///< weighed after; none: what went in, added up
    std::optional<Mass> tankHolds;   ///< honey its tank or bucket holds, to the brim
    std::optional<bool> lidded;
    HoneyTraits traits;
    std::string supplier;  ///< whose honey it was
    std::string note;
    std::string reason;              ///< why although a part was held back
    std::optional<Length> tankWide;  ///< its tank or bucket inside, across
    static const Fields& fields();
};

/// What went into a lot, to the gram.
struct LotPart {
    static constexpr std::string_view table = "lot_part";
    Id<LotPart> id;
    Id<Lot> lot;
    std::optional<Id<Bucket>> bucket;  ///< either a bucket
    std::optional<Id<Lot>> from;       ///< or another lot
    Day on;
    Mass mass;
    How how = How::Weighed;
    static const Fields& fields();
};

/// What an instrument said of the water in honey, and all that says how far to trust it. A reading
/// that was not corrected for warmth stays as read until the keeper takes the corrected one.
struct WaterReading {
    static constexpr std::string_view table = "water_reading";
    Id<WaterReading> id;
    std::optional<Id<Bucket>> bucket;  ///< either of a bucket
    std::optional<Id<Lot>> lot;        ///< or of a lot
    Day on;
    std::optional<WaterContent> water;       ///< as read on a scale of water
    std::optional<Number> index;             ///< as read on a scale of refraction
    std::optional<Number> brix;              ///< as read on a sugar scale
    std::optional<Temperature> temperature;  ///< of the sample
    std::optional<bool>
        compensates;  ///< the instrument corrects for warmth itself; none: nobody said
    std::optional<WaterContent> corrected;  ///< at 20 °C, where the keeper took the correction
    std::string instrument;
    std::optional<Day> calibrated;  ///< when it was last checked
    std::string note;
    static const Fields& fields();
};

/// What is done to honey between the gate and the jar.
enum class HoneyWork { Warmed, Dried, Creamed, Skimmed };
template <>
struct Choices<HoneyWork> {
    static constexpr auto words =
        std::to_array<std::string_view>({"warmed", "dried", "creamed", "skimmed"});
};

/// Warming, drying, creaming or skimming of a bucket or lot; its heat adds up over all steps.
struct HoneyStep {
    static constexpr std::string_view table = "honey_step";
    Id<HoneyStep> id;
    std::optional<Id<Bucket>> bucket;
    std::optional<Id<Lot>> lot;
    Day on;
    HoneyWork work = HoneyWork::Warmed;
    std::optional<Temperature> temperature;  ///< of the honey, the warmest it was held at
    std::optional<Minutes> minutes;          ///< how long
    std::optional<Known<Mass>> after;        ///< what was left, where it was weighed
    std::string note;
    static const Fields& fields();
};

/// What was left of a bucket or lot when somebody weighed it, 0 when it was emptied; what is
/// missing against what was drawn is lost, and shown.
struct HoneyLeft {
    static constexpr std::string_view table = "honey_left";
    Id<HoneyLeft> id;
    std::optional<Id<Bucket>> bucket;
    std::optional<Id<Lot>> lot;
    Day on;
    std::optional<Known<Mass>> left;
    std::string note;
    static const Fields& fields();
};

}  // namespace combwright
