// Kinds of jars, candles and other goods with their prices, the empty jars and lids they take, and
// what stands on the shelf when somebody counts it.
#pragma once

#include "core/actions/action.h"
#include "core/model/honey/going_out.h"

namespace combwright {

/// A new kind of goods. Refused with Taken where there is one of that name; OutOfRange for an empty
/// measure; Contradiction where its honey does not go into the glass however dry it is.
struct AddGoods {
    static constexpr std::string_view name = "add-goods";
    using Answer = Id<GoodsKind>;
    Day on;
    Name kind;
    std::optional<GoodsWhat> what;  ///< none: a jar of honey
    std::optional<Mass> net;
    std::optional<Count> brim;
    std::optional<Mass> empty;
    std::string lid;
    std::optional<Money> price;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// What one costs from now on, "454 g 8.50, skep 6", and the sign behind prices. What was sold
/// before keeps its price. Refused with WrongType, NotFound and Ambiguous under "prices",
/// NothingToDo where all is so already, OtherAction for a sign where the season has no name yet.
struct SetPrices {
    static constexpr std::string_view name = "set-prices";
    using Answer = std::vector<Id<GoodsKind>>;
    Day on;
    std::string prices;
    std::string currency;  ///< "€", "£", "$"
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Empty jars of a kind, or lids, come into the store. Refused with Missing or Contradiction where
/// not one of the two is named, OutOfRange for none.
struct BuyPacking {
    static constexpr std::string_view name = "buy-packing";
    using Answer = Id<PackingStock>;
    Day on;
    std::optional<Id<GoodsKind>> kind;
    std::string lid;
    Count bought;
    std::string supplier;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// All empty jars of a kind, or lids, there are; a second count on the same day replaces the first.
/// Refused as BuyPacking, but none may be counted.
struct CountPacking {
    static constexpr std::string_view name = "count-packing";
    using Answer = Id<PackingStock>;
    Day on;
    std::optional<Id<GoodsKind>> kind;
    std::string lid;
    Count counted;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// All full jars or finished candles of a kind on the shelf, or those of one filling; a second
/// count on the same day replaces the first. Refused with NotFound for a filling without jars of
/// the kind, OutOfRange where more went out after it by what is written down already.
struct CountGoods {
    static constexpr std::string_view name = "count-goods";
    using Answer = Id<GoodsCount>;
    Day on;
    Id<GoodsKind> kind;
    std::optional<Id<Bottling>> bottling;
    Count count;
    std::string reason;  ///< where it differs
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// What may stand in a kind of goods, whoever writes it. Refused as AddGoods.
Result<void> demandGoods(const Read& file, const GoodsKind& kind);
/// Either jars or lids, either bought or counted. Refused as BuyPacking.
Result<void> demandPacking(const PackingStock& stock);
/// A filling that has jars of the kind, on a day it was there, or none. Refused with NotFound or
/// BeforeItBegan, field "bottling".
Result<void> demandFillingOf(const Read& file, Id<GoodsKind> kind,
                             const std::optional<Id<Bottling>>& bottling, Day on);
/// As the file now stands never more went out than there was, on that day or any other. Refused
/// with TooMany under `field`; "most" is what could have gone of `wanted`.
Result<void> demandShelfHolds(const Read& file, const GoodsKind& kind, std::int64_t wanted,
                              const char* field);

/// The most of anything counted here.
inline constexpr std::int64_t mostCounted = 1'000'000;

}  // namespace combwright
