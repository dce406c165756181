// Treating is one deed over many hives: the day, the medicine, how much each got. What the supers
// were doing is read off the stack, and a super that was on while the label says off is held back
// wherever it goes.
#pragma once

#include "core/actions/action.h"
#include "core/model/health/medicine.h"

namespace combwright {

/// What holds for a treatment, also where it is amended. Refused with OutOfRange for an amount of
/// nothing or less, Contradiction where it is out, or supers are back, before it went in,
/// BeforeItBegan or Closed where the hive did not stand.
Result<void> demandTreatment(const Read& file, const Treatment& treatment);

/// Holds back each super that was on while the medicine was in, where the label says off or nobody
/// wrote down what it says; a hold that no longer belongs to it goes. Called by whatever gives,
/// ends or amends a treatment.
void followTreatment(Write& file, const Treatment& treatment);

/// Gives a medicine to hives. `hives` names them, "H1, H3"; empty or "all" is all of the yard that
/// are lived in. More than there is left, an expired medicine, an empty hive or one that still has
/// it in is kept and asked about. Refused with Missing where no hive is meant, Duplicate where one
/// got the same medicine that day already, and as meantHives and demandTreatment.
struct Treat {
    static constexpr std::string_view name = "treat";
    using Answer = std::vector<Id<Treatment>>;
    Day on;
    Id<Medicine> medicine;
    std::optional<Id<Yard>> yard;
    std::string hives;
    std::optional<Number> amount;  ///< a hive, in the medicine's unit
    std::optional<Day> out;        ///< where it is known already
    std::optional<Day> supersBack;
    std::string by;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Takes it out of hives: of the medicine, or of all that are in. `hives` as with treat; empty
/// without a yard is every hive that has it. Refused with NotFound where none has it in,
/// BeforeItBegan where it went in later.
struct TakeOutMedicine {
    static constexpr std::string_view name = "take-out-medicine";
    using Answer = std::vector<Id<Treatment>>;
    Day on;
    std::optional<Id<Medicine>> medicine;
    std::optional<Id<Yard>> yard;
    std::string hives;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

}  // namespace combwright
