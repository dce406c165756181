// How a number came about, step by step, so that the person can open any figure and see its inputs,
// formula, units, rounding and source. Trade functions take an optional Working and add to it.
#pragma once

#include <string>
#include <vector>

namespace combwright {

struct Working {
    struct Step {
        std::string what;  ///< a key of core/words, for instance "water_percent"
        double value = 0;  ///< in the unit named
        std::string unit;  ///< "g", "kg/L", "%" …; empty for a pure number
        std::string how;   ///< the formula or rule, language-neutral: "RI + 0.00023 · (t − 20)"
        std::string source;  ///< where rule or constant is printed; empty for an input
    };

    std::vector<Step> steps;
};

/// Adds a step when somebody asked for the working.
inline void note(Working* working, std::string what, double value, std::string unit,
                 std::string how = {}, std::string source = {}) {
    if (working)
        working->steps.push_back(
            {std::move(what), value, std::move(unit), std::move(how), std::move(source)});
}

}  // namespace combwright
