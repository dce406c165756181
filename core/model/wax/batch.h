// Wax from the knife to the clean block: where it came from, what was done to it, and the pot on
// heat.
#pragma once

#include "core/model/honey/extraction.h"
#include "core/model/storeroom/review.h"

namespace combwright {

/// How dark clean wax is; grades are kept apart, mixing loses the pale colour.
enum class WaxShade { Light, Mid, Dark };
template <>
struct Choices<WaxShade> {
    static constexpr auto words = std::to_array<std::string_view>({"light", "mid", "dark"});
};

/// How far raw wax had come when it was weighed; how much of it is wax hangs on that.
enum class WaxState { Undrained, Drained, Pressed, Washed, Dry };
template <>
struct Choices<WaxState> {
    static constexpr auto words =
        std::to_array<std::string_view>({"undrained", "drained", "pressed", "washed", "dry"});
};

/// How raw wax is kept until it is melted.
enum class WaxKeeping { Open, Lidded, Frozen };
template <>
struct Choices<WaxKeeping> {
    static constexpr auto words = std::to_array<std::string_view>({"open", "tight lid", "frozen"});
};

/// Wax that goes through the pot together, from where it was scraped or cut to clean blocks.
struct WaxBatch {
    static constexpr std::string_view table = "wax_batch";
    Id<WaxBatch> id;
    Name name;  ///< unique in the file
    Day on;
    RawWaxSource source = RawWaxSource::Cappings;
    std::optional<WaxState> state;  ///< none: nobody said
    std::optional<WaxShade> shade;
    std::optional<Known<Mass>> raw;          ///< what came to the bench; none: not weighed
    std::optional<Count> combs;              ///< cut out, of old comb
    std::optional<Id<FrameKind>> frameKind;  ///< of those combs
    std::optional<WaxKeeping> kept;
    std::optional<Day> keptSince;
    std::string reason;  ///< why although a source is held back
    std::string note;
    static const Fields& fields();
};

/// Where the wax of a batch came from: cappings of a run, what the bench scraped or cut out of a
/// box.
struct WaxSource {
    static constexpr std::string_view table = "wax_source";
    Id<WaxSource> id;
    Id<WaxBatch> batch;
    std::optional<Id<Extraction>> run;  ///< either cappings of a run
    std::optional<Id<RawWax>> rawWax;   ///< or what waited on the bench
    std::optional<Id<Box>> box;         ///< or comb out of a box
    std::optional<Known<Mass>> mass;    ///< its part of the raw mass, where it was weighed
    static const Fields& fields();
};

/// What is done to wax between the knife and the block.
enum class WaxWork {
    Dripped,
    Pressed,
    Washed,
    BeesCleaned,
    Melted,
    Strained,
    FootScraped,
    MeltedAgain,
    GoneTogether
};
template <>
struct Choices<WaxWork> {
    static constexpr auto words = std::to_array<std::string_view>(
        {"dripped", "pressed", "washed", "bees cleaned", "melted", "strained", "foot scraped",
         "melted again", "gone together"});
};

/// A step of a batch, with what went in and came out where it was weighed.
struct WaxStep {
    static constexpr std::string_view table = "wax_step";
    Id<WaxStep> id;
    Id<WaxBatch> batch;
    Day on;
    WaxWork work = WaxWork::Melted;
    std::optional<Known<Mass>> putIn;
    std::optional<Known<Mass>> cameOut;
    std::optional<Id<Bucket>> bucket;        ///< the honey that dripped out of it
    std::optional<Id<WaxBatch>> into;        ///< what it went together with
    std::optional<Id<Hive>> hive;            ///< whose bees cleaned it; none: in the open
    std::optional<Temperature> temperature;  ///< the warmest
    std::string note;
    static const Fields& fields();
};

/// A pot on heat. Open until somebody ticks that it is off.
struct HeatSession {
    static constexpr std::string_view table = "heat_session";
    Id<HeatSession> id;
    Day on;
    Instant begun;
    std::optional<Instant> off;  ///< none: it is on
    Name what;                   ///< "wax pot in the water bath"
    std::optional<Id<WaxBatch>> batch;
    std::optional<Temperature> temperature;  ///< the warmest
    std::string note;
    static const Fields& fields();
};

}  // namespace combwright
