// A hive's story in sentences, for the card beside the board and wherever else it is told.
#pragma once

#include <QString>

#include "core/places/yard/yard_box.h"
#include "core/places/yard/yard_story.h"

namespace combwright {

/// "Eggs. 7 brood, 3 stores. M43 on." Starts with a capital, ends with a stop.
QString storySentence(const StoryEntry& entry);
/// One word for what kind of entry it is: "opened", "box", "honey" …
QString storyKind(const StoryEntry& entry);

/// A line each: the queen, where anything is known of her; the colony, where it came from and since
/// when; what is waited for.
QString hiveHeadText(const HiveHead& head);

/// "9 frames, 7 capped, 85 % full"; empty where the look says none of it.
QString boxLookSentence(const BoxLook& look);
/// "7 drawn, 1 web of moth".
QString boxCountsText(const std::vector<BoxCount>& counts);
/// What a box laid out flat is called and what is known of it: "M07, medium; looked into 25 Jul:
/// …".
QString boxInsideText(const BoxInside& inside);

}  // namespace combwright
