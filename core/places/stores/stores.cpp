#include "core/places/stores/stores.h"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <set>

#include "core/catalogue/colony_tables.h"
#include "core/catalogue/constants.h"
#include "core/places/pull/full_frame.h"
#include "core/places/pull/pull_input.h"
#include "core/places/yard/growth.h"
#include "core/storage/queries/constants.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/yards.h"
#include "core/trade/colony/sugar.h"

namespace combwright {
namespace {

/// How long a figure speaks while nobody knows what is used or brought in. Planning assumption, no
/// source; the same as for a look into a super.
constexpr int figureHoldsDays = 35;
/// A table that begins in October is begun early where a hive is weighed in September: until then
/// it is taken to live on what it brings. Common practice, no source.
constexpr int levelBeforeTableDays = 45;
/// Weighings older than this say nothing of this winter.
constexpr int weighedWithinDays = 300;
constexpr int flowFromDays = 3;
constexpr int flowToDays = 10;

/// The day the table begins to tell; the day itself where it never does soon enough.
Day tableTellsFrom(const MonthlyUse& table, Day day) {
    for (int later = 0; later < levelBeforeTableDays; ++later)
        if (table[monthOf(day + days(later)) - 1]) return day + days(later);
    return day;
}

/// Reads one yard's hives.
class StoresReader {
  public:
    StoresReader(const Read& file, const Yard& yard, Day on)
        : m_file(file), m_yard(yard), m_on(on), m_table(winterUse(file, yard.id, on)) {
        PullAsked asked;
        asked.yards = {yard.id};
        asked.forDay = on;
        asked.limits = startingLimits(file, on);
        const auto need = yard.winterNeed ? yard.winterNeed : asked.limits.winterNeed;
        if (need) m_needG = static_cast<double>(need->grams());
        for (PullYardRow& row : pullInput(file, on, asked).yards)
            for (PullHiveRow& hive : row.hives) m_pull.push_back(std::move(hive));
        if (const auto kept = keptPull(file, on))
            for (const PullLine& line : file.where<PullLine>({is("plan", kept->plan.id)}))
                if (line.verdict == PullVerdict::Take) m_taken.insert(line.box.number);
    }

    HiveStores read(const Hive& hive) const;

  private:
    void readScaleOf(HiveStores& row, const std::vector<ScaleReading>& readings,
                     const std::vector<Day>& left) const;
    void setSupersApart(HiveStores& row) const;
    std::optional<double> honeyIn(Id<Box> box) const;
    void readLooks(HiveStores& row, Day since) const;
    void readSupers(HiveStores& row) const;
    void carryForward(HiveStores& row) const;
    void lastUntil(HiveStores& row) const;
    void fillGap(HiveStores& row) const;

