#include "core/trade/colony/queen_colour.h"

#include <array>
#include <cstddef>

namespace combwright {

std::string_view queenColour(int year) {
    // said: choices
    static constexpr std::array<std::string_view, 5> colours{"white", "yellow", "red", "green",
                                                             "blue"};
    if (year < 1) return {};
    return colours[static_cast<std::size_t>((year - 1) % 5)];
}

}  // namespace combwright
