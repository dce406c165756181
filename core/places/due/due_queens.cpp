#include "core/places/due/due_queens.h"

#include <algorithm>

#include "core/places/yard/queens.h"
#include "core/storage/queries/hive_days.h"

namespace combwright {
namespace {

constexpr int queensAheadDays = 60;

DueItem dueOf(const Hive& hive, const WaitingQueen& waiting, Day today) {
    const QueenDates& dates = waiting.dates;
    DueItem item;
    item.yard = hive.yard;
    item.hive = hive.id;
    item.since = waiting.since;
    const bool test = waiting.lookedInVain || today >= dates.testFrameFrom;
    item.rule = test ? DueRule::TestFrame : DueRule::Queen;
    item.id = (test ? "test-frame-h" : "queen-h") + std::to_string(hive.id.number) + "-" +
              isoText(waiting.since);
    item.from = test ? dates.testFrameFrom : dates.lookFrom;
    if (test) {
        item.by = std::max(dates.actBy, dates.testFrameFrom);
        item.other = waiting.lookedInVain;
        item.take.push_back({"egg frame", 1});
    } else {
        item.by = std::max(dates.testFrameFrom - days(1), dates.lookFrom);
        item.other = dates.actBy;
        item.leaveShut = today < dates.lookFrom;
    }
    return item;
}

}  // namespace

void addDueQueens(const Read& file, Day today, std::optional<Id<Yard>> yard,
                  std::vector<DueItem>& due) {
    for (const Yard& each : yardsOn(file, today)) {
        if (yard && each.id != *yard) continue;
        for (const Hive& hive : hivesOn(file, each.id, today)) {
            const auto waiting = waitingFor(file, hive, today);
            if (!waiting) continue;
            DueItem item = dueOf(hive, *waiting, today);
            if (item.from <= today + days(queensAheadDays)) due.push_back(std::move(item));
        }
    }
}

}  // namespace combwright
