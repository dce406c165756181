#include "core/places/wax_bench/wax_bench.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "core/places/season_book/season_yield.h"
#include "core/places/wax_bench/mould_wax.h"
#include "core/storage/queries/constants.h"
#include "core/storage/queries/names.h"
#include "core/trade/wax/candle_time.h"

namespace combwright {
namespace {

std::optional<Mass> middleOf(const std::optional<Known<Mass>>& mass) {
    const auto middle = mass ? mass->middle() : std::nullopt;
    return middle ? std::optional(Mass::roundedGrams(*middle)) : std::nullopt;
}

double gramsOf(Mass mass) { return static_cast<double>(mass.grams()); }

/// What cappings are after a step.
std::optional<WaxState> stateAfter(std::optional<WaxState> state, WaxWork work) {
    const bool wet = !state || *state == WaxState::Undrained || *state == WaxState::Drained;
    switch (work) {
        case WaxWork::Dripped:
            return !state || *state == WaxState::Undrained ? WaxState::Drained : state;
        case WaxWork::Pressed:
            return wet ? WaxState::Pressed : state;
        case WaxWork::Washed:
            return WaxState::Washed;
        case WaxWork::BeesCleaned:
            return WaxState::Dry;
        default:
            return state;
    }
}

std::optional<WaxState> stateOf(const BatchLedger& ledger) {
    std::optional<WaxState> state = ledger.batch.state;
    if (ledger.batch.source == RawWaxSource::Cappings)
        for (const WaxStep& step : ledger.steps) state = stateAfter(state, step.work);
    return state;
}

WaxMaterial cappingsMaterial(const std::optional<WaxState>& state) {
    if (!state) return WaxMaterial::Mixed;
    switch (*state) {
        case WaxState::Undrained:
            return WaxMaterial::CappingsUndrained;
        case WaxState::Drained:
        case WaxState::Pressed:
            return WaxMaterial::CappingsDrained;
        case WaxState::Washed:
        case WaxState::Dry:
            return WaxMaterial::CappingsWashed;
    }
    return WaxMaterial::Mixed;
}

/// Honey still in a batch: by what it weighed last, none once it was washed or the bees had it, and
/// nobody knows where it dripped and was not weighed since.
std::optional<Between> honeyLeft(const BatchShown& shown) {
    if (shown.ledger.batch.source != RawWaxSource::Cappings) return std::nullopt;
    const WaxMaterial now = cappingsMaterial(shown.state);
    if (now == WaxMaterial::CappingsWashed) return Between{};
    if (!shown.weighed || now != shown.material) return std::nullopt;
    const auto honey = honeyInCappingsG(gramsOf(*shown.weighed), now);
    return honey ? *honey : std::nullopt;
}

/// How it is kept, where that was said by then and nothing was done to it since.
void tellKeeping(BatchShown& shown, Day on) {
    const WaxBatch& batch = shown.ledger.batch;
    const Day since = batch.keptSince.value_or(batch.on);
    if (!batch.kept || since > on) return;
    for (const WaxStep& step : shown.ledger.steps)
        if (step.on > since && stateAfter(std::nullopt, step.work)) return;
    shown.kept = batch.kept;
    if (since > batch.on) shown.keptSince = since;
}

/// What a batch weighed in and out, where it did and went nowhere else.
std::optional<WaxWeighed> weighedOf(const BatchLedger& ledger) {
    if (!ledger.in || ledger.blocks.empty() || !ledger.allWeighed || ledger.wentInto ||
        ledger.in->grams() <= 0)
        return std::nullopt;
    return WaxWeighed{gramsOf(*ledger.in), gramsOf(ledger.clean)};
}

std::vector<std::string> sourcesOf(const Read& file, const BatchLedger& ledger) {
    std::vector<std::string> names;
    const auto add = [&names](std::string name) {
        if (std::find(names.begin(), names.end(), name) == names.end())
            names.push_back(std::move(name));
    };
    for (const WaxSource& source : ledger.sources) {
        if (source.run) add(nameOf(file, Extraction::table, source.run->number));
        const auto heap = file.find(source.rawWax);
        if (const auto box = source.box ? source.box : heap ? heap->box : std::nullopt)
            add(nameOf(file, Box::table, box->number));
    }
    return names;
}

BatchShown batchShown(const Read& file, BatchLedger ledger, Day on) {
    BatchShown shown;
    const WaxBatch& batch = ledger.batch;
    shown.from = sourcesOf(file, ledger);
    shown.state = stateOf(ledger);
    shown.material = materialOf(ledger);
    shown.raw = middleOf(batch.raw);
    if (batch.raw) shown.rawHow = batch.raw->how;
    shown.weighed = shown.raw;
    if (const auto stages = stagesOf(ledger); stages.size() > 1) {
        shown.material = stages.back().material;
        shown.weighed = stages.back().mass;
    }
    const auto own = weighedBatches(file, shown.material, on, batch.id);
    if (const auto yield = waxYield(shown.material, own); yield) shown.yield = *yield;
    if (shown.weighed && shown.yield)
        if (const auto clean = cleanWaxG(gramsOf(*shown.weighed), *shown.yield))
            shown.expectedG = *clean;
    if (const auto weighed = weighedOf(ledger)) {
        const WaxRendered rendered{weighed->rawG, weighed->cleanG, gramsOf(ledger.drained),
                                   gramsOf(ledger.slumgum)};
        if (const auto lost = renderedBalance(rendered)) shown.lost = *lost;
    }
    shown.days = static_cast<int>((on - batch.on).count());
    shown.waits = !ledger.melted && !ledger.wentInto;
    for (const WaxStep& step : ledger.steps)
        if (step.work == WaxWork::Washed && shown.waits) shown.washedOn = step.on;
    shown.ledger = std::move(ledger);
    shown.honeyG = honeyLeft(shown);
    tellKeeping(shown, on);
    return shown;
}

/// Blocks of a batch, less what of it had been clean before.
Mass newWax(const BatchLedger& ledger) { return std::max(ledger.clean - ledger.again, Mass()); }

/// New wax that a batch gave in a year.
Mass newWaxIn(const Read& file, const BatchLedger& ledger, int year) {
    const auto in = [&](bool before) {
        return std::any_of(ledger.blocks.begin(), ledger.blocks.end(), [&](const WaxBlock& block) {
            return before ? yearOf(block.on) < year : yearOf(block.on) == year;
        });
    };
    if (!in(false)) return {};
    if (!in(true)) return newWax(ledger);
    const Mass before = newWax(batchLedger(file, ledger.batch, *makeDay(year - 1, 12, 31)));
    return std::max(newWax(ledger) - before, Mass());
}

std::vector<ShadeStock> shadesOf(const std::vector<BlockLedger>& blocks) {
    std::map<WaxShade, ShadeStock> shades;
    for (const BlockLedger& each : blocks) {
        ShadeStock& stock = shades[each.block.shade];
        stock.shade = each.block.shade;
        if (!each.left) {
            ++stock.notWeighed;
            continue;
        }
        if (*each.left <= Mass()) continue;
        stock.left = stock.left + *each.left;
        stock.how = weaker(stock.how, each.how);
        ++stock.blocks;
    }
    std::vector<ShadeStock> all;
    for (const auto& [shade, stock] : shades) all.push_back(stock);
    return all;
}

Mass drawnFor(const Read& file, const Pour& pour) {
    Mass drawn;
    for (const WaxUse& use : file.where<WaxUse>({is("pour", pour.id)})) drawn = drawn + use.mass;
    return drawn;
}

PourShown pourShown(const Read& file, const Pour& pour) {
    PourShown shown;
    shown.pour = pour;
    const auto mould = file.find(pour.mould);
    if (mould) {
        shown.mould = mould->name.text();
        const auto hours = mould->setHours ? std::optional(mould->setHours->value())
                                           : mouldShown(file, *mould, pour.on).setHours;
        // Poured in the evening: what sets in two hours is out the same night, the rest later.
        if (hours) shown.setBy = pour.on + days(static_cast<int>(std::ceil((*hours - 3.0) / 24.0)));
        if (shown.setBy && *shown.setBy < pour.on) shown.setBy = pour.on;
    }
    shown.candle = nameOf(file, GoodsKind::table, pour.kind.number);
    shown.drawn = drawnFor(file, pour);
    return shown;
}

/// Honey of a year: what is shared out or noted, and what stands in buckets of runs that are not.
Mass honeyOf(const Read& file, int year) {
    const SeasonYield crop = seasonYield(file, year);
    Mass honey = crop.total;
    for (const std::string& name : crop.unclosed) {
        const auto run = Name::of(name);
        if (!run) continue;
        for (const Extraction& each : file.where<Extraction>({is("name", *run)}))
            for (const Bucket& bucket : file.where<Bucket>({is("extraction", each.id)}))
                if (const auto net = middleOf(bucket.net)) honey = honey + *net;
    }
    return honey;
}

}  // namespace

WaxMaterial materialOf(const BatchLedger& batch) {
    const auto did = [&](WaxWork work) {
        return std::any_of(batch.steps.begin(), batch.steps.end(),
                           [work](const WaxStep& step) { return step.work == work; });
    };
    switch (batch.batch.source) {
        case RawWaxSource::Cappings:
            return cappingsMaterial(batch.batch.state);
        case RawWaxSource::Scrapings:
            return WaxMaterial::Scrapings;
        case RawWaxSource::OldComb:
            return did(WaxWork::Pressed) ? WaxMaterial::OldCombPressed : WaxMaterial::OldCombSolar;
        case RawWaxSource::Mixed:
            return WaxMaterial::Mixed;
    }
    return WaxMaterial::Mixed;
}

std::vector<WaxStage> stagesOf(const BatchLedger& batch) {
    std::vector<WaxStage> stages;
    if (batch.in) stages.push_back({materialOf(batch), *batch.in});
    if (batch.batch.source != RawWaxSource::Cappings) return stages;
    std::optional<WaxState> state = batch.batch.state;
    for (const WaxStep& step : batch.steps) {
        if (!stateAfter(std::nullopt, step.work)) continue;
        state = stateAfter(state, step.work);
        // What came to it since was not on the scales with it.
        if (batch.joined && *batch.joined > step.on) continue;
        auto mass = middleOf(step.cameOut);
        const auto honey = batch.drainedBy.find(step.id.number);
        if (!mass && honey != batch.drainedBy.end() && !stages.empty() &&
            honey->second < stages.back().mass)
            mass = stages.back().mass - honey->second;
        if (mass && *mass > Mass()) stages.push_back({cappingsMaterial(state), *mass});
    }
    return stages;
}

std::optional<Mass> outOfPot(const BatchLedger& batch) {
    std::optional<Mass> out;
    for (const WaxStep& step : batch.steps)
        if (step.work == WaxWork::Melted || step.work == WaxWork::Strained ||
            step.work == WaxWork::MeltedAgain)
            if (const auto mass = middleOf(step.cameOut)) out = mass;
    return out;
}

std::vector<WaxWeighed> weighedBatches(const Read& file, WaxMaterial material, Day until,
                                       std::optional<Id<WaxBatch>> but) {
    std::vector<WaxWeighed> weighed;
    for (const BatchLedger& ledger : batchLedgers(file, until)) {
        // Wax that was clean before says nothing of what raw wax gives.
        if (ledger.batch.id == but || ledger.again > Mass() || !weighedOf(ledger)) continue;
        std::optional<WaxWeighed> of;
        for (const WaxStage& stage : stagesOf(ledger))
            if (stage.material == material && ledger.clean <= stage.mass)
                of = WaxWeighed{gramsOf(stage.mass), gramsOf(ledger.clean)};
        if (of) weighed.push_back(*of);
    }
    return weighed;
}

WaxYear waxYear(const Read& file, int number, Day until, Working* working) {
    WaxYear year;
    year.year = number;
    const auto inYear = [&](Day day) { return yearOf(day) == number && day <= until; };
    WaxMoved& moved = year.moved;
    for (const WaxBlock& block : file.all<WaxBlock>()) {
        const auto mass = middleOf(block.mass);
        if (!mass) continue;
        if (yearOf(block.on) < number) moved.openingG += gramsOf(*mass);
        if (!inYear(block.on)) continue;
        (block.batch                 ? moved.castG
         : block.fromCandles == true ? moved.returnedG
                                     : moved.broughtG) += gramsOf(*mass);
    }
    // Of what was poured, and not back in a block.
    year.returnedWaits = waxReturned(file, std::min(until, *makeDay(number, 12, 31)));
    for (const WaxUse& use : file.all<WaxUse>()) {
        if (yearOf(use.on) < number) moved.openingG -= gramsOf(use.mass);
        if (!inYear(use.on)) continue;
        switch (use.went) {
            case WaxWent::Poured:
                moved.pouredG += gramsOf(use.mass);
                break;
            case WaxWent::Sold:
            case WaxWent::Given:
            case WaxWent::Traded:
                moved.givenG += gramsOf(use.mass);
                break;
            // Melted again it is raw wax of another batch, whose block comes back as cast.
            case WaxWent::MeltedAgain:
                moved.givenG += gramsOf(use.mass);
                year.again = year.again + use.mass;
                break;
            case WaxWent::Lost:
                moved.lostG += gramsOf(use.mass);
                break;
        }
    }
    for (const WaxBatch& batch : file.all<WaxBatch>())
        if (const auto raw = middleOf(batch.raw); raw && inYear(batch.on))
            year.raw = year.raw + *raw;
    for (const BatchLedger& ledger : batchLedgers(file, until)) {
        if (inYear(ledger.batch.on)) year.honeyDrained = year.honeyDrained + ledger.drained;
        year.clean = year.clean + newWaxIn(file, ledger, number);
    }
    if (const auto balance = waxBalance(moved, working)) year.balance = *balance;
    const Mass crop = honeyOf(file, number);
    if (crop > Mass()) {
        year.crop = crop;
        if (const auto per = waxPer100Honey(gramsOf(year.clean), gramsOf(crop), working); per)
            year.per100 = *per;
    }
    return year;
}

MouldShown mouldShown(const Read& file, const Mould& mould, Day on) {
    MouldShown shown;
    shown.mould = mould;
    if (mould.kind) shown.candle = nameOf(file, GoodsKind::table, mould.kind->number);
    shown.byScales = mould.oneWeighs.has_value();
    shown.byWater = !shown.byScales && mould.volume && mould.measured == true;
    const WaxDensities wax{constantOr(file, "wax_solid_g_per_ml", {}, on, solidWaxGPerMl),
                           constantOr(file, "wax_liquid_g_per_ml", {}, on, liquidWaxGPerMl)};
    const auto keep = [&](const Result<CandleMass>& mass) {
        if (mass) shown.mass = *mass;
    };
    if (mould.oneWeighs)
        keep(weighedCandle(gramsOf(*mould.oneWeighs), wax));
    else if (mould.volume)
        keep(candleMass(mould.volume->value(), wax));
    else if (mould.shape == MouldShape::Cylinder)
        keep(cylinderCandle(mouldMm(mould.diameter), mouldMm(mould.height), wax));
    else if (mould.shape == MouldShape::Taper)
        keep(taperCandle(mouldMm(mould.diameter), mouldMm(mould.tip), mouldMm(mould.height), wax));
    if (mould.setHours) shown.setHours = mould.setHours->value();
    if (mould.diameter) {
        if (!shown.setHours)
            if (const auto hours = setHours(mouldMm(mould.diameter))) shown.setHours = hours->high;
        if (const auto guess = wickGuess(mouldMm(mould.diameter))) shown.guess = *guess;
        if (shown.mass)
            if (const auto hours = burnHours(shown.mass->massG, mouldMm(mould.diameter)))
                shown.burns = *hours;
    }
    for (BurnTest& test : file.where<BurnTest>({is("mould", mould.id)}))
        if (test.on <= on) shown.tests.insert(shown.tests.begin(), std::move(test));
    shown.safe = burnsSafely(file, mould, on);
    return shown;
}

std::vector<BurnTest> lastTests(const MouldShown& mould) {
    std::vector<BurnTest> last;
    for (const BurnTest& test : mould.tests)
        if (std::none_of(last.begin(), last.end(),
                         [&](const BurnTest& each) { return each.wick == test.wick; }))
            last.push_back(test);
    std::stable_partition(last.begin(), last.end(), [&](const BurnTest& each) {
        return each.wick.text() == mould.mould.wick;
    });
    return last;
}

WaxBench waxBench(const Read& file, Day on) {
    const OneState still(file);
    WaxBench bench;
    bench.on = on;
    for (BatchLedger& ledger : batchLedgers(file, on))
        bench.batches.push_back(batchShown(file, std::move(ledger), on));
    const auto blocks = blockLedgers(file, on);
    bench.shades = shadesOf(blocks);
    for (const BlockLedger& each : blocks)
        if (!each.left || *each.left > Mass()) bench.blocks.push_back(each);
    bench.heat = openHeat(file);
    for (const Mould& mould : file.all<Mould>())
        if (mould.since <= on && (!mould.gone || on < *mould.gone))
            bench.moulds.push_back(mouldShown(file, mould, on));
    for (const Pour& pour : file.all<Pour>())
        if (pour.on <= on && (!pour.labelled || *pour.labelled > on) && pour.good.value() > 0)
            bench.unfinished.push_back(pourShown(file, pour));
    for (const std::string& size : wickStocked(file))
        if (const auto left = wickLeft(file, size, on)) bench.wick.emplace_back(size, *left);
    std::stable_sort(bench.wick.begin(), bench.wick.end(), [](const auto& a, const auto& b) {
        return wickRank(a.first).value_or(99) < wickRank(b.first).value_or(99);
    });
    bench.propolis = Mass::grams(std::max<std::int64_t>(propolisLeft(file, on), 0));
    bench.returned = waxReturned(file, on);
    for (const HiveProject& project : file.all<HiveProject>())
        if (project.on <= on && (!project.lidded || yearOf(*project.lidded) == yearOf(on)))
            bench.projects.push_back(project);
    bench.year = waxYear(file, yearOf(on), on);
    return bench;
}

}  // namespace combwright
