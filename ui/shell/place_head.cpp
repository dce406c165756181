#include "ui/shell/place_head.h"

#include <QEvent>
#include <QLayout>
#include <QPainter>
#include <algorithm>

#include "ui/drawing/lettering.h"

namespace combwright {
namespace {

FigureStyle bigStyle(const PlaceHead& head) {
    FigureStyle style;
    style.size = head.bigSize;
    style.tone = head.bigTone;
    style.bold = true;
    return style;
}

/// A clock that runs: larger, and not read out every second.
bool isClock(const PlaceHead& head) { return head.bigSize == TextSize::Clock; }

}  // namespace

PlaceHeadBar::PlaceHeadBar(Session& session, QWidget* parent)
    : QWidget(parent), m_session(session), m_action(new QPushButton(this)) {
    m_action->setProperty("primary", true);
    m_action->setObjectName(QStringLiteral("next_thing"));
    connect(&session, &Session::lookChanged, this, [this] {
        layOut();
        update();
    });
}

void PlaceHeadBar::take(QWidget*& held, QWidget* given) {
    if (held && held != given) held->hide();
    held = given;
    if (!held) return;
    held->setParent(this);
    held->show();
}

void PlaceHeadBar::show(const PlaceHead& head, QWidget* controls, QWidget* pages) {
    m_head = head;
    take(m_pages, pages);
    take(m_controls, controls);
    m_action->setVisible(!head.action.isEmpty());
    m_action->setText(head.actionKey.isEmpty()
                          ? head.action
                          : QStringLiteral("%1   %2").arg(head.action, head.actionKey));
    m_action->setAccessibleName(head.action);
    setAccessibleName(head.title);
    setAccessibleDescription(
        QStringLiteral("%1. %2 %3")
            .arg(head.under, isClock(head) ? QString() : spoken(head.big), head.bigNote));
    layOut();
    update();
}

bool PlaceHeadBar::event(QEvent* event) {
    // The controls of a place became narrower or wider: what stands beside them moves.
    if (event->type() == QEvent::LayoutRequest) {
        layOut();
        update();
    }
    return QWidget::event(event);
}

int PlaceHeadBar::underLeft() const {
    const Look& look = m_session.look();
    int left = look.space(24);
    if (m_pagesBelow) left += pagesWidth();
    // Controls that have nothing to show take no room.
    const int controls = m_controls ? m_controls->sizeHint().width() : 0;
    return left + (controls > 0 ? controls + look.space(12) : 0);
}

int PlaceHeadBar::titleWidth() const {
    return QFontMetrics(m_session.look().font(TextSize::Title, true))
        .horizontalAdvance(m_head.title);
}

/// With the air beside them.
int PlaceHeadBar::pagesWidth() const {
    return m_pages ? m_pages->sizeHint().width() + m_session.look().space(20) : 0;
}

int PlaceHeadBar::underWidth() const {
    return QFontMetrics(m_session.look().font(TextSize::Note)).horizontalAdvance(m_head.under);
}

int PlaceHeadBar::noteWidth() const {
    const QFontMetrics metrics(m_session.look().font(TextSize::Note));
    int width = 0;
    for (const QString& line : m_head.bigNote.split(QLatin1Char('\n')))
        width = std::max(width, metrics.horizontalAdvance(line));
    return width;
}

/// With its note, which says nothing without it.
int PlaceHeadBar::numberWidth() const {
    if (m_head.big.figure.isEmpty()) return 0;
    const Look& look = m_session.look();
    return static_cast<int>(measureFigures({m_head.big}, bigStyle(m_head), look).width()) +
           look.space(14) + noteWidth();
}

PlaceHeadBar::Stands PlaceHeadBar::roomFor(int buttonWidth) const {
    const Look& look = m_session.look();
    int right = width() - look.space(24);
    if (buttonWidth > 0) right -= buttonWidth + look.space(24);
    const int number = numberWidth();
    const int title = titleWidth() + (m_pagesBelow ? 0 : pagesWidth());
    const int titleRight =
        look.space(40) + std::max(title, m_controls ? m_controls->sizeHint().width() : 0);
    const bool underFits = underLeft() + underWidth() + look.space(16) <= right - number;
    if (number > 0)
        return underFits && titleRight < right - number ? Stands::Beside : Stands::OwnLine;
    return underFits ? Stands::Beside : Stands::BelowButton;
}

bool PlaceHeadBar::showsAll() const {
    const int right = width() - m_session.look().space(24);
    return m_stands == Stands::Beside || underLeft() + underWidth() <= right;
}

void PlaceHeadBar::layOut() {
    const Look& look = m_session.look();
    // What changed within the controls counts at once, the innermost first.
    if (m_controls) {
        const auto rows = m_controls->findChildren<QLayout*>();
        for (auto row = rows.rbegin(); row != rows.rend(); ++row) (*row)->activate();
    }
    const int twoLines = look.space(68);
    const QSize wanted = m_action->sizeHint();
    const int buttonHeight = look.space(32);
    const int buttonWidth = m_action->isHidden() ? 0 : wanted.width();
    m_pagesBelow = look.space(24 + 24) + titleWidth() + pagesWidth() + buttonWidth > width();
    m_stands = roomFor(buttonWidth);
    setFixedHeight(twoLines +
                   (m_stands == Stands::OwnLine ? look.space(isClock(m_head) ? 52 : 32) : 0));
    // Level with the title where a line runs below it.
    const int buttonTop =
        m_stands == Stands::Beside ? (twoLines - buttonHeight) / 2 : look.space(4);
    m_action->setGeometry(width() - look.space(24) - wanted.width(), buttonTop, wanted.width(),
                          buttonHeight);
    int left = look.space(24);
    if (m_pages) {
        const QSize size = m_pages->sizeHint();
        if (m_pagesBelow)
            m_pages->setGeometry(left, twoLines - size.height() - look.space(4), size.width(),
                                 size.height());
        else
            m_pages->setGeometry(left + titleWidth() + look.space(16), look.space(4), size.width(),
                                 size.height());
        if (m_pagesBelow) left += pagesWidth();
    }
    if (!m_controls) return;
    const QSize size = m_controls->sizeHint();
    const int high = std::max(size.height(), look.space(26));
    m_controls->setGeometry(left, twoLines - high - look.space(4), size.width(), high);
}

void PlaceHeadBar::paintEvent(QPaintEvent*) {
    const Look& look = m_session.look();
    QPainter painter(this);
    // What is in the head is set from the left by hand, in every language.
    painter.setLayoutDirection(Qt::LeftToRight);
    painter.fillRect(rect(), look.tone(Tone::Ground));
    painter.setPen(look.tone(Tone::Hairline));
    painter.drawLine(0, height() - 1, width(), height() - 1);

    painter.setPen(look.tone(Tone::Ink));
    painter.setFont(look.font(TextSize::Title, true));
    painter.drawText(
        QRect(look.space(24), look.space(m_controls ? 6 : 10), width(), look.space(26)),
        Qt::AlignVCenter | Qt::AlignLeft, m_head.title);

    // From the right: the button, what the number is, the number.
    int right = width() - look.space(24);
    if (m_stands == Stands::Beside) {
        if (!m_action->isHidden()) right = m_action->x() - look.space(24);
        paintNumberBeside(painter, right);
        right -= numberWidth() + look.space(16);
    } else if (m_stands == Stands::OwnLine) {
        paintNumberBelow(painter);
    }
    painter.setFont(look.font(TextSize::Note));
    painter.setPen(look.tone(Tone::Muted));
    const int room = right - underLeft();
    // Three letters and dots tell nobody anything.
    if (room < painter.fontMetrics().averageCharWidth() * 8) return;
    painter.drawText(QRect(underLeft(), look.space(38), room, look.space(20)),
                     Qt::AlignVCenter | Qt::AlignLeft,
                     painter.fontMetrics().elidedText(m_head.under, Qt::ElideRight, room));
}

void PlaceHeadBar::paintNumberBeside(QPainter& painter, int right) const {
    if (m_head.big.figure.isEmpty()) return;
    const Look& look = m_session.look();
    const QStringList lines = m_head.bigNote.split(QLatin1Char('\n'));
    const int note = noteWidth();
    painter.setFont(look.font(TextSize::Note));
    painter.setPen(look.tone(Tone::Muted));
    const bool clock = isClock(m_head);
    int y = look.space((lines.size() > 1 ? 20 : 30) + (clock ? 8 : 0));
    for (const QString& line : lines) {
        painter.drawText(QRect(right - note, y, note, look.space(16)),
                         Qt::AlignVCenter | Qt::AlignLeft, line);
        y += look.space(15);
    }
    paintFigure(painter, QPointF(right - numberWidth(), look.space(clock ? 50 : 38)),
                m_head.big.figure, m_head.big.unit, m_head.big.how, bigStyle(m_head), look);
}

void PlaceHeadBar::paintNumberBelow(QPainter& painter) const {
    const Look& look = m_session.look();
    const double base = look.space(isClock(m_head) ? 108 : 88);
    const double end = paintFigure(painter, QPointF(look.space(24), base), m_head.big.figure,
                                   m_head.big.unit, m_head.big.how, bigStyle(m_head), look);
    QString note = m_head.bigNote;
    note.replace(QLatin1Char('\n'), QLatin1Char(' '));
    const QFont font = look.font(TextSize::Note);
    const double left = end + look.space(10);
    paintText(painter, {left, base}, fitted(note, font, width() - look.space(24) - left), font,
              look.tone(Tone::Muted));
}

}  // namespace combwright
