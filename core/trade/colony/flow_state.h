// What a hive on the scale says of the flow: what it gained or lost a day, as the mean of about a
// week. A day alone says little, for foragers are out by day and nectar dries by night.
#pragma once

#include <string_view>

namespace combwright {

enum class FlowState { Dearth, Steady, Light, Good, Main };

/// As JSON names it: "dearth", "steady", "light", "good", "main".
std::string_view key(FlowState state);

/// By the mean net change of a hive, grams a day: below −0.3 lb dearth, to 0.3 steady, to 2 light,
/// to 5 good, more is a main flow (the last printed, the others computed from printed gains).
FlowState flowState(double meanNet_g_per_day);

}  // namespace combwright
