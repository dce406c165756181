#include "ui/print/cell_painter.h"

#include <QCoreApplication>
#include <QPainter>
#include <QPainterPath>
#include <QStringList>
#include <algorithm>
#include <cmath>

#include "core/words/words.h"
#include "ui/drawing/queen_dot.h"
#include "ui/drawing/strokes.h"

namespace combwright {
namespace {

/// Above and below the words of a cell, together.
constexpr double aroundWords = 5;
/// A letter of a row of marks, in its square, and a square as wide as two letters need.
constexpr double markSide = 17;

class CellPainter {
  public:
    CellPainter(QPainter& painter, const Look& look) : m_painter(painter), m_look(look) {}

    double height(const Cell& cell, double width) {
        switch (cell.look) {
            case Cell::Look::Text:
                return wordsHigh(cell, width);
            case Cell::Look::Marks:
                return marksHigh(cell, width) * markSide + 7;
            case Cell::Look::Shut:
                return shutHigh(cell, width);
            default:
                return 0;
        }
    }

    void paint(const Cell& cell, const QRectF& box, bool right) {
        switch (cell.look) {
            case Cell::Look::Text:
                return paintText(cell, box, right);
            case Cell::Look::Pencil:
                return paintPencil(box);
            case Cell::Look::Blank:
                return paintBlank(cell, box);
            case Cell::Look::Marks:
                return paintMarks(cell, box);
            case Cell::Look::Shut:
                return paintShut(cell, box);
            case Cell::Look::Bar:
                return paintBar(cell, box);
            case Cell::Look::Stack:
                return paintSmallStack(cell, box);
            case Cell::Look::Week:
                return paintWeek(cell, box);
        }
    }

  private:
    QColor ink() const { return m_look.tone(Tone::Ink); }
    void font(TextSize size, bool bold = false, bool italic = false) {
        m_painter.setFont(m_look.font(size, bold, italic));
    }
    double textWidth(const QString& text) const {
        return m_painter.fontMetrics().horizontalAdvance(text);
    }
    void text(const QRectF& box, int flags, const QString& words, Tone tone = Tone::Ink) {
        m_painter.setPen(m_look.tone(tone));
        m_painter.drawText(box, flags, words);
    }

    void firstFont(const Cell& cell) { font(firstSize(cell), cell.strong); }
    static double letterRoom(const Cell& cell) { return cell.how ? 8 : 0; }
    static TextSize firstSize(const Cell& cell) {
        return cell.small ? TextSize::Note : cell.big ? TextSize::Head : TextSize::Body;
    }
    /// The dot stands before the words; a colour that is none of the five has none.
    double dotRoom(const Cell& cell) const {
        return queenPaint(cell.dot) ? queenDotSize(firstSize(cell), m_look) + 3 : 0;
    }

    double wordsHeight(const QString& words, double width) const {
        return m_painter
            .boundingRect(QRectF(0, 0, width, 10000), breakingFlags(m_painter, words, width), words)
            .height();
    }
    double firstHeight(const Cell& cell, double width) {
        if (cell.text.isEmpty()) return 0;
        firstFont(cell);
        return wordsHeight(cell.text, width - letterRoom(cell) - dotRoom(cell));
    }
    double secondHeight(const Cell& cell, double width) {
        if (cell.second.isEmpty()) return 0;
        font(TextSize::Note, false, true);
        return wordsHeight(cell.second, width);
    }

    /// One line alone asks for no more than itself: close rows of figures stay close.
    double wordsHigh(const Cell& cell, double width) {
        const double under = secondHeight(cell, width);
        const double high = firstHeight(cell, width);
        const bool alone = under == 0 && high < 1.5 * m_painter.fontMetrics().height();
        return alone ? std::floor(high) : high + under + aroundWords;
    }

