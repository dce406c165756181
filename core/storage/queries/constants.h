// The value of a rate or limit that holds on a day: the yard's own, else the file's, else the
// published.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

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
/// One rate in one yard, asked for many days: the file is read once.
class ConstantOverDays {
  public:
    ConstantOverDays(const Read& file, std::string_view name, std::optional<Id<Yard>> yard);
    /// Nothing where neither the keeper nor the catalogue knows the name.
    std::optional<ConstantInForce> on(Day day) const;
    /// The value alone, or `fallback` where nobody knows it.
    double onOr(Day day, double fallback) const;

  private:
    std::string m_name;
    std::optional<Id<Yard>> m_yard;
    std::vector<Constant> m_own;
};

/// Nothing where neither the keeper nor the catalogue knows the name.
std::optional<ConstantInForce> constantInForce(const Read& file, std::string_view name,
                                               std::optional<Id<Yard>> yard, Day on);
/// The value alone, or `fallback` where nobody knows it.
double constantOr(const Read& file, std::string_view name, std::optional<Id<Yard>> yard, Day on,
                  double fallback);

}  // namespace combwright
