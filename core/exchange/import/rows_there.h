// Whether what a row tells is in the season already, so that the same table twice adds nothing.
// Some things are told apart by what they are (a hive by its mark, a weighing by hive and day), of
// others there may be several alike (two customers with three jars each), which are counted.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>

#include "core/actions/import_rows.h"

namespace combwright {

enum class RowThere { No, Same, Other, ChangedSince };

class RowsThere {
  public:
    /// Looks at the season before anything of the table is in it.
    explicit RowsThere(const Read& file);
    /// Other: something else stands in the row's place, which an import does not write over.
    /// ChangedSince: the row came in with an import before, and was amended or struck after that.
    /// Asked once for each row, in their order.
    RowThere ask(const Read& file, const ImportLine& line);

  private:
    template <class Record>
    RowThere counted(const Read& file, const Record& record, std::string_view rowsOf);
    std::map<std::string, int> m_alike;  ///< how many such the season had, less those met
    std::optional<std::map<std::string, int>> m_changed;  ///< how they came in; once it is needed
};

}  // namespace combwright
