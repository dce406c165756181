#include "core/trade/colony/queen_dates.h"

#include <algorithm>
#include <string>
#include <string_view>
#include <utility>

#include "core/trade/colony/last_day.h"

namespace combwright {
namespace {

struct DaysToEmergence {
    int from;
    int to;
};

// Counted from an egg: hatched 3, capped 8, out 16. An open cell may hold a larva of 0 to 5 days, a
// capped one be 8 to 16 days old; a lost queen is replaced over larvae up to three days old.
DaysToEmergence emergence(QueenEvent event) {
    switch (event) {
        case QueenEvent::CellOpen:
            return {8, 13};
        case QueenEvent::CellSealed:
            return {0, 8};
        case QueenEvent::QueenLost:
            return {10, 13};
        case QueenEvent::LarvaMoved:
            return {12, 12};
    }
    return {0, 0};
}

}  // namespace

Result<QueenDates> queenDates(QueenEvent event, Day day, std::optional<Day> notSeenOn,
                              const QueenPatience& patience, Working* working) {
    if (notSeenOn && *notSeenOn > day)
        return Refusal{Code::Contradiction, "not_seen_on", {{"other", "day"}}};
    const std::pair<std::string_view, int> waits[] = {{"look_after_days", patience.look},
                                                      {"test_frame_after_days", patience.testFrame},
                                                      {"act_after_days", patience.act}};
    const DaysToEmergence emerges = emergence(event);
    for (const auto& [name, wait] : waits) {
        if (wait < 0) return Refusal{Code::Negative, std::string(name), {}};
        if (const auto last = dayAfter(day, emerges.to + wait); !last) return last.error();
    }
    QueenDates dates;
    dates.emergesFrom = day + days(emerges.from);
    dates.emergesTo = day + days(emerges.to);
    if (event == QueenEvent::CellSealed && notSeenOn)
        dates.emergesFrom = std::max(dates.emergesFrom, *notSeenOn + days(8));
    dates.lookFrom = dates.emergesTo + days(patience.look);
    dates.doNotOpenUntil = dates.lookFrom - days(1);
    dates.testFrameFrom = dates.emergesTo + days(patience.testFrame);
    dates.actBy = dates.emergesTo + days(patience.act);
    note(working, "emerges_from", emerges.from, "d", "day + " + std::to_string(emerges.from),
         "egg 3, capped 8, out 16 days");
    note(working, "emerges_to", emerges.to, "d", "day + " + std::to_string(emerges.to),
         "egg 3, capped 8, out 16 days");
    note(working, "look_from", patience.look, "d", "emerges_to + " + std::to_string(patience.look),
         "common practice, no source");
    return dates;
}

}  // namespace combwright
