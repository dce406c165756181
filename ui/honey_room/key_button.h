// A button of the honey room that is a key as well: the key in bold, beside it what it does. One
// learns the keys from the buttons and then needs them no more.
#pragma once

#include <QPushButton>

#include "ui/shell/session.h"

namespace combwright {

class KeyButton : public QPushButton {
    Q_OBJECT

  public:
    KeyButton(Session& session, const QString& keys, const QString& what,
              QWidget* parent = nullptr);
    void setKeys(const QString& keys, const QString& what);
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

  protected:
    void paintEvent(QPaintEvent*) override;

  private:
    Session& m_session;
    QString m_keys;
    QString m_what;
};

}  // namespace combwright
