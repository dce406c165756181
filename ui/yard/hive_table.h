// The hives of a yard as a table to tick in: a row a hive in walking order. One treats and feeds
// many hives at once, so rows are ticked by Space.
#pragma once

#include <vector>

#include "core/model/yard/yard.h"
#include "ui/common/words_table.h"
#include "ui/shell/session.h"

namespace combwright {

using HiveCell = WordsCell;
using HiveColumn = WordsColumn;

struct HiveTableRow {
    Id<Hive> hive;
    QString mark;
    std::vector<HiveCell> cells;
};

class HiveTable : public WordsTable {
    Q_OBJECT

  public:
    HiveTable(Session& session, std::vector<HiveColumn> columns, QWidget* parent);

    /// Ticks and the current row stay with their hives.
    void show(std::vector<HiveTableRow> rows);
    const std::vector<HiveTableRow>& rows() const { return m_hives; }
    /// Ticked, in walking order.
    std::vector<const HiveTableRow*> ticked() const;
    void tick(Id<Hive> hive, bool on) { tickKey(hive.number, on); }
    /// All, or none where all are.
    void tickAll();
    const HiveTableRow* current() const;
    void choose(Id<Hive> hive) { chooseKey(hive.number); }

  private:
    std::vector<HiveTableRow> m_hives;
};

}  // namespace combwright
