#include "core/places/due/due_list.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>
#include <set>

#include "core/places/due/due_growth.h"
#include "core/places/due/due_honey.h"
#include "core/places/due/due_mites.h"
#include "core/places/due/due_quarantine.h"
#include "core/places/due/due_queens.h"
#include "core/places/due/due_rooms.h"
#include "core/places/due/due_stores.h"
#include "core/places/due/due_tasks.h"
#include "core/places/due/due_treatments.h"
#include "core/places/due/due_visits.h"
#include "core/places/due/due_wax.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/yards.h"
#include "core/words/words.h"

namespace combwright {
namespace {

using AddDue = void (*)(const Read&, Day, std::optional<Id<Yard>>, std::vector<DueItem>&);

/// One line a topic.
constexpr AddDue dueSources[] = {
    &addDueQuarantine, &addDueQueens, &addDueMites, &addDueTreatments, &addDueStores, &addDueGrowth,
    &addDueRooms,      &addDueHoney,  &addDueWax,   &addDueVisits,     &addDueTasks,
};

/// What ends so soon is for today's round already.
constexpr int soonDays = 1;
constexpr int weekDays = 6;

struct Placed {
    DueItem item;
    DueGroup group = DueGroup::Today;
    Day day;
    bool by = false;
    std::int64_t walk = 0;
    std::string mark;
};

DueGroup groupAhead(Day day, Day today) {
    return day <= today                    ? DueGroup::Today
           : day <= today + days(weekDays) ? DueGroup::ThisWeek
                                           : DueGroup::Later;
}

/// What is done on the next trip whenever that is: the day has gone by, and nothing is lost but the
/// day. Only what harms by waiting is called late.
bool waitsForATrip(DueRule rule) {
    switch (rule) {
        case DueRule::Look:
        case DueRule::Swarm:
        case DueRule::Sample:
        case DueRule::SampleAgain:
        case DueRule::AddBox:
        case DueRule::ComeBack:
            return true;
        default:
            return false;
    }
}

void placeInTime(Placed& placed, Day today) {
    const DueItem& item = placed.item;
    placed.day = today;
    if (item.by && *item.by < today && waitsForATrip(item.rule)) {
        placed.group = DueGroup::Today;
    } else if (item.by && *item.by < today) {
        placed.group = DueGroup::Late;
        placed.day = *item.by;
        placed.by = true;
    } else if (item.from > today) {
        placed.day = item.from;
        placed.group = groupAhead(item.from, today);
    } else if (item.by) {
        placed.day = *item.by;
        placed.by = *item.by > today;
        placed.group =
            *item.by <= today + days(soonDays) ? DueGroup::Today : groupAhead(*item.by, today);
    }
}

bool inForce(const Quiet& quiet, Day today) {
    return quiet.since <= today && (!quiet.until || today <= *quiet.until);
}

bool quiets(const Quiet& quiet, const DueItem& item) {
    if (isQuarantine(item)) return false;
    if (quiet.rule != item.rule) return false;
    return quiet.hive ? quiet.hive == item.hive : quiet.yard && quiet.yard == item.yard;
}

/// Ids and places of hives and yards, read once.
struct DueNames {
    DueNames(const Read& file, Day today) {
        for (const Yard& yard : file.all<Yard>()) {
            yards[yard.id.number] = yard.name.text();
            walk[yard.id.number] = yard.walkOrder.value();
        }
        const auto moves = hiveMovesByHive(file);
        for (const Hive& hive : file.all<Hive>()) {
            const auto own = moves.find(hive.id.number);
            hives[hive.id.number] = own == moves.end()
                                        ? hive.mark.text()
                                        : asItWas(hive, own->second, today).mark.text();
            stand[hive.id.number] = hive.standOrder.value();
        }
    }
    std::string hive(const std::optional<Id<Hive>>& id) const {
        return id && hives.contains(id->number) ? hives.at(id->number) : std::string();
    }
    std::string yard(const std::optional<Id<Yard>>& id) const {
        return id && yards.contains(id->number) ? yards.at(id->number) : std::string();
    }
    /// What is no hive's comes first.
    std::int64_t walkOf(const DueItem& item) const {
        const auto found = item.hive ? stand.find(item.hive->number) : stand.end();
        return found == stand.end() ? 0 : found->second;
    }
    std::map<std::int64_t, std::string> yards, hives;
    std::map<std::int64_t, std::int64_t> walk, stand;
};

void addToTrip(DueTrip& trip, const Placed& placed) {
    auto& rows = trip.hives;
    const auto same = std::find_if(rows.begin(), rows.end(), [&](const DueHive& row) {
        return row.hive && row.hive == placed.item.hive;
    });
    if (same != rows.end()) return same->items.push_back(placed.item);
    rows.push_back({placed.item.hive, placed.mark, {placed.item}});
}

bool atYard(const Placed& placed) {
    return placed.item.where == DueWhere::Yard && placed.item.yard &&
           placed.group != DueGroup::Late;
}

/// Later work that can be done on the day one is there anyway.
bool comesAlong(const Placed& placed, const DueTrip& trip, Day tripDay) {
    return atYard(placed) && placed.item.yard == trip.yard && placed.item.from <= tripDay;
}

/// Hives of the yard that must not be opened on the day of the trip, whatever else is due there.
void addShut(DueTrip& trip, const std::vector<Placed>& all, Day tripDay) {
    for (const Placed& placed : all) {
        const DueItem& item = placed.item;
        if (!item.leaveShut || item.yard != trip.yard || item.from <= tripDay) continue;
        trip.shut.push_back({item.hive, placed.mark, {item}});
    }
}

void sumKit(DueTrip& trip) {
    for (const DueHive& row : trip.hives)
        for (const DueItem& item : row.items)
            for (const DueKit& kit : item.take) {
                const auto same =
                    std::find_if(trip.take.begin(), trip.take.end(), [&](const DueKit& each) {
                        return each.item == kit.item &&
                               each.mass.has_value() == kit.mass.has_value();
                    });
                if (same == trip.take.end()) {
                    trip.take.push_back(kit);
                } else if (kit.mass) {
                    *same->mass = *same->mass + *kit.mass;
                } else {
                    same->count += kit.count;
                }
            }
}

/// What the topics say where they say it of every item; else by the hives and the keeper's pace.
void reckonMinutes(DueTrip& trip, const std::map<std::int64_t, VisitPace>& paces) {
    std::optional<double> said = 0.0;
    std::set<std::int64_t> opened;
    for (const DueHive& row : trip.hives)
        for (const DueItem& item : row.items) {
            said = said && item.minutes ? std::optional(*said + *item.minutes) : std::nullopt;
            if (row.hive) opened.insert(row.hive->number);
        }
    if (said) {
        trip.minutes = said;
        return;
    }
    const auto pace = trip.isTrip() ? paces.find(trip.yard->number) : paces.end();
    if (pace == paces.end() || opened.empty()) return;
    trip.minutes = pace->second.minutesPerHive * static_cast<double>(opened.size());
}

/// Whether the nest is opened for it. What the label or a wait itself asks for is not put off.
bool opensTheNest(DueRule rule) {
    switch (rule) {
        case DueRule::Look:
        case DueRule::Swarm:
        case DueRule::Sample:
        case DueRule::SampleAgain:
        case DueRule::AddBox:
        case DueRule::ComeBack:
            return true;
        default:
            return false;
    }
}

/// A hive that must stay shut is opened for nothing else either: that begins the day after.
void waitForShut(std::vector<DueItem>& due) {
    std::map<std::int64_t, Day> shut;
    for (const DueItem& item : due)
        if (item.leaveShut && item.hive) {
            Day& until = shut.try_emplace(item.hive->number, item.from).first->second;
            until = std::max(until, item.from);
        }
    for (DueItem& item : due) {
        if (!item.hive || !opensTheNest(item.rule) || isQuarantine(item)) continue;
        const auto found = shut.find(item.hive->number);
        if (found == shut.end() || item.from >= found->second) continue;
        item.from = found->second;
        if (item.by && *item.by < item.from) item.by = item.from;
    }
}

DueTrip lineOf(const Placed& placed, const DueNames& names) {
    DueTrip trip;
    trip.group = placed.group;
    trip.where = placed.item.where;
    trip.yard = placed.item.yard;
    trip.yardName = names.yard(placed.item.yard);
    trip.day = placed.day;
    trip.by = placed.by;
    addToTrip(trip, placed);
    return trip;
}

/// From so many late hives of one yard on they are one line: it is one drive all the same.
constexpr std::size_t manyLate = 3;

std::set<std::int64_t> yardsLateAtMany(const std::vector<Placed>& all) {
    std::map<std::int64_t, std::set<std::int64_t>> hives;
    for (const Placed& each : all)
        if (each.group == DueGroup::Late && each.item.where == DueWhere::Yard && each.item.yard &&
            each.item.hive)
            hives[each.item.yard->number].insert(each.item.hive->number);
    std::set<std::int64_t> yards;
    for (const auto& [yard, late] : hives)
        if (late.size() >= manyLate) yards.insert(yard);
    return yards;
}

std::vector<DueTrip> gatherTrips(const std::vector<Placed>& all, const DueNames& names, Day today) {
    std::vector<DueTrip> trips;
    std::vector<bool> taken(all.size(), false);
    const auto lateAtMany = yardsLateAtMany(all);
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (taken[i]) continue;
        DueTrip trip = lineOf(all[i], names);
        const bool late = trip.group == DueGroup::Late;
        const bool yard = atYard(all[i]);
        const Day tripDay = trip.group == DueGroup::Today ? today : trip.day;
        for (std::size_t n = i + 1; n < all.size(); ++n) {
            if (taken[n]) continue;
            // A single hive stands alone only because it is late.
            const bool sameHive = late && all[n].group == DueGroup::Late && all[i].item.hive &&
                                  all[n].item.hive == all[i].item.hive &&
                                  all[n].item.where == DueWhere::Yard;
            const bool sameLate = late && all[n].group == DueGroup::Late && all[i].item.hive &&
                                  all[n].item.hive && all[n].item.where == DueWhere::Yard &&
                                  all[i].item.where == DueWhere::Yard && trip.yard &&
                                  all[n].item.yard == trip.yard &&
                                  lateAtMany.contains(trip.yard->number);
            const bool sameTrip = yard && all[n].group == trip.group && atYard(all[n]) &&
                                  all[n].item.yard == trip.yard && all[n].day == trip.day;
            if (!sameHive && !sameLate && !sameTrip && !(yard && comesAlong(all[n], trip, tripDay)))
                continue;
            addToTrip(trip, all[n]);
            taken[n] = true;
        }
        if (yard) addShut(trip, all, tripDay);
        const auto walk = [&](const DueHive& row) { return names.walkOf(row.items.front()); };
        for (auto* rows : {&trip.hives, &trip.shut})
            std::stable_sort(rows->begin(), rows->end(),
                             [&](const DueHive& a, const DueHive& b) { return walk(a) < walk(b); });
        sumKit(trip);
        trips.push_back(std::move(trip));
    }
    return trips;
}

QString dueSay(const char* text) { return QCoreApplication::translate("due", text); }

}  // namespace

