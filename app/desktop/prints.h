// Sheets printed to PDF from the command line.
#pragma once

#include <QPageSize>
#include <QString>

#include "ui/shell/main_window.h"

namespace combwright::desktop {

/// Prints the sheet of that name to a PDF on that paper, larger by `zoom`, or lists the sheets for
/// "list"; the exit code.
int printSheet(MainWindow& window, const QString& name, const QString& to, const QPageSize& paper,
               double zoom, Session& session);

}  // namespace combwright::desktop
