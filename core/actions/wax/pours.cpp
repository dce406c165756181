#include "core/actions/wax/pours.h"

namespace combwright {

const Fields& PourCandles::fields() {
    static const Fields all =
        describe(field<&PourCandles::on>("on"), field<&PourCandles::mould>("mould"),
                 field<&PourCandles::kind>("goods_kind"), field<&PourCandles::at>("poured_at"),
                 field<&PourCandles::good>("good"), field<&PourCandles::failed>("failed"),
                 field<&PourCandles::seconds>("seconds"), field<&PourCandles::cycles>("cycles"),
                 field<&PourCandles::blocks>("blocks"), known<&PourCandles::returned>("returned"),
                 field<&PourCandles::temperature>("temperature"), field<&PourCandles::wick>("wick"),
                 field<&PourCandles::wickUsed>("wick_used"), field<&PourCandles::note>("note"));
    return all;
}

Result<Id<Pour>> PourCandles::perform(Write& file) const {
    const auto form = mouldOn(file, mould, on);
    if (!form) return form.error();
    Pour pour;
    pour.mould = mould;
    const auto candle = kind ? kind : form->kind;
    if (!candle) return Refusal{Code::Missing, "goods_kind"};
    pour.kind = *candle;
    pour.on = on;
    pour.at = at;
    pour.good = good;
    pour.failed = failed;
    pour.seconds = seconds;
    pour.returned = returned;
    pour.temperature = temperature;
    pour.wick = wick.empty() ? form->wick : wick;
    pour.wickUsed = wickUsed;
    const std::int64_t pieces = piecesOf(pour);
    if (!wickUsed && form->wickLength)
        pour.wickUsed = Length::tenthsOfMm(form->wickLength->count() * pieces);
    pour.note = note;
    if (auto ok = demandPour(file, pour, *form, cycles); !ok) return ok.error();
    const auto needed = neededFor(*form, pieces);
    const auto drawn = readWaxDrawn(file, blocks, on, needed);
    // A block without a mass, and a mould nobody knows the volume of.
    if (!drawn && !needed && drawn.error().code == Code::Missing && !waxParts(blocks).empty())
        return Refusal{Code::Missing, "volume_ml", {{"mould", form->name.text()}}};
    if (!drawn) return drawn.error();
    file.add(pour);
    for (WaxUse use : *drawn) {
        use.pour = pour.id;
        file.add(use);
    }
    for (const WaxUse& use : *drawn)
        if (auto ok = demandBlockLedger(file, use.block, "blocks"); !ok) return ok.error();
    if (auto ok = demandPourLedger(file, pour.id, "returned_g"); !ok) return ok.error();
    return pour.id;
}

const Fields& FinishCandles::fields() {
    static const Fields all =
        describe(field<&FinishCandles::on>("on"), field<&FinishCandles::pour>("pour"),
                 field<&FinishCandles::work>("candle_work"), field<&FinishCandles::broke>("broke"),
                 field<&FinishCandles::note>("note"));
    return all;
}

Result<Id<Pour>> FinishCandles::perform(Write& file) const {
    auto poured = file.find(pour);
    if (!poured) return Refusal{Code::NotFound, "pour"};
    if (on < poured->on)
        return Refusal{Code::BeforeItBegan, "on", {{"since", isoText(poured->on)}}};
    if (broke && *broke > poured->good)
        return Refusal{Code::TooMany, "broke", {{"most", std::to_string(poured->good.value())}}};
    // On the shelf already: what breaks there goes out of the door as broken.
    if (broke && poured->labelled)
        return Refusal{Code::OtherAction, "broke", {{"action", "go-out"}}};
    const auto done = [&](std::optional<Day>& step) {
        if (!step) step = on;
    };
    const std::optional<Day>& meant = work == CandleWork::Released  ? poured->released
                                      : work == CandleWork::Trimmed ? poured->trimmed
                                                                    : poured->labelled;
    if (meant && !broke)
        return Refusal{Code::NothingToDo, "candle_work", {{"since", isoText(*meant)}}};
    done(poured->released);
    if (work != CandleWork::Released) done(poured->trimmed);
    if (work == CandleWork::Labelled) done(poured->labelled);
    if (stepOutOfOrder(*poured))
        return Refusal{Code::BeforeItBegan, "on", {{"since", isoText(*poured->released)}}};
    if (broke) {
        poured->good = Count(poured->good.value() - broke->value());
        poured->failed = Count((poured->failed ? poured->failed->value() : 0) + broke->value());
    }
    if (!note.empty()) poured->note += (poured->note.empty() ? "" : "; ") + note;
    file.change(*poured);
    return pour;
}

}  // namespace combwright
