// What to take along to a yard: what the hives ask for, what is due there, and what is always in
// the truck, each thing once with the hives it is for. What is forgotten is another drive.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/model/yard/yard.h"
#include "core/places/due/due_item.h"
#include "core/places/stores/feed_shelf.h"
#include "core/places/yard/yard_sheet.h"

namespace combwright {

struct KitLine {
    std::string item;          ///< key of a word ("feeder", "super"), or the keeper's own
    std::int64_t count = 1;    ///< of pieces, or of packs of feed; for feed without a size of hives
    std::optional<Mass> mass;  ///< of sugar
    std::vector<std::string> hives;
    bool always = false;  ///< in the truck anyway; `item` is then as the keeper wrote it
    bool counted = true;  ///< false: the keeper gave no number
};

/// A hive that must not be opened.
struct LeftShut {
    std::string hive;
    Day until;
};

/// A hive over the mite line that nobody treated or sampled since.
struct KitMites {
    std::string hive;
    Mind mites;
};

struct KitList {
    Yard yard;
    Day on;
    std::vector<KitLine> lines;   ///< feed first, then as the yard sheet has it
    std::vector<KitLine> always;  ///< in the order they were put in
    std::vector<LeftShut> shut;
    std::vector<KitMites> mites;  ///< to be decided on there
    std::vector<FeedShelfRow> shelf;
};

/// With the items that are due in that yard; those that begin after the day are left out.
KitList kitList(const Read& file, Id<Yard> yard, Day on, const std::vector<DueItem>& due);
/// With everything that is due there, but for what the keeper quieted.
KitList kitList(const Read& file, Id<Yard> yard, Day on);

}  // namespace combwright
