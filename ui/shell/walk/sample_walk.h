// The panel below a place that leads through a first year in the invented season: what to look at,
// what to try, forth and back. All of it is in a throw-away copy; a season of the keeper's own
// stays open as it is, and the walk has a window beside it.
#pragma once

#include <QAction>
#include <QBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QWidget>
#include <optional>

#include "ui/shell/walk/walk_steps.h"

namespace combwright {

class MainWindow;

class SampleWalk : public QWidget {
    Q_OBJECT

  public:
    SampleWalk(Session& session, MainWindow& window, QWidget* parent);
    /// From the first step.
    void begin();
    /// The panel goes; the sample stays open to try more.
    void leave();
    bool isOn() const { return m_until.has_value(); }
    int step() const { return m_step; }  ///< from 0
    int count() const { return static_cast<int>(m_steps.size()); }

  protected:
    void paintEvent(QPaintEvent*) override;
    void resizeEvent(QResizeEvent*) override;

  private:
    void go(int step);
    void goTo(const WalkStep& step);
    void fill();
    void applyLook();
    void arrange();
    void end();

    Session& m_session;
    MainWindow& m_window;
    std::vector<WalkStep> m_steps;
    int m_step = 0;
    std::optional<DemoUntil> m_until;  ///< how far what is open was told; none: no walk
    bool m_turning = false;            ///< the walk itself opens another copy
    QBoxLayout* m_across;
    QLabel* m_title;
    QLabel* m_says;
    QPushButton* m_backButton;
    QPushButton* m_nextButton;
    QPushButton* m_leaveButton;
    QAction* m_back;
    QAction* m_next;
};

}  // namespace combwright
