#include "core/trade/honey/published_table.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cstddef>
#include <utility>

namespace combwright {
namespace {

std::string publishedNumberText(double number) {
    std::array<char, 32> text{};
    // Twelve digits: 1.474 stays "1.474" however it was computed.
    const auto end = std::to_chars(text.data(), text.data() + text.size(), number,
                                   std::chars_format::general, 12);
    return {text.data(), end.ptr};
}

}  // namespace

double interpolate(std::span<const TablePoint> rows, double at) {
    const bool rising = rows.front().at < rows.back().at;
    std::size_t upper = 1;
    while (upper + 1 < rows.size() && (rising ? rows[upper].at < at : rows[upper].at > at)) ++upper;
    const TablePoint& a = rows[upper - 1];
    const TablePoint& b = rows[upper];
    const double along = std::clamp((at - a.at) / (b.at - a.at), 0.0, 1.0);
    return a.value + along * (b.value - a.value);
}

Refusal outOfRange(std::string field, double value, double low, double high) {
    return Refusal{Code::OutOfRange,
                   std::move(field),
                   {{"value", publishedNumberText(value)},
                    {"low", publishedNumberText(low)},
                    {"high", publishedNumberText(high)}}};
}

}  // namespace combwright
