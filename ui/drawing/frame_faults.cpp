#include "ui/drawing/frame_faults.h"

#include <QPolygonF>
#include <algorithm>
#include <cmath>

#include "ui/drawing/lettering.h"
#include "ui/drawing/strokes.h"

namespace combwright {

namespace {

/// One side while its faults are drawn: places are given as shares of the sheet.
struct FaultGround {
    QPainter& painter;
    const QRectF& sheet;
    const QPainterPath& comb;
    const Look& look;
    Chance chance;

    QPointF at(double across, double down) const {
        return {sheet.left() + sheet.width() * across, sheet.top() + sheet.height() * down};
    }
    QPointF somewhere(double left, double top, double right, double bottom) {
        const double across = chance.between(left, right);
        return at(across, chance.between(top, bottom));
    }
    void dot(QPointF middle, double radius, Paint paint, bool edged = false) {
        painter.setBrush(look.paint(paint));
        painter.setPen(edged ? plainPen(look.paint(Paint::Edge), look.px(0.7)) : QPen(Qt::NoPen));
        painter.drawEllipse(middle, radius, radius);
    }
    QPen edge(double width = 0.8) const {
        return plainPen(look.paint(Paint::Edge), look.px(width));
    }
};

void faultWeb(FaultGround& ground) {
    QPainterPath tunnel(ground.at(0.1, 0.25));
    tunnel.cubicTo(ground.at(0.22, 0.7), ground.at(0.28, 0.1), ground.at(0.42, 0.52));
    tunnel.cubicTo(ground.at(0.52, 0.8), ground.at(0.56, 0.2), ground.at(0.66, 0.68));
    tunnel.cubicTo(ground.at(0.74, 0.9), ground.at(0.8, 0.4), ground.at(0.92, 0.78));
    QPen wall(ground.look.paint(Paint::Edge), ground.look.px(3.6));
    wall.setCapStyle(Qt::RoundCap);
    ground.painter.strokePath(tunnel, wall);
    wall.setColor(ground.look.paint(Paint::Crystal));
    wall.setWidthF(ground.look.px(2.2));
    ground.painter.strokePath(tunnel, wall);
}

void faultSlime(FaultGround& ground) {
    const double places[][2] = {{0.18, 0.12}, {0.4, 0.24}, {0.6, 0.06}, {0.8, 0.34}};
    for (const auto& place : places) {
        const double x = place[0], y = place[1];
        QPainterPath drop(ground.at(x - 0.08, y + 0.06));
        drop.cubicTo(ground.at(x - 0.04, y - 0.03), ground.at(x + 0.07, y - 0.03),
                     ground.at(x + 0.09, y + 0.08));
        drop.cubicTo(ground.at(x + 0.09, y + 0.3), ground.at(x + 0.04, y + 0.32),
                     ground.at(x + 0.04, y + 0.52));
        drop.cubicTo(ground.at(x + 0.02, y + 0.62), ground.at(x - 0.01, y + 0.55),
                     ground.at(x - 0.01, y + 0.42));
        drop.cubicTo(ground.at(x - 0.02, y + 0.3), ground.at(x - 0.09, y + 0.24),
                     ground.at(x - 0.08, y + 0.06));
        ground.painter.setPen(ground.edge(0.6));
        ground.painter.setBrush(ground.look.paint(Paint::Slime));
        ground.painter.drawPath(drop);
        ground.painter.setPen(plainPen(ground.look.paint(Paint::Crystal), ground.look.px(1.4)));
        ground.painter.drawLine(ground.at(x - 0.03, y + 0.1), ground.at(x + 0.04, y + 0.1));
    }
}

void faultBent(FaultGround& ground) {
    ground.painter.setBrush(Qt::NoBrush);
    ground.painter.setPen(dashedPen(ground.look.paint(Paint::Edge), ground.look.px(1.0)));
    for (const double y : {0.3, 0.62}) {
        QPainterPath sag(ground.at(0.0, y));
        sag.quadTo(ground.at(0.5, y + 0.45), ground.at(1.0, y));
        ground.painter.drawPath(sag);
    }
    QPainterPath bulge(ground.at(0.22, 0.98));
    bulge.quadTo(ground.at(0.5, 0.48), ground.at(0.78, 0.98));
    bulge.closeSubpath();
    ground.painter.setPen(ground.edge());
    ground.painter.setBrush(ground.look.paint(Paint::CombDot));
    ground.painter.drawPath(bulge);
}

void faultMouse(FaultGround& ground) {
    QPainterPath hole(ground.at(0.46, 1.0));
    hole.cubicTo(ground.at(0.48, 0.62), ground.at(0.55, 0.62), ground.at(0.6, 0.42));
    hole.cubicTo(ground.at(0.64, 0.32), ground.at(0.67, 0.44), ground.at(0.69, 0.5));
    hole.cubicTo(ground.at(0.73, 0.66), ground.at(0.75, 0.76), ground.at(0.77, 1.0));
    ground.painter.setPen(ground.edge());
    ground.painter.setBrush(ground.look.tone(Tone::Surface));
    ground.painter.drawPath(hole);
}

void faultMould(FaultGround& ground) {
    for (int i = 0; i < 17; ++i) {
        ground.dot(ground.somewhere(0.56, 0.32, 0.92, 0.92), ground.look.px(1.8), Paint::Mould);
    }
}

void faultDeadBrood(FaultGround& ground) {
    for (int i = 0; i < 20; ++i) {
        ground.dot(ground.somewhere(0.24, 0.2, 0.76, 0.9), ground.look.px(1.4),
                   i % 3 == 0 ? Paint::Brood : Paint::Edge);
    }
}

void faultDeadBees(FaultGround& ground) {
    ground.painter.setPen(Qt::NoPen);
    ground.painter.setBrush(ground.look.paint(Paint::Edge));
    for (int i = 0; i < 12; ++i) {
        const PainterState state(ground.painter);
        ground.painter.translate(ground.at(0.16 + 0.062 * i, ground.chance.between(0.2, 0.8)));
        ground.painter.rotate(ground.chance.between(-80.0, 80.0));
        ground.painter.drawEllipse(QPointF(), ground.look.px(2.6), ground.look.px(1.2));
    }
}

void faultDrone(FaultGround& ground) {
    const double radius = ground.look.px(2.0), step = radius * 2.0;
    for (int row = 0; row < 2; ++row) {
        for (int i = 0; i < 12; ++i) {
            const QPointF foot = ground.at(0.34, 0.92);
            ground.dot(foot + QPointF(step * i + (row ? radius : 0.0), -radius - step * 0.88 * row),
                       radius, Paint::Brood, true);
        }
    }
}

void faultFermented(FaultGround& ground) {
    for (int i = 0; i < 16; ++i) {
        const double radius = ground.look.px(ground.chance.between(1.1, 2.5));
        ground.dot(ground.somewhere(0.06, 0.08, 0.94, 0.34), radius, Paint::Crystal, true);
    }
}

void faultPropolis(FaultGround& ground) {
    ground.painter.setPen(Qt::NoPen);
    ground.painter.setBrush(ground.look.paint(Paint::Propolis));
    const auto lump = [&](std::initializer_list<QPointF> corners) {
        ground.painter.drawPolygon(QPolygonF(QList<QPointF>(corners)));
    };
    lump({ground.at(0, 0), ground.at(0.1, 0), ground.at(0.08, 0.22), ground.at(0, 0.5)});
    lump({ground.at(0.16, 0), ground.at(0.4, 0), ground.at(0.36, 0.06), ground.at(0.16, 0.12)});
    lump({ground.at(0.52, 0), ground.at(0.84, 0), ground.at(0.7, 0.08), ground.at(0.52, 0.14)});
    lump({ground.at(0.9, 0), ground.at(1, 0), ground.at(0.99, 0.24), ground.at(0.9, 0.44)});
}

void faultCrossComb(FaultGround& ground) {
    for (const double x : {0.1, 0.32, 0.54, 0.76}) {
        QPainterPath comb(ground.at(x, 0.0));
        comb.cubicTo(ground.at(x + 0.08, 0.3), ground.at(x + 0.1, 0.6), ground.at(x + 0.2, 1.0));
        ground.painter.strokePath(comb,
                                  plainPen(ground.look.paint(Paint::Edge), ground.look.px(4.0)));
        ground.painter.strokePath(comb,
                                  plainPen(ground.look.paint(Paint::Capping), ground.look.px(2.6)));
    }
}

void faultPollen(FaultGround& ground) {
    for (int i = 0; i < 60; ++i) {
        const double across = 0.06 + 0.88 * (i % 20 + ground.chance.between(0.0, 0.9)) / 20.0;
        const double down = (i / 20 + ground.chance.between(0.1, 0.9)) / 3.0;
        ground.dot(ground.at(across, 0.06 + 0.82 * down), ground.look.px(1.5),
                   i % 3 == 0 ? Paint::PollenDark : Paint::Pollen, true);
    }
}

void faultFoulbrood(FaultGround& ground) {
    const QRectF patch(ground.at(0.14, 0.06), ground.at(0.86, 0.96));
    ground.painter.setPen(ground.edge());
    ground.painter.setBrush(ground.look.paint(Paint::Brood));
    ground.painter.drawEllipse(patch);
    ground.painter.setBrush(ground.look.paint(Paint::Edge));
    for (int i = 0; i < 12; ++i) {
        const double across = 0.27 + 0.042 * i;
        ground.painter.setPen(plainPen(ground.look.paint(Paint::BroodDot), ground.look.px(0.8)));
        ground.painter.drawEllipse(ground.at(across, ground.chance.between(0.26, 0.78)),
                                   ground.look.px(1.4), ground.look.px(1.4));
    }
}

}  // namespace

void paintFaultMark(QPainter& painter, const QRectF& sheet, const QPainterPath& comb,
                    FrameFault fault, std::uint64_t seed, const Look& look) {
    const PainterState state(painter);
    painter.setClipPath(comb, Qt::IntersectClip);
    FaultGround ground{painter, sheet, comb, look,
                       Chance(seed * 31 + static_cast<std::uint64_t>(fault))};
    switch (fault) {
        case FrameFault::Web:
            return faultWeb(ground);
        case FrameFault::Slime:
            return faultSlime(ground);
        case FrameFault::Bent:
            return faultBent(ground);
        case FrameFault::Mouse:
            return faultMouse(ground);
        case FrameFault::Mould:
            return faultMould(ground);
        case FrameFault::DeadBrood:
            return faultDeadBrood(ground);
        case FrameFault::DeadBees:
            return faultDeadBees(ground);
        case FrameFault::Drone:
            return faultDrone(ground);
        case FrameFault::Fermented:
            return faultFermented(ground);
        case FrameFault::Propolis:
            return faultPropolis(ground);
        case FrameFault::CrossComb:
            return faultCrossComb(ground);
        case FrameFault::PollenBound:
            return faultPollen(ground);
        case FrameFault::Foulbrood:
            return faultFoulbrood(ground);
        case FrameFault::BrokenWood:
        case FrameFault::OldDark:
        case FrameFault::Granulated:
            return;
    }
}

double faultFlagHeight(const Look& look) { return look.px(18.0); }

void paintFaultFlags(QPainter& painter, double x, double right, double topBar,
                     const std::vector<FrameFault>& faults, const Look& look) {
    const double width = look.px(15.0), step = look.px(18.0);
    const double places = std::floor((right - x - width) / step) + 1.0;
    const auto room = static_cast<std::size_t>(std::max(1.0, places));
    // What does not fit is said as a number, and what means stop is never among it.
    std::vector<FrameFault> shown = faults;
    if (shown.size() > room) {
        std::stable_partition(shown.begin(), shown.end(), isGrave);
        shown.resize(room - 1);
    }
    const auto flag = [&](const QString& letters, const QColor& ink) {
        const QRectF cloth(x, topBar - faultFlagHeight(look), width, look.px(13.0));
        painter.setPen(plainPen(ink, look.px(1.1)));
        painter.setBrush(look.tone(Tone::Surface));
        painter.drawLine(cloth.topLeft(), QPointF(x, topBar));
        painter.drawRect(cloth);
        paintTextIn(painter, cloth, letters, look.font(TextSize::Letter, true), ink);
        x += step;
    };
    for (const FrameFault fault : shown) {
        flag(QString(QLatin1Char(static_cast<char>(fault))),
             look.tone(isGrave(fault) ? Tone::Bad : Tone::Ink));
    }
    const auto more = faults.size() - shown.size();
    if (more > 0)
        flag(more < 10 ? QStringLiteral("+%1").arg(more) : QStringLiteral("+"),
             look.tone(Tone::Ink));
}

void paintFaultLetters(QPainter& painter, const QRectF& frame,
                       const std::vector<FrameFault>& faults, const Look& look) {
    const QFont font = look.font(TextSize::Letter, true);
    const double side = look.px(12.0);
    // What means stop comes first: there may be room for no more.
    std::vector<FrameFault> shown = faults;
    std::stable_partition(shown.begin(), shown.end(), isGrave);
    const auto room = static_cast<std::size_t>(std::max(1.0, frame.width() / (side + 1.0) - 0.4));
    if (shown.size() > room) shown.resize(room);
    double x = frame.center().x() - static_cast<double>(shown.size()) * side / 2.0;
    for (const FrameFault fault : shown) {
        const QRectF box(x, frame.center().y() - side / 2.0 + look.px(1.0), side, side);
        const bool onOldComb = fault == FrameFault::OldDark && faults.size() == 1;
        QColor ink = look.tone(isGrave(fault) ? Tone::Bad : Tone::Ink);
        if (onOldComb) ink = look.paint(Paint::LetteringPale);
        if (!onOldComb) {
            painter.setPen(plainPen(ink, look.px(0.9)));
            painter.setBrush(look.tone(Tone::Surface));
            painter.drawRect(box);
        }
        paintTextIn(painter, box, QString(QLatin1Char(static_cast<char>(fault))), font, ink);
        x += side + look.px(1.0);
    }
}

}  // namespace combwright
