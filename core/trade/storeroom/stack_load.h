// Boxes stacked in a shed or on a truck: how high, how much room, how heavy, and which of them no
// one should lift alone.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "core/support/result.h"
#include "core/support/working.h"

namespace combwright {

/// A pound in grams, exactly.
inline constexpr double poundGrams = 453.59237;

/// Grams from which a lift is told about; a keeper's own take their place.
struct LiftLimits {
    double carefulG = 23'000;  ///< ideal lift of one person, 51 lb: from memory
    double mostG = 25'000;     ///< limit of a national association: S58
};

enum class Lift {
    NotKnown,  ///< nobody knows what it weighs
    Light,
    Careful,    ///< over 23 kg: in halves, or frame by frame
    TwoPeople,  ///< over 25 kg: two people, or frame by frame
};
Lift judgeLift(std::optional<double> massG, const LiftLimits& limits = {});

/// A box as it stands. Sides in mm, nothing where nobody measured; mass in grams.
struct BoxToStack {
    std::optional<double> outerLengthMm;
    std::optional<double> outerWidthMm;
    std::optional<double> heightMm;
    std::optional<double> massG;
};

struct StackLoad {
    double heightMm = 0;                 ///< of the boxes that are measured
    double litres = 0;                   ///< of those with all three sides
    double massG = 0;                    ///< of those that were weighed or reckoned
    std::int64_t notMeasured = 0;        ///< boxes lacking a side
    std::int64_t notWeighed = 0;         ///< boxes lacking a mass: the stack is heavier
    std::vector<std::size_t> careful;    ///< boxes over 23 kg, up to 25
    std::vector<std::size_t> twoPeople;  ///< boxes over 25 kg
};
StackLoad stackLoad(std::span<const BoxToStack> boxes, const LiftLimits& limits = {},
                    Working* working = nullptr);

/// Stacks side by side on a floor, both ways round; no pattern that mixes the two is looked for.
struct FloorStacks {
    std::int64_t lengthwise = 0;  ///< long side of the box along the floor's length
    std::int64_t crosswise = 0;
    std::int64_t most() const { return lengthwise > crosswise ? lengthwise : crosswise; }
};
/// All sides in mm, above 0. Refused, OutOfRange: "floor_length_mm", "floor_width_mm",
/// "outer_length_mm", "outer_width_mm".
Result<FloorStacks> stacksOnFloor(double floorLengthMm, double floorWidthMm, double outerLengthMm,
                                  double outerWidthMm, Working* working = nullptr);

/// Boxes of one mass that a payload carries: it is met before the room is. Grams, above 0.
/// Refused, OutOfRange: "payload_g", "box_g".
Result<std::int64_t> boxesInPayload(double payloadG, double boxG, Working* working = nullptr);

}  // namespace combwright
