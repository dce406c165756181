// The way of honey both ways, read at the telephone: of a bucket or lot chosen, or of whatever the
// other side can name: the code on a jar, a run, a hive, a box. It is printed as it is read, kept
// as it reads today, and sheets kept before are seen again as they were.
#pragma once

#include <QComboBox>
#include <QDialog>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

#include "core/places/trace/trace.h"
#include "ui/honey_room/page_browser.h"
#include "ui/shell/session.h"

namespace combwright {

class TraceView : public QDialog {
    Q_OBJECT

  public:
    TraceView(Session& session, std::optional<TraceOf> of, Day on, QWidget* parent);

    const std::optional<Trace>& traced() const { return m_trace; }
    /// What is shown, to print.
    const Page& page() const { return m_page; }

  Q_SIGNALS:
    void printAsked();

  private:
    void find();
    void traceIt(const TraceOf& of);
    void showSheet();
    void keep();

    Session& m_session;
    Day m_on;
    QLineEdit* m_of;
    QComboBox* m_which;
    QComboBox* m_sheets;
    PageBrowser* m_words;
    QLabel* m_reason;
    QPushButton* m_keep;
    QPushButton* m_print;
    std::vector<TraceOf> m_meant;
    std::optional<Trace> m_trace;
    Page m_page;
};

/// Opens it and waits until it is closed.
void showTrace(QWidget* parent, Session& session, const std::optional<TraceOf>& of, Day on);

}  // namespace combwright
