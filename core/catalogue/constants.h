// The published or customary figure behind every rate and threshold, with its source. A season file
// starts from these and keeps the keeper's own beside them; where nobody ever printed a figure, the
// source says so in plain words, so that no guess passes for a fact.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace combwright {

struct PublishedConstant {
    std::string name;  ///< as scripts and season files name it: "uncap_min_per_frame"
    double value;
    std::string unit;                   ///< "g", "min", "%" …; empty for a share or a pure number
    std::optional<double> publishedSd;  ///< standard deviation of the value, where one is known
    std::string
        source;  ///< "printed in …", "common practice, no source …", "planning assumption …"

    /// Nobody printed it: an editable guess of ours to plan with.
    bool isAssumption() const;
};

/// All of them, in the order of the honey's way: comb, plan, honey room, bees, wax, storeroom; last
/// what a colony uses in each month of winter.
const std::vector<PublishedConstant>& publishedConstants();
/// What a colony uses in a month, 1 to 12: "winter_use_october_g". Published from October to April.
std::string winterUseName(unsigned month);
/// The constant of that name, or nothing.
const PublishedConstant* findPublishedConstant(std::string_view name);

}  // namespace combwright
