#include "ui/drawing/lettering.h"

#include <QFontMetricsF>
#include <algorithm>
#include <cmath>

namespace combwright {

namespace {

// How far a known-how letter stands above the line and how small it is, of its figure's size.
constexpr double raisedSize = 0.76;
constexpr double raisedBy = 0.36;

QFont runFont(const TextRun& run, TextSize size, const Look& look) {
    QFont font = look.font(size, run.bold || run.raised, run.italic);
    if (run.raised) {
        const double pixels = font.pixelSize() * raisedSize;
        font.setPixelSize(std::max(7, static_cast<int>(std::lround(pixels))));
    }
    return font;
}

double leftEnd(double x, double width, Qt::Alignment align) {
    if (align & Qt::AlignRight) return x - width;
    if (align & Qt::AlignHCenter) return x - width / 2.0;
    return x;
}

}  // namespace

double lineWidth(const TextLine& line, TextSize size, const Look& look) {
    double width = 0.0;
    for (const auto& run : line) width += textWidth(run.text, runFont(run, size, look));
    return width;
}

double paintLine(QPainter& painter, QPointF at, const TextLine& line, TextSize size,
                 const Look& look, Qt::Alignment align) {
    double x = leftEnd(at.x(), lineWidth(line, size, look), align);
    const double lift = look.font(size).pixelSize() * raisedBy;
    for (const auto& run : line) {
        const QFont font = runFont(run, size, look);
        const QColor color = run.over.isValid() ? run.over : look.tone(run.tone);
        paintText(painter, QPointF(x, at.y() - (run.raised ? lift : 0.0)), run.text, font, color);
        x += textWidth(run.text, font);
    }
    return x;
}

QString plainText(const TextLine& line) {
    QString text;
    for (const auto& run : line) text += run.text;
    return text;
}

void paintText(QPainter& painter, QPointF at, const QString& text, const QFont& font,
               const QColor& color, Qt::Alignment align) {
    painter.setFont(font);
    painter.setPen(color);
    const double width = align & (Qt::AlignRight | Qt::AlignHCenter) ? textWidth(text, font) : 0.0;
    // Each text reads as its own letters do: among those read from the right ".6" would be "6.".
    painter.setLayoutDirection(Qt::LayoutDirectionAuto);
    painter.drawText(QPointF(leftEnd(at.x(), width, align), at.y()), text);
}

void paintTextIn(QPainter& painter, const QRectF& box, const QString& text, const QFont& font,
                 const QColor& color, Qt::Alignment align) {
    const double base = box.center().y() + capHeight(font) / 2.0;
    double x = box.center().x();
    if (align & Qt::AlignLeft) x = box.left();
    if (align & Qt::AlignRight) x = box.right();
    paintText(painter, QPointF(x, base), text, font, color, align);
}

double textWidth(const QString& text, const QFont& font) {
    return QFontMetricsF(font).horizontalAdvance(text);
}

double capHeight(const QFont& font) { return QFontMetricsF(font).capHeight(); }

double lineStep(const QFont& font) { return QFontMetricsF(font).height() * 1.08; }

QString fitted(const QString& text, const QFont& font, double width) {
    if (textWidth(text, font) <= width) return text;
    return QFontMetricsF(font).elidedText(text, Qt::ElideRight, width);
}

}  // namespace combwright
