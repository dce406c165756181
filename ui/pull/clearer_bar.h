// Clearer boards under the stacks: how many there are, which are in and until when, which round
// goes in next; and the two things one does with them.
#pragma once

#include <QLabel>
#include <QPushButton>
#include <QWidget>

#include "core/places/pull/clearers.h"
#include "ui/shell/session.h"

namespace combwright {

class ClearerBar : public QWidget {
    Q_OBJECT

  public:
    explicit ClearerBar(Session& session, QWidget* parent = nullptr);
    /// Hidden where no board is in and none is needed.
    void show(const Clearers& boards);

  Q_SIGNALS:
    void putInAsked();
    void takeOutAsked();

  private:
    Session& m_session;
    QLabel* m_words;
    QPushButton* m_in;
    QPushButton* m_out;
};

}  // namespace combwright
