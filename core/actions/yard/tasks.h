// What only the keeper knows of things due: a note to himself, and a rule he does not want to hear
// of for a hive or a yard, with the reason. All else that is due follows from the records.
#pragma once

#include "core/actions/action.h"
#include "core/model/yard/due.h"

namespace combwright {

/// A day before the note was written, or a yard the hive does not stand in, cannot hold.
Result<void> demandTask(const Read& file, const Task& task);
/// Either a hive or a yard, an end not before its beginning, and not said twice at a time.
Result<void> demandQuiet(const Read& file, const Quiet& quiet);

/// Writes down something to be done. Refused with Contradiction where it is due before `on` or the
/// hive stands in another yard, with Closed where hive or yard are closed.
struct NoteTask {
    static constexpr std::string_view name = "note-task";
    using Answer = Id<Task>;
    Day on;
    Name text;
    std::optional<Id<Yard>> yard;
    std::optional<Id<Hive>> hive;
    std::optional<Day> due;  ///< the last good day; none: any day
    std::string who;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Ticks it off. Refused with NothingToDo where it is done, with BeforeItBegan before it was noted.
struct FinishTask {
    static constexpr std::string_view name = "finish-task";
    using Answer = Id<Task>;
    Day on;
    Id<Task> task;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Quiets a rule for a hive or for a whole yard. What it would have said stays listed as quieted.
/// Refused with Missing where neither is named, with Contradiction where both are or where it would
/// end before it begins, with Taken where the rule is quiet there on one of those days.
struct QuietRule {
    static constexpr std::string_view name = "quiet-rule";
    using Answer = Id<Quiet>;
    Day on;
    DueRule rule = DueRule::Look;
    std::optional<Id<Yard>> yard;
    std::optional<Id<Hive>> hive;
    std::optional<Day> until;  ///< the last quiet day; none: until it is ended
    Name reason;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// The rule is heard again from that day on. Refused with NothingToDo where it is, with
/// BeforeItBegan before the day it was quieted.
struct EndQuiet {
    static constexpr std::string_view name = "end-quiet";
    using Answer = Id<Quiet>;
    Day on;
    Id<Quiet> quiet;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

}  // namespace combwright
