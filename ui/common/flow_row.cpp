#include "ui/common/flow_row.h"

#include <QWidget>
#include <algorithm>

namespace combwright {

FlowRow::FlowRow(QWidget* parent, int gap) : QLayout(parent), m_gap(gap) {
    setContentsMargins(0, 0, 0, 0);
}

FlowRow::~FlowRow() {
    while (QLayoutItem* item = FlowRow::takeAt(0)) delete item;
}

QLayoutItem* FlowRow::takeAt(int index) {
    return index >= 0 && index < m_items.size() ? m_items.takeAt(index) : nullptr;
}

QSize FlowRow::minimumSize() const {
    QSize size;
    for (const QLayoutItem* item : m_items)
        if (!item->isEmpty()) size = size.expandedTo(item->minimumSize());
    return size;
}

void FlowRow::setGeometry(const QRect& rect) {
    QLayout::setGeometry(rect);
    layOut(rect, true);
}

int FlowRow::layOut(const QRect& rect, bool move) const {
    int x = rect.x();
    int y = rect.y();
    int high = 0;
    for (QLayoutItem* item : m_items) {
        if (item->isEmpty()) continue;
        const QSize size = item->sizeHint();
        if (x > rect.x() && x + size.width() > rect.right() + 1) {
            x = rect.x();
            y += high + m_gap;
            high = 0;
        }
        if (move) item->setGeometry(QRect(QPoint(x, y), size));
        x += size.width() + m_gap;
        high = std::max(high, size.height());
    }
    return y + high - rect.y();
}

}  // namespace combwright
