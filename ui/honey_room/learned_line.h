// What a run taught, under its balance: a frame, the knife, a load and the cappings as reckoned and
// as got, and one button that takes what is offered for next year. The season book shows the same
// line by line; nothing is taken by itself.
#pragma once

#include <QLabel>
#include <QPushButton>

#include "core/places/season_book/reckoned_got.h"
#include "ui/shell/session.h"

namespace combwright {

class LearnedLine : public QWidget {
    Q_OBJECT

  public:
    explicit LearnedLine(Session& session, QWidget* parent = nullptr);

    /// Hides itself where the run teaches nothing.
    void show(const ReckonedAndGot& reckoned);
    const ReckonedAndGot& reckoned() const { return m_reckoned; }
    QString text() const { return m_text->text(); }
    QPushButton& button() const { return *m_take; }

    /// Takes every value offered and not taken yet, together: one undo each, one telling for all.
    void take();

  private:
    void sizes();

    Session& m_session;
    ReckonedAndGot m_reckoned;
    QLabel* m_text;
    QPushButton* m_take;
};

}  // namespace combwright
