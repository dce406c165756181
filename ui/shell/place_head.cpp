#include "ui/shell/place_head.h"

#include <QPainter>
#include <algorithm>

namespace combwright {

PlaceHeadBar::PlaceHeadBar(Session& session, QWidget* parent)
    : QWidget(parent), m_session(session), m_action(new QPushButton(this)) {
    m_action->setProperty("primary", true);
    m_action->setObjectName(QStringLiteral("next_thing"));
    connect(&session, &Session::lookChanged, this, [this] {
        layOut();
        update();
    });
}

void PlaceHeadBar::show(const PlaceHead& head, QWidget* controls) {
    m_head = head;
    if (m_controls && m_controls != controls) m_controls->hide();
    m_controls = controls;
    if (m_controls) {
        m_controls->setParent(this);
        m_controls->show();
    }
    m_action->setVisible(!head.action.isEmpty());
    m_action->setText(head.actionKey.isEmpty()
                          ? head.action
                          : QStringLiteral("%1   %2").arg(head.action, head.actionKey));
    m_action->setAccessibleName(head.action);
    setAccessibleName(head.title);
    // A clock that runs is not read out every second.
    const bool runs = head.bigSize == TextSize::Clock;
    setAccessibleDescription(
        QStringLiteral("%1. %2 %3")
            .arg(head.under, runs ? QString() : spoken(head.big), head.bigNote));
    layOut();
    update();
}

void PlaceHeadBar::layOut() {
    const Look& look = m_session.look();
    setFixedHeight(look.space(68));
    const QSize wanted = m_action->sizeHint();
    const int buttonHeight = look.space(32);
    m_action->setGeometry(width() - look.space(24) - wanted.width(), (height() - buttonHeight) / 2,
                          wanted.width(), buttonHeight);
    if (!m_controls) return;
    const QSize size = m_controls->sizeHint();
    const int high = std::max(size.height(), look.space(26));
    m_controls->setGeometry(look.space(24), height() - high - look.space(4), size.width(), high);
}

void PlaceHeadBar::paintEvent(QPaintEvent*) {
    const Look& look = m_session.look();
    QPainter painter(this);
    painter.fillRect(rect(), look.tone(Tone::Ground));
    painter.setPen(look.tone(Tone::Hairline));
    painter.drawLine(0, height() - 1, width(), height() - 1);

    painter.setPen(look.tone(Tone::Ink));
    painter.setFont(look.font(TextSize::Title, true));
    painter.drawText(
        QRect(look.space(24), look.space(m_controls ? 6 : 10), width(), look.space(26)),
        Qt::AlignVCenter | Qt::AlignLeft, m_head.title);

    const double titleRight =
        look.space(40) + std::max(painter.fontMetrics().horizontalAdvance(m_head.title),
                                  m_controls ? m_controls->sizeHint().width() : 0);

    // From the right: the button, what the number is, the number; at large type on a small window
    // the number gives way to title and fields.
    int right = m_action->isVisible() ? m_action->x() - look.space(24) : width() - look.space(24);
    painter.setFont(look.font(TextSize::Note));
    const QStringList noteLines = m_head.bigNote.split(QLatin1Char('\n'));
    int noteWidth = 0;
    for (const QString& line : noteLines)
        noteWidth = std::max(noteWidth, painter.fontMetrics().horizontalAdvance(line));
    painter.setPen(look.tone(Tone::Muted));
    const bool clock = m_head.bigSize == TextSize::Clock;
    int y = look.space((noteLines.size() > 1 ? 20 : 30) + (clock ? 8 : 0));
    FigureStyle style;
    style.size = m_head.bigSize;
    style.tone = m_head.bigTone;
    style.bold = true;
    const FigureColumns columns = measureFigures({m_head.big}, style, look);
    // Number and note go together or not at all: a note without its number says nothing.
    bool roomForNumber = right - noteWidth - look.space(10) - columns.width() > titleRight;
    // A clock is read across the room: it goes without its note before it goes.
    if (clock && !roomForNumber && right - columns.width() > titleRight) {
        roomForNumber = true;
        noteWidth = 0;
    }
    for (const QString& line : noteLines) {
        if (!roomForNumber || noteWidth == 0) break;
        painter.drawText(QRect(right - noteWidth, y, noteWidth, look.space(16)),
                         Qt::AlignVCenter | Qt::AlignLeft, line);
        y += look.space(15);
    }
    right -= noteWidth + look.space(10);
    int bigLeft = right;
    if (!m_head.big.figure.isEmpty() && roomForNumber) {
        bigLeft = right - static_cast<int>(columns.width()) - look.space(4);
        paintFigure(painter, QPointF(bigLeft, look.space(clock ? 50 : 38)), m_head.big.figure,
                    m_head.big.unit, m_head.big.how, style, look);
    }

    int left = look.space(24);
    if (m_controls) left = m_controls->geometry().right() + look.space(12);
    painter.setFont(look.font(TextSize::Note));
    painter.setPen(look.tone(Tone::Muted));
    const int room = bigLeft - left - look.space(16);
    // Three letters and dots tell nobody anything.
    const int least = painter.fontMetrics().averageCharWidth() * 8;
    if (room < least) return;
    painter.drawText(QRect(left, look.space(38), room, look.space(20)),
                     Qt::AlignVCenter | Qt::AlignLeft,
                     painter.fontMetrics().elidedText(m_head.under, Qt::ElideRight, room));
}

}  // namespace combwright
