#include "ui/print/page_painter.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QFile>
#include <QImage>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>
#include <QSvgGenerator>
#include <QTextLayout>
#include <algorithm>
#include <functional>

#include "core/words/words.h"
#include "ui/drawing/strokes.h"
#include "ui/look/tokens.h"
#include "ui/print/keep_bytes.h"
#include "ui/print/steps_view.h"

namespace combwright {
namespace {

/// All painting is done in units of 1/96 inch, so that sizes mean the same on screen and paper.
constexpr double unitsPerInch = 96.0;
constexpr double unitsPerMm = unitsPerInch / 25.4;
/// Around a picture, in the same units.
constexpr double pictureEdge = 16.0;

/// What is painted on: sheets of one size, or one picture as high as it comes to be.
struct Ground {
    QPainter& painter;
    double width = 0;
    std::optional<double> height;     ///< of a sheet; none for a picture
    std::function<void()> nextSheet;  ///< likewise
};

class PagePainter {
  public:
    PagePainter(const Ground& ground, const Page& page, const Look& look, int sheets)
        : m_ground(ground),
          m_painter(ground.painter),
          m_page(page),
          m_look(look),
          m_sheets(sheets),
          m_width(ground.width) {}

    int paint() {
        beginSheet();
        const BlanksBlock* last = closingBlanks();
        for (const Block& block : m_page.blocks)
            if (std::get_if<BlanksBlock>(&block) != last || !last)
                std::visit([this](const auto& each) { paintBlock(each); }, block);
        paintFoot();
        if (last) paintClosing(*last);
        return m_sheet;
    }
    /// After painting a picture: how high it is.
    double height() const { return m_y + 34; }

  private:
    QColor ink() const { return m_look.tone(Tone::Ink); }
    double footTop() const { return m_ground.height ? *m_ground.height - 30 : m_y + 4; }

    void font(TextSize size, bool bold = false, bool italic = false) {
        m_painter.setFont(m_look.font(size, bold, italic));
    }
    double textWidth(const QString& text) const {
        return m_painter.fontMetrics().horizontalAdvance(text);
    }
    double lineHeight() const { return m_painter.fontMetrics().height(); }
    void line(double x, double y, double x2, double weight, Tone tone = Tone::Ink) {
        m_painter.setPen(QPen(m_look.tone(tone), weight));
        m_painter.drawLine(QPointF(x, y), QPointF(x2, y));
    }
    void text(const QRectF& box, int flags, const QString& words, Tone tone = Tone::Ink) {
        m_painter.setPen(m_look.tone(tone));
        m_painter.drawText(box, flags, words);
    }

    void beginSheet() {
        ++m_sheet;
        m_y = 0;
        font(TextSize::Title, true);
        text(QRectF(0, 0, m_width * 0.7, 30), Qt::AlignLeft | Qt::AlignBottom, m_page.title);
        font(TextSize::Body, true);
        text(QRectF(m_width * 0.5, 0, m_width * 0.5, 15), Qt::AlignRight | Qt::AlignBottom,
             m_page.keeper);
        font(TextSize::Note);
        QStringList about;
        if (!m_page.day.isEmpty()) about << m_page.day;
        if (m_ground.height)
            about
                << QCoreApplication::translate("print", "page %1 of %2").arg(m_sheet).arg(m_sheets);
        text(QRectF(m_width * 0.4, 15, m_width * 0.6, 15), Qt::AlignRight | Qt::AlignBottom,
             about.join(QStringLiteral(", ")), Tone::Muted);
        line(0, 36, m_width, 1.6);
        m_y = 44;
    }

    void paintFoot() {
        QStringList parts;
        for (const How how : m_page.letters)
            parts << QStringLiteral("%1 %2").arg(QLatin1Char(letter(how))).arg(howWord(how));
        line(0, footTop(), m_width, 0.6, Tone::Line);
        font(TextSize::Note);
        text(QRectF(0, footTop() + 4, m_width, 14), Qt::AlignLeft | Qt::AlignTop,
             parts.join(QStringLiteral("    ")), Tone::Muted);
        if (!m_page.invented) return;
        font(TextSize::Note, false, true);
        text(QRectF(0, footTop() + 16, m_width, 14), Qt::AlignLeft | Qt::AlignTop,
             QCoreApplication::translate("print", "invented sample season"), Tone::Muted);
    }

