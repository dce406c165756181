#include "core/places/pages/storeroom/frame_board_page.h"

#include <QCoreApplication>
#include <QStringList>
#include <map>

#include "core/model/season_info.h"
#include "core/places/pages/storeroom/board_words.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString boardPageWord(const char* text) {
    return QCoreApplication::translate("frame_board_page", text);
}

Cell boardCell(const QString& text, bool strong = false, bool muted = false) {
    Cell cell;
    cell.text = text;
    cell.strong = strong;
    cell.muted = muted;
    return cell;
}

/// "7", nothing for none: a page of noughts tells nothing.
Cell countCell(std::int64_t frames, bool strong = false) {
    return boardCell(frames > 0 ? QString::number(frames) : QString(), strong);
}

QString stateMark(const FrameState& state) {
    if (state.kind == FrameState::Kind::Letter)
        return QLatin1Char(state.letter) + QStringLiteral(" ") + frameStateText(state);
    return frameStateText(state);
}

TableBlock countsTable(const FrameBoard& board) {
    TableBlock table;
    table.title = boardPageWord("Frames by state");
    table.columns = {{boardPageWord("kind"), 2.2, false},
                     {boardPageWord("state"), 2.2, false},
                     {boardPageWord("frames"), 0.9, true},
                     {{}, 0.2, false},
                     {boardPageWord("share"), 2.8, false}};
    table.rowMm = 5.2;
    for (const KindCounts& counts : board.counts) {
        const QString kind = frameKindText(board, counts.kind);
        bool first = true;
        for (const StateCount& state : counts.states) {
            if (state.frames == 0) continue;
            TableRow row;
            row.cells = {boardCell(first ? kind : QString(), true),
                         boardCell(stateMark(state.state)), countCell(state.frames), Cell{}};
            Cell bar;
            bar.look = Cell::Look::Bar;
            bar.bar = static_cast<double>(state.frames) / static_cast<double>(counts.together);
            row.cells.push_back(bar);
            table.rows.push_back(row);
            first = false;
        }
        TableRow sum;
        sum.cells = {boardCell(QString()), boardCell(boardPageWord("together"), true),
                     boardCell(QString::number(counts.together), true), Cell{},
                     boardCell(notFoundText(counts), true)};
        sum.below = Rule::Double;
        table.rows.push_back(sum);
    }
    return table;
}

/// "8 of 9", where some were not found or nobody counted.
QString foundText(const BoardRow& row) {
    if (!row.found) return boardPageWord("not counted");
    return row.missing > 0 ? boardPageWord("%1 of %2").arg(*row.found).arg(*row.expected)
                           : QString();
}

TableRow boxRow(const BoardRow& row) {
    QStringList about;
    if (row.box && !row.states.empty()) about << boardStateText(row.states.front());
    if (const QString found = foundText(row); !found.isEmpty()) about << found;
    Cell frames = boardCell(frameLetters(row));
    frames.look = Cell::Look::Marks;
    Cell state = boardCell(about.join(QStringLiteral(", ")));
    state.small = true;
    if (row.cameOff && row.cameOff->on)
        state.second = boardPageWord("off %1").arg(fromUtf8(row.cameOff->mark));
    TableRow line;
    line.cells = {boardCell(boardRowName(row), row.box.has_value()), frames, state};
    line.cells.front().big = row.box.has_value();
    return line;
}

/// All boxes, shelf by shelf, two beside each other: what one looks at from the bench.
TableBlock boxesTable(const FrameBoard& board) {
    TableBlock table;
    table.columns = {{boardPageWord("box"), 0.8, false},
                     {boardPageWord("frames as they hang"), 3.1, false},
                     {boardPageWord("state"), 1.6, false}};
    table.abreast = 2;
    table.groupsBreak = true;
    table.rowMm = 6.2;
    for (const BoardShelf& shelf : board.shelves) {
        TableRow head;
        head.group = true;
        head.below = Rule::Ink;
        const QString note = shelfNote(shelf);
        head.cells = {boardCell(
            shelfTitle(board, shelf) + (note.isEmpty() ? QString() : QStringLiteral(": ") + note),
            true)};
        table.rows.push_back(std::move(head));
        for (const BoardRow& row : shelf.rows) table.rows.push_back(boxRow(row));
    }
    return table;
}

