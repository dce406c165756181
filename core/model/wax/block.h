// Clean blocks of wax and where each gram of them went.
#pragma once

#include "core/model/wax/batch.h"

namespace combwright {

struct Pour;

/// A clean block, cast from a batch or bought.
struct WaxBlock {
    static constexpr std::string_view table = "wax_block";
    Id<WaxBlock> id;
    Name name;                          ///< unique in the file
    std::optional<Id<WaxBatch>> batch;  ///< none: bought, or of before the file
    Day on;
    WaxShade shade = WaxShade::Light;
    std::optional<Known<Mass>> mass;
    std::string supplier;
    std::string note;
    std::optional<bool> fromCandles;  ///< of failed pieces and sprues: no new wax
    static const Fields& fields();
};

/// Where wax of a block went.
enum class WaxWent { Poured, Sold, Given, Traded, MeltedAgain, Lost };
template <>
struct Choices<WaxWent> {
    static constexpr auto words = std::to_array<std::string_view>(
        {"poured", "sold", "given", "traded for foundation", "melted again", "lost"});
};

/// So much of a block that went somewhere.
struct WaxUse {
    static constexpr std::string_view table = "wax_use";
    Id<WaxUse> id;
    Id<WaxBlock> block;
    Day on;
    WaxWent went = WaxWent::Poured;
    std::optional<Id<Pour>> pour;       ///< into candles
    std::optional<Id<WaxBatch>> batch;  ///< melted again with
    Mass mass;
    How how = How::Weighed;
    std::optional<Money> price;  ///< of all of it
    std::string buyer;           ///< in trade, or if wished
    std::string note;
    static const Fields& fields();
};

}  // namespace combwright
