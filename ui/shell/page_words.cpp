#include "ui/shell/page_words.h"

#include <QPainter>
#include <algorithm>
#include <cmath>

#include "ui/drawing/lettering.h"

namespace combwright {

PageWord::PageWord(Session& session, const QString& word, QWidget* parent)
    : QAbstractButton(parent), m_session(session) {
    setText(word);
    setAccessibleName(word);
    setToolTip(tr("Alt+%1").arg(word.left(1)));
    setCheckable(true);
    // Of all words Tab comes to the open one; the arrows go to the others.
    setAutoExclusive(true);
    // By hand it opens its page, which takes the keys.
    setFocusPolicy(Qt::TabFocus);
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
}

QSize PageWord::sizeHint() const {
    const Look& look = m_session.look();
    const double wide = textWidth(text(), look.font(TextSize::Body, true));
    return {static_cast<int>(std::ceil(wide)) + 2 * look.space(6), look.space(28)};
}

void PageWord::paintEvent(QPaintEvent*) {
    const Look& look = m_session.look();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const bool open = isChecked();
    QFont font = look.font(TextSize::Body, open);
    const QColor ink = look.tone(open || underMouse() ? Tone::Ink : Tone::Muted);
    const double base = height() / 2.0 + capHeight(font) / 2.0;
    const QString whole = text();
    const double left = (width() - textWidth(whole, font)) / 2.0;
    // The letter that opens it by Alt is underlined as it is in any button.
    QFont first = font;
    first.setUnderline(true);
    paintText(painter, {left, base}, whole.left(1), first, ink);
    paintText(painter, {left + textWidth(whole.left(1), font), base}, whole.mid(1), font, ink);
    if (open) {
        const double thick = look.px(2.5);
        painter.fillRect(QRectF(0, height() - thick, width(), thick), look.tone(Tone::Accent));
    }
    if (hasFocus()) {
        painter.setPen(QPen(look.tone(Tone::Accent), look.px(1.5)));
        painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1 - look.px(2.5)), look.corner(),
                                look.corner());
    }
}

PageWords::PageWords(Session& session, const QString& named, QWidget* parent)
    : QWidget(parent), m_session(session), m_row(new QHBoxLayout(this)) {
    setObjectName(QStringLiteral("page_words"));
    setAccessibleName(named);
    m_row->setContentsMargins(0, 0, 0, 0);
    m_row->setSpacing(4);
    connect(&session, &Session::lookChanged, this, [this] {
        for (PageWord* word : m_words) word->updateGeometry();
    });
}

void PageWords::add(const QString& word) {
    auto* made = new PageWord(m_session, word, this);
    made->setObjectName(QStringLiteral("page_") + word.toLower());
    const int index = count();
    connect(made, &PageWord::clicked, this, [this, index] { Q_EMIT chosen(index); });
    m_words.push_back(made);
    m_row->addWidget(made, 0, Qt::AlignLeft);
    if (index == 0) made->setChecked(true);
}

void PageWords::choose(int index) {
    if (index >= 0 && index < count()) m_words[static_cast<std::size_t>(index)]->setChecked(true);
}

}  // namespace combwright
