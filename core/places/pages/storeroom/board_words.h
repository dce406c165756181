// What the frame-status board says, in words: the same on the screen, in the spoken sentence, on
// the page and in the command line's text.
#pragma once

#include <QString>

#include "core/places/storeroom/frame_board.h"

namespace combwright {

/// "in freezer", "6 frozen", "held: dead-out unexplained".
QString boardStateText(const RowState& state);
/// The same with its days: "6 of 10 frozen 10 Jan", "changed since 8 Jan".
QString boardStateSentence(const RowState& state);
/// The first state of a row, and where a held one lies in the freezer that too; empty for loose
/// frames.
QString boardStateText(const BoardRow& row);

/// "web of moth", "keep", "to melt", "not looked through".
QString frameStateText(const FrameState& state);
/// The word for a letter.
QString faultText(char letter);
/// "melt".
QString verdictWord(Verdict verdict);

/// "Shelf 1", "storeroom", "wet", "on hives, Hill".
QString boardPlaceText(const BoardPlace& place);
/// "Hill ML3".
QString cameOffText(const CameOff& off);
/// What stands over rows: the shelf, or what they are grouped by.
QString shelfTitle(const FrameBoard& board, const BoardShelf& shelf);
/// "looked through 18 Nov, scraped 10 Jan", "3 not looked through".
QString shelfNote(const BoardShelf& shelf);
QString groupText(BoardGroup group);
QString frameKindText(const FrameBoard& board, std::optional<Id<FrameKind>> kind);

/// The mark, or what loose frames are called.
QString boardRowName(const BoardRow& row);
/// "M11, on shelf 2: looked through 2 Dec. 8 found of 9. W web of moth 1, V broken wood 1, keep 6.
/// Came off Hill ML3."
QString spoken(const FrameBoard& board, const BoardRow& row);
/// "Frame at 2: drawn comb, V broken wood, repair, comb of 2024, frozen 10 Jan."
QString spoken(const BoardFrame& frame);

/// "showing 40 of 198 frames".
QString shownText(const FrameBoard& board);
/// "Medium, web of moth, not frozen"; empty where nothing is left out.
QString filterText(const FrameBoard& board);
/// "1 not found of 198"; empty where none is missing.
QString notFoundText(const KindCounts& counts);
/// "dead-out unexplained", "D dead brood".
QString heldText(const HeldCount& held);
/// "26 combs, 1.80 kg a": wax of all of it, assumed by the comb.
QString meltText(const std::vector<MeltCount>& melt);

}  // namespace combwright
