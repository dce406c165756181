// Everything that is due, as one drives: gathered into trips, one a yard and a day, late things by
// themselves. A quieted rule is taken off the list and kept beside it with its reason, so that
// nothing is hidden without a trace.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/places/due/due_item.h"
#include "core/places/explain/explained.h"
#include "core/storage/rows.h"
#include "core/support/working.h"

namespace combwright {

enum class DueGroup { Late, Today, ThisWeek, Later };

/// What is due at one hive, or at none of them.
struct DueHive {
    std::optional<Id<Hive>> hive;
    std::string mark;  ///< empty without a hive
    std::vector<DueItem> items;
};

/// One line of the list: a trip to a yard, or one thing elsewhere.
struct DueTrip {
    DueGroup group = DueGroup::Today;
    DueWhere where = DueWhere::Yard;
    std::optional<Id<Yard>> yard;
    std::string yardName;
    Day day;                     ///< of the trip; of what is late the day it should have been done
    bool by = false;             ///< it may be done before
    std::vector<DueHive> hives;  ///< in walking order; what is no hive's first
    std::vector<DueHive> shut;   ///< of the yard, not to be opened on that day
    std::optional<double> minutes;  ///< none: no visit of the keeper's says how long
    std::vector<DueKit> take;       ///< summed

    /// A yard one drives to for several things; it opens to its hives. What is late stands by
    /// itself unless it is late at many hives of the yard.
    bool isTrip() const {
        return where == DueWhere::Yard && yard && (group != DueGroup::Late || hives.size() > 2);
    }
    int items() const;
    /// Only for what is no trip.
    const DueItem& item() const { return hives.front().items.front(); }
    std::string id() const;
};

struct Quieted {
    DueItem item;
    std::string hive;
    std::string yard;
    Quiet quiet;
};

/// How long a hive takes, by the keeper's own visits that have a beginning and an end.
struct VisitPace {
    double minutesPerHive = 0;
    int visits = 0;
    int hives = 0;        ///< opened on them
    bool ofYard = false;  ///< of that yard alone, else of all
};

struct DueList {
    Day on;
    std::vector<DueTrip> trips;  ///< late first, then by day
    std::vector<Quieted> quieted;
    std::map<std::int64_t, VisitPace> paces;  ///< by yard, where one is known

    /// Lines that are late or for today.
    int today() const;
    int late() const;
    /// Every item with its trip's line, in the order of the trips.
    std::vector<const DueItem*> items() const;
};

/// Things that can be done from a day so far ahead on are listed.
inline constexpr int dueAheadDays = 60;

/// Everything that is due, or of one yard.
DueList dueList(const Read& file, Day today, std::optional<Id<Yard>> yard = std::nullopt);

/// The visits of a yard with a beginning and an end, else those of all yards; nothing without any.
std::optional<VisitPace> visitPace(const Read& file, Id<Yard> yard, Day today);

/// How the minutes of the trips came about.
std::vector<Explained> explainDue(const DueList& list);

}  // namespace combwright
