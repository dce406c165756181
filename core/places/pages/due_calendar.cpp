#include "core/places/pages/due_calendar.h"

#include <QCoreApplication>
#include <algorithm>

#include "core/places/pages/due_words.h"
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

}  // namespace combwright
