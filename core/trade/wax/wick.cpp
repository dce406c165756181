#include "core/trade/wax/wick.h"

#include <array>
#include <cmath>

#include "core/trade/honey/published_table.h"

namespace combwright {
namespace {

constexpr std::array<std::string_view, wickSizes> wicksByThickness{
    "6/0", "5/0", "4/0", "3/0", "2/0", "1/0", "#1", "#2",
    "#3",  "#4",  "#5",  "#6",  "#7",  "#8",  "#9", "#10"};

constexpr double widestCandleMm = 500;

struct WickRow {
    double belowMm;  ///< from the row before up to here
    const char* thinnest;
    const char* thickest;
};
// The diameters are those of the trade's inches; the table is resources/trade/wicks.csv.
constexpr WickRow wickRows[] = {{12.7, "6/0", "5/0"}, {19.05, "4/0", "4/0"}, {25.4, "2/0", "1/0"},
                                {38.1, "1/0", "#1"},  {50.8, "#1", "#2"},    {63.5, "#2", "#3"}};
constexpr double threeInchesMm = 76.2;

}  // namespace

std::optional<int> wickRank(std::string_view size) {
    for (int rank = 0; rank < wickSizes; ++rank) {
        const std::string_view each = wicksByThickness[static_cast<std::size_t>(rank)];
        if (each == size || (each.front() == '#' && each.substr(1) == size)) return rank;
    }
    return std::nullopt;
}

std::string wickOfRank(int rank) {
    return std::string(wicksByThickness.at(static_cast<std::size_t>(rank)));
}

std::optional<bool> thinnerWick(std::string_view one, std::string_view other) {
    const auto a = wickRank(one);
    const auto b = wickRank(other);
    if (!a || !b) return std::nullopt;
    return *a < *b;
}

Result<WickGuess> wickGuess(double diameterMm) {
    if (diameterMm < 0) return Refusal{Code::Negative, "diameter_mm"};
    if (!(diameterMm > 0 && diameterMm <= widestCandleMm))
        return outOfRange("diameter_mm", diameterMm, 0, widestCandleMm);
    for (const WickRow& row : wickRows)
        if (diameterMm < row.belowMm) return WickGuess{row.thinnest, row.thickest, false};
    if (diameterMm <= threeInchesMm) return WickGuess{"#3", "#5", false};
    return WickGuess{"#5", "#6", true};
}

std::string_view key(WickVerdict verdict) {
    switch (verdict) {
        case WickVerdict::Thinner:
            return "thinner";
        case WickVerdict::AsGuessed:
            return "as guessed";
        case WickVerdict::Thicker:
            return "thicker";
    }
    return {};
}

std::optional<WickVerdict> wickAgainst(const WickGuess& guess, std::string_view size) {
    const auto rank = wickRank(size);
    if (!rank) return std::nullopt;
    if (*rank < *wickRank(guess.thinnest)) return WickVerdict::Thinner;
    if (*rank > *wickRank(guess.thickest) && !guess.orThicker) return WickVerdict::Thicker;
    return WickVerdict::AsGuessed;
}

}  // namespace combwright
