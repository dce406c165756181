// The winter bench: one pass a box. What was typed of a box is kept as it was typed, with what the
// box should have held beside it; the difference stays there and is never forced. What comes off
// the wood and the comb goes where it belongs: raw wax until a pot takes it.
#pragma once

#include "core/model/describe.h"
#include "core/model/frames/frame.h"
#include "core/model/honey/extraction.h"

namespace combwright {

/// One box looked through on one day; a second look on the same day replaces the first.
struct BoxReview {
    static constexpr std::string_view table = "box_review";
    Id<BoxReview> id;
    Id<Box> box;
    Day on;
    std::optional<Count>
        expected;  ///< frames that should have been in it; none: nobody ever counted
    Count found;
    std::optional<bool> web;      ///< any web of moth seen
    std::optional<bool> scraped;  ///< the box itself scraped clean
    std::optional<Known<Mass>> scrapings;
    std::optional<Known<Mass>> propolis;
    std::string wood;       ///< what is to mend: "1 bottom bar"
    std::string combYears;  ///< as typed: "24x3 25x5"
    std::string line;       ///< as typed: "7 keep, 1 web, 1 broken"
    std::string note;
    static const Fields& fields();
};

enum class RawWaxSource { Cappings, Scrapings, OldComb, Mixed };
template <>
struct Choices<RawWaxSource> {
    static constexpr auto words =
        std::to_array<std::string_view>({"cappings", "scrapings", "old comb", "mixed"});
};

/// Wax that waits for the pot, and where it came from.
struct RawWax {
    static constexpr std::string_view table = "raw_wax";
    Id<RawWax> id;
    Day on;
    RawWaxSource source = RawWaxSource::Mixed;
    std::optional<Id<BoxReview>> review;  ///< scrapings of that look
    std::optional<Id<Box>> box;
    std::optional<Id<FrameKind>> frameKind;
    std::optional<Count> combs;        ///< how many combs were cut out
    std::optional<Known<Mass>> clean;  ///< wax expected of it, or weighed
    std::string note;
    static const Fields& fields();
};

}  // namespace combwright
