#include "core/places/season_book/season_strip.h"

#include <algorithm>
#include <map>
#include <optional>

#include "core/model/frames/box.h"
#include "core/model/health/medicine.h"
#include "core/model/honey/extraction.h"
#include "core/model/yard/moves.h"
#include "core/model/yard/queen.h"
#include "core/model/yard/visit.h"
#include "core/storage/queries/hive_days.h"

namespace combwright {
namespace {

constexpr int stripWeekDays = 7;

Day mondayOf(Day day) {
    const std::chrono::weekday weekday{day};
    return day - days(static_cast<int>(weekday.iso_encoding()) - 1);
}

/// Reads each kind of record of the year once and writes it into the rows of its hives.
class StripReader {
  public:
    StripReader(const Read& file, int year, Day today)
        : m_file(file),
          m_from(*makeDay(year, 1, 1)),
          m_to(std::min(today, *makeDay(year, 12, 31))),
          m_stays(allColonyStays(file)) {
        m_strip.year = year;
    }

    SeasonStrip read() {
        if (m_to < m_from) return m_strip;
        findLooks();
        findMoves();
        findFeedings();
        findTreatments();
        findRuns();
        findColonies();
        if (m_found.empty()) return m_strip;
        lay();
        return m_strip;
    }

  private:
    template <class Record>
    std::vector<Record> ofYear() const {
        return m_file.where<Record>({isFrom("on_day", m_from), isUpTo("on_day", m_to)});
    }
    bool within(Day day) const { return m_from <= day && day <= m_to; }
    StripWeek& at(Id<Hive> hive, Day day) { return m_found[hive.number][mondayOf(day)]; }
    void mark(Id<Hive> hive, Day day, StripMark what) {
        if (within(day)) at(hive, day).marks.insert(what);
    }

    void findLooks() {
        for (const Visit& visit : ofYear<Visit>())
            for (const Inspection& each : m_file.where<Inspection>({is("visit", visit.id)})) {
                if (each.seen.looked == Looked::NotOpened && each.line.empty()) continue;
                StripWeek& week = at(each.hive, visit.on);
                week.opened = week.opened || each.seen.looked == Looked::Opened;
                week.lidOnly = week.lidOnly || each.seen.looked != Looked::Opened;
                if (each.seen.looked == Looked::FoundDead) week.marks.insert(StripMark::Ended);
            }
        for (const Finding& finding : ofYear<Finding>())
            if (finding.mites) mark(finding.hive, finding.on, StripMark::Counted);
    }

    void findMoves() {
        for (const BoxMove& move : ofYear<BoxMove>()) {
            if (move.toHive == move.fromHive) continue;
            const auto to = m_file.find(move.toHive);
            // What a hive is set up with is not added to it.
            if (to && (move.fromPlace || move.on != to->since))
                mark(to->id, move.on, StripMark::BoxesOn);
            if (!move.fromHive) continue;
            const bool forHoney = move.toPlace == BoxPlace::Cleared ||
                                  move.toPlace == BoxPlace::Waiting ||
                                  move.toPlace == BoxPlace::Wet;
            mark(*move.fromHive, move.on, forHoney ? StripMark::Pulled : StripMark::BoxesOff);
        }
        for (const HiveMove& move : ofYear<HiveMove>())
            if (move.fromYard != move.toYard) mark(move.hive, move.on, StripMark::Moved);
    }

    void findFeedings() {
        for (const Feeding& feeding : ofYear<Feeding>())
            mark(feeding.hive, feeding.on, StripMark::Fed);
    }

    void findTreatments() {
        for (const Treatment& each : m_file.where<Treatment>({isUpTo("on_day", m_to)})) {
            mark(each.hive, each.on, StripMark::Treated);
            // One whose end nobody wrote down is only known to have been in the week it was given.
            const Day out = std::min(each.out.value_or(each.on), m_to);
            if (each.out)
                for (Day on = std::max(each.on, m_from); on <= out; on += days(1))
                    at(each.hive, on).medicine = true;
        }
    }

