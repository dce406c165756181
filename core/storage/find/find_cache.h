// The words of a season, gathered in a file of their own so that a million rows are looked through
// between two keystrokes. It is no record: it lies in the person's cache folder, never beside a
// season, may be deleted at any time, and is made anew where it is absent, damaged, of an older
// program or of another season. It follows the season's journal, so every deed, undo and import
// reaches it by one way.
#pragma once

#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/storage/find/find_tables.h"
#include "core/storage/rows.h"
#include "core/units/day.h"

namespace combwright {

/// A row that was found.
struct FoundRow {
    /// What it was found by: its whole mark, the beginning of its mark, a word of it.
    enum class By { Mark, MarkBegins, Words };
    By by = By::Words;
    FindKind kind = FindKind::Note;
    std::string_view table;
    std::int64_t row = 0;
    std::optional<Day> on;
    std::string mark;
    std::vector<std::string> said;   ///< its own words, a text each
    std::vector<std::string> about;  ///< the marks of what it is of
    std::vector<std::string> sorts;  ///< its choices as they are kept: "swarm"
};

/// All of one kind, the best first: whole marks, then marks that begin so, then words; newer first
/// in each.
struct FoundKind {
    FindKind kind = FindKind::Note;
    std::vector<FoundRow> found;
    bool more = false;  ///< there are others
};

class FindCache {
  public:
    /// Where there is nothing usable at the path, the cache begins empty. Where nothing can be
    /// written there, or at ":memory:", it lives as long as this does.
    explicit FindCache(std::string path);
    ~FindCache();
    FindCache(FindCache&&) noexcept;
    FindCache& operator=(FindCache&&) noexcept;

    /// The cache's file of a season, in the person's cache folder.
    static std::string pathFor(const std::string& season);
    static std::string pathFor(const std::string& season, const std::string& folder);

    /// Brings it up to the season, in pieces of some milliseconds; `rest` is asked between them
    /// whether to leave off. Whether it is up to the season: else call again. Throws StorageError
    /// where the season cannot be read.
    bool bringUp(const Read& season, const std::function<bool()>& rest);
    void bringUp(const Read& season);
    /// Whether it holds all of the season as it is now.
    bool isUpTo(const Read& season) const;
    /// How far the gathering is, 0 to 1; 1 where none goes on.
    double gathered() const;

    /// What is found by all of these words, each as the beginning of one; accents and case do not
    /// count, nor does anything but letters and digits. At most so many of each kind.
    std::vector<FoundKind> ask(std::string_view typed, std::size_t mostOfKind);
    /// What is written down of a day.
    std::vector<FoundKind> ofDay(Day day, std::size_t mostOfKind);

    std::int64_t rows() const;
    /// All it holds as text, in a fixed order; empty where its index and its rows are not one.
    std::string dump() const;
    const std::string& path() const;

  private:
    struct Inner;
    std::unique_ptr<Inner> m_inner;
};

/// The words of a text as they are compared: "Möhring-Süd 27-2" is mohring, sud, 27, 2. Not more
/// than `most`, none longer than forty letters.
std::vector<std::string> findWords(std::string_view text, std::size_t most = 8);

}  // namespace combwright
