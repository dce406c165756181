// Pictures of every place, light and dark and at twice the text size, without a display: for the
// README and for looking at what was made.
#pragma once

#include <QApplication>
#include <QString>

#include "ui/shell/main_window.h"

namespace combwright::desktop {

/// Writes DIR/yard.png, yard-dark.png, yard-200.png …; the exit code.
int writePictures(QApplication& application, MainWindow& window, Session& session,
                  const QString& folder);

}  // namespace combwright::desktop
