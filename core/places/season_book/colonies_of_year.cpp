#include "core/places/season_book/colonies_of_year.h"

#include <algorithm>
#include <tuple>

#include "core/storage/queries/hive_days.h"

namespace combwright {
namespace {

std::vector<ColonyThere> livingIn(const ColoniesOn& colonies) {
    std::vector<ColonyThere> all;
    for (const YardColonies& yard : colonies.yards)
        all.insert(all.end(), yard.colonies.begin(), yard.colonies.end());
    return all;
}

std::vector<ColonyGone> endedIn(const ColoniesOn& colonies) {
    std::vector<ColonyGone> all;
    for (const YardColonies& yard : colonies.yards)
        all.insert(all.end(), yard.ended.begin(), yard.ended.end());
    std::stable_sort(all.begin(), all.end(), [](const ColonyGone& a, const ColonyGone& b) {
        return *a.colony.ended < *b.colony.ended;
    });
    return all;
}

/// `colonies` with what ended since the day after the winter's first.
WinterYear winterYear(const ColoniesOn& colonies) {
    WinterYear winter;
    winter.loss = colonies.winter;
    for (const ColonyGone& gone : endedIn(colonies)) {
        if (gone.colony.since > winter.loss.from || *gone.colony.ended > winter.loss.to) continue;
        (wasLost(gone.colony) ? winter.dead : winter.soldOrUnited).push_back(gone);
    }
    return winter;
}

/// What a colony that came and left within the time was, as one that came.
ColonyThere cameAs(const Read& file, const ColonyGone& gone) {
    ColonyThere there{gone.colony, gone.hive, {}};
    if (const auto mother = file.find(gone.colony.mother))
        there.mother =
            calledOn(file, hiveOfColony(file, *mother, gone.colony.since), gone.colony.since);
    return there;
}

void takeSeason(const Read& file, ColoniesOfYear& account) {
    const ColoniesOn end = coloniesOn(file, account.to, std::nullopt, account.from + days(1));
    account.left = endedIn(end);
    account.there = livingIn(end);
    for (const ColonyThere& there : account.there)
        if (there.colony.since > account.from) account.came.push_back(there);
    for (const ColonyGone& gone : account.left)
        if (gone.colony.since > account.from) account.came.push_back(cameAs(file, gone));
    std::stable_sort(account.came.begin(), account.came.end(),
                     [](const ColonyThere& a, const ColonyThere& b) {
                         return std::tuple(a.colony.since, a.colony.id) <
                                std::tuple(b.colony.since, b.colony.id);
                     });
    if (coloniesAliveOn(file, account.to) == static_cast<std::int64_t>(account.there.size()))
        return;
    const auto dead = std::stable_partition(
        account.there.begin(), account.there.end(),
        [&](const ColonyThere& each) { return !foundDeadOn(file, each.hive.id, account.to); });
    account.foundDead.assign(dead, account.there.end());
    account.there.erase(dead, account.there.end());
}

}  // namespace

bool wasLost(const Colony& colony) {
    return colony.ended && colony.ending != Ending::United && colony.ending != Ending::Sold;
}

int ColoniesOfYear::lost() const {
    return static_cast<int>(foundDead.size()) +
           static_cast<int>(std::count_if(left.begin(), left.end(), [](const ColonyGone& each) {
               return wasLost(each.colony);
           }));
}

ColoniesOfYear coloniesOfYear(const Read& file, int year, Day today) {
    const OneState still(file);
    ColoniesOfYear account;
    account.year = year;
    account.from = *makeDay(year, 5, 1);
    const Day winter = winterBegins(file, year);
    account.begun = account.from <= today;
    account.wintered = winter > account.from && winter <= today;
    account.to =
        account.wintered ? winter : std::max(account.from, std::min(today, *makeDay(year, 12, 31)));
    const Day before = winterBegins(file, year - 1);
    const Day asked = std::min(account.from, today);
    if (before <= asked) {
        const ColoniesOn start = coloniesOn(file, asked, std::nullopt, before + days(1));
        if (account.begun) account.standing = livingIn(start);
        if (start.winter.from == before) account.before = winterYear(start);
    }
    if (account.begun) takeSeason(file, account);
    if (account.wintered) {
        const Day last = std::min(today, *makeDay(year + 1, 4, 30));
        const ColoniesOn after = coloniesOn(file, last, std::nullopt, winter + days(1));
        if (after.winter.from == winter) account.after = winterYear(after);
    }
    return account;
}

}  // namespace combwright
