#include "core/trade/wax/wax_balance.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace combwright {
namespace {

// A few roundings of a double, relative; far below a milligram in a tonne.
constexpr double waxSumMargin = 1e-12;

Result<void> refuseWaxMoved(double massG, const char* field) {
    if (massG < 0) return Refusal{Code::Negative, field};
    if (!std::isfinite(massG)) return Refusal{Code::OutOfRange, field};
    return {};
}

bool moreThan(double outG, double inG) { return outG > inG + waxSumMargin * std::max(1.0, inG); }

}  // namespace

Result<RenderedBalance> renderedBalance(const WaxRendered& batch, Working* working) {
    for (const auto& [massG, field] : {std::pair{batch.rawG, "raw_g"},
                                       {batch.cleanG, "clean_g"},
                                       {batch.honeyG, "honey_g"},
                                       {batch.slumgumG, "slumgum_g"}})
        if (auto good = refuseWaxMoved(massG, field); !good) return good.error();
    if (!(batch.rawG > 0)) return Refusal{Code::OutOfRange, "raw_g", {{"low", "0"}}};
    const double outG = batch.cleanG + batch.honeyG + batch.slumgumG;
    if (moreThan(outG, batch.rawG))
        return Refusal{Code::Contradiction, "clean_g", {{"other", "raw_g"}}};
    const RenderedBalance balance{std::max(0.0, batch.rawG - outG), batch.cleanG / batch.rawG};
    note(working, "wax_raw_g", batch.rawG, "g");
    note(working, "wax_clean_g", batch.cleanG, "g");
    if (batch.honeyG > 0) note(working, "wax_honey_g", batch.honeyG, "g", "into a bucket");
    if (batch.slumgumG > 0) note(working, "wax_slumgum_g", batch.slumgumG, "g", "foot scraped");
    note(working, "wax_lost_g", balance.lostG, "g", "raw − clean − honey − slumgum");
    return balance;
}

Result<double> waxStepLossG(double inG, double outG) {
    if (auto good = refuseWaxMoved(inG, "in_g"); !good) return good.error();
    if (auto good = refuseWaxMoved(outG, "out_g"); !good) return good.error();
    if (moreThan(outG, inG)) return Refusal{Code::Contradiction, "out_g", {{"other", "in_g"}}};
    return std::max(0.0, inG - outG);
}

Result<WaxYearBalance> waxBalance(const WaxMoved& moved, Working* working) {
    for (const auto& [massG, field] : {std::pair{moved.openingG, "opening_g"},
                                       {moved.castG, "cast_g"},
                                       {moved.broughtG, "brought_g"},
                                       {moved.returnedG, "returned_g"},
                                       {moved.pouredG, "poured_g"},
                                       {moved.givenG, "given_g"},
                                       {moved.lostG, "lost_g"},
                                       {moved.countedG.value_or(0), "counted_g"}})
        if (auto good = refuseWaxMoved(massG, field); !good) return good.error();
    WaxYearBalance balance;
    balance.inG = moved.openingG + moved.castG + moved.broughtG + moved.returnedG;
    balance.outG = moved.pouredG + moved.givenG + moved.lostG;
    if (moreThan(balance.outG, balance.inG))
        return Refusal{Code::Contradiction, "out_g", {{"other", "in_g"}}};
    balance.inStockG = std::max(0.0, balance.inG - balance.outG);
    if (moved.countedG) balance.missingG = balance.inStockG - *moved.countedG;
    note(working, "wax_in_g", balance.inG, "g", "opening + cast + brought + returned");
    note(working, "wax_out_g", balance.outG, "g", "poured + given + lost");
    note(working, "wax_stock_g", balance.inStockG, "g", "in − out");
    if (balance.missingG)
        note(working, "wax_missing_g", *balance.missingG, "g", "in stock − weighed");
    return balance;
}

}  // namespace combwright
