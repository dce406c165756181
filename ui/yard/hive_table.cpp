#include "ui/yard/hive_table.h"

#include <utility>

namespace combwright {

HiveTable::HiveTable(Session& session, std::vector<HiveColumn> columns, QWidget* parent)
    : WordsTable(session.look(), {tr("hive"), tr("how it stands")}, std::move(columns),
                 WordsTicks::BySpace, parent) {
    connect(&session, &Session::lookChanged, this, [this, &session] { setLook(session.look()); });
}

void HiveTable::show(std::vector<HiveTableRow> rows) {
    m_hives = std::move(rows);
    std::vector<WordsRow> words;
    for (const HiveTableRow& row : m_hives) words.push_back({row.hive.number, row.mark, row.cells});
    showRows(std::move(words));
}

std::vector<const HiveTableRow*> HiveTable::ticked() const {
    std::vector<const HiveTableRow*> rows;
    for (const HiveTableRow& row : m_hives)
        if (isTicked(row.hive.number)) rows.push_back(&row);
    return rows;
}

void HiveTable::tickAll() {
    const bool all = ticked().size() == m_hives.size();
    for (const HiveTableRow& row : m_hives) tick(row.hive, !all);
}

const HiveTableRow* HiveTable::current() const {
    const int at = currentRow();
    return at < 0 || at >= static_cast<int>(m_hives.size())
               ? nullptr
               : &m_hives[static_cast<std::size_t>(at)];
}

}  // namespace combwright
