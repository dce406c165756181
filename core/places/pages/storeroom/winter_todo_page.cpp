#include "core/places/pages/storeroom/winter_todo_page.h"

#include <QCoreApplication>
#include <QStringList>

#include "core/places/pages/storeroom/storeroom_words.h"
#include "core/words/figures.h"
#include "core/words/kind_words.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString todoWord(const char* text) { return QCoreApplication::translate("winter_todo", text); }

void addBoxes(Page& page, const KindNames& names, const QString& title,
              const std::vector<TodoBox>& boxes) {
    if (boxes.empty()) return;
    TickBlock block;
    block.title = todoWord("%1: %2").arg(title).arg(boxes.size());
    block.columns = boxes.size() > 3 ? 3 : 1;
    for (const TodoBox& each : boxes) {
        QStringList about{names.box(kindText(each.kind))};
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
                   .arg(each.box            ? todoWord("in %1").arg(fromUtf8(each.name))
                        : each.name.empty() ? todoWord("loose")
                                            : todoWord("loose on %1").arg(fromUtf8(each.name)));
    return all.join(QStringLiteral(", "));
}

void addFrames(Page& page, const KindNames& names, const QString& title,
               const std::vector<TodoFrames>& frames) {
    if (frames.empty()) return;
    TickBlock block;
    block.title = title;
    block.columns = 1;
    for (const TodoFrames& each : frames)
        block.lines.push_back(
            {QStringLiteral("%1 %2: %3")
                 .arg(each.frames)
                 .arg(names.frames(each.kind, each.frames), workText(each.verdict, each.combGone)),
             partsText(each.parts)});
    page.blocks.emplace_back(block);
}

void addMaterials(Page& page, const KindNames& names, const WinterTodo& todo) {
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
            {(each.sheets() == 1
                  ? todoWord("1 sheet of foundation or 1 starter strip, and wire for it: %2")
                  : todoWord("%1 sheets of foundation or as many starter strips, and wire for as "
                             "many: %2")
                        .arg(each.sheets()))
                 .replace(QStringLiteral("%2"), names.frames(each.kind, each.sheets())),
             about.join(QStringLiteral(", "))});
    }
    page.blocks.emplace_back(block);
    TextBlock wire;
    wire.small = true;
    wire.text = todoWord(
        "How much wire a frame takes, and how wide a strip is, depends on how you do it; nobody "
        "printed a figure. Measure one frame of yours and multiply.");
    page.blocks.emplace_back(wire);
}

QString holdReason(HoldWhy why) {
    return choiceText(Choices<HoldWhy>::words[static_cast<std::size_t>(why)]);
}

void addHeld(Page& page, const WinterTodo& todo) {
    if (todo.held.empty()) return;
    TableBlock table;
    table.title = todoWord("Held back: not used, not moved, not melted");
    table.columns = {{todoWord("what"), 1.8, false},
                     {todoWord("frames"), 0.8, true},
                     {{}, 0.2, false},
                     {todoWord("why"), 3.8, false},
                     {todoWord("since"), 1.6, false}};
    for (const TodoHold& each : todo.held) {
        TableRow row;
        row.cells.resize(5);
        row.cells[0].text = each.what.empty() ? todoWord("loose") : fromUtf8(each.what);
        row.cells[0].strong = true;
        row.cells[1].text = QString::number(each.frames);
        row.cells[3].text = each.why ? holdReason(*each.why) : todoWord("by its verdict");
        row.cells[3].second = fromUtf8(each.note);
        if (each.since) row.cells[4].text = dayText(*each.since);
        table.rows.push_back(row);
    }
    page.blocks.emplace_back(table);
}

