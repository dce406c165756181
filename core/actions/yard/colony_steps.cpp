#include "core/actions/yard/colony_steps.h"

#include <algorithm>
#include <array>
#include <cctype>

#include "core/actions/boxes/box_steps.h"
#include "core/actions/storeroom/dead_outs.h"
#include "core/actions/storeroom/frame_moves.h"
#include "core/actions/storeroom/marked_boxes.h"
#include "core/actions/yard/yards.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/queens.h"
#include "core/storage/queries/yards.h"

namespace combwright {
namespace {

Refusal tooEarly(const std::string& name, Day since) {
    return {Code::BeforeItBegan, "on", {{"name", name}, {"since", isoText(since)}}};
}

/// Of the boxes of a hive the one that stands where a word says, counted from the floor.
const Box* standsAt(const std::vector<Box>& standing, const std::string& where) {
    constexpr auto levels =
        std::to_array<std::string_view>({"bottom", "second", "third", "fourth"});
    if (standing.empty()) return nullptr;
    if (where == "top") return &standing.back();
    const auto level =
        static_cast<std::size_t>(std::find(levels.begin(), levels.end(), where) - levels.begin());
    return level < levels.size() && level < standing.size() ? &standing[level] : nullptr;
}

/// A box of a hive that has no mark is known by its place or its kind.
std::optional<Box> boxOfHive(const Read& file, const std::vector<Box>& standing,
                             const std::vector<Box>& taken, const std::string& named) {
    const auto isTaken = [&](const Box& box) {
        return std::any_of(taken.begin(), taken.end(),
                           [&](const Box& each) { return each.id == box.id; });
    };
    std::string lower = named;
    std::transform(lower.begin(), lower.end(), lower.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    if (const Box* box = standsAt(standing, lower)) return *box;
    const auto kind = boxKindNamed(file, named);
    if (!kind) return std::nullopt;
    const auto found = std::find_if(standing.rbegin(), standing.rend(), [&](const Box& box) {
        return box.kind == kind->id && !isTaken(box);
    });
    return found == standing.rend() ? std::nullopt : std::optional(*found);
}

/// The boxes meant, by their marks or as boxOfHive names them.
Result<std::vector<Box>> boxesMeant(const Read& file, Id<Hive> hive, const std::string& typed,
                                    Day on) {
    const auto standing = boxesOn(file, hive);
    std::vector<Box> meant;
    for (const std::string& part : listedParts(typed)) {
        auto box = markedBox(file, part, on);
        const bool there = box && box->place == BoxPlace::OnHive && box->hive == hive;
        const auto unmarked = there ? std::nullopt : boxOfHive(file, standing, meant, part);
        if (!there && unmarked) box = *unmarked;
        if (!box) return box.error();
        for (const Box& each : meant)
            if (each.id == box->id) return Refusal{Code::Duplicate, "boxes", {{"name", part}}};
        meant.push_back(*std::move(box));
    }
    if (meant.empty()) return Refusal{Code::Missing, "boxes", {}};
    return meant;
}

}  // namespace

void addNote(std::string& note, const std::string& more) {
    if (more.empty()) return;
    note += (note.empty() ? "" : "; ") + more;
}

Result<Hive> openStand(const Read& file, Id<Hive> id, Day on, const std::string& field) {
    const auto hive = file.find(id);
    if (!hive) return Refusal{Code::NotFound, field, {}};
    if (hive->closed) return Refusal{Code::Closed, field, {{"name", hive->mark.text()}}};
    if (on < hive->since) return tooEarly(hive->mark.text(), hive->since);
    return *hive;
}

Result<LivingColony> livingColony(const Read& file, Id<Hive> id, Day on, const std::string& field) {
    const auto hive = openStand(file, id, on, field);
    if (!hive) return hive.error();
    const auto colony = colonyIn(file, id);
    if (!colony)
        return Refusal{Code::NotFound, field, {{"name", hive->mark.text()}, {"lacks", "colony"}}};
    const Day came = colonyStaysOf(file, *colony).back().from;
    if (on < came) return tooEarly(hive->mark.text(), came);
    return LivingColony{*hive, *colony};
}

Result<void> demandEmptyHive(const Read& file, const Hive& hive, Day on, const std::string& field) {
    if (colonyIn(file, hive.id)) return Refusal{Code::Taken, field, {{"name", hive.mark.text()}}};
    for (const ColonyStay& stay : colonyStaysIn(file, hive.id))
        if (stay.to && on < *stay.to) return tooEarly(hive.mark.text(), *stay.to);
    return {};
}

Result<void> demandColoniesApart(const Read& file, Id<Hive> hive, const std::string& field) {
    const auto stays = colonyStaysIn(file, hive);
    for (std::size_t i = 0; i < stays.size(); ++i)
        for (std::size_t k = i + 1; k < stays.size(); ++k) {
            const ColonyStay& a = stays[i];
            const ColonyStay& b = stays[k];
            if ((a.to && *a.to <= b.from) || (b.to && *b.to <= a.from)) continue;
            return Refusal{Code::Contradiction, field, {{"other", "colony " + isoText(b.from)}}};
        }
    return {};
}

Result<Id<Hive>> emptyStand(Write& file, const StandMeant& meant, Day on,
                            const std::string& field) {
    if (meant.hive) {
        const auto against = [&](const char* other) {
            return Refusal{Code::Contradiction, other, {{"other", field}}};
        };
        if (!meant.mark.empty()) return against("mark");
        if (!meant.boxes.empty()) return against("new_boxes");
        if (meant.yard) return against("yard");
        const auto stand = openStand(file, *meant.hive, on, field);
        if (!stand) return stand.error();
        if (auto empty = demandEmptyHive(file, *stand, on, field); !empty) return empty.error();
        return *meant.hive;
    }
    const auto mark = Name::of(meant.mark);
    if (!mark) return Refusal{Code::Missing, "mark", {}};
    if (!meant.yard) return Refusal{Code::Missing, "yard", {}};
    AddHive make;
    make.on = on;
    make.yard = *meant.yard;
    make.hive = *mark;
    make.boxes = meant.boxes;
    auto made = make.perform(file);
    if (!made && made.error().field == "boxes")
        return Refusal{made.error().code, "new_boxes", made.error().values};
    return made;
}

Result<void> carryBoxes(Write& file, Id<Hive> from, Id<Hive> to, const std::string& boxes, Day on,
                        const std::string& reason) {
    if (boxes.empty()) return {};
    std::vector<Box> meant;
    if (boxes == "all") {
        meant = boxesOn(file, from);
    } else {
        auto named = boxesMeant(file, from, boxes, on);
        if (!named) return named.error();
        meant = *std::move(named);
    }
    for (const Box& box : meant) {
        if (box.place != BoxPlace::OnHive || box.hive != from)
            return Refusal{
                Code::NotFound,
                "boxes",
                {{"name", box.mark.empty() ? "#" + std::to_string(box.id.number) : box.mark}}};
        const BoxSpot spot{BoxPlace::OnHive, to, std::nullopt, {}, {}, reason};
        if (auto moved = moveBoxTo(file, box.id, spot, on); !moved) return moved.error();
    }
    return {};
}

Result<void> carryCombs(Write& file, Id<Hive> from, Id<Hive> to, Day on,
                        const std::string& reason) {
    const auto there = boxesOn(file, to);
    if (there.empty())
        return Refusal{Code::Missing, "boxes", {{"hive", file.find(to)->mark.text()}}};
    const Id<Box> into = there.front().id;
    for (const Box& box : boxesOn(file, from)) {
        const auto combs = file.where<Frame>({is("box", box.id), isUnknown("retired")});
        if (combs.empty()) continue;
        MoveFrames carry;
        carry.on = on;
        carry.howMany = Count(static_cast<std::int64_t>(combs.size()));
        carry.fromBox = box.id;
        carry.toBox = into;
        carry.note = reason;
        if (auto carried = carry.perform(file); !carried) {
            Refusal refusal = carried.error();
            if (refusal.field == "note") refusal.field = "reason";
            if (refusal.field != "reason") refusal.field = "combs";
            return refusal;
        }
        for (const Frame& was : combs) {
            if (!was.position || file.first<Frame>({is("box", into), is("position", *was.position),
                                                    isUnknown("retired")}))
                continue;
            Frame hung = *file.find(was.id);
            hung.position = was.position;
            file.change(hung);
        }
    }
    return {};
}

Result<void> clearAway(Write& file, Id<Hive> from, BoxPlace to, std::optional<Id<Hive>> onto,
                       const std::string& stack, const std::string& reason, Day on) {
    const bool needsHive = to == BoxPlace::OnHive;
    if (needsHive && !onto) return Refusal{Code::Missing, "onto", {}};
    if (onto && (!needsHive || *onto == from))
        return Refusal{Code::Contradiction, "onto", {{"other", needsHive ? "hive" : "boxes_to"}}};
    // From the floor up: put on top of another hive they then stand in the order they stood here.
    for (const Box& box : boxesOn(file, from)) {
        const BoxSpot spot{to, onto, std::nullopt, stack, {}, reason};
        if (auto moved = moveBoxTo(file, box.id, spot, on); !moved) return moved.error();
    }
    return {};
}

Result<void> demandMayEnd(const Read& file, const Colony& colony, Day on) {
    const ColonyStay last = colonyStaysOf(file, colony).back();
    const auto hive = file.find(colony.hive);
    const std::string name = hive ? hive->mark.text() : std::string();
    if (on < last.from) return tooEarly(name, last.from);
    for (const QueenStay& stay : file.where<QueenStay>({is("colony", colony.id)})) {
        if (on < stay.since) return tooEarly(name, stay.since);
        if (stay.until && on < *stay.until) return tooEarly(name, *stay.until);
    }
    return {};
}

void endColony(Write& file, Colony colony, Day on, std::optional<Ending> ending,
               const std::string& note) {
    colony.ended = on;
    colony.ending = ending;
    addNote(colony.note, note);
    file.change(colony);
    endQueenStay(file, colony.id, on, QueenLeft::WithColony);
    endWaits(file, colony.id, on);
    holdDeadCombs(file, colony);
}

void followEndingOfQueen(Write& file, const Colony& before, const Colony& after) {
    if (before.ended == after.ended || !before.ended) {
        if (!before.ended && after.ended) {
            endQueenStay(file, after.id, *after.ended, QueenLeft::WithColony);
            endWaits(file, after.id, *after.ended);
        }
        return;
    }
    for (QueenStay& stay : file.where<QueenStay>({is("colony", after.id)})) {
        if (stay.until != before.ended || stay.left != QueenLeft::WithColony) continue;
        stay.until = after.ended;
        if (!after.ended) stay.left.reset();
        file.change(stay);
    }
    // What was waited for last ended with the colony.
    auto waits = waitsFor(file, after.id);
    if (waits.empty() || waits.back().over != before.ended) return;
    waits.back().over = after.ended;
    file.change(waits.back());
}

Result<void> demandQueenBy(const Read& file, Id<Colony> colony, Day on) {
    for (const QueenStay& stay : file.where<QueenStay>({is("colony", colony)})) {
        const Day newest = stay.until.value_or(stay.since);
        if (on < newest) return tooEarly("", newest);
    }
    return {};
}

QueenStay metQueen(Write& file, Id<Colony> colony, Day on) {
    if (auto known = queenStayIn(file, colony)) return *known;
    Queen queen;
    const Id<Queen> id = file.add(queen);
    return *file.find(beginQueenStay(file, id, colony, on));
}

void endQueenStay(Write& file, Id<Colony> colony, Day on, QueenLeft left) {
    auto stay = queenStayIn(file, colony);
    if (!stay) return;
    stay->until = on;
    stay->left = left;
    file.change(*stay);
}

Id<QueenStay> beginQueenStay(Write& file, Id<Queen> queen, Id<Colony> colony, Day on) {
    QueenStay stay;
    stay.queen = queen;
    stay.colony = colony;
    stay.since = on;
    return file.add(stay);
}

Result<void> demandWait(const WaitMeant& wait, Day on) {
    if (!wait.notSeenOn) return {};
    if (!wait.step) return Refusal{Code::Contradiction, "not_seen_on", {{"other", "step"}}};
    if (*wait.notSeenOn > on) return Refusal{Code::Contradiction, "not_seen_on", {{"other", "on"}}};
    return {};
}

Id<QueenWait> beginWait(Write& file, Id<Hive> hive, Id<Colony> colony, Day on, QueenStep step,
                        std::optional<Day> notSeenOn, const std::string& note) {
    endWaits(file, colony, on);
    QueenWait wait;
    wait.hive = hive;
    wait.colony = colony;
    wait.on = on;
    wait.step = step;
    wait.notSeenOn = notSeenOn;
    wait.note = note;
    return file.add(wait);
}

void endWaits(Write& file, Id<Colony> colony, Day on) {
    for (QueenWait& wait : file.where<QueenWait>({is("colony", colony), isUnknown("over_day")})) {
        wait.over = std::max(on, wait.on);
        file.change(wait);
    }
}

}  // namespace combwright
