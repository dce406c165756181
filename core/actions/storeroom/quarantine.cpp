#include "core/actions/storeroom/quarantine.h"

#include <algorithm>

#include "core/storage/queries/names.h"
#include "core/storage/queries/stays.h"
#include "core/storage/queries/yards.h"

namespace combwright {
namespace {

Refusal heldBox(const Read& file, const Box& box, const Hold& hold, const std::string& field) {
    return heldBack(field, nameOf(file, Box::table, box.id.number), hold);
}

}  // namespace

Refusal heldBack(std::string field, std::string name, const Hold& hold) {
    return Refusal{Code::HeldBack,
                   std::move(field),
                   {{"name", std::move(name)},
                    {"why", std::string(word(hold.why))},
                    {"since", isoText(hold.since)}}};
}

Result<void> demandMayMove(const Read& file, const Box& box, const BoxSpot& spot, Day on) {
    const bool otherHive = spot.hive && spot.hive != box.hive;
    const bool leaves = otherHive || spot.place == BoxPlace::GivenBack ||
                        spot.place == BoxPlace::Lent || spot.place == BoxPlace::Gone;
    if (anythingApart(file, on)) {
        const HeldThings held = heldThings(file, on);
        if (const auto hold = held.quarantine(box.id)) {
            const bool lawful = spot.place == BoxPlace::Storeroom || spot.place == BoxPlace::Gone ||
                                (spot.place == BoxPlace::OnHive && !otherHive);
            if (lawful && !spot.reason.empty()) return {};
            return heldBox(file, box, *hold, "box");
        }
        if (leaves && spot.reason.empty())
            if (const auto hold = held.apart(box.id)) return heldBox(file, box, *hold, "box");
    }
    if (!spot.reason.empty()) return {};
    if (otherHive)
        if (auto free = demandHiveFree(file, *spot.hive, on, "hive"); !free) return free;
    if (leaves) return demandNoFrameHeld(file, box, "box");
    return {};
}

Result<void> demandHiveFree(const Read& file, Id<Hive> hive, Day on, const std::string& field) {
    if (!anythingApart(file, on)) return {};
    if (const auto hold = quarantineOn(file, heldThings(file, on), hive, on))
        return heldBack(field, nameOf(file, Hive::table, hive.number), *hold);
    return {};
}

Result<void> demandTakesIn(const Read& file, const Box& box, Day on, const std::string& reason,
                           const std::string& field) {
    if (!reason.empty()) return {};
    if (auto free = demandNotQuarantined(file, box, on, field); !free) return free;
    if (box.hive) return demandHiveFree(file, *box.hive, on, field);
    return {};
}

Result<void> demandLivable(const Read& file, Id<Hive> hive, Day on, const std::string& reason,
                           const std::string& field) {
    if (!reason.empty() || !anythingApart(file, on)) return {};
    if (auto free = demandHiveFree(file, hive, on, field); !free) return free;
    const HeldThings held = heldThings(file, on);
    for (const Box& box : boxesOn(file, hive))
        if (const auto hold = held.apart(box.id)) return heldBox(file, box, *hold, field);
    return {};
}

Result<void> demandNoFrameHeld(const Read& file, const Box& box, const std::string& field) {
    const auto held = heldByVerdict(file, box.id);
    if (held.empty()) return {};
    return Refusal{Code::HeldBack,
                   field,
                   {{"name", nameOf(file, Box::table, box.id.number)},
                    {"frames", std::to_string(held.size())},
                    {"reason", std::string(heldByVerdict(held.front()))}}};
}

void quarantineSeen(Write& file, Id<Box> id, Day on) {
    const auto box = file.find(id);
    if (!box) return;
    const auto put = [&](Hold hold) {
        hold.why = HoldWhy::SuspectedDisease;
        hold.since = on;
        file.add(hold);
    };
    const auto quarantined = [](const std::vector<Hold>& holds) {
        return std::any_of(holds.begin(), holds.end(), quarantines);
    };
    const HeldThings held = heldThings(file, on);
    if (!quarantined(held.of(id))) {
        Hold hold;
        hold.box = id;
        put(hold);
    }
    // By the day, for a look may be written down late.
    const auto hive = hiveUnder(file, id, on);
    const auto colony = hive ? lastColonyIn(file, *hive, on) : std::nullopt;
    if (!colony) return;
    const auto holds = held.colonies.find(colony->id.number);
    if (holds != held.colonies.end() && quarantined(holds->second)) return;
    Hold hold;
    hold.colony = colony->id;
    put(hold);
}

void quarantineCounted(Write& file, Id<Box> box, const BoxContents& seen, Day on) {
    for (const FrameTally& tally : seen.tallies)
        if (tally.frames > Count() && tally.faults.find('Q') != std::string::npos)
            return quarantineSeen(file, box, on);
}

Result<void> demandNotQuarantined(const Read& file, const Box& box, Day on,
                                  const std::string& field) {
    if (!anythingApart(file, on)) return {};
    if (const auto hold = heldThings(file, on).quarantine(box.id))
        return heldBox(file, box, *hold, field);
    return {};
}

Result<void> demandNotApart(const Read& file, const Box& box, Day on, const std::string& field) {
    if (!anythingApart(file, on)) return {};
    if (const auto hold = heldThings(file, on).apart(box.id))
        return heldBox(file, box, *hold, field);
    return {};
}

void noteOverruled(Write& file, Id<Box> id, const BoxSpot& spot, Day on) {
    auto box = file.find(id);
    if (spot.reason.empty() || !box) return;
    std::string why;
    if (const auto frames = heldByVerdict(file, id); !frames.empty())
        why = heldByVerdict(frames.front());
    if (anythingApart(file, on)) {
        const HeldThings held = heldThings(file, on);
        auto hold = held.apart(id);
        if (!hold && spot.hive && spot.hive != box->hive)
            hold = quarantineOn(file, held, *spot.hive, on);
        if (hold) why = word(hold->why);
    }
    if (why.empty()) return;
    addOverruled(box->note, on, why, spot.reason);
    file.change(*box);
}

void noteLivedIn(Write& file, Id<Hive> hive, const std::string& reason, Day on) {
    if (reason.empty() || !anythingApart(file, on)) return;
    const HeldThings held = heldThings(file, on);
    for (Box& box : boxesOn(file, hive)) {
        const auto hold = held.apart(box.id);
        if (!hold) continue;
        addOverruled(box.note, on, word(hold->why), reason);
        file.change(box);
    }
}

void addOverruled(std::string& note, Day on, std::string_view why, const std::string& reason) {
    if (!note.empty()) note += "; ";
    note += isoText(on) + ", held (" + std::string(why) + "): " + reason;
}

}  // namespace combwright
