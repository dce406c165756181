#include "ui/honey_room/spin_desk.h"

#include <QApplication>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QSettings>

namespace combwright {
namespace {

constexpr QLatin1String spinSheet("honey room");
constexpr QLatin1String spinRow("load that turns");
constexpr QLatin1String bellKey("room_bell");
/// The loud call goes on this often, seconds, until somebody quiets it.
constexpr std::int64_t loudEvery = 2;

}  // namespace

QString HeldLoad::written() const {
    QJsonArray all;
    for (const Part& part : parts)
        all.append(QJsonObject{{QStringLiteral("run"), static_cast<double>(part.run.number)},
                               {QStringLiteral("slots"), part.slotLine}});
    QJsonObject load{{QStringLiteral("number"), static_cast<double>(number)},
                     {QStringLiteral("parts"), all},
                     {QStringLiteral("start_g"), static_cast<double>(startOffset.grams())},
                     {QStringLiteral("end_g"), static_cast<double>(endOffset.grams())},
                     {QStringLiteral("doubt_g"), static_cast<double>(doubt.grams())}};
    if (begun) load.insert(QStringLiteral("begun"), QString::fromStdString(isoText(*begun)));
    return QString::fromUtf8(QJsonDocument(load).toJson(QJsonDocument::Compact));
}

std::optional<HeldLoad> HeldLoad::read(const QString& written) {
    const QJsonObject load = QJsonDocument::fromJson(written.toUtf8()).object();
    HeldLoad held;
    held.number = load.value(QStringLiteral("number")).toInteger();
    const QJsonArray parts = load.value(QStringLiteral("parts")).toArray();
    for (const auto& each : parts) {
        const QJsonObject part = each.toObject();
        held.parts.push_back({Id<Extraction>{part.value(QStringLiteral("run")).toInteger()},
                              part.value(QStringLiteral("slots")).toString()});
    }
    const auto grams = [&](const char* key) {
        return Mass::grams(load.value(QLatin1String(key)).toInteger());
    };
    held.startOffset = grams("start_g");
    held.endOffset = grams("end_g");
    held.doubt = grams("doubt_g");
    held.begun = parseInstant(load.value(QStringLiteral("begun")).toString().toStdString());
    if (held.number < 1 || held.parts.empty()) return std::nullopt;
    return held;
}

SpinDesk::SpinDesk(Session& session, QObject* parent)
    : QObject(parent), m_session(session), m_bell([] { QApplication::beep(); }) {
    m_timer.setInterval(1000);
    connect(&m_timer, &QTimer::timeout, this, &SpinDesk::tick);
    m_bellOn = !session.leavesTrace() || QSettings().value(bellKey, true).toBool();
}

void SpinDesk::setBellOn(bool on) {
    m_bellOn = on;
    if (m_session.leavesTrace()) QSettings().setValue(bellKey, on);
}

bool SpinDesk::start(const HeldLoad& load, std::int64_t minutes) {
    if (turns() || !m_watch.start(m_session.clock(), minutes)) return false;
    m_load = load;
    m_load->begun = m_session.clock().now();
    m_minutes.reset();
    m_called = SpinShown::Call::None;
    m_timer.start();
    hold();
    Q_EMIT ticked();
    return true;
}

void SpinDesk::stand() {
    m_minutes = m_watch.stop(m_session.clock());
    m_called = SpinShown::Call::None;
    m_timer.stop();
    hold();
    Q_EMIT ticked();
}

std::optional<SpinDesk::Taken> SpinDesk::take() {
    if (!m_load) return std::nullopt;
    Taken taken{*m_load, std::nullopt, m_watch};
    if (turns()) stand();
    taken.minutes = m_minutes;
    m_load.reset();
    m_minutes.reset();
    hold();
    Q_EMIT ticked();
    return taken;
}

void SpinDesk::putBack(const Taken& taken) {
    m_load = taken.load;
    m_watch = taken.watch;
    m_minutes = turns() ? std::nullopt : taken.minutes;
    m_called = SpinShown::Call::None;
    if (turns()) m_timer.start();
    hold();
    Q_EMIT ticked();
}

void SpinDesk::abandon() {
    m_watch.abandon();
    m_timer.stop();
    m_load.reset();
    m_minutes.reset();
    m_called = SpinShown::Call::None;
    hold();
    Q_EMIT ticked();
}

void SpinDesk::hold() {
    if (!m_load) return m_session.drafts().drop(spinSheet, spinRow);
    // Wall and plan first, then the load; of one that stands the minutes it took.
    const QString clock = turns()
                              ? m_watch.written()
                              : QStringLiteral("stands %1").arg(m_minutes ? m_minutes->value() : 0);
    m_session.drafts().hold(spinSheet, spinRow, clock + QLatin1Char('|') + m_load->written());
}

void SpinDesk::restore() {
    m_timer.stop();
    m_watch = SpinWatch();
    m_load.reset();
    m_minutes.reset();
    m_called = SpinShown::Call::None;
    const auto rows = m_session.drafts().of(spinSheet);
    const auto found = rows.find(spinRow);
    if (found == rows.end()) return;
    const qsizetype bar = found->second.indexOf(QLatin1Char('|'));
    m_load = HeldLoad::read(found->second.mid(bar + 1));
    if (!m_load) return m_session.drafts().drop(spinSheet, spinRow);
    const QString clock = found->second.left(bar);
    if (clock.startsWith(QLatin1String("stands "))) {
        const std::int64_t minutes = clock.mid(7).toLongLong();
        if (minutes > 0) m_minutes = Minutes(minutes);
        return;
    }
    m_watch = SpinWatch::restored(clock, m_session.clock());
    if (turns()) m_timer.start();
}

void SpinDesk::ring() {
    if (m_bellOn && m_bell) m_bell();
}

void SpinDesk::tick() {
    const SpinShown shown = look();
    if (shown.call == SpinShown::Call::Soft && m_called == SpinShown::Call::None) ring();
    if (shown.call == SpinShown::Call::Loud) {
        if (m_called != SpinShown::Call::Loud) m_calls = 0;
        if (m_calls++ % loudEvery == 0) ring();
    }
    m_called = shown.call;
    Q_EMIT ticked();
}

}  // namespace combwright
