#include "core/trade/storeroom/usual_verdict.h"

#include <array>
#include <string>

namespace combwright {
namespace {

constexpr std::string_view customary = "common practice, no source";

constexpr auto rulesOfFaults = std::to_array<FaultRule>({
    {'W', UsualVerdict::Refit, "moth_ate_the_comb", customary},
    {'S', UsualVerdict::Refit, "slime_soaks_the_comb", customary},
    {'B', UsualVerdict::Refit, "comb_is_out_of_shape", customary},
    {'U', UsualVerdict::Refit, "mouse_fouled_the_comb", customary},
    {'O', UsualVerdict::Keep, "air_and_dry_it", customary},
    {'D', UsualVerdict::Hold, "dead_brood_until_looked_at",
     "quarantine logic of foulbrood guides: brood that is suspicious is held"},
    {'X', UsualVerdict::Scrape, "brush_out_dead_bees", customary},
    {'N', UsualVerdict::Refit, "too_many_drone_cells",
     "common practice, no source; over 10 to 20 % of the comb"},
    {'V', UsualVerdict::Repair, "wood_is_broken", customary},
    {'T', UsualVerdict::Refit, "comb_is_old",
     "printed in 2 sources: brood comb is replaced every 3 to 5 years"},
    {'G', UsualVerdict::Keep, "bees_of_its_yard_clean_it", customary},
    {'Y', UsualVerdict::Refit, "fermented_stores", customary},
    {'P', UsualVerdict::Scrape, "scrape_off_propolis", customary},
    {'C', UsualVerdict::Refit, "comb_is_built_across", customary},
    {'L', UsualVerdict::Freeze, "moths_eat_pollen", customary},
    {'Q', UsualVerdict::Hold, "quarantine_call_inspector",
     "guides to foulbrood, four sources: report it, do not move anything"},
});

constexpr FaultRule blackMouldRule{'O', UsualVerdict::Melt, "black_mould_does_not_air_out",
                                   customary};

/// Which of two counts: a comb on hold is not melted, and one that is melted needs no scraping.
int gravity(UsualVerdict verdict) {
    switch (verdict) {
        case UsualVerdict::Keep:
            return 0;
        case UsualVerdict::Freeze:
            return 1;
        case UsualVerdict::Scrape:
            return 2;
        case UsualVerdict::Repair:
            return 3;
        case UsualVerdict::Refit:
            return 4;
        case UsualVerdict::Melt:
            return 5;
        case UsualVerdict::Hold:
            return 6;
        case UsualVerdict::Burn:
            return 7;
    }
    return 0;
}

}  // namespace

std::span<const FaultRule> faultRules() { return rulesOfFaults; }

Result<VerdictAnswer> usualVerdict(std::string_view faults, bool blackMould) {
    std::string known;
    for (const FaultRule& rule : rulesOfFaults) known += rule.letter;
    for (const char letter : faults)
        if (known.find(letter) == std::string::npos)
            return Refusal{Code::NotAChoice,
                           "faults",
                           {{"value", std::string(1, letter)}, {"choices", known}}};
    VerdictAnswer answer{UsualVerdict::Keep, 0, "nothing_seen", customary};
    for (const FaultRule& each : rulesOfFaults) {
        if (faults.find(each.letter) == std::string_view::npos) continue;
        const FaultRule& rule = each.letter == 'O' && blackMould ? blackMouldRule : each;
        if (answer.letter != 0 && gravity(rule.verdict) <= gravity(answer.verdict)) continue;
        answer = {rule.verdict, rule.letter, rule.reason, rule.source};
    }
    return answer;
}

}  // namespace combwright
