#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/exchange/compute/computations.h"
#include "core/exchange/compute/object_reader.h"
#include "core/exchange/or_null.h"
#include "core/trade/colony/loss.h"
#include "core/trade/colony/mite_forecast.h"
#include "core/trade/colony/mite_rate.h"
#include "core/trade/colony/queen_dates.h"
#include "core/trade/colony/run_out.h"
#include "core/trade/colony/sugar.h"

namespace combwright {
namespace {

// A million tonnes: no gap is larger, and nothing divided by a small ratio runs out of numbers.
constexpr Range colonyMass{0, 1e12};

Result<QJsonObject> computeMiteRate(const QJsonObject& input) {
    ObjectReader in(input);
    const std::int64_t mites = in.count("mites");
    const std::int64_t bees = in.count("bees");
    const auto confidence = in.optionalShare("confidence");
    if (auto good = in.finish(); !good) return good.error();

    const auto rate = miteRate(mites, bees, confidence.value_or(0.95));
    if (!rate) return rate.error();
    return QJsonObject{{"per_100", rate->per100}, {"low", rate->low}, {"high", rate->high}};
}

Result<QJsonObject> computeMiteForecast(const QJsonObject& input) {
    ObjectReader in(input);
    const double per100 = in.number("per_100", {0, 100});
    const double threshold = in.number("threshold_per_100", {0, 100});
    const double doubling = in.number("doubling_days", {0, mostDoublingDays});
    const Day day = in.day("day");
    if (auto good = in.finish(); !good) return good.error();

    const auto reaches = miteForecast(per100, threshold, doubling, day);
    if (!reaches) return reaches.error();
    return QJsonObject{{"reaches_on", orNull(*reaches)}};
}

Result<QJsonObject> computeRunOut(const QJsonObject& input) {
    ObjectReader in(input);
    const double stores_g = in.number("stores_g", colonyMass);
    const double floor_g = in.number("floor_g", colonyMass);
    const double use_g = in.number("use_g_per_day", colonyMass);
    const Day day = in.day("day");
    if (auto good = in.finish(); !good) return good.error();

    const auto out = runOut(stores_g, floor_g, use_g, day);
    if (!out) return out.error();
    return QJsonObject{{"runs_out_on", orNull(*out)}};
}

Result<QJsonObject> computeSugar(const QJsonObject& input) {
    ObjectReader in(input);
    const double gap_g = in.number("gap_g", colonyMass);
    const double storesPerSugar = in.number("stores_per_sugar", {0});
    const double sugarToWater = in.number("sugar_to_water", {0});
    if (auto good = in.finish(); !good) return good.error();

    const auto need = sugarFor(gap_g, storesPerSugar, sugarToWater);
    if (!need) return need.error();
    return QJsonObject{{"sugar_g", need->sugar_g}, {"water_ml", need->water_ml}};
}

QueenEvent queenEventOf(ObjectReader& in) {
    static const std::vector<std::pair<std::string, QueenEvent>> events{
        {"cell open", QueenEvent::CellOpen},
        {"cell sealed", QueenEvent::CellSealed},
        {"queen lost", QueenEvent::QueenLost},
        {"larva moved", QueenEvent::LarvaMoved}};
    std::vector<std::string> words;
    for (const auto& each : events) words.push_back(each.first);
    const std::string word = in.choice("event", words);
    for (const auto& [each, event] : events)
        if (each == word) return event;
    return QueenEvent::CellOpen;
}

Result<QJsonObject> computeQueenDates(const QJsonObject& input) {
    constexpr Range patienceDays{0, 365};
    ObjectReader in(input);
    const QueenEvent event = queenEventOf(in);
    const Day day = in.day("day");
    const auto notSeenOn = in.optionalDay("not_seen_on");
    QueenPatience patience;
    auto read = [&](std::string_view key, int& wait) {
        if (const auto given = in.optionalCount(key, patienceDays)) wait = static_cast<int>(*given);
    };
    read("look_after_days", patience.look);
    read("test_frame_after_days", patience.testFrame);
    read("act_after_days", patience.act);
    if (auto good = in.finish(); !good) return good.error();

    const auto dates = queenDates(event, day, notSeenOn, patience);
    if (!dates) return dates.error();
    return QJsonObject{{"emerges_from", orNull(dates->emergesFrom)},
                       {"emerges_to", orNull(dates->emergesTo)},
                       {"do_not_open_until", orNull(dates->doNotOpenUntil)},
                       {"look_from", orNull(dates->lookFrom)},
                       {"test_frame_from", orNull(dates->testFrameFrom)},
                       {"act_by", orNull(dates->actBy)}};
}

Result<QJsonObject> computeLoss(const QJsonObject& input) {
    ObjectReader in(input);
    std::vector<YardLoss> yards;
    for (ObjectReader& each : in.objects("yards")) {
        YardLoss yard;
        yard.dead = each.count("dead");
        yard.atRisk = each.count("at_risk");
        yards.push_back(yard);
    }
    if (auto good = in.finish(); !good) return good.error();

    const auto loss = colonyLoss(yards);
    if (!loss) return loss.error();
    return QJsonObject{{"total_share", loss->totalShare},
                       {"total_low_share", loss->total.low},
                       {"total_high_share", loss->total.high},
                       {"mean_share", loss->meanShare}};
}

}  // namespace

std::vector<Computation> colonyComputations() {
    return {{"mite-rate", &computeMiteRate},     {"mite-forecast", &computeMiteForecast},
            {"run-out", &computeRunOut},         {"sugar", &computeSugar},
            {"queen-dates", &computeQueenDates}, {"loss", &computeLoss}};
}

}  // namespace combwright
