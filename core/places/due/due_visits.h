// A visit that was begun and never ended, or broke off among its hives: what is not written down by
// the next day is soon forgotten. A visit in which single hives were left shut on purpose is none:
// only one with a gap at its end, or with hours that were begun and not ended.
#pragma once

#include <string>
#include <vector>

#include "core/model/yard/visit.h"
#include "core/places/due/due_item.h"
#include "core/storage/rows.h"

namespace combwright {

/// A visit with its hives in walking order, each written or not.
struct OpenVisit {
    Visit visit;
    std::string yard;
    std::vector<std::string> hives;
    std::vector<bool> written;  ///< of each
    std::vector<std::string> missing() const;
};

/// For so many days a visit is worth finishing; later nobody remembers. Common practice, no source.
inline constexpr int visitRememberedDays = 7;

/// The newest visit of each yard, where it is unfinished and no older than that.
std::vector<OpenVisit> openVisits(const Read& file, Day today);

/// Visit: Yard, no hive. `since` = `from` the day of the visit, `count` hives not written,
/// `about` their marks.
void addDueVisits(const Read& file, Day today, std::optional<Id<Yard>> yard,
                  std::vector<DueItem>& due);

}  // namespace combwright
