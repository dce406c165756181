#include "core/actions/health/medicines.h"

#include <utility>

namespace combwright {
namespace {

/// Longer is a slip of the pen.
constexpr std::int64_t mostLabelDays = 3660;

Result<void> demandLabelDays(const std::optional<Count>& labelDays, const char* field) {
    if (!labelDays) return {};
    if (labelDays->value() < 0)
        return Refusal{Code::Negative, field, {{"value", std::to_string(labelDays->value())}}};
    if (labelDays->value() > mostLabelDays)
        return Refusal{
            Code::OutOfRange, field, {{"low", "0"}, {"high", std::to_string(mostLabelDays)}}};
    return {};
}

}  // namespace

Result<void> demandMedicine(const Medicine& medicine) {
    if (medicine.quantity && *medicine.quantity < Number())
        return Refusal{Code::Negative, "quantity", {}};
    if (medicine.quantity && medicine.unit.empty()) return Refusal{Code::Missing, "unit", {}};
    for (const auto& [labelDays, field] : {std::pair{medicine.inHiveFrom, "in_hive_from_days"},
                                           std::pair{medicine.inHiveTo, "in_hive_to_days"},
                                           std::pair{medicine.waitDays, "wait_days"}})
        if (auto good = demandLabelDays(labelDays, field); !good) return good;
    if (medicine.inHiveFrom && medicine.inHiveTo && *medicine.inHiveTo < *medicine.inHiveFrom)
        return Refusal{Code::Contradiction, "in_hive_to_days", {{"other", "in_hive_from_days"}}};
    if (medicine.warmFrom && medicine.warmTo && *medicine.warmTo < *medicine.warmFrom)
        return Refusal{Code::Contradiction, "warm_to_c", {{"other", "warm_from_c"}}};
    return {};
}

const Fields& BuyMedicine::fields() {
    static const Fields all = describe(
        field<&BuyMedicine::on>("on"), field<&BuyMedicine::medicine>("name"),
        field<&BuyMedicine::active>("active"), field<&BuyMedicine::batch>("batch"),
        field<&BuyMedicine::expires>("expires"), field<&BuyMedicine::supplier>("supplier"),
        field<&BuyMedicine::quantity>("quantity"), field<&BuyMedicine::unit>("unit"),
        field<&BuyMedicine::withdrawal>("withdrawal"), field<&BuyMedicine::supers>("supers"),
        field<&BuyMedicine::inHiveFrom>("in_hive_from_days"),
        field<&BuyMedicine::inHiveTo>("in_hive_to_days"),
        field<&BuyMedicine::waitDays>("wait_days"), field<&BuyMedicine::warmFrom>("warm_from"),
        field<&BuyMedicine::warmTo>("warm_to"), field<&BuyMedicine::prescribedBy>("prescribed_by"),
        field<&BuyMedicine::proof>("proof"), field<&BuyMedicine::note>("note"));
    return all;
}

Result<Id<Medicine>> BuyMedicine::perform(Write& file) const {
    Medicine bought{{},       medicine, active,       batch,  expires,    supplier, on,
                    quantity, unit,     withdrawal,   supers, inHiveFrom, inHiveTo, waitDays,
                    warmFrom, warmTo,   prescribedBy, proof,  note};
    if (auto good = demandMedicine(bought); !good) return good.error();
    return file.add(bought);
}

Result<void> demandDisposal(const Read& file, const MedicineDisposal& disposal) {
    const auto medicine = file.find(disposal.medicine);
    if (!medicine) return Refusal{Code::NotFound, "medicine", {}};
    if (disposal.amount && *disposal.amount <= Number())
        return Refusal{Code::OutOfRange, "amount", {{"low", "0"}}};
    if (medicine->boughtOn && disposal.on < *medicine->boughtOn)
        return Refusal{Code::BeforeItBegan,
                       "on",
                       {{"name", medicine->name.text()}, {"since", isoText(*medicine->boughtOn)}}};
    return {};
}

const Fields& DisposeMedicine::fields() {
    static const Fields all =
        describe(field<&DisposeMedicine::on>("on"), field<&DisposeMedicine::medicine>("medicine"),
                 field<&DisposeMedicine::amount>("amount"), field<&DisposeMedicine::how>("how"),
                 field<&DisposeMedicine::note>("note"));
    return all;
}

Result<Id<MedicineDisposal>> DisposeMedicine::perform(Write& file) const {
    MedicineDisposal disposal{{}, medicine, on, amount, how, note};
    if (auto good = demandDisposal(file, disposal); !good) return good.error();
    return file.add(disposal);
}

}  // namespace combwright
