// The value of a rate or limit that holds on a day: the yard's own, else the file's, else the
// published.
#pragma once

#include <optional>
#include <string_view>

#include "core/model/season_info.h"
#include "core/storage/rows.h"

namespace combwright {

struct ConstantInForce {
    double value = 0;
    std::optional<Constant> own;  ///< the keeper's, where one is in force
    std::string source;
};

/// The source as it is shown: a keeper's own says so and since when.
std::string constantSource(const ConstantInForce& constant);
/// Nothing where neither the keeper nor the catalogue knows the name.
std::optional<ConstantInForce> constantInForce(const Read& file, std::string_view name,
                                               std::optional<Id<Yard>> yard, Day on);
/// The value alone, or `fallback` where nobody knows it.
double constantOr(const Read& file, std::string_view name, std::optional<Id<Yard>> yard, Day on,
                  double fallback);

}  // namespace combwright
