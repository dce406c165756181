// Clean blocks of wax, and wax that leaves them other than into a mould.
#pragma once

#include "core/actions/action.h"
#include "core/model/wax/candle.h"

namespace combwright {

/// A clean block of a batch, one cast of failed pieces and sprues, or one that was bought. Refused
/// with Taken for the name, OutOfRange for a mass that cannot be, BeforeItBegan, Closed where the
/// batch went together with another, and TooMany "mass_g" where more clean wax would have come out
/// than went in.
struct CastBlock {
    static constexpr std::string_view name = "cast-block";
    using Answer = Id<WaxBlock>;
    Day on;
    Name block;
    std::optional<Id<WaxBatch>> batch;  ///< none: bought
    WaxShade shade;
    std::optional<Known<Mass>> mass;
    std::string supplier;
    std::optional<bool> fromCandles;  ///< of failed pieces and sprues
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Wax of a block that was sold, given, traded for foundation, melted again or lost; what is poured
/// stands with its pour. Refused with OtherAction for that, OutOfRange for no mass, BeforeItBegan,
/// TooMany "mass_g" beyond what is left of the block, Missing without a batch to melt it with.
struct UseWax {
    static constexpr std::string_view name = "use-wax";
    using Answer = Id<WaxUse>;
    Day on;
    Id<WaxBlock> block;
    WaxWent went;
    Mass mass;
    std::optional<How> how;             ///< none: weighed
    std::optional<Id<WaxBatch>> batch;  ///< melted again with
    std::optional<Money> price;         ///< of all of it
    std::string buyer;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

}  // namespace combwright
