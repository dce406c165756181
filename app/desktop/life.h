// What ties the window to the person's machine while it is open: it ends well when the machine goes
// down, and comes forward when its season is opened a second time.
#pragma once

#include <QObject>

#include "app/desktop/end_signals.h"
#include "app/desktop/one_window.h"
#include "ui/shell/main_window.h"

namespace combwright::desktop {

class Life : public QObject {
    Q_OBJECT

  public:
    Life(MainWindow& window, Session& session);

    /// Whether another window of the same person has the file open; it was asked to come forward.
    bool openElsewhere(const QString& path) const { return m_oneWindow.askOther(path); }

  private:
    EndSignals m_endSignals;
    OneWindow m_oneWindow;
};

}  // namespace combwright::desktop
