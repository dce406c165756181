// What is said of the freezer, of combs in danger and of wet boxes: window, print and command line
// say it in the same words.
#pragma once

#include <QString>

#include "core/places/pull/wets_home.h"
#include "core/places/storeroom/freezer.h"
#include "core/places/storeroom/shelf_danger.h"

namespace combwright {

/// "brood comb", "a deep, taken for brood comb" …; for white comb that the bench chose it.
QString mothFoodText(MothFood food);
/// All of them on one line: "D1 10, D2 6, M03 4".
QString freezerLoadsText(const std::vector<FreezerFrames>& loads);
/// How far a round is: "in until Thu 12 Jan", "frozen 12 Jan: 48 h at −18 °C, 7 needed", and that
/// nobody measured.
QString freezerRoundText(const FreezerRoundRow& row);
/// "6 rounds, last out Sat 22 Jan".
QString freezerPlanText(const FreezerPlan& plan);
/// What cold does not do, wet comb, sealing after it, fumigants and honey comb.
QString freezerCautions();
/// "16 medium by your own count, 10 deep by their bulk".
QString freezerRoomText(const FreezerLane& lane);

/// "10 frames of brood comb, not frozen: into the next round."
QString shelfDangerText(const ShelfDanger& danger);

/// Why a wet box goes to no hive.
QString wetsStayText(const WetBox& box);
/// "off again Thu 5 to Tue 10 Aug".
QString wetsOffText(Day from, Day to);
/// What is to become of stores left in comb.
QString leftOverText(const LeftOver& left);
QString wetsCautions();

}  // namespace combwright
