// How a number is known goes with it wherever it goes: into the file, through every sum, onto
// paper. A total is never known better than the weakest part that matters.
#pragma once

#include <optional>
#include <string_view>

namespace combwright {

/// From best to worst; a derived figure carries the worst of its inputs that matter.
enum class How { Weighed, Counted, ByEye, ByDifference, Assumed, Unknown };

constexpr How weaker(How a, How b) { return a < b ? b : a; }
/// The raised letter after a unit: w c e d a ?
constexpr char letter(How how) { return "wceda?"[static_cast<int>(how)]; }

/// A reading as it was given: "7" is 7 counted, "~6" 6 by eye, "5-7" 5 to 7 by eye, "some" only by
/// eye without a figure, "?" looked and could not tell. A reading nobody made is an empty
/// std::optional<Known<T>>: never zero.
template <class T>
struct Known {
    std::optional<T> value;
    std::optional<T> to;  ///< upper end of a range; only with a value
    How how = How::Counted;

    /// The figure sums use: the middle of a range; nothing when no figure was given.
    std::optional<double> middle() const {
        if (!value) return std::nullopt;
        const auto low = static_cast<double>(value->count());
        return to ? (low + static_cast<double>(to->count())) / 2.0 : low;
    }
    bool operator==(const Known&) const = default;
};

}  // namespace combwright
