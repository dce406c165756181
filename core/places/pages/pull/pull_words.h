// What is said of a pull: of a box, why it stays, what deciding it otherwise costs, of the boards
// and of the day. Screen, print and command line say it in the same words.
#pragma once

#include <QString>

#include "core/places/pull/pull_sheet.h"

namespace combwright {

/// "not capped enough" … in the person's words.
QString whyLeftText(WhyLeft why);
/// What a box is called beside its hive: its mark, else "no mark".
QString boxName(const Box& box);
/// The same, found by its place where it has no mark: "no mark, 2nd from the top".
QString boxPlaceName(const PullHiveRow& hive, const PullBoxRow& row);
/// Where a super stands on its hive: "at the top", "number 2 from the top", "the only super".
QString placeInStack(const PullHiveRow& hive, const PullBoxRow& row);
/// "7 of 9 capped, 85 % full, 22 Jul".
QString boxLookText(const PullBoxRow& row);
/// "take", "leave", "look first", and "refuse" for what was treated while it was on.
QString verdictText(const PullBoxRow& row);
/// Why the verdict is what it is, as far as it needs saying; empty for a box simply to be taken.
QString reasonText(const PullHiveRow& hive, const PullBoxRow& row);
/// What holds a box back: "treated while on, since 20 May: strip was in". Only with a hold.
QString holdText(const Hold& hold);

/// "the hive keeps 14 of the 20 kg it needs, 6 to feed; 6 loads as before, 12 min longer": what
/// follows from deciding the box so, with what is to be minded about it.
QString otherwiseText(const PullHiveRow& hive, const PullBoxRow& row,
                      const PullOtherwise& otherwise);

/// "1 box", "12 boxes".
QString boxesCounted(int boxes);
/// "1 load", "9 loads".
QString loadsCounted(std::int64_t loads);
/// "1 bucket", "12 buckets".
QString bucketsCounted(std::int64_t buckets);
/// "1 board", "5 boards".
QString boardsCounted(std::int64_t boards);
/// "5 h 15"; "9 min" where it is less than an hour.
QString hoursText(double minutes);
/// "Uncapping holds it up: a second knife makes it 4 h 54, one pair of hands 7 h 27."
QString bottleneckText(const DayPlan& day);
/// "H1 H2 H3. No board for H5 C1: brush them on Fri 6 Aug."; where boards are too few, round by
/// round.
QString boardsText(const PullSheet& sheet);
/// "Hill 86 + Creek 61 = 147": the yards' honey summed; empty where there is but one.
QString honeySumText(const PullSheet& sheet);
/// "kept Thu 29 Jul: 146 kg from 12 boxes; now 139", or only what was kept where nothing moved.
QString keptText(const PullSheet& sheet, const KeptPull& kept);

}  // namespace combwright
