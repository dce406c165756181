// Why something was not done, when the reason lies with what was asked and the person can act on
// it. A refusal carries a code and values, never a sentence: core/words words it, tests assert on
// the code. What the world does to us (disk, lock, damage) is thrown as StorageError instead.
#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace combwright {

/// Every reason the core may refuse for. Listed by the `codes` command: only ever added to.
enum class Code {
    // What was given is not usable as it stands.
    Missing,        ///< a needed value was not given
    UnknownKey,     ///< a key nobody asked for
    WrongType,      ///< text where a number is needed, a fraction where a count is needed …
    Negative,       ///< below zero where that cannot be
    OutOfRange,     ///< outside the range named in the values "low" and "high"
    Duplicate,      ///< an id or mark given twice
    NotAChoice,     ///< not one of the words named in "choices"
    NotADay,        ///< not a day of the calendar
    Contradiction,  ///< two values that cannot both hold; "other" names the second field
    // What it speaks of is not there, or not only there.
    NotFound,   ///< nothing of that name on that day
    Ambiguous,  ///< several of that name; say more
    Taken,      ///< the name or place is in use
    // The trade's own rules.
    UnknownSize,    ///< a frame or box whose measures nobody recorded
    TooMany,        ///< more than fit or exist; "most" names the limit
    SecondUnknown,  ///< only one part may be found by difference, this is a second
    Closed,         ///< the yard, hive or run is closed
    NotClosed,      ///< something must be closed or emptied first
    BeforeItBegan,  ///< a day before the thing existed
    InTheFuture,    ///< a day that has not come yet
    NothingToDo,    ///< the action would change nothing
    OtherAction,    ///< "action" names the action that does this
    Fixed,          ///< stays as it was recorded
    HeldBack,       ///< held back; "why" says why, "since" since when, or "reason" alone
    // The journal.
    NothingToUndo,
    NothingToRedo,
    MovedOn,        ///< later changes stand on the one to be taken back
    NotThatStep,    ///< the step undone would not be the one asked for
    FileMovedOn,    ///< another program wrote since the screen was drawn
    ReadOnly,       ///< the file was opened for reading only
    PathTaken,      ///< there is a file of that name already
    NoSuchAction,   ///< "do" names no action
    NoSuchCommand,  ///< the computation or sheet named does not exist
    // Copies of one season.
    NotOfThis,    ///< the other file is no copy of this season
    ToBeChosen,   ///< both copies changed the same; "count" says how much is to be chosen
    WouldNotFit,  ///< put together, the records would not agree; "says" tells the first
    // Long jobs.
    Stopped,  ///< no longer wanted by who asked for it, and nothing of it was kept
};

/// The code's name in JSON: lower case with underscores, for instance "out_of_range".
std::string_view key(Code code);
/// Every code, in the order of the enumeration.
const std::vector<Code>& allCodes();

struct Refusal {
    Code code;
    /// The key it is about, as in JSON ("frames[2].start_g"); empty when it is about the whole.
    std::string field;
    /// What the sentence needs: {"low", "65"}, {"name", "ML3"} …
    std::vector<std::pair<std::string, std::string>> values = {};

    /// The value of that name, or empty.
    std::string_view value(std::string_view name) const;
    bool operator==(const Refusal&) const = default;
};

}  // namespace combwright
