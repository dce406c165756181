#include "app/desktop/life.h"

#include <QApplication>

namespace combwright::desktop {

Life::Life(MainWindow& window, Session& session)
    : m_oneWindow(qEnvironmentVariable("XDG_RUNTIME_DIR")) {
    connect(&m_endSignals, &EndSignals::asked, this, [&window] {
        window.endQuietly();
        // Also out of a dialog that is open.
        QApplication::quit();
    });
    connect(&m_oneWindow, &OneWindow::asked, &window, [&window](const QByteArray& token) {
        // What lets a window in front where the desktop asks for leave.
        if (!token.isEmpty()) qputenv("XDG_ACTIVATION_TOKEN", token);
        window.comeForward();
    });
    const auto answer = [this, &session] {
        m_oneWindow.answerFor(session.isSample() ? QString() : session.path());
    };
    connect(&session, &Session::seasonChanged, this, answer);
    connect(&session, &Session::pathChanged, this, answer);
    window.files().setElsewhere([this](const QString& path) { return openElsewhere(path); });
}

}  // namespace combwright::desktop
