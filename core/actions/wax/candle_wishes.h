// Candles wanted by a day, and the evenings there are to pour them.
#pragma once

#include "core/actions/action.h"
#include "core/model/wax/candle.h"

namespace combwright {

/// So many candles of a kind wanted by a day. `shades` in the order they may be taken, "light,
/// mid"; none: any. Refused with OutOfRange for none, NotAChoice for goods that are no candle or
/// for a word that is no shade, Contradiction for a day before it was written down.
struct WishCandles {
    static constexpr std::string_view name = "wish-candles";
    using Answer = Id<CandleWish>;
    Day on;
    Id<GoodsKind> kind;
    Count count;
    Day by;
    std::string whatFor;
    std::optional<Id<Fair>> fair;
    std::optional<Count> order;
    std::string shades;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Candles that are no longer wanted. Refused with BeforeItBegan, Closed where they are dropped
/// already.
struct DropWish {
    static constexpr std::string_view name = "drop-wish";
    using Answer = Id<CandleWish>;
    Day on;
    Id<CandleWish> wish;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Evenings with both hands free: every such weekday, "mon wed fri", from one day to another, both
/// counted; all days where no weekday is named. With `last_finishing` the last of them is kept for
/// trimming, wicks and labels. Evenings that are written down so already are left. Refused with
/// Contradiction for a span that ends before it begins, OutOfRange for more than a year or no pour,
/// WrongType for a word that is no weekday, NothingToDo.
struct SetEvenings {
    static constexpr std::string_view name = "set-evenings";
    using Answer = std::vector<Id<FreeEvening>>;
    Day on;
    Day from;
    Day to;
    std::string weekdays;
    std::optional<Count> cycles;
    std::optional<bool> lastFinishing;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// One evening: free, taken back, or kept for finishing. Refused with OutOfRange for no pour,
/// Contradiction for one taken back and yet kept for something, NothingToDo.
struct SetEvening {
    static constexpr std::string_view name = "set-evening";
    using Answer = Id<FreeEvening>;
    Day on;
    Day evening;
    std::optional<bool> free;  ///< none: free
    std::optional<Count> cycles;
    std::optional<bool> finishing;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

}  // namespace combwright
