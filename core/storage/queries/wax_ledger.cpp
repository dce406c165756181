#include "core/storage/queries/wax_ledger.h"

#include <algorithm>
#include <chrono>
#include <map>

namespace combwright {

std::optional<Mass> atMost(const std::optional<Known<Mass>>& mass) {
    if (!mass) return std::nullopt;
    return mass->to ? mass->to : mass->value;
}

BlockLedger blockLedger(const Read& file, const WaxBlock& block, Day until) {
    BlockLedger ledger;
    ledger.block = block;
    if (block.mass) {
        if (const auto middle = block.mass->middle()) ledger.mass = Mass::roundedGrams(*middle);
        ledger.how = block.mass->how;
    }
    for (WaxUse& use : file.where<WaxUse>({is("block", block.id)})) {
        if (use.on > until) continue;
        ledger.used = ledger.used + use.mass;
        ledger.uses.push_back(std::move(use));
    }
    if (ledger.mass) ledger.left = *ledger.mass - ledger.used;
    return ledger;
}

std::vector<BlockLedger> blockLedgers(const Read& file, Day until) {
    std::vector<BlockLedger> ledgers;
    for (const WaxBlock& block : file.all<WaxBlock>())
        if (block.on <= until) ledgers.push_back(blockLedger(file, block, until));
    return ledgers;
}

namespace {

void addTo(std::optional<Mass>& sum, const std::optional<Mass>& more) {
    sum = sum && more ? std::optional(*sum + *more) : std::nullopt;
}

void joins(BatchLedger& ledger, Day on) {
    if (!ledger.joined || *ledger.joined < on) ledger.joined = on;
}

}  // namespace

BatchLedger batchLedger(const Read& file, const WaxBatch& batch, Day until) {
    BatchLedger ledger;
    ledger.batch = batch;
    ledger.sources = file.where<WaxSource>({is("batch", batch.id)});
    ledger.steps = file.where<WaxStep>({is("batch", batch.id), isUpTo("on_day", until)});
    std::stable_sort(ledger.steps.begin(), ledger.steps.end(),
                     [](const WaxStep& a, const WaxStep& b) { return a.on < b.on; });
    ledger.in = atMost(batch.raw);
    for (const WaxStep& other :
         file.where<WaxStep>({is("into_batch", batch.id), isUpTo("on_day", until)})) {
        const auto from = file.find(other.batch);
        addTo(ledger.in,
              other.cameOut ? atMost(other.cameOut) : atMost(from ? from->raw : std::nullopt));
        if (from) ledger.again = ledger.again + batchLedger(file, *from, other.on).again;
        joins(ledger, other.on);
    }
    for (const WaxUse& again : file.where<WaxUse>({is("batch", batch.id)})) {
        if (again.on > until) continue;
        addTo(ledger.in, again.mass);
        ledger.again = ledger.again + again.mass;
        joins(ledger, again.on);
    }
    for (WaxBlock& block : file.where<WaxBlock>({is("batch", batch.id)})) {
        if (block.on > until) continue;
        const auto middle = block.mass ? block.mass->middle() : std::nullopt;
        if (middle)
            ledger.clean = ledger.clean + Mass::roundedGrams(*middle);
        else
            ledger.allWeighed = false;
        ledger.blocks.push_back(std::move(block));
    }
    ledger.melted = !ledger.blocks.empty();
    for (const WaxStep& step : ledger.steps) {
        ledger.melted = ledger.melted || step.work == WaxWork::Melted;
        if (step.into) ledger.wentInto = step.into;
        if (const auto foot = step.cameOut ? step.cameOut->middle() : std::nullopt;
            foot && step.work == WaxWork::FootScraped)
            ledger.slumgum = ledger.slumgum + Mass::roundedGrams(*foot);
        const auto bucket = file.find(step.bucket);
        const auto net = bucket && bucket->net ? bucket->net->middle() : std::nullopt;
        if (!net) continue;
        ledger.drained = ledger.drained + Mass::roundedGrams(*net);
        ledger.drainedBy[step.id.number] = Mass::roundedGrams(*net);
    }
    return ledger;
}

std::vector<BatchLedger> batchLedgers(const Read& file, Day until) {
    std::vector<BatchLedger> ledgers;
    for (const WaxBatch& batch : file.all<WaxBatch>())
        if (batch.on <= until) ledgers.push_back(batchLedger(file, batch, until));
    return ledgers;
}

std::optional<StepAbove> stepAboveBatch(const BatchLedger& ledger) {
    std::optional<Mass> most = ledger.in;
    for (const WaxStep& step : ledger.steps) {
        if (!most) return std::nullopt;
        const auto above = [&](const std::optional<Known<Mass>>& mass) {
            return mass && mass->value &&
                   static_cast<double>(mass->value->grams()) >
                       static_cast<double>(most->grams()) * stepOverBatch;
        };
        if (above(step.putIn)) return StepAbove{step, false, *most};
        if (step.work == WaxWork::Washed) {
            // Washed wax carries water out, as much as was weighed or nobody knows how much.
            const auto out = atMost(step.cameOut);
            most = out ? std::optional(std::max(*most, *out)) : std::nullopt;
        } else if (above(step.cameOut)) {
            return StepAbove{step, true, *most};
        }
    }
    return std::nullopt;
}

Mass waxPoured(const Read& file, Id<Pour> pour) {
    Mass drawn;
    for (const WaxUse& use : file.where<WaxUse>({is("pour", pour)})) drawn = drawn + use.mass;
    return drawn;
}

Mass waxReturned(const Read& file, Day until) {
    const auto grams = [](const std::optional<Known<Mass>>& mass) {
        const auto middle = mass ? mass->middle() : std::nullopt;
        return Mass::roundedGrams(middle.value_or(0));
    };
    Mass back;
    Mass cast;
    for (const Pour& pour : file.all<Pour>())
        if (pour.on <= until) back = back + grams(pour.returned);
    for (const WaxBlock& block : file.where<WaxBlock>({is("from_candles", true)}))
        if (block.on <= until) cast = cast + grams(block.mass);
    return std::max(back - cast, Mass());
}

std::optional<Length> wickLeft(const Read& file, const std::string& wick, Day until) {
    std::optional<WickStock> counted;
    std::int64_t bought = 0;
    bool written = false;
    const auto stock = file.where<WickStock>({is("wick", wick)});
    for (const WickStock& each : stock)
        if (each.on <= until && each.counted && (!counted || counted->on <= each.on))
            counted = each;
    const auto since = [&](Day on, std::int64_t after) {
        return !counted || on > counted->on || (on == counted->on && after > counted->id.number);
    };
    for (const WickStock& each : stock) {
        if (each.on > until) continue;
        written = true;
        if (each.bought && since(each.on, each.id.number)) bought += each.bought->count();
    }
    if (!written) return std::nullopt;
    std::int64_t left = (counted ? counted->counted->count() : 0) + bought;
    for (const Pour& pour : file.where<Pour>({is("wick", wick)})) {
        // A spool is measured before the evening's pours, not after.
        if (pour.on > until || !pour.wickUsed || (counted && pour.on < counted->on)) continue;
        left -= pour.wickUsed->count();
    }
    return Length::tenthsOfMm(left);
}

std::vector<std::string> wickStocked(const Read& file) {
    std::vector<std::string> sizes;
    for (const WickStock& each : file.all<WickStock>())
        if (std::find(sizes.begin(), sizes.end(), each.wick.text()) == sizes.end())
            sizes.push_back(each.wick.text());
    return sizes;
}

bool isAboutDay(Instant at, Day on) {
    const Day day = std::chrono::floor<days>(at);
    return on - days(1) <= day && day <= on + days(1);
}

std::vector<HeatSession> openHeat(const Read& file) {
    auto open = file.where<HeatSession>({isUnknown("off_at")});
    std::stable_sort(open.begin(), open.end(),
                     [](const HeatSession& a, const HeatSession& b) { return a.begun < b.begun; });
    return open;
}

std::int64_t propolisLeft(const Read& file, Day until) {
    std::int64_t left = 0;
    for (const PropolisMove& move : file.all<PropolisMove>()) {
        const auto mass = move.mass ? move.mass->middle() : std::nullopt;
        if (move.on > until || !mass) continue;
        const bool came = move.went == PropolisWent::Scraped || move.went == PropolisWent::Trapped;
        left += (came ? 1 : -1) * Mass::roundedGrams(*mass).count();
    }
    return left;
}

std::vector<FreeEvening> freeEvenings(const Read& file, Day from, Day to) {
    std::map<Day, FreeEvening> last;
    for (FreeEvening& each :
         file.where<FreeEvening>({isFrom("on_day", from), isUpTo("on_day", to)}))
        last.insert_or_assign(each.on, std::move(each));
    std::vector<FreeEvening> evenings;
    for (auto& [day, each] : last)
        if (each.free != false) evenings.push_back(std::move(each));
    return evenings;
}

namespace {

UntestedHolder holderTests(const Read& file, const Mould& mould, const std::string& wick, Day on,
                           bool& safe) {
    UntestedHolder holder{mould, wick, false, {}};
    safe = false;
    for (const BurnTest& test : file.where<BurnTest>({is("mould", mould.id)})) {
        if (test.on > on) continue;
        const bool well = test.verdict == BurnVerdict::Well;
        if (!wick.empty() && test.wick.text() != wick) {
            if (well) holder.otherWick = test.wick.text();
            continue;
        }
        safe = well;
        holder.wentBadly = !well;
    }
    if (holder.wentBadly) holder.otherWick.clear();
    return holder;
}

}  // namespace

bool burnsSafely(const Read& file, const Mould& mould, Day on) {
    if (mould.oneWay != true) return true;
    bool safe = false;
    holderTests(file, mould, mould.wick, on, safe);
    return safe;
}

std::optional<UntestedHolder> untestedHolder(const Read& file, Id<GoodsKind> candle, Day on) {
    bool any = false;
    const auto unsafe = [&](const Mould& mould,
                            const std::string& wick) -> std::optional<UntestedHolder> {
        if (mould.oneWay != true) return std::nullopt;
        bool safe = false;
        UntestedHolder holder = holderTests(file, mould, wick, on, safe);
        return safe ? std::nullopt : std::optional(std::move(holder));
    };
    for (const Pour& pour : file.where<Pour>({is("goods_kind", candle)})) {
        const auto mould = file.find(pour.mould);
        if (!mould || !pour.labelled || *pour.labelled > on || pour.good <= Count()) continue;
        any = true;
        if (auto holder = unsafe(*mould, pour.wick.empty() ? mould->wick : pour.wick))
            return holder;
    }
    if (any) return std::nullopt;
    // Candles of before the books: nobody knows which holder they are in.
    for (const Mould& mould : file.where<Mould>({is("goods_kind", candle)}))
        if (mould.since <= on)
            if (auto holder = unsafe(mould, mould.wick)) return holder;
    return std::nullopt;
}

}  // namespace combwright
