// All that is said of one bucket or lot beside its row in the store: what it lacks to be bottled,
// where it came from, what was done to it, where its honey went; and what a reading, a warming or a
// blend would come to before it is kept.
#pragma once

#include <QStringList>

#include "core/places/honey/blend_plan.h"
#include "core/places/honey/honey_store.h"

namespace combwright {

/// "18.9 %: 195 g of water must go to 18.0 %", one for each thing it lacks, the worst first; empty
/// where it is ready.
QStringList lackTexts(const StoredHoney& honey, Day on);
/// "amber, 62 mm on the Pfund scale (light amber), double sieve"; empty where nobody told.
QString traitsText(const HoneyTraits& traits);
/// How long and by what it settles.
QString settlingWhyText(const Settling& settling);
/// "27-2 Hill, Sun 8 Aug 2027", "B1 of 27-2 13.0 kg w", "bought in from Ann".
QStringList cameFromTexts(const Read& file, const VesselView& view);
/// "Mon 9 Aug: warmed to 40.0 °C for 480 min".
QStringList workedTexts(const VesselView& view);
/// "Mon 9 Aug: 6.2 kg into Hill summer", every line of its ledger.
QStringList ledgerTexts(const Read& file, const VesselLedger& ledger);
/// "suspected disease, since 6 Aug 2027: box H1a", its own first.
QStringList heldTexts(const Read& file, const VesselView& view);

/// "At 20 °C that is 19.4 %: ...", empty where it is right as read.
QString readingSaysText(const ReadingSays& says);
/// "gentle: ..." of the step, and of all it has been through then.
QStringList heatOutlookTexts(const HeatOutlook& outlook);

/// What a blend comes to: its mass and water first.
QStringList blendTexts(const BlendOutcome& outcome, double targetPercent);
/// What of it must be looked at before it is poured: what is held, reads too dry, does not fit.
QStringList blendWarnings(const BlendOutcome& outcome);

}  // namespace combwright