int DueTrip::items() const {
    int sum = 0;
    for (const DueHive& row : hives) sum += static_cast<int>(row.items.size());
    return sum;
}

std::string DueTrip::id() const {
    return isTrip() ? "trip-y" + std::to_string(yard->number) + "-" + isoText(day) : item().id;
}

int DueList::today() const {
    return static_cast<int>(std::count_if(trips.begin(), trips.end(), [](const DueTrip& trip) {
        return trip.group == DueGroup::Late || trip.group == DueGroup::Today;
    }));
}

int DueList::late() const {
    return static_cast<int>(std::count_if(trips.begin(), trips.end(), [](const DueTrip& trip) {
        return trip.group == DueGroup::Late;
    }));
}

std::vector<const DueItem*> DueList::items() const {
    std::vector<const DueItem*> all;
    for (const DueTrip& trip : trips)
        for (const DueHive& row : trip.hives)
            for (const DueItem& item : row.items) all.push_back(&item);
    return all;
}

namespace {

std::optional<VisitPace> paceOf(const std::vector<TimedVisit>& visits, Id<Yard> yard) {
    VisitPace own, all;
    double ownMin = 0, allMin = 0;
    for (const TimedVisit& visit : visits) {
        if (visit.ended <= visit.begun) continue;
        const double minutes = static_cast<double>((visit.ended - visit.begun).count()) / 60.0;
        const auto add = [&](VisitPace& pace, double& sum) {
            ++pace.visits;
            pace.hives += visit.opened;
            sum += minutes;
        };
        add(all, allMin);
        if (visit.yard == yard) add(own, ownMin);
    }
    own.ofYard = true;
    VisitPace& pace = own.visits > 0 ? own : all;
    if (pace.visits == 0) return std::nullopt;
    pace.minutesPerHive = (own.visits > 0 ? ownMin : allMin) / pace.hives;
    return pace;
}

}  // namespace

