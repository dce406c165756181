#include "core/places/pages/copies/copy_pages.h"

#include <QCoreApplication>

#include "core/model/season_info.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString copyPageSay(const char* text) { return QCoreApplication::translate("merge", text); }

Cell copyCell(const QString& text, bool strong = false) {
    Cell cell;
    cell.text = text;
    cell.strong = strong;
    return cell;
}

}  // namespace

QString choiceText(MergeChoice choice) {
    switch (choice) {
        case MergeChoice::Ours:
            return copyPageSay("ours");
        case MergeChoice::Theirs:
            return copyPageSay("the other's");
        case MergeChoice::One:
            return copyPageSay("it is the same");
        case MergeChoice::Two:
            return copyPageSay("these are two");
    }
    return {};
}

QString mergeSum(const MergePlan& plan) {
    if (plan.edits.empty() && plan.questions.empty())
        return copyPageSay("%1 has nothing that is not here already.").arg(fromUtf8(plan.from));
    return copyPageSay("From %1 come new records: %2, changed: %3, struck: %4.")
        .arg(fromUtf8(plan.from))
        .arg(plan.count(ChangeKind::Added))
        .arg(plan.count(ChangeKind::Changed))
        .arg(plan.count(ChangeKind::Removed));
}

Page mergePage(const Read& file, const MergePlan& plan) {
    Page page;
    page.title = copyPageSay("Another copy taken in");
    if (const auto season = file.first<SeasonInfo>({})) {
        page.keeper = fromUtf8(season->name.text());
        page.invented = season->invented.value_or(false);
    }
    page.blocks.push_back(TextBlock{{}, mergeSum(plan), {}});
    if (!plan.questions.empty()) {
        TableBlock table;
        table.title = plan.open() > 0 ? copyPageSay("To be chosen: %1").arg(plan.open())
                                      : copyPageSay("Chosen where both say something");
        table.columns = {{{}, 0.3},
                         {copyPageSay("ours"), 0.2},
                         {copyPageSay("the other's"), 0.2},
                         {copyPageSay("before"), 0.15},
                         {copyPageSay("holds"), 0.15}};
        for (const MergeQuestion& each : plan.questions) {
            TableRow row;
            row.cells = {
                copyCell(each.about, true), copyCell(each.ours), copyCell(each.theirs),
                copyCell(each.was),
                copyCell(each.chosen ? choiceText(*each.chosen) : copyPageSay("to be chosen"))};
            // The command line chooses by it.
            QStringList words;
            for (const MergeChoice may : choicesFor(each.asked)) words << fromUtf8(key(may));
            row.cells.front().second =
                fromUtf8(each.key) + QStringLiteral(": ") + words.join(QStringLiteral(" | "));
            table.rows.push_back(std::move(row));
        }
        page.blocks.push_back(std::move(table));
    }
    if (!plan.notes.isEmpty())
        page.blocks.push_back(TextBlock{
            copyPageSay("Decided without asking"), plan.notes.join(QLatin1Char('\n')), {}});
    return page;
}

}  // namespace combwright
