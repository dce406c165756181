// What a standard or a label asks of honey. Countries and associations disagree, so a profile is a
// table the keeper picks, and what it says is held against what was measured: inside, outside, or
// nobody measured it, which is neither. No legal advice: the code of the place decides.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace combwright {

/// One line of a profile.
struct HoneyLimit {
    std::string quantity;  ///< "water_percent", "hmf_mg_per_kg", "diastase_schade" …
    std::string honey;     ///< "any", or the honey it is for: "heather", "tropical" …
    std::string grade;     ///< "A", "B" …; empty where the profile has no grades
    std::optional<double> atMost;
    std::optional<double> atLeast;
};

/// A quantity somebody measured.
struct HoneyReading {
    std::string quantity;
    double value = 0;
};

enum class LimitVerdict { Within, Outside, NotMeasured };
std::string_view key(LimitVerdict verdict);  ///< "within", "outside", "not measured"

struct LimitAnswer {
    HoneyLimit limit;
    LimitVerdict verdict = LimitVerdict::NotMeasured;
};

/// Each limit that holds for that kind of honey: a line for the kind takes the place of the line
/// for any honey, one that speaks of the same quantity and grade. Both ends belong to the limit.
/// Readings of quantities nobody limits are left alone. In the order of the profile.
std::vector<LimitAnswer> heldAgainst(std::span<const HoneyLimit> profile, std::string_view honey,
                                     std::span<const HoneyReading> readings);

/// Of answers with grades the best grade none of whose measured limits is outside, as the profile
/// orders them; nothing where every grade fails (substandard) or the profile has none.
std::optional<std::string> bestGrade(std::span<const LimitAnswer> answers);

}  // namespace combwright
