#include "core/catalogue/csv_records.h"

#include <csv.h>

#include <algorithm>
#include <new>
#include <utility>

namespace combwright {
namespace {

/// Blanks belong to a cell (RFC 4180, section 2, rule 4); libcsv would take them off.
int neverBlank(unsigned char) { return 0; }

/// libcsv's parser, freed however reading ends.
class CsvParser {
  public:
    explicit CsvParser(char parter) {
        if (csv_init(&m_parser, CSV_STRICT | CSV_STRICT_FINI) != 0) throw std::bad_alloc();
        csv_set_delim(&m_parser, static_cast<unsigned char>(parter));
        csv_set_space_func(&m_parser, &neverBlank);
    }
    ~CsvParser() { csv_free(&m_parser); }
    CsvParser(const CsvParser&) = delete;
    CsvParser& operator=(const CsvParser&) = delete;

    /// False where the quotes are wrong.
    bool take(std::string_view text) {
        const std::size_t used =
            csv_parse(&m_parser, text.data(), text.size(), &CsvParser::cell, &CsvParser::row, this);
        if (used != text.size() && csv_error(&m_parser) == CSV_ENOMEM) throw std::bad_alloc();
        return used == text.size();
    }
    bool end() { return csv_fini(&m_parser, &CsvParser::cell, &CsvParser::row, this) == 0; }

    bool hasRow() const { return m_hasRow; }
    std::vector<std::string> takeRow() {
        m_hasRow = false;
        return std::exchange(m_cells, {});
    }

  private:
    static void cell(void* text, std::size_t length, void* self) {
        static_cast<CsvParser*>(self)->m_cells.emplace_back(static_cast<const char*>(text), length);
    }
    static void row(int, void* self) { static_cast<CsvParser*>(self)->m_hasRow = true; }

    csv_parser m_parser{};
    std::vector<std::string> m_cells;
    bool m_hasRow = false;
};

/// The length of the first line with its end: LF, CR or both.
std::size_t lineLength(std::string_view text) {
    const std::size_t end = text.find_first_of("\r\n");
    if (end == std::string_view::npos) return text.size();
    const bool both = text[end] == '\r' && end + 1 < text.size() && text[end + 1] == '\n';
    return end + (both ? 2 : 1);
}

std::string withoutEnd(std::string_view line) {
    while (!line.empty() && (line.back() == '\r' || line.back() == '\n')) line.remove_suffix(1);
    return std::string(line);
}

}  // namespace

/// Whether there was a row at this place; a blank line is none.
bool CsvReader::take(CsvRecord& record) {
    // Given line by line, so that a row that ends is known to end on this one.
    CsvParser parser(m_parter);
    m_begins = m_at;
    const std::size_t firstLine = m_line;
    bool good = true;
    while (m_at < m_text.size() && good && !parser.hasRow()) {
        const std::string_view next = m_text.substr(m_at, lineLength(m_text.substr(m_at)));
        good = parser.take(next);
        m_at += next.size();
        ++m_line;
        if (m_at == m_begins + next.size() && withoutEnd(next).empty()) break;  // a blank line
    }
    if (good && m_at == m_text.size() && !parser.hasRow()) good = parser.end();
    if (good) {
        if (!parser.hasRow()) return false;
        record = {firstLine, parser.takeRow(), false};
        return true;
    }
    // Only its first line is lost: what follows is read as if the quotes had been right.
    const std::string_view first = m_text.substr(m_begins, lineLength(m_text.substr(m_begins)));
    record = {firstLine, {withoutEnd(first)}, true};
    m_at = m_begins + first.size();
    m_line = firstLine + 1;
    return true;
}

bool CsvReader::next(CsvRecord& record) {
    while (m_at < m_text.size())
        if (take(record)) return true;
    return false;
}

std::vector<CsvRecord> readCsvRecords(std::string_view text, char parter, std::size_t most) {
    std::vector<CsvRecord> records;
    CsvReader reader(text, parter);
    for (CsvRecord record; (!most || records.size() < most) && reader.next(record);)
        records.push_back(std::move(record));
    return records;
}

}  // namespace combwright
