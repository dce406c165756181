// What is seen of boxes and frames, and what is held back. A count fills frames that stay
// exchangeable; what was typed is kept as it was typed, and a difference to what the box should
// hold is kept too.
#pragma once

#include "core/actions/action.h"
#include "core/model/frames/frame.h"
#include "core/model/season_info.h"

namespace combwright {

/// Refused with TooMany where more frames are named, or more of them capped, than can be in such a
/// box, and with Contradiction where more are capped than there are.
Result<void> demandLook(const Read& file, const BoxLook& look);

/// A look into a box on a hive before a pull: "9 drawn; 7 capped, 85 % full", water where measured.
/// A second look on the same day replaces the first. Refused with BeforeItBegan before the box was
/// there, and with TooMany where more frames are named than can be in such a box.
struct LookBox {
    static constexpr std::string_view name = "look-box";
    using Answer = Id<BoxLook>;
    Day on;
    Id<Box> box;
    std::string contents;
    std::optional<Known<Share>> filled;  ///< instead of "% full" in the contents
    std::optional<WaterContent> water;
    std::optional<Known<Share>> toFork;
    std::optional<bool> broodIn;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Counts a box's frames by class: "7 drawn, 1 W, 1 broken". The exchangeable frames become what
/// was counted; frames with a place of their own stay and are part of the count. Frames that are
/// not found any more are missing, those found again come back first.
struct CountBox {
    static constexpr std::string_view name = "count-box";
    using Answer = Id<Box>;
    Day on;
    Id<Box> box;
    std::string contents;
    std::optional<Occasion> occasion;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Holds a box, a hive's colony, a bucket, a lot or a filling back until it is released.
struct HoldBack {
    static constexpr std::string_view name = "hold-back";
    using Answer = Id<Hold>;
    Day on;
    HoldWhy reason = HoldWhy::Other;
    std::optional<Id<Box>> box;
    std::optional<Id<Hive>> hive;
    std::optional<Id<Bucket>> bucket;
    std::optional<Id<Lot>> lot;
    std::optional<Id<Bottling>> bottling;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Releases what was held, on what grounds and by whom; with a suspicion of disease what was held
/// as its contact too. Refused with Missing where a dead-out, a suspicion or a contact is released
/// and one of the two is not given.
struct ReleaseHold {
    static constexpr std::string_view name = "release-hold";
    using Answer = Id<Hold>;
    Day on;
    Id<Hold> hold;
    std::string liftedBy;
    std::string grounds;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Sets the keeper's own value of a rate or limit from that day on, for all or for one yard.
/// Refused with NotFound for a name the catalogue does not know.
struct SetConstant {
    static constexpr std::string_view name = "set-constant";
    using Answer = Id<Constant>;
    Day on;
    Name constant;
    Number value;
    std::optional<Id<Yard>> yard;
    std::string source;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// The keeper's own value of a rate or limit no longer counts from that day on: the published one
/// does again, or for a yard that for all. The reason stands in the journal. Refused with NotFound
/// for a name the catalogue does not know, NothingToDo where no own value is in force.
struct UnsetConstant {
    static constexpr std::string_view name = "unset-constant";
    static constexpr bool needsWhy = true;
    using Answer = Id<Constant>;
    Day on;
    Name constant;
    std::optional<Id<Yard>> yard;  ///< none: that for all yards
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

}  // namespace combwright
