#include "app/desktop/end_signals.h"

#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <csignal>

namespace combwright::desktop {
namespace {

volatile std::sig_atomic_t endPipe = -1;

constexpr int endingSignals[] = {SIGTERM, SIGINT, SIGHUP};

extern "C" void noteEnd(int) {
    const int before = errno;
    const char byte = 1;
    // A full pipe holds the news already.
    if (const ssize_t written = ::write(endPipe, &byte, 1); written < 0) errno = before;
    errno = before;
}

}  // namespace

EndSignals::EndSignals(QObject* parent) : QObject(parent) {
    if (::pipe2(m_ends, O_CLOEXEC | O_NONBLOCK) != 0) return;
    endPipe = m_ends[1];
    m_notifier = std::make_unique<QSocketNotifier>(m_ends[0], QSocketNotifier::Read);
    connect(m_notifier.get(), &QSocketNotifier::activated, this, [this] {
        char bytes[16];
        if (::read(m_ends[0], bytes, sizeof(bytes)) > 0) Q_EMIT asked();
    });
    struct sigaction action {};
    action.sa_handler = noteEnd;
    action.sa_flags = SA_RESTART;
    sigemptyset(&action.sa_mask);
    for (const int signal : endingSignals) ::sigaction(signal, &action, nullptr);
}

EndSignals::~EndSignals() {
    for (const int signal : endingSignals) std::signal(signal, SIG_DFL);
    endPipe = -1;
    m_notifier.reset();
    for (const int end : m_ends)
        if (end >= 0) ::close(end);
}

}  // namespace combwright::desktop
