#include "app/desktop/slow_events.h"

#include <QElapsedTimer>
#include <QKeyEvent>
#include <QLoggingCategory>
#include <QMetaEnum>
#include <QPointer>
#include <utility>

namespace combwright::desktop {
namespace {

#ifndef NDEBUG
Q_LOGGING_CATEGORY(slowLog, "combwright.slow")
#endif

QString wayTo(const QObject* object) {
    QStringList way;
    for (const QObject* each = object; each; each = each->parent())
        if (!each->objectName().isEmpty()) way.prepend(each->objectName());
    return way.join(QLatin1Char('/'));
}

}  // namespace

bool SlowEvents::watch(QObject* receiver, const QEvent* event,
                       const std::function<bool()>& deliver) {
    // Afterwards both may be gone.
    const QEvent::Type type = event->type();
    const int key =
        type == QEvent::KeyPress ? static_cast<const QKeyEvent*>(event)->key() : Qt::Key_unknown;
    const char* kind = receiver->metaObject()->className();
    const QPointer<QObject> still(receiver);
    const qint64 outside = std::exchange(m_withinMs, 0);
    QElapsedTimer clock;
    clock.start();
    const bool done = deliver();
    const qint64 whole = clock.elapsed();
    const qint64 own = whole - std::exchange(m_withinMs, outside + whole);
    if (own <= feltFromMs) return done;
    SlowEvent slow{own, QString::number(type), QString::fromLatin1(kind)};
    if (const char* name = QMetaEnum::fromType<QEvent::Type>().valueToKey(type))
        slow.event = QString::fromLatin1(name);
    if (key != Qt::Key_unknown) slow.event += QStringLiteral(" %1").arg(key);
    if (const QString way = wayTo(still); !way.isEmpty()) slow.receiver += QLatin1Char(' ') + way;
    m_told(slow);
    return done;
}

bool WatchedApplication::notify(QObject* receiver, QEvent* event) {
#ifdef NDEBUG
    return QApplication::notify(receiver, event);
#else
    static SlowEvents slow([](const SlowEvent& each) {
        qCWarning(slowLog).noquote() << each.ms << "ms:" << each.event << "to" << each.receiver;
    });
    return slow.watch(receiver, event, [&] { return QApplication::notify(receiver, event); });
#endif
}

}  // namespace combwright::desktop
