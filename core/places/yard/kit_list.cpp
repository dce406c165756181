#include "core/places/yard/kit_list.h"

#include <algorithm>
#include <map>
#include <set>

#include "core/places/due/due_list.h"
#include "core/places/due/due_quarantine.h"
#include "core/places/stores/stores.h"
#include "core/places/yard/yard_sheet.h"

namespace combwright {
namespace {

/// What one hive asks of one thing. Asked for twice, by the sheet and by what is due, it is still
/// one: the larger counts.
struct AskedOf {
    std::int64_t count = 1;
    std::optional<Mass> mass;
};

class KitSum {
  public:
    void ask(const std::string& item, const std::string& hive, const AskedOf& asked) {
        auto& things = m_things[item];
        if (std::find(m_order.begin(), m_order.end(), item) == m_order.end())
            m_order.push_back(item);
        const auto [at, fresh] = things.emplace(hive, asked);
        if (fresh) {
            m_hives[item].push_back(hive);
            return;
        }
        at->second.count = std::max(at->second.count, asked.count);
        if (asked.mass) at->second.mass = std::max(at->second.mass.value_or(Mass()), *asked.mass);
    }

    std::vector<KitLine> lines() const {
        std::vector<KitLine> list;
        for (const std::string& item : m_order) {
            KitLine line;
            line.item = item;
            line.count = 0;
            for (const auto& [hive, asked] : m_things.at(item)) {
                line.count += asked.count;
                if (asked.mass) line.mass = line.mass.value_or(Mass()) + *asked.mass;
            }
            for (const std::string& hive : m_hives.at(item))
                if (!hive.empty()) line.hives.push_back(hive);
            list.push_back(std::move(line));
        }
        return list;
    }

  private:
    std::vector<std::string> m_order;
    std::map<std::string, std::map<std::string, AskedOf>> m_things;
    std::map<std::string, std::vector<std::string>> m_hives;  ///< in the order they asked
};

std::vector<std::string> itemsOf(TakeAlong::What what, bool fondant) {
    switch (what) {
        case TakeAlong::What::Feed:
            if (fondant) return {"fondant"};
            return {"feeder", "feed"};
        case TakeAlong::What::WashJar:
            return {"wash jar"};
        case TakeAlong::What::Super:
            return {"super"};
        case TakeAlong::What::EggFrame:
            return {"frame with eggs"};
        case TakeAlong::What::TreatmentDecision:
        case TakeAlong::What::LeaveShut:
            return {};
    }
    return {};
}

std::vector<KitLine> inTruckOn(const Read& file, Day on) {
    std::vector<KitLine> lines;
    for (const TruckItem& each : file.all<TruckItem>()) {
        if (each.since > on || (each.until && *each.until <= on)) continue;
        KitLine line;
        line.item = each.item.text();
        line.always = true;
        line.counted = each.howMany.has_value();
        if (each.howMany) line.count = each.howMany->value();
        lines.push_back(std::move(line));
    }
    return lines;
}

}  // namespace

KitList kitList(const Read& file, Id<Yard> id, Day on, const std::vector<DueItem>& due) {
    KitList kit;
    kit.on = on;
    const auto yard = file.find(id);
    if (!yard) return kit;
    kit.yard = *yard;
    kit.shelf = feedShelf(file, on);
    kit.always = inTruckOn(file, on);
    KitSum sum;
    const YardSheet sheet = yardSheet(file, id, on);
    const auto isDue = [&](const DueItem& item) {
        return item.yard == id && item.where == DueWhere::Yard && item.from <= on;
    };
    const bool fondant = fondantTime(file, id, on);
    std::set<std::string> apart;  // no comb of another hive goes there
    for (const DueItem& item : due)
        if (isQuarantine(item))
            if (const auto hive = file.find(item.hive)) apart.insert(hive->mark.text());
    for (const TakeAlong& take : sheet.takeAlong)
        for (const std::string& item : itemsOf(take.what, fondant))
            for (const std::string& hive : take.hives)
                if (take.what != TakeAlong::What::EggFrame || !apart.contains(hive))
                    sum.ask(item, hive, {});
    for (const DueItem& item : due) {
        if (!isDue(item)) continue;
        const auto hive = file.find(item.hive);
        for (const DueKit& each : item.take)
            sum.ask(each.item, hive ? hive->mark.text() : std::string(), {each.count, each.mass});
    }
    kit.lines = sum.lines();
    for (const YardSheetRow& row : sheet.rows)
        for (const Mind& mind : row.minds) {
            if (mind.kind == MindKind::QueenWait && on <= mind.queen->doNotOpenUntil)
                kit.shut.push_back({row.hive.mark.text(), mind.queen->doNotOpenUntil});
            if (mind.kind == MindKind::MitesOver) kit.mites.push_back({row.hive.mark.text(), mind});
        }
    return kit;
}

KitList kitList(const Read& file, Id<Yard> yard, Day on) {
    const DueList list = dueList(file, on, yard);
    std::vector<DueItem> due;
    for (const DueItem* item : list.items()) due.push_back(*item);
    return kitList(file, yard, on, due);
}

}  // namespace combwright
