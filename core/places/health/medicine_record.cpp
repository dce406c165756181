#include "core/places/health/medicine_record.h"

#include <algorithm>
#include <cmath>

#include "core/storage/queries/constants.h"
#include "core/storage/queries/holds.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/yards.h"

namespace combwright {
namespace {

constexpr int inspectedDays = 365;

Day yearsBefore(Day on, double years) {
    return on - days(std::lround(std::clamp(years, 0.0, 100.0) * 365.25));
}

RecordLine recordLine(const Read& file, TreatmentLine line) {
    const auto colony = file.find(line.treatment.colony);
    return {std::move(line), colony};
}

InspectedHive inspectedHive(const Read& file, const Hive& hive, const HeldThings& held, Day on) {
    InspectedHive inspected;
    inspected.hive = hive;
    const auto colony = lastColonyIn(file, hive.id, on);
    if (colony && (!colony->ended || *colony->ended > on)) inspected.colony = colony;
    for (const DatedInspection& each : inspectionsOf(file, hive.id, on + days(1)))
        if (each.inspection.seen.looked == Looked::Opened) {
            inspected.opened = each.on;
            break;
        }
    if (colony)
        if (const auto holds = held.colonies.find(colony->id.number); holds != held.colonies.end())
            inspected.holds = holds->second;
    return inspected;
}

std::string heldName(const Read& file, const Hold& hold) {
    if (hold.box) return nameOf(file, Box::table, hold.box->number);
    if (hold.bucket) return nameOf(file, Bucket::table, hold.bucket->number);
    return hold.frame ? nameOf(file, Frame::table, hold.frame->number) : std::string();
}

}  // namespace

MedicineRecord medicineRecord(const Read& file, Day on) {
    MedicineRecord record;
    if (const auto years = constantInForce(file, "medicine_record_years", {}, on)) {
        record.years = years->value;
        record.yearsSource = constantSource(*years);
    }
    record.from = yearsBefore(on, record.years);
    const auto given = treatmentList(file, {}, record.from, on);
    for (const MedicineStock& stock : medicinesOn(file, on)) {
        MedicineEntry entry;
        entry.stock = stock;
        for (const TreatmentLine& line : given)
            if (line.medicine.id == stock.medicine.id)
                entry.given.push_back(recordLine(file, line));
        for (const MedicineDisposal& each :
             file.where<MedicineDisposal>({is("medicine", stock.medicine.id)}))
            if (each.on >= record.from && each.on <= on) entry.disposed.push_back(each);
        // One used up before the period is no longer asked for.
        const bool bought = !stock.medicine.boughtOn || *stock.medicine.boughtOn >= record.from;
        if (bought || !entry.given.empty() || !entry.disposed.empty())
            record.medicines.push_back(std::move(entry));
    }
    return record;
}

InspectorList inspectorList(const Read& file, Day on) {
    InspectorList list;
    list.from = on - days(inspectedDays);
    const HeldThings held = heldThings(file, on);
    for (const Yard& yard : openYards(file)) {
        if (yard.since > on) continue;
        InspectedYard inspected;
        inspected.yard = yard;
        for (const Hive& hive : openHives(file, yard.id))
            if (hive.since <= on) inspected.hives.push_back(inspectedHive(file, hive, held, on));
        list.yards.push_back(std::move(inspected));
    }
    for (const Finding& each : file.all<Finding>()) {
        const auto hive = file.find(each.hive);
        if (!hive || each.on < list.from || each.on > on) continue;
        list.findings.push_back({each, sampleOf(file, each), hive->mark.text(),
                                 nameOf(file, Yard::table, hive->yard.number)});
    }
    std::stable_sort(list.findings.begin(), list.findings.end(),
                     [](const auto& a, const auto& b) { return a.finding.on < b.finding.on; });
    for (const Hold& hold : file.all<Hold>())
        if (!hold.colony && standsOn(hold, on)) list.held.emplace_back(heldName(file, hold), hold);
    for (TreatmentLine& line : treatmentList(file, {}, list.from, on))
        list.given.push_back(recordLine(file, std::move(line)));
    return list;
}

}  // namespace combwright
