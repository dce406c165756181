#include "ui/today/line_list.h"

#include <QKeyEvent>
#include <algorithm>

#include "ui/drawing/lettering.h"

namespace combwright {

LineList::LineList(Session& session, const QString& name, QWidget* parent)
    : QWidget(parent), m_session(session) {
    setFocusPolicy(Qt::StrongFocus);
    setObjectName(name);
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Minimum);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    connect(&session, &Session::lookChanged, this, [this] {
        updateGeometry();
        update();
    });
}

int LineList::nearest(int row) const { return std::clamp(row, 0, std::max(0, rowCount() - 1)); }

void LineList::choose(int row) {
    m_row = nearest(row);
    speak();
    update();
    Q_EMIT chosen();
}

void LineList::linesChanged(int row) {
    m_row = nearest(row);
    updateGeometry();
    speak();
    update();
}

void LineList::paintButton(QPainter& painter, const QRectF& box, const QString& words) const {
    painter.setPen(QPen(look().tone(Tone::Line), look().px(1)));
    painter.setBrush(look().tone(Tone::Surface));
    painter.drawRoundedRect(box, look().corner(), look().corner());
    paintTextIn(painter, box, words, look().font(TextSize::Note), look().tone(Tone::Ink));
}

void LineList::keyPressEvent(QKeyEvent* event) {
    if (event->modifiers() & ~Qt::KeypadModifier) return QWidget::keyPressEvent(event);
    const auto go = [this](int row) {
        choose(row);
        Q_EMIT moved();
    };
    switch (event->key()) {
        case Qt::Key_Up:
            return go(m_row - 1);
        case Qt::Key_Down:
            return go(m_row + 1);
        case Qt::Key_Home:
            return go(0);
        case Qt::Key_End:
            return go(rowCount() - 1);
        case Qt::Key_Return:
        case Qt::Key_Enter:
            return doCurrent();
        default:
            QWidget::keyPressEvent(event);
    }
}

}  // namespace combwright
