#include "core/places/due/due_quarantine.h"

#include <algorithm>
#include <map>

#include "core/storage/queries/holds.h"
#include "core/storage/queries/yards.h"

namespace combwright {
namespace {

constexpr std::string_view quarantineId = "quarantine-";

std::string_view aboutHold(const Hold& hold) {
    return Choices<HoldWhy>::words[static_cast<std::size_t>(hold.why)];
}

/// What brings a box or a comb to the hive.
bool bringsThere(DueRule rule) {
    return rule == DueRule::AddBox || rule == DueRule::TestFrame || rule == DueRule::Wets ||
           rule == DueRule::SupersBack;
}

/// What opens it for another reason.
bool looksInto(DueRule rule) {
    switch (rule) {
        case DueRule::Look:
        case DueRule::Swarm:
        case DueRule::Queen:
        case DueRule::Sample:
        case DueRule::SampleAgain:
        case DueRule::ComeBack:
            return true;
        default:
            return false;
    }
}

}  // namespace

bool isQuarantine(const DueItem& item) { return item.id.starts_with(quarantineId); }

void addDueQuarantine(const Read& file, Day today, std::optional<Id<Yard>> only,
                      std::vector<DueItem>& due) {
    if (!anythingApart(file, today)) return;
    const HeldThings held = heldThings(file, today);
    for (const Yard& yard : openYards(file)) {
        if (only && yard.id != *only) continue;
        for (const Hive& hive : openHives(file, yard.id)) {
            if (hive.since > today) continue;
            const auto hold = quarantineOn(file, held, hive.id, today);
            if (!hold) continue;
            DueItem item;
            item.rule = DueRule::Look;
            item.yard = yard.id;
            item.hive = hive.id;
            item.id = std::string(quarantineId) + "h" + std::to_string(hive.id.number) + "-" +
                      isoText(hold->since);
            item.since = item.from = hold->since;
            item.about = std::string(aboutHold(*hold));
            due.push_back(std::move(item));
        }
    }
}

void leaveQuarantined(const Read& file, Day today, std::vector<DueItem>& due) {
    if (!anythingApart(file, today)) return;
    const HeldThings held = heldThings(file, today);
    std::map<std::int64_t, std::optional<Hold>> holds;  // by hive
    std::erase_if(due, [&](const DueItem& item) {
        if (!item.hive || isQuarantine(item)) return false;
        // A wet box that comes off again there is told by its own list.
        if (!bringsThere(item.rule) && !looksInto(item.rule)) return false;
        const auto found = holds.find(item.hive->number);
        const auto& hold =
            found != holds.end()
                ? found->second
                : holds.emplace(item.hive->number, quarantineOn(file, held, *item.hive, today))
                      .first->second;
        if (!hold) return false;
        const bool comesOff = item.rule == DueRule::Wets && item.other;
        return (bringsThere(item.rule) && !comesOff) ||
               (looksInto(item.rule) && hold->why == HoldWhy::SuspectedDisease);
    });
}

}  // namespace combwright
