#include "ui/print/card_painter.h"

#include <QPainter>
#include <algorithm>

#include "ui/drawing/extractor.h"
#include "ui/drawing/stack.h"
#include "ui/drawing/strokes.h"
#include "ui/print/cell_painter.h"

namespace combwright {
namespace {

// In units of 1/96 inch: 3.8 are a millimetre.
constexpr double cardPad = 10;
constexpr double drawingGap = 12;
/// From one line to write on to the next: 8 mm at least, and no more than 13.
constexpr double leastStep = 30;
constexpr double mostStep = 49;
constexpr double tickSide = 14;
/// The shortest line one can write a figure on with a glove: 13 mm.
constexpr double leastLine = 49;
/// Pegs and boxes on paper are larger than on the screen, to be read from a step away.
constexpr double stackScale = 1.6;
constexpr double pegScale = 2.0;
/// What is read across a room, against the largest type of the window.
constexpr double wallScale = 1.5;
constexpr double pegWide = 38;
constexpr double pegHigh = 17;
constexpr double pegJaws = 10;
/// Above the fields, and the rule that parts them.
constexpr double aboveFields = 8;

TextSize typeOf(PaperSize size) {
    switch (size) {
        case PaperSize::Note:
            return TextSize::Note;
        case PaperSize::Body:
            return TextSize::Body;
        case PaperSize::Head:
            return TextSize::Head;
        case PaperSize::Title:
            return TextSize::Title;
        case PaperSize::Big:
            return TextSize::Big;
        case PaperSize::Poster:
        case PaperSize::Wall:
            return TextSize::Clock;
    }
    return TextSize::Body;
}

class CardPainter {
  public:
    CardPainter(QPainter& painter, const Look& look, const Card& card)
        : m_painter(painter), m_look(look), m_card(card) {}

    double height(double width) {
        const double room = wordsRoom(width - 2 * cardPad);
        return headHeight(room) + linesHeight(room) + 2 * cardPad +
               (m_card.rows.empty()
                    ? 0
                    : aboveFields + leastStep * static_cast<double>(m_card.rows.size()));
    }

    void paint(const QRectF& box) {
        const PainterState state(m_painter);
        m_painter.setRenderHint(QPainter::Antialiasing);
        const QRectF inner = box.adjusted(cardPad, cardPad, -cardPad, -cardPad);
        QRectF words = inner;
        words.setLeft(inner.right() - wordsRoom(inner.width()));
        if (m_card.drawingShare > 0)
            paintDrawing(QRectF(inner.topLeft(),
                                QSizeF(words.left() - drawingGap - inner.left(), inner.height())));
        double y = words.top();
        // A card with nothing to write on stands in the middle of its height.
        if (m_card.rows.empty())
            y += std::max(
                0.0, (words.height() - headHeight(words.width()) - linesHeight(words.width())) / 2);
        y = paintHead(words, y);
        y = paintLines(words, y);
        if (!m_card.rows.empty())
            paintFields(QRectF(words.left(), y, words.width(), words.bottom() - y));
    }

  private:
    double textWidth(const QString& words) const {
        return m_painter.fontMetrics().horizontalAdvance(words);
    }
    QFont fontOf(PaperSize size, bool strong) const {
        QFont font = m_look.font(typeOf(size), strong);
        if (size == PaperSize::Wall)
            font.setPixelSize(static_cast<int>(font.pixelSize() * wallScale));
        return font;
    }
    void font(PaperSize size, bool strong) { m_painter.setFont(fontOf(size, strong)); }
    /// Width for words beside a drawing at the left.
    double wordsRoom(double inner) const {
        return m_card.drawingShare > 0 ? inner * (1 - m_card.drawingShare) - drawingGap : inner;
    }
    /// Room a drawing in the corner takes from the name and what stands beside it.
    double cornerWidth() const {
        return m_card.drawingShare <= 0 && std::holds_alternative<PegDrawn>(m_card.drawing)
                   ? pegWide * pegScale + 8
                   : 0;
    }