    void paintText(const Cell& cell, const QRectF& box, bool right) {
        const double high = firstHeight(cell, box.width());
        const double under = secondHeight(cell, box.width());
        const double top = box.center().y() - (high + under) / 2;
        const double dot = dotRoom(cell);
        const double room = box.width() - letterRoom(cell) - dot;
        const Tone tone = cell.muted ? Tone::Muted : Tone::Ink;
        const int side = right ? Qt::AlignRight : Qt::AlignLeft;
        firstFont(cell);
        const QRectF first(box.x() + dot, top, room, high);
        if (const auto paint = queenPaint(cell.dot)) {
            const double size = queenDotSize(firstSize(cell), m_look);
            const double middle = top + m_painter.fontMetrics().height() / 2.0;
            paintQueenDot(m_painter, {box.x() + size / 2, middle}, size, *paint, m_look);
        }
        text(first, side | Qt::AlignTop | breakingFlags(m_painter, cell.text, room), cell.text,
             tone);
        if (cell.how) {
            const double at =
                right ? first.right() : first.x() + std::min(room, textWidth(cell.text));
            font(TextSize::Letter, true);
            text(QRectF(at + 1, first.center().y() - 11, 10, 12), Qt::AlignLeft | Qt::AlignBottom,
                 QString(QLatin1Char(letter(*cell.how))), tone);
        }
        if (cell.second.isEmpty()) return;
        font(TextSize::Note, false, true);
        text(QRectF(box.x(), top + high, box.width(), under),
             side | Qt::AlignTop | breakingFlags(m_painter, cell.second, box.width()), cell.second,
             Tone::Muted);
    }

    void paintBlank(const Cell& cell, const QRectF& box) {
        m_painter.setPen(QPen(m_look.tone(Tone::Line), 0.8));
        m_painter.setBrush(Qt::NoBrush);
        m_painter.drawRect(box.adjusted(0, 3, 0, -3));
        if (cell.text.isEmpty()) return;
        font(TextSize::Note);
        text(box.adjusted(4, 0, 0, 0), Qt::AlignLeft | Qt::AlignVCenter, cell.text, Tone::Muted);
    }

    // Marks -------------------------------------------------------------------------------------

    /// How many of them stand in one line.
    static int marksAcross(double width) { return std::max(1, static_cast<int>(width / markSide)); }
    static int marksHigh(const Cell& cell, double width) {
        const auto many = static_cast<int>(cell.text.split(QLatin1Char(' ')).size());
        const int across = marksAcross(width);
        return (many + across - 1) / across;
    }
    void paintMarks(const Cell& cell, const QRectF& box) {
        if (cell.text.isEmpty()) return;
        const QStringList marks = cell.text.split(QLatin1Char(' '));
        const int across = marksAcross(box.width());
        const double top = box.center().y() - marksHigh(cell, box.width()) * markSide / 2;
        for (int i = 0; i < marks.size(); ++i) {
            const auto column = i % across;
            const auto row = i / across;
            const QRectF square(box.x() + column * markSide, top + row * markSide, markSide,
                                markSide);
            m_painter.setPen(QPen(m_look.tone(Tone::Line), 0.6));
            m_painter.setBrush(Qt::NoBrush);
            m_painter.drawRect(square);
            font(marks[i].size() > 1 ? TextSize::Letter : TextSize::Head, true);
            text(square, Qt::AlignCenter, marks[i]);
        }
    }

    // A week of the season strip ----------------------------------------------------------------

