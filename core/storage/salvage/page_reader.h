// The rows of a file that SQLite will not read any more, taken from its bytes: every table's tree
// is walked as far as it holds, and leaves no tree leads to are found by looking at each page.
// Nothing here trusts a number it reads. After the format's own description, "Database File
// Format", sqlite.org, sections 1.3 to 2.1.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <variant>
#include <vector>

#include "core/storage/sqlite/database.h"

namespace combwright {

/// A value as it lies in the file.
using StoredValue = std::variant<std::monostate, std::int64_t, double, std::string, Bytes>;

/// A row as it lies in the file; a column that is the row's number is empty in `values`.
struct StoredRow {
    std::int64_t id = 0;
    std::vector<StoredValue> values;
};

/// A table as the file's own list of tables names it.
struct StoredTable {
    std::string name;
    std::int64_t root = 0;  ///< its first page, from 1
};

/// A leaf to which no tree leads, and what lies on it.
struct LooseLeaf {
    std::int64_t page = 0;
    std::vector<StoredRow> rows;
};

class PageReader {
  public:
    /// All bytes of a file. One that is no such file at all has no pages.
    explicit PageReader(Bytes bytes);

    std::int64_t pages() const { return m_pages; }
    /// What a tree led to and could not be read, by the number of its page.
    const std::set<std::int64_t>& broken() const { return m_broken; }

    /// The tables of the file; none where its first page is lost.
    std::vector<StoredTable> tables();
    /// The rows of a tree in their order, without those on pages that cannot be read. `whole` says
    /// whether there was no such page.
    std::vector<StoredRow> rowsOf(std::int64_t root, bool& whole);
    /// Asked last: every leaf of a table that no tree led to. Pages the file counts as free are
    /// left out where it can be told; else old rows may be among these.
    std::vector<LooseLeaf> looseLeaves();

  private:
    struct Page;
    std::optional<Page> page(std::int64_t number) const;
    bool readLeaf(const Page& page, std::vector<StoredRow>& rows);
    std::optional<StoredRow> readCell(const Page& page, std::size_t at);
    std::optional<Bytes> payload(const Page& page, std::size_t at, std::uint64_t size);
    void markFree();
    std::uint32_t number4(std::size_t at) const;

    Bytes m_bytes;
    std::size_t m_pageSize = 0;
    std::size_t m_usable = 0;  ///< of a page, without what is reserved at its end
    std::int64_t m_pages = 0;
    std::set<std::int64_t> m_seen;
    std::set<std::int64_t> m_broken;
};

}  // namespace combwright
