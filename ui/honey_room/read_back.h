// What was just entered, read back so large that it is seen from the scales: on one line in big
// type where it fits, else on two in the room's own.
#pragma once

#include <QWidget>

#include "ui/shell/session.h"

namespace combwright {

class ReadBack : public QWidget {
    Q_OBJECT

  public:
    explicit ReadBack(Session& session, QWidget* parent = nullptr);
    void say(const QString& text, bool bad);
    const QString& text() const { return m_text; }
    /// What may be typed now, small under it; empty where nothing is asked.
    void hint(const QString& text);
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

  protected:
    void paintEvent(QPaintEvent*) override;

  private:
    Session& m_session;
    QString m_text;
    QString m_hint;
    bool m_bad = false;
};

}  // namespace combwright
