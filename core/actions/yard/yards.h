// Yards and stands: opening them, writing down who lives there, closing them.
#pragma once

#include "core/actions/action.h"
#include "core/model/frames/box.h"
#include "core/model/season_info.h"
#include "core/model/yard/yard.h"

namespace combwright {

/// Names the season file; said at the head of the window and of every page.
struct NameSeason {
    static constexpr std::string_view name = "name-season";
    using Answer = Id<SeasonInfo>;
    Day on;
    Name season;
    std::optional<bool> invented;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Adds a yard. Refused with Taken where an open yard has that name.
struct AddYard {
    static constexpr std::string_view name = "add-yard";
    using Answer = Id<Yard>;
    Day on;
    Name yard;
    std::optional<Count> walkOrder;  ///< last, when left out
    std::string place;
    std::string registration;
    std::optional<ExtractBy> extractBy;
    std::optional<Mass> winterNeed;
    std::optional<Id<BoxKind>> usualSuper;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Adds a stand with its mark, its boxes from the floor up and the colony in it: "deep D31, medium
/// M31". An X after a box sets the excluder on it. Refused with Taken where an open hive of the
/// yard or a box has that mark, with NotFound where a kind of box is not known, with HeldBack where
/// the mother is under suspicion of disease.
struct AddHive {
    static constexpr std::string_view name = "add-hive";
    using Answer = Id<Hive>;
    Day on;
    Id<Yard> yard;
    Name hive;
    std::optional<Count> standOrder;  ///< last, when left out; later stands move up
    std::string boxes;
    std::optional<Origin> origin;    ///< none: the stand is empty
    std::optional<Id<Hive>> mother;  ///< the hive it was split from
    std::optional<Known<Mass>> tare;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Sets up several hives alike, as one step: "H1-H8, H12". All have one build; a mark in it counts
/// up from hive to hive ("deep D31" is D31 on the first, D32 on the second), so it must end in a
/// number. They go last in walking order. Refused with Missing, WrongType, Duplicate or OutOfRange
/// (more than 100) under "marks", WrongType under "boxes", and as AddHive.
struct AddHives {
    static constexpr std::string_view name = "add-hives";
    using Answer = std::vector<Id<Hive>>;
    Day on;
    Id<Yard> yard;
    std::string marks;
    std::string boxes;
    std::optional<Origin> origin;  ///< of a colony in each; none: the stands are empty
    std::optional<Known<Mass>> tare;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Closes a hive. Its mark may be used again; its boxes must have gone first, or go within the same
/// step where `boxesTo` says where to. A colony that ends with it, neither united nor sold, is a
/// dead-out: its combs are held until it is explained. Refused with NotClosed where boxes stand and
/// nothing is said, with Contradiction where they would go onto the hive itself, and with HeldBack
/// as MoveBox, or where a colony under suspicion of disease would be united or sold.
struct CloseHive {
    static constexpr std::string_view name = "close-hive";
    using Answer = Id<Hive>;
    Day on;
    Id<Hive> hive;
    std::optional<Ending> ending;  ///< how the colony ended, where one lived there
    std::optional<BoxPlace> boxesTo;
    std::optional<Id<Hive>> onto;  ///< the hive they go on top of, in their order
    std::string stack;             ///< which shelf they go to
    std::string reason;  ///< why boxes that are held move: the inspector's word, or the keeper's
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Sets a hive at another place in the walking order of its yard, or in another yard, where its
/// earlier days stay with the yard it stood in. Refused with HeldBack where disease is suspected on
/// it and it would leave its yard, with BeforeItBegan before its last move.
struct MoveHive {
    static constexpr std::string_view name = "move-hive";
    using Answer = Id<Hive>;
    Day on;
    Id<Hive> hive;
    std::optional<Id<Yard>> yard;
    std::optional<Count> standOrder;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Another mark is painted on a hive; the old one may be used again, and still leads to it for the
/// days before. Refused with Taken where an open hive of the yard bears the mark, NothingToDo where
/// it is so already, BeforeItBegan before its last move.
struct RelabelHive {
    static constexpr std::string_view name = "relabel-hive";
    using Answer = Id<Hive>;
    Day on;
    Id<Hive> hive;
    Name mark;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

}  // namespace combwright
