// The yard sheet's actions: one line for one hive. A line typed again for the same visit replaces
// the first: what the first had moved, found or fed is taken back within the same step.
#pragma once

#include "core/actions/action.h"
#include "core/model/yard/sheet_line.h"

namespace combwright {

/// Temper goes from 1 to 5; also when a look is amended.
Result<void> demandSeen(const Seen& seen);

/// One line of the yard sheet in the shorthand: "e b7 s3 +1". The line for all of the visit counts
/// too, unless the own line says the hive was not opened.
struct WriteLine {
    static constexpr std::string_view name = "write-line";
    using Answer = Id<Inspection>;
    Day on;
    Id<Hive> hive;
    std::string line;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// The same with every value named.
struct LookInto {
    static constexpr std::string_view name = "look-into";
    using Answer = Id<Inspection>;
    Day on;
    Id<Hive> hive;
    SheetLine seen;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// The visit itself: when it began and ended, the line for all opened hives, a note. The line for
/// all touches the hives marked opened so far, and those marked opened later. Where only hours or a
/// note are given it stays as it was. A line that begins with "all", "x" or "lid" is said of the
/// whole yard, visited and not opened: every hive without a line of its own gets it, what is said
/// of some only ("3 light") becomes the visit's note. Refused with OtherAction under "all" where it
/// says that hives are dead, with Contradiction as WriteLine.
struct RecordVisit {
    static constexpr std::string_view name = "record-visit";
    using Answer = Id<Visit>;
    Day on;
    Id<Yard> yard;
    std::optional<Instant> begun;
    std::optional<Instant> ended;
    std::string all;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Takes a whole visit out again, its lines with all they had moved, found, fed and weighed.
/// Refused with NothingToDo where there is none, with MovedOn where a box it had moved went on
/// since.
struct StrikeVisit {
    static constexpr std::string_view name = "strike-visit";
    using Answer = Id<Yard>;
    Day on;
    Id<Yard> yard;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Takes a hive's line out of a visit again, with all it had moved, found and fed.
struct StrikeLine {
    static constexpr std::string_view name = "strike-line";
    using Answer = Id<Hive>;
    Day on;
    Id<Hive> hive;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

}  // namespace combwright
