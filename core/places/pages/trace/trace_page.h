// The trace sheet: what is held, who has it, where it came from, what cannot be known. First what
// is needed with the telephone in the other hand.
#pragma once

#include "core/places/pages/page.h"
#include "core/places/trace/trace.h"

namespace combwright {

Page tracePage(const Read& file, const Trace& traced);

/// Of the newest filling or lot; a page saying that there is none where there is none.
Page newestTracePage(const Read& file, Day on);

/// A kept sheet as it read, with the day it is of.
Page keptSheetPage(const Read& file, const KeptSheet& sheet);

}  // namespace combwright
