// A watch over the window in builds that check themselves: an event it needs more than a tenth of a
// second for is named, since the hand feels it.
#pragma once

#include <QApplication>
#include <functional>

namespace combwright::desktop {

/// An event that took long, what came within it taken off: a dialog's events come within the one
/// that opened it.
struct SlowEvent {
    qint64 ms = 0;
    QString event;     ///< "KeyPress 70", "Timer"
    QString receiver;  ///< its class, and the names from the window down to it
};

class SlowEvents {
  public:
    static constexpr qint64 feltFromMs = 100;

    explicit SlowEvents(std::function<void(const SlowEvent&)> told) : m_told(std::move(told)) {}

    /// Delivers an event as `deliver` does, and tells of it where that was felt.
    bool watch(QObject* receiver, const QEvent* event, const std::function<bool()>& deliver);

  private:
    std::function<void(const SlowEvent&)> m_told;
    qint64 m_withinMs = 0;  ///< of the event under way: what came within it took so long
};

/// The application. Where NDEBUG is not set it tells slow events in the category combwright.slow.
class WatchedApplication : public QApplication {
  public:
    using QApplication::QApplication;
    bool notify(QObject* receiver, QEvent* event) override;
};

}  // namespace combwright::desktop
