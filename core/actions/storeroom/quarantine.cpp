#include "core/actions/storeroom/quarantine.h"

#include "core/storage/queries/names.h"

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
    if (!anythingApart(file, on)) return {};
    const HeldThings held = heldThings(file, on);
    const bool otherHive = spot.hive && spot.hive != box.hive;
    if (const auto hold = held.quarantine(box.id)) {
        const bool lawful = spot.place == BoxPlace::Storeroom || spot.place == BoxPlace::Gone ||
                            (spot.place == BoxPlace::OnHive && !otherHive);
        if (lawful && !spot.reason.empty()) return {};
        return heldBox(file, box, *hold, "box");
    }
    if (!otherHive || !spot.reason.empty()) return {};
    if (const auto hold = held.apart(box.id)) return heldBox(file, box, *hold, "box");
    return {};
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

void noteOverruled(Write& file, Id<Box> id, const std::string& reason, Day on) {
    if (reason.empty() || !anythingApart(file, on)) return;
    const auto hold = heldThings(file, on).apart(id);
    auto box = file.find(id);
    if (!hold || !box) return;
    if (!box->note.empty()) box->note += "; ";
    box->note += isoText(on) + ", held (" + std::string(word(hold->why)) + "): " + reason;
    file.change(*box);
}

}  // namespace combwright
