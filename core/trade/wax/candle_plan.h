// How many candles by the day they are wanted. Four things are short in turn: wax, cavities and the
// evenings to fill them, and wick. Said plainly for each kind, so that the keeper sees in September
// what December would have shown.
#pragma once

#include <cstddef>
#include <cstdint>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/support/result.h"
#include "core/support/working.h"

namespace combwright {

/// Blocks of one shade.
struct ShadeOfWax {
    std::string shade;
    double massG = 0;
};

/// What there is to pour with.
struct CandleStock {
    /// In the order they are used up where a kind names no shades; a shade may come twice. Where
    /// `mixed`, shades are poured together and mean nothing.
    std::vector<ShadeOfWax> wax;
    bool mixed = false;
    double lossShare = 0;                 ///< pot film and re-melt, of the block wax; 0 to below 1
    std::map<std::string, double> wickM;  ///< by size, metres; a size not named is none
};

/// A kind of candle and how many are wanted of it, in the keeper's order.
struct CandleWanted {
    std::string what;
    std::int64_t count = 0;
    double massG = 0;  ///< of one, above 0
    std::string wick;  ///< its size
    double wickM = 0;  ///< of one, metres
    std::int64_t cavities = 0;
    std::int64_t cyclesPerEvening = 1;
    /// Shades it may be of, the first preferred; none named: any, in the order of the stock. A
    /// shade there is no block of is none in stock.
    std::vector<std::string> shades;
    /// Cycles of each evening in turn where they differ from the usual; 0: not on that one. An
    /// evening it does not reach has the usual ones.
    std::vector<std::int64_t> cyclesOn = {};
};

/// How often a cavity of it is filled on so many evenings.
std::int64_t fillsOn(const CandleWanted& want, std::int64_t evenings);

/// What of each kind comes of which wax; a piece is never of two shades.
struct CandlesOfShade {
    std::size_t want = 0;  ///< index into the kinds wanted
    std::string shade;     ///< empty where shades are mixed
    std::int64_t count = 0;
    bool operator==(const CandlesOfShade&) const = default;
};

struct CandleNeeds {
    struct Kind {
        std::optional<std::int64_t> eveningsNeeded;  ///< nothing: no cavity to pour it in
        std::int64_t possible = 0;                   ///< by cavities and evenings, at most `count`
        std::int64_t missing = 0;                    ///< count − possible
        std::optional<std::int64_t> cavitiesToAdd;   ///< nothing: no evening to pour on
    };
    double waxNetG = 0;     ///< in the candles wanted
    double waxNeededG = 0;  ///< block wax for them: net ÷ (1 − loss)
    double waxShortG = 0;   ///< needed less stock, never below 0
    std::vector<Kind> kinds;
    std::map<std::string, double> wickLeftM;  ///< once all are made; negative is what is missing
    /// What the wax allows in the order wanted, going on to the next kind; time and wick not asked.
    std::vector<CandlesOfShade> fromStock;  ///< counts above 0
    std::vector<ShadeOfWax> waxLeft;        ///< block wax not used, each shade once; mixed: one
};

/// Everything about the plan that needs no choice. Reckoned in whole micrograms and micrometres, so
/// wax that is just enough is enough. Refused: OutOfRange "loss_share", "evenings" (0 to 10,000);
/// Negative or OutOfRange "blocks[N].mass_g" (to 10⁹ in all), "wick_m", and of "want[N]." "count"
/// (to 10⁶), "mass_g" (above 0, to 10⁶), "wick_m" (to 1,000), "cavities" (to 10,000),
/// "cycles_per_evening" (1 to 100), "cycles_on[N]" (0 to 100); Duplicate "want[N].what",
/// "want[N].shades".
Result<CandleNeeds> candleNeeds(const CandleStock& stock, std::int64_t evenings,
                                std::span<const CandleWanted> wants, Working* working = nullptr);

}  // namespace combwright
