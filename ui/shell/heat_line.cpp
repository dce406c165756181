#include "ui/shell/heat_line.h"

#include <QApplication>
#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QPushButton>
#include <algorithm>

#include "core/actions/wax/batches.h"
#include "core/words/clock_words.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

constexpr QLatin1String heatSheet("heat");
constexpr QLatin1String heatRow("looked at");
/// The call goes on this often, seconds, until somebody quiets it.
constexpr std::int64_t heatLoudEvery = 2;

}  // namespace

HeatLine::HeatLine(Session& session, bool rings, QWidget* parent)
    : QWidget(parent),
      m_session(session),
      m_rings(rings),
      m_rows(new QVBoxLayout(this)),
      m_bell([] { QApplication::beep(); }) {
    setObjectName(rings ? QStringLiteral("heat_line") : QStringLiteral("heat_band"));
    m_timer.setInterval(1000);
    connect(&m_timer, &QTimer::timeout, this, &HeatLine::tick);
    for (const auto signal : {&Session::seasonChanged, &Session::lookChanged})
        connect(&session, signal, this, [this] {
            fill();
            look();
        });
    connect(&session, &Session::changed, this, &HeatLine::look);
    hide();
}

std::optional<Instant> HeatLine::lookedAt() const {
    const auto rows = m_session.drafts().of(heatSheet);
    const auto found = rows.find(heatRow);
    if (found == rows.end()) return std::nullopt;
    return parseInstant(found->second.toStdString());
}

void HeatLine::look() {
    std::vector<HeatShown> now;
    // A file that cannot be read hides no pot that was on.
    if (m_session.hasSeason() && !m_session.reading([&] {
            now = heatNow(m_session.read(), m_session.clock().now(), lookedAt());
        }))
        return;
    see(std::move(now));
}

void HeatLine::see(std::vector<HeatShown> now) {
    const bool same = now.size() == m_shown.size() &&
                      std::equal(now.begin(), now.end(), m_shown.begin(),
                                 [](const HeatShown& a, const HeatShown& b) {
                                     return a.session.id == b.session.id &&
                                            a.session.what == b.session.what &&
                                            a.minutes == b.minutes && a.calls == b.calls;
                                 });
    m_shown = std::move(now);
    if (m_shown.empty()) {
        m_timer.stop();
        m_calls = 0;
    } else if (!m_timer.isActive()) {
        m_timer.start();
    }
    if (!same) fill();
    setVisible(!m_shown.empty() && !m_aside);
}

void HeatLine::standAside(bool aside) {
    m_aside = aside;
    setVisible(!m_shown.empty() && !m_aside);
}

bool HeatLine::calls() const {
    return std::any_of(m_shown.begin(), m_shown.end(),
                       [](const HeatShown& each) { return each.calls; });
}

QString HeatLine::words() const {
    QStringList all;
    for (const HeatShown& each : m_shown)
        all << tr("Heat on: %1, on since %2, %3 min; stay with it, lid to hand.%4")
                   .arg(fromUtf8(each.session.what.text()), clockText(each.session.begun))
                   .arg(static_cast<qlonglong>(each.minutes))
                   .arg(each.calls ? tr(" Look at it now.") : QString());
    return all.join(QLatin1Char(' '));
}

QString HeatLine::sinceText(const HeatSession& heat) const {
    if (!heat.temperature) return tr("on since %1,").arg(clockText(heat.begun));
    return tr("on since %1 at %2,")
        .arg(clockText(heat.begun), shownTemperature(heat.temperature->celsius()).text());
}

