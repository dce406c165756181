#include "core/storage/queries/vessels.h"

#include <algorithm>

#include "core/storage/queries/vessel_books.h"

namespace combwright {
namespace {

std::vector<LotPart> partsTaken(const Read& file, const Vessel& vessel) {
    return vessel.bucket ? file.where<LotPart>({is("bucket", *vessel.bucket)})
                         : file.where<LotPart>({is("from_lot", *vessel.lot)});
}

}  // namespace

std::string nameOf(const Read& file, const Vessel& vessel) {
    if (const auto lot = file.find(vessel.lot)) return lot->name.text();
    const auto bucket = file.find(vessel.bucket);
    if (!bucket) return "#" + std::to_string((vessel.lot ? vessel.lot->number : 0));
    const auto run = file.find(bucket->extraction);
    return run ? bucket->mark.text() + " of " + run->name.text() : bucket->mark.text();
}

std::vector<Vessel> allVessels(const Read& file) {
    std::vector<Vessel> vessels;
    for (const Bucket& each : file.all<Bucket>()) vessels.push_back({each.id, std::nullopt});
    for (const Lot& each : file.all<Lot>()) vessels.push_back({std::nullopt, each.id});
    return vessels;
}

VesselLedger vesselLedger(const Read& file, const Vessel& vessel, Day until) {
    return VesselBooks(file, {vessel}).ledger(vessel, until);
}

std::optional<Mass> massSaid(const std::optional<Known<Mass>>& reading) {
    const auto middle = reading ? reading->middle() : std::nullopt;
    return middle ? std::optional(Mass::roundedGrams(*middle)) : std::nullopt;
}

std::optional<Mass> honeyInJars(const Read& file, Id<Bottling> bottling) {
    Mass sum;
    for (const BottledJars& each : file.where<BottledJars>({is("bottling", bottling)})) {
        const auto kind = file.find(each.kind);
        if (!kind || !kind->net) return std::nullopt;
        sum += *kind->net * each.count.value();
    }
    return sum;
}

Drawn drawnFor(const Read& file, const Bottling& bottling) {
    return drawnFor(bottling, honeyInJars(file, bottling.id));
}

Drawn drawnFor(const Bottling& bottling, const std::optional<Mass>& inJars) {
    Drawn drawn;
    drawn.mass = massSaid(bottling.drawn);
    if (drawn.mass) {
        drawn.how = bottling.drawn->how;
        if (inJars) drawn.lost = *drawn.mass - *inJars;
        return drawn;
    }
    if (!inJars) return drawn;
    drawn.how = How::Counted;
    const auto lost = massSaid(bottling.lost);
    if (lost) {
        drawn.lost = *lost;
        drawn.how = weaker(drawn.how, bottling.lost->how);
    }
    drawn.mass = *inJars + drawn.lost;
    return drawn;
}

std::vector<VesselPart> partsOf(const Read& file, Id<Lot> lot) {
    return eachOnce(file.where<LotPart>({is("lot", lot)}));
}

std::vector<VesselPart> eachOnce(const std::vector<LotPart>& poured) {
    std::vector<VesselPart> parts;
    for (const LotPart& each : poured) {
        const Vessel from{each.bucket, each.from};
        const auto known = std::find_if(parts.begin(), parts.end(),
                                        [&](const VesselPart& part) { return part.from == from; });
        if (known == parts.end()) {
            parts.push_back({from, each.mass, each.how});
            continue;
        }
        known->mass += each.mass;
        known->how = weaker(known->how, each.how);
    }
    return parts;
}

std::vector<Id<Lot>> lotsFrom(const Read& file, const Vessel& vessel) {
    std::vector<Id<Lot>> lots;
    for (const LotPart& each : partsTaken(file, vessel))
        if (std::find(lots.begin(), lots.end(), each.lot) == lots.end()) lots.push_back(each.lot);
    return lots;
}

}  // namespace combwright
