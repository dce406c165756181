#include "core/places/pages/winter_todo_page.h"

#include <QCoreApplication>
#include <QStringList>

#include "core/places/pages/storeroom_words.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString todoWord(const char* text) { return QCoreApplication::translate("winter_todo", text); }

void addBoxes(Page& page, const QString& title, const std::vector<TodoBox>& boxes) {
    if (boxes.empty()) return;
    TickBlock block;
    block.title = todoWord("%1: %2").arg(title).arg(boxes.size());
    block.columns = 3;
    for (const TodoBox& each : boxes) {
        QStringList about{fromUtf8(each.kind)};
        if (!each.stack.empty()) about << todoWord("stack %1").arg(fromUtf8(each.stack));
        if (!each.wood.empty()) about << fromUtf8(each.wood);
        if (each.held) about << todoWord("held: leave it");
        block.lines.push_back({fromUtf8(each.name), about.join(QStringLiteral(", "))});
    }
    page.blocks.emplace_back(block);
}

QString workText(Verdict verdict, bool combGone) {
    switch (verdict) {
        case Verdict::Scrape:
            return todoWord("scrape");
        case Verdict::Repair:
            return todoWord("repair");
        case Verdict::Refit:
            return combGone ? todoWord("refit: new foundation")
                            : todoWord("refit: comb into the pot, new foundation");
        case Verdict::Freeze:
            return todoWord("freeze");
        case Verdict::Melt:
            return todoWord("melt, frame and all");
        case Verdict::Burn:
            return todoWord("burn");
        case Verdict::Hold:
            return todoWord("hold");
        case Verdict::Keep:
            return todoWord("keep");
    }
    return {};
}

QString partsText(const std::vector<TodoPart>& parts) {
    QStringList all;
    for (const TodoPart& each : parts)
        all << QStringLiteral("%1 %2")
                   .arg(each.frames)
                   .arg(each.box            ? fromUtf8(each.name)
                        : each.name.empty() ? todoWord("loose")
                                            : todoWord("loose on %1").arg(fromUtf8(each.name)));
    return all.join(QStringLiteral(", "));
}

void addFrames(Page& page, const QString& title, const std::vector<TodoFrames>& frames) {
    if (frames.empty()) return;
    TickBlock block;
    block.title = title;
    block.columns = 1;
    for (const TodoFrames& each : frames)
        block.lines.push_back(
            {QStringLiteral("%1 %2: %3")
                 .arg(each.frames)
                 .arg(frameText(each.kind), workText(each.verdict, each.combGone)),
             partsText(each.parts)});
    page.blocks.emplace_back(block);
}

void addMaterials(Page& page, const WinterTodo& todo) {
    if (todo.materials.empty()) return;
    TickBlock block;
    block.title = todoWord("Material");
    block.columns = 1;
    for (const TodoMaterial& each : todo.materials) {
        QStringList about;
        if (each.refit > 0) about << todoWord("%1 to refit").arg(each.refit);
        if (each.repair > 0) about << todoWord("%1 to repair").arg(each.repair);
        if (each.bare > 0) about << todoWord("%1 bare").arg(each.bare);
        about << (each.sheetsThere ? todoWord("%1 sheets there").arg(*each.sheetsThere)
                                   : todoWord("sheets not counted"));
        block.lines.push_back(
            {todoWord("%1 sheets of foundation, or starter strips, and wire for %2")
                 .arg(each.sheets())
                 .arg(frameText(each.kind)),
             about.join(QStringLiteral(", "))});
    }
    page.blocks.emplace_back(block);
}

QString holdReason(HoldWhy why) {
    return fromUtf8(Choices<HoldWhy>::words[static_cast<std::size_t>(why)]);
}

