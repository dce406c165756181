#include "ui/look/look_style.h"

#include <QPainter>
#include <QPolygonF>
#include <QStyleOption>

namespace combwright {

namespace {

/// The edge of a tick box or dot: accent where the keyboard is.
QPen lookSignEdge(const QStyleOption& option, const Look& look) {
    const bool focused = option.state & QStyle::State_HasFocus;
    const bool usable = option.state & QStyle::State_Enabled;
    const Tone tone = focused ? Tone::Accent : usable ? Tone::Line : Tone::Hairline;
    return QPen(look.tone(tone), look.px(focused ? 2.0 : 1.2));
}

QRectF lookSignBox(const QStyleOption& option, const Look& look) {
    const double side = look.px(13.0);
    const QRectF rect(option.rect);
    return {rect.center() - QPointF(side, side) / 2.0, QSizeF(side, side)};
}

QColor lookSignInk(const QStyleOption& option, const Look& look) {
    return look.tone(option.state & QStyle::State_Enabled ? Tone::Ink : Tone::Muted);
}

void drawTickBox(QPainter& painter, const QStyleOption& option, const Look& look) {
    const QRectF box = lookSignBox(option, look);
    painter.setPen(lookSignEdge(option, look));
    painter.setBrush(look.tone(Tone::Surface));
    painter.drawRoundedRect(box, look.px(2.0), look.px(2.0));
    const auto at = [&](double x, double y) {
        return QPointF(box.left() + box.width() * x, box.top() + box.height() * y);
    };
    QPen pen(lookSignInk(option, look), look.px(2.0), Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin);
    painter.setPen(pen);
    if (option.state & QStyle::State_On) {
        painter.drawPolyline(QPolygonF({at(0.22, 0.52), at(0.43, 0.73), at(0.8, 0.26)}));
    } else if (option.state & QStyle::State_NoChange) {
        painter.drawLine(at(0.25, 0.5), at(0.75, 0.5));
    }
}

void drawDot(QPainter& painter, const QStyleOption& option, const Look& look) {
    const QRectF box = lookSignBox(option, look);
    painter.setPen(lookSignEdge(option, look));
    painter.setBrush(look.tone(Tone::Surface));
    painter.drawEllipse(box);
    if (!(option.state & QStyle::State_On)) return;
    painter.setPen(Qt::NoPen);
    painter.setBrush(lookSignInk(option, look));
    painter.drawEllipse(box.center(), box.width() * 0.26, box.height() * 0.26);
}

/// An arrow head that points down, turned.
void drawArrowHead(QPainter& painter, const QStyleOption& option, double degrees,
                   const Look& look) {
    const double half = look.px(4.0);
    painter.translate(QRectF(option.rect).center());
    painter.rotate(degrees);
    painter.setPen(Qt::NoPen);
    painter.setBrush(lookSignInk(option, look));
    painter.drawPolygon(QPolygonF({{-half, -half * 0.6}, {half, -half * 0.6}, {0.0, half * 0.7}}));
}

}  // namespace

LookStyle::LookStyle(const Look& look) : QProxyStyle(QStringLiteral("Fusion")), m_look(look) {}

void LookStyle::drawPrimitive(PrimitiveElement element, const QStyleOption* option,
                              QPainter* painter, const QWidget* widget) const {
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    bool drawn = true;
    switch (element) {
        case PE_IndicatorCheckBox:
        case PE_IndicatorItemViewItemCheck:
            drawTickBox(*painter, *option, m_look);
            break;
        case PE_IndicatorRadioButton:
            drawDot(*painter, *option, m_look);
            break;
        case PE_IndicatorArrowDown:
            drawArrowHead(*painter, *option, 0.0, m_look);
            break;
        case PE_IndicatorArrowLeft:
            drawArrowHead(*painter, *option, 90.0, m_look);
            break;
        case PE_IndicatorArrowUp:
            drawArrowHead(*painter, *option, 180.0, m_look);
            break;
        case PE_IndicatorArrowRight:
            drawArrowHead(*painter, *option, 270.0, m_look);
            break;
        default:
            drawn = false;
    }
    painter->restore();
    if (!drawn) QProxyStyle::drawPrimitive(element, option, painter, widget);
}

int LookStyle::pixelMetric(PixelMetric metric, const QStyleOption* option,
                           const QWidget* widget) const {
    switch (metric) {
        case PM_IndicatorWidth:
        case PM_IndicatorHeight:
        case PM_ExclusiveIndicatorWidth:
        case PM_ExclusiveIndicatorHeight:
            return m_look.space(16);
        default:
            return QProxyStyle::pixelMetric(metric, option, widget);
    }
}

int LookStyle::styleHint(StyleHint hint, const QStyleOption* option, const QWidget* widget,
                         QStyleHintReturn* returnData) const {
    // Nothing moves but the marker of the extractor and the clock.
    if (hint == SH_Widget_Animate || hint == SH_Widget_Animation_Duration) return 0;
    return QProxyStyle::styleHint(hint, option, widget, returnData);
}

}  // namespace combwright
