// The honey in the room as words and as a page: what stands where, how wet it is and how far that
// is to be trusted, whether it keeps, what it lacks to be bottled. Screen, print and command line
// say it in the same words.
#pragma once

#include "core/places/honey/blend_plan.h"
#include "core/places/honey/honey_store.h"
#include "core/places/pages/page.h"

namespace combwright {

/// "17.4 %".
QString waterPercentText(double percent);
/// "17.4 %", or "not read".
QString waterText(const std::optional<WaterInUse>& water);
/// "read Mon 9 Aug at 26.0 °C, not corrected: 17.4 % at 20 °C"; empty where nothing is known.
QString waterKnownText(const WaterInUse& water);
/// "keeps", "keeps if it has few yeasts", "will ferment sooner or later".
QString keepsText(const FermentVerdict& verdict);
/// "gentle: at most 1.2 mg/kg of HMF, 91 % of the invertase left"; empty where it was never warmed.
QString heatText(const HoneyHeat& heat);
/// "Room air 55 % damp on 7 Aug: it stays as it is."
QString airText(const AirOverHoney& air);
/// "once set 19.1 % to 20.2 %"; both must be known.
QString settingText(const StoredHoney& honey);
/// "held since 2 Oct: suspected disease"; empty where it is not.
QString heldText(const VesselView& view);
/// "treated while on: perhaps, 1 of 7 boxes"; empty for none.
QString treatedText(const TreatedShare& share);
/// "settled since Tue 10 Aug", "settles until Tue 10 Aug".
QString settlingText(const Settling& settling, Day on);
/// "gold, Light Amber (52 mm)": in the keeper's word, and the class of a Pfund reading; empty where
/// neither is known.
QString colourText(const HoneyTraits& traits);
/// "to 18.0 %: 195 g of water must go"; empty where it is dry enough or not known.
QString waterOffText(const StoredHoney& honey);
/// "us grade: 18.6 % at most, within"
QString limitText(const std::string& profile, const LimitAnswer& answer);
/// Everything that is to be said of one vessel beside its figures, one sentence each.
QStringList honeyRemarks(const StoredHoney& honey, const HoneyStore& store);

/// The list to pin to the wall of the honey room.
Page honeyStorePage(const Read& file, const HoneyStore& store);
Page blendPage(const Read& file, const BlendPlan& plan);
/// The most honey at the keeper's own line of water, whatever it is poured into.
Page usualBlendPage(const Read& file, Day on);

}  // namespace combwright
