#include "core/storage/queries/treatments.h"

#include <algorithm>
#include <set>

#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/yards.h"

namespace combwright {

namespace {

/// A hive in which a medicine worked, from one day until before another.
struct Exposed {
    Hive hive;
    Day from;
    std::optional<Day> to;
};

/// The strips go with the colony: the hives it was in while they were in, the first where they were
/// given. A hive whose colony died has them in still.
std::vector<Exposed> exposedBy(const Read& file, const Treatment& treatment) {
    std::vector<Exposed> hives;
    if (auto hive = file.find(treatment.hive))
        hives.push_back({*std::move(hive), treatment.on, treatment.out});
    const auto colony = file.find(treatment.colony);
    if (hives.empty() || !colony) return hives;
    for (const ColonyStay& stay : colonyStaysOf(file, *colony)) {
        if (stay.from <= treatment.on) continue;
        if (treatment.out && stay.from >= *treatment.out) break;
        hives.back().to = stay.from;
        if (auto hive = file.find(stay.hive))
            hives.push_back({*std::move(hive), stay.from, treatment.out});
    }
    return hives;
}

}  // namespace

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

std::vector<Treatment> treatmentsIn(const Read& file, Id<Hive> hive, Day on) {
    const auto living = colonyLivingOn(file, hive, on);
    if (!living) {
        // What hangs there still, and not what went away with its colony.
        auto left = treatmentsOf(file, hive);
        std::erase_if(left, [&](const Treatment& each) {
            const auto colony = file.find(each.colony);
            return colony && hiveOfColony(file, *colony, std::max(on, each.on)) != hive;
        });
        return left;
    }
    const auto stays = colonyStaysOf(file, living->colony);
    std::vector<Treatment> all;
    std::set<std::int64_t> asked;
    for (const ColonyStay& stay : stays) {
        if (!asked.insert(stay.hive.number).second) continue;
        for (Treatment& each : file.where<Treatment>({is("hive", stay.hive)}))
            if (each.colony ? each.colony == living->colony.id
                            : speaksOf(file, stays, stay.hive, each.on))
                all.push_back(std::move(each));
    }
    std::stable_sort(all.begin(), all.end(),
                     [](const Treatment& a, const Treatment& b) { return a.on < b.on; });
    return all;
}

std::vector<SuperWhileIn> supersWhileIn(const Read& file, const Treatment& treatment) {
    std::vector<SuperWhileIn> supers;
    std::set<std::int64_t> met;
    const auto add = [&](const Box& box, Day from) {
        if (met.insert(box.id.number).second) supers.push_back({box.id, from});
    };
    for (const Exposed& in : exposedBy(file, treatment)) {
        for (const Box& box : supersStanding(file, in.hive, in.from)) add(box, in.from);
        for (const BoxMove& move : file.where<BoxMove>({is("to_hive", in.hive.id)})) {
            if (move.on <= in.from || (in.to && move.on >= *in.to)) continue;
            if (met.contains(move.box.number)) continue;
            for (const Box& box : supersStanding(file, in.hive, move.on))
                if (box.id == move.box) add(box, move.on);
        }
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
