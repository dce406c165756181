// What each hive has to live on, how that is known, and whether it lasts: until the first flow in
// spring, and against what it should go into winter with. A figure that nobody measured stays
// unknown; a heft is a word, not a mass.
#pragma once

#include <array>
#include <optional>
#include <string_view>
#include <vector>

#include "core/model/yard/visit.h"
#include "core/places/explain/explained.h"
#include "core/places/stores/feed_shelf.h"
#include "core/places/stores/hive_scale.h"
#include "core/places/stores/stores_past.h"
#include "core/trade/colony/flow_state.h"
#include "core/trade/colony/run_out.h"

namespace combwright {

/// What tells of the stores.
enum class StoresFrom { Weighed, Frames, Heft, Nothing };
/// As JSON names it: "weighed", "frames", "heft", "nothing".
std::string_view key(StoresFrom from);

/// Where the use per day comes from.
enum class UseFrom { OwnScale, MonthTable, NotKnown };
/// As JSON names it: "own_weighings", "month_table", "not_known".
std::string_view key(UseFrom from);

/// What fills a gap.
struct ToGive {
    double sugarG = 0;
    bool fondant = false;               ///< too cold for syrup
    double waterMl = 0;                 ///< for syrup
    std::optional<double> litres;       ///< of syrup; none: of a ratio no density is printed for
    std::optional<std::int64_t> packs;  ///< of the stock's size; none: nobody said what one holds
    std::optional<Mass> pack;
};

/// What a gap is reckoned against.
enum class GapTo { Winter, FirstFlow, Nothing };
/// As JSON names it: "winter", "first_flow", "nothing".
std::string_view key(GapTo to);
/// In the months of autumn feeding the winter, from then on the first flow, from the first flow on
/// nothing: the bees bring in what they need.
GapTo gapToOn(const Read& file, Id<Yard> yard, Day on);

struct HiveStores {
    Hive hive;
    bool lives = false;  ///< a colony lives there; without one nothing is reckoned
    StoresFrom from = StoresFrom::Nothing;
    std::optional<Day> known;     ///< the day it is from
    std::optional<double> grams;  ///< that day; none: no figure
    How how = How::Unknown;
    std::optional<ScaleReading> scale;  ///< where it was weighed
    bool tareWrong = false;             ///< the scale said less than the empty hive
    bool oneSide = false;               ///< the newest weighing is one side only
    bool takenSince = false;            ///< a box was carried off since the newest weighing
    std::optional<double> withSupersG;  ///< stores and what is in the supers, as weighed
    double scaledSupersG = 0;           ///< of that in the supers, as they were looked into
    int scaledSupers = 0;               ///< that stood on it when it was weighed
    bool supersHide = false;            ///< a super nobody looked into: its nest is not known
    std::optional<double> framesOfStores;
    std::optional<Heft> heft;  ///< the newest, with its day
    std::optional<Day> heftOn;
    FedBetween fedSince;

    MonthlyUse byMonth{};  ///< the month table in force
    UseFrom use = UseFrom::NotKnown;
    std::optional<OwnUse> own;
    std::optional<double> usedSinceG;
    std::optional<double> nowG;  ///< reckoned to the day; none: too long ago to say
    double floorG = 0;           ///< never to be touched
    Day firstFlow;               ///< the next
    std::optional<Day> runsOut;  ///< down to the floor; none: not known, or not before the flow
    std::optional<Day> byTable;  ///< the same by the table of months
    std::optional<Day> byOwn;    ///< and by the hive's own scale
    std::optional<bool> lasts;   ///< to the first flow; none: not known

    double needG = 0;  ///< to go into winter with
    int supers = 0;    ///< standing over the nest, but for those to be pulled
    int supersNotSeen = 0;
    double supersG = 0;                ///< honey in those that were looked at
    double pulledG = 0;                ///< honey the kept plan takes off
    int toPull = 0;                    ///< boxes it takes off
    std::optional<double> forWinterG;  ///< what it has, less what the plan takes
    GapTo gapTo = GapTo::Winter;
    std::optional<double>
        gapG;  ///< what it lacks to that; 0: nothing; none: not known, or not asked
    std::optional<ToGive> give;
    std::optional<FlowState> flow;  ///< of its last week on the scale
};

struct Stores {
    Day on;
    std::vector<std::pair<Yard, std::vector<HiveStores>>> yards;
    std::vector<FeedShelfRow> shelf;
    std::vector<MonthChange> past;
    double sugarG = 0;      ///< to give, all hives together
    int notKnown = 0;       ///< living hives whose stores nobody knows
    int runOut = 0;         ///< hives that do not last to the first flow
    int lastsNotKnown = 0;  ///< living hives of which nobody knows whether they do
    double storesPerSugar = 1;
    double sugarToWater = 2;
};

/// The month table in force: the keeper's own before the published, October to April.
MonthlyUse winterUse(const Read& file, Id<Yard> yard, Day on);
/// Whose table that is.
std::string winterUseSource(const Read& file, Id<Yard> yard, Day on);
/// The first flow after a day, by the yard's own day of the year, else the file's; a day that is
/// not in the month (31 June) is its last.
Day nextFirstFlow(const Read& file, Id<Yard> yard, Day on);
/// What a hive lacks to the first flow: by its own scale or by the months, whichever is more; 0
/// where it lasts, nothing where nobody knows.
std::optional<double> lacksToFlow(const HiveStores& row, Day on);
/// Whether syrup is not taken any more in that month.
bool fondantTime(const Read& file, Id<Yard> yard, Day on);
/// Sugar, water, litres, packs for a gap in grams of stores.
ToGive toGive(const Read& file, Id<Yard> yard, Day on, double gapG, Working* working = nullptr);

/// The hives of a yard that stand on the day, in walking order.
std::vector<HiveStores> storesInYard(const Read& file, const Yard& yard, Day on);
Stores stores(const Read& file, const std::vector<Id<Yard>>& yards, Day on);

/// Grams a hive uses a day: by its own scale, below 0 where it gains; else by the month; nothing
/// where nobody knows.
std::optional<double> useADay(const HiveStores& row, Day on);

/// How each figure came about.
std::vector<Explained> explainStores(const Read& file, const Stores& stores);

}  // namespace combwright
