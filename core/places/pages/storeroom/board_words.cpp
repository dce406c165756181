#include "core/places/pages/storeroom/board_words.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>
#include <map>

#include "core/places/storeroom/verdicts.h"
#include "core/words/figures.h"
#include "core/words/kind_words.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString boardSay(const char* text) { return QCoreApplication::translate("frame_board", text); }

QString framesCounted(std::int64_t frames) {
    return frames == 1 ? boardSay("1 frame") : boardSay("%1 frames").arg(frames);
}

QString combText(const std::optional<Comb>& comb) {
    if (!comb) return boardSay("comb not recorded");
    switch (*comb) {
        case Comb::Bare:
            return boardSay("bare");
        case Comb::Foundation:
            return boardSay("foundation");
        case Comb::PartDrawn:
            return boardSay("part drawn");
        case Comb::Drawn:
            return boardSay("drawn comb");
        case Comb::DrawnFat:
            return boardSay("drawn comb, fat");
    }
    return {};
}

QString changeText(BoardChange change) {
    switch (change) {
        case BoardChange::Move:
            return boardSay("moved");
        case BoardChange::Count:
            return boardSay("counted");
        case BoardChange::Look:
            return boardSay("looked into");
        case BoardChange::Check:
            return boardSay("frames checked");
        case BoardChange::CameOrWent:
            return boardSay("changed by frames that came or went");
        case BoardChange::FreezerStay:
            return boardSay("was in the freezer");
    }
    return {};
}

}  // namespace

QString boardStateText(const RowState& state) {
    switch (state.state) {
        case BoxState::Held:
            return boardSay("held");
        case BoxState::Lent:
            return boardSay("lent");
        case BoxState::InFreezer:
            return boardSay("in freezer");
        case BoxState::Stale:
            return boardSay("frozen, stale");
        case BoxState::ChangedSince:
            return boardSay("changed since");
        case BoxState::NotLookedThrough:
            return boardSay("not looked at");
        case BoxState::ToFreeze:
            return boardSay("to freeze");
        case BoxState::ToScrape:
            return boardSay("to scrape");
        case BoxState::Frozen:
            return state.frames < state.of ? boardSay("%1 frozen").arg(state.frames)
                                           : boardSay("frozen");
        case BoxState::Scraped:
            return boardSay("scraped");
        case BoxState::LookedThrough:
            return boardSay("looked through");
    }
    return {};
}

QString boardStateSentence(const RowState& state) {
    const QString day = state.on ? dayAndMonth(*state.on) : QString();
    switch (state.state) {
        case BoxState::Held:
            return boardSay("held since %1: %2")
                .arg(day, state.why ? choiceText(word(*state.why)) : QStringLiteral("?"));
        case BoxState::Lent:
            return boardSay("lent since %1").arg(day);
        case BoxState::InFreezer:
            return boardSay("%1 in the freezer since %2").arg(framesCounted(state.frames), day);
        case BoxState::Stale:
            return boardSay("frozen, but opened or warm since %1: stale").arg(day);
        case BoxState::ChangedSince:
            return state.on ? boardSay("changed since, on %1").arg(day) : boardSay("changed since");
        case BoxState::NotLookedThrough:
            return boardSay("not looked through");
        case BoxState::ToFreeze:
            return boardSay("%1 to freeze").arg(framesCounted(state.frames));
        case BoxState::ToScrape:
            return state.frames > 0 ? boardSay("%1 to scrape").arg(framesCounted(state.frames))
                                    : boardSay("to scrape");
        case BoxState::Frozen:
            return boardSay("%1 of %2 frozen %3").arg(state.frames).arg(state.of).arg(day);
        case BoxState::Scraped:
            return boardSay("scraped %1").arg(day);
        case BoxState::LookedThrough:
            return boardSay("looked through %1").arg(day);
    }
    return {};
}

QString boardStateText(const BoardRow& row) {
    if (row.states.empty()) return {};
    const QString first = boardStateText(row.states.front());
    // Who looks for a held box must know that it lies in the freezer.
    const auto frozen =
        std::find_if(row.states.begin(), row.states.end(),
                     [](const RowState& each) { return each.state == BoxState::InFreezer; });
    const bool both = row.states.front().state == BoxState::Held && frozen != row.states.end();
    return both ? QStringLiteral("%1, %2").arg(first, boardStateText(*frozen)) : first;
}

QString faultText(char letter) { return faultWords({&letter, 1}); }

QString verdictWord(Verdict verdict) {
    switch (verdict) {
        case Verdict::Keep:
            return boardSay("keep");
        case Verdict::Scrape:
            return boardSay("scrape");
        case Verdict::Repair:
            return boardSay("repair");
        case Verdict::Refit:
            return boardSay("refit");
        case Verdict::Freeze:
            return boardSay("freeze");
        case Verdict::Melt:
            return boardSay("melt");
        case Verdict::Hold:
            return boardSay("hold");
        case Verdict::Burn:
            return boardSay("burn");
    }
    return {};
}

