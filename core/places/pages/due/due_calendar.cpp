#include "core/places/pages/due/due_calendar.h"

#include <QCoreApplication>
#include <algorithm>

#include "core/places/due/due_wax.h"
#include "core/places/pages/due/due_words.h"
#include "core/words/words.h"

namespace combwright {

std::vector<CalendarEntry> dueCalendar(const DueList& list) {
    std::vector<CalendarEntry> entries;
    for (const DueTrip& trip : list.trips)
        for (const DueHive& row : trip.hives)
            for (const DueItem& item : row.items) {
                DueTrip alone = trip;
                alone.group = DueGroup::Late;  // said by itself, not as a trip
                alone.hives = {{row.hive, row.mark, {item}}};
                CalendarEntry entry;
                entry.id = item.id + "@combwright";
                entry.from = entry.last = std::max(item.by.value_or(item.from), list.on);
                entry.summary = tripText(alone).toStdString();
                entry.description = dueWhyText(item).toStdString();
                if (item.by && item.from<*item.by&& * item.by> list.on)
                    entry.description += "\n" + QCoreApplication::translate("due", "From %1 to %2.")
                                                    .arg(shortDayText(std::max(item.from, list.on)),
                                                         shortDayText(*item.by))
                                                    .toStdString();
                entry.location = trip.yardName.empty() ? whereText(trip.where).toStdString()
                                 : item.where == DueWhere::Yard
                                     ? trip.yardName
                                     : whereText(item.where).toStdString();
                entries.push_back(std::move(entry));
            }
    return entries;
}

std::vector<CalendarEntry> candleCalendar(const CandleEvenings& plan) {
    const auto say = [](const char* text) { return QCoreApplication::translate("due", text); };
    std::vector<CalendarEntry> entries;
    const auto add = [&](const std::string& id, Day day, const QString& summary) {
        CalendarEntry entry;
        entry.id = id + "@combwright";
        entry.from = entry.last = day;
        entry.summary = summary.toStdString();
        entry.description = say("Candles for %1, wanted by %2. Never leave wax on heat.")
                                .arg(fromUtf8(plan.date.whatFor), shortDayText(plan.date.by))
                                .toStdString();
        entry.location = whereText(DueWhere::WaxBench).toStdString();
        entries.push_back(std::move(entry));
    };
    for (const PouringEvening& evening : plan.plan.evenings)
        add(candleEveningId(evening.day), evening.day,
            say("Pour %1").arg(fromUtf8(pouredText(plan, evening))));
    if (plan.plan.finishing)
        add(candleFinishId(plan.date), *plan.plan.finishing,
            say("Trim, pair and label the candles"));
    return entries;
}

std::vector<CalendarEntry> candleCalendar(const std::vector<CandleEvenings>& plans) {
    if (plans.empty()) return {};
    std::vector<CalendarEntry> entries = candleCalendar(plans.back());
    // Every day wanted has its own evening for finishing; the last plan pours for all of them.
    for (std::size_t n = 0; n + 1 < plans.size(); ++n)
        if (plans[n].plan.finishing) entries.push_back(candleCalendar(plans[n]).back());
    return entries;
}

std::vector<CalendarEntry> dueCalendar(const Read& file, const DueList& list) {
    std::vector<CalendarEntry> entries = dueCalendar(list);
    for (CalendarEntry& evening : candleCalendar(candlePlans(file, list.on))) {
        const bool there =
            std::any_of(entries.begin(), entries.end(),
                        [&](const CalendarEntry& each) { return each.id == evening.id; });
        if (!there) entries.push_back(std::move(evening));
    }
    return entries;
}

}  // namespace combwright
