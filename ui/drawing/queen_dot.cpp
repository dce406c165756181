#include "ui/drawing/queen_dot.h"

#include <QBuffer>
#include <QFont>
#include <QImage>
#include <array>
#include <cmath>
#include <utility>

namespace combwright {
namespace {

constexpr std::array<std::pair<const char*, Paint>, 5> queenColours{{{"white", Paint::QueenWhite},
                                                                     {"yellow", Paint::QueenYellow},
                                                                     {"red", Paint::QueenRed},
                                                                     {"green", Paint::QueenGreen},
                                                                     {"blue", Paint::QueenBlue}}};
/// Pixels of the picture a pixel shown: sharp on a fine screen too.
constexpr int dotSharpness = 3;

}  // namespace

std::optional<Paint> queenPaint(const QString& colour) {
    for (const auto& [name, paint] : queenColours)
        if (colour.trimmed().compare(QLatin1String(name), Qt::CaseInsensitive) == 0) return paint;
    return std::nullopt;
}

double queenDotSize(TextSize size, const Look& look) {
    return std::ceil(look.font(size).pixelSize() * 0.8);
}

void paintQueenDot(QPainter& painter, QPointF middle, double size, Paint paint, const Look& look) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const double pen = look.px(1.2);
    painter.setPen(QPen(look.tone(Tone::Ink), pen));
    painter.setBrush(look.paint(paint));
    const double radius = (size - pen) / 2.0;
    painter.drawEllipse(middle, radius, radius);
    painter.restore();
}

QString queenDotHtml(const QString& colour, TextSize size, const Look& look) {
    const auto paint = queenPaint(colour);
    if (!paint) return {};
    const int side = static_cast<int>(queenDotSize(size, look));
    QImage dot(side * dotSharpness, side * dotSharpness, QImage::Format_ARGB32_Premultiplied);
    dot.fill(Qt::transparent);
    {
        QPainter painter(&dot);
        painter.scale(dotSharpness, dotSharpness);
        paintQueenDot(painter, {side / 2.0, side / 2.0}, side, *paint, look);
    }
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    dot.save(&buffer, "PNG");
    return QStringLiteral("<img src='data:image/png;base64,%1' width='%2' height='%2'>&nbsp;")
        .arg(QString::fromLatin1(bytes.toBase64()))
        .arg(side);
}

}  // namespace combwright