    double wrapped(const CardText& text, double width) {
        if (text.text.isEmpty()) return 0;
        font(text.size, text.strong);
        return m_painter
            .boundingRect(QRectF(0, 0, width, 10000),
                          breakingFlags(m_painter, text.text, width) | Qt::AlignLeft, text.text)
            .height();
    }
    double aboutWidth() {
        double wide = 0;
        for (const CardText& each : m_card.about) {
            font(each.size, each.strong);
            wide = std::max(wide, textWidth(each.text));
        }
        return wide;
    }
    /// What stands at the right may take all the corner and the name leave, and never less than
    /// half: a long name of a yard breaks instead of running over.
    double aboutRoom(double width) {
        const double free = width - cornerWidth();
        return m_card.name.text.isEmpty() ? free : std::min(aboutWidth() + 2, free / 2);
    }
    double nameRoom(double width) {
        const double about = m_card.about.empty() ? 0 : aboutRoom(width) + 8;
        return width - cornerWidth() - about;
    }
    /// The font of the name, made smaller until each of its lines stands in the width.
    QFont nameFont(double width) const {
        QFont font = fontOf(m_card.name.size, m_card.name.strong);
        double widest = 0;
        for (const QString& line : m_card.name.text.split(QLatin1Char('\n')))
            widest = std::max(widest, QFontMetricsF(font).horizontalAdvance(line));
        const int least = m_look.font(TextSize::Body).pixelSize();
        if (widest > width)
            font.setPixelSize(std::max(least, static_cast<int>(font.pixelSize() * width / widest)));
        return font;
    }
    double nameHeight(double width) {
        if (m_card.name.text.isEmpty()) return 0;
        const double room = nameRoom(width);
        m_painter.setFont(nameFont(room));
        return m_painter.boundingRect(QRectF(0, 0, room, 10000), nameFlags(room), m_card.name.text)
            .height();
    }
    int nameFlags(double room) const {
        return Qt::AlignLeft | Qt::AlignTop | breakingFlags(m_painter, m_card.name.text, room);
    }
    double headHeight(double width) {
        double right = 0;
        for (const CardText& each : m_card.about) right += wrapped(each, aboutRoom(width));
        const double corner = cornerWidth() > 0 ? pegHigh * pegScale : 0;
        return std::max({nameHeight(width), right, corner});
    }
    double linesHeight(double width) {
        double high = 0;
        for (const CardText& each : m_card.lines) high += wrapped(each, width) + 4;
        return high;
    }

    void words(const CardText& text, const QRectF& box, int side) {
        font(text.size, text.strong);
        m_painter.setPen(m_look.tone(text.muted ? Tone::Muted : Tone::Ink));
        m_painter.drawText(
            box, side | Qt::AlignTop | breakingFlags(m_painter, text.text, box.width()), text.text);
    }

    double paintHead(const QRectF& room, double top) {
        if (cornerWidth() > 0)
            paintDrawing(QRectF(room.left(), top, cornerWidth(), pegHigh * pegScale));
        const QRectF name(room.left() + cornerWidth(), top, nameRoom(room.width()),
                          nameHeight(room.width()) + 1);
        m_painter.setFont(nameFont(name.width()));
        m_painter.setPen(m_look.tone(Tone::Ink));
        m_painter.drawText(name, nameFlags(name.width()), m_card.name.text);
        double y = top;
        const double wide = aboutRoom(room.width());
        for (const CardText& each : m_card.about) {
            const double high = wrapped(each, wide);
            words(each, QRectF(room.right() - wide, y, wide, high + 1), Qt::AlignRight);
            y += high;
        }
        return top + headHeight(room.width());
    }

    double paintLines(const QRectF& room, double y) {
        for (const CardText& each : m_card.lines) {
            const double high = wrapped(each, room.width());
            words(each, QRectF(room.left(), y + 4, room.width(), high + 1), Qt::AlignLeft);
            y += high + 4;
        }
        return y;
    }

    // Fields ------------------------------------------------------------------------------------

    void paintFields(const QRectF& room) {
        if (m_card.ruled) {
            m_painter.setPen(QPen(m_look.tone(Tone::Hairline), 0.8));
            m_painter.drawLine(QPointF(room.left(), room.top() + aboveFields / 2),
                               QPointF(room.right(), room.top() + aboveFields / 2));
        }
        const double step = std::min(
            mostStep, (room.height() - aboveFields) / static_cast<double>(m_card.rows.size()));
        double y = room.top() + aboveFields;
        for (const auto& row : m_card.rows) {
            double shares = 0;
            for (const CardField& field : row) shares += field.share;
            std::vector<QRectF> boxes;
            double x = room.left();
            for (const CardField& field : row) {
                const double wide = room.width() * field.share / shares;
                const bool last = &field == &row.back();
                boxes.emplace_back(x, y, wide - (last ? 0 : 10), step);
                x += wide;
            }
            const PaperSize size = labelSize(row, boxes);
            for (std::size_t i = 0; i < row.size(); ++i) paintField(row[i], boxes[i], size);
            y += step;
        }
    }
    /// One size for the words of a row: as large as leaves every pencil its room.
    PaperSize labelSize(const std::vector<CardField>& row, const std::vector<QRectF>& boxes) const {
        for (const PaperSize size : {PaperSize::Head, PaperSize::Body}) {
            bool fits = true;
            for (std::size_t i = 0; i < row.size(); ++i) {
                const QFontMetricsF metrics(fontOf(size, row[i].strong));
                fits = fits && metrics.horizontalAdvance(row[i].label) <= wordsIn(row[i], boxes[i]);
            }
            if (fits) return size;
        }
        return PaperSize::Note;
    }
    /// Width the words of a field may take.
    double wordsIn(const CardField& field, const QRectF& box) const {
        return box.width() - (field.tick ? tickSide + 7 : 0) -
               (field.line ? leastLine + unitWidth(field) + 6 : 0);
    }

