#include "core/trade/honey/limits.h"

#include <algorithm>

namespace combwright {
namespace {

constexpr std::string_view anyHoney = "any";

bool isReplaced(const HoneyLimit& general, std::span<const HoneyLimit> profile,
                std::string_view honey) {
    return std::any_of(profile.begin(), profile.end(), [&](const HoneyLimit& each) {
        return each.honey == honey && each.quantity == general.quantity &&
               each.grade == general.grade;
    });
}

LimitVerdict verdictOn(const HoneyLimit& limit, std::span<const HoneyReading> readings) {
    const auto reading =
        std::find_if(readings.begin(), readings.end(),
                     [&](const HoneyReading& each) { return each.quantity == limit.quantity; });
    if (reading == readings.end()) return LimitVerdict::NotMeasured;
    const bool over = limit.atMost && reading->value > *limit.atMost;
    const bool under = limit.atLeast && reading->value < *limit.atLeast;
    return over || under ? LimitVerdict::Outside : LimitVerdict::Within;
}

}  // namespace

std::string_view key(LimitVerdict verdict) {
    // said: choices
    switch (verdict) {
        case LimitVerdict::Within:
            return "within";
        case LimitVerdict::Outside:
            return "outside";
        case LimitVerdict::NotMeasured:
            return "not measured";
    }
    return {};
}

std::vector<LimitAnswer> heldAgainst(std::span<const HoneyLimit> profile, std::string_view honey,
                                     std::span<const HoneyReading> readings) {
    std::vector<LimitAnswer> answers;
    for (const HoneyLimit& limit : profile) {
        const bool special = limit.honey == honey && honey != anyHoney;
        const bool general =
            limit.honey == anyHoney && (honey == anyHoney || !isReplaced(limit, profile, honey));
        if (special || general) answers.push_back({limit, verdictOn(limit, readings)});
    }
    return answers;
}

std::optional<std::string> bestGrade(std::span<const LimitAnswer> answers) {
    for (const LimitAnswer& each : answers) {
        if (each.limit.grade.empty()) continue;
        const bool fails =
            std::any_of(answers.begin(), answers.end(), [&](const LimitAnswer& other) {
                return other.limit.grade == each.limit.grade &&
                       other.verdict == LimitVerdict::Outside;
            });
        if (!fails) return each.limit.grade;
    }
    return std::nullopt;
}

}  // namespace combwright
