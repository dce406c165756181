// The journal's rows: what was done, whether it still stands, and a digest that chains each row to
// the one before, so that a silent change of the past shows.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/storage/season.h"
#include "core/storage/sqlite/database.h"

namespace combwright {

/// A row of the journal with all it holds.
struct WholeStep {
    JournalEntry entry;
    std::int64_t stands = 0;  ///< as the file has it
    Bytes changes;
    std::string digest;
};
/// The digest of a row that comes behind one of digest `previous`, which is empty for the first.
std::string chainedDigest(const std::string& previous, const JournalEntry& entry,
                          const Bytes& changes);
/// The kind a row is written with: "do", "undo", "redo".
std::optional<StepKind> stepKindOf(std::string_view text);

class Journal {
  public:
    explicit Journal(const Database& database) : m_database(&database), m_prepared(database) {}

    /// Appends a deed; every step taken back before it is given up. Returns its number.
    std::int64_t appendDo(const std::string& at, const StepInfo& info, const Bytes& changes);
    /// Appends the undoing (or redoing) of a step and turns that step over.
    std::int64_t appendTurn(StepKind kind, const std::string& at, const JournalEntry& of,
                            const Bytes& changes);

    std::optional<JournalEntry> newestStanding() const;
    std::optional<JournalEntry> oldestTakenBack() const;
    /// One row; nothing where there is none of that number.
    std::optional<JournalEntry> entry(std::int64_t seq) const;
    Bytes changesOf(std::int64_t seq) const;
    /// Newest first; all when `most` is 0.
    std::vector<JournalEntry> entries(std::size_t most) const;
    /// Deeds that stand and wrote a line of a hive called so, by its mark or its number ("#12"),
    /// newest first. Of a very long mark also those that begin alike.
    std::vector<JournalEntry> linesSaidOf(std::string_view hive) const;
    /// The number of the newest row; 0 without one.
    std::int64_t newest() const;
    /// The newest row written by that instant, by its number; a clock that jumped may have given
    /// an older row a later one.
    std::int64_t newestUpTo(std::string_view at) const;
    /// The row's digest; empty where there is none of that number.
    std::string digestOf(std::int64_t seq) const;
    /// The newest row both journals have: their digests chain, so all before are alike too. 0 where
    /// they have none in common.
    std::int64_t lastCommon(const Journal& other) const;
    /// A row as another file had it, number and all.
    void putWhole(const WholeStep& step);
    /// In a copy that was walked back: the rows after `seq` were never written, and what stands is
    /// what stood then.
    void forgetAfter(std::int64_t seq);
    /// The first row whose digest does not follow from the rows before; nothing when all do.
    std::optional<std::int64_t> firstBroken() const;

  private:
    std::int64_t append(StepKind kind, const std::string& at, const StepInfo& info,
                        std::optional<std::int64_t> of, int stands, const Bytes& changes);
    void put(const Value& seq, const std::string& at, StepKind kind, const StepInfo& info,
             std::optional<std::int64_t> of, std::int64_t stands, const Bytes& changes,
             const std::string& digest);
    const Database* m_database;
    Prepared m_prepared;  ///< what every step needs
};

}  // namespace combwright
