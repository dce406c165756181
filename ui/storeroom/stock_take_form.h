// The stock-take typed back from its sheet, line by line in the sheet's order; and what a machine
// is like. A cell left empty was not counted, and all lines are kept in one step.
#pragma once

#include <QComboBox>
#include <QDialog>
#include <QLabel>
#include <QLineEdit>
#include <QTableWidget>
#include <vector>

#include "core/places/storeroom/stock.h"
#include "ui/shell/form_drafts.h"
#include "ui/shell/session.h"

namespace combwright {

class StockTakeForm : public QDialog {
    Q_OBJECT

  public:
    StockTakeForm(Session& session, Day on, QWidget* parent = nullptr);

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    struct Row {
        EquipmentItem item;
        QString called;
        std::optional<Id<FrameKind>> frameKind;
        std::optional<Count> onHand;  ///< as it was counted last
        QComboBox* frame = nullptr;   ///< where it is still to be said which it is cut for
        std::vector<QLineEdit*> cells;
        /// "floor", "feeder|4 l tray", "foundation||3": by this what is typed in it is held.
        QString key() const;
    };
    /// Lines of kinds that were added and not kept are on the sheet again.
    void addHeldKinds(const QString& sheet);
    void addRow(const StockTakeRow& row, std::size_t at);
    std::size_t placeFor(const Equipment& kind) const;
    void addKind();
    void step(QLineEdit* from, int rows, bool nextCell);
    void orderTabs();
    bool read(const Row& row, std::optional<Count> (&counts)[3]);
    void keep();
    void say(const QString& text);

    Session& m_session;
    Day m_on;
    QTableWidget* m_table;
    std::vector<Row> m_rows;
    QComboBox* m_item;
    QLineEdit* m_called;
    QComboBox* m_frame;
    QPushButton* m_add;
    FormDrafts* m_drafts;
    QLabel* m_fewer;
    QLineEdit* m_why;
    QLabel* m_reason;
    QPushButton* m_keep;
    QPushButton* m_leave;
};

/// Each says whether it was done.
bool askToTakeStock(QWidget* parent, Session& session, Day on);
/// A drum, a bucket, a feeder, a nucleus box; what stands there already is shown and only what is
/// changed is kept.
bool askToDescribeEquipment(QWidget* parent, Session& session, EquipmentItem item,
                            const std::optional<Equipment>& known, Day on);

}  // namespace combwright
