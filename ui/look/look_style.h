// The few small signs a sheet of rules cannot draw without picture files: tick, dot and arrows of
// plain Qt widgets, in our ink and lines, at our size.
#pragma once

#include <QProxyStyle>

#include "ui/look/tokens.h"

namespace combwright {

class LookStyle : public QProxyStyle {
  public:
    explicit LookStyle(const Look& look);

    void drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                       const QWidget* widget = nullptr) const override;
    int pixelMetric(PixelMetric metric, const QStyleOption* option = nullptr,
                    const QWidget* widget = nullptr) const override;
    int styleHint(StyleHint hint, const QStyleOption* option = nullptr,
                  const QWidget* widget = nullptr,
                  QStyleHintReturn* returnData = nullptr) const override;

  private:
    Look m_look;
};

}  // namespace combwright
