#include "core/places/due/due_stores.h"

#include <algorithm>
#include <chrono>
#include <cmath>

#include "core/places/stores/stores.h"
#include "core/places/yard/growth.h"
#include "core/storage/queries/constants.h"
#include "core/storage/queries/hive_days.h"

namespace combwright {
namespace {

DueItem storesItem(DueRule rule, const char* kind, const HiveStores& row, Day since) {
    DueItem item;
    item.rule = rule;
    item.where = DueWhere::Yard;
    item.yard = row.hive.yard;
    item.hive = row.hive.id;
    item.id = std::string(kind) + "-h" + std::to_string(row.hive.id.number) + "-" + isoText(since);
    item.since = since;
    return item;
}

void takeFeed(DueItem& item, const ToGive& give) {
    if (!give.fondant) item.take.push_back({"feeder", 1});
    DueKit feed{give.fondant ? "fondant" : "feed", 1, Mass::roundedGrams(give.sugarG)};
    if (give.packs) feed.count = *give.packs;
    item.take.push_back(std::move(feed));
    item.mass = Mass::roundedGrams(give.sugarG);
    item.count = give.packs;
    item.value = give.fondant ? 1 : 0;
}

bool fedSince(const Read& file, const HiveStores& row, Day day) {
    return !file.where<Feeding>({is("hive", row.hive.id), isFrom("on_day", day)}).empty();
}

/// The last day of the month feeding in autumn ends with.
Day lastFeedingDay(int year, long month) {
    const std::chrono::year_month_day_last last{
        std::chrono::year(year),
        std::chrono::month_day_last(std::chrono::month(static_cast<unsigned>(month)))};
    return Day(last);
}

class StoresDue {
  public:
    StoresDue(const Read& file, const Yard& yard, Day today)
        : m_file(file), m_yard(yard), m_today(today) {
        const long to =
            std::clamp(std::lround(constantOr(file, "feed_to_month", yard.id, today, 10)), 1L, 12L);
        m_lastDay = lastFeedingDay(yearOf(today), to);
    }

    void about(const HiveStores& row, std::vector<DueItem>& due) const {
        if (!row.lives) return;
        // Syrup given under supers ends up in the honey.
        const bool winter = row.gapTo == GapTo::Winter && row.give && row.supers + row.toPull == 0;
        if (winter) {
            DueItem item = storesItem(DueRule::Feed, "feed", row, *row.known);
            item.from = m_today;
            item.by = m_lastDay;
            item.about = "winter";
            takeFeed(item, *row.give);
            due.push_back(std::move(item));
        } else if (row.lasts == false && row.runsOut) {
            due.push_back(runsOut(row));
        } else if (row.heft == Heft::Light && !fedSince(m_file, row, *row.heftOn)) {
            DueItem item = storesItem(DueRule::Feed, "light", row, *row.heftOn);
            item.from = *row.heftOn;
            item.about = "light";
            const bool fondant = fondantTime(m_file, m_yard.id, m_today);
            item.value = fondant ? 1 : 0;
            if (!fondant) item.take.push_back({"feeder", 1});
            item.take.push_back({fondant ? "fondant" : "feed", 1});
            due.push_back(std::move(item));
        }
    }

  private:
    DueItem runsOut(const HiveStores& row) const {
        DueItem item = storesItem(DueRule::Stores, "stores", row, *row.known);
        item.from = std::min(m_today, *row.runsOut);
        item.by = *row.runsOut;
        item.other = row.firstFlow;
        if (const auto lacks = lacksToFlow(row, m_today); lacks && *lacks > 0)
            takeFeed(item, toGive(m_file, m_yard.id, m_today, *lacks));
        if (row.nowG) item.mass = Mass::roundedGrams(*row.nowG);
        item.count = std::max<std::int64_t>(0, (*row.runsOut - m_today).count());
        item.value = fondantTime(m_file, m_yard.id, m_today) ? 1 : 0;
        return item;
    }

    const Read& m_file;
    const Yard& m_yard;
    Day m_today;
    Day m_lastDay;
};

}  // namespace

void addDueStores(const Read& file, Day today, std::optional<Id<Yard>> only,
                  std::vector<DueItem>& due) {
    for (const Yard& yard : yardsOn(file, today)) {
        if (only && yard.id != *only) continue;
        const StoresDue rules(file, yard, today);
        for (const HiveStores& row : storesInYard(file, yard, today)) rules.about(row, due);
    }
}

}  // namespace combwright
