// The pull list for the yard: which boxes to bring, which to leave, and why; clearer boards; what
// to expect. With the cautions that belong to lifting and to honey.
#pragma once

#include "core/places/pages/page.h"
#include "core/places/pull_sheet.h"

namespace combwright {

Page pullListPage(const Read& file, const PullSheet& sheet, Day forDay);

/// "not capped enough" … in the person's words.
QString whyLeftText(WhyLeft why);
/// What a box is called beside its hive: its mark, else "no mark".
QString boxName(const Box& box);
/// "7 of 9 capped, 85 % full, 22 Jul".
QString boxLookText(const PullBoxRow& row);

}  // namespace combwright
