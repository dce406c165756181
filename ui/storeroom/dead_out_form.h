// The card of a colony found dead, filled in at the desk: eight plain questions, a blank for what
// nobody looked for, and below what it looks like, what may become of its combs and what to do
// today. Never a diagnosis.
#pragma once

#include <QComboBox>
#include <QDialog>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <map>
#include <string>
#include <vector>

#include "core/places/health/dead_outs.h"
#include "ui/shell/form_drafts.h"
#include "ui/shell/session.h"

namespace combwright {

class DeadOutForm : public QDialog {
    Q_OBJECT

  public:
    DeadOutForm(Session& session, Day on, QWidget* parent = nullptr);
    bool kept() const { return m_kept; }
    QComboBox& colony() { return *m_colony; }
    QString reading() const { return m_reading->text(); }

  Q_SIGNALS:
    void printAsked(qlonglong colony);

  protected:
    /// Enter keeps, wherever the cursor is but on another button.
    void keyPressEvent(QKeyEvent* event) override;

  private:
    QComboBox* ask(const char* field, const QStringList& answers);
    void fillColonies();
    void fill();
    void keep();
    DeadOut typed() const;
    void showTyped();
    void showReading(const DeadOutCard& card);

    Session& m_session;
    Day m_on;
    bool m_kept = false;
    bool m_filling = false;
    std::vector<DeadOutCard> m_cards;
    QComboBox* m_colony;
    QWidget* m_questions;
    std::map<std::string, QComboBox*> m_answers;  ///< by field
    std::vector<QComboBox*> m_asked;              ///< in the order they stand
    QLineEdit* m_cause;
    QLineEdit* m_by;
    QLabel* m_reading;
    FormDrafts* m_drafts;
    QLabel* m_reason;
};

/// Whether anything was kept; says so where no colony is dead.
bool askAboutDeadOuts(QWidget* parent, Session& session, Day on);

}  // namespace combwright
