// One of the trade tables compiled into the program, read row by row. The tables are ours and
// checked by tests, so a cell that is not what its column holds is a mistake of the program and
// thrown, not refused.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/catalogue/csv_table.h"
#include "core/units/length.h"

namespace combwright {

class ResourceTable;

/// One row, asked by column name. A blank cell is nothing: not known, never zero.
class ResourceRow {
  public:
    std::string text(std::string_view column) const;
    std::optional<double> number(std::string_view column) const;
    /// Millimetres in the table, kept to the tenth.
    std::optional<Length> length(std::string_view column) const;

  private:
    friend class ResourceTable;
    ResourceRow(const ResourceTable& table, std::size_t at) : m_table(&table), m_at(at) {}

    const ResourceTable* m_table;
    std::size_t m_at;
};

class ResourceTable {
  public:
    /// The table of that name, ":/combwright/trade/<name>.csv". Throws std::logic_error where it
    /// was not compiled in or is no table.
    explicit ResourceTable(std::string_view name);

    std::vector<ResourceRow> rows() const;

  private:
    friend class ResourceRow;
    const std::string& cell(std::size_t row, std::string_view column) const;

    std::string m_name;
    CsvTable m_table;
};

}  // namespace combwright
