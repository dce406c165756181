// What lies in danger of the wax moth: brood or pollen comb that no cold has been through, in the
// warm months. Said in September, not in January.
#pragma once

#include <optional>
#include <vector>

#include "core/places/storeroom/shelf_comb.h"

namespace combwright {

/// What to do about a box in danger.
enum class ShelfAdvice {
    Freeze,     ///< into the next round
    DryFirst,   ///< then freeze
    MeltSoon,   ///< it is to be melted anyway
    KeepCold,   ///< it is held and must not lie with other comb: closed, cold, by itself
    LookInside  ///< moths have been there: look today, then freeze
};

struct ShelfDanger {
    ShelfBox box;
    std::int64_t frames = 0;          ///< in danger
    std::int64_t held = 0;            ///< of them
    MothFood food = MothFood::Brood;  ///< the worst of them
    std::optional<Day> undone;        ///< frozen once, and undone since
    std::optional<Day> spoilt;        ///< opened or left warm, as written down
    std::string spoiltWhy;
    ShelfAdvice advice = ShelfAdvice::Freeze;
};

/// Whether moths develop on a shelf in that month: from April to October, or what the keeper set.
/// Common practice, no source; a shed under about 10 °C is safe (one page).
bool warmMonth(const Read& file, Day on);

/// Boxes in danger on that day, those moths have been in first, then by how many frames. None in
/// the cold months.
std::vector<ShelfDanger> shelfDangers(const Read& file, Day on);

}  // namespace combwright
