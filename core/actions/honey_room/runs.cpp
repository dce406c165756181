#include "core/actions/honey_room/runs.h"

#include <algorithm>

#include "core/actions/boxes/box_steps.h"
#include "core/actions/honey_room/load_line.h"
#include "core/actions/honey_room/run_rules.h"
#include "core/actions/storeroom/quarantine.h"
#include "core/places/run_balance.h"
#include "core/storage/queries/runs.h"

namespace combwright {
const Fields& OpenRun::fields() {
    static const Fields all =
        describe(field<&OpenRun::on>("on"), field<&OpenRun::run>("name"),
                 field<&OpenRun::yard>("yard"), field<&OpenRun::room>("room"),
                 field<&OpenRun::damp>("damp"), field<&OpenRun::note>("note"));
    return all;
}

Result<Id<Extraction>> OpenRun::perform(Write& file) const {
    for (const Extraction& each : file.all<Extraction>())
        if (each.name == run) return Refusal{Code::Taken, "name", {{"name", run.text()}}};
    Extraction made;
    made.name = run;
    made.on = on;
    made.yard = yard;
    made.room = room;
    made.damp = damp;
    made.note = note;
    return file.add(made);
}

const Fields& WeighBox::fields() {
    static const Fields all = describe(
        field<&WeighBox::on>("on"), field<&WeighBox::run>("run"), field<&WeighBox::box>("box"),
        field<&WeighBox::hive>("hive"), field<&WeighBox::knownAs>("known_as"),
        field<&WeighBox::frames>("frames"), known<&WeighBox::filled>("filled"),
        known<&WeighBox::gross>("gross"), known<&WeighBox::wet>("wet"));
    return all;
}

Result<Id<ExtractionBox>> WeighBox::perform(Write& file) const {
    const auto lot = openRun(file, run, on);
    if (!lot) return lot.error();
    if (!box && !hive && knownAs.empty()) return Refusal{Code::Missing, "box", {}};

    ExtractionBox entry;
    for (ExtractionBox& each : file.where<ExtractionBox>({is("extraction", run)})) {
        const bool same = box ? each.box == box : !each.box && each.knownAs == knownAs;
        if (same && (box || !knownAs.empty())) entry = std::move(each);
    }
    if (!entry.id && lot->closed) return Refusal{Code::Closed, "run", {{"name", lot->name.text()}}};
    entry.extraction = run;
    if (box) entry.box = box;
    if (hive) entry.hive = hive;
    if (!knownAs.empty()) entry.knownAs = knownAs;
    if (frames) entry.frames = frames;
    if (filled) entry.filled = filled;
    if (gross) entry.gross = gross;
    if (wet) entry.wet = wet;
    if (auto weights = demandWeights(entry); !weights) return weights.error();

    if (hive && !entry.id)
        if (auto free = demandHiveFree(file, *hive, on, "hive"); !free) return free.error();
    if (box) {
        const auto present = file.find(*box);
        if (!present) return Refusal{Code::NotFound, "box", {}};
        // Comb that is held apart is not spun; what was in the run already is weighed out of it.
        if (!entry.id)
            if (auto free = demandNotApart(file, *present, on, "box"); !free) return free.error();
        if (!entry.hive) entry.hive = hiveThatFilled(file, *box, on);
        if (!entry.frameKind)
            if (const auto kind = file.find(present->kind)) entry.frameKind = kind->takes;
        if (!entry.frames) entry.frames = framesIn(file, *present);
        const BoxPlace goes = wet ? BoxPlace::Wet : BoxPlace::Waiting;
        const bool moves =
            wet ? present->place != BoxPlace::Wet
                : present->place == BoxPlace::OnHive || present->place == BoxPlace::Cleared;
        if (moves)
            if (auto moved = putBoxBack(file, *box, BoxSpot{goes}, on); !moved)
                return moved.error();
    }
    if (!entry.id) return file.add(entry);
    file.change(entry);
    return entry.id;
}

const Fields& NameLostBox::fields() {
    static const Fields all =
        describe(field<&NameLostBox::on>("on"), field<&NameLostBox::lost>("lost"),
                 field<&NameLostBox::hive>("hive"));
    return all;
}

Result<Id<ExtractionBox>> NameLostBox::perform(Write& file) const {
    auto entry = file.find(lost);
    if (!entry) return Refusal{Code::NotFound, "lost", {}};
    if (entry->hive == hive) return Refusal{Code::NothingToDo, "hive", {}};
    entry->hive = hive;
    file.change(*entry);
    return lost;
}

const Fields& TakeBoxOut::fields() {
    static const Fields all =
        describe(field<&TakeBoxOut::on>("on"), field<&TakeBoxOut::box>("box"));
    return all;
}

Result<Id<Extraction>> TakeBoxOut::perform(Write& file) const {
    const auto entry = file.find(box);
    if (!entry) return Refusal{Code::NotFound, "box", {}};
    const auto lot = openRun(file, entry->extraction, on);
    if (!lot) return lot.error();
    if (lot->closed) return Refusal{Code::Closed, "run", {{"name", lot->name.text()}}};
    if (file.first<LoadBox>({is("box", box)}))
        return Refusal{Code::MovedOn, "box", {{"name", calledInRun(file, *entry)}}};
    file.remove(box);
    return lot->id;
}

const Fields& SpinFrames::fields() {
    static const Fields all = describe(
        field<&SpinFrames::on>("on"), field<&SpinFrames::run>("run"),
        field<&SpinFrames::boxes>("boxes"), field<&SpinFrames::minutes>("spun"),
        field<&SpinFrames::ran>("ran"), field<&SpinFrames::rpm>("rpm"),
        field<&SpinFrames::startOffset>("start_offset"),
        field<&SpinFrames::endOffset>("end_offset"), field<&SpinFrames::doubt>("doubt"),
        field<&SpinFrames::slots>("slots"), field<&SpinFrames::begun>("begun"),
        field<&SpinFrames::uncapping>("uncapping"), field<&SpinFrames::machine>("machine"));
    return all;
}

Result<Id<SpinLoad>> SpinFrames::perform(Write& file) const {
    const auto lot = openRun(file, run, on);
    if (!lot) return lot.error();
    if (machine)
        if (auto turns = demandExtractor(file, *machine, on); !turns) return turns.error();
    const auto hung = readSlots(file, *lot, slots, on);
    if (!hung) return hung.error();
    auto inIt = readLoadBoxes(file, *lot, boxes, on);
    if (!inIt) return inIt.error();
    if (!slots.empty()) {
        const auto counted = countedBoxes(*hung);
        if (!inIt->empty() && !sameBoxes(*inIt, counted))
            return Refusal{Code::Contradiction, "boxes", {{"other", "slots"}}};
        inIt = counted;
    }
    const char* const said = slots.empty() ? "boxes" : "slots";
    if (auto fits = demandFits(file, *inIt, *hung, machine, on, said); !fits) return fits.error();
    if (ran != Ran::Stopped)
        if (auto there = demandFramesThere(file, run, *inIt, said); !there) return there.error();

    const auto earlier = file.where<SpinLoad>({is("extraction", run)});
    const Count number(static_cast<std::int64_t>(earlier.size()) + 1);
    SpinLoad spun{{}, run, number, on, minutes, ran, rpm, startOffset, endOffset, doubt};
    spun.machine = machine;
    spun.begun = begun;
    spun.uncapping = uncapping;
    const Id<SpinLoad> load = file.add(spun);
    for (const FramesInLoad& each : *inIt)
        file.add(LoadBox{{}, load, each.box.id, Count(each.frames)});
    for (const FrameInSlot& each : *hung)
        file.add(SlotFrame{{},
                           load,
                           Count(each.slot),
                           each.box ? std::optional(each.box->id) : std::nullopt,
                           each.heft});
    return load;
}

const Fields& FillBucket::fields() {
    static const Fields all =
        describe(field<&FillBucket::on>("on"), field<&FillBucket::run>("run"),
                 field<&FillBucket::bucket>("mark"), known<&FillBucket::net>("net"),
                 field<&FillBucket::water>("water"), field<&FillBucket::lidded>("lidded"),
                 field<&FillBucket::note>("note"));
    return all;
}

Result<Id<Bucket>> FillBucket::perform(Write& file) const {
    const auto lot = openRun(file, run, on);
    if (!lot) return lot.error();
    Bucket filled;
    for (Bucket& each : file.where<Bucket>({is("extraction", run)}))
        if (each.mark == bucket) filled = std::move(each);
    filled.extraction = run;
    filled.mark = bucket;
    if (net) filled.net = net;
    if (water) filled.water = water;
    if (lidded) filled.lidded = lidded;
    if (!note.empty()) filled.note = note;
    if (auto ok = demandBucket(filled); !ok) return ok.error();
    if (!filled.id) return file.add(filled);
    file.change(filled);
    return filled.id;
}

const Fields& WeighCappings::fields() {
    static const Fields all = describe(
        field<&WeighCappings::on>("on"), field<&WeighCappings::run>("run"),
        known<&WeighCappings::cappings>("cappings"), known<&WeighCappings::scrapings>("scrapings"));
    return all;
}

Result<Id<Extraction>> WeighCappings::perform(Write& file) const {
    auto lot = openRun(file, run, on);
    if (!lot) return lot.error();
    if (cappings) lot->cappings = cappings;
    if (scrapings) lot->scrapings = scrapings;
    if (auto ok = demandCappings(*lot); !ok) return ok.error();
    file.change(*lot);
    return run;
}

const Fields& CloseRun::fields() {
    static const Fields all = describe(field<&CloseRun::on>("on"), field<&CloseRun::run>("run"));
    return all;
}

Result<Id<Extraction>> CloseRun::perform(Write& file) const {
    auto lot = openRun(file, run, on);
    if (!lot) return lot.error();
    if (lot->closed) return Refusal{Code::Closed, "run", {{"name", lot->name.text()}}};
    if (const std::int64_t left = framesOnPile(file, run); left > 0)
        return Refusal{
            Code::NotClosed, "run", {{"name", lot->name.text()}, {"aside", std::to_string(left)}}};
    const auto balance = runBalance(file, run);
    if (!balance) return balance.error();
    if (balance->shares.empty())
        return Refusal{Code::Missing, "net_g", {{"name", lot->name.text()}}};
    for (const RunShare& share : balance->shares)
        file.add(ClosingShare{{}, run, share.hive, share.mass, share.how});
    lot->closed = on;
    file.change(*lot);
    return run;
}

}  // namespace combwright
