#include "core/trade/wax/wax_yield.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "core/trade/honey/published_table.h"
#include "core/trade/learning/learn_rate.h"
#include "core/trade/learning/own_rate.h"

namespace combwright {
namespace {

// resources/trade/wax_yields.csv, which says where each is from.
struct WaxYieldRow {
    WaxMaterial material;
    Between share;
};
constexpr WaxYieldRow waxYieldRows[] = {
    {WaxMaterial::CappingsUndrained, {0.09, 0.13, 0.17}},
    {WaxMaterial::CappingsDrained, {0.40, 0.45, 0.50}},
    {WaxMaterial::CappingsWashed, {0.90, 0.94, 0.98}},
    {WaxMaterial::WhiteComb, {0.80, 0.875, 0.95}},
    {WaxMaterial::OldCombSolar, {0.25, 0.325, 0.40}},
    {WaxMaterial::OldCombPressed, {0.35, 0.45, 0.55}},
    {WaxMaterial::Slumgum, {0.10, 0.20, 0.30}},
};

constexpr double leastBatchDoubtShare = 0.01;
constexpr Between waxShareOfHoney{0.01, 0.015, 0.02};
constexpr double honeyShareInFresh = 0.1;
constexpr Between propolisPerColonyG{50, 75, 100};

std::string waxBatchField(std::size_t index, const char* key) {
    return "batches[" + std::to_string(index) + "]." + key;
}

Result<void> refuseWaxMass(double massG, const char* field) {
    if (massG < 0) return Refusal{Code::Negative, field};
    if (!std::isfinite(massG)) return Refusal{Code::OutOfRange, field};
    return {};
}

/// Half the width of a range, when every value in it is as likely as the next, is √3 deviations.
double evenSd(const Between& range) { return (range.high - range.low) / 2 / std::numbers::sqrt3; }

Between evenRange(double likely, double sd) {
    return {std::clamp(likely - std::numbers::sqrt3 * sd, 0.0, 1.0), likely,
            std::clamp(likely + std::numbers::sqrt3 * sd, 0.0, 1.0)};
}

}  // namespace

std::string_view key(WaxMaterial material) {
    switch (material) {
        case WaxMaterial::CappingsUndrained:
            return "cappings undrained";
        case WaxMaterial::CappingsDrained:
            return "cappings drained";
        case WaxMaterial::CappingsWashed:
            return "cappings washed";
        case WaxMaterial::WhiteComb:
            return "white comb";
        case WaxMaterial::OldCombSolar:
            return "old comb solar";
        case WaxMaterial::OldCombPressed:
            return "old comb pressed";
        case WaxMaterial::Slumgum:
            return "slumgum";
        case WaxMaterial::Scrapings:
            return "scrapings";
        case WaxMaterial::Mixed:
            return "mixed";
    }
    return {};
}

std::optional<Between> publishedWaxYield(WaxMaterial material) {
    for (const WaxYieldRow& row : waxYieldRows)
        if (row.material == material) return row.share;
    return std::nullopt;
}

Result<std::optional<OwnWaxYield>> ownWaxYield(std::span<const WaxWeighed> batches) {
    OwnWaxYield own;
    for (std::size_t i = 0; i < batches.size(); ++i) {
        const WaxWeighed& each = batches[i];
        if (each.rawG < 0) return Refusal{Code::Negative, waxBatchField(i, "raw_g")};
        if (!(each.rawG > 0) || !std::isfinite(each.rawG))
            return Refusal{Code::OutOfRange, waxBatchField(i, "raw_g"), {{"low", "0"}}};
        if (!(each.cleanG >= 0)) return Refusal{Code::Negative, waxBatchField(i, "clean_g")};
        if (each.cleanG > each.rawG)
            return Refusal{Code::Contradiction, waxBatchField(i, "clean_g"), {{"other", "raw_g"}}};
        own.rawG += each.rawG;
        own.cleanG += each.cleanG;
    }
    own.n = batches.size();
    if (own.n == 0) return std::optional<OwnWaxYield>();
    own.share = own.cleanG / own.rawG;
    if (own.n > 1) {
        // Weighted by mass like the mean itself, with the small-number correction n ÷ (n − 1).
        double square = 0;
        for (const WaxWeighed& each : batches) {
            const double off = each.cleanG / each.rawG - own.share;
            square += each.rawG / own.rawG * off * off;
        }
        const auto n = static_cast<double>(own.n);
        own.spread = std::sqrt(square * n / (n - 1));
    }
    return std::optional(own);
}

Result<std::optional<WaxYield>> waxYield(WaxMaterial material,
                                         std::span<const WaxWeighed> batches) {
    const auto own = ownWaxYield(batches);
    if (!own) return own.error();
    const auto published = publishedWaxYield(material);
    if (!*own) {
        if (!published) return std::optional<WaxYield>();
        return std::optional(WaxYield{*published, 0, true});
    }
    const OwnWaxYield& seen = **own;
    const auto n = static_cast<double>(seen.n);
    const double least = std::max(leastBatchDoubtShare * seen.share, 1e-6);
    if (!published) {
        const Between alone{seen.share, seen.share, seen.share};
        if (!seen.spread) return std::optional(WaxYield{alone, seen.n, false});
        const double one = std::max(*seen.spread, least);
        return std::optional(
            WaxYield{evenRange(seen.share, std::hypot(one, one / std::sqrt(n))), seen.n, false});
    }
    const double publishedSd = evenSd(*published);
    const double one = seen.n >= runsThatShowSpread ? std::max(*seen.spread, least) : publishedSd;
    // So many batches of the mean by mass weigh as the batches themselves.
    const auto learned =
        learnRate(published->likely, publishedSd, std::vector<double>(seen.n, seen.share), one);
    if (!learned) return learned.error();
    return std::optional(
        WaxYield{evenRange(learned->value, std::hypot(one, learned->sd)), seen.n, true});
}

Result<Between> cleanWaxG(double rawG, const WaxYield& yield, Working* working) {
    if (auto good = refuseWaxMass(rawG, "raw_g"); !good) return good.error();
    const Between wax{rawG * yield.share.low, rawG * yield.share.likely, rawG * yield.share.high};
    note(working, "wax_raw_g", rawG, "g");
    note(working, "wax_yield_share", yield.share.likely, "",
         yield.ownBatches == 0 ? "middle of the range" : "own batches by mass, and the range");
    note(working, "wax_clean_g", wax.likely, "g", "raw · share");
    return wax;
}

Result<std::optional<Between>> honeyInCappingsG(double rawG, WaxMaterial material) {
    if (auto good = refuseWaxMass(rawG, "raw_g"); !good) return good.error();
    switch (material) {
        case WaxMaterial::CappingsUndrained: {
            // A tenth of the crop with 2, 1.5 and 1 % of it in wax.
            const auto share = [](double wax) {
                return honeyShareInFresh / (honeyShareInFresh + wax);
            };
            return std::optional(Between{rawG * share(waxShareOfHoney.high),
                                         rawG * share(waxShareOfHoney.likely),
                                         rawG * share(waxShareOfHoney.low)});
        }
        case WaxMaterial::CappingsDrained:
            return std::optional(Between{rawG * 0.5, rawG * 0.55, rawG * 0.6});
        case WaxMaterial::CappingsWashed:
            return std::optional(Between{});
        default:
            return std::optional<Between>();
    }
}

Result<CappingsOfCrop> cappingsOfCrop(double honeyG, std::optional<double> waxShare,
                                      Working* working) {
    if (auto good = refuseWaxMass(honeyG, "honey_g"); !good) return good.error();
    if (waxShare && !(*waxShare >= 0 && *waxShare <= 1))
        return outOfRange("wax_share", *waxShare, 0, 1);
    const double likely = waxShare.value_or(waxShareOfHoney.likely);
    CappingsOfCrop cappings;
    // The keeper's own may lie outside the published range and stays what it is.
    cappings.waxG = {honeyG * std::min(likely, waxShareOfHoney.low), honeyG * likely,
                     honeyG * std::max(likely, waxShareOfHoney.high)};
    cappings.honeyG = honeyG * honeyShareInFresh;
    cappings.freshG = cappings.honeyG + cappings.waxG.likely;
    cappings.drainedG = 2 * cappings.waxG.likely;
    note(working, "honey", honeyG, "g");
    note(working, "cappings_wax_g", cappings.waxG.likely, "g", "honey · 0.015",
         "printed in 2 sources (0.01 to 0.02)");
    note(working, "cappings_honey_g", cappings.honeyG, "g", "honey · 0.10",
         "printed in 1 source (10 % or more, before draining)");
    return cappings;
}

std::string_view key(WaxAgainstHoney verdict) {
    switch (verdict) {
        case WaxAgainstHoney::Less:
            return "less";
        case WaxAgainstHoney::AsPublished:
            return "as published";
        case WaxAgainstHoney::More:
            return "more";
    }
    return {};
}

Result<std::optional<WaxPerHoney>> waxPer100Honey(double waxG, double honeyG, Working* working) {
    if (auto good = refuseWaxMass(waxG, "wax_g"); !good) return good.error();
    if (auto good = refuseWaxMass(honeyG, "honey_g"); !good) return good.error();
    if (!(honeyG > 0)) return std::optional<WaxPerHoney>();
    WaxPerHoney answer;
    answer.per100 = waxG / honeyG * 100;
    if (answer.per100 < waxShareOfHoney.low * 100) answer.verdict = WaxAgainstHoney::Less;
    if (answer.per100 > waxShareOfHoney.high * 100) answer.verdict = WaxAgainstHoney::More;
    note(working, "wax_clean_g", waxG, "g");
    note(working, "honey", honeyG, "g");
    note(working, "wax_per_100_honey", answer.per100, "kg/100 kg", "wax ÷ honey · 100",
         "1 to 2 printed in 2 sources");
    return std::optional(answer);
}

Result<Between> propolisG(std::int64_t colonies, Working* working) {
    if (colonies < 0) return Refusal{Code::Negative, "colonies"};
    const auto count = static_cast<double>(colonies);
    const Between grams{count * propolisPerColonyG.low, count * propolisPerColonyG.likely,
                        count * propolisPerColonyG.high};
    note(working, "propolis_low_g", grams.low, "g", "colonies · 50 g", "printed in 1 source");
    note(working, "propolis_high_g", grams.high, "g", "colonies · 100 g", "printed in 1 source");
    return grams;
}

}  // namespace combwright
