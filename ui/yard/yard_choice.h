// The yard one is at, chosen from all of them: as wide as the longest name, so that none is cut;
// one so long that it would push the day out of the head ends in an ellipsis and is read whole in
// the open list and in the tip.
#pragma once

#include <QComboBox>

#include "ui/shell/session.h"

namespace combwright {

class YardChoice : public QComboBox {
    Q_OBJECT

  public:
    explicit YardChoice(Session& session, QWidget* parent);
    /// The names are there: takes the width they need.
    void fit();

  protected:
    void paintEvent(QPaintEvent*) override;

  private:
    /// Where the style writes the name, px.
    int nameRoom(int width) const;

    Session& m_session;
};

}  // namespace combwright