/// "last look Sat 27 Nov, 11 never", of its boxes.
QString looksText(const TodoStack& stack) {
    QStringList looks;
    if (stack.lastLook) looks << todoWord("last look %1").arg(shortDayText(*stack.lastLook));
    if (stack.neverLooked > 0)
        looks << (stack.neverLooked == 1 ? todoWord("1 never")
                                         : todoWord("%1 never").arg(stack.neverLooked));
    if (!stack.lastLook && stack.neverLooked > 0)
        looks = {todoWord("%1 never looked into").arg(stack.neverLooked)};
    return looks.join(QStringLiteral(", "));
}

/// Over both columns of boxes: the stack, how it was looked after, a field for the next look.
TableRow stackHead(const TodoStack& stack) {
    TableRow head;
    head.group = true;
    head.below = Rule::Ink;
    head.cells.resize(8);
    head.cells[0].text = stack.stack.empty() ? todoWord("No stack named") : fromUtf8(stack.stack);
    head.cells[0].strong = true;
    head.cells[0].big = true;
    head.cells[3].text = looksText(stack);
    head.cells[3].small = true;
    head.cells[7].look = Cell::Look::Blank;
    head.cells[7].text = todoWord("next look");
    return head;
}

TableRow stackRow(const QString& box, const QString& kind, const UseCounts* use, bool held) {
    TableRow row;
    row.cells.resize(4);
    row.cells[0].text = box;
    row.cells[0].strong = true;
    row.cells[1].text = kind;
    QString frames = use ? usesOnPaper(*use) : todoWord("not counted");
    // What is held is held whole: said once.
    if (held && !(use && (*use)[FrameUse::Held] == use->sum()))
        frames += QStringLiteral(", ") + todoWord("box held");
    row.cells[2].text = frames;
    return row;
}

void addStacks(Page& page, const KindNames& names, const WinterTodo& todo) {
    if (todo.stacks.empty()) return;
    TableBlock table;
    table.title = todoWord("Stacks");
    table.columns = {{todoWord("box"), 0.75, false},
                     {todoWord("kind"), 0.95, false},
                     {todoWord("frames"), 2.8, false},
                     {todoWord("frozen"), 0.85, false}};
    table.abreast = 2;
    table.groupsBreak = true;
    table.rowMm = 6.5;
    for (const TodoStack& stack : todo.stacks) {
        table.rows.push_back(stackHead(stack));
        for (const StackedContents& each : stack.boxes) {
            TableRow row = stackRow(fromUtf8(each.box), names.box(kindText(each.kind)),
                                    each.counted ? &each.use : nullptr, each.held);
            if (each.combs > 0)
                row.cells[3].text = todoWord("%1 of %2").arg(each.frozen).arg(each.combs);
            table.rows.push_back(std::move(row));
        }
        if (stack.loose.sum() > 0)
            table.rows.push_back(stackRow(todoWord("loose"), {}, &stack.loose, false));
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
    const KindNames names(file);
    Page page = storeroomPage(file, todoWord("Winter to-do"), todo.on);
    if (todo.isEmpty()) {
        TextBlock nothing;
        nothing.text = todoWord(
            "No work is noted. It comes from the bench: look the boxes through and say what was "
            "seen.");
        page.blocks.emplace_back(nothing);
    }
    addBoxes(page, names, todoWord("Boxes to repair"), todo.repair);
    addBoxes(page, names, todoWord("Boxes to scrape"), todo.scrape);
    addBoxes(page, names, todoWord("Boxes to paint"), todo.paint);
    addFrames(page, names, todoWord("Frames"), todo.frames);
    addMaterials(page, names, todo);
    addFrames(page, names, todoWord("Brood and pollen comb not frozen yet"), todo.notFrozen);
    addHeld(page, todo);
    addStacks(page, names, todo);
    if (!todo.frames.empty())
        page.blocks.emplace_back(todoCaution(
            todoWord("Wax over water only, never over a flame, never left alone: it flashes at "
                     "204 °C, and water thrown on burning wax spreads it. Cut and scrape away from "
                     "the other hand.")));
    if (!todo.stacks.empty()) page.blocks.emplace_back(todoCaution(liftCaution()));
    return page;
}

}  // namespace combwright
