#include "ui/pull/clearer_bar.h"

#include <QHBoxLayout>

#include "core/places/pages/pull/clearers_page.h"
#include "core/words/words.h"

namespace combwright {

ClearerBar::ClearerBar(Session& session, QWidget* parent) : QWidget(parent), m_session(session) {
    setObjectName(QStringLiteral("clearer_bar"));
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 4, 0, 4);
    row->setSpacing(8);
    m_words = new QLabel(this);
    m_words->setObjectName(QStringLiteral("clearer_words"));
    m_words->setWordWrap(true);
    m_words->setTextFormat(Qt::RichText);
    row->addWidget(m_words, 1);
    const auto button = [this](const char* name) {
        auto* made = new QPushButton(this);
        made->setObjectName(QLatin1String(name));
        made->setProperty("small", true);
        return made;
    };
    m_in = button("boards_in");
    m_out = button("boards_out");
    row->addWidget(m_in, 0, Qt::AlignTop);
    row->addWidget(m_out, 0, Qt::AlignTop);
    connect(m_in, &QPushButton::clicked, this, &ClearerBar::putInAsked);
    connect(m_out, &QPushButton::clicked, this, &ClearerBar::takeOutAsked);
    hide();
}

void ClearerBar::show(const Clearers& boards) {
    setVisible(!boards.in.empty() || !boards.need.empty());
    const QString warn = m_session.look().tone(Tone::Warn).name();
    QStringList parts{QStringLiteral("<b>%1</b> %2.")
                          .arg(tr("Clearer boards"), boardsCountedText(boards).toHtmlEscaped())};
    for (const ClearerIn& each : boards.in) {
        const QString text = QStringLiteral("%1 %2.").arg(fromUtf8(each.hive).toHtmlEscaped(),
                                                          boardInText(each).toHtmlEscaped());
        parts << (each.state == ClearerIn::State::Clearing
                      ? text
                      : QStringLiteral("<b style='color:%1'>%2</b>").arg(warn, text));
    }
    for (const QString& round : roundTexts(boards.rounds)) parts << round.toHtmlEscaped();
    if (!boards.need.empty() && boards.rounds.empty())
        parts << tr("No board is left: brush the others.");
    m_words->setText(parts.join(QLatin1Char(' ')));
    const bool mayIn = !boards.rounds.empty() && boards.free() != 0;
    m_in->setVisible(mayIn);
    m_out->setVisible(!boards.in.empty());
    if (mayIn) {
        m_in->setText(
            tr("Put %1 in   I").arg(static_cast<qlonglong>(boards.rounds.front().ids.size())));
        m_in->setAccessibleName(tr("Put the boards of this round in"));
    }
    m_out->setText(tr("Take %1 out   O").arg(static_cast<qlonglong>(boards.in.size())));
    m_out->setAccessibleName(tr("Take all boards out"));
}

}  // namespace combwright
