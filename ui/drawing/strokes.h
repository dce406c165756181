// What every drawing is made of: a hand that shakes a little, but always the same way for the same
// thing, hatching, and dots. Seeded, so that a frame looks the same on every day and every machine.
#pragma once

#include <QColor>
#include <QPainter>
#include <QPainterPath>
#include <QPen>
#include <array>
#include <cstdint>

class QString;

namespace combwright {

/// Numbers from 0 to below 1, the same sequence for the same seed.
class Chance {
  public:
    explicit Chance(std::uint64_t seed) : m_state(seed) {}
    double next();
    double between(double low, double high) { return low + (high - low) * next(); }

  private:
    std::uint64_t m_state;
};

/// A smooth unsteadiness along a line, −1 to 1, for t from 0 to 1.
class Wobble {
  public:
    explicit Wobble(std::uint64_t seed);
    double at(double t) const;

  private:
    std::array<double, 4> m_phase{};
    std::array<double, 4> m_turns{};
};

/// A seed from a name (a mark, an id), the same on every machine and in every run.
std::uint64_t seedOf(const QString& name);

/// A solid pen with flat joins, or a dashed one.
QPen plainPen(const QColor& color, double width);
QPen dashedPen(const QColor& color, double width);

/// Parallel lines at an angle (degrees, anticlockwise from the right) inside a shape.
void hatch(QPainter& painter, const QPainterPath& shape, const QColor& color, double spacing,
           double angle, double width);

/// A line by hand from left to right: not quite straight, rising or falling by at most `sway`.
QPainterPath handLine(double left, double right, double y, double sway, std::uint64_t seed);

/// Saves the painter on entry and restores it on every way out.
class PainterState {
  public:
    explicit PainterState(QPainter& painter) : m_painter(painter) { painter.save(); }
    ~PainterState() { m_painter.restore(); }
    PainterState(const PainterState&) = delete;
    PainterState& operator=(const PainterState&) = delete;

  private:
    QPainter& m_painter;
};

}  // namespace combwright