void addHeld(Page& page, const WinterTodo& todo) {
    if (todo.held.empty()) return;
    TableBlock table;
    table.title = todoWord("Held back: not used, not moved, not melted");
    table.columns = {{todoWord("what"), 2.2, false},
                     {todoWord("frames"), 0.8, true},
                     {todoWord("why"), 3.2, false},
                     {todoWord("since"), 1.6, false}};
    for (const TodoHold& each : todo.held) {
        TableRow row;
        row.cells.resize(4);
        row.cells[0].text = each.what.empty() ? todoWord("loose") : fromUtf8(each.what);
        row.cells[0].strong = true;
        row.cells[1].text = QString::number(each.frames);
        row.cells[2].text = each.why ? holdReason(*each.why) : todoWord("by its verdict");
        row.cells[2].second = fromUtf8(each.note);
        if (each.since) row.cells[3].text = dayText(*each.since);
        table.rows.push_back(row);
    }
    page.blocks.emplace_back(table);
}

void addStacks(Page& page, const WinterTodo& todo) {
    if (todo.stacks.empty()) return;
    TableBlock table;
    table.title = todoWord("Stacks");
    table.columns = {{todoWord("stack"), 1.2, false},    {todoWord("box"), 1.4, false},
                     {todoWord("kind"), 2.2, false},     {todoWord("frames"), 3.4, false},
                     {todoWord("frozen"), 1.6, false},   {todoWord("last look"), 1.7, false},
                     {todoWord("next look"), 1.6, false}};
    for (const TodoStack& stack : todo.stacks) {
        bool first = true;
        const auto begin = [&](const QString& box, const QString& kind) {
            TableRow row;
            row.cells.resize(7);
            if (first) {
                row.cells[0].text =
                    stack.stack.empty() ? todoWord("no stack named") : fromUtf8(stack.stack);
                row.cells[0].strong = true;
                if (stack.lastLook) row.cells[5].text = shortDayText(*stack.lastLook);
                if (stack.neverLooked > 0)
                    row.cells[5].second = todoWord("%1 never").arg(stack.neverLooked);
            }
            first = false;
            row.cells[1].text = box;
            row.cells[2].text = kind;
            return row;
        };
        for (const StackedContents& each : stack.boxes) {
            TableRow row = begin(fromUtf8(each.box), fromUtf8(each.kind));
            row.cells[3].text = each.counted ? usesText(each.use) : todoWord("not counted");
            if (each.held) row.cells[3].second = todoWord("held");
            if (each.combs > 0)
                row.cells[4].text = todoWord("%1 of %2").arg(each.frozen).arg(each.combs);
            table.rows.push_back(row);
        }
        if (stack.loose.sum() > 0) {
            TableRow row = begin(todoWord("loose"), {});
            row.cells[3].text = usesText(stack.loose);
            table.rows.push_back(row);
        }
        if (!table.rows.empty()) table.rows.back().below = Rule::Ink;
    }
    page.blocks.emplace_back(table);
}

TextBlock todoCaution(const QString& text) {
    TextBlock block;
    block.text = text;
    block.caution = true;
    return block;
}

}  // namespace

Page winterTodoPage(const Read& file, const WinterTodo& todo) {
    Page page = storeroomPage(file, todoWord("Winter to-do"), todo.on);
    if (todo.isEmpty()) {
        TextBlock nothing;
        nothing.text = todoWord(
            "No work is noted. It comes from the bench: look the boxes through and say what was "
            "seen.");
        page.blocks.emplace_back(nothing);
    }
    addBoxes(page, todoWord("Boxes to repair"), todo.repair);
    addBoxes(page, todoWord("Boxes to scrape"), todo.scrape);
    addBoxes(page, todoWord("Boxes to paint"), todo.paint);
    addFrames(page, todoWord("Frames"), todo.frames);
    addMaterials(page, todo);
    addFrames(page, todoWord("Brood and pollen comb not frozen yet"), todo.notFrozen);
    addHeld(page, todo);
    addStacks(page, todo);
    if (!todo.frames.empty())
        page.blocks.emplace_back(todoCaution(
            todoWord("Wax over water only, never over a flame, never left alone: it flashes at "
                     "204 °C, and water thrown on burning wax spreads it. Cut and scrape away from "
                     "the other hand.")));
    if (!todo.stacks.empty()) page.blocks.emplace_back(todoCaution(liftCaution()));
    return page;
}

}  // namespace combwright
