// One line of typing at the foot of the board, for one deed on the chosen hive or box: what is
// asked, what may be typed, what was understood. Enter does it; what is refused stays typed with
// the reason below; Escape leaves it.
#pragma once

#include <QLabel>
#include <QLineEdit>
#include <functional>

#include "ui/shell/session.h"

namespace combwright {

struct LineAsked {
    QString prompt;   ///< "Look into M07"
    QString example;  ///< "9 drawn; 7 capped, 85 % full"
    QString before = {};
    /// What was understood, said back while typing; may be none.
    std::function<QString(const QString&)> readBack = {};
    /// Whether it was done; a refusal was told.
    std::function<bool(const QString&)> deed = {};
    bool keptOnLeaving = false;  ///< done too where the place is left with the line half typed
};

class BoardLine : public QWidget {
    Q_OBJECT

  public:
    explicit BoardLine(Session& session, QWidget* parent = nullptr);
    void ask(LineAsked asked);
    bool isAsking() const { return !isHidden(); }
    /// Does what is kept on leaving; leaves everything else as it is typed.
    void keep();
    void close();

  Q_SIGNALS:
    void closed();

  protected:
    void paintEvent(QPaintEvent*) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    void accept();
    void sayBack(const QString& text);
    void dress();

    Session& m_session;
    LineAsked m_asked;
    QLabel* m_prompt;
    QLineEdit* m_edit;
    QLabel* m_back;
    QLabel* m_reason;
};

}  // namespace combwright