QString frameStateText(const FrameState& state) {
    switch (state.kind) {
        case FrameState::Kind::Keep:
            return boardSay("keep");
        case FrameState::Kind::Letter:
            return faultText(state.letter);
        case FrameState::Kind::ToDo:
            return boardSay("to %1").arg(verdictWord(state.verdict));
        case FrameState::Kind::NotLookedThrough:
            return boardSay("not looked at");
        case FrameState::Kind::Held:
            return boardSay("held");
    }
    return {};
}

QString boardPlaceText(const BoardPlace& place) {
    const QString name = fromUtf8(place.name);
    switch (place.kind) {
        case BoardPlace::Kind::Stack:
            return name.isEmpty() ? boardSay("Storeroom") : name;
        case BoardPlace::Kind::Loose:
            return name.isEmpty() ? boardSay("Loose frames") : boardSay("Loose, %1").arg(name);
        case BoardPlace::Kind::Wet:
            return boardSay("Wet");
        case BoardPlace::Kind::Waiting:
            return boardSay("Waiting for the extractor");
        case BoardPlace::Kind::Cleared:
            return boardSay("Cleared");
        case BoardPlace::Kind::Freezer:
            return boardSay("Freezer");
        case BoardPlace::Kind::GivenBack:
            return boardSay("Given back to be cleaned");
        case BoardPlace::Kind::Lent:
            return boardSay("Lent");
        case BoardPlace::Kind::OnHives:
            return boardSay("On hives, %1").arg(name.isEmpty() ? QStringLiteral("?") : name);
    }
    return {};
}

QString cameOffText(const CameOff& off) {
    return fromUtf8(off.yard) + QLatin1Char(' ') + fromUtf8(off.mark);
}

QString shelfTitle(const FrameBoard& board, const BoardShelf& shelf) {
    switch (board.group()) {
        case BoardGroup::Shelf:
            return boardPlaceText(shelf.place);
        case BoardGroup::Kind:
            return frameKindText(board, shelf.kind);
        case BoardGroup::Hive:
            return shelf.hive ? cameOffText(*shelf.hive) : boardSay("Off no hive yet");
        case BoardGroup::Verdict:
            return shelf.verdict ? boardSay("To %1").arg(verdictWord(*shelf.verdict))
                                 : boardSay("No verdict");
        case BoardGroup::Year:
            return shelf.year ? boardSay("Comb of %1").arg(*shelf.year)
                              : boardSay("Comb of a year not known");
    }
    return {};
}

QString shelfNote(const BoardShelf& shelf) {
    QStringList parts;
    if (shelf.reviewed) parts << boardSay("looked through %1").arg(dayAndMonth(*shelf.reviewed));
    if (shelf.scraped && shelf.scraped != shelf.reviewed)
        parts << boardSay("scraped %1").arg(dayAndMonth(*shelf.scraped));
    if (shelf.notReviewed > 0)
        parts << (shelf.reviewed ? boardSay("%1 not looked through").arg(shelf.notReviewed)
                                 : boardSay("not looked through"));
    return parts.join(QStringLiteral(", "));
}

QString groupText(BoardGroup group) {
    switch (group) {
        case BoardGroup::Shelf:
            return boardSay("by shelf");
        case BoardGroup::Kind:
            return boardSay("by kind");
        case BoardGroup::Hive:
            return boardSay("by hive");
        case BoardGroup::Verdict:
            return boardSay("by verdict");
        case BoardGroup::Year:
            return boardSay("by comb year");
    }
    return {};
}

/// The catalogue calls it "Langstroth medium frame (6 1/4 in; …)". In one storeroom its measure
/// goes without saying, and so does the family where all are of one.
QString frameKindText(const FrameBoard& board, std::optional<Id<FrameKind>> kind) {
    const FrameKind* known = board.kind(kind);
    if (!known) return boardSay("Frames of a kind not known");
    const bool allOfOne =
        std::all_of(board.kinds.begin(), board.kinds.end(),
                    [&](const FrameKind& each) { return each.family == known->family; });
    const QString name = allOfOne
                             ? frameKindText(*known)
                             : fromUtf8(known->name.text()).section(QStringLiteral(" ("), 0, 0);
    return name.left(1).toUpper() + name.mid(1);
}

QString boardRowName(const BoardRow& row) {
    return row.box ? fromUtf8(row.name) : boardSay("loose");
}

