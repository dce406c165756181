#include "core/trade/colony/flow_state.h"

#include <array>

namespace combwright {
namespace {

constexpr double flowGramsPerPound = 453.59237;

}  // namespace

std::string_view key(FlowState state) {
    constexpr std::array<std::string_view, 5> keys{"dearth", "steady", "light", "good", "main"};
    return keys[static_cast<std::size_t>(state)];
}

FlowState flowState(double meanNet_g_per_day) {
    const double pounds = meanNet_g_per_day / flowGramsPerPound;
    if (pounds < -0.3) return FlowState::Dearth;
    if (pounds <= 0.3) return FlowState::Steady;
    if (pounds <= 2) return FlowState::Light;
    if (pounds <= 5) return FlowState::Good;
    return FlowState::Main;
}

}  // namespace combwright
