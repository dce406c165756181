#include "core/trade/honey/lot_code.h"

#include <algorithm>
#include <string_view>

#include "core/trade/honey/published_table.h"

namespace combwright {
namespace {

constexpr std::string_view lotSeparators = "-./";
constexpr std::size_t longestLotPrefix = 8;
constexpr int highestLotNumber = 9999;

bool letterOrDigit(char c) {
    return (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z');
}

Result<void> refuseLotRule(const LotCodeRule& rule) {
    if (rule.prefix.size() > longestLotPrefix ||
        !std::all_of(rule.prefix.begin(), rule.prefix.end(), letterOrDigit))
        return Refusal{Code::NotAChoice,
                       "prefix",
                       {{"value", rule.prefix}, {"choices", "up to eight letters or digits"}}};
    if (lotSeparators.find(rule.separator) == std::string_view::npos)
        return Refusal{Code::NotAChoice,
                       "separator",
                       {{"value", std::string(1, rule.separator)}, {"choices", "-, ., /"}}};
    return {};
}

}  // namespace

Result<std::string> lotCode(const LotCodeRule& rule, const LotCodeParts& parts) {
    if (auto good = refuseLotRule(rule); !good) return good.error();
    if (rule.from == LotCodeRule::From::BestBeforeDay) {
        if (!parts.bestBefore) return Refusal{Code::Missing, "best_before"};
        std::string day = isoText(*parts.bestBefore);
        std::replace(day.begin(), day.end(), '-', rule.separator);
        return rule.prefix + day;
    }
    if (parts.year < 1000 || parts.year > highestLotNumber)
        return outOfRange("year", parts.year, 1000, highestLotNumber);
    if (parts.run < 1 || parts.run > highestLotNumber)
        return outOfRange("run", parts.run, 1, highestLotNumber);
    if (parts.filling < 1 || parts.filling > highestLotNumber)
        return outOfRange("filling", parts.filling, 1, highestLotNumber);
    std::string year = std::to_string(parts.year);
    if (rule.shortYear) year = year.substr(2);
    return rule.prefix + year + rule.separator + std::to_string(parts.run) + rule.separator +
           std::to_string(parts.filling);
}

}  // namespace combwright
