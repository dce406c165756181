// What was taken in from another copy of the season, as one step: each row that came, was changed
// or went, whole, so that the line means the same in any copy of this file and can be played
// again. Which rows those are is decided by the merge plan and by the person.
#pragma once

#include <string>

#include "core/actions/action.h"
#include "core/model/changes.h"
#include "core/places/copies/merge_plan.h"
#include "core/storage/audit.h"

namespace combwright {

/// {"do":"merge-copy","on":"2027-06-09","other_copy":"helper.combwright","up_to_step":41,"digest":"…",
///  "rows":{"edits":[{"add":"hive","as":17,"values":{"yard":"#3","mark":"ML9",…}},
///                   {"change":"hive","id":3,"values":{"note":"…"}},{"remove":"visit","id":5}],
///          "same":[{"of":"visit","theirs":12,"ours":14}]}}
/// A reference to a row that comes in the same line is "+17". Refused with UnknownKey, WrongType …
/// under "rows" for a row that does not fit its record, with NotFound for one that is not there.
struct MergeCopy {
    static constexpr std::string_view name = "merge-copy";
    using Answer = Made;
    Day on;
    std::string otherCopy;  ///< its name
    Count upToStep;         ///< its newest step then
    std::string digest;     ///< of that step: what came once is known again
    Changes rows;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// The plan as that action. Every question must have been answered.
MergeCopy mergeCopyOf(const MergePlan& plan, Day on);

/// Takes the other copy in as one step. Refused with ToBeChosen while something is to be chosen,
/// with NothingToDo where nothing comes, with WouldNotFit where the records would not agree: then
/// nothing was changed. Throws StorageError. Answers the step.
Result<std::int64_t> takeIn(Season& season, const MergePlan& plan, Day on);

}  // namespace combwright
