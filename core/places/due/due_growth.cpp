#include "core/places/due/due_growth.h"

#include <algorithm>
#include <cmath>

#include "core/places/yard/growth.h"
#include "core/storage/queries/constants.h"
#include "core/storage/queries/hive_days.h"
#include "core/trade/colony/queen_dates.h"

namespace combwright {
namespace {

/// Later than that what became of cells, or of a hive without eggs, is settled one way or another,
/// and a look is due anyway. Common practice, no source.
constexpr int cellsAskedDays = 21;
constexpr int noEggsAskedDays = 60;
/// A queen cell is capped on day 8 and the queen out on day 16 from the egg.
constexpr int daysSealed = 8;

DueItem growthItem(DueRule rule, const char* kind, const HiveGrowth& hive, Day since) {
    DueItem item;
    item.rule = rule;
    item.where = DueWhere::Yard;
    item.yard = hive.hive.yard;
    item.hive = hive.hive.id;
    item.id = std::string(kind) + "-h" + std::to_string(hive.hive.id.number) + "-" + isoText(since);
    item.since = since;
    item.from = since;
    return item;
}

/// Not to be opened until then.
void keepShut(DueItem& item, const HiveGrowth& hive) {
    if (!hive.shutUntil || item.from > *hive.shutUntil) return;
    item.leaveShut = true;
    item.from = *hive.shutUntil + days(1);
    if (item.by && *item.by < item.from) item.by = item.from;
}

class GrowthDue {
  public:
    GrowthDue(const Read& file, const Yard& yard, Day today)
        : m_file(file), m_yard(yard), m_today(today) {}

    void about(const Growth& all, const HiveGrowth& hive, std::vector<DueItem>& due) const {
        if (hive.foundDead) due.push_back(endOf(hive));
        if (!hive.lives) return;
        if (hive.queenlessSince)
            due.push_back(queenless(hive));
        else if (hive.noEggs && hive.noEggs->since + days(noEggsAskedDays) >= m_today)
            due.push_back(noEggs(hive));
        if (hive.cells && hive.cells->since + days(cellsAskedDays) >= m_today)
            due.push_back(cells(hive));
        else if (!hive.queenlessSince)  // whose cells are its next queen
            addSwarmOrLook(all, hive, due);
        if (hive.addBox) due.push_back(box(hive));
        if (hive.comeBack) {
            DueItem item = growthItem(DueRule::ComeBack, "back", hive, *hive.comeBack);
            keepShut(item, hive);
            due.push_back(std::move(item));
        }
    }

  private:
    long rate(const char* name, double fallback) const {
        return std::lround(constantOr(m_file, name, m_yard.id, m_today, fallback));
    }

    DueItem swarm(const HiveGrowth& hive) const {
        DueItem item =
            growthItem(DueRule::Swarm, "swarm", hive, hive.opened.value_or(hive.hive.since));
        item.from = *hive.swarmFrom;
        item.by = hive.swarmBy;
        item.other = hive.opened;
        if (hive.daysSince) item.count = *hive.daysSince;
        keepShut(item, hive);
        return item;
    }

    /// A capped cell asks for a decision at once, an open one before it is sealed.
    DueItem cells(const HiveGrowth& hive) const {
        const Mind& seen = *hive.cells;
        DueItem item = growthItem(DueRule::Swarm, "cells", hive, seen.since);
        const bool capped = seen.cellState == CellState::Capped;
        item.about = capped ? "capped" : seen.cellState ? "open" : "seen";
        const auto dates = queenDates(capped ? QueenEvent::CellSealed : QueenEvent::CellOpen,
                                      seen.since, std::nullopt, QueenPatience{});
        if (dates) {
            item.by = capped ? seen.since : dates->emergesTo - days(daysSealed);
            item.other = capped ? dates->emergesTo : dates->emergesFrom;
        }
        return item;
    }

    DueItem noEggs(const HiveGrowth& hive) const {
        DueItem item = growthItem(DueRule::TestFrame, "no-eggs", hive, hive.noEggs->since);
        item.about = hive.noEggs->noBrood ? "no brood" : "no eggs";
        item.take.push_back({"egg frame", 1});
        return item;
    }

    DueItem queenless(const HiveGrowth& hive) const {
        DueItem item = growthItem(DueRule::TestFrame, "queenless", hive, *hive.queenlessSince);
        item.about = "queenless";
        item.take.push_back({"egg frame", 1});
        return item;
    }

    DueItem endOf(const HiveGrowth& hive) const {
        DueItem item = growthItem(DueRule::DeadOut, "found-dead", hive, *hive.foundDead);
        item.about = "found dead";
        return item;
    }

    void addSwarmOrLook(const Growth& all, const HiveGrowth& hive,
                        std::vector<DueItem>& due) const {
        if (hive.swarmFrom)
            due.push_back(swarm(hive));
        else if (!all.swarmWeeks)
            addLook(hive, due);
    }

    void addLook(const HiveGrowth& hive, std::vector<DueItem>& due) const {
        if (!hive.opened ||
            !monthWithin(m_today, rate("swarm_from_month", 4), rate("look_to_month", 9)))
            return;
        DueItem item = growthItem(DueRule::Look, "look", hive, *hive.opened);
        const long week = rate("look_from_days", 14);
        item.from = *hive.opened + days(week);
        item.by = *hive.opened + days(std::max(week, rate("look_most_days", 21)));
        item.other = hive.opened;
        item.count = *hive.daysSince;
        keepShut(item, hive);
        due.push_back(std::move(item));
    }

    DueItem box(const HiveGrowth& hive) const {
        DueItem item = growthItem(DueRule::AddBox, "box", hive, hive.addBox->seen);
        item.about = key(hive.addBox->by);
        item.count = static_cast<std::int64_t>(hive.addBox->have + 1e-9);
        item.value = static_cast<double>(hive.addBox->from);
        item.take.push_back({"super", 1});
        keepShut(item, hive);
        return item;
    }

    const Read& m_file;
    const Yard& m_yard;
    Day m_today;
};

}  // namespace

void addDueGrowth(const Read& file, Day today, std::optional<Id<Yard>> only,
                  std::vector<DueItem>& due) {
    const auto mine = static_cast<std::ptrdiff_t>(due.size());
    for (const Yard& yard : yardsOn(file, today)) {
        if (only && yard.id != *only) continue;
        const GrowthDue rules(file, yard, today);
        const Growth all = growth(file, yard.id, today);
        for (const HiveGrowth& hive : all.hives) rules.about(all, hive, due);
    }
    const auto far = [today](const DueItem& item) { return item.from > today + days(60); };
    due.erase(std::remove_if(due.begin() + mine, due.end(), far), due.end());
}

}  // namespace combwright
