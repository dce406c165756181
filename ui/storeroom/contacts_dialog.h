// What moved in or out of a hive under suspicion since it was last found sound: read on the screen,
// printed for the inspector, and held back in one step. Nothing of it moves until the inspector has
// been.
#pragma once

#include <QComboBox>
#include <QDialog>
#include <QLabel>
#include <QPushButton>
#include <QTableWidget>
#include <optional>

#include "core/places/health/contact_trace.h"
#include "ui/shell/session.h"

namespace combwright {

class ContactsDialog : public QDialog {
    Q_OBJECT

  public:
    /// Hives under suspicion, and `hive` where there is one; that one is shown first.
    ContactsDialog(Session& session, Day on, std::optional<Id<Hive>> hive,
                   QWidget* parent = nullptr);
    const std::optional<ContactTrace>& trace() const { return m_trace; }

  Q_SIGNALS:
    void printAsked();

  protected:
    void resizeEvent(QResizeEvent* event) override;

  private:
    void fill();
    void holdAll();

    Session& m_session;
    Day m_on;
    std::optional<ContactTrace> m_trace;
    QComboBox* m_hive;
    QLabel* m_caution;
    QLabel* m_since;
    QTableWidget* m_moved;
    QLabel* m_reason;
    QPushButton* m_hold;
    QPushButton* m_print;
    QPushButton* m_close;
};

/// Opens it on that hive, or on the newest suspicion; says so where there is neither.
void showContacts(QWidget* parent, Session& session, Day on, std::optional<Id<Hive>> hive);

}  // namespace combwright
