// Out of the door: sold, given, kept, broken, and what came back. Gifts are written too, or jars
// never balance.
#pragma once

#include "core/actions/action.h"
#include "core/model/honey/going_out.h"

namespace combwright {

/// Goods in one line, "12 454 g, 3 skep" (goods_line.h), or honey in bulk out of a bucket or lot by
/// its mass. A filling said for the line counts for each kind in it that has jars of it; where it
/// is not said and only one has any left, it is that one. Sold without a price said, one costs what
/// stands in the price list, which stays written on it. `price` is of one; in bulk of all; of what
/// came back what was paid back. Refused with Missing or Contradiction where not one of goods and
/// vessel is named, TooMany where more would have gone than was there on that day or later, or come
/// back than ever went, HeldBack where it is held and no reason is given.
struct GoOut {
    static constexpr std::string_view name = "go-out";
    using Answer = std::vector<Id<GoingOut>>;
    Day on;
    std::optional<OutHow> how;  ///< none: sold
    std::string goods;
    std::optional<Id<Bottling>> bottling;
    std::optional<Id<Bucket>> bucket;
    std::optional<Id<Lot>> lot;
    std::optional<Known<Mass>> mass;
    std::optional<Money> price;
    std::string place;
    std::string buyer;
    std::string reason;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// What may stand in a line, whoever writes it: either goods by count or bulk by mass, and no price
/// where nothing was paid. Refused as GoOut, by the fields of the record.
Result<void> demandOut(const Read& file, const GoingOut& out);
/// As the file now stands everything was there when it went, and no more came back than went.
/// Refused with TooMany under `field`.
Result<void> demandWasThere(const Read& file, const GoingOut& out, const char* field);

/// The filling goods are of: the one said, else the only one with any left that day.
std::optional<Id<Bottling>> fillingOf(const Read& file, const GoodsKind& kind,
                                      const std::optional<Id<Bottling>>& said, Day on);
/// "454 g jar of L27-4-2" or the kind alone is held back and no reason is given: refused with
/// HeldBack under `field`. Where the filling is not known, any with jars left counts.
Result<void> demandGoodsFree(const Read& file, const GoodsKind& kind,
                             const std::optional<Id<Bottling>>& bottling, Day on,
                             const std::string& reason, const char* field);

/// A candle in a holder that stays with it, bark or tin, is sold only after one was burnt to test
/// and burnt well: a holder that burns is a fire. Refused with HeldBack under `field`, naming
/// candle and mould.
Result<void> demandBurnTested(const Read& file, const GoodsKind& kind, Day on, const char* field);

}  // namespace combwright
