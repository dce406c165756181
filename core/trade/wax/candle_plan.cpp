#include "core/trade/wax/candle_plan.h"

#include <algorithm>
#include <cmath>

#include "core/trade/wax/candle_amounts.h"

namespace combwright {
namespace {

constexpr double noWaxLeftG = 1e-6;  // below a microgram it is a rounding

std::int64_t fillsNeeded(std::int64_t count, std::int64_t aFill) {
    return (count + aFill - 1) / aFill;
}

/// Evenings until all are poured, first those whose cycles were said.
std::int64_t eveningsFor(const CandleWanted& want) {
    std::int64_t open = want.count;
    std::int64_t evenings = 0;
    for (const std::int64_t cycles : want.cyclesOn) {
        if (open <= 0) return evenings;
        open -= want.cavities * cycles;
        ++evenings;
    }
    if (open <= 0) return evenings;
    return evenings + fillsNeeded(open, want.cavities * want.cyclesPerEvening);
}

CandleNeeds::Kind needsOfKind(const CandleWanted& want, std::int64_t byMoulds,
                              std::int64_t evenings) {
    CandleNeeds::Kind kind;
    kind.possible = std::min(want.count, byMoulds);
    kind.missing = want.count - kind.possible;
    const std::int64_t aCavity = fillsOn(want, evenings);
    if (want.count == 0 || want.cavities > 0) kind.eveningsNeeded = eveningsFor(want);
    if (kind.missing == 0)
        kind.cavitiesToAdd = 0;
    else if (aCavity > 0)
        kind.cavitiesToAdd = fillsNeeded(want.count, aCavity) - want.cavities;
    return kind;
}

/// Fills in what the wax gives in the order wanted, and what is left of the blocks.
void pourInOrder(const CandleAmounts& amounts, std::span<const CandleWanted> wants,
                 double lossShare, CandleNeeds& needs) {
    std::vector<std::int64_t> left = amounts.wax;
    std::vector<double> pouredG(left.size(), 0);
    for (std::size_t i = 0; i < amounts.kinds.size(); ++i) {
        const CandleAmounts::Kind& kind = amounts.kinds[i];
        std::int64_t open = kind.count;
        for (const std::size_t shade : kind.shades) {
            const std::int64_t pieces = std::min(open, left[shade] / kind.mass);
            if (pieces == 0) continue;
            open -= pieces;
            left[shade] -= pieces * kind.mass;
            pouredG[shade] += static_cast<double>(pieces) * wants[i].massG;
            needs.fromStock.push_back({i, amounts.shades[shade], pieces});
        }
    }
    for (std::size_t s = 0; s < left.size(); ++s) {
        const double leftG = amounts.blockG[s] - pouredG[s] / (1 - lossShare);
        needs.waxLeft.push_back({amounts.shades[s], leftG < noWaxLeftG ? 0 : leftG});
    }
}

}  // namespace

std::int64_t fillsOn(const CandleWanted& want, std::int64_t evenings) {
    std::int64_t fills = 0;
    std::int64_t left = evenings;
    for (const std::int64_t cycles : want.cyclesOn) {
        if (left == 0) return fills;
        fills += cycles;
        --left;
    }
    return fills + left * want.cyclesPerEvening;
}

Result<CandleNeeds> candleNeeds(const CandleStock& stock, std::int64_t evenings,
                                std::span<const CandleWanted> wants, Working* working) {
    const auto amounts = candleAmounts(stock, evenings, wants);
    if (!amounts) return amounts.error();
    CandleNeeds needs;
    needs.wickLeftM = stock.wickM;
    for (std::size_t i = 0; i < wants.size(); ++i) {
        const CandleWanted& want = wants[i];
        needs.waxNetG += static_cast<double>(want.count) * want.massG;
        needs.wickLeftM[want.wick] -= static_cast<double>(want.count) * want.wickM;
        needs.kinds.push_back(needsOfKind(want, amounts->kinds[i].byMoulds, evenings));
    }
    double stockG = 0;
    for (const ShadeOfWax& block : stock.wax) stockG += block.massG;
    needs.waxNeededG = needs.waxNetG / (1 - stock.lossShare);
    const double shortG = needs.waxNeededG - stockG;
    needs.waxShortG = shortG < noWaxLeftG ? 0 : shortG;
    pourInOrder(*amounts, wants, stock.lossShare, needs);
    note(working, "wax_net_g", needs.waxNetG, "g", "Σ count · candle");
    note(working, "candle_loss_share", stock.lossShare, "");
    note(working, "wax_needed_g", needs.waxNeededG, "g", "net ÷ (1 − loss)");
    note(working, "wax_stock_g", stockG, "g");
    note(working, "wax_short_g", needs.waxShortG, "g", "needed − stock, not below 0");
    return needs;
}

}  // namespace combwright
