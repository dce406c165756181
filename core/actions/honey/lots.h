// Honey poured together, and honey bought in: lots of their own that know every gram they came
// from.
#pragma once

#include "core/actions/action.h"
#include "core/model/honey/lot.h"

namespace combwright {

/// Pours buckets and lots together into a new lot. `parts` is "B1 all, B3 6.2 kg"
/// (core/places/honey/blend_line.h), weighed unless `parts_how` says otherwise; of "all" of a
/// bucket it is as well known as the bucket. Refused with Taken for the name, as readBlendLine,
/// with Missing where all is taken of what nobody weighed, with TooMany beyond what is in a vessel
/// and beyond what the tank takes, with BeforeItBegan, and with HeldBack without a reason where a
/// part is held back.
struct BlendHoney {
    static constexpr std::string_view name = "blend-honey";
    using Answer = Id<Lot>;
    Day on;
    Name lot;
    std::string parts;
    std::optional<How> partsHow;
    std::optional<Known<Mass>> net;  ///< weighed after
    std::optional<Mass> tankHolds;   ///< to the brim
    std::optional<Length> tankWide;  ///< inside, across
    std::optional<bool> lidded;
    HoneyTraits traits;
    std::string reason;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Honey that came from somebody else: a lot whose hives and treatments nobody here knows. Refused
/// with Taken for the name, with Missing without a mass.
struct BuyHoney {
    static constexpr std::string_view name = "buy-honey";
    using Answer = Id<Lot>;
    Day on;
    Name lot;
    std::optional<Known<Mass>> net;
    std::string supplier;
    std::optional<Mass> tankHolds;
    std::optional<Length> tankWide;
    std::optional<bool> lidded;
    HoneyTraits traits;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

}  // namespace combwright
