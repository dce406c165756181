#include "core/actions/honey_room/pegs.h"

#include "core/actions/boxes/box_steps.h"
#include "core/actions/storeroom/quarantine.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/pegs.h"
#include "core/storage/queries/runs.h"

namespace combwright {
namespace {

constexpr std::int64_t highestPeg = 999;

/// What a peg is on, for a sentence: the box by its mark, else its hive, else nothing.
std::pair<std::string, std::string> peggedTo(const Read& file, const Peg& peg) {
    const auto box = file.find(peg.box);
    if (box && !box->mark.empty()) return {"pegged", box->mark};
    const auto hive = file.find(peg.hive);
    if (hive) return {"pegged_of", hive->mark.text()};
    return {"pegged_unknown", "yes"};
}

}  // namespace

Refusal pegTaken(const Read& file, const Peg& peg) {
    return Refusal{Code::Taken,
                   "peg",
                   {{"name", std::to_string(peg.number.value())},
                    {"since", isoText(peg.on)},
                    peggedTo(file, peg)}};
}

Refusal noSuchPeg(Count peg) {
    return Refusal{
        Code::NotFound, "peg", {{"name", std::to_string(peg.value())}, {"lacks", "peg"}}};
}

Result<void> demandPeg(const Read& file, const Peg& peg) {
    if (peg.number.value() < 1 || peg.number.value() > highestPeg)
        return Refusal{Code::OutOfRange, "peg", {{"low", "1"}, {"high", "999"}}};
    if (peg.off && *peg.off < peg.on)
        return Refusal{Code::Contradiction, "off_day", {{"other", "on_day"}}};
    // A number counts to the end of the day it came off; a box may carry another that same day.
    for (const Peg& other : file.where<Peg>({is("number", peg.number)}))
        if (other.id != peg.id && (!other.off || peg.on <= *other.off) &&
            (!peg.off || other.on <= *peg.off))
            return pegTaken(file, other);
    if (!peg.box) return {};
    for (const Peg& other : file.where<Peg>({is("box", *peg.box)}))
        if (other.id != peg.id && (!other.off || peg.on < *other.off) &&
            (!peg.off || other.on < *peg.off))
            return Refusal{Code::Taken,
                           "box",
                           {{"name", nameOf(file, Box::table, peg.box->number)},
                            {"carries", std::to_string(other.number.value())}}};
    return {};
}

Result<void> demandFilledBy(const Read& file, Id<Box> box, const std::optional<Id<Hive>>& hive,
                            Day on) {
    const auto known = hiveThatFilled(file, box, on);
    if (!hive || !known || known == hive) return {};
    return Refusal{Code::Contradiction,
                   "hive",
                   {{"filled", nameOf(file, Box::table, box.number)},
                    {"by", nameOf(file, Hive::table, known->number)}}};
}

Result<Id<Peg>> addPeg(Write& file, Peg peg) {
    if (auto ok = demandPeg(file, peg); !ok) return ok.error();
    return file.add(peg);
}

void unpeg(Write& file, Id<Box> box, Day on) {
    auto peg = pegOfBox(file, box, on);
    if (!peg) return;
    peg->off = on;
    file.change(*peg);
}

void unpegRun(Write& file, Id<Extraction> id, Day on) {
    const auto run = file.find(id);
    if (!run) return;
    for (const ExtractionBox& entry : file.where<ExtractionBox>({is("extraction", id)})) {
        if (entry.box) {
            unpeg(file, *entry.box, on);
            continue;
        }
        for (Peg& peg : file.where<Peg>({isUnknown("box"), isUnknown("off_day")})) {
            if (peg.on > on || pegTag(file, peg, run->on) != entry.knownAs) continue;
            peg.off = on;
            file.change(peg);
        }
    }
}

const Fields& ClipPeg::fields() {
    static const Fields all = describe(field<&ClipPeg::on>("on"), field<&ClipPeg::peg>("peg"),
                                       field<&ClipPeg::box>("box"), field<&ClipPeg::hive>("hive"));
    return all;
}

Result<Id<Peg>> ClipPeg::perform(Write& file) const {
    Peg made;
    made.number = peg;
    made.box = box;
    made.hive = hive;
    made.on = on;
    if (box) {
        const auto present = file.find(*box);
        if (!present || !inUse(*present))
            return Refusal{
                Code::NotFound, "box", {{"name", nameOf(file, Box::table, box->number)}}};
        if (on < present->since)
            return Refusal{Code::BeforeItBegan,
                           "on",
                           {{"name", nameOf(file, Box::table, box->number)},
                            {"since", isoText(present->since)}}};
        if (auto same = demandFilledBy(file, *box, hive, on); !same) return same.error();
        const auto worn = pegOfBox(file, *box, on);
        if (worn && worn->number == peg)
            return Refusal{Code::NothingToDo, "peg", {{"name", std::to_string(peg.value())}}};
        // Asked before the box moves: on its hive it is called by that.
        if (auto ok = demandPeg(file, made); !ok) return ok.error();
        if (present->place == BoxPlace::OnHive || present->place == BoxPlace::Cleared) {
            if (!hive && present->place == BoxPlace::OnHive) made.hive = present->hive;
            if (auto free = demandNotApart(file, *present, on, "box"); !free) return free.error();
            if (auto off = moveBoxTo(file, *box, BoxSpot{BoxPlace::Waiting}, on); !off)
                return off.error();
        }
    } else if (hive) {
        if (auto free = demandHiveFree(file, *hive, on, "hive"); !free) return free.error();
    }
    return addPeg(file, made);
}

const Fields& TakePegOff::fields() {
    static const Fields all =
        describe(field<&TakePegOff::on>("on"), field<&TakePegOff::peg>("peg"));
    return all;
}

Result<Id<Peg>> TakePegOff::perform(Write& file) const {
    auto clipped = pegOn(file, peg, on);
    if (!clipped) return noSuchPeg(peg);
    if (clipped->off == on)
        return Refusal{Code::NothingToDo, "peg", {{"name", std::to_string(peg.value())}}};
    clipped->off = on;
    file.change(*clipped);
    return clipped->id;
}

}  // namespace combwright
