// Medicines as they were bought and as their rest was disposed of. Nothing is copied from a
// published table: what the pack's label says is written down by who reads it, and what he leaves
// out stays unknown.
#pragma once

#include "core/actions/action.h"
#include "core/model/health/medicine.h"

namespace combwright {

/// What holds for a medicine, also where it is amended. Refused with Negative for a quantity or
/// days below nothing, Missing "unit" for a quantity without one, Contradiction where the days in
/// the hive or the warmth end before they begin.
Result<void> demandMedicine(const Medicine& medicine);

/// A medicine as it was bought that day.
struct BuyMedicine {
    static constexpr std::string_view name = "buy-medicine";
    using Answer = Id<Medicine>;
    Day on;
    Name medicine;  ///< as on the pack
    std::string active;
    std::string batch;
    std::optional<Day> expires;
    std::string supplier;
    std::optional<Number> quantity;
    std::string unit;
    std::string withdrawal;
    std::optional<LabelSupers> supers;
    std::optional<Count> inHiveFrom;
    std::optional<Count> inHiveTo;
    std::optional<Count> waitDays;
    std::optional<Temperature> warmFrom;
    std::optional<Temperature> warmTo;
    std::string prescribedBy;
    std::string proof;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// What holds for a disposal, also where it is amended: OutOfRange for an amount of nothing or
/// less, BeforeItBegan before it was bought.
Result<void> demandDisposal(const Read& file, const MedicineDisposal& disposal);

/// What was left, and where it went. More than was left is kept and asked about.
struct DisposeMedicine {
    static constexpr std::string_view name = "dispose-medicine";
    using Answer = Id<MedicineDisposal>;
    Day on;
    Id<Medicine> medicine;
    std::optional<Number> amount;
    Name how;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

}  // namespace combwright
