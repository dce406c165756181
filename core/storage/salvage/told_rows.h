// What the journal tells of every row: each step's changes say what they made of it, so that the
// records are in a file twice. What one place lost the other may still have, and where they differ
// something was changed behind the journal's back.
#pragma once

#include <functional>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>

#include "core/storage/rows.h"

namespace combwright {

class ToldRows {
  public:
    /// A row that was there before the first step.
    void begin(std::string_view table, const Row& row);
    /// Takes the next step's changes in; of steps in their order. Throws StorageError for bytes
    /// that are no changes; what was taken in before stays.
    void take(const Database& any, const Bytes& changes);

    enum class Told {
        Nothing,  ///< no step speaks of it
        Gone,     ///< it was removed
        Partly,   ///< changed, and what it was before is not known
        Whole
    };
    Told of(std::string_view table, std::int64_t id) const;
    /// The row in its table's order of columns; of one that is Whole.
    Row row(std::string_view table, std::int64_t id) const;
    /// Every row of a table that is Whole, by its number.
    void each(std::string_view table,
              const std::function<void(std::int64_t, const Row&)>& see) const;
    /// The highest number ever given in a table; 0 without one.
    std::int64_t highest(std::string_view table) const;
    /// Whether it was there before the first step, and no step speaks of it.
    bool isAsBegun(std::string_view table, std::int64_t id) const;
    bool isGone(std::string_view table, std::int64_t id) const {
        return of(table, id) == Told::Gone;
    }

  private:
    struct Table {
        std::map<std::int64_t, std::string> rows;  ///< packed: a book of years has a million
        std::set<std::int64_t> gone;
        std::set<std::int64_t> asBegun;
    };
    Table& tableOf(std::string_view name);
    const std::string* packed(std::string_view table, std::int64_t id) const;
    std::map<std::string, Table, std::less<>> m_tables;
};

/// Whether two rows say the same. A row written before its table had its last columns is shorter;
/// what it does not have is unknown.
bool saySame(const Row& one, const Row& other);

}  // namespace combwright
