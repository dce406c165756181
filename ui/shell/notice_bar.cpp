#include "ui/shell/notice_bar.h"

#include <QHBoxLayout>
#include <QPainter>

#include "ui/shell/copies/moved_dialog.h"
#include "ui/shell/file_ways.h"

namespace combwright {

NoticeBar::NoticeBar(Session& session, FileWays& ways, QWidget* parent)
    : QWidget(parent), m_session(session), m_text(new QLabel(this)) {
    setObjectName(QStringLiteral("notice"));
    m_text->setObjectName(QStringLiteral("notice_text"));
    m_text->setWordWrap(true);
    m_text->setTextFormat(Qt::PlainText);
    m_keep = new QPushButton(tr("Keep as a new file…"), this);
    m_keep->setObjectName(QStringLiteral("notice_keep"));
    m_keep->setProperty("small", true);
    auto* across = new QHBoxLayout(this);
    across->addWidget(m_text, 1);
    across->addWidget(m_keep, 0, Qt::AlignTop);
    connect(m_keep, &QPushButton::clicked, &ways, [&ways] { ways.keepOurs(); });
    for (const auto signal : {&Session::seasonChanged, &Session::pathChanged, &Session::movedAway,
                              &Session::readingChanged, &Session::lookChanged})
        connect(&session, signal, this, &NoticeBar::look);
    connect(&session, &Session::changed, this, &NoticeBar::look);
    look();
}

void NoticeBar::look() {
    const Look& look = m_session.look();
    layout()->setContentsMargins(look.space(24), look.space(8), look.space(24), look.space(8));
    m_text->setFont(look.font(TextSize::Body, true));
    QPalette warning = m_text->palette();
    warning.setColor(QPalette::WindowText, look.tone(Tone::Warn));
    m_text->setPalette(warning);
    const Season::Standing standing = m_session.standing();
    if (standing != Season::Standing::Ours && !m_session.isSample()) {
        m_text->setText(MovedDialog::whatHappened(standing, m_session.path()) + QLatin1Char(' ') +
                        tr("Nothing more is written until ours is kept as a new file."));
        m_keep->show();
        show();
        return;
    }
    if (!m_session.unreadable().isEmpty()) {
        m_text->setText(m_session.unreadable() + QLatin1Char(' ') +
                        tr("What is shown was read before that."));
        m_keep->hide();
        show();
        return;
    }
    const QString reading = m_session.readingOnly();
    const QString copy = m_session.copySentence();
    m_text->setText(copy.isEmpty() ? tr("For reading only. %1").arg(reading) : copy);
    // What else bars the writing would go along into a copy.
    m_keep->setVisible(m_session.hasSeason() &&
                       m_session.season().readOnly() == ReadOnlyWhy::NotWritable);
    setVisible(!reading.isEmpty() || !copy.isEmpty());
}

void NoticeBar::paintEvent(QPaintEvent*) {
    const Look& look = m_session.look();
    QPainter painter(this);
    painter.fillRect(rect(), look.tone(Tone::Surface));
    painter.fillRect(QRect(0, 0, look.space(4), height()), look.tone(Tone::Warn));
    painter.setPen(look.tone(Tone::Hairline));
    painter.drawLine(0, height() - 1, width(), height() - 1);
}

}  // namespace combwright
