#include "core/exchange/import/table_read.h"

#include <QByteArray>
#include <QStringDecoder>
#include <algorithm>
#include <array>

#include "core/exchange/export.h"
#include "core/exchange/import/cell_readings.h"

namespace combwright {
namespace {

constexpr std::size_t mostBytes = 64 * 1024 * 1024;
constexpr std::size_t sampledRows = 50;

/// 0x80 to 0x9F of windows-1252; the rest of it is Latin-1. What it leaves open stays what it is.
constexpr std::array<char16_t, 32> upperControls{
    0x20AC, 0x0081, 0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021, 0x02C6, 0x2030, 0x0160,
    0x2039, 0x0152, 0x008D, 0x017D, 0x008F, 0x0090, 0x2018, 0x2019, 0x201C, 0x201D, 0x2022,
    0x2013, 0x2014, 0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0x009D, 0x017E, 0x0178};

QByteArrayView viewOf(std::string_view bytes) {
    return {bytes.data(), static_cast<qsizetype>(bytes.size())};
}

std::string fromWindows1252(std::string_view bytes) {
    QString text;
    text.reserve(static_cast<qsizetype>(bytes.size()));
    for (const char c : bytes) {
        const auto byte = static_cast<unsigned char>(c);
        text += QChar(byte >= 0x80 && byte < 0xA0 ? upperControls[byte - 0x80]
                                                  : static_cast<char16_t>(byte));
    }
    return text.toStdString();
}

std::optional<std::string> decoded(std::string_view bytes, QStringDecoder::Encoding as) {
    QStringDecoder decoder(as, QStringDecoder::Flag::Stateless);
    const QString text = decoder(viewOf(bytes));
    if (decoder.hasError()) return std::nullopt;
    return text.toStdString();
}

struct Letters {
    std::string encoding;
    std::string text;
};

std::optional<Letters> lettersOf(std::string_view bytes, const std::optional<std::string>& said) {
    const auto as = [](const char* name, std::optional<std::string> text) {
        return text ? std::optional(Letters{name, *std::move(text)}) : std::nullopt;
    };
    constexpr std::string_view mark8 = "\xEF\xBB\xBF";
    constexpr std::string_view markLittle = "\xFF\xFE";
    constexpr std::string_view markBig = "\xFE\xFF";
    if (said == "windows-1252") return Letters{"windows-1252", fromWindows1252(bytes)};
    if (bytes.starts_with(markLittle))
        return as("utf-16", decoded(bytes.substr(2), QStringDecoder::Utf16LE));
    if (bytes.starts_with(markBig))
        return as("utf-16", decoded(bytes.substr(2), QStringDecoder::Utf16BE));
    if (said == "utf-16") return as("utf-16", decoded(bytes, QStringDecoder::Utf16LE));
    if (bytes.starts_with(mark8))
        return as("utf-8", decoded(bytes.substr(mark8.size()), QStringDecoder::Utf8));
    if (auto text = decoded(bytes, QStringDecoder::Utf8)) return as("utf-8", std::move(text));
    if (said) return std::nullopt;
    return Letters{"windows-1252", fromWindows1252(bytes)};
}

bool isBlankRow(const CsvRecord& record) {
    return std::all_of(record.cells.begin(), record.cells.end(),
                       [](const std::string& cell) { return trimmedCell(cell).empty(); });
}

/// The sign that parts the most rows into as many cells as the first, and into more than one.
char parterOf(std::string_view text, KnowsHeading knows, const void* about) {
    char best = ',';
    std::array<std::size_t, 3> bestScore{};
    // Where two do alike, the comma stands in numbers: who parts by it writes no decimals with it.
    for (const char parter : {';', '\t', '|', ','}) {
        const auto records = readCsvRecords(text, parter, sampledRows);
        if (records.empty() || records.front().cells.size() < 2) continue;
        const std::size_t wide = records.front().cells.size();
        std::array<std::size_t, 3> score{};
        for (const std::string& cell : records.front().cells)
            if (knows(trimmedCell(cell), about)) ++score[0];
        for (const CsvRecord& record : records)
            if (!record.brokenQuotes && record.cells.size() == wide) ++score[1];
        score[2] = wide;
        if (score <= bestScore) continue;
        best = parter;
        bestScore = score;
    }
    return best;
}

bool looksLikeHeadings(const CsvRecord& first, KnowsHeading knows, const void* about) {
    if (first.brokenQuotes) return false;
    bool digits = false;
    for (const std::string& cell : first.cells) {
        if (knows(trimmedCell(cell), about)) return true;
        digits = digits || cell.find_first_of("0123456789") != std::string::npos;
    }
    return !digits;
}

}  // namespace

std::string unguarded(std::string text) {
    if (text.size() > 1 && text.front() == '\'' && isFormulaSign(text[1])) text.erase(0, 1);
    return text;
}

Result<TableRead> readTable(std::string_view bytes, const TableGiven& given, KnowsHeading knows,
                            const void* about) {
    if (bytes.size() > mostBytes)
        return Refusal{Code::TooMany, "file", {{"most", "64"}, {"name", "MB"}}};
    auto letters = lettersOf(bytes, given.encoding);
    if (!letters) return Refusal{Code::WrongType, "encoding", {{"wanted", "utf-8"}}};
    if (letters->text.find('\0') != std::string::npos)
        return Refusal{Code::WrongType, "file", {{"wanted", "CSV"}}};
    TableRead table;
    table.encoding = letters->encoding;
    table.parter = given.parter.value_or(parterOf(letters->text, knows, about));
    auto records = readCsvRecords(letters->text, table.parter);
    std::erase_if(records, isBlankRow);
    if (records.empty()) return Refusal{Code::Missing, "file", {}};
    for (CsvRecord& record : records)
        for (std::string& cell : record.cells) cell = unguarded(std::move(cell));
    table.header = given.header.value_or(looksLikeHeadings(records.front(), knows, about));
    std::size_t wide = records.front().cells.size();
    if (table.header) {
        table.headings = std::move(records.front().cells);
        records.erase(records.begin());
    } else {
        for (const CsvRecord& record : records)
            if (!record.brokenQuotes) wide = std::max(wide, record.cells.size());
        table.headings.resize(wide);
    }
    for (std::size_t i = 0; i < table.headings.size(); ++i) {
        std::string& heading = table.headings[i];
        heading = std::string(trimmedCell(heading));
        if (heading.empty()) heading = "column " + std::to_string(i + 1);
    }
    table.rows = std::move(records);
    return table;
}

}  // namespace combwright
