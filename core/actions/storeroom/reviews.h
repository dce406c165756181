// One box looked through on the winter bench, in one line. The count meets the frames that were in
// the box; a difference is kept beside what should have been there and never forced.
#pragma once

#include "core/actions/action.h"
#include "core/model/storeroom/review.h"

namespace combwright {

/// Looks a box through: "7 keep, 1 web, 1 broken", or "7 keep, 1 W6, 1 V; scraped, years 24x3".
/// What becomes of each frame follows from what was seen unless it was said. Frames that are not
/// found are missing, those found again come back, further ones are new. A second look on the same
/// day replaces the first, its scrapings too. A look older than what the box went through since is
/// kept as a record and touches no frame. Frames held by their verdict stay held and as they were
/// unless the note gives a reason, which stays on them; where foulbrood is suspected on any, box
/// and colony are quarantined. Refused with BeforeItBegan, with TooMany for more frames than such a
/// box can hold or more combs in years than were found, with NotFound for a kind of frame nobody
/// knows, UnknownSize for a box whose frames nobody knows, and as parseReviewLine.
struct ReviewBox {
    static constexpr std::string_view name = "review-box";
    using Answer = Id<BoxReview>;
    Day on;
    Id<Box> box;
    std::string contents;
    std::optional<bool> web;
    std::optional<bool> scraped;
    std::optional<Known<Mass>> scrapings;
    std::optional<Known<Mass>> propolis;
    std::string combYears;
    std::string wood;
    std::optional<BoxCondition> condition;
    std::optional<bool> wantsPaint;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// The action a line typed at the bench means: its counts stay as typed, everything else goes into
/// the action's own fields, masses in the person's units. Refused as parseReviewLine.
Result<ReviewBox> reviewTyped(Day on, Id<Box> box, std::string_view line);

}  // namespace combwright
