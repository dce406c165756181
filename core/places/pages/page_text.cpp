#include "core/places/pages/page_text.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>
#include <set>

#include "core/words/words.h"

namespace combwright {
namespace {

QString pageWord(const char* text) { return QCoreApplication::translate("pages", text); }

/// As small and high as paper sets it: a plain letter would read as part of the figure.
QChar raisedLetter(How how) {
    switch (how) {
        case How::Weighed:
            return QChar(0x02b7);
        case How::Counted:
            return QChar(0x1d9c);
        case How::ByEye:
            return QChar(0x1d49);
        case How::ByDifference:
            return QChar(0x1d48);
        case How::Assumed:
            return QChar(0x1d43);
        case How::Unknown:
            return QChar(0x02c0);
    }
    return {};
}

QString cellText(const Cell& cell) {
    switch (cell.look) {
        case Cell::Look::Pencil:
            return cell.text.isEmpty() ? QStringLiteral("[ ] ") + pageWord("not opened")
                                       : QStringLiteral("[ ] ") + cell.text;
        case Cell::Look::Bar:
            return cell.text;
        case Cell::Look::Blank:
            return (cell.text.isEmpty() ? QString() : cell.text + QLatin1Char(' ')) +
                   QStringLiteral("____");
        case Cell::Look::Stack: {
            int nest = 0;
            for (const StackedBox& box : cell.stack) nest += box.nest;
            const int supers = static_cast<int>(cell.stack.size()) - nest;
            return QStringLiteral("%1+%2").arg(nest).arg(supers);
        }
        case Cell::Look::Week: {
            QString week = cell.text;
            week.remove(QLatin1Char(' '));
            if (cell.strong) week += QLatin1Char('=');
            if (cell.open) week += QLatin1Char('_');
            if (cell.hatched) week += QLatin1Char('/');
            return week.isEmpty() && !cell.dashed ? QStringLiteral(".") : week;
        }
        default:
            break;
    }
    QString text = cell.text;
    if (cell.how) text += raisedLetter(*cell.how);
    if (!cell.second.isEmpty())
        text += text.isEmpty() ? cell.second : QStringLiteral("; ") + cell.second;
    return text;
}

/// A head within a table that runs over its columns.
bool runsOver(const TableBlock& table, const TableRow& row) {
    return row.group && (table.abreast > 1 ||
                         std::all_of(row.cells.begin() + 1, row.cells.end(),
                                     [](const Cell& cell) { return cellText(cell).isEmpty(); }));
}

QString headLine(const TableRow& row) {
    QStringList parts;
    for (const Cell& cell : row.cells)
        if (const QString text = cellText(cell); !text.isEmpty()) parts << text;
    return parts.join(QStringLiteral(": "));
}

void writeTable(const TableBlock& table, QString& out) {
    std::vector<qsizetype> widths;
    const auto headAt = [&](std::size_t i) {
        QString head = table.columns[i].head;
        return head.replace(QLatin1Char('\n'), QLatin1Char(' '));
    };
    for (const TableColumn& column : table.columns) widths.push_back(column.head.size());
    for (const TableRow& row : table.rows)
        for (std::size_t i = 0; !runsOver(table, row) && i < row.cells.size() && i < widths.size();
             ++i)
            widths[i] = std::max(widths[i], cellText(row.cells[i]).size());
    const auto writeRow = [&](auto textAt) {
        QString line;
        for (std::size_t i = 0; i < widths.size(); ++i) {
            const QString text = textAt(i);
            line += table.columns[i].right ? text.rightJustified(widths[i])
                                           : text.leftJustified(widths[i]);
            line += QStringLiteral("  ");
        }
        while (line.endsWith(QLatin1Char(' '))) line.chop(1);
        out += line + QLatin1Char('\n');
        return line.size();
    };
    const qsizetype head = writeRow(headAt);
    out += QString(std::max<qsizetype>(head, 8), QLatin1Char('-')) + QLatin1Char('\n');
    for (const TableRow& row : table.rows)
        if (runsOver(table, row))
            out += headLine(row) + QLatin1Char('\n');
        else
            writeRow([&](std::size_t i) {
                return i < row.cells.size() ? cellText(row.cells[i]) : QString();
            });
}

void writeWrappedLine(const QString& text, int width, QString& out) {
    QString line;
    for (const QString& part : text.split(QLatin1Char(' '))) {
        if (!line.isEmpty() && line.size() + 1 + part.size() > width) {
            out += line + QLatin1Char('\n');
            line.clear();
        }
        line += (line.isEmpty() ? QString() : QStringLiteral(" ")) + part;
    }
    out += line + QLatin1Char('\n');
}

void writeWrapped(const QString& text, int width, QString& out) {
    for (const QString& line : text.split(QLatin1Char('\n'))) writeWrappedLine(line, width, out);
}

/// What a card is and what its drawing shows.
QString cardHead(const Card& card) {
    QStringList parts;
    if (const auto* peg = std::get_if<PegDrawn>(&card.drawing))
        parts << pageWord("peg %1").arg(peg->number.isEmpty() ? QStringLiteral("____")
                                                              : peg->number);
    if (!card.name.text.isEmpty()) parts << card.name.text.simplified();
    for (const CardText& each : card.about)
        if (!each.text.isEmpty()) parts << each.text;
    if (const auto* drawn = std::get_if<StacksDrawn>(&card.drawing))
        for (const auto& stack : drawn->stacks)
            for (const StacksDrawn::Box& box : stack)
                parts << (box.mark.isEmpty() ? pageWord("no mark") : box.mark) +
                             (box.peg.isEmpty() ? QString() : pageWord(" on peg %1").arg(box.peg));
    return parts.join(QStringLiteral("; "));
}

QString fieldText(const CardField& field) {
    QStringList parts;
    if (field.tick) parts << (field.ticked ? QStringLiteral("[x]") : QStringLiteral("[ ]"));
    if (!field.label.isEmpty()) parts << field.label;
    if (field.line) parts << (field.value.isEmpty() ? QStringLiteral("____") : field.value);
    if (!field.unit.isEmpty()) parts << field.unit;
    return parts.join(QLatin1Char(' '));
}

struct BlockWriter {
    QString& out;
    int width;

