#include "core/trade/wax/candle_mass.h"

#include <cmath>
#include <numbers>

#include "core/trade/honey/published_table.h"

namespace combwright {
namespace {

constexpr double mm3PerMl = 1000;
constexpr double longestCandleMm = 10'000;
constexpr double largestCandleMl = 1e9;
constexpr double solidWaxLow = 0.95, solidWaxHigh = 0.975;
constexpr double liquidWaxLow = 0.82, liquidWaxHigh = 0.86;

Result<void> refuseCandleMeasure(double value, const char* field, double most,
                                 bool zeroToo = false) {
    if (value < 0) return Refusal{Code::Negative, field};
    if (!(value > 0 || (zeroToo && value == 0)) || value > most)
        return outOfRange(field, value, 0, most);
    return {};
}

}  // namespace

double cylinderMl(double diameterMm, double lengthMm) {
    return std::numbers::pi / 4 * diameterMm * diameterMm * lengthMm / mm3PerMl;
}

double taperMl(double diameterMm, double tipMm, double lengthMm) {
    return std::numbers::pi * lengthMm / 12 *
           (diameterMm * diameterMm + diameterMm * tipMm + tipMm * tipMm) / mm3PerMl;
}

double panMl(double lengthMm, double widthMm, double heightMm) {
    return lengthMm * widthMm * heightMm / mm3PerMl;
}

Result<CandleMass> candleMass(double volumeMl, const WaxDensities& wax, Working* working) {
    if (auto good = refuseCandleMeasure(volumeMl, "volume_ml", largestCandleMl); !good)
        return good.error();
    if (!(wax.solidGPerMl >= solidWaxLow && wax.solidGPerMl <= solidWaxHigh))
        return outOfRange("solid_g_per_ml", wax.solidGPerMl, solidWaxLow, solidWaxHigh);
    if (!(wax.liquidGPerMl >= liquidWaxLow && wax.liquidGPerMl <= liquidWaxHigh))
        return outOfRange("liquid_g_per_ml", wax.liquidGPerMl, liquidWaxLow, liquidWaxHigh);
    CandleMass candle;
    candle.volumeMl = volumeMl;
    candle.massG = volumeMl * wax.solidGPerMl;
    candle.firstPourG = volumeMl * wax.liquidGPerMl;
    candle.topUpG = candle.massG - candle.firstPourG;
    note(working, "candle_volume_ml", volumeMl, "ml");
    note(working, "candle_g", candle.massG, "g", "ml · 0.96",
         "printed in 3 sources (0.958 to 0.970 at 15 °C)");
    note(working, "first_pour_g", candle.firstPourG, "g", "ml · 0.85", "from memory");
    note(working, "top_up_g", candle.topUpG, "g", "candle − first pour");
    return candle;
}

Result<CandleMass> weighedCandle(double massG, const WaxDensities& wax, Working* working) {
    if (auto good = refuseCandleMeasure(massG, "mass_g", largestCandleMl); !good)
        return good.error();
    auto candle = candleMass(massG / wax.solidGPerMl, wax);
    if (!candle) return candle.error();
    candle->massG = massG;
    candle->topUpG = massG - candle->firstPourG;
    note(working, "candle_g", massG, "g", "one on the scales");
    note(working, "candle_volume_ml", candle->volumeMl, "ml", "candle ÷ 0.96",
         "printed in 3 sources (0.958 to 0.970 at 15 °C)");
    note(working, "first_pour_g", candle->firstPourG, "g", "ml · 0.85", "from memory");
    note(working, "top_up_g", candle->topUpG, "g", "candle − first pour");
    return candle;
}

Result<CandleMass> cylinderCandle(double diameterMm, double lengthMm, const WaxDensities& wax,
                                  Working* working) {
    if (auto good = refuseCandleMeasure(diameterMm, "diameter_mm", longestCandleMm); !good)
        return good.error();
    if (auto good = refuseCandleMeasure(lengthMm, "length_mm", longestCandleMm); !good)
        return good.error();
    return candleMass(cylinderMl(diameterMm, lengthMm), wax, working);
}

Result<CandleMass> taperCandle(double diameterMm, double tipMm, double lengthMm,
                               const WaxDensities& wax, Working* working) {
    if (auto good = refuseCandleMeasure(diameterMm, "diameter_mm", longestCandleMm); !good)
        return good.error();
    if (auto good = refuseCandleMeasure(tipMm, "tip_mm", longestCandleMm, true); !good)
        return good.error();
    if (tipMm > diameterMm)
        return Refusal{Code::Contradiction, "tip_mm", {{"other", "diameter_mm"}}};
    if (auto good = refuseCandleMeasure(lengthMm, "length_mm", longestCandleMm); !good)
        return good.error();
    return candleMass(taperMl(diameterMm, tipMm, lengthMm), wax, working);
}

Result<double> candleBatchG(std::int64_t pieces, double candleG, double spareShare,
                            Working* working) {
    if (pieces < 0) return Refusal{Code::Negative, "pieces"};
    if (candleG < 0) return Refusal{Code::Negative, "mass_g"};
    if (!(candleG > 0) || !std::isfinite(candleG))
        return Refusal{Code::OutOfRange, "mass_g", {{"low", "0"}}};
    if (!(spareShare >= 0 && spareShare <= 1)) return outOfRange("spare_share", spareShare, 0, 1);
    const double grams = static_cast<double>(pieces) * candleG * (1 + spareShare);
    note(working, "candle_g", candleG, "g");
    note(working, "candle_pieces", static_cast<double>(pieces), "");
    note(working, "candle_spare_share", spareShare, "", {},
         "common practice, no source; 0.05 to 0.10");
    note(working, "candle_batch_g", grams, "g", "pieces · candle · (1 + spare)");
    return grams;
}

}  // namespace combwright
