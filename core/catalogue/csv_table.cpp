#include "core/catalogue/csv_table.h"

#include <algorithm>
#include <utility>

#include "core/catalogue/csv_records.h"

namespace combwright {
namespace {

std::string rowName(std::size_t number) { return "row " + std::to_string(number); }

}  // namespace

std::optional<std::size_t> CsvTable::column(std::string_view name) const {
    const auto found = std::find(header.begin(), header.end(), name);
    if (found == header.end()) return std::nullopt;
    return static_cast<std::size_t>(found - header.begin());
}

Result<CsvTable> readCsv(std::string_view text) {
    constexpr std::string_view byteOrderMark = "\xEF\xBB\xBF";
    if (text.starts_with(byteOrderMark)) text.remove_prefix(byteOrderMark.size());

    auto read = readCsvRecords(text);
    for (std::size_t i = 0; i < read.size(); ++i)
        if (read[i].brokenQuotes)
            return Refusal{Code::WrongType, rowName(i), {{"wanted", "closed quotes"}}};
    if (read.empty()) return Refusal{Code::Missing, "header", {}};

    CsvTable table{std::move(read.front().cells), {}};
    for (std::size_t i = 1; i < read.size(); ++i) {
        if (read[i].cells.size() != table.header.size())
            return Refusal{Code::WrongType,
                           rowName(i),
                           {{"wanted", std::to_string(table.header.size())},
                            {"value", std::to_string(read[i].cells.size())}}};
        table.rows.push_back(std::move(read[i].cells));
    }
    return table;
}

}  // namespace combwright
