// The ribbon of the year over Today: read, not operated; a screen reader is told what it says.
#pragma once

#include <QWidget>

#include "core/places/today/year_ribbon.h"
#include "ui/drawing/ribbon.h"
#include "ui/shell/session.h"

namespace combwright {

class YearRibbonView : public QWidget {
    Q_OBJECT

  public:
    explicit YearRibbonView(Session& session, QWidget* parent = nullptr);
    void show(const YearRibbon& ribbon);
    const RibbonView& view() const { return m_view; }
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

  protected:
    void paintEvent(QPaintEvent*) override;

  private:
    Session& m_session;
    RibbonView m_view;
};

}  // namespace combwright
