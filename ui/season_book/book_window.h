// The season book of another year in a window of its own, beside the book in the main one: to look
// and compare, nothing is kept from it. It follows what is written meanwhile; Esc closes it.
#pragma once

#include <QLabel>
#include <QWidget>

#include "ui/shell/session.h"

namespace combwright {

class SeasonBookPlace;

class BookWindow : public QWidget {
    Q_OBJECT

  public:
    /// Shown by itself, and gone when it is closed or `parent` is.
    BookWindow(Session& session, int year, QWidget* parent);
    SeasonBookPlace& book() const { return *m_book; }

  protected:
    void keyPressEvent(QKeyEvent* event) override;

  private:
    void sizes();
    void showWords();

    Session& m_session;
    SeasonBookPlace* m_book;
    QLabel* m_title;
    QLabel* m_foot;
};

}  // namespace combwright
