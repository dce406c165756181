// What was given to which hive, and which supers stood there meanwhile: asked by the action that
// treats, by whoever amends it, and by every list of treatments.
#pragma once

#include <vector>

#include "core/model/frames/box.h"
#include "core/model/health/medicine.h"
#include "core/storage/rows.h"

namespace combwright {

/// In the hive on that day; on the day it was taken out it is out.
inline bool isIn(const Treatment& treatment, Day on) {
    return treatment.on <= on && (!treatment.out || *treatment.out > on);
}

/// Of one hive, by the day they were given.
std::vector<Treatment> treatmentsOf(const Read& file, Id<Hive> hive);
/// Of several hives, hive by hive.
std::vector<Treatment> treatmentsOfAny(const Read& file, const std::vector<Id<Hive>>& hives);
/// Of the colony that lives in a hive on a day, on whatever stand it was when they were given, by
/// the day they were given, later ones among them; what the colony before it had is none of its. Of
/// the hive where nobody lives: strips may hang there still.
std::vector<Treatment> treatmentsOfColonyIn(const Read& file, Id<Hive> hive, Day on);
/// Of the colony that lives there on the last day: those given from one day to another, both
/// counted.
std::vector<Treatment> treatmentsGiven(const Read& file, Id<Hive> hive, Day from, Day to);
/// The same that were in on some day from `from` to `to`, or taken out on the first.
std::vector<Treatment> treatmentsTouching(const Read& file, Id<Hive> hive, Day from, Day to);
/// Those that are in on a day, of the colony that lives there then.
std::vector<Treatment> treatmentsIn(const Read& file, Id<Hive> hive, Day on);
/// All that were in some hive on some day from `from` to `to`, in the order they were written down.
std::vector<Treatment> treatmentsTouching(const Read& file, Day from, Day to);
/// Those of the colony that lives in a hive on a day that may keep supers off it then: what is in,
/// what the label or the keeper lets wait, and whatever has been out for less than `atLeast` days.
/// What the label lets stay on does not.
std::vector<Treatment> treatmentsHoldingSupers(const Read& file, Id<Hive> hive, Day on,
                                               int atLeast);

/// A super that stood on the hive while the medicine was in, and since when it did.
struct SuperWhileIn {
    Id<Box> box;
    Day from;
};
/// Those standing at the end of the day it was given, and those put on before it was out.
std::vector<SuperWhileIn> supersWhileIn(const Read& file, const Treatment& treatment);

/// The supers at the end of a day, by what stood there then.
std::vector<Box> supersStanding(const Read& file, const Hive& hive, Day on);

/// Whether supers were on at the end of a day; nothing where nobody wrote down what stands there.
std::optional<bool> supersStood(const Read& file, Id<Hive> hive, Day on);

/// Whether a colony lived in the hive that day, the day it left counted; nothing where none was
/// ever written down there.
std::optional<bool> livedIn(const Read& file, Id<Hive> hive, Day on);

/// What is left of a medicine at the end of a day, in its unit; below nothing where more was used
/// than bought. Nothing where the quantity, or one amount that was given or disposed of, is not
/// known.
struct MedicineUse {
    std::optional<double> bought;
    double used = 0;
    double disposed = 0;
    bool unknown = false;  ///< an amount was not written down
    std::int64_t hives = 0;

    std::optional<double> left() const {
        if (!bought || unknown) return std::nullopt;
        return *bought - used - disposed;
    }
};
MedicineUse useOf(const Read& file, const Medicine& medicine, Day on);

}  // namespace combwright
