// The machine is going down, or somebody ended the program from a shell: the line still being typed
// is kept as when the window is closed. What a signal handler may do is next to nothing, so it
// writes one byte into a pipe and the event loop does the rest.
#pragma once

#include <QObject>
#include <QSocketNotifier>
#include <memory>

namespace combwright::desktop {

/// One at a time in a process.
class EndSignals : public QObject {
    Q_OBJECT

  public:
    explicit EndSignals(QObject* parent = nullptr);
    ~EndSignals() override;

  Q_SIGNALS:
    void asked();  ///< SIGTERM, SIGINT or SIGHUP came

  private:
    int m_ends[2] = {-1, -1};
    std::unique_ptr<QSocketNotifier> m_notifier;
};

}  // namespace combwright::desktop
