#include "core/actions/storeroom/quarantine.h"

#include <algorithm>

#include "core/storage/queries/names.h"
#include "core/storage/queries/stays.h"

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
    if (!box->note.empty()) box->note += "; ";
    box->note += isoText(on) + ", held (" + why + "): " + spot.reason;
    file.change(*box);
}

}  // namespace combwright