TextBlock lettersHelp(const FrameBoard& board) {
    TextBlock block;
    block.small = true;
    QStringList words;
    for (const FrameState& state : board.states)
        if (state.kind == FrameState::Kind::Letter) words << stateMark(state);
    words << boardPageWord("· nothing seen") << boardPageWord("f foundation")
          << boardPageWord("b bare") << boardPageWord("? not found");
    QStringList digits;
    for (int verdict = 0; verdict < static_cast<int>(Choices<Verdict>::words.size()); ++verdict)
        digits << QStringLiteral("%1 %2")
                      .arg(verdict + 1)
                      .arg(verdictWord(static_cast<Verdict>(verdict)));
    // A mark and its word stay on one line.
    for (QStringList* list : {&words, &digits})
        for (QString& each : *list) each.replace(QLatin1Char(' '), QChar::Nbsp);
    block.text =
        words.join(QStringLiteral("   ")) + QStringLiteral("   ") +
        boardPageWord("without a letter the verdict: %1.").arg(digits.join(QStringLiteral(", ")));
    return block;
}

}  // namespace

QString frameLetters(const BoardRow& row) {
    QStringList letters;
    for (const BoardFrame& frame : row.frames) {
        if (!frame.found)
            letters << QStringLiteral("?");
        else if (!frame.faults.empty())
            letters << fromUtf8(frame.faults);
        else if (frame.verdict && *frame.verdict != Verdict::Keep)
            letters << QString::number(static_cast<int>(*frame.verdict) + 1);
        else if (frame.comb == Comb::Foundation)
            letters << QStringLiteral("f");
        else if (frame.comb == Comb::Bare)
            letters << QStringLiteral("b");
        else
            letters << QStringLiteral("·");
    }
    return letters.join(QLatin1Char(' '));
}

Page frameBoardPage(const Read& file, const FrameBoard& board) {
    Page page;
    page.title = boardPageWord("Frame board");
    page.day = boardPageWord("as of %1").arg(dayText(board.on));
    if (const auto season = file.first<SeasonInfo>({})) {
        page.keeper = fromUtf8(season->name.text());
        page.invented = season->invented.value_or(false);
    }
    TextBlock head;
    head.text = shownText(board);
    if (board.filter.narrows()) head.text += QStringLiteral(": ") + filterText(board);
    if (!board.melt.empty()) head.text += boardPageWord(". To melt: %1").arg(meltText(board.melt));
    head.text += QLatin1Char('.');
    head.text.front() = head.text.front().toUpper();
    page.blocks.push_back(head);
    page.blocks.push_back(lettersHelp(board));
    if (!board.shelves.empty()) page.blocks.push_back(boxesTable(board));
    if (!board.held.empty()) {
        TextBlock held;
        held.title = boardPageWord("On hold");
        held.caution = true;
        QStringList lines;
        for (const HeldCount& each : board.held)
            lines << boardPageWord("%1: %2 frames since %3")
                         .arg(heldText(each))
                         .arg(each.frames)
                         .arg(each.since ? dayText(*each.since) : QStringLiteral("?"));
        held.text =
            lines.join(QStringLiteral("; ")) +
            boardPageWord(
                ". Not to be used, and into no freezer round, pot or hive with other comb.");
        page.blocks.push_back(held);
    }
    if (!board.counts.empty()) page.blocks.push_back(countsTable(board));
    page.letters = lettersOf(page);
    if (!board.melt.empty()) page.letters.push_back(How::Assumed);
    return page;
}

}  // namespace combwright
