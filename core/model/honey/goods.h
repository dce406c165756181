// What is filled, cast, sold and given, by kind, and the empty jars and lids it takes.
#pragma once

#include "core/model/describe.h"

namespace combwright {

struct Bottling;

/// What is handed over the table.
enum class GoodsWhat { Jar, Candle, Comb, Wax, Other };
template <>
struct Choices<GoodsWhat> {
    static constexpr auto words =
        std::to_array<std::string_view>({"jar of honey", "candle", "comb honey", "wax", "other"});
};

/// A kind of thing filled, cast, sold and given: "454 g jar", "skep candle".
struct GoodsKind {
    static constexpr std::string_view table = "goods_kind";
    Id<GoodsKind> id;
    Name name;  ///< unique in the file
    GoodsWhat what = GoodsWhat::Jar;
    std::optional<Mass> net;     ///< honey or wax in one
    std::optional<Count> brim;   ///< what its glass holds, full to the brim, ml
    std::optional<Mass> empty;   ///< glass and lid
    std::string lid;             ///< which lid fits it
    std::optional<Money> price;  ///< of one
    std::string note;
    static const Fields& fields();
};

/// Empty jars of a kind, or lids, bought, or counted on the shelf; what was filled since comes off.
struct PackingStock {
    static constexpr std::string_view table = "packing_stock";
    Id<PackingStock> id;
    Day on;
    std::optional<Id<GoodsKind>> kind;  ///< either jars
    std::string lid;                    ///< or lids
    std::optional<Count> bought;
    std::optional<Count> counted;  ///< all there are that day, in place of what was reckoned
    std::string supplier;
    std::string note;
    std::optional<Number> daySoFar;  ///< of a count: that day's change written down before it
    static const Fields& fields();
};

/// Full jars or finished candles counted on the shelf, in place of what was reckoned. What is
/// written down of the same day after the count came after it.
struct GoodsCount {
    static constexpr std::string_view table = "goods_count";
    Id<GoodsCount> id;
    Id<GoodsKind> kind;
    std::optional<Id<Bottling>> bottling;  ///< none: all of the kind, whichever filling
    Day on;
    Count count;
    std::string why;                 ///< where it differs
    std::optional<Number> daySoFar;  ///< that day's change written down before it was counted
    static const Fields& fields();
};

}  // namespace combwright
