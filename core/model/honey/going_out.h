// What left the shelf, and the fair table. No bookkeeping beyond counts, prices and one cash box.
#pragma once

#include "core/model/honey/bottling.h"

namespace combwright {

/// How something went out of the door.
enum class OutHow { Sold, Given, Kept, Broken, CameBack };
template <>
struct Choices<OutHow> {
    static constexpr auto words =
        std::to_array<std::string_view>({"sold", "given", "kept", "broken", "came back"});
};

/// Jars, candles or honey in bulk that left the shelf. Gifts are written too, or jars never
/// balance.
struct GoingOut {
    static constexpr std::string_view table = "going_out";
    Id<GoingOut> id;
    Day on;
    OutHow how = OutHow::Sold;
    std::optional<Id<GoodsKind>> kind;     ///< none: honey in bulk
    std::optional<Id<Bottling>> bottling;  ///< none: of no known filling
    std::optional<Id<Bucket>> bucket;      ///< bulk: out of a bucket
    std::optional<Id<Lot>> lot;            ///< or out of a lot
    std::optional<Count> count;
    std::optional<Known<Mass>> mass;  ///< bulk
    std::optional<Money> each;        ///< of one; bulk: of all
    std::string place;
    std::string buyer;   ///< in trade, or if wished
    std::string reason;  ///< why although it is held back
    std::string note;
    static const Fields& fields();
};

/// A day behind a table: what was packed, and at night what came home.
struct Fair {
    static constexpr std::string_view table = "fair";
    Id<Fair> id;
    Name name;
    Day on;
    std::string place;
    std::optional<Money> change;  ///< in the cash box in the morning
    std::optional<Money> cash;    ///< in the cash box at night
    std::optional<Day> closed;
    std::string note;
    static const Fields& fields();
};

/// One kind of goods in a fair's box. Sold is what was packed and neither came home nor broke nor
/// was given.
struct FairLine {
    static constexpr std::string_view table = "fair_line";
    Id<FairLine> id;
    Id<Fair> fair;
    Id<GoodsKind> kind;
    std::optional<Id<Bottling>> bottling;
    Count packed;
    std::optional<Money> each;  ///< asked for one
    std::optional<Count> home;  ///< none: not counted yet
    std::optional<Count> broken;
    std::optional<Count> given;
    static const Fields& fields();
};

}  // namespace combwright
