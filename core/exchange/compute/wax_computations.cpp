#include <optional>
#include <string>
#include <vector>

#include "core/catalogue/catalogue.h"
#include "core/exchange/compute/computations.h"
#include "core/exchange/compute/object_reader.h"
#include "core/exchange/or_null.h"
#include "core/trade/storeroom/comb_wax.h"
#include "core/trade/wax/candle_time.h"
#include "core/trade/wax/wax_balance.h"
#include "core/trade/wax/wax_heat.h"
#include "core/trade/wax/wax_yield.h"
#include "core/trade/wax/wick.h"

namespace combwright {
namespace {

constexpr Range waxColonies{0, 1e6};

QString waxText(std::string_view text) {
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

/// A range as three keys: "low_" before, and "high_" before, what the likely one is called.
void insertBetween(QJsonObject& answer, const std::string& key, const Between& range) {
    answer.insert(waxText("low_" + key), range.low);
    answer.insert(waxText(key), range.likely);
    answer.insert(waxText("high_" + key), range.high);
}

std::vector<WaxWeighed> weighedBatchesOf(ObjectReader& in) {
    std::vector<WaxWeighed> batches;
    if (!in.has("batches")) {
        in.raw("batches");
        return batches;
    }
    for (ObjectReader& each : in.objects("batches")) {
        WaxWeighed batch;
        batch.rawG = each.mass("raw_g");
        batch.cleanG = each.mass("clean_g");
        batches.push_back(batch);
    }
    return batches;
}

Result<QJsonObject> computeWaxYield(const QJsonObject& input) {
    ObjectReader in(input);
    std::vector<std::string> names;
    for (const WaxMaterial each : allWaxMaterials) names.emplace_back(key(each));
    const std::string name = in.choice("material", names);
    const double rawG = in.mass("raw_g");
    const std::vector<WaxWeighed> batches = weighedBatchesOf(in);
    if (auto good = in.finish(); !good) return good.error();

    WaxMaterial material = WaxMaterial::Mixed;
    for (const WaxMaterial each : allWaxMaterials)
        if (key(each) == name) material = each;
    const auto yield = waxYield(material, batches);
    if (!yield) return yield.error();
    const auto own = ownWaxYield(batches);
    if (!own) return own.error();
    const auto honey = honeyInCappingsG(rawG, material);
    if (!honey) return honey.error();
    QJsonObject answer;
    if (*yield) {
        const auto clean = cleanWaxG(rawG, **yield);
        if (!clean) return clean.error();
        insertBetween(answer, "clean_g", *clean);
        insertBetween(answer, "yield_share", (*yield)->share);
    } else {
        // Nothing is published and nothing was weighed.
        answer.insert("clean_g", QJsonValue());
        answer.insert("yield_share", QJsonValue());
    }
    if (*honey) insertBetween(answer, "honey_g", **honey);
    if (*own)
        answer.insert("own", QJsonObject{{"batches", static_cast<qint64>((*own)->n)},
                                         {"raw_g", (*own)->rawG},
                                         {"clean_g", (*own)->cleanG},
                                         {"yield_share", (*own)->share},
                                         {"spread_share", orNull((*own)->spread)}});
    return answer;
}

Result<QJsonObject> computeWaxOfCrop(const QJsonObject& input) {
    ObjectReader in(input);
    const double honeyG = in.mass("honey_g");
    const auto waxShare = in.optionalShare("wax_share");
    if (auto good = in.finish(); !good) return good.error();

    const auto crop = cappingsOfCrop(honeyG, waxShare);
    if (!crop) return crop.error();
    QJsonObject answer{{"cappings_honey_g", crop->honeyG},
                       {"fresh_cappings_g", crop->freshG},
                       {"drained_cappings_g", crop->drainedG}};
    insertBetween(answer, "wax_g", crop->waxG);
    insertBetween(answer, "honey_eaten_g", honeySparedGrams(crop->waxG.likely));
    return answer;
}

Result<QJsonObject> computeWaxPerHoney(const QJsonObject& input) {
    ObjectReader in(input);
    const double waxG = in.mass("wax_g");
    const double honeyG = in.mass("honey_g");
    if (auto good = in.finish(); !good) return good.error();

    const auto answer = waxPer100Honey(waxG, honeyG);
    if (!answer) return answer.error();
    if (!*answer) return QJsonObject{{"wax_per_100", QJsonValue()}, {"verdict", QJsonValue()}};
    return QJsonObject{{"wax_per_100", (*answer)->per100},
                       {"verdict", waxText(key((*answer)->verdict))}};
}

Result<QJsonObject> computeCombWax(const QJsonObject& input) {
    ObjectReader in(input);
    const std::string id = in.text("frame");
    const std::int64_t frames = in.count("frames", {0, 1e6});
    const PublishedFrame* frame = findPublishedFrame(id);
    if (!frame) in.refuse(Code::NotFound, "frame", {{"name", id}});
    if (auto good = in.finish(); !good) return good.error();
    if (!frame->combAreaDm2) return Refusal{Code::UnknownSize, "frame", {{"name", id}}};
    const double waxG = static_cast<double>(frames) * waxInCombGrams(*frame->combAreaDm2);
    QJsonObject answer{{"wax_g", waxG}};
    insertBetween(answer, "honey_eaten_g", honeySparedGrams(waxG));
    return answer;
}

Result<QJsonObject> computeWick(const QJsonObject& input) {
    ObjectReader in(input);
    const double diameterMm = in.number("diameter_mm");
    const auto wick = in.optionalText("wick");
    if (auto good = in.finish(); !good) return good.error();

    const auto guess = wickGuess(diameterMm);
    if (!guess) return guess.error();
    QJsonObject answer{{"thinnest", waxText(guess->thinnest)},
                       {"thickest", waxText(guess->thickest)},
                       {"or_thicker", guess->orThicker}};
    if (!wick) return answer;
    const auto verdict = wickAgainst(*guess, *wick);
    answer.insert("verdict", verdict ? QJsonValue(waxText(key(*verdict))) : QJsonValue());
    return answer;
}

Result<QJsonObject> computeCandleTime(const QJsonObject& input) {
    ObjectReader in(input);
    const double diameterMm = in.number("diameter_mm");
    const auto massG = in.optionalMass("mass_g");
    if (auto good = in.finish(); !good) return good.error();

    const auto size = candleSize(diameterMm);
    if (!size) return size.error();
    const auto rate = burnGPerHour(diameterMm);
    if (!rate) return rate.error();
    const auto set = setHours(diameterMm);
    if (!set) return set.error();
    QJsonObject answer{{"size", waxText(key(*size))}};
    insertBetween(answer, "set_hours", *set);
    insertBetween(answer, "burn_g_per_h", *rate);
    if (!massG) return answer;
    const auto hours = burnHours(*massG, diameterMm);
    if (!hours) return hours.error();
    insertBetween(answer, "burn_hours", *hours);
    return answer;
}

Result<QJsonObject> computeWaxHeat(const QJsonObject& input) {
    ObjectReader in(input);
    const double temperatureC = in.number("temperature_c");
    if (auto good = in.finish(); !good) return good.error();

    const auto heat = waxHeat(temperatureC);
    if (!heat) return heat.error();
    return QJsonObject{{"verdict", waxText(key(*heat))}, {"alarm", waxAlarm(*heat)}};
}

Result<QJsonObject> computeMeltEnergy(const QJsonObject& input) {
    ObjectReader in(input);
    const double massG = in.mass("mass_g");
    const double fromC = in.number("from_c");
    const double toC = in.number("to_c");
    const auto waterG = in.optionalMass("water_g");
    if (auto good = in.finish(); !good) return good.error();

    const auto wax = meltKj(massG, fromC, toC);
    if (!wax) return wax.error();
    QJsonObject answer;
    insertBetween(answer, "kj", *wax);
    insertBetween(answer, "kwh",
                  {wax->low / kjPerKwh, wax->likely / kjPerKwh, wax->high / kjPerKwh});
    if (!waterG) return answer;
    const auto bath = bathKj(*waterG, fromC, toC);
    if (!bath) return bath.error();
    answer.insert("bath_kj", *bath);
    return answer;
}

Result<QJsonObject> computeWaxRendered(const QJsonObject& input) {
    ObjectReader in(input);
    WaxRendered batch;
    batch.rawG = in.mass("raw_g");
    batch.cleanG = in.mass("clean_g");
    batch.honeyG = in.optionalMass("honey_g").value_or(0);
    batch.slumgumG = in.optionalMass("slumgum_g").value_or(0);
    if (auto good = in.finish(); !good) return good.error();

    const auto balance = renderedBalance(batch);
    if (!balance) return balance.error();
    return QJsonObject{{"lost_g", balance->lostG}, {"yield_share", balance->yield}};
}

Result<QJsonObject> computeWaxBalance(const QJsonObject& input) {
    ObjectReader in(input);
    WaxMoved moved;
    moved.openingG = in.mass("opening_g");
    moved.castG = in.mass("cast_g");
    moved.broughtG = in.optionalMass("brought_g").value_or(0);
    moved.returnedG = in.optionalMass("returned_g").value_or(0);
    moved.pouredG = in.mass("poured_g");
    moved.givenG = in.optionalMass("given_g").value_or(0);
    moved.lostG = in.optionalMass("lost_g").value_or(0);
    moved.countedG = in.optionalMass("counted_g");
    if (auto good = in.finish(); !good) return good.error();

    const auto balance = waxBalance(moved);
    if (!balance) {
        Refusal refusal = balance.error();
        // Out is no key of the input: what was poured is what most likely is wrong.
        if (refusal.field == "out_g")
            return Refusal{Code::Contradiction, "poured_g", {{"other", "cast_g"}}};
        return refusal;
    }
    QJsonObject answer{
        {"in_g", balance->inG}, {"out_g", balance->outG}, {"in_stock_g", balance->inStockG}};
    if (balance->missingG) answer.insert("missing_g", *balance->missingG);
    return answer;
}

Result<QJsonObject> computePropolis(const QJsonObject& input) {
    ObjectReader in(input);
    const std::int64_t colonies = in.count("colonies", waxColonies);
    if (auto good = in.finish(); !good) return good.error();

    const auto grams = propolisG(colonies);
    if (!grams) return grams.error();
    QJsonObject answer;
    insertBetween(answer, "propolis_g", *grams);
    return answer;
}

}  // namespace

std::vector<Computation> waxComputations() {
    return {{"wax-yield", computeWaxYield},
            {"wax-of-crop", computeWaxOfCrop},
            {"wax-per-honey", computeWaxPerHoney},
            {"comb-wax", computeCombWax},
            {"wick", computeWick},
            {"candle-time", computeCandleTime},
            {"wax-heat", computeWaxHeat},
            {"melt-energy", computeMeltEnergy},
            {"wax-rendered", computeWaxRendered},
            {"wax-balance", computeWaxBalance},
            {"propolis", computePropolis}};
}

}  // namespace combwright
