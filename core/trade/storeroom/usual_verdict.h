// What is usually done with a frame on which this was seen. The keeper may overrule it; this only
// says what follows, and from which fault. No one source gives the whole list, so each row is
// common practice, no source, where nothing else stands with it.
#pragma once

#include <span>
#include <string_view>

#include "core/support/result.h"

namespace combwright {

/// As the keeper types them, 1 to 8.
enum class UsualVerdict {
    Keep = 1,
    Scrape = 2,
    Repair = 3,
    Refit = 4,  ///< comb out, new foundation in
    Freeze = 5,
    Melt = 6,
    Hold = 7,
    Burn = 8,  ///< only ever by the inspector's word, never from what was seen
};

/// One fault and what follows from it alone.
struct FaultRule {
    char letter;  ///< as in the shorthand of frames
    UsualVerdict verdict;
    std::string_view reason;  ///< key of the sentence that says why
    std::string_view source;
};
/// Every fault letter once, in the order in which they are listed to the person.
std::span<const FaultRule> faultRules();

struct VerdictAnswer {
    UsualVerdict verdict = UsualVerdict::Keep;
    char letter = 0;          ///< the fault it follows from; 0 where nothing was seen
    std::string_view reason;  ///< "nothing_seen" where nothing was seen
    std::string_view source;
};

/// The usual verdict of all faults seen (letters in any order, each perhaps more than once): the
/// gravest, hold before melt, refit, repair, scrape, freeze and keep; of two that weigh the same
/// the one listed earlier says why. `blackMould`: the mould (O) is black, not of the surface only.
/// Refused, NotAChoice "faults": a letter that is none.
Result<VerdictAnswer> usualVerdict(std::string_view faults, bool blackMould = false);

}  // namespace combwright
