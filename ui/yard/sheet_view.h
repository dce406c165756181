// The yard sheet on screen: the table, filled by keyboard alone, and below it the marks one may
// type, what was kept, what to look at before closing, and what to take next time.
#pragma once

#include <QBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QScrollArea>
#include <QTableView>
#include <QTimer>
#include <QWidget>
#include <vector>

#include "ui/yard/sheet_model.h"

namespace combwright {

class CellsEditor;

/// The table. Enter keeps a line and goes to the next hive, Shift+Enter back, Up and Down likewise;
/// Tab leaves the table; Escape brings back what was kept.
class SheetTable : public QTableView {
    Q_OBJECT

  public:
    SheetTable(SheetModel& model, Session& session, QWidget* parent = nullptr);
    /// Puts the cursor into a row's line; row 0 is the line for all.
    void editRow(int row);
    /// How many keys were pressed in the lines so far: what a look costs to write.
    int keystrokes() const { return m_keystrokes; }
    /// Whether the row one types in is taken apart into cells.
    bool asCells() const { return m_asCells; }
    /// Where is written why a line is changed; a line left for it is kept together with it.
    void setReasonField(QLineEdit* field) { m_reason = field; }
    /// The cells one types in now; none where it is one line.
    CellsEditor* cells() const;
    /// F6: from the one line to cells and back, with what is typed.
    void switchCells();

  Q_SIGNALS:
    void closeAsked();   ///< Ctrl+Enter
    void strikeAsked();  ///< Ctrl+Shift+Delete
    void cellsSwitched();

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void dataChanged(const QModelIndex& from, const QModelIndex& to,
                     const QList<int>& roles = QList<int>()) override;
    void focusInEvent(QFocusEvent* event) override;
    void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;

  private:
    friend class LineDelegate;
    void layOutColumns();
    void leaveRow(int step);
    bool cellsAreMeant();
    bool goesToReason() const;
    void fitRow();
    /// Makes rows as high as what stands in them.
    void fitRows(int from, int to);
    /// The same where only the line and what it reads back as changed.
    void fitLine(int row);
    /// The height the cells of some columns of a row ask for.
    int heightAsked(int row, int fromColumn, int toColumn) const;

    SheetModel& m_model;
    Session& m_session;
    int m_keystrokes = 0;
    std::vector<int> m_heightBesideLine;  ///< of a row, all but the line and its reading back
    bool m_asCells = false;
    bool m_leaving = false;  ///< by Tab, out of the table
    QLineEdit* m_reason = nullptr;
};

class SheetView : public QWidget {
    Q_OBJECT

  public:
    explicit SheetView(Session& session, QWidget* parent = nullptr);
    SheetModel& model() { return m_model; }
    SheetTable& table() { return *m_table; }
    void show(Id<Yard> yard, Day on);
    /// Shows now what would follow the hand in a moment.
    void settle();

  protected:
    void paintEvent(QPaintEvent*) override;
    void resizeEvent(QResizeEvent* event) override;

  private:
    void shareHeight();
    void keepWithReason();
    QString keptText() const;
    QString lookAtText() const;
    QString takeText() const;
    void fillBelow();
    /// Asked twice in a row: one key pressed by mistake must not take an afternoon away.
    void strikeVisit();

    Session& m_session;
    SheetModel m_model;
    SheetTable* m_table;
    QWidget* m_whyRow;  ///< why an earlier day's lines are changed
    QLineEdit* m_why;
    bool m_strikeAsked = false;
    QLabel* m_marks;
    QLabel* m_kept;
    QLabel* m_lookAt;
    QLabel* m_take;
    QScrollArea* m_below;
    QBoxLayout* m_belowRow;
    QTimer m_belowLater;
};

}  // namespace combwright
