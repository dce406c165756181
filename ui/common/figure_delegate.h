// Numbers in the tables of all places: whole parts end on one edge, fraction, unit and how-known
// letter each start on one, down the whole column, whatever is scrolled into view.
#pragma once

#include <QStyledItemDelegate>

#include "ui/drawing/figure.h"
#include "ui/look/tokens.h"

namespace combwright {

/// The item role that carries a FigureText.
inline constexpr int figureRole = Qt::UserRole + 71;

class FigureDelegate : public QStyledItemDelegate {
  public:
    explicit FigureDelegate(const Look& look, QObject* parent = nullptr);

    void setStyle(const FigureStyle& style) { m_style = style; }
    void setLook(const Look& look) { m_look = look; }
    const FigureColumns& columns() const { return m_columns; }

    /// Measures a column of a model, at most `rows` of it, and keeps the edges.
    void measure(const QAbstractItemModel& model, int column, int rows = 1000);

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    /// What a screen reader is told, where the model has no words of its own.
    QString displayText(const QVariant& value, const QLocale& locale) const override;

  private:
    Look m_look;
    FigureStyle m_style;
    FigureColumns m_columns;
};

}  // namespace combwright
