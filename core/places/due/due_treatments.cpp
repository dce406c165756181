#include "core/places/due/due_treatments.h"

#include "core/places/health/treatments.h"
#include "core/storage/queries/treatments.h"

namespace combwright {
namespace {

constexpr int treatmentsAhead = 60;
/// So long it is said that supers may go back; after that who wanted to has put them on.
constexpr int supersBackSaid = 14;

DueItem itemOf(const TreatmentLine& line, DueRule rule, const char* what) {
    DueItem item;
    item.rule = rule;
    item.yard = line.yard.id;
    item.hive = line.hive.id;
    item.id = std::string(what) + "-t" + std::to_string(line.treatment.id.number);
    item.about = line.medicine.name.text();
    return item;
}

/// One line a hive: its supers that went on too early.
void addTooEarly(const Read& file, Day today, std::optional<Id<Yard>> yard,
                 std::vector<DueItem>& due) {
    std::optional<Id<Hive>> last;
    for (const SuperTooEarly& early : supersTooEarlyIn(file, yard, today)) {
        const TreatmentLine& line = early.back.line;
        if (last == line.hive.id) {
            due.back().about += ", " + early.name;
            ++*due.back().count;
            continue;
        }
        last = line.hive.id;
        DueItem item = itemOf(line, DueRule::SupersBack, "super-too-early");
        item.id += "-h" + std::to_string(line.hive.id.number);
        item.since = item.from = early.wentOn;
        item.other = early.back.from;
        item.about = early.name;
        item.source = line.medicine.name.text();
        item.count = 1;
        due.push_back(std::move(item));
    }
}

}  // namespace

void addDueTreatments(const Read& file, Day today, std::optional<Id<Yard>> yard,
                      std::vector<DueItem>& due) {
    const Day last = today + days(treatmentsAhead);
    for (const TreatmentLine& line : runningTreatments(file, yard, today)) {
        // What was taken out later than today is in still, and its day is known.
        DueItem item = itemOf(line, DueRule::TakeOut, "take-out");
        item.since = line.treatment.on;
        item.from = line.dueOut ? line.dueOut->from : line.treatment.on;
        if (line.dueOut) item.by = line.dueOut->to;
        item.count = (today - line.treatment.on).count();
        if (item.from <= last) due.push_back(std::move(item));
    }
    for (const TreatmentLine& line :
         treatmentList(file, yard, today - days(unknownWaitDays + supersBackSaid), today)) {
        if (!line.treatment.out || *line.treatment.out > today || line.supersMayStay) continue;
        if (!line.supersBack || *line.supersBack < today - days(supersBackSaid) ||
            *line.supersBack > last)
            continue;
        if (supersStood(file, line.hive.id, today).value_or(false)) continue;
        if (line.hive.closed && *line.hive.closed <= today) continue;
        // Another one that keeps them off longer says so itself.
        const auto kept = supersBackOf(file, line.hive.id, today);
        if (kept && kept->line.treatment.id != line.treatment.id) continue;
        DueItem item = itemOf(line, DueRule::SupersBack, "supers-back");
        item.since = *line.treatment.out;
        item.from = *line.supersBack;
        due.push_back(std::move(item));
    }
    addTooEarly(file, today, yard, due);
}

}  // namespace combwright
