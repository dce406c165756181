#include "core/places/due/due_wax.h"

#include <algorithm>

#include "core/places/storeroom/comb_projects.h"
#include "core/places/wax_bench/wax_bench.h"

namespace combwright {
namespace {

DueItem waxItem(const char* kind, std::string id, Day since, Day from, std::optional<Day> by,
                std::string about) {
    DueItem item;
    item.rule = DueRule::Wax;
    item.where = DueWhere::WaxBench;
    item.id = std::move(id);
    item.since = since;
    item.from = from;
    item.by = by;
    item.about = std::move(about);
    item.source = kind;
    return item;
}

void addHeatDue(const Read& file, Day today, std::vector<DueItem>& due) {
    for (const HeatSession& heat : openHeat(file)) {
        if (heat.on > today) continue;
        due.push_back(waxItem("heat", "wax-heat-" + std::to_string(heat.id.number), heat.on,
                              heat.on, heat.on, heat.what.text()));
    }
}

/// Only batches that wait are asked for: a keeper's file of fifty years has many more.
void addBatchesDue(const Read& file, Day today, std::vector<DueItem>& due) {
    for (const BatchLedger& ledger : batchLedgers(file, today)) {
        if (ledger.melted || ledger.wentInto) continue;
        const WaxBatch& batch = ledger.batch;
        const std::string id = std::to_string(batch.id.number);
        std::optional<Day> washed;
        for (const WaxStep& step : ledger.steps)
            if (step.work == WaxWork::Washed) washed = step.on;
        if (washed) {
            due.push_back(
                waxItem("melt", "wax-melt-" + id, *washed, *washed, *washed, batch.name.text()));
            continue;
        }
        const bool wet = batch.source == RawWaxSource::Cappings && batch.state != WaxState::Dry;
        const bool open = !batch.kept || batch.kept == WaxKeeping::Open;
        const Day since = batch.keptSince.value_or(batch.on);
        if (!wet || !open) continue;
        DueItem item = waxItem("wet", "wax-wet-" + id, since, since + days(waxWetDays),
                               std::nullopt, batch.name.text());
        item.count = (today - since).count();
        due.push_back(std::move(item));
    }
}

void addEveningDue(const Read& file, Day today, std::vector<DueItem>& due) {
    // What everything wanted wants of the evenings; the item is for the first day that is not
    // provided for yet.
    const std::vector<CandleEvenings> plans = candlePlans(file, today);
    const auto add = [&](const char* kind, std::string id, Day day, Day wanted, std::string about) {
        DueItem item = waxItem(kind, std::move(id), today, day, day, std::move(about));
        item.other = wanted;
        due.push_back(std::move(item));
    };
    const auto open = std::find_if(plans.begin(), plans.end(), [](const CandleEvenings& plan) {
        return !plan.plan.evenings.empty();
    });
    if (open != plans.end()) {
        const PouringEvening& next = plans.back().plan.evenings.front();
        add("pour", candleEveningId(next.day), next.day, open->date.by,
            pouredText(plans.back(), next));
    }
    for (const CandleEvenings& plan : plans)
        if (plan.plan.finishing)
            add("finish", candleFinishId(plan.date), *plan.plan.finishing, plan.date.by,
                plan.date.whatFor);
}

void addPoursDue(const Read& file, Day today, std::vector<DueItem>& due) {
    for (const PourShown& pour : waxBench(file, today).unfinished) {
        if (pour.pour.released && *pour.pour.released <= today) continue;
        if (pour.pour.trimmed || !pour.setBy) continue;
        due.push_back(waxItem(
            "out", "wax-out-" + std::to_string(pour.pour.id.number), pour.pour.on, *pour.setBy,
            std::nullopt,
            std::to_string(pour.pour.good.value()) + " " + pour.candle + " of " + pour.mould));
    }
}

void addProjectsDue(const Read& file, Day today, std::optional<Id<Yard>> yard,
                    std::vector<DueItem>& due) {
    for (const CombProject& comb : combProjects(file, today)) {
        const HiveProject& project = comb.project;
        const auto hive = file.find(project.hive);
        if (yard && (!hive || hive->yard != *yard)) continue;
        const std::string id = std::to_string(project.id.number);
        const auto add = [&](const char* kind, Day from, std::optional<Day> by) {
            DueItem item =
                waxItem(kind, std::string("comb-") + kind + "-" + id + "-" + isoText(from),
                        project.putOn.value_or(project.on), from, by, project.name.text());
            if (hive && project.hive) {
                item.where = DueWhere::Yard;
                item.yard = hive->yard;
                item.hive = project.hive;
            }
            due.push_back(std::move(item));
        };
        switch (comb.stage) {
            case ProjectStage::Written:
            case ProjectStage::StarterIn:
                if (comb.onLatest) add("on", *comb.onLatest - days(combLookDays), *comb.onLatest);
                break;
            case ProjectStage::OnHive:
                if (comb.built)
                    add("off", comb.looks.back().on, std::nullopt);
                else if (comb.nextLook)
                    add("look", *comb.nextLook, std::nullopt);
                break;
            case ProjectStage::OffHive:
                add("lid", *project.off, std::nullopt);
                due.back().where = DueWhere::WaxBench;
                due.back().hive.reset();
                break;
            case ProjectStage::Lidded:
                break;
        }
    }
}

}  // namespace

std::vector<CandleEvenings> candlePlans(const Read& file, Day on) {
    std::vector<CandleEvenings> plans;
    for (const CandleDate& date : candleDates(file, on)) {
        // The plan is dear: it is asked for only where an evening is free.
        if (freeEvenings(file, on, date.by).empty()) continue;
        auto plan = candleEvenings(file, on, date, {}, {}, false);
        if (plan && *plan) plans.push_back(*std::move(*plan));
    }
    return plans;
}

std::string candleEveningId(Day evening) { return "candles-" + isoText(evening); }
std::string candleFinishId(const CandleDate& date) { return "candles-finish-" + isoText(date.by); }

std::string pouredText(const CandleEvenings& plan, const PouringEvening& evening) {
    std::string text;
    for (const PouringEvening::Pours& pours : evening.pours)
        text += (text.empty() ? "" : ", ") + std::to_string(pours.count) + " " +
                plan.wants[pours.want].what;
    return text;
}

void addDueWax(const Read& file, Day today, std::optional<Id<Yard>> yard,
               std::vector<DueItem>& due) {
    addProjectsDue(file, today, yard, due);
    if (yard) return;
    addHeatDue(file, today, due);
    addBatchesDue(file, today, due);
    addEveningDue(file, today, due);
    addPoursDue(file, today, due);
}

}  // namespace combwright
