// What goes into the extractor next: the frames of a run's boxes, load by load, with the offset
// each leaves and its doubt, because nobody weighs a hundred frames.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/honey/extraction.h"
#include "core/storage/rows.h"
#include "core/support/result.h"
#include "core/trade/extractor/spin_loads.h"

namespace combwright {

struct LoadFrame {
    std::string box;
    double startG = 0;
    double endG = 0;
    double sdG = 0;
};

struct SheetLoad {
    std::string lot;
    std::vector<std::optional<LoadFrame>> places;  ///< by slot
    LoadOffsets offset;
    double startAngle = 0;  ///< of the offset, degrees clockwise from slot 1
    double endAngle = 0;
    double doubtG = 0;     ///< of the start: 9 in 10 of the real offsets lie within this of it
    double endDoubtG = 0;  ///< likewise at the end, where only wood and wet comb differ
    std::int64_t frames = 0;
};

struct LoadSheet {
    std::int64_t slotCount = 12;
    double allowedG = 0;  ///< what the balance grade allows at that speed; the ring
    std::vector<SheetLoad> loads;
    std::vector<std::string> runs;
    std::int64_t loadsIfMixed = 0;
};

/// The loads of the open runs, or of the runs given, lots apart.
Result<LoadSheet> loadSheet(const Read& file, const std::vector<Id<Extraction>>& runs, Day on);
/// Reckons offsets and doubts of a load anew, after frames changed places.
void weighOffsets(SheetLoad& load);
/// Runs that are not closed, oldest first.
std::vector<Extraction> openRuns(const Read& file);

}  // namespace combwright
