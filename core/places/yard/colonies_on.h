// How many colonies stood where on a day, for the registration of yards and for the keeper's own
// losses. Counted from who lived in which hive then, so that a hive that moved or was called
// otherwise counts where it was.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/model/yard/yard.h"
#include "core/storage/rows.h"
#include "core/support/working.h"
#include "core/trade/colony/loss.h"

namespace combwright {

struct ColonyThere {
    Colony colony;
    Hive hive;           ///< as it was called that day
    std::string mother;  ///< the hive it was split from, as it was called when it was
};

struct ColonyGone {
    Colony colony;
    Hive hive;              ///< where it ended, as it was called then
    std::string into;       ///< the hive it was united with
    std::string cause;      ///< of a dead-out, where somebody said
    std::string yard = {};  ///< where it ended
};

struct YardColonies {
    Yard yard;
    std::vector<ColonyThere> colonies;  ///< in walking order
    std::map<Origin, int> origins;
    std::vector<ColonyGone> ended;  ///< from `since` up to the day, oldest first
    int hives = 0;                  ///< stands, empty ones too
};

/// A winter's loss. At risk is what lived on its first day and was neither sold nor united since;
/// dead is what ended otherwise up to its last.
struct WinterLoss {
    Day from;
    Day to;  ///< its last day, or the day asked about while it lasts
    bool lasts = false;
    int atRisk = 0;
    int dead = 0;
    int soldOrUnited = 0;
    std::vector<std::pair<std::string, YardLoss>> yards;  ///< those with colonies at risk
    std::optional<ColonyLoss> loss;                       ///< nothing where none was at risk
};

struct ColoniesOn {
    Day on;
    Day since;
    std::vector<YardColonies> yards;
    int colonies = 0;
    int ended = 0;
    WinterLoss winter;
};

/// Of one yard or all, open on the day or with colonies then; what ended since a day, else since
/// New Year. The winter is the newest that had begun by then.
ColoniesOn coloniesOn(const Read& file, Day on, std::optional<Id<Yard>> yard = std::nullopt,
                      std::optional<Day> since = std::nullopt, Working* working = nullptr);

/// The first day of the winter that begins in a year.
Day winterBegins(const Read& file, int year);

}  // namespace combwright
