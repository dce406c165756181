// Tables on sheets: heads repeated, groups kept together where a sheet holds them.
#include <QCoreApplication>
#include <QRegularExpression>
#include <algorithm>
#include <numeric>

#include "ui/print/cell_painter.h"
#include "ui/print/rows_abreast.h"
#include "ui/print/sheet_painter.h"

namespace combwright {

namespace {

/// Between a column and the next.
double gapOf(const TableColumn& column) { return column.close ? 0 : 8; }

}  // namespace

void SheetPainter::paintHead(const TableBlock& table, const std::vector<double>& edges) {
    font(TextSize::Note);
    // One line, or two where a head needs them.
    double high = 15;
    for (std::size_t i = 0; i < table.columns.size(); ++i)
        if (table.columns[i].head.contains(QLatin1Char('\n')) ||
            textWidth(table.columns[i].head) > edges[i + 1] - edges[i] - gapOf(table.columns[i]))
            high = 26;
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        const QRectF box(edges[i], m_y, edges[i + 1] - edges[i] - gapOf(table.columns[i]), high);
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
void SheetPainter::paintScale(const std::vector<ScaleMark>& scale, const QRectF& box) {
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
QRectF SheetPainter::sheetBars(const QRectF& box) { return box.adjusted(0, 0, -18, 0); }

/// Where a cell stands across the sheet: words of a head within the table run on over what is
/// empty behind them.
QRectF SheetPainter::cellBox(const TableBlock& table, const TableRow& row, std::size_t at,
                             const std::vector<double>& edges, double height) const {
    std::size_t end = at + 1;
    const auto isFree = [&](std::size_t i) {
        return i >= row.cells.size() ||
               (row.cells[i].look == Cell::Look::Text && row.cells[i].text.isEmpty());
    };
    if (row.group && !table.columns[at].right && !isFree(at))
        while (end + 1 < edges.size() && isFree(end)) ++end;
    return {edges[at], m_y, edges[end] - edges[at] - gapOf(table.columns[at]), height};
}

double SheetPainter::rowHeight(const TableBlock& table, const TableRow& row,
                               const std::vector<double>& edges) {
    double height = table.rowMm * unitsPerMm;
    for (std::size_t i = 0; i < row.cells.size() && i + 1 < edges.size(); ++i)
        height = std::max(height, cellHeight(m_painter, m_look, row.cells[i],
                                             cellBox(table, row, i, edges, 0).width()));
    return height;
}

void SheetPainter::paintRow(const TableBlock& table, const TableRow& row,
                            const std::vector<double>& edges, double height) {
    for (std::size_t i = 0; i < row.cells.size() && i + 1 < edges.size(); ++i) {
        QRectF box = cellBox(table, row, i, edges, height);
        if (!table.columns[i].scale.empty() && row.cells[i].look == Cell::Look::Bar)
            box = sheetBars(box);
        if (row.cells[i].look == Cell::Look::Bar)
            for (const ScaleMark& mark : table.columns[i].scale) {
                const double x = box.x() + box.width() * mark.at;
                m_painter.setPen(QPen(m_look.tone(Tone::Hairline), 0.6));
                m_painter.drawLine(QPointF(x, box.top()), QPointF(x, box.bottom()));
            }
        paintCell(m_painter, m_look, row.cells[i], box, table.columns[i].right);
    }
    m_y += height;
}

/// Where columns begin and the last ends: by their shares, but none is narrower than the longest
/// word of its head, which no line could be broken in; what that takes the others give as far as
/// they have room to spare.
std::vector<double> SheetPainter::columnEdges(const TableBlock& table) {
    double shares = 0;
    for (const TableColumn& column : table.columns) shares += column.share;
    std::vector<double> widths, lacking, spare;
    font(TextSize::Note);
    for (const TableColumn& column : table.columns) {
        double longest = 0;
        for (const QString& word : column.head.split(QRegularExpression(QStringLiteral("\\s"))))
            longest = std::max(longest, textWidth(word) + gapOf(column));
        const double width = m_width * column.share / shares;
        widths.push_back(width);
        lacking.push_back(std::max(0.0, longest - width));
        // What stands in the rows needs more than its head; half of it is left to them.
        spare.push_back(std::max(0.0, width - std::max(longest, width / 2)));
    }
    const double wanted = std::accumulate(lacking.begin(), lacking.end(), 0.0);
    const double there = std::accumulate(spare.begin(), spare.end(), 0.0);
    const double given = std::min(wanted, there);
    std::vector<double> edges{0};
    for (std::size_t i = 0; i < widths.size(); ++i) {
        const double more = wanted > 0 ? lacking[i] * given / wanted : 0;
        const double less = there > 0 ? spare[i] * given / there : 0;
        edges.push_back(edges.back() + widths[i] + more - less);
    }
    return edges;
}

void SheetPainter::paintBlock(const TableBlock& narrow) {
    const TableBlock wide = narrow.abreast > 1 ? rowsAbreast(narrow) : TableBlock{};
    const TableBlock& table = narrow.abreast > 1 ? wide : narrow;
    const std::vector<double> edges = columnEdges(table);
    std::vector<double> heights;
    for (const TableRow& row : table.rows) heights.push_back(rowHeight(table, row, edges));
    const double first = heights.empty() ? 0 : heights.front();
    // A short table that closes with its sum is read as one: it is not torn where a sheet holds it.
    if (!table.rows.empty() && table.rows.back().below == Rule::Double && m_ground.height) {
        const double whole = std::accumulate(heights.begin(), heights.end(), 24.0 + 29.0 + 3.0);
        if (whole <= *m_ground.height / 3) need(whole);
    }
    if (!table.title.isEmpty()) need(24 + 29 + first + 2 * table.rowMm * unitsPerMm);
    title(table.title);
    need(29 + first);
    paintHead(table, edges);
    // A group stays together where a sheet holds it; else it breaks and names itself again.
    const double sheetRoom = m_ground.height ? *m_ground.height - 44 - 30 - 36 : 0;
    const TableRow* group = nullptr;
    for (std::size_t at = 0; at < table.rows.size(); ++at) {
        const TableRow& row = table.rows[at];
        if (row.group) group = &row;
        double wanted = heights[at];
        if (row.group) {
            double whole = heights[at] + 4;
            for (std::size_t i = at + 1; i < table.rows.size() && !table.rows[i].group; ++i)
                whole += heights[i];
            // A group's head never stands alone at the foot of a sheet.
            wanted = whole <= sheetRoom && !table.groupsBreak ? whole : 3 * heights[at];
        }
        if (need(wanted)) {
            paintHead(table, edges);
            if (group && group != &row && row.below != Rule::Double) {
                TableRow again = *group;
                again.cells.resize(1);
                again.cells.front().text += QCoreApplication::translate("print", ", continued");
                paintRow(table, again, edges,
                         heights[static_cast<std::size_t>(group - table.rows.data())]);
                paintRule(Rule::Hairline);
            }
        }
        paintRow(table, row, edges, heights[at]);
        paintRule(row.below);
    }
    m_y += 12;
}

void SheetPainter::paintRule(Rule rule) {
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

}  // namespace combwright