    void title(const QString& text) const {
        if (!text.isEmpty()) out += text + QLatin1Char('\n');
    }
    void operator()(const TextBlock& block) const {
        title(block.title);
        writeWrapped(block.text, width, out);
    }
    void operator()(const TickBlock& block) const {
        title(block.title);
        for (const TickBlock::Line& line : block.lines)
            out += QStringLiteral("[ ] %1%2\n")
                       .arg(line.text, line.about.isEmpty()
                                           ? QString()
                                           : QStringLiteral("  (%1)").arg(line.about));
    }
    void operator()(const TableBlock& block) const {
        title(block.title);
        writeTable(block, out);
    }
    void operator()(const StepsBlock& block) const {
        title(block.title);
        for (const StepsBlock::Line& line : block.lines) {
            for (const StepsBlock::Step& step : line.steps)
                out += QStringLiteral("%1  %2\n").arg(line.year).arg(step.label);
            out += line.end + QLatin1Char('\n');
        }
    }
    void operator()(const ChartBlock& block) const {
        title(block.title);
        out += block.axis + QLatin1Char('\n');
        for (const ChartBlock::Series& series : block.series)
            for (const ChartBlock::Point& point : series.points)
                writeWrapped(point.says, width, out);
        for (const ChartBlock::Limit& limit : block.limits) writeWrapped(limit.label, width, out);
        for (const ChartBlock::Span& span : block.spans) writeWrapped(span.says, width, out);
    }
    void operator()(const CardsBlock& block) const {
        title(block.title);
        for (const Card& card : block.cards) {
            out += QStringLiteral("- ") + cardHead(card) + QLatin1Char('\n');
            for (const CardText& line : card.lines)
                writeWrapped(QStringLiteral("  ") + line.text, width, out);
            for (const auto& row : card.rows) {
                QStringList parts;
                for (const CardField& field : row) parts << fieldText(field);
                out += QStringLiteral("  ") + parts.join(QStringLiteral("   ")) + QLatin1Char('\n');
            }
        }
    }
    void operator()(const LabelsBlock& block) const {
        std::vector<std::size_t> counts(block.labels.size(), 0);
        for (const auto& sheet : block.sheets)
            for (const PlacedCell& cell : sheet)
                if (cell.label < counts.size()) ++counts[cell.label];
        for (const QString& line : block.about) writeWrapped(line, width, out);
        for (std::size_t i = 0; i < block.labels.size(); ++i) {
            const LabelDrawn& label = block.labels[i];
            out += QStringLiteral("- %1 × %2, %3\n").arg(counts[i]).arg(label.head, label.net);
            for (const QString& line : label.lines)
                writeWrapped(QStringLiteral("  ") + line, width, out);
            writeWrapped(QStringLiteral("  ") + label.caution, width, out);
        }
    }
    void operator()(const BlanksBlock& block) const {
        QStringList parts;
        for (const QString& label : block.labels) parts << label + QStringLiteral(" ______");
        out += parts.join(QStringLiteral("   ")) + QLatin1Char('\n');
    }
};

}  // namespace

std::vector<How> lettersOf(const Page& page) {
    std::set<How> used;
    for (const Block& block : page.blocks) {
        const auto* table = std::get_if<TableBlock>(&block);
        if (!table) continue;
        for (const TableRow& row : table->rows)
            for (const Cell& cell : row.cells)
                if (cell.how) used.insert(*cell.how);
    }
    return {used.begin(), used.end()};
}

QString pageText(const Page& page, int width) {
    QString out = page.title + QLatin1Char('\n');
    QStringList head;
    for (const QString& part : {page.keeper, page.day})
        if (!part.isEmpty()) head << part;
    out += head.join(QStringLiteral(", ")) + QLatin1Char('\n');
    if (!page.marked.isEmpty()) out += page.marked + QLatin1Char('\n');
    out += QString(std::min(width, 72), QLatin1Char('=')) + QLatin1Char('\n');
    for (const Block& block : page.blocks) {
        out += QLatin1Char('\n');
        std::visit(BlockWriter{out, width}, block);
    }
    QStringList foot;
    for (const How how : page.letters)
        foot << QStringLiteral("%1 %2").arg(raisedLetter(how)).arg(howWord(how));
    if (!foot.isEmpty())
        out += QLatin1Char('\n') + foot.join(QStringLiteral("   ")) + QLatin1Char('\n');
    if (page.invented) out += pageWord("invented sample season") + QLatin1Char('\n');
    // What is held together on paper is plain words here.
    return out.replace(QChar::Nbsp, QLatin1Char(' '));
}

}  // namespace combwright
