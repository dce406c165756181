#include "core/places/wax_bench/wax_flow.h"

#include <algorithm>
#include <map>

namespace combwright {
namespace {

double flowGrams(Mass mass) { return static_cast<double>(mass.grams()); }

double flowMiddle(const std::optional<Known<Mass>>& mass) {
    const auto middle = mass ? mass->middle() : std::nullopt;
    return middle.value_or(0.0);
}

/// Batches that went together count as one: the last of them was cast.
struct FlowGroup {
    double rawG = 0, honeyG = 0, washedG = 0, slumgumG = 0, cleanG = 0;
    double potG = 0;  ///< weighed out of the pot, of what is not cast yet too
    bool rawKnown = true;
    bool washed = false;  ///< and weighed
    bool cleanKnown = true;
    bool melted = false;
};

/// The batch at the end of the chain. A chain is never longer than there are batches.
std::int64_t endOf(const std::map<std::int64_t, const BatchShown*>& batches, std::int64_t number) {
    for (std::size_t n = 0; n < batches.size(); ++n) {
        const auto at = batches.find(number);
        if (at == batches.end() || !at->second->ledger.wentInto) return number;
        number = at->second->ledger.wentInto->number;
    }
    return number;
}

void addTo(FlowGroup& group, const BatchShown& batch) {
    const BatchLedger& ledger = batch.ledger;
    if (batch.raw)
        group.rawG += flowGrams(*batch.raw);
    else
        group.rawKnown = false;
    group.honeyG += flowGrams(ledger.drained);
    for (const WaxStep& step : ledger.steps) {
        const double out = flowMiddle(step.cameOut);
        if (step.work == WaxWork::Washed && out > 0) {
            group.washedG += out;
            group.washed = true;
        }
        if (step.work == WaxWork::FootScraped) group.slumgumG += out;
    }
    group.cleanG += flowGrams(ledger.clean);
    group.potG += std::max(flowGrams(outOfPot(ledger).value_or(Mass())), flowGrams(ledger.clean));
    group.cleanKnown = group.cleanKnown && ledger.allWeighed;
    group.melted = group.melted || ledger.melted;
}

/// Waits, is on its way washed, or went through.
void pass(WaxFlow& flow, const FlowGroup& group) {
    flow.honeyG += group.honeyG;
    flow.slumgumG += group.slumgumG;
    if (!group.melted && !group.washed) {
        if (group.rawKnown) flow.waitsG += std::max(group.rawG - group.honeyG, 0.0);
        return;
    }
    const double through = group.washed ? group.washedG : group.potG + group.slumgumG;
    flow.washedG += through;
    flow.washedWeighed = flow.washedWeighed || group.washed;
    if (group.rawKnown) flow.awayG += std::max(group.rawG - group.honeyG - through, 0.0);
    if (!group.washed) return;
    if (!group.melted)
        flow.washedWaitsG += through;
    else if (group.cleanKnown)
        flow.missingG =
            flow.missingG.value_or(0.0) + std::max(through - group.cleanG - group.slumgumG, 0.0);
}

void addRaw(WaxFlow& flow, const WaxBench& bench) {
    std::map<std::int64_t, const BatchShown*> batches;
    for (const BatchShown& batch : bench.batches)
        batches.emplace(batch.ledger.batch.id.number, &batch);
    std::map<std::int64_t, FlowGroup> groups;
    for (const BatchShown& batch : bench.batches) {
        const WaxBatch& of = batch.ledger.batch;
        if (yearOf(of.on) != yearOf(bench.on) && !batch.waits) continue;
        flow.raw.push_back({of.id, of.name.text(), of.source, batch.from,
                            batch.raw ? std::optional(flowGrams(*batch.raw)) : std::nullopt,
                            batch.rawHow, batch.waits});
        if (batch.raw)
            flow.rawG += flowGrams(*batch.raw);
        else
            ++flow.rawNotWeighed;
        addTo(groups[endOf(batches, of.id.number)], batch);
    }
    for (const auto& [end, group] : groups) pass(flow, group);
}

void addShades(WaxFlow& flow, const WaxBench& bench) {
    std::map<WaxShade, WaxFlowShade> shades;
    for (const ShadeStock& stock : bench.shades) {
        WaxFlowShade& shade = shades[stock.shade];
        shade.shade = stock.shade;
        shade.leftG = flowGrams(stock.left);
        shade.how = stock.how;
        shade.notWeighed = stock.notWeighed;
        flow.haveG += shade.leftG;
    }
    for (const BatchShown& batch : bench.batches)
        for (const WaxBlock& block : batch.ledger.blocks) {
            if (yearOf(block.on) != yearOf(bench.on)) continue;
            shades[block.shade].shade = block.shade;
            shades[block.shade].castG += flowMiddle(block.mass);
        }
    for (auto& [key, shade] : shades) {
        flow.castG += shade.castG;
        shade.goneG = std::max(shade.castG - shade.leftG, 0.0);
        shade.otherG = std::max(shade.leftG - shade.castG, 0.0);
        flow.shades.push_back(shade);
    }
}

void addWanted(WaxFlow& flow, const CandleEvenings& plan) {
    flow.netG = plan.needs.waxNetG;
    flow.neededG = plan.needs.waxNeededG;
    flow.shortG = plan.needs.waxShortG;
    flow.lossShare = plan.lossShare;
    flow.overG = std::max(flow.haveG - flow.neededG, 0.0);
    const double kept = 1.0 - plan.lossShare;
    for (const CandleWanted& want : plan.wants)
        flow.wants.push_back(
            {want.what, want.count, 0, static_cast<double>(want.count) * want.massG / kept, 0.0});
    for (const CandlesOfShade& each : plan.needs.fromStock) {
        for (std::size_t n = 0; n < flow.shades.size(); ++n) {
            if (word(flow.shades[n].shade) != each.shade) continue;
            flow.links.push_back(
                {n, each.want, each.count,
                 static_cast<double>(each.count) * plan.wants[each.want].massG / kept});
        }
        flow.wants[each.want].made += each.count;
    }
    for (std::size_t n = 0; n < flow.wants.size(); ++n)
        flow.wants[n].shortG = static_cast<double>(flow.wants[n].count - flow.wants[n].made) *
                               plan.wants[n].massG / kept;
    for (const ShadeOfWax& left : plan.needs.waxLeft)
        for (WaxFlowShade& shade : flow.shades)
            if (word(shade.shade) == left.shade) shade.unusedG = left.massG;
}

}  // namespace

WaxFlow waxFlow(const WaxBench& bench, const CandleEvenings* plan) {
    WaxFlow flow;
    addRaw(flow, bench);
    addShades(flow, bench);
    if (plan)
        addWanted(flow, *plan);
    else
        for (WaxFlowShade& shade : flow.shades) shade.unusedG = shade.leftG;
    return flow;
}

}  // namespace combwright
