#include "core/actions/honey_room/runs.h"

#include <algorithm>

#include "core/actions/boxes/box_steps.h"
#include "core/actions/honey/vessel_rules.h"
#include "core/actions/honey_room/load_line.h"
#include "core/actions/honey_room/pegs.h"
#include "core/actions/honey_room/run_rules.h"
#include "core/actions/storeroom/quarantine.h"
#include "core/places/honey_room/run_balance.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/pegs.h"
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
    if (auto ok = demandRoomAir(made); !ok) return ok.error();
    return file.add(made);
}

const Fields& WeighBox::fields() {
    static const Fields all =
        describe(field<&WeighBox::on>("on"), field<&WeighBox::run>("run"),
                 field<&WeighBox::box>("box"), field<&WeighBox::hive>("hive"),
                 field<&WeighBox::knownAs>("known_as"), field<&WeighBox::frames>("frames"),
                 known<&WeighBox::filled>("filled"), known<&WeighBox::gross>("gross"),
                 known<&WeighBox::wet>("wet"), field<&WeighBox::peg>("peg"));
    return all;
}

namespace {

/// The peg a box is weighed by: as it is clipped, with what is said of its box now. One that nobody
/// clipped yet is clipped where box or hive is given; by its number alone it is a slip of the pen.
Result<Peg> pegWeighed(Write& file, const WeighBox& weigh) {
    auto peg = pegOn(file, *weigh.peg, weigh.on);
    if (!peg) {
        if (!weigh.box && !weigh.hive) return noSuchPeg(*weigh.peg);
        Peg made;
        made.number = *weigh.peg;
        made.on = weigh.on;
        made.box = weigh.box;
        made.hive = weigh.hive;
        if (auto added = addPeg(file, made); !added) return added.error();
        return *pegOn(file, *weigh.peg, weigh.on);
    }
    if (weigh.box && peg->box && peg->box != weigh.box) return pegTaken(file, *peg);
    const Peg before = *peg;
    if (weigh.box) peg->box = weigh.box;
    if (weigh.hive && peg->hive && peg->hive != weigh.hive)
        return Refusal{Code::Contradiction,
                       "hive",
                       {{"filled", nameOf(file, Peg::table, peg->id.number)},
                        {"by", nameOf(file, Hive::table, peg->hive->number)}}};
    if (weigh.hive) peg->hive = weigh.hive;
    if (peg->box == before.box && peg->hive == before.hive) return *peg;
    if (auto ok = demandPeg(file, *peg); !ok) return ok.error();
    file.change(*peg);
    return *peg;
}

/// The entry of a run that is weighed on: of the same box, or of the same tag where nobody knows
/// the box.
ExtractionBox entryOf(const Read& file, Id<Extraction> run, std::optional<Id<Box>> box,
                      const std::string& knownAs) {
    ExtractionBox entry;
    for (ExtractionBox& each : file.where<ExtractionBox>({is("extraction", run)})) {
        const bool same = box ? each.box == box : !each.box && each.knownAs == knownAs;
        if (same && (box || !knownAs.empty())) entry = std::move(each);
    }
    return entry;
}

/// The entry of that tag, whether its box is known by now or not.
ExtractionBox entryTagged(const Read& file, Id<Extraction> run, const std::string& tag) {
    ExtractionBox entry;
    if (tag.empty()) return entry;
    for (ExtractionBox& each : file.where<ExtractionBox>({is("extraction", run)}))
        if (each.knownAs == tag) entry = std::move(each);
    return entry;
}

/// A box is spun in one run: where another that is open has it full, one of the two is a slip.
Result<void> demandInNoOtherRun(const Read& file, Id<Box> box, const Extraction& run) {
    for (const Extraction& other : file.where<Extraction>({isUnknown("closed")})) {
        if (other.id == run.id) continue;
        const auto entry = file.first<ExtractionBox>({is("extraction", other.id), is("box", box)});
        if (!entry || (entry->wet && entry->wet->value)) continue;
        const auto went = framesOfBoxes(file, other.id);
        const auto found = went.find(entry->id.number);
        if (entry->frames && found != went.end() && found->second.left(entry->frames->value()) == 0)
            continue;
        const auto moves = file.where<BoxMove>({is("box", box)});
        if (std::any_of(moves.begin(), moves.end(), [&](const BoxMove& move) {
                return move.on > other.on && move.toPlace == BoxPlace::OnHive;
            }))
            continue;  // Filled again since.
        return Refusal{Code::Taken,
                       "box",
                       {{"name", calledInRun(file, *entry)}, {"in_run", other.name.text()}}};
    }
    return {};
}

/// The box of an entry: what it is made for, whose honey is in it, and its way on through the room.
Result<void> bringIn(Write& file, ExtractionBox& entry, bool isWet, Day on) {
    const Id<Box> box = *entry.box;
    const auto present = file.find(box);
    if (!present) return Refusal{Code::NotFound, "box", {}};
    // Comb that is held apart is not spun; what was in the run already is weighed out of it.
    if (!entry.id)
        if (auto free = demandNotApart(file, *present, on, "box"); !free) return free.error();
    if (!entry.hive) entry.hive = hiveThatFilled(file, box, on);
    if (!entry.frameKind)
        if (const auto kind = file.find(present->kind)) entry.frameKind = kind->takes;
    if (!entry.frames) entry.frames = framesIn(file, *present);
    const BoxPlace goes = isWet ? BoxPlace::Wet : BoxPlace::Waiting;
    const bool moves =
        isWet ? present->place != BoxPlace::Wet
              : present->place == BoxPlace::OnHive || present->place == BoxPlace::Cleared;
    if (!moves) return {};
    return putBoxBack(file, box, BoxSpot{goes}, on);
}

}  // namespace