    const Read& m_file;
    const Yard& m_yard;
    Day m_on;
    MonthlyUse m_table;
    double m_needG = 0;
    std::vector<PullHiveRow> m_pull;
    std::set<std::int64_t> m_taken;
};

/// The newest weighing with a figure, where nothing was carried off since.
void StoresReader::readScaleOf(HiveStores& row, const std::vector<ScaleReading>& readings,
                               const std::vector<Day>& left) const {
    if (readings.empty()) return;
    const ScaleReading& newest = readings.back();
    row.scale = newest;
    row.oneSide = !newest.grossG;
    row.tareWrong = newest.netG && *newest.netG < 0;
    if (!newest.netG || row.tareWrong) return;
    if (boxLeftBetween(left, newest.weighing.on, m_on)) {
        row.takenSince = true;
        return;
    }
    row.from = StoresFrom::Weighed;
    row.known = newest.weighing.on;
    row.grams = *newest.netG;
    row.how = newest.how;
    setSupersApart(row);
}

/// The scale lifts the supers too, and what is in them is no winter stores of the nest. Where one
/// was not looked into nobody knows what lies below it.
void StoresReader::setSupersApart(HiveStores& row) const {
    const Standing standing = standingOn(m_file, row.hive, row.scale->weighing.on);
    Hive then = row.hive;
    then.excluderAbove = standing.excluderAbove;
    auto supers = supersOn(then, standing.boxes);
    // Without an excluder a second box like the bottom one is nest, and the bees winter on it.
    if (!then.excluderAbove && !standing.boxes.empty())
        std::erase_if(supers,
                      [&](const Box& box) { return box.kind == standing.boxes.front().kind; });
    if (supers.empty()) return;
    row.withSupersG = row.grams;
    row.scaledSupers = static_cast<int>(supers.size());
    for (const Box& super : supers) {
        const auto honey = honeyIn(super.id);
        if (!honey) {
            row.supersHide = true;
            continue;
        }
        row.scaledSupersG += *honey;
    }
    if (row.supersHide) {
        row.from = StoresFrom::Nothing;
        row.known.reset();
        row.grams.reset();
        row.how = How::Unknown;
        return;
    }
    row.grams = std::max(0.0, *row.grams - row.scaledSupersG);
    row.how = weaker(row.how, How::ByEye);
}

std::optional<double> StoresReader::honeyIn(Id<Box> box) const {
    for (const PullHiveRow& pull : m_pull)
        for (const PullBoxRow& each : pull.boxes)
            if (each.box.id == box && each.honey) return each.honey->grams;
    return std::nullopt;
}

/// Frames of stores and heft, each the newest; frames tell where they are newer than the scale.
void StoresReader::readLooks(HiveStores& row, Day since) const {
    std::optional<double> frames;
    std::optional<Day> framesOn;
    const Day first = std::max(since, m_on - days(weighedWithinDays));
    lookBack(m_file, row.hive.id, first, m_on + days(1), [&](const DatedInspection& each) {
        const Seen& seen = each.inspection.seen;
        if (!row.heft && seen.heft) {
            row.heft = seen.heft;
            row.heftOn = each.on;
        }
        if (!frames && seen.stores && seen.stores->middle()) {
            frames = *seen.stores->middle() / 10.0;
            framesOn = each.on;
        }
        return !frames || !row.heft;
    });
    row.framesOfStores = frames;
    if (frames && (!row.known || *row.known < *framesOn)) {
        const auto standing = standingOn(m_file, row.hive, *framesOn);
        const auto kind =
            standing.boxes.empty() ? std::nullopt : m_file.find(standing.boxes.front().kind);
        const auto frame = kind ? m_file.find(kind->takes) : std::nullopt;
        const auto full = frame ? fullFrameGramsOf(m_file, *frame, m_yard.id, m_on) : std::nullopt;
        row.from = StoresFrom::Frames;
        row.known = framesOn;
        row.grams.reset();
        if (full) row.grams = *frames * *full;
        // Counted perhaps, yet how full such a frame is was judged by eye.
        row.how = How::ByEye;
    }
    if (row.from == StoresFrom::Nothing && row.heft) {
        row.from = StoresFrom::Heft;
        row.known = row.heftOn;
    }
}

void StoresReader::readSupers(HiveStores& row) const {
    const bool asked = std::any_of(m_pull.begin(), m_pull.end(), [&](const PullHiveRow& pull) {
        return pull.hive.id == row.hive.id;
    });
    if (!asked) {
        // Of a hive that is elsewhere or gone today nobody plans a pull: what stood there counts.
        row.needG = m_needG;
        const Standing standing = standingOn(m_file, row.hive, m_on);
        Hive then = row.hive;
        then.excluderAbove = standing.excluderAbove;
        row.supers = static_cast<int>(supersOn(then, standing.boxes).size());
        row.supersNotSeen = row.supers;
        return;
    }
    for (const PullHiveRow& pull : m_pull) {
        if (pull.hive.id != row.hive.id) continue;
        row.needG = pull.needG;
        for (const PullBoxRow& box : pull.boxes) {
            if (m_taken.contains(box.box.id.number)) {
                ++row.toPull;
                row.pulledG += box.honey ? box.honey->grams : 0;
                continue;
            }
            ++row.supers;
            if (box.honey)
                row.supersG += box.honey->grams;
            else
                ++row.supersNotSeen;
        }
    }
}

/// What is left of the figure today.
void StoresReader::carryForward(HiveStores& row) const {
    if (!row.grams) return;
    row.fedSince = fedBetween(m_file, row.hive, *row.known, m_on + days(1));
    const double had = *row.grams + row.fedSince.storesG;
    if (row.use == UseFrom::OwnScale)
        row.usedSinceG = row.own->gPerDay * static_cast<double>((m_on - *row.known).count());
    else
        row.usedSinceG = useBetween(m_table, tableTellsFrom(m_table, *row.known), m_on);
    if (row.usedSinceG) {
        row.nowG = std::max(0.0, had - *row.usedSinceG);
        if (*row.usedSinceG > 0 || row.fedSince.sugarG > 0) row.how = weaker(row.how, How::Assumed);
        return;
    }
    // Between spring and autumn nobody knows; what is not old still speaks.
    if (*row.known + days(figureHoldsDays) >= m_on) row.nowG = had;
}

/// Down to the floor by the hive's own scale, else by the months; against the first flow.
void StoresReader::lastUntil(HiveStores& row) const {
    row.floorG = constantOr(m_file, "stores_floor_g", m_yard.id, m_on, 5000);
    row.firstFlow = nextFirstFlow(m_file, m_yard.id, m_on);
    if (!row.grams) return;
    const double had = *row.grams + row.fedSince.storesG;
    if (row.own && row.own->gPerDay > 0) {
        const auto out = runOut(had, row.floorG, row.own->gPerDay, *row.known);
        if (out) row.byOwn = *out;
    }
    const Day from = tableTellsFrom(m_table, *row.known);
    const auto flowAfter = nextFirstFlow(m_file, m_yard.id, *row.known);
    std::optional<double> used;
    if (m_table[monthOf(from) - 1]) {
        used = useBetween(m_table, from, flowAfter);
        if (const auto out = runOutByMonth(had, row.floorG, m_table, from); out) row.byTable = *out;
    }
    // A slow autumn says nothing of the spring, when brood is reared: the earlier day warns.
    if (row.byOwn) row.runsOut = row.byOwn;
    if (row.byTable && (!row.runsOut || *row.byTable < *row.runsOut)) row.runsOut = row.byTable;
    if (row.runsOut)
        row.lasts = *row.runsOut >= flowAfter;
    else if (used)
        row.lasts = had - *used >= row.floorG;
    // A figure of before the last flow says nothing of the next.
    if (flowAfter <= m_on) {
        row.runsOut = row.byOwn = row.byTable = std::nullopt;
        row.lasts.reset();
    }
    if (row.lasts == true) row.runsOut.reset();
}

void StoresReader::fillGap(HiveStores& row) const {
    row.gapTo = gapToOn(m_file, m_yard.id, m_on);
    if (row.gapTo == GapTo::FirstFlow) {
        row.gapG = lacksToFlow(row, m_on);
        if (row.gapG && *row.gapG > 0) row.give = toGive(m_file, m_yard.id, m_on, *row.gapG);
    }
    if (!row.nowG) return;
    // What is in the supers that stay up comes to it; what the plan takes does not.
    row.forWinterG = *row.nowG + row.supersG;
    if (row.gapTo != GapTo::Winter) return;
    row.gapG = std::max(0.0, row.needG - *row.forWinterG);
    if (*row.gapG > 0) row.give = toGive(m_file, m_yard.id, m_on, *row.gapG);
}

HiveStores StoresReader::read(const Hive& hive) const {
    HiveStores row;
    row.hive = hive;
    row.byMonth = m_table;
    row.firstFlow = nextFirstFlow(m_file, m_yard.id, m_on);
    const auto living = colonyLivingOn(m_file, hive.id, m_on);
    row.lives = living.has_value() && !foundDeadOn(m_file, hive.id, m_on);
    readSupers(row);
    if (!row.lives) return row;
    const Day since = std::max(living->from, m_on - days(weighedWithinDays));
    const auto readings = scaleReadings(m_file, hive, since, m_on);
    const auto left = boxesLeftOn(m_file, hive.id, since);
    readScaleOf(row, readings, left);
    readLooks(row, living->from);
    row.own = ownUse(m_file, hive, readings, left);
    if (row.own) {
        const auto apart = (row.own->to - row.own->from).count();
        const auto ago = (m_on - row.own->to).count();
        if (apart >= flowFromDays && apart <= flowToDays && ago <= flowToDays)
            row.flow = flowState(-row.own->gPerDay);
    }
    if (row.own && row.own->gPerDay > 0)
        row.use = UseFrom::OwnScale;
    else if (m_table[monthOf(m_on) - 1])
        row.use = UseFrom::MonthTable;
    carryForward(row);
    lastUntil(row);
    fillGap(row);
    return row;
}

}  // namespace

std::string_view key(StoresFrom from) {
    constexpr std::array<std::string_view, 4> keys{"weighed", "frames", "heft", "nothing"};
    return keys[static_cast<std::size_t>(from)];
}

std::string_view key(UseFrom from) {
    constexpr std::array<std::string_view, 3> keys{"own_weighings", "month_table", "not_known"};
    return keys[static_cast<std::size_t>(from)];
}

std::optional<double> useADay(const HiveStores& row, Day on) {
    if (row.own) return row.own->gPerDay;
    return row.lives ? useBetween(row.byMonth, on, on + days(1)) : std::nullopt;
}

std::string_view key(GapTo to) {
    constexpr std::array<std::string_view, 3> keys{"winter", "first_flow", "nothing"};
    return keys[static_cast<std::size_t>(to)];
}

GapTo gapToOn(const Read& file, Id<Yard> yard, Day on) {
    const auto month = [&](const char* name, double fallback) {
        return std::clamp(std::lround(constantOr(file, name, yard, on, fallback)), 1L, 12L);
    };
    if (monthWithin(on, month("feed_from_month", 8), month("feed_to_month", 10)))
        return GapTo::Winter;
    // Between the first flow and autumn the next flow is further off than the next autumn.
    const long from = month("feed_from_month", 8);
    const Day flow = nextFirstFlow(file, yard, on);
    for (Day day = on; day < flow; day += days(1))
        if (monthOf(day) == static_cast<unsigned>(from)) return GapTo::Nothing;
    return GapTo::FirstFlow;
}

std::optional<double> lacksToFlow(const HiveStores& row, Day on) {
    if (!row.lasts) return std::nullopt;
    if (*row.lasts) return 0;
    double lacks = row.nowG ? std::max(0.0, row.floorG - *row.nowG) : 0;
    if (!row.runsOut) return lacks > 0 ? std::optional(lacks) : std::nullopt;
    if (const auto used = useBetween(row.byMonth, std::max(*row.runsOut, on), row.firstFlow))
        lacks = std::max(lacks, *used);
    if (row.own && row.own->gPerDay > 0)
        lacks = std::max(
            lacks, row.own->gPerDay * static_cast<double>((row.firstFlow - *row.runsOut).count()));
    return lacks;
}

MonthlyUse winterUse(const Read& file, Id<Yard> yard, Day on) {
    MonthlyUse use;
    for (const PublishedMonthUse& each : publishedWinterUse())
        use[each.month - 1] = constantOr(file, winterUseName(each.month), yard, on, each.use_g);
    return use;
}

std::string winterUseSource(const Read& file, Id<Yard> yard, Day on) {
    for (const PublishedMonthUse& each : publishedWinterUse())
        if (const auto found = constantInForce(file, winterUseName(each.month), yard, on);
            found && found->own)
            return constantSource(*found);
    return publishedWinterUse().front().source;
}

Day nextFirstFlow(const Read& file, Id<Yard> yard, Day on) {
    const auto month =
        std::clamp(std::lround(constantOr(file, "first_flow_month", yard, on, 4)), 1L, 12L);
    const auto day =
        std::clamp(std::lround(constantOr(file, "first_flow_day", yard, on, 15)), 1L, 31L);
    for (const int year : {yearOf(on), yearOf(on) + 1})
        for (long of = day; of > 0; --of)
            if (const auto flow =
                    makeDay(year, static_cast<unsigned>(month), static_cast<unsigned>(of))) {
                if (*flow > on) return *flow;
                break;
            }
    return on;  // the calendar's last year
}

bool fondantTime(const Read& file, Id<Yard> yard, Day on) {
    return monthWithin(on, std::lround(constantOr(file, "fondant_from_month", yard, on, 11)),
                       std::lround(constantOr(file, "fondant_to_month", yard, on, 2)));
}

ToGive toGive(const Read& file, Id<Yard> yard, Day on, double gapG, Working* working) {
    ToGive give;
    give.fondant = fondantTime(file, yard, on);
    const double ratio = constantOr(file, "sugar_to_water", yard, on, 2.0);
    const auto need =
        sugarFor(gapG, constantOr(file, "stores_per_sugar", yard, on, 1.0), ratio, working);
    if (!need) return give;
    give.sugarG = need->sugar_g;
    if (!give.fondant) {
        give.waterMl = need->water_ml;
        if (const auto litres = syrupLitres(need->sugar_g, ratio)) give.litres = *litres;
    }
    give.pack = packOf(file, give.fondant ? FeedKind::Fondant : FeedKind::Dry, on);
    if (give.pack && give.pack->grams() > 0) {
        const double packs = give.sugarG / static_cast<double>(give.pack->grams());
        give.packs = static_cast<std::int64_t>(std::ceil(packs - 1e-9));
    }
    return give;
}

std::vector<HiveStores> storesInYard(const Read& file, const Yard& yard, Day on) {
    const OneState still(file);
    std::vector<HiveStores> rows;
    const StoresReader reader(file, yard, on);
    for (const Hive& hive : hivesOn(file, yard.id, on)) rows.push_back(reader.read(hive));
    return rows;
}

Stores stores(const Read& file, const std::vector<Id<Yard>>& yards, Day on) {
    Stores all;
    all.on = on;
    all.storesPerSugar = constantOr(file, "stores_per_sugar", {}, on, 1.0);
    all.sugarToWater = constantOr(file, "sugar_to_water", {}, on, 2.0);
    all.shelf = feedShelf(file, on);
    all.past = pastChanges(file, yards, on);
    for (const Id<Yard> id : yards) {
        const auto yard = file.find(id);
        if (!yard) continue;
        all.yards.emplace_back(*yard, storesInYard(file, *yard, on));
        for (const HiveStores& each : all.yards.back().second) {
            if (!each.lives) continue;
            if (!each.nowG) ++all.notKnown;
            if (each.lasts == false) ++all.runOut;
            if (!each.lasts) ++all.lastsNotKnown;
            if (each.give) all.sugarG += each.give->sugarG;
        }
    }
    return all;
}

}  // namespace combwright
