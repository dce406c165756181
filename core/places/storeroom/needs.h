// What next season needs, what there is of it, what is short now and once the repairs are done, and
// what to buy. A need rests on the plan and on the stock; where either says nothing of something,
// what is short is not known and only its upper end is said.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/storeroom/season_plan.h"
#include "core/places/storeroom/stock.h"
#include "core/support/result.h"
#include "core/support/working.h"
#include "core/trade/storeroom/comb_age.h"
#include "core/trade/storeroom/comb_wax.h"

namespace combwright {

/// What is short of something. `atMost` is right where everything was counted; where something was
/// not, it is the most that can be short.
struct Shortage {
    std::int64_t need = 0;
    std::int64_t there = 0;  ///< usable now, as far as it is known
    std::int64_t inRepair = 0;
    std::int64_t nowAtMost = 0;
    std::int64_t afterRepairsAtMost = 0;
    bool known = true;  ///< nothing of it was left uncounted

    /// Once the repairs are done.
    std::int64_t usable() const { return there + inRepair; }
    std::optional<std::int64_t> now() const {
        return known || nowAtMost == 0 ? std::optional(nowAtMost) : std::nullopt;
    }
    std::optional<std::int64_t> afterRepairs() const {
        return known || afterRepairsAtMost == 0 ? std::optional(afterRepairsAtMost) : std::nullopt;
    }
};

struct BoxNeed {
    BoxKind kind;
    bool supers = false, brood = false;  ///< what it is needed for
    Shortage boxes;
    std::int64_t toScrape = 0;  ///< of those there
    std::int64_t held = 0;
    Working working;
};

struct FrameNeed {
    FrameKind kind;
    Shortage frames;
    UseCounts use;  ///< what hangs in free boxes and lies loose
    std::int64_t boxesNotCounted = 0;
    std::optional<std::int64_t> pack, packs;
    // Sheets of foundation.
    std::int64_t sheets = 0;                  ///< to put in
    std::optional<std::int64_t> sheetsThere;  ///< none: nobody counted them
    std::int64_t sheetsToBuy = 0;             ///< at most, where nobody counted them
    std::optional<std::int64_t> sheetPack, sheetPacks;
    Working working;
};

struct ItemNeed {
    PlanItem plan;
    Shortage pieces;
    std::optional<std::int64_t> inUse, held;
    std::optional<std::int64_t> packs;
    Working working;
};

/// So many brood combs of one year, to be taken out.
struct CullYear {
    std::optional<int> drawnYear;
    std::int64_t combs = 0;  ///< there are
    std::int64_t takeOut = 0;
};
/// Brood combs of a kind, in nests and on the shelf: a quarter goes each year, the oldest first.
struct CombCull {
    FrameKind kind;
    std::int64_t combs = 0;
    std::int64_t target = 0;
    std::int64_t yearUnknown = 0;
    std::vector<CullYear> years;  ///< oldest first, unknown last
    Working working;
};

/// What the drawn comb on the shelf spares the bees.
struct CombSpared {
    std::int64_t combs = 0;
    std::int64_t combsWithoutSize = 0;  ///< of a kind nobody measured: not in it
    double waxG = 0;
    Between honeyG;
    Working working;
};

/// What to enter before more can be said.
enum class PlanGap { Plan, Splits, FramesPerSuper, SuperFrame, FramesPerSplit, BroodFrame };
/// The field to enter: "plan-season", "splits" …
std::string_view key(PlanGap gap);

struct NextSeason {
    Day on;
    int year = 0;
    std::optional<SeasonPlan> plan;
    std::vector<PlanItem> items;
    std::vector<PlanGap> gaps;
    std::int64_t colonies = 0;
    bool coloniesPlanned = false;  ///< else as many as live
    std::int64_t splits = 0;
    std::vector<BoxNeed> boxes;
    std::vector<FrameNeed> frames;
    std::vector<ItemNeed> pieces;
    std::optional<CombCull> cull;
    std::optional<CombSpared> spared;  ///< where there is drawn comb on the shelf
};

/// The year a season is planned for on a day: the day's own where it has a plan, the next from
/// September on.
int plannedYear(const Read& file, Day on);

NextSeason nextSeason(const Read& file, Day on, int year);

/// The same as if this plan were kept, for the year it names; asked again and again while it is
/// typed, so the stock is the caller's. Refused as the reckoning refuses numbers beyond all reason.
Result<NextSeason> nextSeason(const Read& file, const Stock& stock, Day on, const SeasonPlan& plan,
                              const std::vector<PlanItem>& items);

}  // namespace combwright
