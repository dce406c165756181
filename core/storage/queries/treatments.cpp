#include "core/storage/queries/treatments.h"

#include <algorithm>
#include <set>
#include <tuple>

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

std::vector<Treatment> treatmentsGiven(const Read& file, Id<Hive> hive, Day from, Day to) {
    auto all =
        file.where<Treatment>({is("hive", hive), isFrom("on_day", from), isUpTo("on_day", to)});
    std::stable_sort(all.begin(), all.end(),
                     [](const Treatment& a, const Treatment& b) { return a.on < b.on; });
    return all;
}

std::vector<Treatment> treatmentsIn(const Read& file, Id<Hive> hive, Day on) {
    auto in = file.where<Treatment>({is("hive", hive), isUnknown("out_day"), isUpTo("on_day", on)});
    for (Treatment& each :
         file.where<Treatment>({is("hive", hive), isAfter("out_day", on), isUpTo("on_day", on)}))
        in.push_back(std::move(each));
    std::sort(in.begin(), in.end(), [](const Treatment& a, const Treatment& b) {
        return std::tuple(a.on, a.id) < std::tuple(b.on, b.id);
    });
    return in;
}

std::vector<Treatment> treatmentsTouching(const Read& file, Day from, Day to) {
    auto all = file.where<Treatment>({isUnknown("out_day"), isUpTo("on_day", to)});
    for (Treatment& each : file.where<Treatment>({isFrom("out_day", from), isUpTo("on_day", to)}))
        all.push_back(std::move(each));
    std::sort(all.begin(), all.end(),
              [](const Treatment& a, const Treatment& b) { return a.id < b.id; });
    return all;
}

std::vector<Treatment> treatmentsHoldingSupers(const Read& file, Id<Hive> hive, Day on,
                                               int atLeast) {
    const std::string day = isoText(on);
    // Too many rather than too few: what a label says is reckoned by who asks.
    Statement& statement = file.prepared(
        "SELECT treatment.id FROM treatment JOIN medicine ON medicine.id = treatment.medicine_id "
        "WHERE treatment.hive_id = ? AND treatment.on_day <= ? AND medicine.supers IS NOT ? AND "
        "(treatment.out_day IS NULL OR treatment.out_day > ? OR treatment.supers_back > ? OR "
        "coalesce(date(treatment.out_day, '+' || (max(coalesce(medicine.wait_days, 0), ?) + 2) || "
        "' days'), '~') > ?) ORDER BY treatment.on_day, treatment.id");
    statement.bind(hive.number)
        .bind(std::string_view(day))
        .bind(Codec<LabelSupers>::pack(LabelSupers::MayStay))
        .bind(std::string_view(day))
        .bind(std::string_view(day))
        .bind(std::int64_t{atLeast})
        .bind(std::string_view(day))
        .run();
    std::vector<Id<Treatment>> found;
    while (statement.next()) found.push_back(Id<Treatment>{statement.number(0)});
    std::vector<Treatment> holding;
    for (const Id<Treatment> id : found)
        if (auto treatment = file.find(id)) holding.push_back(*std::move(treatment));
    return holding;
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
