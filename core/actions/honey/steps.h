// What is done to honey in a bucket or lot between the gate and the jar, and what was left in it.
#pragma once

#include "core/actions/action.h"
#include "core/model/honey/lot.h"

namespace combwright {

/// Honey warmed, dried, creamed or skimmed; weighed after, what is missing went off by it. Refused
/// as vesselMeant and demandStep, with TooMany where it weighs more after than before.
struct WorkHoney {
    static constexpr std::string_view name = "work-honey";
    using Answer = Id<HoneyStep>;
    Day on;
    std::optional<Id<Bucket>> bucket;
    std::optional<Id<Lot>> lot;
    HoneyWork work = HoneyWork::Warmed;
    std::optional<Temperature> temperature;
    std::optional<Minutes> minutes;
    std::optional<Known<Mass>> after;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// What is left in a bucket or lot, weighed or judged; 0 where it is empty. What is missing against
/// what was drawn is shown as lost. Refused as vesselMeant, with Missing without a figure, with
/// TooMany where more was drawn since than is left.
struct WeighLeft {
    static constexpr std::string_view name = "weigh-left";
    using Answer = Id<HoneyLeft>;
    Day on;
    std::optional<Id<Bucket>> bucket;
    std::optional<Id<Lot>> lot;
    std::optional<Known<Mass>> left;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

}  // namespace combwright
