#include "core/places/yard/queens.h"

#include <algorithm>

#include "core/places/yard/yard_sheet.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/queens.h"
#include "core/storage/queries/yards.h"
#include "core/trade/colony/queen_colour.h"

namespace combwright {
namespace {

/// A cell left so many days ago is no longer waited for: whatever came of it is long settled.
/// Common practice, no source.
constexpr int longWait = 200;

bool leftCells(const Seen& seen) {
    return seen.cellsLeft && seen.cellsLeft->value && seen.cellsLeft->value->value() > 0;
}

/// What began the wait, and since when bees of this colony are in the hive.
struct Beginning {
    Day since;
    QueenStep step;
    std::optional<Day> notSeenOn;
    std::optional<Id<QueenWait>> record;
};

/// The newest look that says whether a cell was left, and leaves one.
std::optional<Beginning> byLook(const std::vector<DatedInspection>& looks, Day came) {
    for (const DatedInspection& look : looks) {
        if (look.on < came) break;
        const Seen& seen = look.inspection.seen;
        if (seen.looked != Looked::Opened || !seen.cellsLeft) continue;
        if (!leftCells(seen)) return std::nullopt;
        const bool capped = cellEvent(seen) == QueenEvent::CellSealed;
        return Beginning{look.on, capped ? QueenStep::CellSealed : QueenStep::CellOpen,
                         std::nullopt, std::nullopt};
    }
    return std::nullopt;
}

/// A queen came since; on the very day only where bees and queen did not come together.
bool bringsQueen(const QueenStay& stay, const Beginning& begun, Day came) {
    if (stay.since != begun.since) return stay.since > begun.since;
    return !begun.record && stay.since > came;
}

/// Ended by the keeper, or by a later record that takes its place.
bool overBy(const QueenWait& wait, Day on) { return wait.over && *wait.over <= on; }

}  // namespace

QueenEvent eventOf(QueenStep step) {
    switch (step) {
        case QueenStep::CellOpen:
            return QueenEvent::CellOpen;
        case QueenStep::CellSealed:
            return QueenEvent::CellSealed;
        case QueenStep::QueenLost:
            return QueenEvent::QueenLost;
        case QueenStep::LarvaMoved:
            return QueenEvent::LarvaMoved;
    }
    return QueenEvent::CellOpen;
}

std::optional<WaitingQueen> waitingFor(const Read& file, const Hive& hive, Day on) {
    const auto living = colonyLivingOn(file, hive.id, on);
    // A keeper who notes no colonies has hives that wait all the same.
    if (!living && !colonyStaysIn(file, hive.id).empty()) return std::nullopt;
    const Day came = living ? living->from : hive.since;
    auto looks = inspectionsBetween(file, hive.id, std::max(came, on - days(longWait)), on);
    std::optional<Beginning> begun = byLook(looks, came);
    if (living) {
        const Id<Colony> colony = living->colony.id;
        std::optional<QueenWait> newest;
        for (const QueenWait& wait : waitsFor(file, colony)) {
            if (wait.on > on) continue;
            // A look that was ended by hand became a record of the same day.
            if (begun && wait.on >= begun->since) begun.reset();
            newest = wait;
        }
        if (newest && !begun) {
            if (overBy(*newest, on)) return std::nullopt;
            begun = Beginning{newest->on, newest->step, newest->notSeenOn, newest->id};
        }
        if (!begun) return std::nullopt;
        for (const QueenStay& stay : file.where<QueenStay>({is("colony", colony)}))
            if (stay.since <= on && bringsQueen(stay, *begun, living->from)) return std::nullopt;
    }
    if (!begun) return std::nullopt;
    const auto dates = queenDates(eventOf(begun->step), begun->since, begun->notSeenOn,
                                  patienceOn(file, hive.yard, begun->since));
    if (!dates) return std::nullopt;
    if (begun->since < on - days(longWait))
        looks = inspectionsBetween(file, hive.id, begun->since, on);
    WaitingQueen waiting{begun->since,  begun->step, begun->notSeenOn,
                         begun->record, *dates,      std::nullopt};
    for (const DatedInspection& look : looks) {
        if (look.on <= begun->since) break;
        const auto& eggs = look.inspection.seen.eggs;
        if (!eggs) continue;
        // Eggs seen before she can be out are those of the queen before her.
        if (*eggs && look.on > dates->emergesFrom) return std::nullopt;
        if (!*eggs && look.on >= dates->lookFrom && !waiting.lookedInVain)
            waiting.lookedInVain = look.on;
    }
    return waiting;
}

std::string marksQueensOf(const Read& file, int year, Day on) {
    auto own = ownQueenColour(file, year, on);
    return own.empty() ? std::string(queenColour(year)) : own;
}

std::string colourOf(const Read& file, const Queen& queen, Day on) {
    if (!queen.colour.empty()) return queen.colour;
    if (!queen.reared) return {};
    return marksQueensOf(file, static_cast<int>(queen.reared->value()), on);
}

namespace {

/// The newest day the queen was seen in the colony that lives in a hive, on whatever stand it was.
std::optional<Day> seenSince(const Read& file, Id<Hive> hive, Day since, Day on) {
    const auto stays = daysOfColonyIn(file, hive, on);
    for (auto stay = stays.rbegin(); stay != stays.rend() && stay->to >= since; ++stay)
        if (const auto seen = queenSeenIn(file, stay->hive,
                                          std::max(since, stay->from.value_or(since)), stay->to))
            return seen;
    return std::nullopt;
}

}  // namespace

std::optional<HeadedColony> headedIn(const Read& file, const Yard& yard, const Hive& hive, Day on) {
    const auto living = colonyLivingOn(file, hive.id, on);
    if (!living) return std::nullopt;
    HeadedColony headed;
    headed.hive = hive;
    headed.yard = yard;
    headed.colony = living->colony;
    headed.stay = queenStayOn(file, living->colony.id, on);
    if (headed.stay) headed.queen = file.find(headed.stay->queen);
    if (headed.queen) {
        headed.colour = colourOf(file, *headed.queen, on);
        headed.mothers = mothersOf(file, *headed.queen);
        for (const Queen& daughter : daughtersOf(file, headed.queen->id)) {
            const auto stays = staysOfQueen(file, daughter.id);
            if (!stays.empty() && stays.front().since <= on) headed.daughters.push_back(daughter);
        }
    } else {
        for (const QueenStay& left : file.where<QueenStay>({is("colony", living->colony.id)}))
            if (left.until && *left.until <= on) headed.lastLeft = left;
    }
    const Day begun = living->colony.since;
    const Day since = std::max(begun, headed.stay ? headed.stay->since : begun);
    headed.seen = seenSince(file, hive.id, since, on);
    headed.waiting = waitingFor(file, hive, on);
    return headed;
}

Queens queensOn(const Read& file, Day on, std::optional<Id<Yard>> yard) {
    Queens queens;
    queens.on = on;
    auto yards = file.all<Yard>();
    std::stable_sort(yards.begin(), yards.end(),
                     [](const Yard& a, const Yard& b) { return a.walkOrder < b.walkOrder; });
    for (const Yard& each : yards) {
        if (yard && each.id != *yard) continue;
        for (const Hive& hive : hivesOn(file, each.id, on))
            if (auto headed = headedIn(file, each, hive, on))
                queens.colonies.push_back(*std::move(headed));
    }
    return queens;
}

std::vector<QueenAt> wayOfQueen(const Read& file, Id<Queen> queen, Day until) {
    std::vector<QueenAt> way;
    for (const QueenStay& stay : staysOfQueen(file, queen)) {
        if (stay.since > until) continue;
        const auto colony = file.find(stay.colony);
        if (!colony) continue;
        for (const ColonyStay& lived : colonyStaysOf(file, *colony)) {
            const Day from = std::max(stay.since, lived.from);
            auto to = lived.to;
            if (stay.until && (!to || *stay.until < *to)) to = stay.until;
            const bool moment = stay.until == stay.since && lived.holds(stay.since);
            if (from > until || (to && *to <= from && !moment)) continue;
            const auto hive = file.find(lived.hive);
            if (!hive) continue;
            const Hive then = asItWas(file, *hive, from);
            const auto yard = file.find(then.yard);
            way.push_back({stay, lived.hive, then.mark.text(),
                           yard ? yard->name.text() : std::string(), from,
                           to && *to <= until ? to : std::nullopt});
        }
    }
    return way;
}

}  // namespace combwright
