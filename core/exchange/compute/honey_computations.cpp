#include <cstddef>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "core/exchange/compute/computations.h"
#include "core/exchange/compute/object_reader.h"
#include "core/trade/honey/blend.h"
#include "core/trade/honey/colour_class.h"
#include "core/trade/honey/density.h"
#include "core/trade/honey/drying.h"
#include "core/trade/honey/ferment_risk.h"
#include "core/trade/honey/heat_damage.h"
#include "core/trade/honey/moisture.h"
#include "core/trade/honey/settling.h"
#include "core/trade/honey/viscosity.h"

namespace combwright {
namespace {

// A million tonnes of honey, a hundred million years: none is more, and sums of them stay numbers.
constexpr Range honeyMass{0, 1e12};
constexpr Range honeyHours{0, 1e12};
constexpr Range honeyPercent{0, 100};

QString honeyText(std::string_view text) {
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

QJsonValue percentOrNull(const std::optional<double>& number) {
    return number ? QJsonValue(*number) : QJsonValue();
}

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

Result<QJsonObject> computeSettling(const QJsonObject& input) {
    ObjectReader in(input);
    const double water = in.number("water_percent");
    const double temperatureC = in.number("temperature_c");
    const double depthMm = in.number("depth_mm", {0});
    const double bubbleUm = in.number("bubble_um");
    if (auto good = in.finish(); !good) return good.error();

    const auto hours = settlingHours(water, temperatureC, depthMm, bubbleUm);
    if (!hours) {
        Refusal refusal = hours.error();
        if (refusal.field == "diameter_um") refusal.field = "bubble_um";
        return refusal;
    }
    return QJsonObject{{"hours", *hours}};
}

Result<QJsonObject> computeFermentRisk(const QJsonObject& input) {
    ObjectReader in(input);
    const double water = in.number("water_percent", honeyPercent);
    const auto yeast = in.optionalNumber("yeast_per_g", {0});
    if (auto good = in.finish(); !good) return good.error();

    const auto verdict = fermentRisk(water, yeast);
    if (!verdict) return verdict.error();
    QJsonObject answer{{"risk", honeyText(key(verdict->risk))}};
    if (verdict->limitYeastPerG) answer.insert("limit_yeast_per_g", *verdict->limitYeastPerG);
    return answer;
}

Result<QJsonObject> computeHeatDamage(const QJsonObject& input) {
    ObjectReader in(input);
    const double temperatureC = in.number("temperature_c");
    const double hours = in.number("hours", honeyHours);
    if (auto good = in.finish(); !good) return good.error();

    const auto damage = heatDamage({temperatureC, hours});
    if (!damage) return damage.error();
    return QJsonObject{{"hmf_gain_mg_per_kg", percentOrNull(damage->hmfGain)},
                       {"diastase_left_share", damage->diastaseLeftShare},
                       {"invertase_left_share", damage->invertaseLeftShare}};
}

Result<QJsonObject> computeBlend(const QJsonObject& input) {
    ObjectReader in(input);
    BlendWish wish;
    wish.targetPercent = in.number("target_percent", honeyPercent);
    std::vector<BlendBucket> buckets;
    std::vector<std::string> ids;
    std::set<std::string> met;
    for (ObjectReader& each : in.objects("buckets")) {
        ids.push_back(each.text("id"));
        if (!met.insert(ids.back()).second)
            each.refuse(Code::Duplicate, "id", {{"value", ids.back()}});
        BlendBucket bucket;
        bucket.massG = each.number("mass_g", honeyMass);
        bucket.waterPercent = each.number("water_percent", honeyPercent);
        buckets.push_back(bucket);
    }
    if (auto good = in.finish(); !good) return good.error();

    const auto blend = bestBlend(buckets, wish);
    if (!blend) return blend.error();
    QJsonArray use;
    for (std::size_t i = 0; i < ids.size(); ++i)
        if (blend->use[i] > Mass())
            use.append(QJsonObject{{"id", QString::fromStdString(ids[i])},
                                   {"mass_g", static_cast<qint64>(blend->use[i].grams())}});
    return QJsonObject{{"use", use},
                       {"mass_g", static_cast<qint64>(blend->mass.grams())},
                       {"water_percent", percentOrNull(blend->waterPercent)}};
}

Result<QJsonObject> computeDrying(const QJsonObject& input) {
    ObjectReader in(input);
    const double mass_g = in.number("mass_g", honeyMass);
    const double water = in.number("water_percent", honeyPercent);
    const double target = in.number("target_percent", honeyPercent);
    if (auto good = in.finish(); !good) return good.error();

    const auto off = waterOff(mass_g, water, target);
    if (!off) return off.error();
    return QJsonObject{{"water_off_g", *off}};
}

Result<QJsonObject> computeColourClass(const QJsonObject& input) {
    ObjectReader in(input);
    const double pfundMm = in.number("pfund_mm", {0});
    if (auto good = in.finish(); !good) return good.error();

    const auto name = colourClass(pfundMm);
    if (!name) return name.error();
    return QJsonObject{{"class", honeyText(*name)}};
}

}  // namespace

std::vector<Computation> honeyComputations() {
    return {{"honey-moisture", &computeHoneyMoisture},
            {"honey-density", &computeHoneyDensity},
            {"honey-viscosity", &computeHoneyViscosity},
            {"settling", &computeSettling},
            {"ferment-risk", &computeFermentRisk},
            {"heat-damage", &computeHeatDamage},
            {"blend", &computeBlend},
            {"drying", &computeDrying},
            {"colour-class", &computeColourClass}};
}

}  // namespace combwright
