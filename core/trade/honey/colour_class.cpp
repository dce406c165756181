#include "core/trade/honey/colour_class.h"

#include <array>
#include <cmath>

#include "core/trade/honey/published_table.h"

namespace combwright {
namespace {

constexpr std::array<ColourRow, 7> colourTable{{{"Water White", 8.0, 0.0945},
                                                {"Extra White", 17.0, 0.189},
                                                {"White", 34.0, 0.378},
                                                {"Extra Light Amber", 50.0, 0.595},
                                                {"Light Amber", 85.0, 1.389},
                                                {"Amber", 114.0, 3.008},
                                                {"Dark Amber", {}, {}}}};

constexpr double absorbanceAtNothing = -38.70;
constexpr double mmPerAbsorbance = 371.39;
constexpr double mostAbsorbance = 4.0;  // no photometer reads darker

std::string_view colourUpTo(double value, std::optional<double> ColourRow::*end) {
    for (const ColourRow& row : colourTable)
        if (!(row.*end) || value <= *(row.*end)) return row.name;
    return colourTable.back().name;
}

Result<void> refuseReading(double value, const char* field) {
    if (value >= 0.0 && std::isfinite(value)) return {};
    return Refusal{value < 0.0 ? Code::Negative : Code::OutOfRange, field, {{"low", "0"}}};
}

}  // namespace

std::span<const ColourRow> colourRows() { return colourTable; }

Result<std::string_view> colourClass(double pfundMm) {
    if (auto good = refuseReading(pfundMm, "pfund_mm"); !good) return good.error();
    return colourUpTo(pfundMm, &ColourRow::toPfundMm);
}

Result<std::string_view> colourClassOfDensity(double density) {
    if (auto good = refuseReading(density, "optical_density"); !good) return good.error();
    return colourUpTo(density, &ColourRow::toDensity);
}

Result<double> pfundOfAbsorbance(double absorbance) {
    const double mm = absorbanceAtNothing + mmPerAbsorbance * absorbance;
    if (!(mm >= 0.0) || absorbance > mostAbsorbance)
        return outOfRange("absorbance", absorbance, -absorbanceAtNothing / mmPerAbsorbance,
                          mostAbsorbance);
    return mm;
}

}  // namespace combwright
