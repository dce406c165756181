// The records behind a number: its runs, their boxes full and wet, and the shares that came of
// them, as a plain list beside the number.
#pragma once

#include <QLabel>
#include <QTableWidget>

#include "core/places/pages/page.h"
#include "core/places/season_book/yield_records.h"
#include "ui/shell/session.h"

namespace combwright {

class RecordsView : public QWidget {
    Q_OBJECT

  public:
    explicit RecordsView(Session& session, QWidget* parent = nullptr);
    void show(const YieldRecords& records);
    /// Any other records, as a table with words under it.
    void show(const QString& title, const TableBlock& block, const QString& note);
    const YieldRecords& records() const { return m_records; }
    QTableWidget& table() { return *m_table; }

  private:
    void fill(const TableBlock& block);
    void sizes();

    Session& m_session;
    YieldRecords m_records;
    QLabel* m_title;
    QLabel* m_note;
    QTableWidget* m_table;
};

}  // namespace combwright
