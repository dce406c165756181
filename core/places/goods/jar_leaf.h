// The leaf that hangs on a jar: where its honey was gathered and when, what the bees did and what
// the keeper did. Told from the records alone; what nobody wrote down is left out, and the keeper
// chooses what is told.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/honey/bottling.h"
#include "core/storage/rows.h"
#include "core/support/result.h"

namespace combwright {

/// What is told. Medicines are told only if wished.
struct LeafTold {
    bool place = true;
    bool weeks = true;
    bool hives = true;
    bool work = true;
    bool water = true;
    bool colour = true;
    bool taste = true;
    bool medicines = false;
};
/// By the words "place", "weeks", "hives", "work", "water", "colour", "taste", "medicines", parted
/// by commas: all but these. Refused with NotAChoice.
Result<LeafTold> leafWithout(const std::string& words, LeafTold told = {});
/// The same added.
Result<LeafTold> leafWith(const std::string& words, LeafTold told = {});

/// Honey boxes of one hive as they were extracted, for the drawing.
struct LeafStack {
    std::string hive;
    std::vector<double> boxHeightsMm;
};

struct JarLeaf {
    Bottling bottling;
    std::vector<std::string> yards;   ///< that are known
    std::vector<std::string> places;  ///< of these yards, as the keeper wrote them
    std::optional<Day> boxesOn;       ///< the first of its boxes went on
    std::optional<Day> extractedFrom, extractedTo;
    std::int64_t hives = 0;  ///< that are known
    std::int64_t boxes = 0;
    std::int64_t boxesUnknown = 0;  ///< whose hive nobody knows
    std::int64_t frames = 0;        ///< spun; 0: not counted
    std::int64_t buckets = 0;
    std::vector<std::string> boughtFrom;  ///< "" where nobody wrote it down
    std::int64_t blends = 0;
    std::vector<std::string> strainers, colours, tastes;
    std::optional<Temperature> warmest;  ///< it was ever held at, of what was written down
    bool warmed = false;                 ///< warmed, dried or creamed at least once
    bool creamed = false;
    bool dried = false;
    /// As read in the bucket or lot the jars were filled from; only where it was corrected or the
    /// instrument does that itself.
    std::optional<WaterContent> water;
    std::vector<std::string> medicines;  ///< given to its hives in the year before, each once
    std::vector<LeafStack> stacks;
};

/// Nothing where there is no such filling.
std::optional<JarLeaf> jarLeaf(const Read& file, Id<Bottling> bottling);

}  // namespace combwright
