#include "ui/drawing/stack.h"

#include <QCoreApplication>
#include <QVector>
#include <algorithm>
#include <cmath>

#include "ui/drawing/lettering.h"
#include "ui/drawing/strokes.h"

namespace combwright {

namespace {

// Sizes at the base font, px.
constexpr double lidRoom = 9.0;
constexpr double lidOverhang = 5.0;
constexpr double floorHeight = 5.0;
constexpr double excluderHeight = 6.0;
constexpr double takenAside = 9.0;
constexpr double takenGap = 8.0;
constexpr double verdictAir = 4.0;

double verdictRoom(const BoxView& box, const Look& look) {
    if (!box.verdict) return 0.0;
    const double head = lineStep(look.font(TextSize::Body));
    const double reason = box.verdict->reason.isEmpty() ? 0.0 : lineStep(look.font(TextSize::Note));
    // Room above, so that a ring around the box before does not touch the words.
    return head + reason + look.px(verdictAir + 2.0);
}

/// What stands below the front of a box before the next one begins, apart from that one's verdict.
double gapBelow(const BoxView& box, const Look& look) {
    return (box.excluderBelow ? look.px(excluderHeight) : 0.0) +
           (box.take ? look.px(takenGap) : 0.0);
}

/// Everything but the wood itself, which alone grows with the scale.
double fixedHeight(const StackView& stack, const Look& look) {
    double height = stack.lid ? look.px(lidRoom) : look.px(1.0);
    height += look.px(stack.floor ? floorHeight : 1.0);
    for (const auto& box : stack.boxes) height += verdictRoom(box, look) + gapBelow(box, look);
    return height;
}

double woodHeight(const StackView& stack) {
    double mm = 0.0;
    for (const auto& box : stack.boxes) mm += box.heightMm;
    return mm;
}

double fittingScale(const QRectF& box, const StackView& stack, const Look& look) {
    const double across = box.width() - stackLeftRoom(look) - stackRightRoom(stack, look);
    double scale = across / stack.widthMm;
    const double wood = woodHeight(stack);
    if (wood > 0.0) scale = std::min(scale, (box.height() - fixedHeight(stack, look)) / wood);
    return std::max(0.0, scale);
}

void paintExcluder(QPainter& painter, const QRectF& front, const Look& look) {
    const double y = front.bottom() + look.px(excluderHeight) / 2.0;
    const double reach = look.px(3.0);
    const QRectF zinc(front.left() - reach, y - look.px(2.0), front.width() + 2.0 * reach,
                      look.px(4.0));
    painter.fillRect(zinc, look.tone(Tone::Surface));
    QVector<QLineF> ticks;
    for (double x = zinc.left(); x <= zinc.right() + 0.01; x += look.px(5.0)) {
        ticks << QLineF(x, zinc.top(), x, zinc.bottom());
    }
    // On a dark ground the zinc is dark as well and its ticks are light.
    painter.setPen(plainPen(look.tone(Tone::Ink), look.px(2.0)));
    painter.drawLines(ticks);
}

void paintLid(QPainter& painter, const QRectF& lid, std::uint64_t seed, const Look& look) {
    QPen pen(look.tone(Tone::Ink), look.px(3.0), Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin);
    Chance chance(seed);
    const double tilt = look.px(chance.between(-1.0, 1.0));
    QPainterPath line = handLine(lid.left(), lid.right(), lid.center().y(), look.px(0.4), seed);
    // Put down by hand: one end lies a little higher.
    for (int i = 0; i < line.elementCount(); ++i) {
        const auto at = line.elementAt(i);
        const double t = (at.x - lid.left()) / lid.width() - 0.5;
        line.setElementPositionAt(i, at.x, at.y + t * tilt);
    }
    painter.strokePath(line, pen);
}

void paintFloor(QPainter& painter, const QRectF& floor, bool isBoard, const Look& look) {
    if (!isBoard) {
        painter.setPen(plainPen(look.tone(Tone::Line), look.px(1.2)));
        painter.drawLine(QPointF(floor.left() - look.px(6.0), floor.top()),
                         QPointF(floor.right() + look.px(6.0), floor.top()));
        return;
    }
    painter.setPen(plainPen(look.outline(), look.px(0.8)));
    painter.setBrush(look.paint(Paint::Floor));
    painter.drawRect(floor);
    const double width = floor.width() * 0.34;
    painter.fillRect(QRectF(floor.center().x() - width / 2.0, floor.top(), width, look.px(2.0)),
                     look.paint(Paint::Edge));
}

TextLine verdictHead(const BoxVerdict& verdict) {
    const TextLine head = {{verdict.word, true, verdict.tone}};
    if (verdict.figure == FigureText{}) return head;
    return joined(joined(head, {{QStringLiteral("  ")}}), figureRuns(verdict.figure));
}

void paintVerdict(QPainter& painter, const QRectF& region, const BoxVerdict& verdict,
                  const Look& look) {
    const double step = lineStep(look.font(TextSize::Body));
    const double base = region.top() + look.px(verdictAir) + step * 0.78;
    const TextLine head = verdictHead(verdict);
    const double end = paintLine(painter, {region.left(), base}, head, TextSize::Body, look);
    if (!verdict.beside.isEmpty())
        paintLine(painter, {end + look.px(6.0), base}, {{verdict.beside, false, Tone::Muted}},
                  TextSize::Note, look);
    if (verdict.reason.isEmpty()) return;
    const double reasonBase = base + lineStep(look.font(TextSize::Note));
    paintLine(painter, {region.left(), reasonBase}, {{verdict.reason, false, Tone::Muted}},
              TextSize::Note, look);
}

/// Words of this file, where the translators' tools find them.
struct StackTexts {
    Q_DECLARE_TR_FUNCTIONS(combwright::Stack)
};

QString boxWords(const BoxView& box) {
    QStringList parts;
    parts << (box.mark.isEmpty() ? StackTexts::tr("box without a mark") : box.mark);
    if (box.brood) parts << StackTexts::tr("brood box");
    if (!box.lookedInto) parts << StackTexts::tr("never looked into");
    if (box.faded) parts << StackTexts::tr("not opened this time");
    if (box.filled && box.lookedInto && !box.brood) {
        parts << StackTexts::tr("%1 % filled").arg(std::lround(*box.filled * 100.0));
    }
    if (box.lookedInto) parts << box.words;
    if (!box.corner.isEmpty()) parts << box.corner;
    if (!box.peg.isEmpty()) parts << StackTexts::tr("peg %1").arg(box.peg);
    if (box.verdict) {
        QStringList verdict = {box.verdict->word};
        if (const QString figure = spoken(box.verdict->figure); !figure.isEmpty()) {
            verdict << figure;
        }
        parts << verdict.join(QLatin1Char(' '));
        if (!box.verdict->reason.isEmpty()) parts << box.verdict->reason;
    } else if (box.take) {
        parts << StackTexts::tr("to take");
    }
    return parts.join(QStringLiteral(", "));
}

}  // namespace

double stackLeftRoom(const Look& look) { return look.px(lidOverhang + 2.0); }

double stackRightRoom(const StackView& stack, const Look& look) {
    double room = lidOverhang + 2.0;
    for (const auto& box : stack.boxes) {
        if (!box.peg.isEmpty()) room = std::max(room, 30.0 + (box.take ? takenAside : 0.0));
        if (box.take) room = std::max(room, takenAside + 2.0);
    }
    return look.px(room);
}

double stackHeight(const StackView& stack, double pxPerMm, const Look& look) {
    return fixedHeight(stack, look) + woodHeight(stack) * pxPerMm;
}

StackLayout layoutStack(const QRectF& box, const StackView& stack, const Look& look,
                        double pxPerMm) {
    StackLayout layout;
    layout.pxPerMm = pxPerMm > 0.0 ? pxPerMm : fittingScale(box, stack, look);
    const double left = box.left() + stackLeftRoom(look);
    const double width = stack.widthMm * layout.pxPerMm;
    double y = box.bottom() - stackHeight(stack, layout.pxPerMm, look);
    if (stack.lid) {
        const double reach = look.px(lidOverhang);
        const bool aside = !stack.boxes.empty() && stack.boxes.front().take;
        layout.lid = QRectF(left - reach + (aside ? look.px(takenAside) : 0.0), y,
                            width + 2.0 * reach, look.px(lidRoom) - look.px(1.0));
        y += look.px(lidRoom);
    } else {
        y += look.px(1.0);
    }
    for (const auto& item : stack.boxes) {
        const double aside = item.take ? look.px(takenAside) : 0.0;
        const double room = verdictRoom(item, look);
        const QRectF front(left + aside, y + room, width, item.heightMm * layout.pxPerMm);
        layout.boxes.push_back(front);
        layout.regions.push_back(front.adjusted(0.0, -room, 0.0, 0.0));
        y = front.bottom() + gapBelow(item, look);
    }
    const double over = look.px(3.0);
    layout.floor =
        QRectF(left - over, y, width + 2.0 * over, look.px(stack.floor ? floorHeight : 1.0));
    return layout;
}

double verdictWidth(const BoxVerdict& verdict, const Look& look) {
    double head = lineWidth(verdictHead(verdict), TextSize::Body, look);
    const QFont note = look.font(TextSize::Note);
    if (!verdict.beside.isEmpty()) head += look.px(6.0) + textWidth(verdict.beside, note);
    return std::max(head, textWidth(verdict.reason, note));
}

void paintStack(QPainter& painter, const QRectF& box, const StackView& stack, const Look& look,
                double pxPerMm) {
    const StackLayout layout = layoutStack(box, stack, look, pxPerMm);
    if (layout.pxPerMm <= 0.0) return;
    const PainterState state(painter);
    painter.setRenderHint(QPainter::Antialiasing);
    paintFloor(painter, layout.floor, stack.floor, look);
    for (std::size_t i = 0; i < stack.boxes.size(); ++i) {
        const BoxView& item = stack.boxes[i];
        paintBoxFront(painter, layout.boxes[i], item, look);
        if (item.excluderBelow) {
            QRectF over = layout.boxes[i];
            over.moveLeft(box.left() + stackLeftRoom(look));
            over.setBottom(over.bottom() + (item.take ? look.px(takenGap) : 0.0));
            paintExcluder(painter, over, look);
        }
        if (item.verdict) paintVerdict(painter, layout.regions[i], *item.verdict, look);
    }
    if (stack.lid) paintLid(painter, layout.lid, seedOf(stack.name) + 3, look);
}

QString spoken(const StackView& stack) {
    QStringList sentences;
    for (const auto& box : stack.boxes) {
        sentences << boxWords(box);
        if (box.excluderBelow) sentences << StackTexts::tr("excluder");
    }
    const QString name = stack.name.isEmpty() ? StackTexts::tr("Stack") : stack.name;
    if (sentences.isEmpty()) return StackTexts::tr("%1: no box recorded.").arg(name);
    return StackTexts::tr("%1, from the top: %2.").arg(name, sentences.join(QStringLiteral("; ")));
}

}  // namespace combwright
