// What stands in the window while no season is open: what to do first, with the button that does
// it.
#pragma once

#include <QWidget>

#include "ui/shell/session.h"

namespace combwright {

class StartPage : public QWidget {
    Q_OBJECT

  public:
    explicit StartPage(Session& session, QWidget* parent = nullptr);

  private:
    void makeNew();
    void openFile();

    Session& m_session;
};

}  // namespace combwright
