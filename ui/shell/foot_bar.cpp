#include "ui/shell/foot_bar.h"

#include <QAccessible>
#include <QPainter>
#include <QResizeEvent>
#include <algorithm>

#include "core/words/words.h"
#include "ui/drawing/key_cap.h"

namespace combwright {
namespace {

/// As much of the window as a long sentence may take, in the largest type too.
constexpr int mostLines = 4;
constexpr int wrapped = Qt::AlignVCenter | Qt::AlignLeft | Qt::TextWordWrap;

}  // namespace

FootBar::FootBar(Session& session, QWidget* parent) : QWidget(parent), m_session(session) {
    setObjectName(QStringLiteral("foot"));
    connect(&session, &Session::told, this, &FootBar::tell);
    // What was told before was about something that is no longer the last thing done.
    connect(&session, &Session::changed, this, &FootBar::forget);
    connect(&session, &Session::seasonChanged, this, &FootBar::forget);
    connect(&session, &Session::lookChanged, this, &FootBar::takeRoom);
    takeRoom();
}

QSize FootBar::sizeHint() const {
    const int plain = m_session.look().space(34);
    const QFontMetrics metrics(toldFont());
    const int tall =
        metrics
            .boundingRect(QRect(0, 0, roomForTold(), mostLines * metrics.lineSpacing()), wrapped,
                          m_told)
            .height();
    const int lines = std::clamp((tall + metrics.leading()) / metrics.lineSpacing(), 1, mostLines);
    return {100, plain + (lines - 1) * metrics.lineSpacing()};
}

QFont FootBar::toldFont() const { return m_session.look().font(TextSize::Note, m_bad); }

int FootBar::roomForTold() const { return std::max(1, width() - 2 * m_session.look().space(24)); }

void FootBar::takeRoom() {
    setFixedHeight(FootBar::sizeHint().height());
    update();
}

void FootBar::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    if (event->size().width() != event->oldSize().width()) takeRoom();
}

void FootBar::setHints(std::vector<KeyHint> hints) {
    m_hints = std::move(hints);
    update();
}

void FootBar::forget() {
    m_told.clear();
    setToolTip({});
    takeRoom();
}

void FootBar::tell(const QString& text, bool bad) {
    m_told = text;
    m_bad = bad;
    setAccessibleName(text);
    setToolTip(text);
    takeRoom();
    if (text.isEmpty()) return;
    QAccessibleEvent event(this, QAccessible::Alert);
    QAccessible::updateAccessibility(&event);
}

void FootBar::paintEvent(QPaintEvent*) {
    const Look& look = m_session.look();
    QPainter painter(this);
    painter.fillRect(rect(), look.tone(Tone::Ground));
    painter.setPen(look.tone(Tone::Hairline));
    painter.drawLine(0, 0, width(), 0);
    const double middle = height() / 2.0;
    const auto text = [&](double x, const QString& words, Tone tone, bool bold = false) {
        painter.setFont(look.font(TextSize::Note, bold));
        painter.setPen(look.tone(tone));
        const double wide = painter.fontMetrics().horizontalAdvance(words);
        painter.drawText(QRectF(x, 0, wide + 4, height()), Qt::AlignVCenter | Qt::AlignLeft, words);
        return x + wide;
    };
    double left = look.space(24);
    if (!m_told.isEmpty()) {
        // What was told comes first; keys stand beside it where there is room left.
        painter.setFont(toldFont());
        painter.setPen(look.tone(m_bad ? Tone::Bad : Tone::Ink));
        const QRectF room(left, 0, roomForTold(), height());
        painter.drawText(room, wrapped, m_told);
        left += painter.boundingRect(room, wrapped, m_told).width() + look.space(8);
    } else if (m_session.hasSeason()) {
        for (const How how : {How::Weighed, How::Counted, How::ByEye, How::ByDifference,
                              How::Assumed, How::Unknown}) {
            left = text(left, QString(QLatin1Char(letter(how))), Tone::Ink, true);
            left = text(left + look.space(4), howWord(how), Tone::Muted) + look.space(16);
        }
    }

    // From the right edge: what would be taken back, then the hints while there is room.
    const QString undo = m_session.hasSeason() ? m_session.undoText() : QString();
    double right = width() - look.space(24);
    const auto hint = [&](const QString& key, const QString& what, Tone tone) {
        painter.setFont(look.font(TextSize::Note));
        const double wide = painter.fontMetrics().horizontalAdvance(what);
        const double cap = keyCapSize(key, look).width();
        const double begin = right - wide - look.space(6) - cap;
        if (begin < left + look.space(8)) return;
        paintKeyCap(painter, QPointF(begin, middle), key, look);
        text(begin + cap + look.space(6), what, tone);
        right = begin - look.space(14);
    };
    if (!undo.isEmpty()) hint(tr("Ctrl+Z"), undo, Tone::Ink);
    const QString redo = m_session.redoText();
    if (!redo.isEmpty()) hint(tr("Ctrl+Shift+Z"), redo, Tone::Ink);
    for (auto each = m_hints.rbegin(); each != m_hints.rend(); ++each)
        hint(each->key, each->what, Tone::Muted);
}

}  // namespace combwright
