#include "core/exchange/import/planned_rows.h"

#include <algorithm>
#include <array>
#include <utility>

namespace combwright {
namespace {

/// Everything that may be asked of a row, in the order in which a row lists it.
constexpr auto askWords = std::to_array<std::string_view>(
    {"columns", "decimal", "dates", "unit", "of_day", "day", "yard", "origin", "add_yards"});

std::string textOfWhy(const Refusal& why) {
    std::string text = std::string(key(why.code)) + '\n' + why.field;
    for (const auto& [name, value] : why.values) text += '\n' + name + '=' + value;
    return text;
}

}  // namespace

std::string_view key(RowVerdict verdict) {
    static constexpr auto keys = std::to_array<std::string_view>(
        {"will_be_added", "already_there", "left_out", "refused", "asked", "changed_since"});
    return keys[static_cast<std::size_t>(verdict)];
}

PlannedRows::PlannedRows(TableRead table) : m_table(std::move(table)) {
    m_notes.resize(m_table.rows.size());
    m_counts[static_cast<std::size_t>(RowVerdict::WillBeAdded)] = m_notes.size();
}

PlannedRow PlannedRows::shown(std::size_t row) const {
    const Note& note = m_notes[row];
    PlannedRow planned;
    planned.line = line(row);
    planned.cells = record(row).cells;
    planned.verdict = note.verdict;
    if (note.why) planned.why = m_whys[note.why - 1];
    for (std::size_t i = 0; i < askWords.size(); ++i)
        if ((note.asks >> i & 1) != 0) planned.asks.emplace_back(askWords[i]);
    if (const auto odd = m_odd.find(row); odd != m_odd.end()) planned.odd = odd->second;
    return planned;
}

PlannedRow PlannedRows::operator[](std::size_t row) const {
    PlannedRow planned = shown(row);
    if (hasPlay(row)) planned.play = Plays(*this).of(row);
    return planned;
}

PlannedRow PlannedRows::Iterator::operator*() {
    PlannedRow planned = m_rows->shown(m_row);
    if (m_rows->hasPlay(m_row)) planned.play = m_plays.of(m_row);
    return planned;
}

void PlannedRows::setVerdict(std::size_t row, RowVerdict verdict) {
    RowVerdict& present = m_notes[row].verdict;
    --m_counts[static_cast<std::size_t>(present)];
    ++m_counts[static_cast<std::size_t>(verdict)];
    present = verdict;
}

void PlannedRows::refuse(std::size_t row, Refusal why) {
    const auto [at, isNew] =
        m_whyNumbers.emplace(textOfWhy(why), static_cast<std::uint32_t>(m_whys.size() + 1));
    if (isNew) m_whys.push_back(std::move(why));
    setVerdict(row, RowVerdict::Refused);
    m_notes[row].why = at->second;
    m_notes[row].asks = 0;
    m_notes[row].play = 0;
}

void PlannedRows::ask(std::size_t row, std::string_view ask) {
    const auto* at = std::find(askWords.begin(), askWords.end(), ask);
    setVerdict(row, RowVerdict::Asked);
    m_notes[row].asks |= static_cast<std::uint16_t>(1U << (at - askWords.begin()));
}

void PlannedRows::setPlay(std::size_t row, std::string_view play) {
    m_notes[row].play = static_cast<std::uint32_t>(m_plays.add(play) + 1);
}

void PlannedRows::setOdd(std::size_t row, std::vector<std::string> odd) {
    if (!odd.empty()) m_odd[row] = std::move(odd);
}

}  // namespace combwright
