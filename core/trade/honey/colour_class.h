// The colour of honey by the standard's seven names. Two printings of its table exist; they differ
// for readings with a fraction, and the legal wording ("over 8 to 17") is the one used here. Colour
// is no grade, and honey is read liquid, at 20 °C.
#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "core/support/result.h"

namespace combwright {

/// One class: darker than the class before, up to here. Nothing: no end.
struct ColourRow {
    std::string_view name;
    std::optional<double> toPfundMm;
    std::optional<double> toDensity;  ///< optical density at 560 nm, 3.15 cm, caramel and glycerine
};

/// USDA 1985, Table I; millimetres printed in 4 sources, densities in 2.
std::span<const ColourRow> colourRows();

/// The class of a Pfund reading in mm. Refused: Negative "pfund_mm"; OutOfRange for no number.
Result<std::string_view> colourClass(double pfundMm);
/// The class of an optical density. Refused: Negative "optical_density".
Result<std::string_view> colourClassOfDensity(double density);

/// Pfund mm of an absorbance at 635 nm (half honey, half water, 10 mm): −38.70 + 371.39 · A; White
/// 1984, from memory. Refused: OutOfRange "absorbance" where that is below 0 mm.
Result<double> pfundOfAbsorbance(double absorbance);

}  // namespace combwright
