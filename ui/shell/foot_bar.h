// The foot of the window: how-known letters, two key hints, what would be taken back and, after
// that, done again. What was told last stands here too, refusals and troubles first, until the next
// thing happens.
#pragma once

#include <QWidget>

#include "ui/shell/place.h"

namespace combwright {

class FootBar : public QWidget {
    Q_OBJECT

  public:
    explicit FootBar(Session& session, QWidget* parent = nullptr);
    void setHints(std::vector<KeyHint> hints);
    /// One line, or as many as what was told takes in the width there is.
    QSize sizeHint() const override;
    /// What was told last and still stands.
    const QString& told() const { return m_told; }
    /// What was told was about something that is no longer in front of the person.
    void forget();

  protected:
    void paintEvent(QPaintEvent*) override;
    void resizeEvent(QResizeEvent* event) override;

  private:
    void tell(const QString& text, bool bad);
    QFont toldFont() const;
    int roomForTold() const;
    /// As many lines as what was told needs.
    void takeRoom();

    Session& m_session;
    std::vector<KeyHint> m_hints;
    QString m_told;
    bool m_bad = false;
};

}  // namespace combwright
