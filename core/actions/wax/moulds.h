// Moulds and one-way holders, test burns, and the wick on the spool.
#pragma once

#include "core/actions/action.h"
#include "core/model/wax/candle.h"

namespace combwright {

/// Moulds alike, or holders that are poured once and go with the candle. The volume of one cavity
/// as water showed it, its shape and size, or what a candle of it weighs, which stands above both;
/// one of them is needed before wax can be reckoned.
/// Refused with Taken for the name, OutOfRange for no cavity, no volume or no size, Contradiction
/// for a volume beside a size, Missing for a taper without its tip or with nothing that tells a
/// volume, NotAChoice for goods that are no candle.
struct AddMould {
    static constexpr std::string_view name = "add-mould";
    using Answer = Id<Mould>;
    Day on;
    Name mould;
    std::optional<Id<GoodsKind>> kind;
    Count cavities;
    std::optional<Number> volume;
    std::optional<bool> measured;
    std::optional<MouldShape> shape;
    std::optional<Length> diameter;
    std::optional<Length> tip;
    std::optional<Length> height;
    std::optional<bool> oneWay;
    std::string madeOf;
    std::string wick;
    std::optional<Length> wickLength;
    std::optional<Count> cycles;
    std::optional<Number> setHours;
    std::optional<Mass> oneWeighs;  ///< a candle of it, weighed
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// The moulds are gone from that day on. Refused with BeforeItBegan, Closed where they are gone
/// already.
struct RetireMould {
    static constexpr std::string_view name = "retire-mould";
    using Answer = Id<Mould>;
    Day on;
    Id<Mould> mould;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// One candle of a mould burnt to see. Refused with BeforeItBegan, OutOfRange for no hours or more
/// than a thousand, Missing for the wick where the mould has none.
struct TestBurn {
    static constexpr std::string_view name = "test-burn";
    using Answer = Id<BurnTest>;
    Day on;
    Id<Mould> mould;
    std::string wick;                   ///< none: the mould's
    std::optional<Id<WaxBlock>> block;  ///< of which wax
    std::optional<Number> hours;
    std::optional<Known<Mass>> burnt;
    BurnVerdict verdict;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Wick comes into the store. Refused with OutOfRange for none.
struct BuyWick {
    static constexpr std::string_view name = "buy-wick";
    using Answer = Id<WickStock>;
    Day on;
    Name wick;
    Length bought;
    std::string supplier;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// All the wick of a size there is, before that day's pours. None may be there.
struct MeasureWick {
    static constexpr std::string_view name = "measure-wick";
    using Answer = Id<WickStock>;
    Day on;
    Name wick;
    Length counted;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

}  // namespace combwright