Result<Id<ExtractionBox>> WeighBox::perform(Write& file) const {
    const auto lot = openRun(file, run, on);
    if (!lot) return lot.error();
    std::optional<Peg> clipped;
    if (peg) {
        auto found = pegWeighed(file, *this);
        if (!found) return found.error();
        clipped = *std::move(found);
    }
    const auto meant = clipped && clipped->box ? clipped->box : box;
    const auto filledBy = hive ? hive : clipped ? clipped->hive : std::nullopt;
    // A box without a mark is called by its peg.
    std::string tag = knownAs;
    const auto painted = file.find(meant);
    if (clipped && tag.empty() && (!painted || painted->mark.empty()))
        tag = pegTag(file, *clipped, lot->on);
    if (!meant && !filledBy && tag.empty()) return Refusal{Code::Missing, "box", {}};

    ExtractionBox entry = entryOf(file, run, meant, tag);
    // Weighed full when nobody knew the box, and known by now: it is still the same one.
    if (!entry.id && clipped && meant)
        if (auto unknown = entryOf(file, run, std::nullopt, pegTag(file, *clipped, lot->on));
            unknown.id)
            entry = std::move(unknown);
    // Or named since: its line knows the box, the peg does not.
    if (!entry.id && clipped && !meant) entry = entryTagged(file, run, tag);
    if (entry.hive && hive && entry.hive != hive)
        return Refusal{Code::Contradiction,
                       "hive",
                       {{"filled", calledInRun(file, entry)},
                        {"by", nameOf(file, Hive::table, entry.hive->number)}}};
    if (meant)
        if (auto same = demandFilledBy(file, *meant, hive, on); !same) return same.error();
    if (!entry.id && meant)
        if (auto free = demandInNoOtherRun(file, *meant, *lot); !free) return free.error();
    if (!entry.id && lot->closed) return Refusal{Code::Closed, "run", {{"name", lot->name.text()}}};
    const bool isNew = !entry.id;
    entry.extraction = run;
    if (meant) entry.box = meant;
    if (hive || (isNew && filledBy)) entry.hive = filledBy;
    if (!tag.empty()) entry.knownAs = tag;
    if (frames) entry.frames = frames;
    if (filled) entry.filled = filled;
    if (gross) entry.gross = gross;
    if (wet) entry.wet = wet;
    if (auto weights = demandWeights(entry); !weights) return weights.error();

    if (filledBy && isNew)
        if (auto free = demandHiveFree(file, *filledBy, on, "hive"); !free) return free.error();
    if (meant)
        if (auto in = bringIn(file, entry, wet.has_value(), on); !in) return in.error();
    if (isNew)
        file.add(entry);
    else
        file.change(entry);
    if (wet && meant) unpeg(file, *meant, on);
    if (wet && clipped && !meant && !clipped->off) {
        clipped->off = on;
        file.change(*clipped);
    }
    return entry.id;
}