std::optional<VisitPace> visitPace(const Read& file, Id<Yard> yard, Day today) {
    return paceOf(timedVisits(file, today), yard);
}

DueList dueList(const Read& file, Day today, std::optional<Id<Yard>> yard) {
    const OneState still(file);
    DueList list;
    list.on = today;
    const DueNames names(file, today);
    std::vector<DueItem> due;
    for (const AddDue add : dueSources) add(file, today, yard, due);
    leaveQuarantined(file, today, due);
    waitForShut(due);
    for (DueItem& item : due) item.asked = today;
    std::vector<Quiet> quiet;
    for (Quiet& each : file.all<Quiet>())
        if (inForce(each, today)) quiet.push_back(std::move(each));
    std::vector<Placed> placed;
    for (DueItem& item : due) {
        if (item.from > today + days(dueAheadDays)) continue;
        const auto hush = std::find_if(quiet.begin(), quiet.end(),
                                       [&](const Quiet& each) { return quiets(each, item); });
        if (hush != quiet.end()) {
            list.quieted.push_back({item, names.hive(item.hive), names.yard(item.yard), *hush});
            continue;
        }
        Placed made;
        made.mark = names.hive(item.hive);
        made.walk = names.walkOf(item);
        made.item = std::move(item);
        placeInTime(made, today);
        placed.push_back(std::move(made));
    }
    const auto yardWalk = [&](const Placed& each) {
        const auto found =
            each.item.yard ? names.walk.find(each.item.yard->number) : names.walk.end();
        return found == names.walk.end() ? 0 : found->second;
    };
    std::stable_sort(placed.begin(), placed.end(), [&](const Placed& a, const Placed& b) {
        return std::tuple(a.group, a.day, atYard(a), yardWalk(a), a.walk) <
               std::tuple(b.group, b.day, atYard(b), yardWalk(b), b.walk);
    });
    const auto visits = timedVisits(file, today);
    for (const Placed& each : placed)
        if (atYard(each) && !list.paces.contains(each.item.yard->number))
            if (const auto pace = paceOf(visits, *each.item.yard))
                list.paces[each.item.yard->number] = *pace;
    list.trips = gatherTrips(placed, names, today);
    for (DueTrip& trip : list.trips) reckonMinutes(trip, list.paces);
    return list;
}

std::vector<Explained> explainDue(const DueList& list) {
    std::vector<Explained> figures;
    for (const DueTrip& trip : list.trips) {
        const auto pace = trip.isTrip() ? list.paces.find(trip.yard->number) : list.paces.end();
        if (!trip.minutes || pace == list.paces.end()) continue;
        Explained figure;
        figure.what =
            dueSay("Minutes at %1, %2").arg(fromUtf8(trip.yardName), shortDayText(trip.day));
        figure.answer = dueSay("%1 min").arg(std::lround(*trip.minutes));
        note(&figure.working, "visits", pace->second.visits, "",
             pace->second.ofYard ? "begun and ended, of this yard"
                                 : "begun and ended, of all yards");
        note(&figure.working, "hives_opened", pace->second.hives, "", "on those visits");
        note(&figure.working, "minutes_a_hive", pace->second.minutesPerHive, "min");
        note(&figure.working, "hives", static_cast<double>(trip.hives.size()), "", "of this trip");
        note(&figure.working, "minutes", *trip.minutes, "min", "hives × minutes a hive");
        figures.push_back(std::move(figure));
    }
    return figures;
}

}  // namespace combwright
