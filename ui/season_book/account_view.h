// A section of the year's account as a ledger: a name, its figure on one edge, a few words; what it
// closes at stands over a double rule. It is as high as its lines: the page scrolls, not the
// section.
#pragma once

#include <QLabel>
#include <QTableWidget>

#include "core/places/season_book/account_sections.h"
#include "ui/shell/session.h"

namespace combwright {

/// The lines themselves, one row each, by keyboard up and down.
class AccountLines : public QTableWidget {
    Q_OBJECT

  public:
    AccountLines(Session& session, QWidget* parent);
    void show(const AccountSection& section);
    const AccountSection& section() const { return m_section; }
    void measure();
    /// With every line on view, px.
    int wholeHeight() const;

  Q_SIGNALS:
    void opened();  ///< Enter, or a double click, on a line

  protected:
    void keyPressEvent(QKeyEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;

  private:
    Session& m_session;
    AccountSection m_section;
};

class AccountView : public QWidget {
    Q_OBJECT

  public:
    AccountView(Session& session, QWidget* parent);
    void show(const AccountSection& section);
    const AccountSection& section() const { return m_lines->section(); }
    AccountLines& lines() const { return *m_lines; }
    /// The line one is at; none in an empty section.
    const AccountLine* current() const;
    void sizes();

  private:
    Session& m_session;
    QLabel* m_title;
    AccountLines* m_lines;
    QLabel* m_note;
};

}  // namespace combwright
