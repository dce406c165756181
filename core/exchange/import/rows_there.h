// Whether what a row tells is in the season already, so that the same table twice adds nothing.
// Some things are told apart by what they are (a hive by its mark, a weighing by hive and day), of
// others there may be several alike (two customers with three jars each), which are counted.
#pragma once

#include <map>
#include <string>

#include "core/actions/import_rows.h"

namespace combwright {

enum class RowThere { No, Same, Other };

class RowsThere {
  public:
    /// Looks at the season before anything of the table is in it.
    explicit RowsThere(const Read& file);
    /// Other: something else stands in the row's place, which an import does not write over.
    /// Asked once for each row, in their order.
    RowThere ask(const Read& file, const ImportLine& line);

  private:
    RowThere counted(const std::string& alike);
    std::map<std::string, int> m_alike;  ///< how many such the season had, less those met
};

}  // namespace combwright
