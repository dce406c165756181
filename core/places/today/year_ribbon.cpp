#include "core/places/today/year_ribbon.h"

#include <algorithm>
#include <set>

#include "core/model/health/medicine.h"
#include "core/model/honey/room.h"
#include "core/model/storeroom/dead_out.h"
#include "core/model/storeroom/equipment.h"
#include "core/model/storeroom/review.h"
#include "core/places/honey_room/run_balance.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/treatments.h"
#include "core/storage/queries/yards.h"

namespace combwright {
namespace {

/// Days and spans of one lane; a day is drawn once however often something was done on it.
class LaneDays {
  public:
    LaneDays(int year, Day today) : m_year(year), m_today(today) {}
    void done(Day from, std::optional<Day> to = std::nullopt) {
        if (from > m_today) return;
        const Day last = std::min(to.value_or(from), m_today);
        if (inYear(from) || inYear(last)) m_done.insert({from, last});
    }
    void due(Day from, Day to) {
        const Day first = std::max(from, m_today);
        if (inYear(first)) m_due.insert({first, std::max(first, to)});
    }
    std::vector<RibbonTick> ticks() const {
        std::vector<RibbonTick> all;
        for (const auto& [from, to] : m_done) all.push_back({from, to, true});
        for (const auto& [from, to] : m_due) all.push_back({from, to, false});
        return all;
    }

  private:
    bool inYear(Day day) const { return yearOf(day) == m_year; }
    int m_year;
    Day m_today;
    std::set<std::pair<Day, Day>> m_done, m_due;
};

RibbonWork laneOf(const DueItem& item) {
    switch (item.rule) {
        case DueRule::AddBox:
        case DueRule::SupersBack:
        case DueRule::Clearers:
            return RibbonWork::Supers;
        case DueRule::Wets:
            return item.where == DueWhere::Yard ? RibbonWork::Supers : RibbonWork::Storeroom;
        case DueRule::Feed:
        case DueRule::Stores:
        case DueRule::Treat:
        case DueRule::TakeOut:
            return RibbonWork::FeedAndTreat;
        case DueRule::Extract:
        case DueRule::Honey:
            return RibbonWork::HoneyRoom;
        case DueRule::Freezer:
        case DueRule::DeadOut:
            return RibbonWork::Storeroom;
        case DueRule::Wax:
            return item.where == DueWhere::Yard ? RibbonWork::Supers : RibbonWork::Storeroom;
        default:
            return RibbonWork::YardVisits;
    }
}

Day firstDayOfYear(Day day) { return *makeDay(yearOf(day), 1, 1); }

/// Boxes that came onto a hive or left it; not those a hive is set up with.
void addBoxDays(const Read& file, Day first, Day last, LaneDays& lane) {
    std::set<std::pair<std::int64_t, Day>> begun;
    for (const Hive& hive : file.all<Hive>()) begun.insert({hive.id.number, hive.since});
    for (const BoxMove& move :
         file.where<BoxMove>({isFrom("on_day", first), isUpTo("on_day", last)})) {
        const bool setUp =
            move.toHive && !move.fromPlace && begun.contains({move.toHive->number, move.on});
        if (!setUp && move.toHive != move.fromHive) lane.done(move.on);
    }
}

void addRoomDays(const Read& file, LaneDays& lane) {
    for (const Extraction& run : file.all<Extraction>()) lane.done(run.on);
    for (const SpinLoad& load : file.all<SpinLoad>()) lane.done(load.on);
    for (const RoomDay& day : file.all<RoomDay>()) lane.done(day.on);
}

void addFeedDays(const Read& file, Day first, Day last, LaneDays& lane) {
    for (const Feeding& feeding :
         file.where<Feeding>({isFrom("on_day", first), isUpTo("on_day", last)}))
        lane.done(feeding.on);
    for (const Treatment& treatment : treatmentsTouching(file, first, last))
        lane.done(treatment.on, treatment.out);
}

void addStoreDays(const Read& file, Day today, LaneDays& lane) {
    for (const BoxReview& review : file.all<BoxReview>()) lane.done(review.on);
    for (const EquipmentCount& count : file.all<EquipmentCount>()) lane.done(count.on);
    for (const FreezerRound& round : file.all<FreezerRound>())
        lane.done(round.in, round.out.value_or(today));
}

}  // namespace

YearRibbon yearRibbon(const Read& file, Day today, const DueList& due) {
    const OneState still(file);
    YearRibbon ribbon;
    ribbon.year = yearOf(today);
    ribbon.today = today;
    std::vector<LaneDays> lanes(5, LaneDays(ribbon.year, today));
    const auto lane = [&](RibbonWork work) -> LaneDays& {
        return lanes[static_cast<std::size_t>(work)];
    };
    const Day first = firstDayOfYear(today);
    for (const Visit& visit : file.where<Visit>({isFrom("on_day", first), isUpTo("on_day", today)}))
        lane(RibbonWork::YardVisits).done(visit.on);
    addBoxDays(file, first, today, lane(RibbonWork::Supers));
    addFeedDays(file, first, today, lane(RibbonWork::FeedAndTreat));
    addRoomDays(file, lane(RibbonWork::HoneyRoom));
    addStoreDays(file, today, lane(RibbonWork::Storeroom));
    for (const DueTrip& trip : due.trips)
        for (const DueHive& row : trip.hives)
            for (const DueItem& item : row.items) {
                const Day from = std::max(item.from, today);
                const RibbonWork work = laneOf(item);
                // A look has its trip's day; what else may be done over days is drawn so long.
                if (work != RibbonWork::YardVisits)
                    lane(work).due(from, std::max(from, item.by.value_or(from)));
                // One drives there for it.
                if (trip.isTrip()) lane(RibbonWork::YardVisits).due(trip.day, trip.day);
            }
    for (std::size_t i = 0; i < lanes.size(); ++i)
        ribbon.lanes.push_back({static_cast<RibbonWork>(i), lanes[i].ticks()});
    return ribbon;
}

SoFar soFar(const Read& file, Day today) {
    SoFar so;
    const int year = yearOf(today);
    const auto thisYear = [&](Day day) { return yearOf(day) == year && day <= today; };
    for (const Extraction& run : file.all<Extraction>()) {
        if (!thisYear(run.on)) continue;
        const BucketSum sum = bucketSum(file, run.id);
        ++so.runs;
        if (sum.how == How::Unknown) continue;
        so.honeyHow = so.honey ? weaker(so.honeyHow, sum.how) : sum.how;
        so.honey = so.honey.value_or(Mass()) + sum.mass;
    }
    const Day begin = firstDayOfYear(today);
    so.visits = static_cast<std::int64_t>(
        file.where<Visit>({isFrom("on_day", begin), isUpTo("on_day", today)}).size());
    auto colonies = file.where<Colony>({isUnknown("ended"), isUpTo("since", today)});
    for (Colony& ended : file.where<Colony>({isFrom("ended", begin), isUpTo("since", today)}))
        colonies.push_back(std::move(ended));
    for (const Colony& colony : colonies) {
        // A colony that was united or sold is not lost; it lives on elsewhere.
        const bool gone = colony.ended && *colony.ended <= today;
        if (gone && !leftDeadCombs(colony)) continue;
        ++so.of;
    }
    so.alive = coloniesAliveOn(file, today);
    return so;
}

}  // namespace combwright
