// A short form for one deed, filled by keyboard: it closes only when the deed was done; what was
// refused stays typed, with the reason below.
#pragma once

#include <QComboBox>
#include <QDialog>
#include <QLabel>
#include <QLineEdit>
#include <functional>
#include <vector>

#include "ui/shell/form_drafts.h"
#include "ui/shell/session.h"

class QDialogButtonBox;
class QFormLayout;
class QScrollArea;

namespace combwright {

/// A title with the day where that is not today: nobody writes into a past day unawares.
QString titleOfDay(const Session& session, const QString& title, Day on);

class SmallForm : public QDialog {
    Q_OBJECT

  public:
    SmallForm(QWidget* parent, Session& session, const QString& title);
    /// What is written belongs to that day; the title says so where it is not today.
    void ofDay(Day on) { setWindowTitle(titleOfDay(m_session, windowTitle(), on)); }
    /// `letters` is how many of them the field has room for at least.
    QLineEdit* line(const QString& label, const char* name, const QString& example,
                    int letters = 0);
    QComboBox* choice(const QString& label, const char* name);
    /// Words that explain, over the whole width.
    QLabel* say(const QString& text);
    /// The same where work can hurt.
    QLabel* caution(const QString& text);
    /// Other words in their place; none take no room.
    void sayAgain(QLabel* words, const QString& text);
    /// A field that says nothing here is not shown, nor its label.
    void showField(QWidget* field, bool shown);
    /// Done at once, and again whenever another answer is chosen there.
    void fitWith(QComboBox* choice, const std::function<void()>& fit);
    /// Where the cursor begins; else in the first choice or empty line.
    void beginIn(QWidget* field) { m_first = field; }
    /// Of many fields: they scroll where the screen is too low for them. Before the first field.
    void scrollFields();
    /// The fields are there and filled: what is typed and not kept comes back under that name.
    void keepDraft(const QString& sheet);
    /// Says whether it was done; then the form closes.
    void onAccept(std::function<bool()> deed) { m_deed = std::move(deed); }
    /// Enter in a line goes to the next, from the last one to the button that keeps.
    void goOnByEnter() { m_enterGoesOn = true; }

  public Q_SLOTS:
    void done(int result) override;

  protected:
    void showEvent(QShowEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

  private:
    void forgetReason();
    void showWholeWords();
    void enter(QWidget* field);
    bool goOn();
    void scrollBy(int key);
    /// What is said takes room of its own, none from the fields.
    void growToFit();

    Session& m_session;
    QWidget* m_first = nullptr;
    std::vector<QWidget*> m_fields;  ///< in the order they are filled in
    QDialogButtonBox* m_buttons = nullptr;
    QFormLayout* m_form;
    QLabel* m_reason;
    QScrollArea* m_scroll = nullptr;
    FormDrafts* m_drafts = nullptr;
    std::function<bool()> m_deed;
    bool m_enterGoesOn = false;
};

}  // namespace combwright
