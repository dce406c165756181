#include "core/places/due/due_visits.h"

#include <algorithm>
#include <set>

#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/yards.h"

namespace combwright {
std::vector<std::string> OpenVisit::missing() const {
    std::vector<std::string> marks;
    for (std::size_t i = 0; i < hives.size(); ++i)
        if (!written[i]) marks.push_back(hives[i]);
    return marks;
}

namespace {

/// Found dead before, or known to be empty.
bool nobodyIn(const Read& file, Id<Hive> hive, Day on) {
    if (colonyLivingOn(file, hive, on)) return foundDeadOn(file, hive, on - days(1)).has_value();
    return everLivedIn(file, hive);
}

}  // namespace

std::vector<OpenVisit> openVisits(const Read& file, Day today) {
    std::vector<OpenVisit> open;
    for (const Yard& yard : yardsOn(file, today)) {
        const auto visit = newestVisit(file, yard.id, today);
        if (!visit || visit->on < today - days(visitRememberedDays)) continue;
        std::set<std::int64_t> seen;
        bool walked = false;
        for (const Inspection& each : file.where<Inspection>({is("visit", visit->id)})) {
            seen.insert(each.hive.number);
            // A dead colony one comes upon is no walk along the hives.
            walked = walked || each.seen.looked != Looked::FoundDead;
        }
        OpenVisit made{*visit, yard.name.text(), {}, {}};
        for (const Hive& hive : hivesOn(file, yard.id, today)) {
            if (hive.since > visit->on) continue;
            // Of a hive nobody lives in there is nothing to write.
            if (!seen.contains(hive.id.number) && nobodyIn(file, hive.id, visit->on)) continue;
            made.hives.push_back(hive.mark.text());
            made.written.push_back(seen.contains(hive.id.number));
        }
        const bool notEnded = visit->begun && !visit->ended;
        const bool brokeOff = walked && !made.written.empty() && !made.written.back();
        const bool gap =
            std::find(made.written.begin(), made.written.end(), false) != made.written.end();
        if (gap && (brokeOff || notEnded) && !visit->ended) open.push_back(std::move(made));
    }
    return open;
}

void addDueVisits(const Read& file, Day today, std::optional<Id<Yard>> yard,
                  std::vector<DueItem>& due) {
    for (const OpenVisit& open : openVisits(file, today)) {
        if (yard && open.visit.yard != *yard) continue;
        const auto missing = open.missing();
        DueItem item;
        item.rule = DueRule::Visit;
        item.yard = open.visit.yard;
        item.id = "visit-" + std::to_string(open.visit.id.number);
        item.since = item.from = open.visit.on;
        item.count = static_cast<std::int64_t>(missing.size());
        for (const std::string& mark : missing)
            item.about += (item.about.empty() ? "" : " ") + mark;
        due.push_back(std::move(item));
    }
}

}  // namespace combwright
