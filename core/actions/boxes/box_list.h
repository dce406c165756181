// Boxes and what is in them, as one types them: "deep D31, medium M31 9 drawn", and box-level
// counts, "8 drawn, 1 foundation, 1 broken; 7 capped, 85 % full". Ten seconds a box, no frame by
// frame.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "core/model/frames/frame.h"
#include "core/storage/rows.h"
#include "core/support/result.h"

namespace combwright {

/// So many frames of a box that are alike.
struct FrameTally {
    Count frames;
    std::optional<Comb> comb;
    std::string faults;
    bool operator==(const FrameTally&) const = default;
};

/// What a count of a box says: its frames by class, and what is in the comb.
struct BoxContents {
    std::vector<FrameTally> tallies;
    std::optional<Known<Frames>> capped;
    std::optional<Known<Share>> filled;

    Count frames() const;
};

/// Reads "8 drawn, 1 foundation, 1 broken; 7 capped, 85 % full". Classes: drawn, fat, part,
/// foundation, bare, and each fault by its word or letter ("2 W", "1 broken"). Refused with
/// NotAChoice for a word that is no class, WrongType for a part without a number, OutOfRange for
/// more than 100 % or 100 frames, and Contradiction where more are capped than there are.
Result<BoxContents> parseContents(std::string_view text);

/// So many frames of the class a word stands for: "drawn", "broken", or faults by their letters;
/// nothing where it is no class.
std::optional<FrameTally> framesOfClass(Count frames, std::string_view word);
/// Every word framesOfClass knows: "drawn, fat, …".
std::string classWordList();

struct ListedBox {
    Id<BoxKind> kind;
    std::string mark;
    BoxContents contents;
};

struct BoxList {
    std::vector<ListedBox> boxes;
    std::optional<Count> excluderAbove;  ///< boxes under the excluder
};

/// Reads boxes from the floor up, parted by commas: kind, mark or none, number of drawn frames or
/// none; "x" or "excluder" alone is the excluder. A kind is as boxKindMeant has it. Refused with
/// NotFound for a kind nobody knows and Ambiguous where several may be meant.
Result<BoxList> parseBoxList(const Read& file, std::string_view text);
/// A list typed in the language spoken as it is kept, in English: names of the catalogue's kinds
/// too. Refused as parseBoxList does, in the words that were typed.
Result<std::string> boxListInEnglish(const Read& file, const std::string& typed);

/// The kind of box meant by a code, a name, a word of the trade (deep, medium, shallow …) or some
/// words of a name ("Zander box"). Where several kinds bear the word of the trade, one already used
/// in this file is meant, else the first of the catalogue: the ten-frame box. Refused with NotFound
/// and, where words of a name leave open which, Ambiguous; both list under "choices" what it may
/// be.
Result<BoxKind> boxKindMeant(const Read& file, std::string_view typed);
/// The same of a word typed in a window, in the language spoken or in English.
Result<BoxKind> boxKindTyped(const Read& file, const std::string& typed);
/// The same where no refusal is wanted.
std::optional<BoxKind> boxKindNamed(const Read& file, std::string_view name);
/// What kinds of boxes are usually called, for whoever typed another word: the words of the trade,
/// and the names of the kinds already used in this file.
std::string kindWords(const Read& file);

}  // namespace combwright
