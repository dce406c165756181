#include "core/places/pages/frame_board_page.h"

#include <QCoreApplication>
#include <QStringList>
#include <map>

#include "core/model/season_info.h"
#include "core/places/pages/board_words.h"
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
                     {boardPageWord("state"), 2.6, false},
                     {boardPageWord("frames"), 1, true},
                     {boardPageWord("share"), 2.4, false}};
    for (const KindCounts& counts : board.counts) {
        const QString kind = frameKindText(board, counts.kind);
        bool first = true;
        for (const StateCount& state : counts.states) {
            if (state.frames == 0) continue;
            TableRow row;
            row.cells = {boardCell(first ? kind : QString(), true),
                         boardCell(stateMark(state.state)), countCell(state.frames)};
            Cell bar;
            bar.look = Cell::Look::Bar;
            bar.bar = static_cast<double>(state.frames) / static_cast<double>(counts.together);
            row.cells.push_back(bar);
            table.rows.push_back(row);
            first = false;
        }
        TableRow sum;
        sum.cells = {boardCell(QString()), boardCell(boardPageWord("together"), true),
                     boardCell(QString::number(counts.together), true),
                     boardCell(notFoundText(counts), true)};
        sum.below = Rule::Double;
        table.rows.push_back(sum);
    }
    return table;
}

TableRow boxRow(const BoardRow& row) {
    std::int64_t keep = 0, held = 0;
    std::map<char, int> letters;
    for (const BoardFrame& frame : row.frames) {
        if (!frame.found) continue;
        keep += frame.state.kind == FrameState::Kind::Keep ? 1 : 0;
        held += frame.held ? 1 : 0;
        // Held or not, what was seen of it stands in the row.
        if (const char letter = gravestLetter(frame.faults)) ++letters[letter];
    }
    QStringList classes;
    for (const Fault& fault : faults())
        if (const auto found = letters.find(fault.letter); found != letters.end())
            classes << QStringLiteral("%1 %2").arg(found->second).arg(QLatin1Char(fault.letter));
    TableRow line;
    QStringList states;
    for (const RowState& state : row.states) states << boardStateSentence(state);
    Cell state = boardCell(states.value(0));
    if (states.size() > 1)
        states.removeFirst();
    else
        states.clear();
    state.second = states.join(QStringLiteral("; "));
    Cell name = boardCell(boardRowName(row), row.box.has_value());
    if (row.cameOff && row.cameOff->on) name.second = cameOffText(*row.cameOff);
    line.cells = {
        name,
        state,
        boardCell(frameLetters(row)),
        countCell(keep),
        boardCell(classes.join(QStringLiteral(", "))),
        countCell(held),
        boardCell(!row.found        ? QStringLiteral("?")
                  : row.missing > 0 ? boardPageWord("%1 of %2").arg(*row.found).arg(*row.expected)
                                    : QString::number(*row.found),
                  row.missing > 0)};
    return line;
}

TableBlock shelfTable(const FrameBoard& board, const BoardShelf& shelf) {
    TableBlock table;
    const QString note = shelfNote(shelf);
    table.title =
        shelfTitle(board, shelf) + (note.isEmpty() ? QString() : QStringLiteral(": ") + note);
    table.columns = {{boardPageWord("box"), 1.3, false},
                     {boardPageWord("state"), 2.6, false},
                     {boardPageWord("frames as they hang"), 2.4, false},
                     {boardPageWord("keep"), 0.6, true},
                     {boardPageWord("seen"), 1.6, false},
                     {boardPageWord("held"), 0.6, true},
                     {boardPageWord("found"), 0.9, true}};
    for (const BoardRow& row : shelf.rows) table.rows.push_back(boxRow(row));
    if (!table.rows.empty()) table.rows.back().below = Rule::Ink;
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
    page.blocks.push_back(head);
    if (!board.counts.empty()) page.blocks.push_back(countsTable(board));
    for (const BoardShelf& shelf : board.shelves) page.blocks.push_back(shelfTable(board, shelf));
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
    page.blocks.push_back(lettersHelp(board));
    page.letters = lettersOf(page);
    if (!board.melt.empty()) page.letters.push_back(How::Assumed);
    return page;
}

}  // namespace combwright
