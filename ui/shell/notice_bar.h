// A strip under the head for what holds all the while: that a season is open for reading only, and
// why, that its file is no longer where it was, or that it could not be read. The foot tells what
// happened; this stays.
#pragma once

#include <QLabel>
#include <QPushButton>
#include <QWidget>

#include "ui/shell/session.h"

namespace combwright {

class FileWays;

class NoticeBar : public QWidget {
    Q_OBJECT

  public:
    NoticeBar(Session& session, FileWays& ways, QWidget* parent);
    /// Looks again what holds, and hides where nothing does.
    void look();

  protected:
    void paintEvent(QPaintEvent*) override;

  private:
    Session& m_session;
    QLabel* m_text;
    QPushButton* m_keep;
};

}  // namespace combwright
