// What may stand in the records of buckets and lots, whoever writes them: the action that records,
// or the one that amends. Honey is kept like money: nothing is drawn that is not there.
#pragma once

#include <string>

#include "core/storage/queries/vessels.h"
#include "core/support/result.h"

namespace combwright {

/// More than stands in any honey room.
inline constexpr Mass mostInVessel = Mass::grams(10'000'000);

/// The bucket or lot named, on a day it was there. Refused with Missing ("bucket") where none is
/// named, Contradiction where both are, NotFound, and BeforeItBegan ("on").
Result<Vessel> vesselMeant(const Read& file, const std::optional<Id<Bucket>>& bucket,
                           const std::optional<Id<Lot>>& lot, Day on);

/// Asked when everything is written: nothing was taken out before the vessel was there, and never
/// more than was in it, on that day or any other. Refused with BeforeItBegan ("on") and TooMany,
/// `field`, with "honey_in" and "most_g": what was in it, or of `wanted` what could have gone.
Result<void> demandLedger(const Read& file, const Vessel& vessel, const std::string& field,
                          std::optional<Mass> wanted = std::nullopt);

/// Not negative, with a figure where `needed`, at most mostInVessel. Refused with Missing,
/// OutOfRange.
Result<void> demandHoney(const std::optional<Known<Mass>>& mass, const std::string& field,
                         bool needed = false);

/// Refused with Missing where no scale was read, Contradiction where two are, OutOfRange for water
/// outside 10 to 30 %, for a sample outside −20 to 60 °C, and where the instrument's own table
/// ends; with Contradiction where it was calibrated after it was read.
Result<void> demandReading(const WaterReading& reading);
/// Refused with OutOfRange outside 0 to 100 °C and beyond a year.
Result<void> demandStep(const HoneyStep& step);
/// Refused with OutOfRange beyond what the Pfund scale shows, 140 mm.
Result<void> demandTraits(const HoneyTraits& traits);
/// A lot's own figures, and what went in fits into its tank. Refused as demandHoney, with TooMany
/// "tank_holds_g" where it does not fit, and TooMany "net_g" where more was weighed than weighed
/// parts went in.
Result<void> demandLot(const Read& file, const Lot& lot);
/// Refused with Taken where another lot has the name.
Result<void> demandLotName(const Read& file, const Lot& lot);

/// What is held back goes nowhere without a reason. Refused with HeldBack, naming vessel and hold.
Result<void> demandMayGo(const Read& file, const Vessel& vessel, Day on, const std::string& reason,
                         const std::string& field);

}  // namespace combwright
