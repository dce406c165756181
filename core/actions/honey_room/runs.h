// A run through the honey room: boxes in by weight, loads spun, buckets filled, the day closed.
#pragma once

#include "core/actions/action.h"
#include "core/model/season_info.h"

namespace combwright {

/// Opens a run: one lot of honey handled together. Refused with Taken where a run has that name.
struct OpenRun {
    static constexpr std::string_view name = "open-run";
    using Answer = Id<Extraction>;
    Day on;
    Name run;
    std::optional<Id<Yard>> yard;
    std::optional<Temperature> room;
    std::optional<Share> damp;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Brings a box into a run, weighed or not. With a box its hive is the one it stood on last before
/// the day, unless said otherwise, and the box then waits in the honey room; a box already weighed
/// full may be weighed wet later by the same action. Without box and hive its tag was lost:
/// `known_as` is what is known. `peg` stands for the box it is clipped to that day, known or not;
/// given with box or hive it also says that it is clipped there. Weighed wet, the box's peg comes
/// off. Refused with Contradiction where wet outweighs full, with
/// OutOfRange beyond what a box of comb can weigh (60 kg), with Closed where the run is closed and
/// the box is new, with NotFound where no box carries the peg, with Taken where another does or
/// another open run has the box full, with Contradiction where it came off another hive.
struct WeighBox {
    static constexpr std::string_view name = "weigh-box";
    using Answer = Id<ExtractionBox>;
    Day on;
    Id<Extraction> run;
    std::optional<Id<Box>> box;
    std::optional<Id<Hive>> hive;
    std::string knownAs;
    std::optional<Count> frames;
    std::optional<Known<Share>> filled;
    std::optional<Known<Mass>> gross;
    std::optional<Known<Mass>> wet;
    std::optional<Count> peg;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Names the hive of a box whose tag or peg was lost, or the box itself, by its mark or by the peg
/// it had: then the box goes where it would have gone. Shares are revised, the figures at closing
/// stay. Refused with Missing where nothing is said, with NothingToDo where it is known so already,
/// with Taken where the box has a line in the run, with OtherAction where another hive is known by
/// now (that is amended), with NotFound where no box carried
/// the peg. Where disease is suspected on that hive it needs a reason, which stays on the run;
/// HeldBack without.
struct NameLostBox {
    static constexpr std::string_view name = "name-lost-box";
    using Answer = Id<ExtractionBox>;
    Day on;
    Id<ExtractionBox> lost;
    std::optional<Id<Hive>> hive;
    std::optional<Id<Box>> box;
    std::optional<Count> peg;
    std::string reason;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Takes a box out of a run it was put into by mistake; where the box stands does not change.
/// Refused with Closed where the run is closed, with MovedOn where frames of it were spun.
struct TakeBoxOut {
    static constexpr std::string_view name = "take-box-out";
    using Answer = Id<Extraction>;
    Day on;
    Id<ExtractionBox> box;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// A load spun: which boxes' frames, how it ran. `boxes` is "M07 9, M03 3", a box without a mark or
/// tag "#12". `slots` says where each frame hung, slot 1 first: "M14 h, M12 m, , empty" with a
/// blank for an empty slot, "empty" for an empty drawn frame put in for the balance, and behind the
/// box how the frame felt, heavy, middling or light, where that was said; the boxes follow from it.
/// A load that was stopped leaves its frames to be spun again. Refused with TooMany where a box has
/// not so many frames left or the machine not so many slots, with Contradiction where the kinds of
/// frame do not hang in the machine together, or where boxes and slots do not say the same, and
/// with HeldBack where disease is suspected on one of the boxes, or came up since it was brought
/// in.
struct SpinFrames {
    static constexpr std::string_view name = "spin-load";
    using Answer = Id<SpinLoad>;
    Day on;
    Id<Extraction> run;
    std::string boxes;
    std::optional<Minutes> minutes;
    std::optional<Ran> ran;
    std::optional<Count> rpm;
    std::optional<Mass> startOffset, endOffset, doubt;
    std::string slots;
    std::optional<Instant> begun;          ///< when it began to turn
    std::optional<Minutes> uncapping;      ///< its frames at the knife, all hands together
    std::optional<Id<Equipment>> machine;  ///< where there are several
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Fills a bucket of a run, or several alike in one sum ("the rest: 91.5 kg"): the honey in it,
/// weighed or by its level. The same mark again corrects it. Refused with OutOfRange beyond 1,000
/// kg, with TooMany under what was drawn from it since.
struct FillBucket {
    static constexpr std::string_view name = "fill-bucket";
    using Answer = Id<Bucket>;
    Day on;
    Id<Extraction> run;
    Name bucket;
    std::optional<Known<Mass>> net;
    std::optional<WaterContent> water;
    std::optional<bool> lidded;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Wet cappings and scrapings of a run.
struct WeighCappings {
    static constexpr std::string_view name = "weigh-cappings";
    using Answer = Id<Extraction>;
    Day on;
    Id<Extraction> run;
    std::optional<Known<Mass>> cappings;
    std::optional<Known<Mass>> scrapings;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Closes a run and keeps the shares as they stand; pegs still on its boxes come off. Refused with
/// Missing where no bucket holds honey or nobody said how much one holds, with SecondUnknown where
/// two boxes lack a weight while others were weighed and one of the two was not judged by eye, with
/// NotClosed while frames of it lie set aside.
struct CloseRun {
    static constexpr std::string_view name = "close-run";
    using Answer = Id<Extraction>;
    Day on;
    Id<Extraction> run;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

}  // namespace combwright