    void findRuns() {
        for (const Extraction& run : ofYear<Extraction>())
            for (const ExtractionBox& box : m_file.where<ExtractionBox>({is("extraction", run.id)}))
                // A box whose way from the hive nobody wrote down was pulled for its run.
                if (box.hive && !box.box) mark(*box.hive, run.on, StripMark::Pulled);
    }

    void findColonies() {
        for (const ColonyStay& stay : m_stays) {
            const Colony& colony = stay.colony;
            const bool first = stay.from == colony.since;
            if (first && colony.origin != Origin::Overwintered)
                mark(stay.hive, stay.from, StripMark::Came);
            if (!first) mark(stay.hive, stay.from, StripMark::Moved);
            if (first && colony.mother)
                for (const ColonyStay& mother : m_stays)
                    if (mother.colony.id == *colony.mother && mother.holds(stay.from))
                        mark(mother.hive, stay.from, StripMark::Divided);
            if (!stay.to) continue;
            if (stay.to != colony.ended)
                mark(stay.hive, *stay.to, StripMark::Moved);
            else
                mark(stay.hive, *stay.to,
                     colony.ending == Ending::United || colony.ending == Ending::Sold
                         ? StripMark::Left
                         : StripMark::Ended);
        }
        for (const QueenStay& queen : m_file.all<QueenStay>()) {
            const auto colony = m_file.find(queen.colony);
            if (!colony) continue;
            if (within(queen.since) && queen.since != colony->since)
                mark(hiveOfColony(m_file, *colony, queen.since), queen.since, StripMark::Queen);
            if (queen.until && within(*queen.until) && queen.until != colony->ended)
                mark(hiveOfColony(m_file, *colony, *queen.until), *queen.until, StripMark::Queen);
        }
    }

    /// Whether a colony lived in the hive on any day of the week; yes where nobody ever wrote down
    /// who lived there.
    bool livedIn(Id<Hive> hive, Day monday) const {
        bool known = false;
        for (const ColonyStay& stay : m_stays) {
            if (stay.hive != hive) continue;
            known = true;
            if (stay.from < monday + days(stripWeekDays) && (!stay.to || *stay.to >= monday))
                return true;
        }
        return !known;
    }

    void lay() {
        std::optional<Day> first, last;
        for (const auto& [hive, weeks] : m_found) {
            if (weeks.empty()) continue;
            first = std::min(first.value_or(m_to), weeks.begin()->first);
            last = std::max(last.value_or(m_from), weeks.rbegin()->first);
        }
        for (Day monday = *first; monday <= *last; monday += days(stripWeekDays))
            m_strip.weeks.push_back(monday);
        for (const Yard& yard : m_file.all<Yard>()) {
            StripYard strip{yard, {}};
            for (const Hive& hive : hivesOn(m_file, yard.id, m_to)) add(strip, hive);
            // Hives that were closed within the year stood there all the same.
            for (const Hive& hive : m_file.where<Hive>({is("yard", yard.id)}))
                if (hive.closed && within(*hive.closed) && *hive.closed <= m_to &&
                    std::none_of(strip.rows.begin(), strip.rows.end(),
                                 [&](const StripRow& row) { return row.hive.id == hive.id; }))
                    add(strip, hive);
            if (!strip.rows.empty()) m_strip.yards.push_back(std::move(strip));
        }
    }

    void add(StripYard& strip, const Hive& hive) {
        StripRow row{hive, {}};
        auto& found = m_found[hive.id.number];
        for (const Day monday : m_strip.weeks) {
            StripWeek& week = row.weeks.emplace_back(found[monday]);
            week.nobody = !livedIn(hive.id, monday);
        }
        strip.rows.push_back(std::move(row));
    }

    const Read& m_file;
    Day m_from;
    Day m_to;
    std::vector<ColonyStay> m_stays;
    std::map<std::int64_t, std::map<Day, StripWeek>> m_found;  ///< by hive, by Monday
    SeasonStrip m_strip;
};

}  // namespace

SeasonStrip seasonStrip(const Read& file, int year, Day today) {
    const OneState still(file);
    return StripReader(file, year, today).read();
}

}  // namespace combwright
