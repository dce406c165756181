#include "core/actions/honey_room/asides.h"

#include "core/actions/honey_room/run_rules.h"
#include "core/storage/queries/runs.h"

namespace combwright {

Result<void> demandAside(const Read& file, const SetAside& aside) {
    if (auto ours = demandBoxOfRun(file, aside.extraction, aside.box); !ours) return ours;
    if (aside.frames < Count(1)) return Refusal{Code::OutOfRange, "frames", {{"low", "0"}}};
    if (aside.frames > Count(mostFramesAside))
        return Refusal{
            Code::OutOfRange, "frames", {{"low", "1"}, {"high", std::to_string(mostFramesAside)}}};
    const auto box = file.find(aside.box);
    if (!box || !box->frames) return {};
    std::int64_t left = box->frames->value();
    for (const SetAside& each : file.where<SetAside>({is("box", box->id)}))
        // One that went into the machine again may come out not empty once more.
        if (each.id != aside.id && each.became != AsideBecame::SpunAgain)
            left -= each.frames.value();
    if (aside.frames.value() <= left) return {};
    return Refusal{Code::TooMany,
                   "frames",
                   {{"frames_of", calledInRun(file, *box)}, {"most", std::to_string(left)}}};
}

const Fields& PutAside::fields() {
    static const Fields all =
        describe(field<&PutAside::on>("on"), field<&PutAside::run>("run"),
                 field<&PutAside::box>("box"), field<&PutAside::frames>("frames"),
                 field<&PutAside::reason>("reason"), field<&PutAside::note>("note"));
    return all;
}

Result<Id<SetAside>> PutAside::perform(Write& file) const {
    const auto lot = openRun(file, run, on);
    if (!lot) return lot.error();
    if (lot->closed) return Refusal{Code::Closed, "run", {{"name", lot->name.text()}}};
    SetAside aside;
    aside.extraction = run;
    aside.box = box;
    aside.on = on;
    aside.frames = frames.value_or(Count(1));
    aside.why = reason;
    aside.note = note;
    if (auto ok = demandAside(file, aside); !ok) return ok.error();
    return file.add(aside);
}

const Fields& SettleAside::fields() {
    static const Fields all =
        describe(field<&SettleAside::on>("on"), field<&SettleAside::aside>("aside"),
                 field<&SettleAside::became>("became"), field<&SettleAside::frames>("frames"));
    return all;
}

Result<Id<SetAside>> SettleAside::perform(Write& file) const {
    auto lying = file.find(aside);
    if (!lying) return Refusal{Code::NotFound, "aside", {}};
    if (on < lying->on) return Refusal{Code::BeforeItBegan, "on", {{"since", isoText(lying->on)}}};
    if (lying->became) return Refusal{Code::OtherAction, "became", {{"action", "amend"}}};
    const std::int64_t many = frames.value_or(lying->frames).value();
    if (many < 1) return Refusal{Code::OutOfRange, "frames", {{"low", "0"}}};
    if (many > lying->frames.value())
        return Refusal{Code::TooMany, "frames", {{"most", std::to_string(lying->frames.value())}}};
    if (many == lying->frames.value()) {
        lying->became = became;
        lying->becameOn = on;
        file.change(*lying);
        return lying->id;
    }
    SetAside settled = *lying;
    settled.id = {};
    settled.frames = Count(many);
    settled.became = became;
    settled.becameOn = on;
    lying->frames = Count(lying->frames.value() - many);
    file.change(*lying);
    return file.add(settled);
}

}  // namespace combwright
