// A short form for one deed, filled by keyboard: it closes only when the deed was done; what was
// refused stays typed, with the reason below.
#pragma once

#include <QComboBox>
#include <QDialog>
#include <QLabel>
#include <QLineEdit>
#include <functional>
#include <vector>

#include "ui/shell/session.h"

class QDialogButtonBox;
class QFormLayout;

namespace combwright {

class SmallForm : public QDialog {
    Q_OBJECT

  public:
    SmallForm(QWidget* parent, Session& session, const QString& title);
    /// `letters` is how many of them the field has room for at least.
    QLineEdit* line(const QString& label, const char* name, const QString& example,
                    int letters = 0);
    QComboBox* choice(const QString& label, const char* name);
    /// Words that explain, over the whole width.
    void say(const QString& text);
    /// Says whether it was done; then the form closes.
    void onAccept(std::function<bool()> deed) { m_deed = std::move(deed); }

  protected:
    void showEvent(QShowEvent* event) override;

  private:
    void enter(QWidget* field);
    /// What is said takes room of its own, none from the fields.
    void growToFit();

    std::vector<QWidget*> m_fields;  ///< in the order they are filled in
    QDialogButtonBox* m_buttons = nullptr;
    QFormLayout* m_form;
    QLabel* m_reason;
    std::function<bool()> m_deed;
};

}  // namespace combwright
