#include "core/catalogue/csv_table.h"

#include <csv.h>

#include <algorithm>
#include <new>
#include <utility>

namespace combwright {
namespace {

using CsvRow = std::vector<std::string>;

/// libcsv's parser, freed however reading ends.
class CsvParser {
  public:
    CsvParser() {
        if (csv_init(&m_parser, CSV_STRICT | CSV_STRICT_FINI) != 0) throw std::bad_alloc();
    }
    ~CsvParser() { csv_free(&m_parser); }
    CsvParser(const CsvParser&) = delete;
    CsvParser& operator=(const CsvParser&) = delete;

    /// Every row; false where the quotes are wrong, the rows before that kept.
    bool read(std::string_view text) {
        const std::size_t used =
            csv_parse(&m_parser, text.data(), text.size(), &CsvParser::cell, &CsvParser::row, this);
        if (used != text.size() && csv_error(&m_parser) == CSV_ENOMEM) throw std::bad_alloc();
        return used == text.size() &&
               csv_fini(&m_parser, &CsvParser::cell, &CsvParser::row, this) == 0;
    }
    std::vector<CsvRow>& rows() { return m_rows; }

  private:
    static void cell(void* text, std::size_t length, void* self) {
        static_cast<CsvParser*>(self)->m_current.emplace_back(static_cast<const char*>(text),
                                                              length);
    }
    static void row(int, void* self) {
        auto* parser = static_cast<CsvParser*>(self);
        parser->m_rows.push_back(std::exchange(parser->m_current, {}));
    }

    csv_parser m_parser{};
    CsvRow m_current;
    std::vector<CsvRow> m_rows;
};

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

    CsvParser parser;
    const bool quotesGood = parser.read(text);
    auto& read = parser.rows();
    if (!quotesGood)
        return Refusal{Code::WrongType, rowName(read.size()), {{"wanted", "closed quotes"}}};
    if (read.empty()) return Refusal{Code::Missing, "header", {}};

    CsvTable table{std::move(read.front()), {}};
    for (std::size_t i = 1; i < read.size(); ++i) {
        if (read[i].size() != table.header.size())
            return Refusal{Code::WrongType,
                           rowName(i),
                           {{"wanted", std::to_string(table.header.size())},
                            {"value", std::to_string(read[i].size())}}};
        table.rows.push_back(std::move(read[i]));
    }
    return table;
}

}  // namespace combwright
