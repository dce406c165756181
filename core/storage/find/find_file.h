// The cache's file itself: its tables, its rows and the place in the season's journal up to which
// they hold. What is gathered and asked stands beside it.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/storage/find/find_ids.h"
#include "core/storage/rows.h"

namespace combwright {

/// Behind every text that begins alike.
inline constexpr std::string_view lastLetter = "\xF4\x8F\xBF\xBF";
/// The index keeps the beginnings of words up to so many letters.
inline constexpr std::size_t indexedLetters = 4;

/// How far a season's journal goes.
struct FindPlace {
    std::int64_t step = 0;  ///< 0: nothing was done yet
    std::string digest;     ///< of that step, which no other season shares
    std::int64_t schema = 0;
    /// Up to this step rows were read while others were written: what refers to a changed row is
    /// read again, whether the row's mark changed or not.
    std::int64_t loose = 0;
    bool operator==(const FindPlace& other) const {
        return step == other.step && digest == other.digest && schema == other.schema;
    }
};

/// What is kept of one row.
struct FindDoc {
    std::int64_t id = 0;
    std::string mark;
    std::string said;
    std::string about;
    std::string sort;
    bool operator==(const FindDoc&) const = default;
};

class FindFile {
  public:
    /// An empty one where there is nothing usable; throws StorageError where none can be made.
    explicit FindFile(const std::string& path);

    const Database& database() const { return m_database; }
    Statement& prepared(std::string_view sql) const { return m_prepared(sql); }

    /// None while the season is being gathered.
    std::optional<FindPlace> place() const;
    void setPlace(const FindPlace& place);

    std::optional<FindDoc> docOf(int table, std::int64_t row) const;
    std::optional<FindDoc> doc(std::int64_t id) const;
    /// With its mark; its words too where `withWords`.
    void add(const FindDoc& doc, bool withWords);
    void remove(const FindDoc& doc);
    /// The words of the next rows behind `id` that were added without; the last of them, none where
    /// there are no more.
    std::optional<std::int64_t> addWordsAfter(std::int64_t id, int most);
    /// The words the index has behind that one, into the list of all words; likewise.
    std::optional<std::string> addTermsAfter(const std::string& word, int most);
    /// Words that begin so.
    std::vector<std::string> termsFrom(const std::string& beginning, int most) const;
    /// A part of the work of making one index out of several; false when there is none left.
    bool mergeSome();

    /// Quick while everything can be begun anew, safe from then on.
    void beQuick(bool quick) const;

  private:
    Database m_database;
    mutable Prepared m_prepared;
    bool m_merging = false;
};

/// Removes a cache's file and what SQLite may have left beside it.
void removeFindFile(const std::string& path);

/// Where a season's journal ends now.
FindPlace findPlaceOf(const Read& season);

/// The row as it is found now; nothing where it is gone or says nothing.
std::optional<FindDoc> findDocOf(const Read& season, int table, std::int64_t row);
/// The same of the row a question of findQuestion stands on; its number goes into `row`.
std::optional<FindDoc> findDocHere(const Statement& question, int table, std::int64_t& row);

}  // namespace combwright
