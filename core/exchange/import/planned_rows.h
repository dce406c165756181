// The rows of a table with what becomes of each. A row is put together when it is asked for: held
// are its place in the text, its verdict, and its line packed, so that a plan of a million rows
// needs a few times its table and no more.
#pragma once

#include <array>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/exchange/import/packed_lines.h"
#include "core/exchange/import/table_read.h"
#include "core/support/refusal.h"

namespace combwright {

enum class RowVerdict {
    WillBeAdded,
    AlreadyThere,  ///< the season has it, the same in every value
    LeftOut,       ///< another weighing of that day counts
    Refused,       ///< cannot be done as it stands
    Asked,         ///< can be read in two ways, or lacks an answer
    ChangedSince,  ///< came in before and was amended or struck here since: it stays as it is
};
/// "will_be_added" …
std::string_view key(RowVerdict verdict);

struct PlannedRow {
    std::size_t line = 0;            ///< of the table, from 1
    std::vector<std::string> cells;  ///< as they were written
    RowVerdict verdict = RowVerdict::WillBeAdded;
    std::optional<Refusal> why;     ///< of a row that is refused
    std::vector<std::string> asks;  ///< of a row that waits for answers
    std::vector<std::string> odd;   ///< what one would ask back; it is kept all the same
    std::string play;               ///< the line of `play` it becomes
};

class PlannedRows {
  public:
    PlannedRows() = default;
    explicit PlannedRows(TableRead table);

    std::size_t size() const { return m_notes.size(); }
    bool empty() const { return m_notes.empty(); }
    PlannedRow operator[](std::size_t row) const;
    /// The same without its line, which is what takes time.
    PlannedRow shown(std::size_t row) const;
    CsvRecord record(std::size_t row) const { return m_table.record(row); }
    std::size_t line(std::size_t row) const { return m_table.rows[row].line; }
    RowVerdict verdict(std::size_t row) const { return m_notes[row].verdict; }
    bool isAsked(std::size_t row) const { return m_notes[row].asks != 0; }
    bool hasPlay(std::size_t row) const { return m_notes[row].play != 0; }
    std::size_t count(RowVerdict verdict) const {
        return m_counts[static_cast<std::size_t>(verdict)];
    }
    std::size_t countOdd() const { return m_odd.size(); }

    /// Lines of `play`, read quickest in the order of the rows.
    class Plays {
      public:
        explicit Plays(const PlannedRows& rows) : m_rows(&rows), m_reader(rows.m_plays) {}
        /// The row's line, good until the next is asked for; only where it has one.
        std::string_view of(std::size_t row) {
            return m_reader.at(m_rows->m_notes[row].play - std::size_t{1});
        }

      private:
        const PlannedRows* m_rows;
        PackedLines::Reader m_reader;
    };

    class Iterator {
      public:
        Iterator(const PlannedRows& rows, std::size_t row)
            : m_rows(&rows), m_plays(rows), m_row(row) {}
        PlannedRow operator*();
        Iterator& operator++() {
            ++m_row;
            return *this;
        }
        bool operator!=(const Iterator& other) const { return m_row != other.m_row; }

      private:
        const PlannedRows* m_rows;
        Plays m_plays;
        std::size_t m_row;
    };
    Iterator begin() const { return {*this, 0}; }
    Iterator end() const { return {*this, size()}; }

    /// For who makes the plan.
    void refuse(std::size_t row, Refusal why);
    void setVerdict(std::size_t row, RowVerdict verdict);
    void ask(std::size_t row, std::string_view ask);
    void setPlay(std::size_t row, std::string_view play);
    void dropPlay(std::size_t row) { m_notes[row].play = 0; }
    void setOdd(std::size_t row, std::vector<std::string> odd);

  private:
    struct Note {
        std::uint32_t play = 0;  ///< its number among the lines, from 1
        std::uint32_t why = 0;   ///< its number among the refusals, from 1
        std::uint16_t asks = 0;  ///< a bit for each of the questions there are
        RowVerdict verdict = RowVerdict::WillBeAdded;
    };
    TableRead m_table;
    std::vector<Note> m_notes;
    std::vector<Refusal> m_whys;
    std::map<std::string, std::uint32_t> m_whyNumbers;  ///< rows are refused for the same reasons
    std::map<std::size_t, std::vector<std::string>> m_odd;
    PackedLines m_plays;
    std::array<std::size_t, 6> m_counts{};  ///< by verdict
};

}  // namespace combwright
