// Feed: what there is of it and what it is given as. What counts is the sugar in it.
#pragma once

#include "core/model/describe.h"

namespace combwright {

/// What sugar is given as.
enum class FeedKind { Thick, Thin, Fondant, Dry, Comb, Other };
template <>
struct Choices<FeedKind> {
    static constexpr auto words = std::to_array<std::string_view>(
        {"syrup 2:1", "syrup 1:1", "fondant", "dry sugar", "frames of stores", "other"});
};

/// Feed bought, or counted on the shelf; what was given since comes off.
struct FeedStock {
    static constexpr std::string_view table = "feed_stock";
    Id<FeedStock> id;
    Day on;
    FeedKind kind = FeedKind::Dry;      ///< sugar for syrup is bought dry
    std::optional<Known<Mass>> bought;  ///< sugar in it
    std::optional<Known<Mass>>
        counted;  ///< all there is on the shelf that day, in place of what was reckoned
    std::optional<Mass> pack;  ///< sugar in one bag or pack
    std::string supplier;
    std::string note;
    static const Fields& fields();
};

}  // namespace combwright