const Fields& NameLostBox::fields() {
    static const Fields all =
        describe(field<&NameLostBox::on>("on"), field<&NameLostBox::lost>("lost"),
                 field<&NameLostBox::hive>("hive"), field<&NameLostBox::box>("box"),
                 field<&NameLostBox::peg>("peg"), field<&NameLostBox::reason>("reason"));
    return all;
}

namespace {

/// The peg a lost box had: of those of that number the last one clipped by the day.
std::optional<Peg> pegThatWas(const Read& file, Count number, Day on) {
    std::optional<Peg> last;
    for (Peg& each : file.where<Peg>({is("number", number)}))
        if (each.on <= on && (!last || each.on >= last->on)) last = std::move(each);
    return last;
}

}  // namespace

Result<Id<ExtractionBox>> NameLostBox::perform(Write& file) const {
    auto entry = file.find(lost);
    if (!entry) return Refusal{Code::NotFound, "lost", {}};
    std::optional<Peg> had;
    if (peg) {
        had = pegThatWas(file, *peg, on);
        if (!had) return noSuchPeg(*peg);
    }
    const auto meant = box ? box : had ? had->box : std::nullopt;
    auto of = hive ? hive : had ? had->hive : std::nullopt;
    if (meant && !of) of = hiveThatFilled(file, *meant, on);
    if (!meant && !of) return Refusal{Code::Missing, "hive", {}};
    if (!of) of = entry->hive;
    if (entry->hive && of != entry->hive)
        return Refusal{Code::OtherAction, "hive", {{"action", "amend"}}};
    const bool boxKnown = !meant || entry->box == meant;
    if (boxKnown && entry->hive == of) return Refusal{Code::NothingToDo, "hive", {}};
    if (of && entry->hive != of)
        if (const auto free = demandHiveFree(file, *of, on, "hive"); !free) {
            if (reason.empty()) return free.error();
            // It stays where the honey is followed: on the run.
            auto run = file.find(entry->extraction);
            const std::string held = std::string(free.error().value("name")) + ", " +
                                     std::string(free.error().value("why"));
            addOverruled(run->note, on, held, reason);
            file.change(*run);
        }
    if (!boxKnown) {
        if (entry->box) return Refusal{Code::Fixed, "box", {}};
        if (entryOf(file, entry->extraction, meant, {}).id)
            return Refusal{Code::Taken, "box", {{"name", nameOf(file, Box::table, meant->number)}}};
        entry->box = meant;
    }
    entry->hive = of;
    if (!boxKnown) {
        const bool isWet = entry->wet.has_value();
        if (auto in = bringIn(file, *entry, isWet, on); !in) return in.error();
        if (isWet) unpeg(file, *meant, on);
    }
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
    if (ran != Ran::Stopped) {
        if (auto free = demandMayBeSpun(file, *inIt, on, said); !free) return free.error();
        if (auto there = demandFramesThere(file, run, *inIt, said); !there) return there.error();
    }

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
    if (auto ok = demandLedger(file, {filled.id, std::nullopt}, "net_g"); !ok) return ok.error();
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
    if (auto counted = demandHoneyCounted(*balance); !counted) return counted.error();
    for (const RunShare& share : balance->shares)
        file.add(ClosingShare{{}, run, share.hive, share.mass, share.how});
    lot->closed = on;
    file.change(*lot);
    unpegRun(file, run, on);
    return run;
}

}  // namespace combwright
