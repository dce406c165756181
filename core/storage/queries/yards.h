// What stands where: the yards' hives, their boxes and who lives in them.
#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "core/model/frames/box.h"
#include "core/model/yard/visit.h"
#include "core/storage/rows.h"

namespace combwright {

/// Open yards in walking order.
std::vector<Yard> openYards(const Read& file);
/// Open hives of a yard in walking order.
std::vector<Hive> openHives(const Read& file, Id<Yard> yard);
/// Every hive a yard has or had when it was closed, in walking order; a closed one where it stood
/// when it was closed.
std::vector<Hive> hivesEver(const Read& file, Id<Yard> yard);
/// Boxes standing on a hive, from the floor up.
std::vector<Box> boxesOn(const Read& file, Id<Hive> hive);

/// What stood on a hive at the end of a day.
struct Standing {
    std::vector<Box> boxes;              ///< from the floor up, each as it stood there
    std::optional<Count> excluderAbove;  ///< boxes under the excluder
};
/// Today's stack with the moves of later days taken back, newest first.
Standing standingOn(const Read& file, const Hive& hive, Day day);
/// The colony living in a hive now.
std::optional<Colony> colonyIn(const Read& file, Id<Hive> hive);
/// Boxes of a kind standing ready in the storeroom, by mark; none that is held for a dead-out or
/// for disease.
std::vector<Box> boxesReady(const Read& file, Id<BoxKind> kind);
/// The same as it was at the end of a day, with the moves of later days taken back. What a box was
/// fit for that day nobody wrote down: those that are sound now count.
std::vector<Box> boxesReadyOn(const Read& file, Id<BoxKind> kind, Day day);

std::optional<Visit> visitOn(const Read& file, Id<Yard> yard, Day day);
/// The newest up to a day; of several that day the one written down first.
std::optional<Visit> newestVisit(const Read& file, Id<Yard> yard, Day upTo);
/// A visit that was begun and ended, and how many hives were opened on it.
struct TimedVisit {
    Id<Yard> yard;
    Instant begun;
    Instant ended;
    int opened = 0;
};
/// Of all yards up to a day, on which at least one hive was opened, in the order they were written
/// down.
std::vector<TimedVisit> timedVisits(const Read& file, Day upTo);
std::optional<Inspection> inspectionOf(const Read& file, Id<Visit> visit, Id<Hive> hive);

/// An inspection with the day of its visit.
struct DatedInspection {
    Day on;
    Inspection inspection;
};
/// Of one hive, newest first, all of them or those before a day.
std::vector<DatedInspection> inspectionsOf(const Read& file, Id<Hive> hive,
                                           std::optional<Day> before = std::nullopt);
/// The same looked through from the newest on, only as far back as `more` says: it is handed each
/// and answers whether the one before it is wanted too.
void lookBack(const Read& file, Id<Hive> hive, std::optional<Day> before,
              const std::function<bool(DatedInspection& each)>& more);
/// The same, none before `from`. Answers whether more was wanted still.
bool lookBack(const Read& file, Id<Hive> hive, std::optional<Day> from, std::optional<Day> before,
              const std::function<bool(DatedInspection& each)>& more);
/// The same from one day to another, both counted: of a hive with many years behind it only these
/// are read.
std::vector<DatedInspection> inspectionsBetween(const Read& file, Id<Hive> hive, Day from, Day to);

/// Which of a hive's boxes take supers' part: those above the excluder, or above the first deep
/// where no excluder is known.
std::vector<Box> supersOn(const Hive& hive, const std::vector<Box>& standing);

}  // namespace combwright
