#include "core/exchange/import/table_read.h"

#include <QByteArray>
#include <QStringDecoder>
#include <algorithm>
#include <array>
#include <utility>

#include "core/exchange/export.h"
#include "core/exchange/import/cell_readings.h"

namespace combwright {
namespace {

constexpr std::size_t mostBytes = std::size_t{64} * 1024 * 1024;
constexpr std::size_t sampledRows = 50;

/// 0x80 to 0x9F of windows-1252; the rest of it is Latin-1. What it leaves open stays what it is.
constexpr std::array<char16_t, 32> upperControls{
    0x20AC, 0x0081, 0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021, 0x02C6, 0x2030, 0x0160,
    0x2039, 0x0152, 0x008D, 0x017D, 0x008F, 0x0090, 0x2018, 0x2019, 0x201C, 0x201D, 0x2022,
    0x2013, 0x2014, 0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0x009D, 0x017E, 0x0178};

/// Decoded piece by piece, for Qt's way leads through a text of twice the size.
constexpr qsizetype pieceBytes = qsizetype{64} * 1024;
constexpr QByteArrayView lineEnd8("\n", 1);
constexpr QByteArrayView littleLineEnd("\n\0", 2);
constexpr QByteArrayView bigLineEnd("\0\n", 2);

void appendWindows1252(QByteArrayView piece, QByteArray& text) {
    QString letters;
    letters.reserve(piece.size());
    for (const char c : piece) {
        const auto byte = static_cast<unsigned char>(c);
        letters += QChar(byte >= 0x80 && byte < 0xA0 ? upperControls[byte - 0x80]
                                                     : static_cast<char16_t>(byte));
    }
    text += letters.toUtf8();
}

QByteArray fromWindows1252(QByteArrayView bytes) {
    QByteArray text;
    text.reserve(bytes.size());
    for (qsizetype at = 0; at < bytes.size(); at += pieceBytes)
        appendWindows1252(bytes.sliced(at, std::min(pieceBytes, bytes.size() - at)), text);
    return text;
}

/// The end of the piece that begins at `at`: behind a line end, which stands within no letter.
qsizetype pieceEnd(QByteArrayView bytes, qsizetype at, QByteArrayView lineEnd) {
    const qsizetype width = lineEnd.size();
    for (qsizetype to = at + pieceBytes; to + width <= bytes.size(); to += width)
        if (bytes.sliced(to, width) == lineEnd) return to + width;
    return bytes.size();
}

/// Takes each piece decoded; whether all of them could be.
template <class Take>
bool eachDecoded(QByteArrayView bytes, QStringDecoder::Encoding as, QByteArrayView lineEnd,
                 Take take) {
    for (qsizetype at = 0; at < bytes.size();) {
        const qsizetype end = pieceEnd(bytes, at, lineEnd);
        QStringDecoder decoder(as, QStringDecoder::Flag::Stateless);
        const QString letters = decoder(bytes.sliced(at, end - at));
        if (decoder.hasError()) return false;
        take(letters);
        at = end;
    }
    return true;
}

std::optional<QByteArray> fromUtf16(QByteArrayView bytes, QStringDecoder::Encoding as) {
    QByteArray text;
    text.reserve(bytes.size() / 2);
    const QByteArrayView lineEnd = as == QStringDecoder::Utf16LE ? littleLineEnd : bigLineEnd;
    const auto append = [&text](const QString& letters) { text += letters.toUtf8(); };
    if (!eachDecoded(bytes, as, lineEnd, append)) return std::nullopt;
    return text;
}

struct Letters {
    std::string encoding;
    QByteArray text;
};

std::optional<Letters> lettersOf(const QByteArray& bytes, const std::optional<std::string>& said) {
    const auto utf16 = [](std::optional<QByteArray> text) {
        return text ? std::optional(Letters{"utf-16", *std::move(text)}) : std::nullopt;
    };
    constexpr QByteArrayView mark8("\xEF\xBB\xBF", 3);
    const QByteArrayView all(bytes);
    if (said == "windows-1252") return Letters{"windows-1252", fromWindows1252(bytes)};
    if (all.startsWith(QByteArrayView("\xFF\xFE", 2)))
        return utf16(fromUtf16(all.sliced(2), QStringDecoder::Utf16LE));
    if (all.startsWith(QByteArrayView("\xFE\xFF", 2)))
        return utf16(fromUtf16(all.sliced(2), QStringDecoder::Utf16BE));
    if (said == "utf-16") return utf16(fromUtf16(all, QStringDecoder::Utf16LE));
    const bool isMarked = all.startsWith(mark8);
    if (eachDecoded(isMarked ? all.sliced(mark8.size()) : all, QStringDecoder::Utf8, lineEnd8,
                    [](const QString&) {}))
        // What is UTF-8 stays the bytes it came in, without a copy.
        return Letters{"utf-8", isMarked ? bytes.mid(mark8.size()) : bytes};
    if (isMarked || said) return std::nullopt;
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

CsvRecord TableRead::record(std::size_t row) const {
    CsvRecord record;
    CsvReader reader({text.constData(), static_cast<std::size_t>(text.size())}, parter,
                     rows[row].byte, rows[row].line);
    reader.next(record);
    for (std::string& cell : record.cells) cell = unguarded(std::move(cell));
    return record;
}

namespace {

/// What its first rows tell; a text that holds what no text holds is none.
Result<TableRead> lookedAt(Letters letters, const TableGiven& given, KnowsHeading knows,
                           const void* about) {
    if (letters.text.contains('\0')) return Refusal{Code::WrongType, "file", {{"wanted", "CSV"}}};
    TableRead table;
    table.encoding = std::move(letters.encoding);
    table.text = std::move(letters.text);
    const std::string_view text(table.text.constData(),
                                static_cast<std::size_t>(table.text.size()));
    table.parter = given.parter.value_or(parterOf(text, knows, about));
    CsvReader reader(text, table.parter);
    CsvRecord first;
    do
        if (!reader.next(first)) return Refusal{Code::Missing, "file", {}};
    while (isBlankRow(first));
    for (std::string& cell : first.cells) cell = unguarded(std::move(cell));
    table.header = given.header.value_or(looksLikeHeadings(first, knows, about));
    if (table.header)
        table.headings = std::move(first.cells);
    else
        table.headings.resize(first.cells.size());
    return table;
}

void nameHeadings(std::vector<std::string>& headings) {
    for (std::size_t i = 0; i < headings.size(); ++i) {
        std::string& heading = headings[i];
        heading = std::string(trimmedCell(heading));
        if (heading.empty()) heading = "column " + std::to_string(i + 1);
    }
}

}  // namespace

Result<TableRead> readTable(const QByteArray& bytes, const TableGiven& given, KnowsHeading knows,
                            const void* about, Progress* progress) {
    if (static_cast<std::size_t>(bytes.size()) > mostBytes)
        return Refusal{Code::TooMany, "file", {{"most", "64"}, {"name", "MB"}}};
    auto letters = lettersOf(bytes, given.encoding);
    if (!letters) return Refusal{Code::WrongType, "encoding", {{"wanted", "utf-8"}}};
    auto looked = lookedAt(*std::move(letters), given, knows, about);
    if (!looked) return looked.error();
    TableRead table = *std::move(looked);
    // No more than there are lines, and not doubled again and again.
    table.rows.reserve(
        static_cast<std::size_t>(std::max(table.text.count('\n'), table.text.count('\r'))) + 1);
    CsvReader reader({table.text.constData(), static_cast<std::size_t>(table.text.size())},
                     table.parter);
    bool isFirst = true;
    for (CsvRecord record; reader.next(record);) {
        if (progress && !progress->advance(0)) return Refusal{Code::Stopped, {}, {}};
        if (isBlankRow(record)) continue;
        if (std::exchange(isFirst, false) && table.header) continue;
        if (!table.header && !record.brokenQuotes && record.cells.size() > table.headings.size())
            table.headings.resize(record.cells.size());
        table.rows.push_back(
            {static_cast<std::uint32_t>(reader.begins()), static_cast<std::uint32_t>(record.line)});
    }
    nameHeadings(table.headings);
    return table;
}

Result<TableRead> readHeadings(const QByteArray& bytes, const TableGiven& given, KnowsHeading knows,
                               const void* about) {
    // Up to a line end; where the letters change behind it, that changes no heading.
    const QByteArrayView lineEnd = bytes.startsWith("\xFF\xFE")   ? littleLineEnd
                                   : bytes.startsWith("\xFE\xFF") ? bigLineEnd
                                   : given.encoding == "utf-16"   ? littleLineEnd
                                                                  : lineEnd8;
    const QByteArray head = bytes.left(pieceEnd(bytes, 0, lineEnd));
    auto letters = lettersOf(head, given.encoding);
    if (!letters) return Refusal{Code::WrongType, "encoding", {{"wanted", "utf-8"}}};
    auto table = lookedAt(*std::move(letters), given, knows, about);
    if (table) nameHeadings(table->headings);
    return table;
}

}  // namespace combwright