    void paintField(const CardField& field, const QRectF& box, PaperSize size) {
        // Words and line end at the foot of the step, so that the pencil has the room above.
        const double base = box.bottom() - 6;
        const double inkWidth = 0.9;
        double x = box.left();
        if (field.tick) {
            const QRectF square(x + 0.5, base - tickSide + 2, tickSide, tickSide);
            m_painter.setPen(QPen(m_look.tone(Tone::Ink), 1.1));
            m_painter.setBrush(Qt::NoBrush);
            m_painter.drawRect(square);
            if (field.ticked) {
                m_painter.drawLine(square.topLeft(), square.bottomRight());
                m_painter.drawLine(square.bottomLeft(), square.topRight());
            }
            x += tickSide + 7;
        }
        const double unit = unitWidth(field);
        const QString& label = field.label;
        font(size, field.strong);
        m_painter.setPen(m_look.tone(Tone::Ink));
        m_painter.drawText(QPointF(x, base), label);
        x += label.isEmpty() ? 0 : textWidth(label) + 6;
        if (!field.line) return;
        const double end = box.right() - unit;
        m_painter.setPen(QPen(m_look.tone(Tone::Line), inkWidth));
        m_painter.drawLine(QPointF(x, base + 2), QPointF(end, base + 2));
        if (!field.value.isEmpty()) {
            font(PaperSize::Body, true);
            m_painter.setPen(m_look.tone(Tone::Ink));
            m_painter.drawText(QPointF(x + 3, base - 1), field.value);
        }
        if (field.unit.isEmpty()) return;
        font(PaperSize::Note, false);
        m_painter.setPen(m_look.tone(Tone::Muted));
        m_painter.drawText(QPointF(end + 4, base), field.unit);
    }
    double unitWidth(const CardField& field) const {
        if (field.unit.isEmpty()) return 0;
        return QFontMetricsF(m_look.font(TextSize::Note)).horizontalAdvance(field.unit) + 4;
    }

    // Drawings ----------------------------------------------------------------------------------

    void paintDrawing(const QRectF& box) {
        std::visit([&](const auto& each) { draw(each, box); }, m_card.drawing);
    }
    void draw(const std::monostate&, const QRectF&) {}

    void draw(const PegDrawn& peg, const QRectF& box) {
        const PainterState state(m_painter);
        m_painter.translate(box.left() + pegJaws * pegScale + 1, box.center().y());
        m_painter.scale(pegScale, pegScale);
        paintPeg(m_painter, {0, 0}, peg.number, m_look);
    }

    void draw(const StacksDrawn& drawn, const QRectF& box) {
        if (drawn.stacks.empty()) return;
        std::vector<StackView> views;
        for (const auto& stack : drawn.stacks) {
            StackView view;
            view.floor = false;
            for (const StacksDrawn::Box& each : stack) {
                BoxView front;
                front.mark = each.mark;
                front.peg = each.peg;
                front.heightMm = each.heightMm;
                view.boxes.push_back(std::move(front));
            }
            views.push_back(std::move(view));
        }
        const PainterState state(m_painter);
        m_painter.translate(box.topLeft());
        m_painter.scale(stackScale, stackScale);
        const double high = box.height() / stackScale;
        const double wide = box.width() / stackScale / static_cast<double>(drawn.stacks.size());
        double scale = 1e9;
        for (std::size_t i = 0; i < views.size(); ++i)
            scale = std::min(
                scale,
                layoutStack(QRectF(static_cast<double>(i) * wide, 0, wide, high), views[i], m_look)
                    .pxPerMm);
        // Low stacks stand a little above the middle of the card's height, all on one ground.
        double tallest = 0;
        for (const StackView& view : views)
            tallest = std::max(tallest, stackHeight(view, scale, m_look));
        const double bottom = high - (high - tallest) / 2;
        for (std::size_t i = 0; i < views.size(); ++i) {
            const QRectF room(static_cast<double>(i) * wide, bottom - tallest, wide, tallest);
            paintStack(m_painter, room, views[i], m_look, scale);
        }
        m_painter.setPen(QPen(m_look.tone(Tone::Ink), 1.4));
        m_painter.drawLine(QPointF(0, bottom), QPointF(box.width() / stackScale, bottom));
    }

    void draw(const DrumDrawn& drum, const QRectF& box) {
        ExtractorView view;
        view.numbered = true;
        view.fullGrams = drum.longestG;
        for (const DrumDrawn::Place& place : drum.places) {
            SlotView slot;
            slot.label = place.label;
            slot.startGrams = place.startG;
            slot.endGrams = place.endG;
            slot.toWrite = drum.toWrite;
            view.slotViews.push_back(std::move(slot));
        }
        paintExtractor(m_painter, box, view, m_look);
    }

    QPainter& m_painter;
    const Look& m_look;
    const Card& m_card;
};

}  // namespace

double cardHeight(QPainter& painter, const Look& look, const Card& card, double width) {
    return CardPainter(painter, look, card).height(width);
}

void paintCard(QPainter& painter, const Look& look, const Card& card, const QRectF& box) {
    CardPainter(painter, look, card).paint(box);
}

}  // namespace combwright
