// Linked into a program with a window, tells when its first frame stood and ends it there. It
// watches from beside: the program's own main is not touched. Asleep unless it was asked for.
#include <QCoreApplication>
#include <QEvent>
#include <QWidget>
#include <chrono>
#include <cstdio>
#include <cstdlib>

namespace {

long long nowNs() {
    return std::chrono::duration_cast<std::chrono::nanoseconds>(
               std::chrono::steady_clock::now().time_since_epoch())
        .count();
}

// Made before main, when all libraries are in.
const long long loadedNs = nowNs();

class FirstFrameWatch : public QObject {
  public:
    explicit FirstFrameWatch(QObject* application) : QObject(application) {
        application->installEventFilter(this);
    }

  protected:
    bool eventFilter(QObject* to, QEvent* event) override {
        const auto* widget = qobject_cast<const QWidget*>(to);
        if (!widget || !widget->isWindow() || m_paintedNs) return false;
        if (event->type() == QEvent::Show) m_shownNs = nowNs();
        if (event->type() == QEvent::Paint) {
            m_paintedNs = nowNs();
            // Comes up when the whole window is painted and given to the screen.
            QMetaObject::invokeMethod(
                this, [this] { end(); }, Qt::QueuedConnection);
        }
        return false;
    }

  private:
    void end() const {
        std::printf("loaded %lld\napplication %lld\nshown %lld\npainting %lld\nframe %lld\n",
                    loadedNs, m_applicationNs, m_shownNs, m_paintedNs, nowNs());
        std::exit(0);
    }

    const long long m_applicationNs = nowNs();
    long long m_shownNs = 0;
    long long m_paintedNs = 0;
};

void watchFirstFrame() {
    if (qEnvironmentVariableIsSet("COMBWRIGHT_BENCH_FIRST_FRAME"))
        new FirstFrameWatch(QCoreApplication::instance());
}

}  // namespace

Q_COREAPP_STARTUP_FUNCTION(watchFirstFrame)