    /// Framed blanks that end a page stand in its foot, beside the letters, not on a sheet of
    /// their own.
    const BlanksBlock* closingBlanks() const {
        if (m_page.blocks.empty() || !m_ground.height) return nullptr;
        const auto* blanks = std::get_if<BlanksBlock>(&m_page.blocks.back());
        return blanks && blanks->framed && blanks->labels.size() <= 2 ? blanks : nullptr;
    }
    void paintClosing(const BlanksBlock& block) {
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
    bool need(double height) {
        if (!m_ground.height || m_y + height <= footTop() - 6) return false;
        paintFoot();
        m_ground.nextSheet();
        beginSheet();
        return true;
    }

    void title(const QString& words) {
        if (words.isEmpty()) return;
        need(60);
        font(TextSize::Head, true);
        text(QRectF(0, m_y, m_width, 20), Qt::AlignLeft | Qt::AlignVCenter, words);
        m_y += 24;
    }

    void paintBlock(const TextBlock& block) {
        title(block.title);
        if (!block.strong.isEmpty()) return paintStrong(block);
        font(block.small ? TextSize::Note : TextSize::Body);
        const double inset = block.caution ? 8 : 0;
        const QRectF room(inset, 0, m_width - 2 * inset, 10000);
        const QRectF bounds =
            m_painter.boundingRect(room, Qt::TextWordWrap | Qt::AlignLeft, block.text);
        need(bounds.height() + 2 * inset + 8);
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
    void paintStrong(const TextBlock& block) {
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
        need(height + 8);
        m_painter.setPen(ink());
        layout.draw(&m_painter, QPointF(0, m_y));
        m_y += height + 12;
    }

    void paintBlock(const StepsBlock& block) {
        const double height = 132;
        if (!block.title.isEmpty()) need(height + 36);
        title(block.title);
        need(height);
        paintSteps(m_painter, QRectF(0, m_y, m_width, height), stepsView(block), m_look);
        m_y += height + 12;
    }

    void paintBlock(const TickBlock& block) {
        title(block.title);
        const double column = m_width / block.columns;
        int at = 0;
        for (const TickBlock::Line& each : block.lines) {
            if (at == 0) need(22);
            const double x = at * column;
            m_painter.setPen(QPen(ink(), 1));
            m_painter.setBrush(Qt::NoBrush);
            m_painter.drawRect(QRectF(x + 0.5, m_y + 4, 11, 11));
            font(TextSize::Body);
            const double aboutWidth =
                each.about.isEmpty() ? 0 : std::min(column * 0.4, textWidth(each.about) + 4);
            text(QRectF(x + 18, m_y, column - 26 - aboutWidth, 20),
                 Qt::AlignLeft | Qt::AlignVCenter,
                 m_painter.fontMetrics().elidedText(each.text, Qt::ElideRight,
                                                    static_cast<int>(column - 26 - aboutWidth)));
            font(TextSize::Note);
            text(QRectF(x + column - aboutWidth - 12, m_y, aboutWidth, 20),
                 Qt::AlignRight | Qt::AlignVCenter, each.about, Tone::Muted);
            if (++at == block.columns) {
                at = 0;
                m_y += 20;
            }
        }
        if (at != 0) m_y += 20;
        m_y += 10;
    }

    void paintBlock(const BlanksBlock& block) {
        const double height = block.framed ? 30 : 28;
        need(height + 4);
        if (block.framed) {
            m_painter.setPen(QPen(m_look.tone(Tone::Line), 1));
            m_painter.setBrush(Qt::NoBrush);
            m_painter.drawRect(QRectF(0.5, m_y, m_width - 1, height));
        }
        font(TextSize::Body);
        const double room = m_width / static_cast<double>(block.labels.size());
        double x = block.framed ? 8 : 0;
        for (const QString& label : block.labels) {
            text(QRectF(x, m_y, room, height), Qt::AlignLeft | Qt::AlignVCenter, label);
            const double from = x + textWidth(label) + 6;
            if (!block.framed)
                line(from, m_y + height - 8, std::max(from + 20, x + room - 14), 0.8, Tone::Line);
            x += room;
        }
        m_y += height + 10;
    }

    // Tables ------------------------------------------------------------------------------------

    void paintHead(const TableBlock& table, const std::vector<double>& edges) {
        font(TextSize::Note);
        // One line, or two where a head needs them.
        double high = 15;
        for (std::size_t i = 0; i < table.columns.size(); ++i)
            if (textWidth(table.columns[i].head) > edges[i + 1] - edges[i] - 8) high = 26;
        for (std::size_t i = 0; i < table.columns.size(); ++i) {
            const QRectF box(edges[i], m_y, edges[i + 1] - edges[i] - 8, high);
            text(box,
                 Qt::TextWordWrap | Qt::AlignBottom |
                     (table.columns[i].right ? Qt::AlignRight : Qt::AlignLeft),
                 table.columns[i].head, Tone::Muted);
            if (!table.columns[i].scale.empty()) paintScale(table.columns[i].scale, sheetBars(box));
        }
        m_y += high + 3;
        line(0, m_y, m_width, 1.4);
        m_y += 1;
    }

    /// The figures over a column of bars; the last, which names the unit, begins at its figure.
    void paintScale(const std::vector<ScaleMark>& scale, const QRectF& box) {
        text(QRectF(box.x(), box.y(), 20, box.height()), Qt::AlignLeft | Qt::AlignBottom,
             QStringLiteral("0"), Tone::Muted);
        for (const ScaleMark& mark : scale) {
            const QString figure = mark.label.section(QLatin1Char(' '), 0, 0);
            const double left = box.x() + box.width() * mark.at - textWidth(figure) / 2;
            text(QRectF(left, box.y(), textWidth(mark.label) + 4, box.height()),
                 Qt::AlignLeft | Qt::AlignBottom, mark.label, Tone::Muted);
        }
    }

    /// Bars leave room for the unit behind the last figure of their scale.
    static QRectF sheetBars(const QRectF& box) { return box.adjusted(0, 0, -18, 0); }

    /// How high a group is, from its head to the row before the next.
    static double groupHeight(const TableBlock& table, std::size_t from, double row) {
        std::size_t to = from + 1;
        while (to < table.rows.size() && !table.rows[to].group) ++to;
        return static_cast<double>(to - from) * row + 4;
    }

    void paintRow(const TableBlock& table, const TableRow& row, const std::vector<double>& edges,
                  double height) {
        for (std::size_t i = 0; i < row.cells.size() && i + 1 < edges.size(); ++i) {
            QRectF box(edges[i], m_y, edges[i + 1] - edges[i] - 8, height);
            if (!table.columns[i].scale.empty() && row.cells[i].look == Cell::Look::Bar)
                box = sheetBars(box);
            if (row.cells[i].look == Cell::Look::Bar)
                for (const ScaleMark& mark : table.columns[i].scale) {
                    const double x = box.x() + box.width() * mark.at;
                    m_painter.setPen(QPen(m_look.tone(Tone::Hairline), 0.6));
                    m_painter.drawLine(QPointF(x, box.top()), QPointF(x, box.bottom()));
                }
            paintCell(row.cells[i], box, table.columns[i].right);
        }
        m_y += height;
    }

    void paintBlock(const TableBlock& table) {
        if (!table.title.isEmpty()) need(24 + 29 + 3 * table.rowMm * unitsPerMm);
        title(table.title);
        double shares = 0;
        for (const TableColumn& column : table.columns) shares += column.share;
        std::vector<double> edges{0};
        for (const TableColumn& column : table.columns)
            edges.push_back(edges.back() + m_width * column.share / shares);
        need(29 + table.rowMm * unitsPerMm);
        paintHead(table, edges);
        const double height = table.rowMm * unitsPerMm;
        // A group stays together where a sheet holds it; else it breaks and names itself again.
        const double sheetRoom = m_ground.height ? *m_ground.height - 44 - 30 - 36 : 0;
        const TableRow* group = nullptr;
        for (const TableRow& row : table.rows) {
            const auto at = static_cast<std::size_t>(&row - table.rows.data());
            if (row.group) group = &row;
            const double whole = row.group ? groupHeight(table, at, height) : height;
            // A group's head never stands alone at the foot of a sheet.
            const double wanted = whole <= sheetRoom ? whole : (row.group ? 3 * height : height);
            if (need(wanted)) {
                paintHead(table, edges);
                if (group && group != &row && row.below != Rule::Double) {
                    TableRow again = *group;
                    again.cells.resize(1);
                    again.cells.front().text += QCoreApplication::translate("print", ", continued");
                    paintRow(table, again, edges, height);
                    paintRule(Rule::Hairline);
                }
            }
            paintRow(table, row, edges, height);
            paintRule(row.below);
        }
        m_y += 12;
    }

    void paintRule(Rule rule) {
        switch (rule) {
            case Rule::Hairline:
                line(0, m_y, m_width, 0.6, Tone::Hairline);
                break;
            case Rule::Ink:
                line(0, m_y, m_width, 1.2);
                break;
            case Rule::Double:
                line(0, m_y, m_width, 0.8);
                line(0, m_y + 3, m_width, 0.8);
                m_y += 3;
                break;
        }
    }

    void paintCell(const Cell& cell, const QRectF& box, bool right) {
        switch (cell.look) {
            case Cell::Look::Text:
                return paintText(cell, box, right);
            case Cell::Look::Pencil:
                return paintPencil(box);
            case Cell::Look::Shut:
                return paintShut(cell, box);
            case Cell::Look::Bar:
                return paintBar(cell, box);
            case Cell::Look::Stack:
                return paintSmallStack(cell, box);
        }
    }

    void paintText(const Cell& cell, const QRectF& box, bool right) {
        const bool two = !cell.second.isEmpty();
        const QRectF first = two ? QRectF(box.x(), box.y(), box.width(), box.height() / 2) : box;
        font(cell.small ? TextSize::Note : TextSize::Body, cell.strong);
        // A yard's long name rather small than cut short.
        if (cell.strong && textWidth(cell.text) > first.width()) font(TextSize::Note, true);
        const Tone tone = cell.muted ? Tone::Muted : Tone::Ink;
        const double letterRoom = cell.how ? 8 : 0;
        const int flags =
            (two ? Qt::AlignBottom : Qt::AlignVCenter) | (right ? Qt::AlignRight : Qt::AlignLeft);
        const QString words = m_painter.fontMetrics().elidedText(
            cell.text, Qt::ElideRight, static_cast<int>(first.width() - letterRoom));
        text(first.adjusted(0, 0, -letterRoom, 0), flags, words, tone);
        if (cell.how) {
            const double at = right ? first.right() - letterRoom : first.x() + textWidth(words);
            font(TextSize::Letter, true);
            text(QRectF(at + 1, first.center().y() - 11, 10, 12), Qt::AlignLeft | Qt::AlignBottom,
                 QString(QLatin1Char(letter(*cell.how))), tone);
        }
        if (!two) return;
        font(TextSize::Note, false, true);
        const QRectF below(box.x(), box.center().y() + 1, box.width(), box.height() / 2);
        text(below, Qt::AlignTop | (right ? Qt::AlignRight : Qt::AlignLeft),
             m_painter.fontMetrics().elidedText(cell.second, Qt::ElideRight,
                                                static_cast<int>(below.width())),
             Tone::Muted);
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

    void paintShut(const Cell& cell, const QRectF& box) {
        const QRectF frame = box.adjusted(0, 4, 0, -4);
        m_painter.setPen(QPen(m_look.tone(Tone::Line), 1));
        m_painter.setBrush(QBrush(m_look.tone(Tone::Line), Qt::BDiagPattern));
        m_painter.drawRect(frame);
        const QRectF inner = frame.adjusted(14, 5, -14, -5);
        m_painter.fillRect(inner, m_look.tone(Tone::Surface));
        font(TextSize::Body, true);
        text(QRectF(inner.x() + 6, inner.y(), inner.width() - 8, inner.height() / 2),
             Qt::AlignLeft | Qt::AlignVCenter, cell.text);
        font(TextSize::Note);
        text(QRectF(inner.x() + 6, inner.center().y(), inner.width() - 8, inner.height() / 2),
             Qt::AlignLeft | Qt::AlignVCenter, cell.second);
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

    const Ground& m_ground;
    QPainter& m_painter;
    const Page& m_page;
    const Look& m_look;
    int m_sheets;
    int m_sheet = 0;
    double m_width = 0;
    double m_y = 0;
};

/// All sheets of a page on a device whose size is set.
int paintSheets(QPagedPaintDevice& device, const Page& page, const Look& look, int sheets) {
    QPainter painter(&device);
    const double scale = device.logicalDpiX() / unitsPerInch;
    painter.scale(scale, scale);
    const Ground ground{painter, device.width() / scale, device.height() / scale,
                        [&device] { device.newPage(); }};
    return PagePainter(ground, page, look, sheets).paint();
}

double paintPicture(QPaintDevice& device, const Page& page, const Look& look, double width,
                    double factor = 1) {
    QPainter painter(&device);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.scale(factor, factor);
    painter.translate(pictureEdge, pictureEdge);
    const Ground ground{painter, width - 2 * pictureEdge, std::nullopt, {}};
    PagePainter picture(ground, page, look, 1);
    picture.paint();
    return picture.height() + 2 * pictureEdge;
}

}  // namespace

int paintPage(QPagedPaintDevice& device, const Page& page, const QFont& base) {
    const Look look = paperLook(base);
    // How many sheets there are is known only after painting them once, on a device that is thrown
    // away.
    int sheets = 1;
    {
        class Counting : public QIODevice {
          public:
            bool isSequential() const override { return true; }
            qint64 readData(char*, qint64) override { return -1; }
            qint64 writeData(const char*, qint64 size) override { return size; }
        } nowhere;
        nowhere.open(QIODevice::WriteOnly);
        QPdfWriter counter(&nowhere);
        counter.setResolution(device.logicalDpiX());
        counter.setPageLayout(device.pageLayout());
        sheets = paintSheets(counter, page, look, 1);
    }
    return paintSheets(device, page, look, sheets);
}

QString writePdf(const Page& page, const QString& path, const QFont& base, const QPageSize& size) {
    // Into memory first: a full disk is noticed, and half a sheet never lies there.
    QBuffer sheet;
    sheet.open(QIODevice::WriteOnly);
    QPdfWriter writer(&sheet);
    writer.setPdfVersion(QPagedPaintDevice::PdfVersion_A1b);
    writer.setTitle(page.title);
    writer.setResolution(300);
    writer.setPageLayout(QPageLayout(size, QPageLayout::Portrait, QMarginsF(15, 14, 15, 12),
                                     QPageLayout::Millimeter));
    paintPage(writer, page, base);
    return keepBytes(path, sheet.data());
}

QString writePicture(const Page& page, const QString& path, const Look& look, int width) {
    QImage measure(1, 1, QImage::Format_RGB32);
    const int height = static_cast<int>(paintPicture(measure, page, look, width));
    QFile file(path);
    if (!file.open(QIODevice::WriteOnly)) return file.errorString();
    if (path.endsWith(QLatin1String(".svg"), Qt::CaseInsensitive)) {
        QSvgGenerator svg;
        svg.setOutputDevice(&file);
        svg.setSize(QSize(width, height));
        svg.setViewBox(QRect(0, 0, width, height));
        svg.setTitle(page.title);
        paintPicture(svg, page, look, width);
        return {};
    }
    QImage picture(QSize(width, height) * 2, QImage::Format_RGB32);
    picture.fill(look.tone(Tone::Ground));
    paintPicture(picture, page, look, width, 2);
    if (picture.save(&file, "PNG")) return {};
    return file.errorString();
}

}  // namespace combwright
