#include "core/storage/queries/treatments.h"

#include <algorithm>
#include <set>

#include "core/storage/queries/yards.h"

namespace combwright {

std::vector<Box> supersStanding(const Read& file, const Hive& hive, Day on) {
    const Standing standing = standingOn(file, hive, on);
    Hive then = hive;
    then.excluderAbove = standing.excluderAbove;
    return supersOn(then, standing.boxes);
}

std::vector<Treatment> treatmentsOf(const Read& file, Id<Hive> hive) {
    auto all = file.where<Treatment>({is("hive", hive)});
    std::stable_sort(all.begin(), all.end(),
                     [](const Treatment& a, const Treatment& b) { return a.on < b.on; });
    return all;
}

std::vector<SuperWhileIn> supersWhileIn(const Read& file, const Treatment& treatment) {
    const auto hive = file.find(treatment.hive);
    if (!hive) return {};
    std::vector<SuperWhileIn> supers;
    std::set<std::int64_t> met;
    const auto add = [&](const Box& box, Day from) {
        if (met.insert(box.id.number).second) supers.push_back({box.id, from});
    };
    for (const Box& box : supersStanding(file, *hive, treatment.on)) add(box, treatment.on);
    for (const BoxMove& move : file.where<BoxMove>({is("to_hive", hive->id)})) {
        if (move.on <= treatment.on || (treatment.out && move.on >= *treatment.out)) continue;
        if (met.contains(move.box.number)) continue;
        for (const Box& box : supersStanding(file, *hive, move.on))
            if (box.id == move.box) add(box, move.on);
    }
    return supers;
}

std::optional<bool> supersStood(const Read& file, Id<Hive> id, Day on) {
    const auto hive = file.find(id);
    if (!hive) return std::nullopt;
    if (standingOn(file, *hive, on).boxes.empty()) return std::nullopt;
    return !supersStanding(file, *hive, on).empty();
}

std::optional<bool> livedIn(const Read& file, Id<Hive> hive, Day on) {
    const auto colonies = file.where<Colony>({is("hive", hive)});
    if (colonies.empty()) return std::nullopt;
    return std::any_of(colonies.begin(), colonies.end(), [on](const Colony& colony) {
        return colony.since <= on && (!colony.ended || on <= *colony.ended);
    });
}

MedicineUse useOf(const Read& file, const Medicine& medicine, Day on) {
    MedicineUse use;
    if (medicine.quantity) use.bought = medicine.quantity->value();
    std::set<std::int64_t> hives;
    for (const Treatment& each : file.where<Treatment>({is("medicine", medicine.id)})) {
        if (each.on > on) continue;
        hives.insert(each.hive.number);
        if (each.amount)
            use.used += each.amount->value();
        else
            use.unknown = true;
    }
    use.hives = static_cast<std::int64_t>(hives.size());
    for (const MedicineDisposal& each :
         file.where<MedicineDisposal>({is("medicine", medicine.id)})) {
        if (each.on > on) continue;
        if (each.amount)
            use.disposed += each.amount->value();
        else
            use.unknown = true;
    }
    return use;
}

}  // namespace combwright
