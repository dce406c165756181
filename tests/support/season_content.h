// What a season says, apart from the numbers its rows happen to have: two files of equal content
// hold the same, whichever wrote what down first.
#pragma once

#include <algorithm>
#include <map>
#include <string>
#include <vector>

#include "core/model/records.h"
#include "core/storage/rows.h"

namespace combwright::test {

class SeasonContent {
  public:
    explicit SeasonContent(const Read& file) {
        for (const RecordType& type : recordTypes())
            for (Row& row : file.rows(type.table, type.fields(), {}))
                m_rows[std::string(type.table)][std::get<std::int64_t>(row.front())] =
                    std::move(row);
    }
    /// A line a row, sorted.
    std::string text() {
        std::vector<std::string> lines;
        for (const RecordType& type : recordTypes())
            for (const auto& [id, row] : m_rows[std::string(type.table)])
                lines.push_back(std::string(type.table) + said(type, id));
        std::sort(lines.begin(), lines.end());
        std::string all;
        for (const std::string& line : lines) all += line + '\n';
        return all;
    }

  private:
    std::string said(const RecordType& type, std::int64_t id) {
        const auto at = std::pair(std::string(type.table), id);
        if (const auto known = m_said.find(at); known != m_said.end()) return known->second;
        m_said[at] = "(itself)";
        std::string text;
        const Row& row = m_rows[at.first][id];
        for (std::size_t i = 1; i < row.size(); ++i) {
            text += '|';
            if (const auto* words = std::get_if<std::string>(&row[i])) text += *words;
            const auto* number = std::get_if<std::int64_t>(&row[i]);
            if (!number) continue;
            const FieldInfo& field = type.fields()[i];
            text += field.kind == Kind::Reference
                        ? "<" + said(*findRecordType(field.refersTo), *number) + ">"
                        : std::to_string(*number);
        }
        return m_said[at] = text;
    }

    std::map<std::string, std::map<std::int64_t, Row>> m_rows;
    std::map<std::pair<std::string, std::int64_t>, std::string> m_said;
};

inline std::string contentOf(const Read& file) { return SeasonContent(file).text(); }

}  // namespace combwright::test
