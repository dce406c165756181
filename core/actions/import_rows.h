// Rows out of a table, as one step: each row is a line of `play`, all of them are one row of the
// journal, and so one step back takes the whole import out again; weeks later too, while nothing
// stands on what came in.
#pragma once

#include <functional>
#include <string_view>

#include "core/actions/action.h"
#include "core/support/progress.h"

namespace combwright {

/// Performs the lines in their order, all of them or none. Each names its day. Refused as the line
/// that is refused, with the number of the line among them as "import_line"; with Missing for no
/// lines or a line without "on", OtherAction under "lines" for a line that imports or takes back.
struct ImportRows {
    static constexpr std::string_view name = "import-rows";
    using Answer = Made;
    Day on;
    Name rowsOf;           ///< what the table told of: "weights"
    std::string fileName;  ///< of the table, for history
    std::string lines;     ///< one line of `play` a line
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// The same deed with its lines told one after the other, for they may be a million and are needed
/// in one piece by nobody: `lines` gives each to what takes it, until that says no, and is asked
/// twice. Returns the step. Refused as ImportRows, and with Stopped.
using LineTaker = std::function<bool(std::string_view line)>;
Result<std::int64_t> performEach(Season& season, const ImportRows& head,
                                 const std::function<void(const LineTaker&)>& lines,
                                 Progress& progress);

/// Takes an import that stands back, also where other steps were done since. Refused with NotFound
/// for a step there is not, or that was taken back; OtherAction for one that is no import; MovedOn
/// where later changes stand on it, or where the file would no longer agree with itself.
struct TakeBackImport {
    static constexpr std::string_view name = "take-back-import";
    using Answer = Made;
    Day on;
    Count step;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// One line of `play` that an import may hold, read. Refused as ImportRows.
struct ImportLine {
    const ActionType* type = nullptr;
    Row row;
};
Result<ImportLine> readImportLine(const Read& file, std::string_view line);

}  // namespace combwright