    /// Letters in a row over a bar at the foot; more than have room end in dots.
    void paintWeek(const Cell& cell, const QRectF& box) {
        const QRectF square(box.x(), box.y() + 1, box.width(), box.height() - 1);
        if (cell.dashed) {
            m_painter.setPen(QPen(m_look.tone(Tone::Line), 0.8));
            m_painter.drawLine(QPointF(square.center().x() - 2, square.center().y()),
                               QPointF(square.center().x() + 2, square.center().y()));
        } else {
            m_painter.setPen(QPen(m_look.tone(Tone::Line), 0.6));
            m_painter.setBrush(Qt::NoBrush);
            m_painter.drawRect(square);
        }
        if (cell.hatched) {
            QPainterPath shape;
            shape.addRect(square);
            hatch(m_painter, shape, m_look.tone(Tone::Line), 4, 45, 0.5);
        }
        const double bar = 3.6;
        if (cell.strong || cell.open) {
            m_painter.setPen(QPen(ink(), 0.8));
            m_painter.setBrush(cell.strong ? QBrush(ink()) : QBrush(m_look.tone(Tone::Surface)));
            m_painter.drawRect(
                QRectF(square.x() + 1.5, square.bottom() - bar - 1.5, square.width() - 3, bar));
        }
        QStringList letters = cell.text.split(QLatin1Char(' '), Qt::SkipEmptyParts);
        if (letters.isEmpty()) return;
        const QRectF room = square.adjusted(1, 0, -1, -bar - 2);
        font(letters.size() == 1 ? TextSize::Note : TextSize::Letter, true);
        const auto most = std::max<qsizetype>(1, static_cast<qsizetype>(room.width() / 7.2));
        if (letters.size() > most) letters = letters.mid(0, most - 1) << QStringLiteral("…");
        const double wide = room.width() / static_cast<double>(letters.size());
        for (int i = 0; i < letters.size(); ++i) {
            const QRectF at(room.x() + i * wide, room.y(), wide, room.height());
            // On hatching a letter stands on its own white.
            if (cell.hatched)
                m_painter.fillRect(
                    QRectF(at.center().x() - 4, at.center().y() - 5.5, 8, 11).intersected(at),
                    m_look.tone(Tone::Surface));
            text(at, Qt::AlignCenter | Qt::TextDontClip, letters[i]);
        }
    }

    void paintPencil(const QRectF& box) {
        const QString words = QCoreApplication::translate("print", "not opened");
        font(TextSize::Note);
        const double wide = textWidth(words);
        m_painter.setPen(QPen(m_look.tone(Tone::Line), 1));
        m_painter.setBrush(Qt::NoBrush);
        m_painter.drawRect(QRectF(box.right() - wide - 16, box.y() + 6, 10, 10));
        text(QRectF(box.right() - wide - 2, box.y() + 4, wide + 4, 14),
             Qt::AlignLeft | Qt::AlignVCenter, words, Tone::Muted);
        const double step = (box.height() - 10) / 2;
        for (const double y : {box.y() + 8 + step, box.bottom() - 5}) {
            m_painter.setPen(QPen(m_look.tone(Tone::Hairline), 0.8));
            m_painter.drawLine(QPointF(box.x(), y), QPointF(box.right(), y));
        }
    }

    /// Hatched beside the words, so that nobody writes there; the words break where they must.
    static constexpr double shutHatch = 9;
    static QRectF shutWords(const QRectF& box) {
        return box.adjusted(shutHatch + 4, 4, -shutHatch - 4, -4);
    }
    double shutHigh(const Cell& cell, double width) {
        const double inside = shutWords(QRectF(0, 0, width, 100)).width();
        font(TextSize::Note, true);
        double high = wordsHeight(cell.text, inside);
        font(TextSize::Note);
        if (!cell.second.isEmpty()) high += wordsHeight(cell.second, inside);
        return high + 8 + 6;
    }
    void paintShut(const Cell& cell, const QRectF& box) {
        const QRectF frame = box.adjusted(0, 2, 0, -2);
        m_painter.setPen(QPen(m_look.tone(Tone::Line), 1));
        m_painter.setBrush(QBrush(m_look.tone(Tone::Line), Qt::BDiagPattern));
        m_painter.drawRect(frame);
        m_painter.fillRect(frame.adjusted(shutHatch, 2, -shutHatch, -2),
                           m_look.tone(Tone::Surface));
        const QRectF inner = shutWords(box);
        font(TextSize::Note, true);
        const double first = wordsHeight(cell.text, inner.width());
        font(TextSize::Note);
        const double second = cell.second.isEmpty() ? 0 : wordsHeight(cell.second, inner.width());
        const double top = inner.center().y() - (first + second) / 2;
        font(TextSize::Note, true);
        text(QRectF(inner.x(), top, inner.width(), first),
             Qt::AlignLeft | Qt::AlignTop | breakingFlags(m_painter, cell.text, inner.width()),
             cell.text);
        font(TextSize::Note);
        text(QRectF(inner.x(), top + first, inner.width(), second),
             Qt::AlignLeft | Qt::AlignTop | breakingFlags(m_painter, cell.second, inner.width()),
             cell.second);
    }

