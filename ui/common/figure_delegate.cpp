#include "ui/common/figure_delegate.h"

#include <QAbstractItemModel>
#include <QApplication>
#include <QPainter>
#include <QStyle>
#include <algorithm>
#include <cmath>

#include "ui/drawing/strokes.h"

namespace combwright {

FigureDelegate::FigureDelegate(const Look& look, QObject* parent)
    : QStyledItemDelegate(parent), m_look(look) {}

void FigureDelegate::measure(const QAbstractItemModel& model, int column, int rows) {
    std::vector<FigureText> figures;
    const int count = std::min(rows, model.rowCount());
    for (int row = 0; row < count; ++row) {
        figures.push_back(model.index(row, column).data(figureRole).value<FigureText>());
    }
    m_columns = measureFigures(figures, m_style, m_look);
}

void FigureDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                           const QModelIndex& index) const {
    const QVariant held = index.data(figureRole);
    if (!held.isValid()) return QStyledItemDelegate::paint(painter, option, index);
    QStyleOptionViewItem frame(option);
    initStyleOption(&frame, index);
    frame.text.clear();  // the style paints row and focus, we paint the number
    const QStyle* style = frame.widget ? frame.widget->style() : QApplication::style();
    style->drawControl(QStyle::CE_ItemViewItem, &frame, painter, frame.widget);
    const auto figure = held.value<FigureText>();
    FigureColumns columns = m_columns;
    if (columns.width() <= 0.0) columns = measureFigures({figure}, m_style, m_look);
    const PainterState state(*painter);
    const QRectF cell = option.rect;
    const double cap = capHeight(m_look.font(m_style.size, m_style.bold));
    paintFigure(*painter,
                {cell.right() - m_look.px(8.0) - columns.width(), cell.center().y() + cap / 2.0},
                figure, columns, m_style, m_look);
}

QSize FigureDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const {
    const QVariant held = index.data(figureRole);
    if (!held.isValid()) return QStyledItemDelegate::sizeHint(option, index);
    const auto own = measureFigures({held.value<FigureText>()}, m_style, m_look);
    const double width = std::max(m_columns.width(), own.width()) + m_look.px(16.0);
    return {static_cast<int>(std::ceil(width)), m_look.target()};
}

QString FigureDelegate::displayText(const QVariant& value, const QLocale& locale) const {
    if (value.canConvert<FigureText>()) return spoken(value.value<FigureText>());
    return QStyledItemDelegate::displayText(value, locale);
}

}  // namespace combwright
