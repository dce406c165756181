#include "ui/print/sheet_painter.h"

#include <QCoreApplication>
#include <QTextLayout>
#include <algorithm>
#include <cmath>

#include "core/words/words.h"
#include "ui/drawing/strokes.h"
#include "ui/print/card_painter.h"
#include "ui/print/cell_painter.h"
#include "ui/print/chart_views.h"
#include "ui/print/label_painter.h"

namespace combwright {

SheetPainter::SheetPainter(const PaintGround& ground, const Page& page, const Look& look,
                           int sheets, int before)
    : m_ground(ground),
      m_painter(ground.painter),
      m_page(page),
      m_look(look),
      m_sheets(sheets),
      m_before(before),
      m_width(ground.width) {}

int SheetPainter::paint() {
    beginSheet();
    const BlanksBlock* last = closingBlanks();
    for (const Block& block : m_page.blocks)
        if (std::get_if<BlanksBlock>(&block) != last || !last)
            std::visit([this](const auto& each) { paintBlock(each); }, block);
    paintFoot();
    return m_sheet;
}

void SheetPainter::font(TextSize size, bool bold, bool italic) {
    m_painter.setFont(m_look.font(size, bold, italic));
}

double SheetPainter::textWidth(const QString& text) const {
    return m_painter.fontMetrics().horizontalAdvance(text);
}

void SheetPainter::line(double x, double y, double x2, double weight, Tone tone) {
    m_painter.setPen(QPen(m_look.tone(tone), weight));
    m_painter.drawLine(QPointF(x, y), QPointF(x2, y));
}

void SheetPainter::text(const QRectF& box, int flags, const QString& words, Tone tone) {
    m_painter.setPen(m_look.tone(tone));
    m_painter.drawText(box, flags, words);
}

void SheetPainter::beginSheet() {
    ++m_sheet;
    m_y = 0;
    font(TextSize::Title, true);
    text(QRectF(0, 0, m_width * 0.7, 30), Qt::AlignLeft | Qt::AlignBottom, m_page.title);
    font(TextSize::Body, true);
    text(QRectF(m_width * 0.5, 0, m_width * 0.5, 15), Qt::AlignRight | Qt::AlignBottom,
         m_page.keeper);
    font(TextSize::Note);
    QStringList about;
    if (!m_page.marked.isEmpty()) about << m_page.marked;
    if (!m_page.day.isEmpty()) about << m_page.day;
    if (m_ground.height)
        about << QCoreApplication::translate("print", "page %1 of %2")
                     .arg(m_before + m_sheet)
                     .arg(m_sheets);
    text(QRectF(m_width * 0.4, 15, m_width * 0.6, 15), Qt::AlignRight | Qt::AlignBottom,
         about.join(QStringLiteral(", ")), Tone::Muted);
    line(0, 36, m_width, 1.6);
    m_y = 44;
}

void SheetPainter::paintFoot() {
    QStringList parts;
    for (const How how : m_page.letters)
        parts << QStringLiteral("%1 %2").arg(QLatin1Char(letter(how))).arg(howWord(how));
    line(0, footTop(), m_width, 0.6, Tone::Line);
    font(TextSize::Note);
    text(QRectF(0, footTop() + 4, m_width, 14), Qt::AlignLeft | Qt::AlignTop,
         parts.join(QStringLiteral("    ")), Tone::Muted);
    if (const BlanksBlock* last = closingBlanks()) paintClosing(*last);
    QStringList said;
    if (!m_page.marked.isEmpty()) said << m_page.marked;
    if (m_page.invented) said << QCoreApplication::translate("print", "invented sample season");
    if (said.isEmpty()) return;
    font(TextSize::Note, !m_page.marked.isEmpty(), true);
    text(QRectF(0, footTop() + 16, m_width, 14), Qt::AlignLeft | Qt::AlignTop,
         said.join(QStringLiteral(" · ")), m_page.marked.isEmpty() ? Tone::Muted : Tone::Ink);
}

/// Framed blanks that end a page stand in the foot of every sheet, beside the letters: each may
/// hang and be typed back alone.
const BlanksBlock* SheetPainter::closingBlanks() const {
    if (m_page.blocks.empty() || !m_ground.height) return nullptr;
    const auto* blanks = std::get_if<BlanksBlock>(&m_page.blocks.back());
    return blanks && blanks->framed && blanks->labels.size() <= 2 ? blanks : nullptr;
}

void SheetPainter::paintClosing(const BlanksBlock& block) {
    const QRectF frame(m_width * 0.62, footTop() + 4.5, m_width * 0.38 - 0.5, 25);
    m_painter.setPen(QPen(m_look.tone(Tone::Line), 1));
    m_painter.setBrush(Qt::NoBrush);
    m_painter.drawRect(frame);
    font(TextSize::Note);
    const double room = frame.width() / static_cast<double>(block.labels.size());
    double x = frame.left() + 8;
    for (const QString& label : block.labels) {
        text(QRectF(x, frame.top(), room - 8, frame.height()), Qt::AlignLeft | Qt::AlignVCenter,
             label);
        x += room;
    }
}

/// Room for something so high, on a new sheet where this one is full; true when it began one.
bool SheetPainter::need(double height) {
    if (!m_ground.height || m_y + height <= footTop() - 6) return false;
    paintFoot();
    m_ground.nextSheet();
    beginSheet();
    return true;
}

void SheetPainter::title(const QString& words, double under) {
    if (words.isEmpty()) return;
    // A head stands with what it is the head of, where a sheet holds both.
    need(std::clamp(24 + under, 60.0, std::max(60.0, m_ground.height.value_or(0) - 90)));
    font(TextSize::Head, true);
    text(QRectF(0, m_y, m_width, 20), Qt::AlignLeft | Qt::AlignVCenter, words);
    m_y += 24;
}

void SheetPainter::paintBlock(const TextBlock& block) {
    if (!block.strong.isEmpty()) return paintStrong(block);
    const TextSize size = block.small ? TextSize::Note : TextSize::Body;
    font(size);
    const double inset = block.caution ? 8 : 0;
    const QRectF room(inset, 0, m_width - 2 * inset, 10000);
    const QRectF bounds =
        m_painter.boundingRect(room, Qt::TextWordWrap | Qt::AlignLeft, block.text);
    title(block.title, bounds.height() + 2 * inset + 8);
    font(size);
    // A new sheet sets its head in fonts of its own.
    if (need(bounds.height() + 2 * inset + 8)) font(size);
    if (block.caution) {
        m_painter.setPen(QPen(ink(), 1.2));
        m_painter.setBrush(Qt::NoBrush);
        m_painter.drawRect(QRectF(0.6, m_y, m_width - 1.2, bounds.height() + 2 * inset));
    }
    text(QRectF(inset, m_y + inset, m_width - 2 * inset, bounds.height() + 4),
         Qt::TextWordWrap | Qt::AlignLeft | Qt::AlignTop, block.text,
         block.small ? Tone::Muted : Tone::Ink);
    m_y += bounds.height() + 2 * inset + 12;
}

/// Text with stretches that stand out, laid out in lines of its own.
void SheetPainter::paintStrong(const TextBlock& block) {
    const TextSize size = block.small ? TextSize::Note : TextSize::Body;
    QTextLayout layout(block.text, m_look.font(size));
    QList<QTextLayout::FormatRange> ranges;
    qsizetype from = 0;
    for (const QString& stretch : block.strong) {
        const qsizetype at = block.text.indexOf(stretch, from);
        if (at < 0) continue;
        QTextLayout::FormatRange range;
        range.start = static_cast<int>(at);
        range.length = static_cast<int>(stretch.size());
        range.format.setFont(m_look.font(size, true));
        ranges << range;
        from = at + stretch.size();
    }
    layout.setFormats(ranges);
    layout.beginLayout();
    double height = 0;
    for (QTextLine each = layout.createLine(); each.isValid(); each = layout.createLine()) {
        each.setLineWidth(m_width);
        each.setPosition(QPointF(0, height));
        height += each.height() * 1.15;
    }
    layout.endLayout();
    title(block.title, height + 8);
    need(height + 8);
    m_painter.setPen(ink());
    layout.draw(&m_painter, QPointF(0, m_y));
    m_y += height + 12;
}

void SheetPainter::paintBlock(const StepsBlock& block) {
    const double height = block.heightMm * unitsPerMm;
    if (!block.title.isEmpty()) need(height + 36);
    title(block.title);
    need(height);
    paintSteps(m_painter, QRectF(0, m_y, m_width, height), stepsView(block), m_look);
    m_y += height + 12;
}

void SheetPainter::paintBlock(const ChartBlock& block) {
    const double height = 190;
    if (!block.title.isEmpty()) need(height + 36);
    title(block.title);
    if (!block.about.isEmpty()) {
        need(lineHeight() + 4);
        font(TextSize::Note);
        text(QRectF(0, m_y, m_width, lineHeight()), Qt::AlignLeft, block.about, Tone::Muted);
        m_y += lineHeight() + 4;
    }
    need(height);
    paintMarks(m_painter, QRectF(0, m_y, m_width, height), marksView(block), m_look);
    m_y += height + 12;
}

void SheetPainter::paintBlock(const TickBlock& block) {
    title(block.title);
    const double column = m_width / block.columns;
    const double room = column - 30;
    // What a line is about stands behind it; below it where any line has no room for that.
    bool below = false;
    for (const TickBlock::Line& each : block.lines) {
        font(TextSize::Body);
        const double words = textWidth(each.text);
        font(TextSize::Note);
        below = below || (!each.about.isEmpty() && words + textWidth(each.about) + 10 > room);
    }
    const auto high = [&](const QString& words, TextSize size) {
        font(size);
        const int flags = breakingFlags(m_painter, words, room);
        return words.isEmpty()
                   ? 0.0
                   : m_painter.boundingRect(QRectF(0, 0, room, 10000), flags, words).height();
    };
    const auto across = static_cast<std::size_t>(block.columns);
    for (std::size_t from = 0; from < block.lines.size(); from += across) {
        const std::size_t to = std::min(block.lines.size(), from + across);
        double row = 20;
        for (std::size_t i = from; i < to; ++i)
            row = std::max(row, high(block.lines[i].text, TextSize::Body) + 4 +
                                    (below ? high(block.lines[i].about, TextSize::Note) : 0));
        need(row + 2);
        for (std::size_t i = from; i < to; ++i) {
            const TickBlock::Line& each = block.lines[i];
            const double x = static_cast<double>(i - from) * column;
            m_painter.setPen(QPen(ink(), 1));
            m_painter.setBrush(Qt::NoBrush);
            m_painter.drawRect(QRectF(x + 0.5, m_y + 4, 11, 11));
            const double words = high(each.text, TextSize::Body);
            const double top = m_y + std::max(2.0, 9.5 - lineHeight() / 2);
            font(TextSize::Body);
            text(QRectF(x + 18, top, room, words),
                 Qt::AlignLeft | Qt::AlignTop | breakingFlags(m_painter, each.text, room),
                 each.text);
            const double under = high(each.about, TextSize::Note);
            if (below)
                text(QRectF(x + 18, top + words, room, under),
                     Qt::AlignLeft | Qt::AlignTop | breakingFlags(m_painter, each.about, room),
                     each.about, Tone::Muted);
            else
                text(QRectF(x + 18, m_y, room, 20), Qt::AlignRight | Qt::AlignVCenter, each.about,
                     Tone::Muted);
        }
        m_y += row;
    }
    m_y += 10;
}

void SheetPainter::paintBlock(const BlanksBlock& block) {
    font(TextSize::Body);
    const double room = m_width / static_cast<double>(block.labels.size());
    // A long label stands over the room for the pencil, not in it.
    const bool over = block.framed && std::any_of(block.labels.begin(), block.labels.end(),
                                                  [&](const QString& label) {
                                                      return textWidth(label) > room * 0.55;
                                                  });
    const double height = over ? 42 : block.framed ? 30 : 28;
    need(height + 4);
    if (block.framed) {
        m_painter.setPen(QPen(m_look.tone(Tone::Line), 1));
        m_painter.setBrush(Qt::NoBrush);
        m_painter.drawRect(QRectF(0.5, m_y, m_width - 1, height));
    }
    font(over ? TextSize::Note : TextSize::Body);
    double x = block.framed ? 8 : 0;
    for (const QString& label : block.labels) {
        if (block.framed && x > 8) {
            m_painter.setPen(QPen(m_look.tone(Tone::Hairline), 0.8));
            m_painter.drawLine(QPointF(x - 8, m_y), QPointF(x - 8, m_y + height));
        }
        text(QRectF(x, m_y + (over ? 3 : 0), room, height),
             Qt::AlignLeft | (over ? Qt::AlignTop : Qt::AlignVCenter), label);
        const double from = x + textWidth(label) + 6;
        if (!block.framed)
            line(from, m_y + height - 8, std::max(from + 20, x + room - 14), 0.8, Tone::Line);
        x += room;
    }
    m_y += height + 10;
}

/// As many rows of cards as a sheet holds share its height; the title stands on every sheet.
void SheetPainter::paintBlock(const CardsBlock& block) {
    const auto across = static_cast<std::size_t>(block.across);
    const double wide = m_width / block.across;
    double least = block.rowMm * unitsPerMm;
    for (const Card& card : block.cards)
        least = std::max(least, cardHeight(m_painter, m_look, card, wide));
    double high = 0;
    bool firstRow = true;
    for (std::size_t at = 0; at < block.cards.size(); ++at) {
        if (at % across == 0) {
            m_y += at > 0 ? high : 0;
            // Rows that fill the sheet to its foot fill it in spite of what rounding adds.
            firstRow = need(at > 0 ? high - 0.5 : least + 24) || at == 0;
            if (firstRow) {
                cardsTitle(block);
                const double room = m_ground.height ? footTop() - 6 - m_y : least;
                high = room / std::max(1.0, std::floor(room / least));
            }
        }
        const QRectF box(static_cast<double>(at % across) * wide, m_y, wide, high);
        paintCard(m_painter, m_look, block.cards[at], box);
        // Every edge once: dashes drawn over each other close to a solid line.
        m_painter.setPen(
            QPen(m_look.tone(Tone::Line), 0.9, block.cut ? Qt::DashLine : Qt::SolidLine));
        if (firstRow) m_painter.drawLine(box.topLeft(), box.topRight());
        if (at % across == 0) m_painter.drawLine(box.topLeft(), box.bottomLeft());
        m_painter.drawLine(box.topRight(), box.bottomRight());
        m_painter.drawLine(box.bottomLeft(), box.bottomRight());
        if (block.cut && at % across == 0) scissors(box.bottomLeft());
    }
    m_y += high + 12;
}

/// On a picture: the sheets as they will lie there, small.
void SheetPainter::paintBlock(const LabelsBlock& block) {
    const double scale = m_width / block.paperWidthMm;
    for (std::size_t sheet = 0; sheet < block.sheets.size(); ++sheet) {
        need(block.paperHeightMm * scale);
        const PainterState state(m_painter);
        m_painter.translate(0, m_y);
        m_painter.scale(scale, scale);
        m_painter.setPen(QPen(m_look.tone(Tone::Line), 0.3));
        m_painter.setBrush(Qt::NoBrush);
        m_painter.drawRect(QRectF(0, 0, block.paperWidthMm, block.paperHeightMm));
        paintLabelSheet(m_painter, m_look, block, sheet);
        m_y += block.paperHeightMm * scale + 12;
    }
}

/// In the margin at the line to cut along.
void SheetPainter::scissors(const QPointF& at) {
    const PainterState state(m_painter);
    m_painter.setRenderHint(QPainter::Antialiasing);
    m_painter.setPen(QPen(m_look.tone(Tone::Ink), 0.9));
    m_painter.setBrush(Qt::NoBrush);
    for (const int side : {-1, 1}) {
        m_painter.drawEllipse(at + QPointF(-13, 3.2 * side), 2.2, 2.2);
        m_painter.drawLine(at + QPointF(-11.2, 2.2 * side), at + QPointF(-2, -2.4 * side));
    }
}

void SheetPainter::cardsTitle(const CardsBlock& block) {
    title(block.title);
    if (block.title.isEmpty() || block.about.isEmpty()) return;
    const double begins =
        QFontMetricsF(m_look.font(TextSize::Head, true)).horizontalAdvance(block.title) + 12;
    font(TextSize::Note);
    // What has no room beside the title stands below it.
    const bool below = textWidth(block.about) > m_width - begins;
    text(QRectF(below ? 0 : begins, m_y - (below ? 2 : 24), m_width - (below ? 0 : begins), 20),
         (below ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignVCenter, block.about, Tone::Muted);
    if (below) m_y += 20;
}

}  // namespace combwright
