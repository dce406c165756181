#include "ui/drawing/strokes.h"

#include <QLineF>
#include <QString>
#include <QTransform>
#include <QVector>
#include <cmath>
#include <numbers>

namespace combwright {

double Chance::next() {
    // SplitMix64 (Steele, Lea, Flood 2014), its constants as published; std's distributions differ
    // between libraries and would change the pictures.
    m_state += 0x9E3779B97F4A7C15ULL;
    std::uint64_t mixed = m_state;
    mixed = (mixed ^ (mixed >> 30)) * 0xBF58476D1CE4E5B9ULL;
    mixed = (mixed ^ (mixed >> 27)) * 0x94D049BB133111EBULL;
    mixed ^= mixed >> 31;
    return static_cast<double>(mixed >> 11) / 9007199254740992.0;  // 2^53
}

Wobble::Wobble(std::uint64_t seed) {
    Chance chance(seed);
    constexpr std::array<double, 4> slowest = {1.1, 2.3, 4.2, 6.7};
    for (std::size_t i = 0; i < m_phase.size(); ++i) {
        m_phase[i] = chance.between(0.0, 2.0 * std::numbers::pi);
        m_turns[i] = slowest[i] * chance.between(0.85, 1.15);
    }
}

double Wobble::at(double t) const {
    constexpr std::array<double, 4> weight = {0.35, 0.3, 0.2, 0.15};
    double sum = 0.0;
    for (std::size_t i = 0; i < m_phase.size(); ++i) {
        sum += weight[i] * std::sin(m_phase[i] + 2.0 * std::numbers::pi * m_turns[i] * t);
    }
    return sum;
}

std::uint64_t seedOf(const QString& name) {
    // FNV-1a; qHash is salted anew in every run.
    std::uint64_t hash = 0xCBF29CE484222325ULL;
    for (const QChar letter : name) hash = (hash ^ letter.unicode()) * 0x100000001B3ULL;
    return hash;
}

QPen plainPen(const QColor& color, double width) {
    return QPen(color, width, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin);
}

QPen dashedPen(const QColor& color, double width) {
    QPen pen(color, width, Qt::CustomDashLine, Qt::FlatCap, Qt::MiterJoin);
    pen.setDashPattern({3.0, 2.5});
    return pen;
}

void hatch(QPainter& painter, const QPainterPath& shape, const QColor& color, double spacing,
           double angle, double width) {
    const PainterState state(painter);
    painter.setClipPath(shape, Qt::IntersectClip);
    painter.setPen(plainPen(color, width));
    const QRectF box = shape.boundingRect();
    QTransform turn;
    turn.rotate(angle);  // the lines are level in the turned system
    const QRectF turned = turn.mapRect(box);
    const QTransform back = turn.inverted();
    // Counted from the painter's own origin, so that neighbouring shapes share their lines.
    QVector<QLineF> lines;
    for (double y = std::ceil(turned.top() / spacing) * spacing; y < turned.bottom();
         y += spacing) {
        lines.append(back.map(QLineF(turned.left(), y, turned.right(), y)));
    }
    painter.drawLines(lines);
}

QPainterPath handLine(double left, double right, double y, double sway, std::uint64_t seed) {
    const Wobble wobble(seed);
    constexpr int steps = 24;
    QPainterPath line(QPointF(left, y + sway * wobble.at(0.0)));
    for (int i = 1; i <= steps; ++i) {
        const double t = static_cast<double>(i) / steps;
        line.lineTo(left + (right - left) * t, y + sway * wobble.at(t));
    }
    return line;
}

}  // namespace combwright
