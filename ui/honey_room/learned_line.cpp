#include "ui/honey_room/learned_line.h"

#include <QHBoxLayout>
#include <algorithm>

#include "core/actions/honey_room/take_rate.h"
#include "core/places/pages/season_book/reckoned_words.h"
#include "core/words/words.h"

namespace combwright {
namespace {

bool isOffered(const GotLine& line) { return line.learned && !line.taken; }

QString learnedPart(const GotLine& line) {
    return QStringLiteral("%1: %2 → %3 %4 %5")
        .arg(gotName(line), gotFigure(line, line.reckoned), gotFigure(line, line.got),
             gotUnit(line), QString(QLatin1Char(letter(line.how))));
}

}  // namespace

LearnedLine::LearnedLine(Session& session, QWidget* parent)
    : QWidget(parent), m_session(session), m_text(new QLabel(this)), m_take(new QPushButton(this)) {
    setObjectName(QStringLiteral("learned"));
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    m_text->setObjectName(QStringLiteral("learned_text"));
    m_text->setWordWrap(true);
    row->addWidget(m_text, 1);
    m_take->setObjectName(QStringLiteral("learned_take"));
    m_take->setText(tr("Take for next year"));
    row->addWidget(m_take, 0, Qt::AlignTop);
    connect(m_take, &QPushButton::clicked, this, &LearnedLine::take);
    connect(&session, &Session::lookChanged, this, &LearnedLine::sizes);
    sizes();
    QWidget::setVisible(false);
}

void LearnedLine::sizes() {
    const Look& look = m_session.look();
    m_text->setFont(look.font(TextSize::Body));
    m_take->setMinimumHeight(look.target(true));
    layout()->setSpacing(look.space(8));
}

void LearnedLine::show(const ReckonedAndGot& reckoned) {
    m_reckoned = reckoned;
    QStringList parts;
    QStringList offers;
    QStringList rules;
    for (const GotLine& line : reckoned.lines) {
        parts << learnedPart(line);
        if (!isOffered(line)) continue;
        offers << QStringLiteral("%1 %2").arg(gotName(line), gotOffer(line));
        rules << gotRule(line);
    }
    QString text = tr("Reckoned and got. %1").arg(parts.join(QStringLiteral("; ")));
    if (!text.endsWith(QLatin1Char('.'))) text += QLatin1Char('.');
    if (!offers.isEmpty())
        text +=
            QLatin1Char(' ') + tr("Offered from %1 on: %2.")
                                   .arg(dayText(reckoned.from), offers.join(QStringLiteral(", ")));
    if (const QString yards = yardRule(reckoned); !yards.isEmpty())
        text += QLatin1Char(' ') + yards;
    m_text->setText(text);
    m_take->setVisible(!offers.isEmpty());
    m_take->setToolTip(rules.join(QLatin1Char('\n')));
    m_take->setAccessibleName(tr("Take for next year: %1").arg(offers.join(QStringLiteral(", "))));
    m_take->setAccessibleDescription(rules.join(QLatin1Char(' ')));
    setVisible(!reckoned.lines.empty());
}

void LearnedLine::take() {
    const ReckonedAndGot now = m_reckoned;
    const auto offered = std::count_if(now.lines.begin(), now.lines.end(), &isOffered);
    if (offered == 0) return;
    const bool kept = m_session.together([&](Season& season) -> Result<void> {
        for (const GotLine& line : now.lines) {
            if (!isOffered(line)) continue;
            if (const auto done = perform(season, takeRate(now, line)); !done) return done.error();
        }
        return {};
    });
    if (kept)
        m_session.tell(tr("Taken from %1 on. The old values stay in the history; Ctrl+Z takes them "
                          "back one by one.")
                           .arg(dayText(now.from)));
}

}  // namespace combwright
