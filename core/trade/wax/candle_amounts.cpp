#include "core/trade/wax/candle_amounts.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "core/trade/honey/published_table.h"

namespace combwright {
namespace {

constexpr double perUnit = 1e6;  // micrograms of a gram, micrometres of a metre
// What a sum of products of doubles may be off, in micrograms; far below what any scale shows.
constexpr double unitMargin = 0.01;

constexpr double mostBlockG = 1e9;
constexpr double mostCandleG = 1e6;
constexpr double mostWickOfOneM = 1000;
constexpr double mostWickM = 1e7;
constexpr std::int64_t mostCandles = 1'000'000;
constexpr std::int64_t mostCavities = 10'000;
constexpr std::int64_t mostCandleCycles = 100;
constexpr std::int64_t mostCandleEvenings = 10'000;

std::int64_t unitsHad(double amount) {
    return static_cast<std::int64_t>(std::floor(amount * perUnit + unitMargin));
}
std::int64_t unitsTaken(double amount) {
    return static_cast<std::int64_t>(std::ceil(amount * perUnit - unitMargin));
}

std::string listField(const char* list, std::size_t index, const char* key) {
    return std::string(list) + "[" + std::to_string(index) + "]." + key;
}

Result<void> refuseAmount(double value, std::string field, double low, double high,
                          bool lowToo = true) {
    if (value < 0) return Refusal{Code::Negative, std::move(field)};
    if (!(value > low || (lowToo && value == low)) || value > high)
        return outOfRange(std::move(field), value, low, high);
    return {};
}

Result<void> refuseWanted(const CandleWanted& want, std::size_t i) {
    const auto whole = [](std::int64_t count) { return static_cast<double>(count); };
    if (auto good =
            refuseAmount(whole(want.count), listField("want", i, "count"), 0, whole(mostCandles));
        !good)
        return good;
    if (auto good = refuseAmount(want.massG, listField("want", i, "mass_g"), 0, mostCandleG, false);
        !good)
        return good;
    if (auto good = refuseAmount(want.wickM, listField("want", i, "wick_m"), 0, mostWickOfOneM);
        !good)
        return good;
    if (auto good = refuseAmount(whole(want.cavities), listField("want", i, "cavities"), 0,
                                 whole(mostCavities));
        !good)
        return good;
    if (auto good =
            refuseAmount(whole(want.cyclesPerEvening), listField("want", i, "cycles_per_evening"),
                         1, whole(mostCandleCycles));
        !good)
        return good;
    for (std::size_t n = 0; n < want.cyclesOn.size(); ++n)
        if (auto good =
                refuseAmount(whole(want.cyclesOn[n]),
                             listField("want", i, "cycles_on") + "[" + std::to_string(n) + "]", 0,
                             whole(mostCandleCycles));
            !good)
            return good;
    return {};
}

std::size_t placeOf(const std::string& name, std::vector<std::string>& names) {
    const auto found = std::find(names.begin(), names.end(), name);
    if (found != names.end()) return static_cast<std::size_t>(found - names.begin());
    names.push_back(name);
    return names.size() - 1;
}

Result<void> addWax(const CandleStock& stock, CandleAmounts& amounts) {
    double allG = 0;
    if (stock.mixed) {
        amounts.shades.emplace_back();
        amounts.blockG.push_back(0);
    }
    for (std::size_t i = 0; i < stock.wax.size(); ++i) {
        const ShadeOfWax& block = stock.wax[i];
        if (auto good = refuseAmount(block.massG, listField("blocks", i, "mass_g"), 0, mostBlockG);
            !good)
            return good;
        allG += block.massG;
        if (allG > mostBlockG)
            return outOfRange(listField("blocks", i, "mass_g"), allG, 0, mostBlockG);
        const std::size_t at = stock.mixed ? 0 : placeOf(block.shade, amounts.shades);
        amounts.blockG.resize(amounts.shades.size(), 0);
        amounts.blockG[at] += block.massG;
    }
    for (const double massG : amounts.blockG)
        amounts.wax.push_back(unitsHad(massG * (1 - stock.lossShare)));
    return {};
}

Result<void> addShades(const CandleWanted& want, std::size_t index, bool mixed,
                       const CandleAmounts& amounts, CandleAmounts::Kind& kind) {
    if (mixed || want.shades.empty()) {
        for (std::size_t s = 0; s < amounts.shades.size(); ++s) kind.shades.push_back(s);
        return {};
    }
    std::set<std::string> named;
    for (const std::string& shade : want.shades) {
        if (!named.insert(shade).second)
            return Refusal{Code::Duplicate, listField("want", index, "shades"), {{"value", shade}}};
        const auto found = std::find(amounts.shades.begin(), amounts.shades.end(), shade);
        if (found != amounts.shades.end())
            kind.shades.push_back(static_cast<std::size_t>(found - amounts.shades.begin()));
    }
    return {};
}

}  // namespace

std::int64_t CandleAmounts::fromWax(const Kind& kind, std::span<const std::int64_t> waxLeft,
                                    std::int64_t most) const {
    std::int64_t pieces = 0;
    for (const std::size_t shade : kind.shades)
        pieces += std::min(most - pieces, waxLeft[shade] / kind.mass);
    return pieces;
}

Result<CandleAmounts> candleAmounts(const CandleStock& stock, std::int64_t evenings,
                                    std::span<const CandleWanted> wants) {
    if (!(stock.lossShare >= 0 && stock.lossShare < 1))
        return outOfRange("loss_share", stock.lossShare, 0, 1);
    if (auto good = refuseAmount(static_cast<double>(evenings), "evenings", 0,
                                 static_cast<double>(mostCandleEvenings));
        !good)
        return good.error();
    CandleAmounts amounts;
    if (auto good = addWax(stock, amounts); !good) return good.error();
    for (const auto& [size, metres] : stock.wickM) {
        if (auto good = refuseAmount(metres, "wick_m", 0, mostWickM); !good) return good.error();
        amounts.wickSizes.push_back(size);
        amounts.wick.push_back(unitsHad(metres));
    }
    std::set<std::string> names;
    for (std::size_t i = 0; i < wants.size(); ++i) {
        const CandleWanted& want = wants[i];
        if (auto good = refuseWanted(want, i); !good) return good.error();
        if (!names.insert(want.what).second)
            return Refusal{Code::Duplicate, listField("want", i, "what"), {{"value", want.what}}};
        CandleAmounts::Kind kind;
        kind.count = want.count;
        kind.mass = std::max<std::int64_t>(1, unitsTaken(want.massG));
        kind.wick = unitsTaken(want.wickM);
        kind.wickSize = placeOf(want.wick, amounts.wickSizes);
        amounts.wick.resize(amounts.wickSizes.size(), 0);
        kind.byMoulds = want.cavities * fillsOn(want, evenings);
        if (auto good = addShades(want, i, stock.mixed, amounts, kind); !good) return good.error();
        amounts.kinds.push_back(std::move(kind));
    }
    return amounts;
}

}  // namespace combwright