QString spoken(const FrameBoard& board, const BoardRow& row) {
    QStringList sentences;
    QStringList head;
    for (const RowState& state : row.states) head << boardStateSentence(state);
    const QString name = row.box ? fromUtf8(row.name) : boardSay("Loose frames");
    sentences << boardSay("%1, %2, %3")
                         .arg(name, frameKindText(board, row.frameKind),
                              boardPlaceText(row.place)) +
                     (head.isEmpty() ? QString()
                                     : QStringLiteral(": ") + head.join(QStringLiteral("; ")));
    if (row.changed)
        sentences << boardSay("Since the look it was %1").arg(changeText(*row.changed));
    if (!row.found)
        sentences << boardSay("Frames not counted");
    else if (row.missing > 0)
        sentences << boardSay("%1 found of %2").arg(*row.found).arg(*row.expected);
    else
        sentences << framesCounted(*row.found);
    std::map<FrameState, int> counts;
    for (const BoardFrame& frame : row.frames)
        if (frame.found) ++counts[frame.state];
    QStringList parts;
    for (const auto& [state, many] : counts) {
        const QString letter =
            state.letter != 0 ? QLatin1Char(state.letter) + QStringLiteral(" ") : QString();
        parts << QStringLiteral("%1 %2%3").arg(many).arg(letter, frameStateText(state));
    }
    if (!parts.isEmpty()) sentences << parts.join(QStringLiteral(", "));
    if (row.leftOut > 0) sentences << boardSay("%1 more not shown").arg(row.leftOut);
    if (row.cameOff && row.cameOff->on)
        sentences << boardSay("Came off %1 on %2")
                         .arg(cameOffText(*row.cameOff), dayAndMonth(*row.cameOff->on));
    return sentences.join(QStringLiteral(". ")) + QLatin1Char('.');
}

QString spoken(const BoardFrame& frame) {
    if (!frame.found) return boardSay("Frame not found.");
    QStringList parts{combText(frame.comb)};
    for (const char letter : frame.faults)
        parts << QLatin1Char(letter) + QStringLiteral(" ") + faultText(letter);
    if (frame.verdict) parts << verdictWord(*frame.verdict);
    if (frame.held) parts << boardSay("held");
    if (frame.drawnYear) parts << boardSay("comb of %1").arg(*frame.drawnYear);
    if (frame.wet) parts << boardSay("wet");
    if (frame.frozen) parts << boardSay("frozen %1").arg(dayAndMonth(*frame.frozen));
    const QString head =
        frame.position ? boardSay("Frame at %1").arg(*frame.position) : boardSay("Frame, counted");
    return head + QStringLiteral(": ") + parts.join(QStringLiteral(", ")) + QLatin1Char('.');
}

QString shownText(const FrameBoard& board) {
    return board.filter.narrows()
               ? boardSay("showing %1 of %2 frames").arg(board.shown).arg(board.all)
               : boardSay("all %1 in %2")
                     .arg(framesCounted(board.all), board.boxesAll == 1
                                                        ? boardSay("1 box")
                                                        : boardSay("%1 boxes").arg(board.boxesAll));
}

QString notFoundText(const KindCounts& counts) {
    if (counts.missing == 0) return {};
    return boardSay("%1 not found of %2").arg(counts.missing).arg(counts.withMissing());
}

QString heldText(const HeldCount& held) {
    if (held.why) return choiceText(word(*held.why));
    if (held.letter != 0)
        return QLatin1Char(held.letter) + QStringLiteral(" ") + faultText(held.letter);
    return boardSay("by verdict");
}

QString meltText(const std::vector<MeltCount>& melt) {
    std::int64_t combs = 0;
    double grams = 0;
    bool known = true;
    for (const MeltCount& each : melt) {
        combs += each.combs;
        known = known && each.gramsEach;
        grams += each.gramsEach.value_or(0) * static_cast<double>(each.combs);
    }
    const QString text = combs == 1 ? boardSay("1 comb") : boardSay("%1 combs").arg(combs);
    if (!known) return text;
    const QString wax = massRateFigure(grams) + QLatin1Char(' ') + massUnit();
    return boardSay("%1, %2 %3").arg(text, wax, QString(QLatin1Char(letter(How::Assumed))));
}

QString filterText(const FrameBoard& board) {
    const BoardFilter& filter = board.filter;
    QStringList parts;
    if (filter.kind) parts << frameKindText(board, filter.kind);
    if (filter.state) parts << frameStateText(*filter.state);
    if (filter.verdict) parts << boardSay("to %1").arg(verdictWord(*filter.verdict));
    if (filter.year) parts << boardSay("comb of %1").arg(*filter.year);
    if (filter.place) parts << boardPlaceText(*filter.place);
    for (const CameOff& off : board.hives)
        if (filter.cameOff == off.hive) parts << boardSay("off %1").arg(cameOffText(off));
    if (filter.notFrozen) parts << boardSay("not frozen");
    if (filter.notReviewed) parts << boardSay("not looked through");
    if (filter.held) parts << boardSay("on hold");
    if (filter.toMelt) parts << boardSay("to melt");
    return parts.join(QStringLiteral(", "));
}

}  // namespace combwright
