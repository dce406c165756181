#include "ui/common/table_stack.h"

namespace combwright {

TableStack::TableStack(const Look& look, QWidget* parent) : QScrollArea(parent), m_look(look) {
    setFrameShape(QFrame::NoFrame);
    setWidgetResizable(true);
    setFocusPolicy(Qt::NoFocus);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    auto* inside = new QWidget(this);
    m_column = new QVBoxLayout(inside);
    m_column->setContentsMargins(0, 0, 0, 0);
    m_column->setSpacing(m_look.space(4));
    m_column->addStretch(1);
    setWidget(inside);
}

void TableStack::add(WordsTable* table) {
    auto* head = new QLabel(widget());
    head->setFont(m_look.font(TextSize::Head, true));
    head->setWordWrap(true);
    // The column scrolls, not the tables in it.
    table->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    const int at = m_column->count() - 1;
    m_column->insertWidget(at, head);
    m_column->insertWidget(at + 1, table);
    if (last()) setTabOrder(last(), table);
    m_parts.push_back({head, table});
    connect(table, &WordsTable::fitted, this, &TableStack::fit);
    connect(table, &QTableWidget::currentCellChanged, this, [this, table] { follow(table); });
}

void TableStack::setHead(const WordsTable* table, const QString& text) {
    for (const Part& part : m_parts) {
        if (part.table != table) continue;
        part.head->setText(text);
        part.head->setVisible(!text.isEmpty());
        part.table->setVisible(!part.table->wordsRows().empty());
    }
    fit();
}

void TableStack::setLook(const Look& look) {
    m_look = look;
    m_column->setSpacing(look.space(4));
    for (const Part& part : m_parts) {
        part.head->setFont(look.font(TextSize::Head, true));
        part.table->setLook(look);
    }
}

int TableStack::fullHeight() const {
    int high = 0;
    const int wide = viewport()->width();
    for (const Part& part : m_parts) {
        if (!part.head->isHidden()) high += part.head->heightForWidth(wide) + m_column->spacing();
        if (!part.table->isHidden()) high += part.table->fullHeight() + m_column->spacing();
    }
    return high + m_column->spacing();
}

void TableStack::fit() {
    for (const Part& part : m_parts) part.table->setFixedHeight(part.table->fullHeight());
    Q_EMIT fitted();
}

void TableStack::follow(WordsTable* table) {
    const int row = table->currentRow();
    if (row < 0 || !table->hasFocus()) return;
    const QRect place = table->visualItemRect(table->item(row, 0));
    const QPoint at = table->viewport()->mapTo(widget(), place.topLeft());
    const QRect there(at, QSize(1, place.height()));
    ensureVisible(there.center().x(), there.center().y(), 0, place.height() / 2 + 8);
    Q_EMIT followed(QRect(widget()->mapTo(this, at), there.size()));
}

}  // namespace combwright
