#include "core/exchange/compute/computations.h"
#include "core/exchange/compute/object_reader.h"
#include "core/trade/honey/density.h"
#include "core/trade/honey/moisture.h"
#include "core/trade/honey/viscosity.h"

namespace combwright {
namespace {

Result<QJsonObject> computeHoneyMoisture(const QJsonObject& input) {
    ObjectReader in(input);
    const auto index = in.optionalNumber("refractive_index");
    const auto brix = in.optionalNumber("brix");
    const double temperatureC = in.number("temperature_c");
    const bool hasIndex = in.has("refractive_index");
    if (hasIndex && in.has("brix"))
        in.refuse(Code::Contradiction, "brix", {{"other", "refractive_index"}});
    if (!hasIndex && !in.has("brix"))
        in.refuse(Code::Missing, "refractive_index", {{"other", "brix"}});
    if (auto good = in.finish(); !good) return good.error();

    const auto moisture =
        index ? moistureFromIndex(*index, temperatureC) : moistureFromBrix(*brix, temperatureC);
    if (!moisture) return moisture.error();
    return QJsonObject{{"water_percent", moisture->waterPercent},
                       {"refractive_index_20c", moisture->index20}};
}

Result<QJsonObject> computeHoneyDensity(const QJsonObject& input) {
    ObjectReader in(input);
    const double water = in.number("water_percent");
    const double temperatureC = in.number("temperature_c");
    if (auto good = in.finish(); !good) return good.error();

    const auto density = honeyDensity(water, temperatureC);
    if (!density) return density.error();
    return QJsonObject{{"kg_per_l", *density}};
}

Result<QJsonObject> computeHoneyViscosity(const QJsonObject& input) {
    ObjectReader in(input);
    const double water = in.number("water_percent");
    const double temperatureC = in.number("temperature_c");
    if (auto good = in.finish(); !good) return good.error();

    const auto viscosity = honeyViscosity(water, temperatureC);
    if (!viscosity) return viscosity.error();
    return QJsonObject{{"pa_s", *viscosity}};
}

}  // namespace

std::vector<Computation> honeyComputations() {
    return {{"honey-moisture", &computeHoneyMoisture},
            {"honey-density", &computeHoneyDensity},
            {"honey-viscosity", &computeHoneyViscosity}};
}

}  // namespace combwright
