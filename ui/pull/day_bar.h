// The day in the honey room as a bar: setting up, uncapping lot by lot, the loads spun one after
// another with their numbers, washing up. One sees who waits for whom.
#pragma once

#include <QWidget>
#include <optional>

#include "core/places/pull/pull_sheet.h"
#include "ui/shell/session.h"

namespace combwright {

class DayBar : public QWidget {
    Q_OBJECT

  public:
    explicit DayBar(Session& session, QWidget* parent = nullptr);
    void show(const PullSheet& sheet);
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

  protected:
    void paintEvent(QPaintEvent*) override;

  private:
    void paintUncapping(QPainter& painter, double top, double height) const;
    void paintLoads(QPainter& painter, double top, double height) const;
    void paintHours(QPainter& painter, double top) const;
    /// Minutes of the day as a place across.
    double at(double minutes) const;

    Session& m_session;
    std::optional<DayPlan> m_day;
    double m_setUpMin = 0;
    double m_washMin = 0;
};

}  // namespace combwright
