#include "core/places/yard/colonies_on.h"

#include <algorithm>
#include <tuple>

#include "core/model/storeroom/dead_out.h"
#include "core/storage/queries/constants.h"
#include "core/storage/queries/hive_days.h"

namespace combwright {
namespace {

/// Every stay of every colony beside every hive with its moves: asked for once, not hive by hive.
class Census {
  public:
    explicit Census(const Read& file) : m_stays(allColonyStays(file)) {
        const auto moves = hiveMovesByHive(file);
        for (const Hive& hive : file.all<Hive>()) {
            m_hives.emplace(hive.id.number, hive);
            const auto own = moves.find(hive.id.number);
            if (own != moves.end()) m_moves[hive.id.number] = own->second;
        }
    }

    Hive called(Id<Hive> id, Day on) const {
        const auto hive = m_hives.find(id.number);
        if (hive == m_hives.end()) return Hive{};
        const auto moves = m_moves.find(id.number);
        return moves == m_moves.end() ? hive->second : asItWas(hive->second, moves->second, on);
    }
    const std::vector<ColonyStay>& stays() const { return m_stays; }
    const std::map<std::int64_t, Hive>& hives() const { return m_hives; }

    /// The hive a colony lived in at the end of a day.
    Id<Hive> hiveOf(Id<Colony> colony, Day on) const {
        Id<Hive> hive;
        for (const ColonyStay& stay : m_stays)
            if (stay.colony.id == colony && (!hive || stay.from <= on)) hive = stay.hive;
        return hive;
    }

  private:
    std::vector<ColonyStay> m_stays;
    std::map<std::int64_t, Hive> m_hives;
    std::map<std::int64_t, std::vector<HiveMove>> m_moves;
};

Day winterMonth(const Read& file, std::string_view month, int year, Day on, double fallback) {
    const double said = constantOr(file, month, std::nullopt, on, fallback);
    const auto number = static_cast<unsigned>(std::clamp(said, 1.0, 12.0));
    return *makeDay(year, number, 1);
}

bool livesOn(const Colony& colony, Day on) {
    return colony.since <= on && (!colony.ended || on < *colony.ended);
}

WinterLoss winterOf(const Read& file, const Census& census, Day on, std::optional<Id<Yard>> yard,
                    Working* working) {
    WinterLoss winter;
    int year = yearOf(on);
    winter.from = winterMonth(file, "winter_from_month", year, on, 10);
    if (winter.from > on) winter.from = winterMonth(file, "winter_from_month", --year, on, 10);
    Day end = winterMonth(file, "winter_to_month", year, on, 4);
    if (end <= winter.from) end = winterMonth(file, "winter_to_month", year + 1, on, 4);
    winter.lasts = on < end;
    winter.to = std::min(on, end);
    std::map<std::int64_t, YardLoss> yards;
    for (const Colony& colony : file.all<Colony>()) {
        if (!livesOn(colony, winter.from)) continue;
        const Hive hive = census.called(census.hiveOf(colony.id, winter.from), winter.from);
        if (yard && hive.yard != *yard) continue;
        const bool ended = colony.ended && *colony.ended <= winter.to;
        if (ended && (colony.ending == Ending::Sold || colony.ending == Ending::United)) {
            ++winter.soldOrUnited;
            continue;
        }
        YardLoss& of = yards[hive.yard.number];
        ++of.atRisk;
        if (ended) ++of.dead;
    }
    std::vector<YardLoss> all;
    for (const auto& [number, of] : yards) {
        const auto named = file.find(Id<Yard>{number});
        winter.yards.emplace_back(named ? named->name.text() : std::string(), of);
        winter.atRisk += static_cast<int>(of.atRisk);
        winter.dead += static_cast<int>(of.dead);
        all.push_back(of);
    }
    if (all.empty()) return winter;
    if (const auto loss = colonyLoss(all, working)) winter.loss = *loss;
    return winter;
}

}  // namespace

Day winterBegins(const Read& file, int year) {
    return winterMonth(file, "winter_from_month", year, *makeDay(year, 12, 31), 10);
}

ColoniesOn coloniesOn(const Read& file, Day on, std::optional<Id<Yard>> only,
                      std::optional<Day> since, Working* working) {
    ColoniesOn answer;
    answer.on = on;
    answer.since = since.value_or(*makeDay(yearOf(on), 1, 1));
    const Census census(file);
    std::map<std::int64_t, YardColonies> byYard;
    for (const auto& [number, hive] : census.hives()) {
        if (hive.since > on || (hive.closed && *hive.closed <= on)) continue;
        ++byYard[census.called(hive.id, on).yard.number].hives;
    }
    for (const ColonyStay& stay : census.stays()) {
        const Colony& colony = stay.colony;
        if (stay.holds(on)) {
            const Hive hive = census.called(stay.hive, on);
            YardColonies& of = byYard[hive.yard.number];
            ColonyThere there{colony, hive, {}};
            if (colony.mother) {
                const Id<Hive> from = census.hiveOf(*colony.mother, colony.since);
                there.mother = census.called(from, colony.since).mark.text();
            }
            ++of.origins[colony.origin];
            of.colonies.push_back(std::move(there));
        }
        const bool last = stay.hive == colony.hive && stay.to == colony.ended;
        if (!last || !colony.ended || *colony.ended > on || *colony.ended < answer.since) continue;
        const Hive hive = census.called(stay.hive, *colony.ended);
        ColonyGone gone{colony, hive, {}, {}};
        if (colony.unitedInto)
            gone.into =
                census.called(census.hiveOf(*colony.unitedInto, *colony.ended), *colony.ended)
                    .mark.text();
        for (const DeadOut& said : file.where<DeadOut>({is("colony", colony.id)}))
            if (said.on <= on && !said.cause.empty()) gone.cause = said.cause;
        byYard[hive.yard.number].ended.push_back(std::move(gone));
    }
    auto yards = file.all<Yard>();
    std::stable_sort(yards.begin(), yards.end(),
                     [](const Yard& a, const Yard& b) { return a.walkOrder < b.walkOrder; });
    for (const Yard& yard : yards) {
        if (only && yard.id != *only) continue;
        const bool open = yard.since <= on && (!yard.closed || on < *yard.closed);
        const auto found = byYard.find(yard.id.number);
        if (!open && found == byYard.end()) continue;
        YardColonies of = found == byYard.end() ? YardColonies{} : found->second;
        of.yard = yard;
        for (ColonyGone& gone : of.ended) gone.yard = yard.name.text();
        std::stable_sort(of.colonies.begin(), of.colonies.end(),
                         [](const ColonyThere& a, const ColonyThere& b) {
                             return std::tuple(a.hive.standOrder, a.hive.id) <
                                    std::tuple(b.hive.standOrder, b.hive.id);
                         });
        std::stable_sort(of.ended.begin(), of.ended.end(),
                         [](const ColonyGone& a, const ColonyGone& b) {
                             return *a.colony.ended < *b.colony.ended;
                         });
        answer.colonies += static_cast<int>(of.colonies.size());
        answer.ended += static_cast<int>(of.ended.size());
        answer.yards.push_back(std::move(of));
    }
    answer.winter = winterOf(file, census, on, only, working);
    return answer;
}

}  // namespace combwright
