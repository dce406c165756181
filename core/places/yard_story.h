// A hive's story in sentences, newest first: what was seen, what was put on, what moved.
#pragma once

#include <vector>

#include "core/model/yard/sheet_line.h"
#include "core/storage/rows.h"

namespace combwright {

struct StoryEntry {
    enum class What { Look, BoxOn, BoxOff, ColonyCame, ColonyEnded } what;
    Day on;
    SheetLine line = {};  ///< of a look
    Looked looked = Looked::Opened;
    std::string box = {};  ///< of a move
    std::string kind = {};
    std::optional<Origin> origin = {};
    std::optional<Ending> ending = {};
};

/// Of one hive, newest first.
std::vector<StoryEntry> hiveStory(const Read& file, Id<Hive> hive);

}  // namespace combwright
