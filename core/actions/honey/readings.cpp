#include "core/actions/honey/readings.h"

#include "core/actions/honey/vessel_rules.h"
#include "core/model/storeroom/equipment.h"
#include "core/places/honey/water_in_use.h"

namespace combwright {
namespace {

/// What is said takes the place of what was there; what is left out stays.
void tellTraits(HoneyTraits& traits, const HoneyTraits& said) {
    if (!said.strainer.empty()) traits.strainer = said.strainer;
    if (!said.colour.empty()) traits.colour = said.colour;
    if (said.pfund) traits.pfund = said.pfund;
    if (!said.place.empty()) traits.place = said.place;
    if (!said.taste.empty()) traits.taste = said.taste;
}

/// Put into the file where it differs from what is there.
template <class Record>
Result<Made> describedAs(Write& file, const Record& before, const Record& after) {
    if (toRow(before) == toRow(after))
        return Refusal{Code::NothingToDo, std::string(Record::table), {}};
    file.change(after);
    return madeOf(after.id);
}

}  // namespace

const Fields& ReadWater::fields() {
    static const Fields all = describe(
        field<&ReadWater::on>("on"), field<&ReadWater::bucket>("bucket"),
        field<&ReadWater::lot>("lot"), field<&ReadWater::water>("water"),
        field<&ReadWater::index>("refractive_index"), field<&ReadWater::brix>("brix"),
        field<&ReadWater::temperature>("temperature"),
        field<&ReadWater::compensates>("compensates"), field<&ReadWater::instrument>("instrument"),
        field<&ReadWater::calibrated>("calibrated"), field<&ReadWater::note>("note"));
    return all;
}

Result<Id<WaterReading>> ReadWater::perform(Write& file) const {
    const auto vessel = vesselMeant(file, bucket, lot, on);
    if (!vessel) return vessel.error();
    WaterReading reading;
    reading.bucket = bucket;
    reading.lot = lot;
    reading.on = on;
    reading.water = water;
    reading.index = index;
    reading.brix = brix;
    reading.temperature = temperature;
    reading.compensates = compensates;
    reading.instrument = instrument;
    reading.calibrated = calibrated;
    reading.note = note;
    if (auto ok = demandReading(reading); !ok) return ok.error();
    return file.add(reading);
}

const Fields& TakeCorrection::fields() {
    static const Fields all =
        describe(field<&TakeCorrection::on>("on"), field<&TakeCorrection::bucket>("bucket"),
                 field<&TakeCorrection::lot>("lot"));
    return all;
}

Result<Id<WaterReading>> TakeCorrection::perform(Write& file) const {
    const auto vessel = vesselMeant(file, bucket, lot, on);
    if (!vessel) return vessel.error();
    const std::string field = bucket ? "bucket" : "lot";
    const auto readings = readingsOf(file, *vessel, on);
    if (readings.empty()) return Refusal{Code::NotFound, field, {{"name", nameOf(file, *vessel)}}};
    WaterReading reading = readings.back();
    if (reading.corrected || reading.compensates.value_or(false))
        return Refusal{Code::NothingToDo, field, {}};
    const auto at20 = waterAtTwenty(shownBy(reading));
    if (!at20) return at20.error();
    reading.corrected = WaterContent::roundedPercent(*at20);
    file.change(reading);
    return reading.id;
}

const Fields& DescribeHoney::fields() {
    static const Fields all =
        describe(field<&DescribeHoney::on>("on"), field<&DescribeHoney::bucket>("bucket"),
                 field<&DescribeHoney::lot>("lot"), part<&DescribeHoney::traits>(),
                 field<&DescribeHoney::lidded>("lidded"), field<&DescribeHoney::kind>("kind"),
                 field<&DescribeHoney::tankHolds>("tank_holds"),
                 field<&DescribeHoney::tankWide>("tank_wide"));
    return all;
}

Result<Made> DescribeHoney::perform(Write& file) const {
    const auto vessel = vesselMeant(file, bucket, lot, on);
    if (!vessel) return vessel.error();
    if (auto ok = demandTraits(traits); !ok) return ok.error();
    if (bucket) {
        if (tankHolds) return Refusal{Code::Contradiction, "tank_holds_g", {{"other", "bucket"}}};
        if (tankWide) return Refusal{Code::Contradiction, "tank_wide_mm", {{"other", "bucket"}}};
        const auto before = file.find(*bucket);
        Bucket after = *before;
        tellTraits(after.traits, traits);
        if (lidded) after.lidded = lidded;
        if (kind) {
            const auto sort = file.find(*kind);
            if (!sort || sort->item != EquipmentItem::Bucket)
                return Refusal{Code::NotAChoice,
                               "kind",
                               {{"value", sort ? std::string(word(sort->item)) : std::string()},
                                {"choices", std::string(word(EquipmentItem::Bucket))}}};
            after.kind = kind;
        }
        return describedAs(file, *before, after);
    }
    if (kind) return Refusal{Code::Contradiction, "kind", {{"other", "lot"}}};
    const auto before = file.find(*lot);
    Lot after = *before;
    tellTraits(after.traits, traits);
    if (lidded) after.lidded = lidded;
    if (tankHolds) after.tankHolds = tankHolds;
    if (tankWide) after.tankWide = tankWide;
    if (auto ok = demandLot(file, after); !ok) return ok.error();
    return describedAs(file, *before, after);
}

}  // namespace combwright
