#include "ui/pull/pull_question.h"

#include <QRegularExpression>
#include <algorithm>

#include "core/words/day_words.h"
#include "core/words/words.h"

namespace combwright {

std::optional<Day> comingDay(std::string_view text, Day today) {
    const QString typed = fromUtf8(text).trimmed();
    if (typed.isEmpty()) return std::nullopt;
    const auto said = dayInWords(text, today);
    if (!said) return std::nullopt;
    static const QRegularExpression digit(QStringLiteral("\\d"));
    static const QRegularExpression year(QStringLiteral("\\d{4}"));
    if (!typed.contains(digit)) {
        // Six days on, a weekday's last is the one that comes; any other word moves along.
        const auto weekday = dayInWords(text, today + days(6));
        const auto nextWeek = dayInWords(text, today + days(7));
        const bool isWeekday =
            nextWeek && *nextWeek == *said + days(7) && weekday && *weekday != *said + days(6);
        const bool isSeventh = *said == today && weekday && *weekday == today;
        if (isSeventh || isWeekday) return std::max(*weekday, today);
    } else if (*said < today && !typed.contains(year) && !typed.startsWith(QLatin1Char('-'))) {
        const auto next = makeDay(yearOf(*said) + 1, monthOf(*said), dayOfMonth(*said));
        if (next && *next >= today && *next <= today + days(335)) return next;
    }
    if (*said < today) return std::nullopt;
    return said;
}

PullQuestion::PullQuestion(Session& session, QWidget* parent)
    : QWidget(parent),
      m_session(session),
      m_for(new QLabel(tr("for"), this)),
      m_day(new QLineEdit(this)),
      m_trouble(new QLabel(this)) {
    setObjectName(QStringLiteral("pull_question"));
    m_day->setObjectName(QStringLiteral("for_day"));
    m_day->setAccessibleName(tr("Day of the pull"));
    m_for->setBuddy(m_day);
    m_trouble->setObjectName(QStringLiteral("day_trouble"));
    connect(m_day, &QLineEdit::textEdited, this, &PullQuestion::takeDay);
    connect(m_day, &QLineEdit::editingFinished, this, [this] {
        if (m_trouble->text().isEmpty()) m_day->setText(dayText(m_forDay));
    });
    connect(&session, &Session::lookChanged, this, [this] { flow(width(), true); });
}

void PullQuestion::forget() {
    m_trouble->clear();
    m_day->clear();
    m_day->clearFocus();
}

void PullQuestion::show(const std::vector<Yard>& yards, const PullAsked& asked) {
    bool same = yards.size() == m_ticks.size();
    for (std::size_t i = 0; same && i < yards.size(); ++i)
        same = yards[i].id == m_ticks[i].first &&
               m_ticks[i].second->text() == fromUtf8(yards[i].name.text());
    if (!same) {
        for (const auto& [id, tick] : m_ticks) tick->deleteLater();
        m_ticks.clear();
        QWidget* before = nullptr;
        for (const Yard& yard : yards) {
            // An ampersand in a name is no key.
            QString name = fromUtf8(yard.name.text());
            auto* tick = new QCheckBox(name.replace(QLatin1Char('&'), QStringLiteral("&&")), this);
            tick->setObjectName(QStringLiteral("yard_%1").arg(m_ticks.size() + 1));
            tick->setAccessibleName(tr("Pull from %1").arg(fromUtf8(yard.name.text())));
            if (before) setTabOrder(before, tick);
            before = tick;
            connect(tick, &QCheckBox::toggled, this, &PullQuestion::changed);
            tick->show();
            m_ticks.emplace_back(yard.id, tick);
        }
        if (before) setTabOrder(before, m_day);
    }
    for (const auto& [id, tick] : m_ticks) {
        const QSignalBlocker quiet(tick);
        tick->setChecked(std::find(asked.yards.begin(), asked.yards.end(), id) !=
                         asked.yards.end());
    }
    m_forDay = asked.forDay;
    if (m_trouble->text().isEmpty() && !(m_day->hasFocus() && m_day->isModified()))
        m_day->setText(dayText(m_forDay));
    flow(width(), true);
    updateGeometry();
}

std::vector<Id<Yard>> PullQuestion::yards() const {
    std::vector<Id<Yard>> ticked;
    for (const auto& [id, tick] : m_ticks)
        if (tick->isChecked()) ticked.push_back(id);
    return ticked;
}

void PullQuestion::takeDay() {
    const Day today = m_session.clock().today();
    const auto meant = comingDay(m_day->text().toStdString(), today);
    const QString trouble = meant ? QString()
                                  : tr("“%1” is no day from today on; %2 holds.")
                                        .arg(m_day->text().toHtmlEscaped(), dayText(m_forDay));
    m_trouble->setText(trouble.isEmpty()
                           ? QString()
                           : QStringLiteral("<span style='color:%1'>%2</span>")
                                 .arg(m_session.look().tone(Tone::Bad).name(), trouble));
    m_day->setAccessibleDescription(trouble);
    flow(width(), true);
    updateGeometry();
    if (!meant) {
        m_session.tell(trouble, true);
        return;
    }
    m_forDay = *meant;
    Q_EMIT changed();
}

int PullQuestion::flow(int width, bool place) const {
    const Look& look = m_session.look();
    const int gap = look.space(12);
    std::vector<std::pair<QWidget*, QSize>> pieces;
    for (const auto& [id, tick] : m_ticks) pieces.emplace_back(tick, tick->sizeHint());
    pieces.emplace_back(m_for, m_for->sizeHint());
    pieces.emplace_back(m_day, QSize(look.space(148), m_day->sizeHint().height()));
    if (!m_trouble->text().isEmpty()) pieces.emplace_back(m_trouble, m_trouble->sizeHint());
    int tallest = 0;
    for (const auto& [widget, size] : pieces) tallest = std::max(tallest, size.height());
    int x = 0;
    int y = 0;
    for (const auto& [widget, size] : pieces) {
        if (x > 0 && x + size.width() > width) {
            x = 0;
            y += tallest + look.space(4);
        }
        if (place)
            widget->setGeometry(x, y + (tallest - size.height()) / 2,
                                std::min(size.width(), std::max(1, width - x)), size.height());
        x += size.width() + gap;
    }
    if (place) m_trouble->setVisible(!m_trouble->text().isEmpty());
    return y + tallest;
}

int PullQuestion::heightForWidth(int width) const { return flow(width, false); }

QSize PullQuestion::sizeHint() const {
    return {m_session.look().space(400),
            flow(std::max(width(), m_session.look().space(160)), false)};
}

QSize PullQuestion::minimumSizeHint() const {
    return {m_session.look().space(160), sizeHint().height()};
}

void PullQuestion::resizeEvent(QResizeEvent*) {
    flow(width(), true);
    updateGeometry();
}

}  // namespace combwright
