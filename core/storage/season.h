// A season file, open. Everything that is ever written goes through perform(): one action is one
// transaction is one row of the journal. Undo and redo walk that journal, across restarts. Views
// learn of every change by one notice, after it was committed.
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/storage/rows.h"
#include "core/storage/season_file.h"
#include "core/storage/sqlite/changes.h"
#include "core/support/clock.h"
#include "core/support/result.h"

namespace combwright {

enum class StepKind { Do, Undo, Redo };

/// What an action says of itself for the journal.
struct StepInfo {
    std::string action;  ///< its name, as in `actions`
    std::string line;    ///< its play line, complete
    std::string why;
    std::string sheet;  ///< groups the steps typed on one sheet
};

/// One row of the journal.
struct JournalEntry {
    std::int64_t seq = 0;
    std::string at;  ///< instant, UTC
    StepKind kind = StepKind::Do;
    StepInfo info;
    std::optional<std::int64_t> of;  ///< the step an undo or redo is about
    bool stands = false;             ///< a deed that has not been taken back
};

/// What views are told, once for each step and only after it was committed.
struct Change {
    std::int64_t step = 0;
    std::vector<RowChange> rows;
    bool everything = false;  ///< another program wrote too: read everything again
};

/// A value that a step changed.
struct Revised {
    std::string table;
    std::int64_t id = 0;
    const FieldInfo* field = nullptr;
    Value was;
    Value is;
};

struct StepDone {
    std::int64_t step = 0;  ///< 0 where nothing changed
    Change change;
};

/// A season as one connection sees it.
struct SeasonSeen {
    std::string path;
    std::int64_t step = 0;  ///< the newest of its journal
    std::string digest;     ///< of that step
    std::optional<ReadOnlyWhy> readOnly;
};

class Season {
  public:
    /// Makes a new file. Refused with PathTaken where there is one; throws StorageError.
    static Result<Season> create(const std::string& path, const Clock& clock);
    /// Throws StorageError.
    static Season open(const std::string& path, const Clock& clock,
                       Database::Mode mode = Database::Mode::ReadWrite);
    ~Season();
    Season(Season&&) noexcept;
    Season& operator=(Season&&) noexcept;

    const Read& read() const;
    const Clock& clock() const;
    const std::string& path() const;
    std::optional<ReadOnlyWhy> readOnly() const;
    const std::vector<std::string>& foreignSchema() const;
    const std::optional<std::string>& copyBeforeUpgrade() const;
    /// What the file says of itself where it is no season to go on with.
    const std::optional<CopyMark>& copyMark() const;

    /// Whether the path still leads to the file that was opened. Nothing is written where it does
    /// not, and what is open stays readable and is held still until it does again.
    enum class Standing { Ours, Gone, Replaced };
    Standing standing() const;
    /// A proven copy of what is open, whatever the path leads to now. Refused with PathTaken;
    /// throws StorageError.
    Result<void> copyTo(const std::string& to) const;
    /// Does the deed to a copy nobody sees and throws that away. Throws StorageError.
    void rehearse(const std::function<void(Write&)>& deed) const;
    /// What another thread needs to open this season with a connection of its own. Throws
    /// StorageError(Moved).
    SeasonSeen seen() const;
    /// Opens a season that is open in this program already, for a thread of its own: two of ours on
    /// one file are parted by SQLite's locks like two programs. Throws StorageError, Moved where
    /// the path leads to another file by now.
    static Season openBeside(const SeasonSeen& seen, const Clock& clock, Database::Mode mode);
    /// Tells views to read everything again where another program wrote since the last step or
    /// look. Whether one did.
    bool lookAgain();
    /// Tells views to read everything again after a step that another connection of ours kept.
    void follow(std::int64_t step);

    /// Runs the deed in one transaction and keeps it as one step. A deed that refuses, throws or
    /// changes nothing leaves file and journal as they were.
    Result<StepDone> perform(const StepInfo& info, const std::function<Result<void>(Write&)>& deed);
    /// Several performs in one transaction: all of them or none. Notices come after the commit.
    Result<void> together(const std::function<Result<void>()>& deeds);

    /// Lays a picture into the file for a link that goes with it; no part of the journal. Throws
    /// StorageError.
    Result<void> keepPicture(const Bytes& jpeg);

    /// Takes back the newest step that stands. Refused with NothingToUndo, with MovedOn where later
    /// changes stand on it, and with NotThatStep where `expected` is another.
    Result<StepDone> undo(std::optional<std::int64_t> expected = std::nullopt);
    /// Does again the step taken back last, unless something was done since.
    Result<StepDone> redo();

    /// Newest first; at most `most` rows, all when 0.
    std::vector<JournalEntry> history(std::size_t most = 0) const;
    /// What a step changed in rows that were there, value by value: what it was, what it became.
    std::vector<Revised> revisedBy(std::int64_t step) const;
    std::optional<JournalEntry> nextUndo() const;
    std::optional<JournalEntry> nextRedo() const;

    using Listener = std::function<void(const Change&)>;
    /// Called after every commit until the season is closed.
    void onChange(Listener listener);

    /// Every row of every record as text, in a fixed order: two files with equal dumps hold the
    /// same.
    std::string dump() const;

  private:
    struct Inner;
    explicit Season(std::unique_ptr<Inner> inner);
    std::unique_ptr<Inner> m_inner;
};

}  // namespace combwright
