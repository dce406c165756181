// What goes to whoever helps, shown whole before it is saved: nobody should have to trust that
// nothing of theirs is in it.
#pragma once

#include <QDialog>

#include "ui/shell/session.h"

class QPlainTextEdit;

namespace combwright {

class DiagnosticsDialog : public QDialog {
    Q_OBJECT

  public:
    DiagnosticsDialog(Session& session, QWidget* parent);

  private:
    void save();

    Session& m_session;
    QPlainTextEdit* m_text;
};

}  // namespace combwright
