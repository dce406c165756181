// What becomes of frames, many at once: the verdict put on them, and the work done and ticked. Each
// is one step, so one undo takes all of it back. No frame is ever struck out: melted, burnt and
// sold ones stay in the file as such.
#pragma once

#include "core/actions/action.h"
#include "core/model/storeroom/review.h"

namespace combwright {

/// Puts a verdict on frames. Of what is held back, by its verdict or by a hold, it needs a reason,
/// which stays on the frame; a hold stays whatever the verdict. Refused with HeldBack "note"
/// without that reason, HeldBack for suspected foulbrood, which only stays or is burnt, NothingToDo
/// where every frame has the verdict already, TooMany for more frames than fit, and as boxesNamed.
struct JudgeFrames {
    static constexpr std::string_view name = "judge-frames";
    using Answer = std::vector<Id<Frame>>;
    Day on;
    std::string boxes;  ///< "M01-M08, M12", "loose", "all" or left out for all
    std::optional<Id<FrameKind>> frameKind;
    std::string seen;              ///< letters or words: only frames that have all of them
    std::optional<Verdict> from;   ///< only frames with that verdict now
    std::optional<Count> howMany;  ///< all of them, when left out
    Verdict verdict = Verdict::Keep;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// The comb is gone, and with it everything that was known of it.
void takeCombOut(Frame& frame);

enum class FrameWork { Repaired, Refitted, Scraped, Melted, Burnt, Sold };
template <>
struct Choices<FrameWork> {
    static constexpr auto words = std::to_array<std::string_view>(
        {"repaired", "refitted", "scraped", "melted", "burnt", "sold"});
};

/// Does what the verdicts plan and ticks it.
///   repaired  of verdict repair: wood sound again, its comb taken as lost unless `comb` says
///   refitted  of verdict refit: new foundation, off the sheets in stock if any are counted
///   scraped   of verdict scrape: kept from then on
///   melted    of verdict refit or melt: the comb is raw wax, `clean` where it was weighed; frames
///             to be refitted stay as bare wood, those of verdict melt are gone
///   burnt     of verdict burn
///   sold      of any verdict but hold; needs how many or boxes
/// What is held back is passed over where all are meant; named, it needs a reason, which stays on
/// the frame. Refused with HeldBack where disease is suspected on or near it, but for burning with
/// a reason, and where all that is named waits held by its verdict; with Contradiction for wax of
/// two kinds weighed at once; and as JudgeFrames.
struct WorkFrames {
    static constexpr std::string_view name = "work-frames";
    using Answer = std::vector<Id<Frame>>;
    Day on;
    FrameWork work = FrameWork::Repaired;
    std::optional<Id<Box>> box;
    std::string boxes;
    std::optional<Id<FrameKind>> frameKind;
    std::optional<Count> howMany;
    std::optional<Comb> comb;  ///< what it carries afterwards
    std::optional<Known<Mass>> clean;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

}  // namespace combwright
