#include "core/actions/storeroom/freezer.h"

#include <algorithm>
#include <charconv>

#include "core/actions/boxes/box_list.h"
#include "core/actions/storeroom/frame_picks.h"
#include "core/actions/storeroom/marked_boxes.h"
#include "core/actions/storeroom/quarantine.h"
#include "core/places/storeroom/freezer.h"
#include "core/storage/queries/machines.h"
#include "core/storage/queries/names.h"

namespace combwright {
namespace {

/// One part of "M01 9, M03, D1 6 O".
struct LoadAsked {
    std::optional<Id<Box>> box;
    std::optional<Id<FrameKind>> kind;  ///< of loose frames
    std::string name;
    std::optional<Count> frames;
    std::string faults;
};

std::optional<Count> numberIn(const std::string& word) {
    std::int64_t number = 0;
    const char* end = word.data() + word.size();
    if (word.empty() || word.size() > 6) return std::nullopt;
    if (std::from_chars(word.data(), end, number).ptr != end) return std::nullopt;
    return Count(number);
}

/// Takes "6" or "6 O" off the end of the words.
void takeCount(std::vector<std::string>& words, LoadAsked& asked) {
    if (words.size() > 1)
        if (const auto many = numberIn(words.back())) {
            asked.frames = many;
            words.pop_back();
            return;
        }
    if (words.size() < 3) return;
    const auto letters = tidyFaults(words.back());
    const auto many = numberIn(words[words.size() - 2]);
    if (!letters || letters->empty() || !many) return;
    asked.faults = *letters;
    asked.frames = many;
    words.resize(words.size() - 2);
}

Result<LoadAsked> loadAsked(const Read& file, const std::string& part, Day on) {
    LoadAsked asked;
    // A mark may end in a number itself: "box 7" is a box before it is seven frames of "box".
    if (auto whole = markedBox(file, part, on); whole) {
        asked.box = whole->id;
        asked.name = part;
        return asked;
    }
    auto words = wordsOf(part);
    takeCount(words, asked);
    asked.name = joinedWords(words, 0, words.size());
    if (words.front() == "loose" && words.size() > 1) {
        const std::string kind = joinedWords(words, 1, words.size());
        const auto found = findNamed(file, FrameKind::table, NameQuery{.name = kind, .on = on});
        // One says "loose medium" and means the frames a medium box takes.
        if (!found)
            if (const auto boxKind = boxKindNamed(file, kind); boxKind && boxKind->takes) {
                asked.kind = boxKind->takes;
                return asked;
            }
        if (!found) return Refusal{Code::NotFound, "boxes", {{"name", kind}}};
        asked.kind = Id<FrameKind>{*found};
        return asked;
    }
    auto box = markedBox(file, asked.name, on);
    if (!box) return box.error();
    asked.box = box->id;
    return asked;
}

/// Which frames of the box, or of the shelf, a part means; each load holds one kind.
Result<std::vector<FreezerLoad>> loadsOf(const Read& file, const LoadAsked& asked, Day on,
                                         bool& held, bool& other) {
    const ShelfBox there = asked.box ? shelfBox(file, *asked.box, on) : looseFrames(file, on);
    if (there.frames.empty() && asked.box)
        return Refusal{Code::OtherAction, "boxes", {{"action", "count-box"}}};
    if (asked.frames && *asked.frames < Count(1))
        return Refusal{Code::OutOfRange, "boxes", {{"low", "0"}}};
    if (asked.box)
        if (auto free = demandNotQuarantined(file, *file.find(*asked.box), on, "boxes"); !free)
            return free.error();
    const auto most = framesMeant(there.frames, Count(100'000), asked.faults, asked.kind).size();
    const auto meant = framesMeant(there.frames, asked.frames, asked.faults, asked.kind);
    const bool tooMany = asked.frames && *asked.frames > Count(static_cast<std::int64_t>(most));
    if (tooMany || meant.empty())
        return Refusal{
            Code::TooMany, "boxes", {{"frames_of", asked.name}, {"most", std::to_string(most)}}};
    std::vector<FreezerLoad> loads;
    const HeldThings things = heldThings(file, on);
    for (const std::size_t at : meant) {
        const ShelfFrame& each = there.frames[at];
        // Cold does not cure foulbrood.
        if (each.held && diseaseHeld(things, each.frame))
            return heldBack(file, things, each.frame, "boxes");
        (each.held ? held : other) = true;
        const auto same = std::find_if(loads.begin(), loads.end(), [&](const FreezerLoad& load) {
            return load.frameKind == each.frame.kind;
        });
        if (same != loads.end()) {
            same->frames += Count(1);
            continue;
        }
        FreezerLoad load;
        load.box = asked.box;
        load.frameKind = each.frame.kind;
        load.frames = Count(1);
        load.faults = asked.faults;
        loads.push_back(std::move(load));
    }
    return loads;
}

/// Whether what lies in the freezer already is held, or other comb.
void lookInside(const Read& file, Id<Equipment> freezer, Day on, bool& held, bool& other) {
    for (const FreezerRound& round :
         file.where<FreezerRound>({is("freezer", freezer), isUnknown("out_day")}))
        for (const FreezerLoad& load : file.where<FreezerLoad>({is("round", round.id)})) {
            const ShelfBox there = load.box ? shelfBox(file, *load.box, on) : looseFrames(file, on);
            for (const ShelfFrame& each : there.frames)
                if (each.load == load.id) (each.held ? held : other) = true;
        }
}

Result<Equipment> freezerMeant(const Read& file, std::optional<Id<Equipment>> named, Day on) {
    if (named) {
        const auto freezer = file.find(*named);
        if (!freezer) return Refusal{Code::NotFound, "freezer", {}};
        if (freezer->item != EquipmentItem::Freezer)
            return Refusal{
                Code::NotAChoice, "freezer", {{"value", freezer->name}, {"choices", "freezer"}}};
        if (on < freezer->since)
            return Refusal{Code::BeforeItBegan,
                           "on",
                           {{"name", freezer->name}, {"since", isoText(freezer->since)}}};
        return machineRows(file, freezer->item, freezer->name).front();
    }
    auto freezers = machinesOf(file, EquipmentItem::Freezer);
    std::erase_if(freezers, [on](const Equipment& each) { return each.since > on; });
    if (freezers.empty()) return Refusal{Code::Missing, "freezer", {}};
    if (freezers.size() > 1)
        return Refusal{Code::Ambiguous,
                       "freezer",
                       {{"name", "freezer"}, {"count", std::to_string(freezers.size())}}};
    return freezers.front();
}

/// The frames of one load, to be changed.
std::vector<Frame> framesInLoad(const Read& file, const FreezerLoad& load, Day on) {
    std::vector<Frame> frames;
    const ShelfBox there = load.box ? shelfBox(file, *load.box, on) : looseFrames(file, on);
    for (const ShelfFrame& each : there.frames)
        if (each.load == load.id) frames.push_back(each.frame);
    return frames;
}

}  // namespace

const Fields& FreezeFrames::fields() {
    static const Fields all = describe(
        field<&FreezeFrames::on>("on"), field<&FreezeFrames::freezer>("freezer"),
        field<&FreezeFrames::boxes>("boxes"), field<&FreezeFrames::at>("at"),
        field<&FreezeFrames::hours>("hours"), field<&FreezeFrames::temperature>("temperature"),
        field<&FreezeFrames::measured>("measured"), field<&FreezeFrames::packed>("packed"),
        field<&FreezeFrames::note>("note"));
    return all;
}

Result<Id<FreezerRound>> FreezeFrames::perform(Write& file) const {
    const auto machine = freezerMeant(file, freezer, on);
    if (!machine) return machine.error();
    if (hours && (*hours < Count(1) || *hours > Count(8760)))
        return Refusal{Code::OutOfRange, "hours", {{"low", "1"}, {"high", "8760"}}};
    if (temperature && (temperature->celsius() < -90 || temperature->celsius() > 30))
        return Refusal{Code::OutOfRange, "temperature_c", {{"low", "-90"}, {"high", "30"}}};
    const auto parts = listedParts(boxes);
    if (parts.empty()) return Refusal{Code::Missing, "boxes", {}};

    FreezerRound round;
    round.freezer = machine->id;
    round.in = on;
    round.inAt = at;
    round.hours = hours;
    round.temperature = temperature;
    round.measured = measured;
    round.note = note;
    round.packed = packed;
    file.add(round);
    bool held = false;
    bool other = false;
    lookInside(file, machine->id, on, held, other);
    for (const std::string& part : parts) {
        const auto asked = loadAsked(file, part, on);
        if (!asked) return asked.error();
        auto loads = loadsOf(file, *asked, on, held, other);
        if (!loads) return loads.error();
        if (held && other)
            return Refusal{Code::Contradiction, "boxes", {{"other", "hold"}, {"held", part}}};
        // Each is in before the next part is read: a box named twice gives other frames.
        for (FreezerLoad& load : *loads) {
            load.round = round.id;
            file.add(load);
        }
    }
    return round.id;
}

const Fields& TakeOutFrozen::fields() {
    static const Fields all =
        describe(field<&TakeOutFrozen::on>("on"), field<&TakeOutFrozen::round>("round"),
                 field<&TakeOutFrozen::at>("at"));
    return all;
}

Result<Made> TakeOutFrozen::perform(Write& file) const {
    std::optional<FreezerRound> meant;
    if (round) {
        meant = file.find(*round);
        if (!meant) return Refusal{Code::NotFound, "round", {}};
        if (meant->out) return Refusal{Code::Closed, "round", {{"name", isoText(meant->in)}}};
    } else {
        const auto inside = file.where<FreezerRound>({isUnknown("out_day")});
        if (inside.empty()) return Refusal{Code::NothingToDo, "round", {}};
        if (inside.size() > 1)
            return Refusal{Code::Ambiguous,
                           "round",
                           {{"name", "round"}, {"count", std::to_string(inside.size())}}};
        meant = inside.front();
    }
    const bool before = on < meant->in || (at && meant->inAt && *at < *meant->inAt);
    if (before)
        return Refusal{
            Code::BeforeItBegan, "on", {{"name", "freezer"}, {"since", isoText(meant->in)}}};
    const auto loads = file.where<FreezerLoad>({is("round", meant->id)});
    std::vector<Frame> frames;
    for (const FreezerLoad& load : loads)
        if (!load.stale)
            for (Frame& each : framesInLoad(file, load, on)) frames.push_back(std::move(each));
    meant->out = on;
    meant->outAt = at;
    file.change(*meant);
    Made made = madeOf(meant->id);
    if (!coldProof(file, *meant).enough()) return made;
    for (Frame& each : frames) {
        each.frozen = on;
        if (each.verdict == Verdict::Freeze) each.verdict = Verdict::Keep;
        file.change(each);
        made.emplace_back(Frame::table, each.id.number);
    }
    return made;
}

const Fields& SpoilFrozen::fields() {
    static const Fields all =
        describe(field<&SpoilFrozen::on>("on"), field<&SpoilFrozen::boxes>("boxes"),
                 field<&SpoilFrozen::reason>("reason"));
    return all;
}

Result<std::vector<Id<Box>>> SpoilFrozen::perform(Write& file) const {
    const auto meant = markedBoxes(file, boxes, on);
    if (!meant) return meant.error();
    std::vector<Id<Box>> spoilt;
    for (const Box& box : *meant) {
        std::vector<Day> frozenOn;
        for (Frame& frame : file.where<Frame>({is("box", box.id), isUnknown("retired")})) {
            if (!frame.frozen || on < *frame.frozen) continue;
            frozenOn.push_back(*frame.frozen);
            frame.frozen.reset();
            // It was worth the cold once; it waits for it again.
            if (!frame.verdict || frame.verdict == Verdict::Keep) frame.verdict = Verdict::Freeze;
            file.change(frame);
        }
        bool any = !frozenOn.empty();
        for (FreezerLoad& load : file.where<FreezerLoad>({is("box", box.id), isUnknown("stale")})) {
            const auto of = file.find(load.round);
            // Rounds of earlier winters said nothing of these combs any more.
            const bool speaks = of && of->in <= on &&
                                (!of->out || std::find(frozenOn.begin(), frozenOn.end(),
                                                       *of->out) != frozenOn.end());
            if (!speaks) continue;
            load.stale = on;
            load.staleWhy = reason;
            file.change(load);
            any = true;
        }
        if (!any) return Refusal{Code::NothingToDo, "boxes", {{"name", box.mark}}};
        spoilt.push_back(box.id);
    }
    return spoilt;
}

}  // namespace combwright
