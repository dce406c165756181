// Medicines as bought, given and disposed of. An inspector asks for exactly these for years, also
// when the colony is long dead or sold.
#pragma once

#include "core/model/describe.h"
#include "core/model/yard/yard.h"

namespace combwright {

/// What the label says of honey supers while the medicine is in the hive.
enum class LabelSupers { Off, MayStay, SeeLabel };
template <>
struct Choices<LabelSupers> {
    static constexpr auto words = std::to_array<std::string_view>({"off", "may stay", "see label"});
};

/// A medicine as it was bought. What the label says is kept here as the keeper read it: the label
/// is the law, and what he did not write down is not known.
struct Medicine {
    static constexpr std::string_view table = "medicine";
    Id<Medicine> id;
    Name name;           ///< as on the pack
    std::string active;  ///< what acts in it
    std::string batch;
    std::optional<Day> expires;  ///< the last day it may be used
    std::string supplier;
    std::optional<Day> boughtOn;
    std::optional<Number> quantity;  ///< bought, in `unit`
    std::string unit;                ///< strips, ml, g, as the pack counts
    std::string withdrawal;          ///< as the label words it, also where it is nil
    std::optional<LabelSupers> supers;
    std::optional<Count> inHiveFrom;
    std::optional<Count> inHiveTo;
    std::optional<Count> waitDays;        ///< after it is out, until supers go back
    std::optional<Temperature> warmFrom;  ///< the warmth of the day it may be used in
    std::optional<Temperature> warmTo;
    std::string prescribedBy;
    std::string proof;  ///< where the receipt is
    std::string note;
    static const Fields& fields();
};

/// A medicine given to one hive.
struct Treatment {
    static constexpr std::string_view table = "treatment";
    Id<Treatment> id;
    Id<Medicine> medicine;
    Id<Hive> hive;
    std::optional<Id<Colony>> colony;  ///< who lived there
    Day on;                            ///< put in
    std::optional<Number> amount;      ///< in the medicine's unit
    std::optional<Day> out;            ///< none: in the hive still, or not known
    std::optional<bool> supersOn;      ///< from the stack, as it stood
    std::optional<Day>
        supersBack;  ///< the keeper's own first day for supers, where later than the label's
    std::string withdrawal;  ///< as worded when it was given
    std::string by;
    std::string note;
    static const Fields& fields();
};

/// What was left of a medicine and where it went.
struct MedicineDisposal {
    static constexpr std::string_view table = "medicine_disposal";
    Id<MedicineDisposal> id;
    Id<Medicine> medicine;
    Day on;
    std::optional<Number> amount;  ///< in the medicine's unit
    Name how;
    std::string note;
    static const Fields& fields();
};

}  // namespace combwright
