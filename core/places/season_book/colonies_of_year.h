// The colonies through a year: who stood on 1 May, who came, who was united, sold or lost and why,
// and who went into winter; and what the winters before and after took. Kept like money: what stood
// and came has left or is there.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/places/yard/colonies_on.h"
#include "core/support/working.h"

namespace combwright {

/// A winter as the account of a year shows it.
struct WinterYear {
    WinterLoss loss;
    std::vector<ColonyGone> dead;          ///< of those at risk, oldest first
    std::vector<ColonyGone> soldOrUnited;  ///< counted neither way
};

struct ColoniesOfYear {
    int year = 0;
    Day from;               ///< 1 May
    Day to;                 ///< the day the next winter begins, or the day asked about before that
    bool begun = false;     ///< 1 May has come
    bool wintered = false;  ///< `to` is the first day of winter
    std::vector<ColonyThere> standing;   ///< on `from`
    std::vector<ColonyThere> came;       ///< after it, up to `to`; as they were called at their end
    std::vector<ColonyGone> left;        ///< likewise, oldest first
    std::vector<ColonyThere> foundDead;  ///< a look found them dead, their end is not written down
    std::vector<ColonyThere> there;      ///< on `to`, without those
    std::optional<WinterYear> before;    ///< the winter that ended before 1 May
    std::optional<WinterYear> after;     ///< the one that began at the end of the year, if it has

    /// Since 1 May, neither united nor sold.
    int lost() const;
};

/// Of all yards, as far as it is known on `today`.
ColoniesOfYear coloniesOfYear(const Read& file, int year, Day today);

/// Whether a colony was lost: it ended, and was neither united with another nor sold.
bool wasLost(const Colony& colony);

}  // namespace combwright
