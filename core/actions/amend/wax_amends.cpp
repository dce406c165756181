#include <algorithm>
#include <tuple>
#include <utility>

#include "core/actions/amend/amend_rules.h"
#include "core/actions/honey/goods.h"
#include "core/actions/wax/wax_rules.h"
#include "core/storage/queries/wax_ledger.h"

namespace combwright {
namespace {

/// What an action calls "on" is the record's "on_day".
Result<void> asRecord(const Result<void>& ok) {
    if (ok || ok.error().field != "on") return ok;
    return Refusal{ok.error().code, "on_day", ok.error().values};
}

/// A day that an action of its own sets may be put right, not set for the first time.
Result<void> demandNoFirst(const std::optional<Day>& before, const std::optional<Day>& after,
                           const char* field, const char* action) {
    if (!before && after) return Refusal{Code::OtherAction, field, {{"action", action}}};
    return {};
}

Result<void> shelfOfCandles(const Read& file, const std::optional<Id<GoodsKind>>& id,
                            std::int64_t wanted, const char* field) {
    const auto kind = file.find(id);
    return kind ? demandShelfHolds(file, *kind, wanted, field) : Result<void>{};
}

/// Neither the blocks of a batch nor its steps have more of it than there is.
Result<void> demandLedgersOf(const Read& file, const std::optional<Id<WaxBatch>>& batch,
                             const std::string& field) {
    if (auto ok = demandBatchLedger(file, batch, field); !ok) return ok;
    return demandStepLedger(file, batch, field);
}

Result<void> settleWaxBatch(Write& file, const WaxBatch&, WaxBatch& after) {
    if (auto ok = demandBatch(file, after); !ok) return ok;
    if (after.keptSince && *after.keptSince < after.on) return against("kept_since", "on_day");
    for (const WaxStep& step : file.where<WaxStep>({is("batch", after.id)}))
        if (step.on < after.on) return against("on_day", "wax_step");
    for (const WaxStep& step : file.where<WaxStep>({is("into_batch", after.id)}))
        if (step.on < after.on) return against("on_day", "wax_step");
    for (const WaxBlock& block : file.where<WaxBlock>({is("batch", after.id)}))
        if (block.on < after.on) return against("on_day", "wax_block");
    if (after.source == RawWaxSource::OldComb)
        for (const WaxSource& each : file.where<WaxSource>({is("batch", after.id)}))
            if (each.run) return against("source", "run");
    file.change(after);
    if (auto ok = demandLedgersOf(file, after.id, "raw_g"); !ok) return ok;
    for (const WaxStep& step : file.where<WaxStep>({is("batch", after.id)}))
        if (auto ok = demandLedgersOf(file, step.into, "raw_g"); !ok) return ok;
    return {};
}

Result<void> settleWaxSource(Write&, const WaxSource&, WaxSource& after) {
    return demandWax(after.mass, "mass_g");
}

Result<void> settleWaxStep(Write& file, const WaxStep& before, WaxStep& after) {
    if ((after.work == WaxWork::GoneTogether) != (before.work == WaxWork::GoneTogether))
        return Refusal{Code::Fixed, "work", {}};
    if (auto ok = demandWaxStep(file, after); !ok) return asRecord(ok);
    if (after.into) {
        for (const WaxStep& each : file.where<WaxStep>({is("batch", after.batch)}))
            if (each.id != after.id && each.on >= after.on) return against("on_day", "wax_step");
        for (const WaxBlock& each : file.where<WaxBlock>({is("batch", after.batch)}))
            if (each.on >= after.on) return against("on_day", "wax_block");
    }
    if (after.work != before.work || after.on != before.on || after.hive != before.hive)
        if (auto ok = demandBeesMayClean(file, after); !ok) return ok;
    file.change(after);
    if (auto ok = demandStepLedger(file, after.batch); !ok) return ok;
    return demandLedgersOf(file, after.into, "came_out_g");
}

Result<void> settleHeat(Write&, const HeatSession& before, HeatSession& after) {
    if (after.off && !before.off)
        return Refusal{Code::OtherAction, "off_at", {{"action", "heat-off"}}};
    if (after.off && *after.off < after.begun) return against("off_at", "begun");
    if (auto ok = demandAboutDay(after.begun, after.on, "begun"); !ok) return ok;
    return demandWaxHeat(after.temperature);
}

Result<void> settleWaxBlock(Write& file, const WaxBlock&, WaxBlock& after) {
    if (auto ok = demandBlock(file, after); !ok) return asRecord(ok);
    file.change(after);
    if (auto ok = demandBlockLedger(file, after.id, "mass_g"); !ok) {
        if (ok.error().code != Code::TooMany) return asRecord(ok);
        const BlockLedger ledger = blockLedger(file, after, *parseDay("9999-12-31"));
        return Refusal{
            Code::TooMany,
            "mass_g",
            {{"block", after.name.text()}, {"went_g", std::to_string(ledger.used.grams())}}};
    }
    return demandBatchLedger(file, after.batch, "mass_g");
}

/// What was poured stays with its pour and its day; the mass may have been misread.
Result<void> settleWaxUse(Write& file, const WaxUse& before, WaxUse& after) {
    if ((after.went == WaxWent::Poured) != after.pour.has_value()) return against("went", "pour");
    if ((after.went == WaxWent::MeltedAgain) != after.batch.has_value())
        return against("batch", "went");
    if (after.mass <= Mass()) return Refusal{Code::OutOfRange, "mass_g", {{"low", "1"}}};
    if (after.pour && after.on != before.on) return against("on_day", "pour");
    file.change(after);
    if (auto ok = demandBlockLedger(file, after.block, "mass_g"); !ok) return asRecord(ok);
    if (auto ok = demandPourLedger(file, after.pour, "mass_g"); !ok) return ok;
    if (auto ok = demandLedgersOf(file, before.batch, "mass_g"); !ok) return ok;
    return demandLedgersOf(file, after.batch, "mass_g");
}

Result<void> settleMould(Write& file, const Mould& before, Mould& after) {
    if (auto ok = demandMould(file, after); !ok) return ok;
    if (auto ok = demandNoFirst(before.gone, after.gone, "gone", "retire-mould"); !ok) return ok;
    for (const Pour& pour : file.where<Pour>({is("mould", after.id)})) {
        if (pour.on < after.since) return against("since", "pour");
        if (after.gone && *after.gone <= pour.on) return against("gone", "pour");
        // As many rounds as an evening may have at all: nobody wrote down how many there were.
        if (piecesOf(pour) > after.cavities.value() * mostCycles)
            return against("cavities", "pour");
    }
    for (const BurnTest& test : file.where<BurnTest>({is("mould", after.id)}))
        if (test.on < after.since) return against("since", "burn_test");
    return {};
}

Result<void> settleBurn(Write& file, const BurnTest&, BurnTest& after) {
    const auto mould = mouldOn(file, after.mould, after.on);
    if (!mould) return asRecord(mould.error());
    if (after.hours && (after.hours->value() <= 0 || after.hours->value() > 1000))
        return Refusal{Code::OutOfRange, "hours", {{"low", "0"}, {"high", "1000"}}};
    return demandBurnt(*mould, after.burnt);
}

/// How often the mould was filled nobody wrote down: as often as its evening has it, or as what was
/// written down first says.
Count roundsOf(const Pour& before, const Mould& mould) {
    const std::int64_t cavities = mould.cavities.value();
    const std::int64_t were = (piecesOf(before) + cavities - 1) / cavities;
    return Count(std::max<std::int64_t>(were, mould.cycles ? mould.cycles->value() : 1));
}

/// On another day: the wax that was taken for it goes along.
Result<void> settlePour(Write& file, const Pour& before, Pour& after) {
    const auto mould = mouldOn(file, after.mould, after.on);
    if (!mould) return asRecord(mould.error());
    if (auto ok = demandPour(file, after, *mould, roundsOf(before, *mould)); !ok) return ok;
    if (auto ok = demandNoFirst(before.released, after.released, "released", "finish-candles"); !ok)
        return ok;
    if (auto ok = demandNoFirst(before.trimmed, after.trimmed, "trimmed", "finish-candles"); !ok)
        return ok;
    if (auto ok = demandNoFirst(before.labelled, after.labelled, "labelled", "finish-candles"); !ok)
        return ok;
    if (const auto wrong = stepOutOfOrder(after)) return against(wrong, "on_day");
    if (after.on != before.on)
        for (WaxUse& use : file.where<WaxUse>({is("pour", after.id)})) {
            use.on = after.on;
            file.change(use);
            if (auto ok = demandBlockLedger(file, use.block, "on_day"); !ok) return asRecord(ok);
        }
    file.change(after);
    if (auto ok = demandPourLedger(file, after.id, "returned_g"); !ok) return ok;
    return shelfOfCandles(file, after.kind, after.good.value(), "good");
}

Result<void> settleCandleWish(Write& file, const CandleWish& before, CandleWish& after) {
    if (auto ok = demandWish(file, after); !ok) return ok;
    if (after.dropped && *after.dropped < after.on) return against("dropped", "on_day");
    return demandNoFirst(before.dropped, after.dropped, "dropped", "drop-wish");
}

Result<void> settleEvening(Write&, const FreeEvening&, FreeEvening& after) {
    if (after.cycles && (after.cycles->value() < 1 || after.cycles->value() > mostCycles))
        return Refusal{
            Code::OutOfRange, "cycles", {{"low", "1"}, {"high", std::to_string(mostCycles)}}};
    if (after.free == false && (after.cycles || after.finishing == true))
        return against("free", after.cycles ? "cycles" : "finishing");
    return {};
}

Result<void> settleWick(Write&, const WickStock&, WickStock& after) {
    if (after.bought.has_value() == after.counted.has_value())
        return against("bought_length_mm", "counted_length_mm");
    if (after.bought && *after.bought <= Length())
        return Refusal{Code::OutOfRange, "bought_length_mm", {{"low", "0.1"}}};
    return {};
}

Result<void> settlePropolis(Write& file, const PropolisMove&, PropolisMove& after) {
    if (auto ok = demandWax(after.mass, "mass_g", true); !ok) return ok;
    if (after.price && after.went != PropolisWent::Sold) return against("price", "went");
    file.change(after);
    return demandPropolis(file, after.id, "mass_g");
}

Result<void> settleProject(Write& file, const HiveProject& before, HiveProject& after) {
    if (auto ok = demandProject(file, after); !ok) return ok;
    const std::tuple<const std::optional<Day>&, const std::optional<Day>&, const char*> steps[] = {
        {before.starter, after.starter, "starter_in"},
        {before.putOn, after.putOn, "put_on"},
        {before.off, after.off, "taken_off"},
        {before.lidded, after.lidded, "lidded_on"}};
    for (const auto& [was, is, field] : steps) {
        if (auto ok = demandNoFirst(was, is, field, "work-project"); !ok) return ok;
        if (is && *is < after.on) return against(field, "on_day");
    }
    if (after.putOn && !after.hive) return Refusal{Code::Missing, "hive", {}};
    if (after.hive != before.hive)
        if (auto ok = demandProjectFree(file, after, after.putOn.value_or(after.on), after.reason);
            !ok)
            return ok;
    for (const ProjectLook& look : file.where<ProjectLook>({is("project", after.id)})) {
        if (!after.putOn || look.on < *after.putOn) return against("put_on", "project_look");
        if (after.off && look.on > *after.off) return against("taken_off", "project_look");
        if ((look.built && *look.built > after.pieces) ||
            (look.filled && *look.filled > after.pieces))
            return against("pieces", "project_look");
    }
    file.change(after);
    for (const auto& kind : {before.kind, after.kind})
        if (auto ok = shelfOfCandles(file, kind, after.good ? after.good->value() : 0, "good"); !ok)
            return ok;
    return {};
}

Result<void> settleProjectLook(Write& file, const ProjectLook&, ProjectLook& after) {
    const auto project = file.find(after.project);
    if (!project || !project->putOn || after.on < *project->putOn)
        return against("on_day", "put_on");
    if (project->off && *project->off < after.on) return against("on_day", "taken_off");
    for (const auto& [many, field] :
         {std::pair(after.built, "built"), std::pair(after.filled, "filled_pieces")})
        if (many && *many > project->pieces)
            return Refusal{
                Code::TooMany, field, {{"most", std::to_string(project->pieces.value())}}};
    if (after.built && after.filled && *after.built < *after.filled)
        return against("filled_pieces", "built");
    return {};
}

}  // namespace

std::vector<AmendType> waxAmends() {
    return {
        amends<WaxBatch>({}, &settleWaxBatch),
        amends<WaxSource>({{"batch", ""}, {"run", ""}, {"raw_wax", ""}, {"box", ""}},
                          &settleWaxSource),
        amends<WaxStep>({{"batch", ""}, {"into_batch", ""}}, &settleWaxStep),
        amends<HeatSession>({}, &settleHeat),
        amends<WaxBlock>({{"batch", ""}}, &settleWaxBlock),
        amends<WaxUse>({{"block", ""}, {"pour", ""}}, &settleWaxUse),
        amends<Mould>({}, &settleMould),
        amends<BurnTest>({{"mould", ""}}, &settleBurn),
        amends<Pour>({{"mould", ""}, {"goods_kind", ""}}, &settlePour),
        amends<CandleWish>({}, &settleCandleWish),
        amends<FreeEvening>({{"on_day", ""}}, &settleEvening),
        amends<WickStock>({{"wick", ""}}, &settleWick),
        amends<PropolisMove>({}, &settlePropolis),
        amends<HiveProject>({}, &settleProject),
        amends<ProjectLook>({{"project", ""}}, &settleProjectLook),
    };
}

}  // namespace combwright
