// The freezer below the board: what it takes, what waits, and its rounds as time.
#pragma once

#include <QWidget>

#include "core/places/storeroom/freezer.h"
#include "ui/drawing/freezer_lane.h"
#include "ui/shell/session.h"

namespace combwright {

class LaneView : public QWidget {
    Q_OBJECT

  public:
    explicit LaneView(Session& session, QWidget* parent = nullptr);
    void show(const FreezerLane& lane);
    const FreezerLaneView& lane() const { return m_lane; }
    QString words() const { return m_facts.join(QLatin1Char('\n')); }

    QSize sizeHint() const override { return {width(), neededHeight()}; }
    QSize minimumSizeHint() const override { return {0, neededHeight()}; }

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    int neededHeight() const;
    double wordsWidth() const;

    Session& m_session;
    FreezerLaneView m_lane;
    QStringList m_facts;  ///< below the title, small
    QString m_waits;      ///< bold, what still waits
    bool m_empty = true;
};

}  // namespace combwright
