#include "core/places/due/due_honey.h"

#include <algorithm>
#include <map>

#include "core/places/honey/honey_store.h"

namespace combwright {
namespace {

constexpr int readWithinDays = 7;

/// Nothing was skimmed or drawn since it came: it stands as it was filled.
bool asItCame(const VesselView& view) {
    return std::all_of(
        view.ledger.entries.begin(), view.ledger.entries.end(), [](const VesselEntry& entry) {
            return entry.event == VesselEvent::Filled || entry.event == VesselEvent::Weighed;
        });
}

class HoneyDue {
  public:
    HoneyDue(const Read& file, Day today, std::optional<Id<Yard>> yard)
        : m_file(file), m_today(today), m_yard(yard), m_held(file, today) {}

    void about(const Vessel& vessel) {
        const VesselLedger ledger = vesselLedger(m_file, vessel, m_today);
        if (ledger.empty || ledger.since > m_today || ledger.since + days(honeyDueDays) < m_today)
            return;
        const auto bucket = m_file.find(vessel.bucket);
        const auto run = bucket ? m_file.find(bucket->extraction) : std::nullopt;
        // While a run is open its buckets are still being filled.
        if (run && !run->closed) return;
        const auto yard = run ? run->yard : std::nullopt;
        if (m_yard && yard != m_yard) return;
        const StoredHoney honey = storedHoney(m_file, vessel, m_today, m_held);
        m_of = run ? "r" + std::to_string(run->id.number)
                   : "l" + std::to_string(vessel.lot ? vessel.lot->number : 0);
        m_ofRun = run.has_value();
        m_name = run ? run->name.text() : honey.view.name;
        m_itsYard = yard;
        m_since = ledger.since;
        if (!honey.view.water)
            add("read", m_since, m_since + days(readWithinDays), std::nullopt);
        else if (honey.waterOffG && *honey.waterOffG > 0)
            add("wet", m_since, std::nullopt, honey.view.water->wettestPercent());
        if (honey.settling && asItCame(honey.view))
            add("settled", honey.settling->until, std::nullopt, std::nullopt);
        if (honey.setAtRisk && honey.view.creamed)
            add("set", m_since, std::nullopt, honey.whenSetTo);
    }

    std::map<std::string, DueItem> items;

  private:
    void add(const char* kind, Day from, std::optional<Day> by, std::optional<double> value) {
        const std::string id = std::string("honey-") + kind + "-" + m_of;
        auto [found, isNew] = items.try_emplace(id);
        DueItem& item = found->second;
        if (isNew) {
            item.rule = DueRule::Honey;
            item.where = DueWhere::HoneyRoom;
            item.yard = m_itsYard;
            item.id = id;
            item.since = m_since;
            item.from = from;
            item.by = by;
            item.about = m_name;
            item.source = kind;
            if (m_ofRun) item.count = 0;
        }
        if (item.count) ++*item.count;
        item.from = std::max(item.from, from);
        if (value) item.value = std::max(item.value.value_or(0), *value);
    }

    const Read& m_file;
    Day m_today;
    std::optional<Id<Yard>> m_yard;
    HeldHoney m_held;
    std::string m_of;
    std::string m_name;
    bool m_ofRun = false;
    std::optional<Id<Yard>> m_itsYard;
    Day m_since;
};

}  // namespace

void addDueHoney(const Read& file, Day today, std::optional<Id<Yard>> yard,
                 std::vector<DueItem>& due) {
    HoneyDue honey(file, today, yard);
    for (const Extraction& run : file.where<Extraction>(
             {isFrom("on_day", today - days(honeyDueDays)), isUpTo("on_day", today)}))
        for (const Bucket& bucket : file.where<Bucket>({is("extraction", run.id)}))
            honey.about({bucket.id, std::nullopt});
    for (const Lot& lot :
         file.where<Lot>({isFrom("on_day", today - days(honeyDueDays)), isUpTo("on_day", today)}))
        honey.about({std::nullopt, lot.id});
    for (auto& [id, item] : honey.items) due.push_back(std::move(item));
}

}  // namespace combwright
