#include <cstdint>
#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "core/exchange/compute/computations.h"
#include "core/exchange/compute/object_reader.h"
#include "core/trade/honey/jars.h"
#include "core/trade/honey/share_yield.h"
#include "core/trade/learning/learn_rate.h"
#include "core/trade/plan/pull_choice.h"
#include "core/trade/pull/day_plan.h"

namespace combwright {
namespace {

// Sums of as many as one likes of these stay exact in whole milligrams; a thousand tonnes is no
// box.
constexpr Range pullMass{0, 1e9};
constexpr Range pullChange{-1e9, 1e9};
// No box holds more, and sums of them stay far from overflow.
constexpr Range pullBoxFrames{0, 1000};
constexpr Range planLotFrames{0, 1'000'000};
// The slots an extractor may have, as for extractor-balance.
constexpr Range planSlotRange{2, 72};

QString pullText(std::string_view text) {
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

qint64 pullJsonCount(std::int64_t count) { return static_cast<qint64>(count); }

/// A mark that must be its own among those seen.
std::string ownMarkOf(ObjectReader& in, std::set<std::string>& seen) {
    std::string mark = in.text("mark");
    if (!seen.insert(mark).second) in.refuse(Code::Duplicate, "mark", {{"value", mark}});
    return mark;
}

PullBox pullBoxOf(ObjectReader& in, std::set<std::string>& seen) {
    PullBox box;
    box.mark = ownMarkOf(in, seen);
    box.honeyG = in.optionalNumber("honey_g", pullMass);
    box.frames = in.count("frames", pullBoxFrames);
    in.text("kind");  // what it is loaded with, not whether it is taken
    box.cappedShare = in.optionalShare("capped_share");
    box.waterPercent = in.optionalNumber("water_percent", {0, 100});
    box.grossG = in.optionalNumber("gross_g", pullMass);
    box.brood = in.optionalFlag("brood").value_or(false);
    box.held = in.optionalFlag("held").value_or(false);
    return box;
}

std::vector<PullHive> pullHivesOf(ObjectReader& in) {
    std::vector<PullHive> hives;
    std::set<std::string> hiveMarks;
    std::set<std::string> boxMarks;
    for (ObjectReader& each : in.objects("hives")) {
        PullHive hive;
        hive.mark = ownMarkOf(each, hiveMarks);
        hive.nestStoresG = each.optionalNumber("nest_stores_g", pullMass);
        hive.expectedChangeG = each.optionalNumber("expected_change_g", pullChange).value_or(0);
        for (ObjectReader& box : each.objects("boxes"))
            hive.boxes.push_back(pullBoxOf(box, boxMarks));
        hives.push_back(std::move(hive));
    }
    return hives;
}

PullLimits pullLimitsOf(ObjectReader in) {
    PullLimits limits;
    limits.winterNeedG = in.mass("winter_need_g");
    limits.feedUpToG = in.optionalMass("feed_up_to_g").value_or(0);
    limits.minCappedShare = in.optionalShare("min_capped_share");
    limits.maxWaterPercent = in.optionalNumber("max_water_percent", {0, 100});
    limits.frames = in.optionalCount("frames");
    limits.carryG = in.optionalMass("carry_g");
    limits.boxes = in.optionalCount("boxes");
    limits.clearerBoards = in.optionalCount("clearer_boards");
    return limits;
}

QJsonObject pullAnswer(const std::vector<PullHive>& hives, const PullChoice& choice) {
    const auto boxMark = [&](PullChoice::Place place) {
        return pullText(hives[place.hive].boxes[place.box].mark);
    };
    QJsonArray take;
    for (const auto& each : choice.take) take.append(boxMark(each));
    QJsonArray leave;
    for (const auto& each : choice.leave)
        leave.append(QJsonObject{{"box", boxMark(each.place)}, {"why", pullText(key(each.why))}});
    QJsonArray lookFirst;
    for (const std::size_t each : choice.lookFirst) lookFirst.append(pullText(hives[each].mark));
    QJsonObject remaining;
    QJsonObject lacking;
    for (const auto& each : choice.winter) {
        remaining.insert(pullText(hives[each.hive].mark), each.remainingG);
        lacking.insert(pullText(hives[each.hive].mark), each.shortG);
    }
    return {{"take", take},
            {"leave", leave},
            {"look_first", lookFirst},
            {"honey_g", choice.honeyG},
            {"proven", choice.proven},
            {"bound_g", choice.boundG},
            {"remaining_g", remaining},
            {"short_g", lacking}};
}

Result<QJsonObject> computePullChoice(const QJsonObject& input) {
    ObjectReader in(input);
    const auto hives = pullHivesOf(in);
    const PullLimits limits = pullLimitsOf(in.object("limits"));
    if (auto good = in.finish(); !good) return good.error();
    return pullAnswer(hives, choosePull(hives, limits));
}

/// The slots of each kind asked for: one number for all kinds, or one for each.
std::map<std::string, std::int64_t> planSlotsOf(ObjectReader& in,
                                                const std::vector<PlanLot>& lots) {
    std::map<std::string, std::int64_t> counts;
    if (!in.raw("slots").isObject()) {
        const std::int64_t all = in.count("slots", planSlotRange);
        for (const PlanLot& lot : lots) counts[lot.kind] = all;
        return counts;
    }
    ObjectReader perKind = in.object("slots");
    for (const auto& [kind, unused] : in.numbersByName("slots"))
        counts[kind] = perKind.count(kind, planSlotRange);
    return counts;
}

std::vector<PlanLot> planLotsOf(ObjectReader& in) {
    std::vector<PlanLot> lots;
    std::set<std::pair<std::string, std::string>> seen;
    for (ObjectReader& each : in.objects("lots")) {
        PlanLot lot;
        lot.lot = each.text("lot");
        lot.kind = each.text("kind");
        if (!seen.insert({lot.lot, lot.kind}).second)
            each.refuse(Code::Duplicate, "lot", {{"value", lot.lot}});
        lot.frames = each.count("frames", planLotFrames);
        lot.honeyG = each.mass("honey_g");
        if (lot.frames == 0 && lot.honeyG > 0)
            each.refuse(Code::Contradiction, "frames", {{"other", "honey_g"}});
        lot.forkShare = each.optionalShare("fork_share").value_or(0);
        lots.push_back(std::move(lot));
    }
    return lots;
}

QJsonObject whatIfAnswer(const WhatIf& other) {
    QJsonObject answer{{"last_load_ends_min", other.lastLoadEndsMin},
                       {"day_min", other.dayMin},
                       {"day_saves_min", other.daySavesMin},
                       {"done_min", other.doneMin},
                       {"done_saves_min", other.doneSavesMin}};
    if (other.strainEndsMin) answer.insert("strain_ends_min", *other.strainEndsMin);
    return answer;
}

QJsonObject dayAnswer(const DayPlan& plan) {
    QJsonObject answer{{"honey_g", plan.honeyG},
                       {"loads", pullJsonCount(plan.loads)},
                       {"loads_if_mixed", pullJsonCount(plan.loadsIfMixed)},
                       {"buckets", pullJsonCount(plan.buckets)},
                       {"buckets_with_spare", pullJsonCount(plan.bucketsWithSpare)},
                       {"uncap_min", plan.uncapMin},
                       {"spin_min", plan.spinMin},
                       {"last_load_ends_min", plan.lastLoadEndsMin},
                       {"day_min", plan.dayMin},
                       {"alone_min", plan.aloneMin}};
    if (plan.strainEndsMin) answer.insert("strain_ends_min", *plan.strainEndsMin);
    if (plan.openGateAfterLoad) {
        QJsonArray loads;
        for (const std::int64_t load : *plan.openGateAfterLoad) loads.append(pullJsonCount(load));
        answer.insert("open_gate_after_load", loads);
    }
    answer.insert("done_min", plan.doneMin);
    answer.insert("slowest",
                  plan.slowest ? QJsonValue(pullText(key(*plan.slowest))) : QJsonValue());
    answer.insert("one_uncapper_more", whatIfAnswer(plan.oneUncapperMore));
    if (plan.oneStrainerMore)
        answer.insert("one_strainer_more", whatIfAnswer(*plan.oneStrainerMore));
    return answer;
}

Result<QJsonObject> computeDayPlan(const QJsonObject& input) {
    ObjectReader in(input);
    const auto lots = planLotsOf(in);
    RoomRates rates;
    rates.slotsOfKind = planSlotsOf(in, lots);
    rates.uncapMinPerFrame = in.number("uncap_min_per_frame", {0});
    rates.forkMinPerFrame = in.optionalNumber("fork_min_per_frame", {0});
    rates.spinMinPerLoad = in.number("spin_min_per_load", {0});
    rates.uncappers = in.count("uncappers", {1});
    rates.swapMin = in.optionalNumber("swap_min", {0}).value_or(0);
    rates.lotChangeMin = in.optionalNumber("lot_change_min", {0}).value_or(0);
    rates.strainKgPerH = in.optionalNumber("strain_kg_per_h", {0});
    rates.drumKg = in.optionalNumber("drum_kg", {0});
    rates.setUpMin = in.number("set_up_min", {0});
    rates.washMin = in.number("wash_min", {0});
    rates.bucketG = in.mass("bucket_g");
    rates.spareShare = in.share("spare_share");
    const auto warmerFactor = in.optionalNumber("warmer_strain_factor", {0});
    if (auto good = in.finish(); !good) return good.error();
    const auto plan = planDay(lots, rates);
    if (!plan) return plan.error();
    QJsonObject answer = dayAnswer(*plan);
    if (warmerFactor) {
        const auto warmer = ifWarmer(lots, rates, *warmerFactor);
        if (!warmer) return warmer.error();
        if (*warmer) answer.insert("warmer", whatIfAnswer(**warmer));
    }
    return answer;
}

std::vector<YieldBox> yieldBoxesOf(ObjectReader& in) {
    std::vector<YieldBox> boxes;
    std::set<std::string> marks;
    for (ObjectReader& each : in.objects("boxes")) {
        YieldBox box;
        box.mark = ownMarkOf(each, marks);
        box.hive = each.optionalText("hive");
        box.grossG = each.optionalNumber("gross_g", pullMass);
        box.wetG = each.optionalNumber("wet_g", pullMass);
        boxes.push_back(std::move(box));
    }
    return boxes;
}

Result<QJsonObject> computeShareYield(const QJsonObject& input) {
    ObjectReader in(input);
    YieldRun run;
    run.bucketG = in.number("bucket_g", pullMass);
    run.cappingsG = in.optionalNumber("cappings_g", pullMass);
    run.scrapingsG = in.optionalNumber("scrapings_g", pullMass);
    const auto boxes = yieldBoxesOf(in);
    if (auto good = in.finish(); !good) return good.error();
    const auto shares = shareYield(run, boxes);
    if (!shares) return shares.error();
    QJsonObject hives;
    for (const auto& line : shares->hives)
        hives.insert(pullText(line.hive), pullJsonCount(line.honey.grams()));
    QJsonArray byDifference;
    for (const std::size_t each : shares->byDifference)
        byDifference.append(pullText(boxes[each].mark));
    return QJsonObject{
        {"hives_g", hives},
        {"unknown_g", pullJsonCount(shares->unknown.grams())},
        {"by_difference", byDifference},
        {"unaccounted_g", shares->unaccountedG ? QJsonValue(*shares->unaccountedG) : QJsonValue()}};
}

Result<QJsonObject> computeLearnRate(const QJsonObject& input) {
    ObjectReader in(input);
    const double published = in.number("published");
    const double publishedSd = in.number("published_sd", {0});
    const std::vector<double> seen = in.numbers("seen");
    const double seenSd = in.number("seen_sd", {0});
    if (auto good = in.finish(); !good) return good.error();
    const auto learned = learnRate(published, publishedSd, seen, seenSd);
    if (!learned) return learned.error();
    return QJsonObject{{"value", learned->value}, {"sd", learned->sd}};
}

Result<QJsonObject> computeJars(const QJsonObject& input) {
    ObjectReader in(input);
    const double honeyG = in.mass("honey_g");
    const double netG = in.mass("net_g");
    const double lossShare = in.share("loss_share");
    if (auto good = in.finish(); !good) return good.error();
    const auto count = countJars(honeyG, netG, lossShare);
    if (!count) return count.error();
    return QJsonObject{{"jars", pullJsonCount(count->jars)}, {"left_g", count->leftG}};
}

}  // namespace

std::vector<Computation> pullComputations() {
    return {{"pull-choice", computePullChoice},
            {"day-plan", computeDayPlan},
            {"share-yield", computeShareYield},
            {"learn-rate", computeLearnRate},
            {"jars", computeJars}};
}

}  // namespace combwright
