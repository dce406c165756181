#include "core/storage/queries/treatments.h"

#include <algorithm>
#include <set>
#include <tuple>
#include <utility>

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
    return treatmentsOfAny(file, {hive});
}

std::vector<Treatment> treatmentsOfAny(const Read& file, const std::vector<Id<Hive>>& hives) {
    auto all = file.whereAny<Treatment>("hive", hives);
    std::stable_sort(all.begin(), all.end(), [](const Treatment& a, const Treatment& b) {
        return std::pair(a.hive, a.on) < std::pair(b.hive, b.on);
    });
    return all;
}

namespace {

std::vector<Treatment> holdingSupersOf(const Read& file, Id<Hive> hive, Day on, int atLeast) {
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

/// What `ask` finds of each hive the colony that lives in a hive on a day was in, as far as it is
/// its own; of the hive alone where nobody lives, but not what went away with its colony.
template <class Ask>
std::vector<Treatment> askedOfColonyIn(const Read& file, Id<Hive> hive, Day on, const Ask& ask) {
    const auto living = colonyLivingOn(file, hive, on);
    std::vector<Treatment> all;
    if (!living) {
        all = ask(hive);
        std::erase_if(all, [&](const Treatment& each) {
            const auto colony = file.find(each.colony);
            return colony && hiveOfColony(file, *colony, std::max(on, each.on)) != hive;
        });
    } else {
        const auto stays = colonyStaysOf(file, living->colony);
        std::set<std::int64_t> asked;
        for (const ColonyStay& stay : stays) {
            if (!asked.insert(stay.hive.number).second) continue;
            for (Treatment& each : ask(stay.hive))
                if (each.colony ? each.colony == living->colony.id
                                : speaksOf(file, stays, stay.hive, each.on))
                    all.push_back(std::move(each));
        }
    }
    std::sort(all.begin(), all.end(), [](const Treatment& a, const Treatment& b) {
        return std::tuple(a.on, a.id) < std::tuple(b.on, b.id);
    });
    return all;
}

}  // namespace

std::vector<Treatment> treatmentsOfColonyIn(const Read& file, Id<Hive> hive, Day on) {
    return askedOfColonyIn(file, hive, on, [&](Id<Hive> of) { return treatmentsOf(file, of); });
}

std::vector<Treatment> treatmentsGiven(const Read& file, Id<Hive> hive, Day from, Day to) {
    return askedOfColonyIn(file, hive, to, [&](Id<Hive> of) {
        return file.where<Treatment>(
            {is("hive", of), isFrom("on_day", from), isUpTo("on_day", to)});
    });
}

std::vector<Treatment> treatmentsTouching(const Read& file, Id<Hive> hive, Day from, Day to) {
    return askedOfColonyIn(file, hive, to, [&](Id<Hive> of) {
        auto all =
            file.where<Treatment>({is("hive", of), isUnknown("out_day"), isUpTo("on_day", to)});
        for (Treatment& each :
             file.where<Treatment>({is("hive", of), isFrom("out_day", from), isUpTo("on_day", to)}))
            all.push_back(std::move(each));
        return all;
    });
}

std::vector<Treatment> treatmentsIn(const Read& file, Id<Hive> hive, Day on) {
    auto in = treatmentsTouching(file, hive, on, on);
    std::erase_if(in, [on](const Treatment& each) { return !isIn(each, on); });
    return in;
}

std::vector<Treatment> treatmentsHoldingSupers(const Read& file, Id<Hive> hive, Day on,
                                               int atLeast) {
    return askedOfColonyIn(file, hive, on,
                           [&](Id<Hive> of) { return holdingSupersOf(file, of, on, atLeast); });
}

std::vector<Treatment> treatmentsTouching(const Read& file, Day from, Day to) {
    auto all = file.where<Treatment>({isUnknown("out_day"), isUpTo("on_day", to)});
    for (Treatment& each : file.where<Treatment>({isFrom("out_day", from), isUpTo("on_day", to)}))
        all.push_back(std::move(each));
    std::sort(all.begin(), all.end(),
              [](const Treatment& a, const Treatment& b) { return a.id < b.id; });
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
        for (const BoxMove& move :
             file.where<BoxMove>({is("to_hive", in.hive.id), isAfter("on_day", in.from)})) {
            if (in.to && move.on >= *in.to) continue;
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
    if (colonyMetIn(file, hive, on)) return true;
    if (everLivedIn(file, hive)) return false;
    return std::nullopt;
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
