#include "core/places/stores/hive_scale.h"

#include <algorithm>
#include <array>

#include "core/places/pull/full_frame.h"
#include "core/storage/queries/constants.h"
#include "core/storage/queries/runs.h"
#include "core/storage/queries/yards.h"

namespace combwright {
namespace {

constexpr int nearestDays = 7;
constexpr int farthestDays = 122;

std::optional<double> emptyOf(const Read& file, const Box& box, const Hive& hive, Day on) {
    const auto kind = file.find(box.kind);
    return kind ? emptyBoxGramsOf(file, *kind, hive.yard, on) : std::nullopt;
}

/// How many frames hang in a box: as recorded, else as many as it is made for.
std::optional<double> framesHanging(const Read& file, const Box& box) {
    if (const auto frames = framesIn(file, box)) return static_cast<double>(frames->value());
    const auto kind = file.find(box.kind);
    if (!kind || !kind->framesNominal) return std::nullopt;
    return static_cast<double>(kind->framesNominal->value());
}

/// Wood and frames of what stood there: the nest by the hive's own tare, supers by their kind.
ReckonedTare tareByHive(const Read& file, const Hive& hive, const Standing& standing, Day on,
                        double bees) {
    ReckonedTare tare;
    Hive then = hive;
    then.excluderAbove = standing.excluderAbove;
    const auto supers = supersOn(then, standing.boxes);
    const double frame = constantOr(file, "empty_frame_g", hive.yard, on, 300);
    tare.parts = {*hive.tare->middle(), 0, bees};
    for (const Box& box : standing.boxes) {
        const bool super = std::any_of(supers.begin(), supers.end(),
                                       [&](const Box& each) { return each.id == box.id; });
        if (super) {
            const auto empty = emptyOf(file, box, hive, on);
            if (!empty) return {};
            tare.parts.wood_g += *empty;
        } else {
            const auto frames = framesHanging(file, box);
            if (!frames) return {};
            tare.parts.frames_g += *frames * frame;
        }
    }
    tare.from = TareFrom::Hive;
    tare.how = How::Assumed;
    return tare;
}

ReckonedTare tareByKinds(const Read& file, const Hive& hive, const Standing& standing, Day on,
                         double bees) {
    if (standing.boxes.empty()) return {};
    ReckonedTare tare;
    tare.parts = {constantOr(file, "floor_and_lid_g", hive.yard, on, 4500), 0, bees};
    for (const Box& box : standing.boxes) {
        const auto empty = emptyOf(file, box, hive, on);
        if (!empty) return {};
        tare.parts.wood_g += *empty;
    }
    tare.from = TareFrom::Kinds;
    tare.how = How::Assumed;
    return tare;
}

ReckonedTare tareOn(const Read& file, const Hive& hive, const HiveWeighing& weighing) {
    if (weighing.without && weighing.without->middle())
        return {TareFrom::Without, {*weighing.without->middle(), 0, 0}, weighing.without->how};
    const double bees = constantOr(file, "hive_bees_g", hive.yard, weighing.on, 2000);
    const Standing standing = standingOn(file, hive, weighing.on);
    if (hive.tare && hive.tare->middle())
        return tareByHive(file, hive, standing, weighing.on, bees);
    return tareByKinds(file, hive, standing, weighing.on, bees);
}

}  // namespace

std::optional<Lifted> liftedOf(const HiveWeighing& weighing) {
    if (weighing.whole && weighing.whole->middle())
        return Lifted{*weighing.whole->middle(), 0, weighing.whole->how};
    const auto left = weighing.left ? weighing.left->middle() : std::nullopt;
    const auto right = weighing.right ? weighing.right->middle() : std::nullopt;
    if (!left || !right) return std::nullopt;
    return Lifted{*left, *right, weaker(weighing.left->how, weighing.right->how)};
}

std::string_view key(TareFrom from) {
    constexpr std::array<std::string_view, 4> keys{"without", "hive", "kinds", "not_known"};
    return keys[static_cast<std::size_t>(from)];
}

ScaleReading readScale(const Read& file, const Hive& hive, const HiveWeighing& weighing,
                       Working* working) {
    ScaleReading reading;
    reading.weighing = weighing;
    const auto sides = liftedOf(weighing);
    if (!sides) return reading;
    reading.grossG = sides->leftG + sides->rightG;
    reading.how = sides->how;
    reading.tare = tareOn(file, hive, weighing);
    if (!reading.tare.known()) return reading;
    const auto net = storesFromWeighing(sides->leftG, sides->rightG, reading.tare.parts, working);
    if (!net) return reading;
    reading.netG = *net;
    reading.how = weaker(sides->how, reading.tare.how);
    return reading;
}

std::vector<ScaleReading> scaleReadings(const Read& file, const Hive& hive, Day from, Day to) {
    std::vector<ScaleReading> readings;
    for (const HiveWeighing& each : file.where<HiveWeighing>(
             {is("hive", hive.id), isFrom("on_day", from), isUpTo("on_day", to)}))
        readings.push_back(readScale(file, hive, each));
    std::stable_sort(readings.begin(), readings.end(),
                     [](const auto& a, const auto& b) { return a.weighing.on < b.weighing.on; });
    return readings;
}

std::vector<Day> boxesLeftOn(const Read& file, Id<Hive> hive, Day after) {
    std::vector<Day> left;
    for (const BoxMove& move :
         file.where<BoxMove>({is("from_hive", hive), isAfter("on_day", after)}))
        if (move.toHive != hive || move.toPlace != BoxPlace::OnHive) left.push_back(move.on);
    std::sort(left.begin(), left.end());
    return left;
}

bool boxLeftBetween(const std::vector<Day>& left, Day after, Day by) {
    return std::any_of(left.begin(), left.end(), [&](Day day) { return after < day && day <= by; });
}

FedBetween fedBetween(const Read& file, const Hive& hive, Day from, Day before) {
    FedBetween fed;
    const double perSugar = constantOr(file, "stores_per_sugar", hive.yard, from, 1.0);
    for (const Feeding& each : file.where<Feeding>(
             {is("hive", hive.id), isFrom("on_day", from), isBefore("on_day", before)})) {
        const auto given = each.given ? each.given->middle() : std::nullopt;
        if (!given) {
            ++fed.unknown;
            continue;
        }
        const bool stores = each.kind == FeedKind::Comb;
        fed.storesG += stores ? *given : *given * perSugar;
        if (!stores) fed.sugarG += *given;
    }
    return fed;
}

std::optional<OwnUse> ownUse(const Read& file, const Hive& hive,
                             const std::vector<ScaleReading>& readings,
                             const std::vector<Day>& left) {
    const ScaleReading* newest = nullptr;
    for (auto each = readings.rbegin(); each != readings.rend(); ++each) {
        if (!each->netG || *each->netG < 0) continue;
        if (!newest) {
            newest = &*each;
            continue;
        }
        const auto apart = (newest->weighing.on - each->weighing.on).count();
        if (apart < nearestDays) continue;
        if (apart > farthestDays || boxLeftBetween(left, each->weighing.on, newest->weighing.on))
            return std::nullopt;
        const auto fed = fedBetween(file, hive, each->weighing.on, newest->weighing.on);
        // With a feeding of unknown size between the two they tell nothing.
        if (fed.unknown > 0) return std::nullopt;
        const auto use = useFromWeighings(
            {{each->weighing.on, *each->netG}, {newest->weighing.on, *newest->netG}}, fed.storesG);
        if (!use) return std::nullopt;
        return OwnUse{each->weighing.on, newest->weighing.on, *each->netG,
                      *newest->netG,     fed.storesG,         *use};
    }
    return std::nullopt;
}

}  // namespace combwright
