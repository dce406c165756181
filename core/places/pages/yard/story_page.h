// A hive's story and the way of a box, a comb or a queen as pages: sentences with their days.
#pragma once

#include "core/places/pages/page.h"
#include "core/places/yard/followed.h"
#include "core/places/yard/yard_story.h"

namespace combwright {

/// The story of a hive up to a day, newest first, headed by who lived there then; the hive as it
/// was called that day.
Page storyPage(const Read& file, const Hive& hive, Day on);

/// "Onto ML3 in Hill, second from the floor."
QString wayText(const WayStep& step, Followed::Thing thing);
Page followedPage(const Read& file, const Followed& followed, Day on);

}  // namespace combwright
