#include "ui/yard/line_delegate.h"

#include <QApplication>
#include <QLineEdit>
#include <QPainter>
#include <algorithm>
#include <utility>

#include "core/words/words.h"
#include "ui/drawing/lettering.h"
#include "ui/drawing/queen_dot.h"
#include "ui/yard/cells_editor.h"

namespace combwright {

QWidget* LineDelegate::createEditor(QWidget* parent, const QStyleOptionViewItem&,
                                    const QModelIndex& index) const {
    if (m_table.asCells()) return createCells(parent, index);
    auto* edit = new QLineEdit(parent);
    edit->setObjectName(QStringLiteral("line"));
    edit->setAccessibleName(
        SheetTable::tr("What you saw, %1")
            .arg(index.siblingAtColumn(SheetModel::HiveColumn).data().toString()));
    edit->setFont(m_session.look().font(TextSize::Body));
    edit->installEventFilter(&m_table);
    const int row = index.row();
    edit->setPlaceholderText(m_model.draftOf(row));
    connect(edit, &QLineEdit::textEdited, edit,
            [this, row](const QString& text) { m_model.setTyping(row, text); });
    return edit;
}

void LineDelegate::setEditorData(QWidget* editor, const QModelIndex& index) const {
    if (auto* cells = qobject_cast<CellsEditor*>(editor)) {
        cells->setLine(m_model.lineOf(index.row()));
        cells->setOffer(m_model.offerOf(index.row()));
        return;
    }
    auto* edit = static_cast<QLineEdit*>(editor);
    const QString text = m_model.lineOf(index.row());
    if (edit->text() != text) edit->setText(text);
}

void LineDelegate::setModelData(QWidget*, QAbstractItemModel*, const QModelIndex& index) const {
    // On the way to the reason the line waits: both are kept in one step.
    if (!m_table.goesToReason()) m_model.keep(index.row());
}

bool LineDelegate::eventFilter(QObject* editor, QEvent* event) {
    // The keys are the table's own: here Escape would close the line and leave what was typed.
    return event->type() != QEvent::KeyPress && QStyledItemDelegate::eventFilter(editor, event);
}

void LineDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                         const QModelIndex& index) const {
    const QString colour = index.data(SheetModel::queenColourRole).toString();
    if (!colour.isEmpty()) return paintMarked(*painter, option, index, colour);
    QStyledItemDelegate::paint(painter, option, index);
    // The rule between what was seen last and what is seen now.
    if (index.column() != SheetModel::LineColumn) return;
    painter->setPen(m_session.look().tone(Tone::Line));
    painter->drawLine(option.rect.topLeft(), option.rect.bottomLeft());
}

void LineDelegate::updateEditorGeometry(QWidget* editor, const QStyleOptionViewItem& option,
                                        const QModelIndex& index) const {
    if (!qobject_cast<CellsEditor*>(editor))
        return QStyledItemDelegate::updateEditorGeometry(editor, option, index);
    // Cells need the room of what is read back and to mind too; both are said below them.
    QRect place = option.rect;
    place.setLeft(place.left() + 1);
    place.setRight(m_table.viewport()->width() - 1);
    editor->setGeometry(place);
}

QSize LineDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const {
    QSize size = QStyledItemDelegate::sizeHint(option, index);
    const CellsEditor* cells = m_table.cells();
    if (cells && index.column() == SheetModel::LineColumn &&
        index.row() == m_table.currentIndex().row())
        size.setHeight(cells->heightFor(cells->width()));
    if (!index.data(SheetModel::queenColourRole).toString().isEmpty()) {
        const Look& look = m_session.look();
        const double lines =
            lineStep(look.font(TextSize::Body)) + lineStep(look.font(TextSize::Note));
        size.setHeight(std::max(size.height(), static_cast<int>(lines) + look.space(4)));
    }
    // The hint of the style forgets the padding beside the text, and wraps a line too late.
    const QString text = index.data(Qt::DisplayRole).toString();
    const Look& look = m_session.look();
    const int room = m_table.columnWidth(index.column()) - look.space(16);
    if (text.isEmpty() || room <= 0) return size;
    const QVariant own = index.data(Qt::FontRole);
    const QFontMetrics metrics(own.isValid() ? own.value<QFont>() : option.font);
    const int wrapped =
        metrics.boundingRect(QRect(0, 0, room, 10000), Qt::TextWordWrap, text).height();
    size.setHeight(std::max(size.height(), wrapped + look.space(6)));
    return size;
}

void LineDelegate::paintMarked(QPainter& painter, const QStyleOptionViewItem& option,
                               const QModelIndex& index, const QString& colour) const {
    QStyleOptionViewItem ground = option;
    initStyleOption(&ground, index);
    const QString mark = std::exchange(ground.text, QString());
    const QStyle* style = ground.widget ? ground.widget->style() : QApplication::style();
    style->drawControl(QStyle::CE_ItemViewItem, &ground, &painter, ground.widget);
    const Look& look = m_session.look();
    const QFont bold = look.font(TextSize::Body, true);
    const QFont note = look.font(TextSize::Note);
    const double above = lineStep(bold);
    const double below = lineStep(note);
    const QRect words = style->subElementRect(QStyle::SE_ItemViewItemText, &ground, ground.widget);
    const double left =
        words.left() + style->pixelMetric(QStyle::PM_FocusFrameHMargin, &ground) + 1;
    const double right = option.rect.right() - look.px(2);
    const double top = option.rect.center().y() - (above + below) / 2.0;
    const auto clip = fitted(mark, bold, right - left);
    paintText(painter, {left, top + QFontMetricsF(bold).ascent()}, clip, bold,
              look.tone(Tone::Ink));
    double x = left;
    const double base = top + above + QFontMetricsF(note).ascent();
    if (const auto paint = queenPaint(colour)) {
        const double size = queenDotSize(TextSize::Note, look);
        paintQueenDot(painter, {x + size / 2.0, base - capHeight(note) / 2.0}, size, *paint, look);
        x += size + look.px(3);
    }
    paintText(painter, {x, base}, fitted(choiceText(colour.toStdString()), note, right - x), note,
              look.tone(Tone::Muted));
}

QWidget* LineDelegate::createCells(QWidget* parent, const QModelIndex& index) const {
    auto* cells =
        new CellsEditor(m_session, index.siblingAtColumn(SheetModel::HiveColumn).data().toString(),
                        &m_table, parent);
    const int row = index.row();
    connect(cells, &CellsEditor::edited, cells,
            [this, cells, row] { m_model.setTyping(row, cells->line()); });
    return cells;
}

}  // namespace combwright
