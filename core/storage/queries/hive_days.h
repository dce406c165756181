// Who stood and lived where on a day. A hive keeps one row for its whole life and shows in it where
// it stands and what it is called now; a colony shows the stand it lives on now. With the moves
// taken back it is known for any day, and a mark that was painted over still leads to its hive.
#pragma once

#include <algorithm>
#include <functional>
#include <map>
#include <optional>
#include <vector>

#include "core/model/yard/moves.h"
#include "core/storage/queries/yards.h"
#include "core/storage/rows.h"

namespace combwright {

/// Moves of every hive, in their order, by hive.
std::map<std::int64_t, std::vector<HiveMove>> hiveMovesByHive(const Read& file);

/// The hive with yard and mark as they were at the end of a day; `moves` are its own, in their
/// order.
Hive asItWas(Hive hive, const std::vector<HiveMove>& moves, Day on);
/// The same, with its moves asked for.
Hive asItWas(const Read& file, Hive hive, Day on);
/// What a hive was called at the end of a day; "#12" where there is no such hive.
std::string calledOn(const Read& file, Id<Hive> hive, Day on);
/// The same of many hives, asked for at once.
class HivesCalled {
  public:
    HivesCalled(const Read& file, std::vector<Id<Hive>> hives);
    std::string on(Id<Hive> hive, Day day) const;

  private:
    std::map<std::int64_t, Hive> m_hives;
    std::map<std::int64_t, std::vector<HiveMove>> m_moves;
};

/// The yards that were open at the end of a day, in walking order; one closed since among them.
std::vector<Yard> yardsOn(const Read& file, Day on);

/// The hives that stood in a yard at the end of a day, as they were called then, in walking order
/// as far as it is known: those that went elsewhere since come last.
std::vector<Hive> hivesOn(const Read& file, Id<Yard> yard, Day on);

/// A colony in one hive, from one day until another; on the last it was there no more.
struct ColonyStay {
    Colony colony;
    Id<Hive> hive;
    Day from;
    std::optional<Day> to;  ///< none: it lives there

    bool holds(Day on) const { return from <= on && (!to || on < *to); }
};

/// Where a colony lived, in order; the last where it lives now or ended.
std::vector<ColonyStay> colonyStaysOf(const Read& file, const Colony& colony);
/// Who lived in a hive, in the order of their coming.
std::vector<ColonyStay> colonyStaysIn(const Read& file, Id<Hive> hive);
/// Every stay of every colony, in order of the colonies.
std::vector<ColonyStay> allColonyStays(const Read& file);
/// The colony that lived in a hive at the end of a day.
std::optional<ColonyStay> colonyLivingOn(const Read& file, Id<Hive> hive, Day on);
/// The colony a record of a hive and a day speaks of: that which lived there at the end of the day,
/// else the one that left or ended there that day.
std::optional<Colony> colonyMetIn(const Read& file, Id<Hive> hive, Day on);
/// Whether a colony was ever written down in a hive.
bool everLivedIn(const Read& file, Id<Hive> hive);
/// Whether something seen or given in a hive on a day was of the colony of these stays.
bool speaksOf(const Read& file, const std::vector<ColonyStay>& stays, Id<Hive> hive, Day on);

/// A hive and the days, both counted, on which what is written down of it speaks of one colony.
struct HiveDays {
    Id<Hive> hive;
    std::optional<Day> from;  ///< none: from the first on
    Day to;
};

/// Where and when records speak of the colony that lives in a hive on a day, up to that day, in the
/// order of its stays, usually one. Nothing where nobody lives there any more; every day of the
/// hive where nobody ever wrote down who did.
std::vector<HiveDays> daysOfColonyIn(const Read& file, Id<Hive> hive, Day on);

/// Records with a hive and a day, from one day (none: the first) to another, of the colony that
/// lives in a hive on the last, on whatever stand it was; nothing of who lived there before. By its
/// stays, of each in the order they were written down.
template <class Record>
std::vector<Record> ofColonyIn(const Read& file, Id<Hive> hive, std::optional<Day> from, Day to) {
    std::vector<Record> records;
    for (const HiveDays& stay : daysOfColonyIn(file, hive, to)) {
        // A missing day lies before every other.
        const std::optional<Day> first = std::max(stay.from, from);
        for (Record& each :
             first ? file.where<Record>({is("hive", stay.hive), isFrom("on_day", *first),
                                         isUpTo("on_day", stay.to)})
                   : file.where<Record>({is("hive", stay.hive), isUpTo("on_day", stay.to)}))
            records.push_back(std::move(each));
    }
    return records;
}

/// Whether a box was carried along when its colony moved to another stand.
bool wentWithColony(const Read& file, const BoxMove& move);
/// Looks at the colony that lives in a hive on a day, from that day back, on whatever stand it was;
/// all of the hive where nobody lives. Each is handed to `more`, which answers whether the one
/// before it is wanted too.
void lookBackAtColony(const Read& file, Id<Hive> hive, Day on,
                      const std::function<bool(DatedInspection& each)>& more);
/// The day the colony that lives in a hive was found dead by the newest look, that day or before:
/// nobody has written down its end yet.
std::optional<Day> foundDeadOn(const Read& file, Id<Hive> hive, Day on);
/// Colonies alive at the end of a day; one that was found dead is none, whether its end is written
/// down or not.
std::int64_t coloniesAliveOn(const Read& file, Day on);

/// The hive a colony lived in at the end of a day, or ended in before.
Id<Hive> hiveOfColony(const Read& file, const Colony& colony, Day on);

}  // namespace combwright