void HeatLine::fill() {
    const Look& look = m_session.look();
    const int side = look.space(m_rings ? 24 : 12);
    m_rows->setContentsMargins(side, look.space(4), side, look.space(4));
    m_rows->setSpacing(look.space(4));
    // A tick must not lose the keyboard because a minute went by.
    int focused = -1;
    QString focusedName;
    for (std::size_t n = 0; n < m_rowWidgets.size(); ++n)
        if (QWidget* has = m_rowWidgets[n]->findChild<QPushButton*>();
            has && QApplication::focusWidget() &&
            m_rowWidgets[n]->isAncestorOf(QApplication::focusWidget())) {
            focused = static_cast<int>(n);
            focusedName = QApplication::focusWidget()->objectName();
        }
    for (QWidget* row : m_rowWidgets) {
        m_rows->removeWidget(row);
        row->hide();
        row->deleteLater();
    }
    m_rowWidgets.clear();
    for (const HeatShown& each : m_shown) {
        auto* row = new QWidget(this);
        auto* across = new QHBoxLayout(row);
        across->setContentsMargins(0, 0, 0, 0);
        across->setSpacing(look.space(8));
        auto* text = new QLabel(row);
        text->setObjectName(QStringLiteral("heat_text"));
        text->setTextFormat(Qt::RichText);
        text->setWordWrap(true);
        const QString muted = look.tone(Tone::Muted).name();
        text->setText(QStringLiteral("<span style=\"color:%1\"><b>%2</b></span>&nbsp; %3 &nbsp;"
                                     "<span style=\"color:%4\">%5</span> <b>%6</b> &nbsp;"
                                     "<span style=\"color:%7\">%8</span>")
                          .arg(look.tone(Tone::Warn).name(), tr("Heat on"),
                               fromUtf8(each.session.what.text()).toHtmlEscaped(), muted,
                               sinceText(each.session),
                               tr("%1 min").arg(static_cast<qlonglong>(each.minutes)),
                               each.calls ? look.tone(Tone::Warn).name() : muted,
                               each.calls ? QStringLiteral("<b>%1</b>")
                                                .arg(tr("look at it now: stay with "
                                                        "it, lid to hand"))
                                          : tr("stay with it, lid to hand")));
        across->addWidget(text, 1);
        if (each.calls) {
            auto* here = new QPushButton(tr("&I am here"), row);
            here->setAccessibleName(tr("I am here"));
            here->setObjectName(QStringLiteral("heat_quiet"));
            here->setProperty("small", true);
            connect(here, &QPushButton::clicked, this, &HeatLine::quiet);
            across->addWidget(here);
        }
        // On the wax bench O ticks the one pot there is; of two one says which, and elsewhere Alt
        // goes with it.
        auto* tick =
            new QPushButton(m_rings || m_shown.size() > 1 ? tr("☐ &off") : tr("☐ off   O"), row);
        tick->setObjectName(QStringLiteral("heat_off"));
        tick->setProperty("small", true);
        tick->setAccessibleName(tr("%1 is off").arg(fromUtf8(each.session.what.text())));
        const Id<HeatSession> pot = each.session.id;
        connect(tick, &QPushButton::clicked, this, [this, pot] { off(pot); });
        across->addWidget(tick);
        m_rows->addWidget(row);
        m_rowWidgets.push_back(row);
        if (focused == static_cast<int>(m_rowWidgets.size()) - 1) {
            QPushButton* again = row->findChild<QPushButton*>(focusedName);
            (again ? again : tick)->setFocus();
        }
    }
    setAccessibleName(words());
    updateGeometry();
    update();
}

bool HeatLine::off(Id<HeatSession> pot) {
    return m_session
        .run(HeatOff{.on = m_session.clock().today(),
                     .session = pot,
                     .off = m_session.clock().now(),
                     .temperature = {},
                     .note = {}})
        .has_value();
}

bool HeatLine::tickOff() {
    if (m_shown.size() == 1) return off(m_shown.front().session.id);
    if (m_shown.empty()) return false;
    // Nobody guesses which of two pots is off.
    if (auto* tick = findChild<QPushButton*>(QStringLiteral("heat_off"))) tick->setFocus();
    m_session.tell(tr("More than one pot is on: Tab to the one that is off, Enter ticks it."));
    return false;
}

void HeatLine::quiet() {
    m_session.drafts().hold(heatSheet, heatRow,
                            QString::fromStdString(isoText(m_session.clock().now())));
    m_calls = 0;
    look();
}

void HeatLine::tick() {
    std::vector<HeatSession> open;
    for (HeatShown& each : m_shown) open.push_back(each.session);
    see(heatNow(std::move(open), m_session.clock().now(), lookedAt()));
    if (!calls()) m_calls = 0;
    if (!m_rings || !calls()) return;
    update();
    // The machine may be mute or the window behind another: the desktop is asked to point at it
    // too.
    if (m_calls == 0) QApplication::alert(window());
    if (m_calls++ % heatLoudEvery == 0 && m_bell) m_bell();
}

void HeatLine::paintEvent(QPaintEvent*) {
    const Look& look = m_session.look();
    QPainter painter(this);
    if (m_rings) {
        // Under the head of every place, as what holds all the while stands there.
        painter.fillRect(rect(), look.tone(Tone::Surface));
        // While it calls the bar grows and shrinks, which is seen from across the room.
        const int bar = calls() && m_calls % 2 == 1 ? look.space(16) : look.space(4);
        painter.fillRect(QRect(0, 0, bar, height()), look.tone(Tone::Warn));
        painter.setPen(look.tone(Tone::Hairline));
        painter.drawLine(0, height() - 1, width(), height() - 1);
        return;
    }
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF frame = QRectF(rect()).adjusted(1, 1, -1, -1);
    painter.setPen(QPen(look.tone(Tone::Warn), look.px(1.5)));
    painter.setBrush(look.tone(Tone::Surface));
    painter.drawRoundedRect(frame, look.corner(), look.corner());
    painter.fillRect(QRectF(1, 1, look.space(6), height() - 2), look.tone(Tone::Warn));
}

}  // namespace combwright
