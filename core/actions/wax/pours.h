// Wax poured into moulds, and the candles finished for the shelf.
#pragma once

#include "core/actions/action.h"
#include "core/actions/wax/wax_rules.h"
#include "core/model/wax/candle.h"

namespace combwright {

/// One evening's pours of a mould. `blocks` says what each gave, "L1 900 g, M2 0.4 kg"; behind the
/// last the mass may be left out and is what the pieces need by the mould's volume. Refused with
/// Missing "blocks" for a pour without wax, Missing "volume_ml" where a mass is left out and nobody
/// knows what the mould holds, TooMany "returned_g" where more came back than was poured, WrongType
/// and NotFound for what is said there, TooMany beyond what a block has left or the mould's
/// cavities and `cycles` hold, OutOfRange for no pieces or wax above 100 °C, BeforeItBegan,
/// NotAChoice where nobody knows what candle the mould makes.
struct PourCandles {
    static constexpr std::string_view name = "pour-candles";
    using Answer = Id<Pour>;
    Day on;
    Id<Mould> mould;
    std::optional<Id<GoodsKind>> kind;  ///< none: the mould's
    std::optional<Instant> at;
    Count good;
    std::optional<Count> failed;
    std::optional<Count> seconds;
    std::optional<Count> cycles;  ///< none: the mould's, else one
    std::string blocks;
    std::optional<Known<Mass>> returned;
    std::optional<Temperature> temperature;
    std::string wick;                ///< none: the mould's
    std::optional<Length> wickUsed;  ///< none: the mould's length for each piece
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// A step of the candles of a pour: out of the mould, foot trimmed and wick cut, labelled and on
/// the shelf; a later one stands for those before it. Pieces that broke come off the good ones and
/// go back as wax. Refused with BeforeItBegan, NothingToDo where that is done, TooMany where more
/// broke than were good.
struct FinishCandles {
    static constexpr std::string_view name = "finish-candles";
    using Answer = Id<Pour>;
    Day on;
    Id<Pour> pour;
    CandleWork work;
    std::optional<Count> broke;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

}  // namespace combwright
