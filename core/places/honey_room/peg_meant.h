// Which box a number on the pad means today: the one its peg is on, with what it weighs so far, and
// the run it goes into. A box nobody clipped a peg to, or whose peg came off on the way, gets a
// line of its own.
#pragma once

#include <optional>

#include "core/model/honey/extraction.h"
#include "core/model/honey/room.h"
#include "core/storage/rows.h"
#include "core/words/pad_line.h"

namespace combwright {

struct PegMeant {
    PadBox box;
    std::optional<Id<ExtractionBox>> entry;  ///< none: it was not weighed yet
    std::optional<Id<Extraction>> run;       ///< it is in, or the open one of its yard
    std::optional<Id<Yard>> yard;            ///< none: nobody knows
};

/// Nothing where nobody clipped that peg.
std::optional<PegMeant> pegMeant(const Read& file, int peg, Day on);

/// How many frames of a box of a run are in no load that was kept. 0 where they were not counted,
/// and where loads are not kept though boxes were weighed wet already.
std::int64_t unspunOf(const Read& file, const ExtractionBox& entry);

/// The box without a peg that was weighed full and waits to be weighed wet: the one that was spun
/// first, else the first.
std::optional<PadBox> looseBox(const Read& file, Id<Extraction> run);
/// What the next box without a peg is known as.
QString nextLooseName(const Read& file, std::optional<Id<Extraction>> run);

/// Whether pegs are used at all: a bare number is a peg then.
bool pegsInUse(const Read& file);

/// The yard's run that is open; the newest of several.
std::optional<Id<Extraction>> openRunOf(const Read& file, Id<Yard> yard);

}  // namespace combwright
