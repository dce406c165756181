#include "ui/yard/board_line.h"

#include <QKeyEvent>
#include <QPainter>
#include <QVBoxLayout>

namespace combwright {

BoardLine::BoardLine(Session& session, QWidget* parent)
    : QWidget(parent),
      m_session(session),
      m_prompt(new QLabel(this)),
      m_edit(new QLineEdit(this)),
      m_back(new QLabel(this)),
      m_reason(new QLabel(this)) {
    setObjectName(QStringLiteral("board_line"));
    m_edit->setObjectName(QStringLiteral("board_edit"));
    m_reason->setObjectName(QStringLiteral("board_reason"));
    m_back->setObjectName(QStringLiteral("board_back"));
    m_edit->installEventFilter(this);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 8, 0, 4);
    column->setSpacing(4);
    for (QLabel* label : {m_prompt, m_back, m_reason}) {
        label->setWordWrap(true);
        label->setTextFormat(Qt::PlainText);
    }
    for (QWidget* each : std::initializer_list<QWidget*>{m_prompt, m_edit, m_back, m_reason})
        column->addWidget(each);
    connect(m_edit, &QLineEdit::textEdited, this, &BoardLine::sayBack);
    connect(&session, &Session::told, this, [this](const QString& text, bool bad) {
        if (!bad || !isAsking()) return;
        m_reason->setText(text);
        m_reason->show();
    });
    connect(&session, &Session::lookChanged, this, [this] { dress(); });
    dress();
    hide();
}

void BoardLine::dress() {
    const Look& look = m_session.look();
    m_prompt->setFont(look.font(TextSize::Body, true));
    m_edit->setFont(look.font(TextSize::Body));
    m_back->setFont(look.font(TextSize::Note));
    m_reason->setFont(look.font(TextSize::Note, true));
    QPalette muted = m_back->palette();
    muted.setColor(QPalette::WindowText, look.tone(Tone::Muted));
    m_back->setPalette(muted);
    QPalette bad = m_reason->palette();
    bad.setColor(QPalette::WindowText, look.tone(Tone::Bad));
    m_reason->setPalette(bad);
}

void BoardLine::ask(LineAsked asked) {
    m_asked = std::move(asked);
    m_prompt->setText(m_asked.prompt);
    m_edit->setText(m_asked.before);
    m_edit->setPlaceholderText(m_asked.example);
    m_edit->setAccessibleName(m_asked.prompt);
    m_edit->setAccessibleDescription(m_asked.example);
    m_reason->hide();
    sayBack(m_asked.before);
    show();
    m_edit->setFocus();
    m_edit->selectAll();
}

void BoardLine::sayBack(const QString& text) {
    const QString said =
        m_asked.readBack && !text.trimmed().isEmpty() ? m_asked.readBack(text) : m_asked.example;
    m_back->setText(said.isEmpty() ? m_asked.example : said);
}

void BoardLine::accept() {
    m_reason->hide();
    if (m_asked.deed && m_asked.deed(m_edit->text().simplified())) close();
}

void BoardLine::keep() {
    if (isAsking() && m_asked.keptOnLeaving) accept();
}

void BoardLine::close() {
    if (!isAsking()) return;
    m_asked = {};
    hide();
    m_session.forgetRefusal();
    Q_EMIT closed();
}

void BoardLine::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setPen(QPen(m_session.look().tone(Tone::Ink), 1.2));
    painter.drawLine(0, 1, width(), 1);
}

bool BoardLine::eventFilter(QObject* watched, QEvent* event) {
    if (watched != m_edit || event->type() != QEvent::KeyPress)
        return QWidget::eventFilter(watched, event);
    auto* key = static_cast<QKeyEvent*>(event);
    switch (key->key()) {
        case Qt::Key_Return:
        case Qt::Key_Enter:
            accept();
            return true;
        case Qt::Key_Escape:
            close();
            return true;
        default:
            return false;
    }
}

}  // namespace combwright
