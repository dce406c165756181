// Candles: moulds, test burns, pours, what is wanted by when, the evenings there are and the wick.
#pragma once

#include "core/model/honey/going_out.h"
#include "core/model/wax/block.h"

namespace combwright {

/// What a cavity looks like, where its size tells its volume.
enum class MouldShape { Cylinder, Taper, Other };
template <>
struct Choices<MouldShape> {
    static constexpr auto words = std::to_array<std::string_view>({"cylinder", "taper", "other"});
};

/// Moulds alike, or holders that are poured once and go with the candle: bark, tin, glass.
struct Mould {
    static constexpr std::string_view table = "mould";
    Id<Mould> id;
    Name name;                          ///< unique in the file
    std::optional<Id<GoodsKind>> kind;  ///< the candle that comes out
    Count cavities;                     ///< in all, of those alike
    std::optional<Number> volume;       ///< of one cavity; none: by its size
    std::optional<bool> measured;       ///< the volume, with water
    std::optional<MouldShape> shape;
    std::optional<Length> diameter;  ///< at the foot
    std::optional<Length> tip;       ///< across the tip of a taper
    std::optional<Length> height;
    std::optional<bool> oneWay;        ///< poured once, goes with the candle
    std::string madeOf;                ///< "bark", "tin"
    std::string wick;                  ///< the size used
    std::optional<Length> wickLength;  ///< for one
    std::optional<Count> cycles;       ///< pours an evening
    std::optional<Number> setHours;    ///< the keeper's own
    Day since;
    std::optional<Day> gone;
    std::string note;
    std::optional<Mass> oneWeighs;  ///< a candle of it on the scales: above volume and size
    static const Fields& fields();
};

/// How a test burn went.
enum class BurnVerdict { Well, Tunnels, Drowns, Smokes, NotSafe };
template <>
struct Choices<BurnVerdict> {
    static constexpr auto words =
        std::to_array<std::string_view>({"burns well", "tunnels", "drowns", "smokes", "not safe"});
};

/// One candle of a mould burnt to see. The keeper's own tests stand above every table.
struct BurnTest {
    static constexpr std::string_view table = "burn_test";
    Id<BurnTest> id;
    Id<Mould> mould;
    Day on;
    Name wick;
    std::optional<Id<WaxBlock>> block;  ///< of which wax
    std::optional<Number> hours;
    std::optional<Known<Mass>> burnt;
    BurnVerdict verdict = BurnVerdict::Well;
    std::string note;
    static const Fields& fields();
};

/// One filling of moulds: what came out well, what failed, and how far it is finished.
struct Pour {
    static constexpr std::string_view table = "pour";
    Id<Pour> id;
    Id<Mould> mould;
    Id<GoodsKind> kind;
    Day on;
    std::optional<Instant> at;
    Count good;
    std::optional<Count> failed;             ///< go back as wax
    std::optional<Count> seconds;            ///< kept or given, not sold
    std::optional<Known<Mass>> returned;     ///< failed pieces and sprues, back to the pot
    std::optional<Temperature> temperature;  ///< of the wax as poured
    std::string wick;
    std::optional<Length> wickUsed;  ///< off the spool, in all
    std::optional<Day> released;     ///< out of the mould
    std::optional<Day> trimmed;      ///< foot trimmed to the holder, wick cut
    std::optional<Day> labelled;     ///< paired, with its label: on the shelf
    std::string reason;              ///< why although nobody burnt one to test
    std::string note;
    static const Fields& fields();
};

/// So many candles of a kind wanted by a day.
struct CandleWish {
    static constexpr std::string_view table = "candle_wish";
    Id<CandleWish> id;
    Id<GoodsKind> kind;
    Count count;
    Day on;  ///< written down
    Day by;
    std::string whatFor;  ///< "fair", "gifts", a shop
    std::optional<Id<Fair>> fair;
    std::optional<Count> order;  ///< 1 is wanted most
    std::string shades;          ///< "light, mid": in that order; none: any
    std::optional<Day> dropped;
    std::string note;
    static const Fields& fields();
};

/// An evening with both hands free for wax.
struct FreeEvening {
    static constexpr std::string_view table = "free_evening";
    Id<FreeEvening> id;
    Day on;
    std::optional<Count> cycles;    ///< pours that evening, in place of the mould's
    std::optional<bool> finishing;  ///< kept for trimming, wicks and labels
    std::optional<bool> free;       ///< 0: taken back
    std::string note;
    static const Fields& fields();
};

/// Wick bought, or measured on the spool; what was poured since comes off.
struct WickStock {
    static constexpr std::string_view table = "wick_stock";
    Id<WickStock> id;
    Day on;
    Name wick;
    std::optional<Length> bought;
    std::optional<Length> counted;  ///< all there is that day
    std::string supplier;
    std::string note;
    static const Fields& fields();
};

}  // namespace combwright
