#include "core/places/pages/copies/time_pages.h"

#include <QCoreApplication>

#include "core/model/season_info.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString timeSay(const char* text) { return QCoreApplication::translate("history", text); }

Cell timeCell(const QString& text, bool strong = false, bool muted = false) {
    Cell cell;
    cell.text = text;
    cell.strong = strong;
    cell.muted = muted;
    return cell;
}

Page timePage(const Read& file, const QString& title) {
    Page page;
    page.title = title;
    if (const auto season = file.first<SeasonInfo>({})) {
        page.keeper = fromUtf8(season->name.text());
        page.invented = season->invented.value_or(false);
    }
    return page;
}

TableRow headRow(const QString& text, std::size_t columns) {
    TableRow row;
    row.group = true;
    row.cells.push_back(timeCell(text, true));
    while (row.cells.size() < columns) row.cells.push_back(timeCell({}));
    return row;
}

QString stepText(const HistoryStep& step) {
    QString text = step.sentence;
    if (!step.why.isEmpty()) text += timeSay(" Why: %1.").arg(step.why);
    return text;
}

QString differenceWord(ChangeKind kind) {
    switch (kind) {
        case ChangeKind::Added:
        case ChangeKind::Removed:
            return timeSay("only here");
        case ChangeKind::Changed:
            break;
    }
    return timeSay("changed");
}

}  // namespace

Page historyPage(const Read& file, const std::vector<HistoryStep>& steps) {
    Page page = timePage(file, timeSay("What was written down, newest first"));
    TableBlock table;
    table.columns = {{timeSay("kept"), 0.09}, {timeSay("step"), 0.07, true}, {{}, 0.84}};
    table.groupsBreak = true;
    std::optional<Day> day;
    bool first = true;
    for (const HistoryStep& step : steps) {
        if (first || step.day != day)
            table.rows.push_back(
                headRow(step.day ? dayText(*step.day) : timeSay("on a day nobody knows"), 3));
        first = false;
        day = step.day;
        TableRow row;
        row.cells = {timeCell(step.time), timeCell(QString::number(step.step), false, true),
                     timeCell(stepText(step), false, step.takenBack)};
        QStringList below = step.changes;
        if (step.takenBack) below.prepend(timeSay("taken back"));
        row.cells.back().second = below.join(QStringLiteral("; "));
        table.rows.push_back(std::move(row));
    }
    if (table.rows.empty())
        page.blocks.push_back(TextBlock{{}, timeSay("Nothing was written down yet."), {}});
    else
        page.blocks.push_back(std::move(table));
    return page;
}

Page differencesPage(const Read& file, const Differences& differences, const QString& first,
                     const QString& second) {
    Page page = timePage(file, timeSay("What differs"));
    page.day = timeSay("%1 and %2").arg(first, second);
    page.blocks.push_back(TextBlock{{}, differencesSum(differences), {}});
    if (differences.records.empty()) return page;
    TableBlock table;
    table.columns = {{{}, 0.26}, {timeSay("what"), 0.18}, {first, 0.28}, {second, 0.28}};
    table.groupsBreak = true;
    const RecordType* type = nullptr;
    for (const RecordDiffers& record : differences.records) {
        if (record.type != type) table.rows.push_back(headRow(word(record.type->table), 4));
        type = record.type;
        TableRow row;
        row.cells = {timeCell(record.name, true), timeCell(differenceWord(record.kind)),
                     timeCell(record.kind == ChangeKind::Removed ? record.about : QString()),
                     timeCell(record.kind == ChangeKind::Added ? record.about : QString())};
        if (record.kind != ChangeKind::Changed) {
            table.rows.push_back(std::move(row));
            continue;
        }
        bool named = true;
        for (const ValueDiffers& value : record.values) {
            TableRow line;
            line.cells = {timeCell(named ? record.name : QString(), true),
                          timeCell(word(value.field->name)), timeCell(value.wasText),
                          timeCell(value.isText)};
            if (value.field->part != ReadingPart::Whole && value.field->part != ReadingPart::Value)
                line.cells[1].second = value.field->part == ReadingPart::To
                                           ? timeSay("at most")
                                           : timeSay("how it is known");
            named = false;
            table.rows.push_back(std::move(line));
        }
    }
    page.blocks.push_back(std::move(table));
    return page;
}

QString differencesSum(const Differences& differences) {
    if (differences.records.empty()) return timeSay("Nothing differs.");
    return timeSay("Records added: %1, changed: %2, gone: %3.")
        .arg(differences.count(ChangeKind::Added))
        .arg(differences.count(ChangeKind::Changed))
        .arg(differences.count(ChangeKind::Removed));
}

}  // namespace combwright
