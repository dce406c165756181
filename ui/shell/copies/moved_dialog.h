// Said when the season file was moved, deleted or replaced while it was open, as a sync program or
// a file manager may do: what happened, what was kept, and the offer to keep ours as a new file.
#pragma once

#include <QDialog>
#include <QLabel>

#include "ui/shell/session.h"

namespace combwright {

class FileWays;

class MovedDialog : public QDialog {
    Q_OBJECT

  public:
    MovedDialog(Session& session, FileWays& ways, QWidget* parent);

    /// What happened, in a sentence.
    static QString whatHappened(Season::Standing standing, const QString& path);

  private:
    void keep();

    Session& m_session;
    FileWays& m_ways;
    QLabel* m_trouble;
};

}  // namespace combwright
