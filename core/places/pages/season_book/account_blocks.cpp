#include "core/places/pages/season_book/account_blocks.h"

#include <QCoreApplication>
#include <QLocale>

#include "core/places/pages/health/colonies_page.h"
#include "core/words/wax_figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString blockSay(const char* text) { return QCoreApplication::translate("account", text); }

Cell accountCell(const QString& text, bool strong = false, bool muted = false) {
    Cell cell;
    cell.text = text;
    cell.strong = strong;
    cell.muted = muted;
    return cell;
}

}  // namespace

QString coloniesInWords(const ColoniesOfYear& colonies) {
    QStringList said;
    QStringList items;
    for (const AccountLine& line : coloniesSection(colonies).lines) {
        const QString item = blockSay("%1 %2").arg(line.figure, line.name);
        items << (line.note.isEmpty() ? item : blockSay("%1 (%2)").arg(item, line.note));
    }
    if (!items.isEmpty()) said << blockSay("Colonies: %1.").arg(items.join(QStringLiteral("; ")));
    for (const auto& winter : {colonies.before, colonies.after})
        if (winter && winter->loss.loss) said << winterLossBrief(winter->loss);
    return said.join(QLatin1Char('\n'));
}

QString waxInWords(const WaxYear& wax) {
    if (wax.clean == Mass() && wax.raw == Mass()) return {};
    const QString raw = waxText(wax.raw);
    const QString clean = waxText(wax.clean);
    if (wax.clean == Mass()) return blockSay("Wax: %1 raw, nothing cast of it yet.").arg(raw);
    const QString share = wax.crop
                              ? QLocale().toString(static_cast<double>(wax.clean.grams()) /
                                                       static_cast<double>(wax.crop->grams()) * 100,
                                                   'f', 1)
                              : QString();
    if (wax.raw == Mass())
        return wax.crop ? blockSay("Wax: %1 of clean blocks, %2 % of the honey.").arg(clean, share)
                        : blockSay("Wax: %1 of clean blocks.").arg(clean);
    return wax.crop ? blockSay("Wax: %1 raw; %2 of clean blocks, %3 % of the honey.")
                          .arg(raw, clean, share)
                    : blockSay("Wax: %1 raw; %2 of clean blocks.").arg(raw, clean);
}

TableBlock accountBlock(const AccountSection& section) {
    TableBlock table;
    table.title = section.title;
    table.columns = {{blockSay("what"), 2.2, false},
                     {blockSay("how much"), 0.9, true},
                     {blockSay("which, and how"), 3, false}};
    table.rowMm = 5;
    for (const AccountLine& line : section.lines) {
        TableRow row;
        Cell figure = accountCell(
            line.unit.isEmpty() ? line.figure : line.figure + QLatin1Char(' ') + line.unit,
            line.strong);
        figure.how = line.how;
        row.cells = {accountCell(line.name, line.strong), figure,
                     accountCell(line.note, false, true)};
        if (line.sums) row.below = Rule::Double;
        table.rows.push_back(std::move(row));
    }
    return table;
}

TableBlock accountRecordsBlock(const AccountLine& line) {
    TableBlock table;
    table.columns = {{blockSay("day"), 1.1, false},
                     {blockSay("what"), 2.2, false},
                     {blockSay("how much"), 1.3, false},
                     {blockSay("note"), 1.8, false}};
    table.rowMm = 5.3;
    for (const AccountRecord& each : line.records) {
        TableRow row;
        row.cells = {accountCell(each.on ? dayText(*each.on) : QString(), false, true),
                     accountCell(each.what, true), accountCell(each.amount),
                     accountCell(each.note, false, true)};
        table.rows.push_back(std::move(row));
    }
    return table;
}

HarvestTable accountTable(const AccountSection& section) {
    HarvestTable table;
    table.head = {blockSay("line"), blockSay("figure"), blockSay("unit"), blockSay("how known"),
                  blockSay("note")};
    for (const AccountLine& line : section.lines) {
        const auto& steps = line.working.steps;
        table.rows.push_back(
            {line.name.trimmed(),
             steps.empty() ? QString() : QString::number(steps.back().value, 'g', 12),
             steps.empty() ? QString() : fromUtf8(steps.back().unit),
             line.how ? howWord(*line.how) : QString(), line.note});
    }
    return table;
}

HarvestTable accountRecordsTable(const AccountLine& line) {
    HarvestTable table;
    table.head = {blockSay("day"), blockSay("what"), blockSay("how much"), blockSay("note")};
    for (const AccountRecord& each : line.records)
        table.rows.push_back(
            {each.on ? fromUtf8(isoText(*each.on)) : QString(), each.what, each.amount, each.note});
    return table;
}

}  // namespace combwright