    void paintBar(const Cell& cell, const QRectF& box) {
        const QRectF bar(box.x(), box.center().y() - 5,
                         box.width() * std::clamp(cell.bar, 0.0, 1.0), 10);
        QPen pen(ink(), 0.8);
        if (cell.dashed) pen.setStyle(Qt::DashLine);
        m_painter.setPen(pen);
        m_painter.setBrush(cell.dashed                 ? QBrush(m_look.tone(Tone::Surface))
                           : cell.hatched || cell.open ? QBrush(m_look.tone(Tone::Surface))
                                                       : QBrush(m_look.paint(Paint::Honey)));
        if (cell.bar > 0) m_painter.drawRect(bar);
        if (cell.bar > 0 && cell.hatched && !cell.dashed) {
            QPainterPath shape;
            shape.addRect(bar);
            hatch(m_painter, shape, m_look.tone(Tone::Line), 5, 45, 0.8);
        }
        if (cell.stroke) {
            const double x = box.x() + box.width() * std::clamp(*cell.stroke, 0.0, 1.0);
            m_painter.setPen(QPen(ink(), 2));
            m_painter.drawLine(QPointF(x, box.center().y() - 7), QPointF(x, box.center().y() + 7));
        }
        if (!cell.text.isEmpty()) {
            font(TextSize::Note);
            text(QRectF(bar.right() + 6, box.y(), box.width(), box.height()),
                 Qt::AlignLeft | Qt::AlignVCenter, cell.text);
        }
    }

    void paintSmallStack(const Cell& cell, const QRectF& box) {
        double total = 0;
        for (const StackedBox& each : cell.stack) total += each.heightMm;
        if (total <= 0) return;
        // One scale for all rows: a stack of four deeps just fits.
        const double scale = std::min((box.height() - 10) / 1000.0, (box.height() - 10) / total);
        const double wide = std::min(22.0, box.width() - 6);
        double y = box.bottom() - 5;
        m_painter.setPen(QPen(ink(), 1.6));
        m_painter.drawLine(QPointF(box.x(), y), QPointF(box.x() + wide + 6, y));
        for (const StackedBox& each : cell.stack) {
            const double high = each.heightMm * scale;
            y -= high;
            m_painter.setPen(QPen(ink(), 0.8));
            m_painter.setBrush(each.nest ? m_look.tone(Tone::Hairline)
                                         : m_look.tone(Tone::Surface));
            m_painter.drawRect(QRectF(box.x() + 3, y, wide, high));
            if (each.excluderAbove) {
                m_painter.setPen(QPen(ink(), 1.4, Qt::DotLine));
                m_painter.drawLine(QPointF(box.x() + 1, y), QPointF(box.x() + wide + 5, y));
            }
        }
        m_painter.setPen(QPen(ink(), 1.6));
        m_painter.drawLine(QPointF(box.x(), y - 2), QPointF(box.x() + wide + 6, y - 2));
    }

    QPainter& m_painter;
    const Look& m_look;
};

}  // namespace

int breakingFlags(const QPainter& painter, const QString& words, double width) {
    for (const QString& word : words.split(QLatin1Char(' ')))
        if (painter.fontMetrics().horizontalAdvance(word) > width) return Qt::TextWrapAnywhere;
    return Qt::TextWordWrap;
}

double cellHeight(QPainter& painter, const Look& look, const Cell& cell, double width) {
    return CellPainter(painter, look).height(cell, width);
}

void paintCell(QPainter& painter, const Look& look, const Cell& cell, const QRectF& box,
               bool right) {
    CellPainter(painter, look).paint(cell, box, right);
}

}  // namespace combwright
