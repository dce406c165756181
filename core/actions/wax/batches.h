// Wax on its way from the knife to the block, and the pot on heat.
#pragma once

#include "core/actions/action.h"
#include "core/model/wax/batch.h"

namespace combwright {

/// Wax that will go through the pot together. `runs` are runs whose cappings it is, "27-1, 27-2";
/// `boxes` those whose comb was cut out, "M4, M7"; with `from_bench` all that the bench scraped or
/// cut out and that is in no batch yet comes along. Old comb of one box, with the number of combs,
/// leaves its frames bare. Refused with Taken for the name, OutOfRange for a mass or a number of
/// combs that cannot be, NotFound under "runs" or "boxes", BeforeItBegan, Contradiction for old
/// comb of a run and for wax kept before it came, and HeldBack for comb or cappings of what is
/// quarantined or was found dead unexplained, also where only the hive is held whose honey ran:
/// disease stays in wax.
struct GatherWax {
    static constexpr std::string_view name = "gather-wax";
    using Answer = Id<WaxBatch>;
    Day on;
    Name batch;
    RawWaxSource source;
    std::optional<WaxState> state;  ///< none: nobody said
    std::optional<WaxShade> shade;
    std::optional<Known<Mass>> raw;  ///< none: not weighed
    std::string runs;
    std::string boxes;
    std::optional<bool> fromBench;
    std::optional<Count> combs;
    std::optional<Id<FrameKind>> frameKind;
    std::optional<WaxKeeping> kept;
    std::optional<Day> keptSince;  ///< none: that day
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// A step of a batch. `bucket` is what the honey dripped into, a bucket of its run; `into_batch`
/// what it went together with, and then no block is cast of it any more. Refused with
/// BeforeItBegan, OutOfRange above 100 °C (wax is heated over water only), TooMany "came_out_g"
/// where more came out than went in and it was not washed, and for either mass where it is more
/// than there is of the batch (demandStepLedger), Contradiction for a bucket or hive with a step
/// that has none, HeldBack for cappings of held honey given to bees and for bees of a held hive,
/// Closed where the batch went together with another before.
struct WorkWax {
    static constexpr std::string_view name = "work-wax";
    using Answer = Id<WaxStep>;
    Day on;
    Id<WaxBatch> batch;
    WaxWork work;
    std::optional<Known<Mass>> putIn;
    std::optional<Known<Mass>> cameOut;
    std::optional<Id<Bucket>> bucket;
    std::optional<Id<WaxBatch>> into;
    std::optional<Id<Hive>> hive;
    std::optional<Temperature> temperature;  ///< the warmest
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// How raw wax is kept from that day on: frozen, under a tight lid, or open. Refused with
/// BeforeItBegan, NothingToDo where it is kept so already.
struct KeepWax {
    static constexpr std::string_view name = "keep-wax";
    using Answer = Id<WaxBatch>;
    Day on;
    Id<WaxBatch> batch;
    WaxKeeping kept;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// A pot comes on heat. It stands open until it is ticked off. Refused with OutOfRange above 100
/// °C, and for a time that is not of its day.
struct HeatOn {
    static constexpr std::string_view name = "heat-on";
    using Answer = Id<HeatSession>;
    Day on;
    Instant begun;
    Name what;
    std::optional<Id<WaxBatch>> batch;
    std::optional<Temperature> temperature;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// The pot is off. Without `heat_session` the one that is on. Refused with NotFound where none is
/// on, Ambiguous where several are, Closed where it is off already, OutOfRange before it came on.
struct HeatOff {
    static constexpr std::string_view name = "heat-off";
    using Answer = Id<HeatSession>;
    Day on;
    std::optional<Id<HeatSession>> session;
    Instant off;
    std::optional<Temperature> temperature;  ///< the warmest
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

}  // namespace combwright
