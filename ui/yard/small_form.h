// A short form for one deed, filled by keyboard: it closes only when the deed was done; what was
// refused stays typed, with the reason below.
#pragma once

#include <QComboBox>
#include <QDialog>
#include <QLabel>
#include <QLineEdit>
#include <functional>

#include "ui/shell/session.h"

class QFormLayout;

namespace combwright {

class SmallForm : public QDialog {
    Q_OBJECT

  public:
    SmallForm(QWidget* parent, Session& session, const QString& title);
    QLineEdit* line(const QString& label, const char* name, const QString& example);
    QComboBox* choice(const QString& label, const char* name);
    /// Words that explain, over the whole width.
    void say(const QString& text);
    /// Says whether it was done; then the form closes.
    void onAccept(std::function<bool()> deed) { m_deed = std::move(deed); }

  private:
    QFormLayout* m_form;
    QLabel* m_reason;
    std::function<bool()> m_deed;
};

}  // namespace combwright
