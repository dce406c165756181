// Feed: bought, counted on the shelf, given to hives. What is on the shelf is not kept anywhere: it
// is what was counted last and bought since, less what the hives were given, so a feeding taken
// back is on the shelf again by itself.
#pragma once

#include "core/actions/action.h"
#include "core/model/yard/visit.h"

namespace combwright {

/// Feeds hives: those named, or all of a yard in which a colony lives. `given` is the sugar each of
/// them got; packs each, where they were counted, at what a pack of that kind holds. Refused with
/// Missing where neither mass nor packs are given, or nobody knows what a pack holds (under
/// "given_g"); OutOfRange for nothing; as every deed at hives with NotFound, Closed and so on.
struct FeedHives {
    static constexpr std::string_view name = "feed";
    using Answer = std::vector<Id<Feeding>>;
    Day on;
    std::optional<Id<Yard>> yard;
    std::string hives;
    std::optional<FeedKind> kind;
    std::optional<Known<Mass>> given;
    std::optional<Count> packs;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Feed comes into the store: the sugar in it, or so many packs of so much. Refused with Missing
/// where neither says how much, OutOfRange for nothing.
struct BuyFeed {
    static constexpr std::string_view name = "buy-feed";
    using Answer = Id<FeedStock>;
    Day on;
    std::optional<FeedKind> kind;  ///< none: dry sugar
    std::optional<Known<Mass>> bought;
    std::optional<Count> packs;
    std::optional<Mass> pack;
    std::string supplier;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// All there is of a kind at the end of that day, nothing too; a second count on the same day
/// replaces the first. Refused with Missing where neither mass nor packs with their size are given.
struct CountFeed {
    static constexpr std::string_view name = "count-feed";
    using Answer = Id<FeedStock>;
    Day on;
    std::optional<FeedKind> kind;  ///< none: dry sugar
    std::optional<Known<Mass>> counted;
    std::optional<Count> packs;
    std::optional<Mass> pack;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// A stock is bought or counted, not both; also when it is amended.
Result<void> demandStock(const FeedStock& stock);
/// Something was given, or so many packs; also when it is amended.
Result<void> demandFeeding(const Feeding& feeding);

}  // namespace combwright
