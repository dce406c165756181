// The editor of a line of the yard sheet and how its cells are measured and painted: what is typed
// is read back at once and kept when the row is left.
#pragma once

#include <QStyledItemDelegate>

#include "ui/yard/sheet_view.h"

namespace combwright {

class LineDelegate : public QStyledItemDelegate {
  public:
    LineDelegate(SheetTable& table, SheetModel& model, Session& session)
        : QStyledItemDelegate(&table), m_table(table), m_model(model), m_session(session) {}

    QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem& option,
                          const QModelIndex& index) const override;
    void setEditorData(QWidget* editor, const QModelIndex& index) const override;
    void setModelData(QWidget* editor, QAbstractItemModel* model,
                      const QModelIndex& index) const override;
    bool eventFilter(QObject* editor, QEvent* event) override;
    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    void updateEditorGeometry(QWidget* editor, const QStyleOptionViewItem& option,
                              const QModelIndex& index) const override;
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;

  private:
    /// The mark of the hive, and under it what its queen wears: the dot and the word for it.
    void paintMarked(QPainter& painter, const QStyleOptionViewItem& option,
                     const QModelIndex& index, const QString& colour) const;
    QWidget* createCells(QWidget* parent, const QModelIndex& index) const;

    SheetTable& m_table;
    SheetModel& m_model;
    Session& m_session;
};

}  // namespace combwright
