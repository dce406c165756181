// All that is known of the honey in one bucket or lot: how much and since when, its water and what
// is doubtful of it, what it has been through, what was told of it and of what it came from, and
// what holds it back.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/places/honey/water_in_use.h"
#include "core/storage/queries/vessel_holds.h"
#include "core/storage/queries/vessels.h"
#include "core/trade/honey/heat_damage.h"

namespace combwright {

/// What warmth has cost so far.
struct HoneyHeat {
    std::optional<HeatDamage> damage;  ///< of the steps that are known; none: never warmed, or no
                                       ///< step is known
    HeatClass heat = HeatClass::Gentle;
    int notKnown = 0;  ///< steps of which nobody wrote down how warm or how long
    double hours = 0;  ///< of the steps that are known
};

/// A word for the taste, and whose it is.
struct TasteWord {
    std::string word;
    std::string of;
};

struct VesselView {
    Vessel vessel;
    std::string name;
    std::optional<Lot> lot;
    std::optional<Bucket> bucket;
    VesselLedger ledger;
    std::optional<WaterInUse> water;
    std::vector<WaterReading> readings;  ///< the oldest first
    std::vector<HoneyStep> steps;        ///< its own, in the order of their days
    HoneyTraits traits;
    std::vector<TasteWord> tastes;  ///< its own first, then those of what it came from
    std::optional<bool> lidded;
    std::optional<Mass> holds;  ///< what its tank or kind of bucket takes
    HoneyHeat heat;             ///< its own and the worst of what it came from
    bool creamed = false;       ///< it, or something in it: set honey
    std::vector<Hold> held;
    TreatedShare treated;
    std::optional<Mass> lostPouring;  ///< of a lot weighed after: what went in less what it weighs

    bool empty() const { return ledger.empty.has_value(); }
};

/// Nothing was written of it for so many days: who keeps no book of what is drawn would have every
/// bucket of ten years standing in the room. It is told apart, and planned with only where it is
/// asked for.
inline constexpr int notWrittenOfDays = 365;
bool notWrittenOf(const Read& file, const VesselLedger& ledger, Day on);

/// As it stands at the end of a day. One HeldHoney for many vessels saves asking for the holds of
/// each.
VesselView vesselView(const Read& file, const Vessel& vessel, Day on, HeldHoney& held);
VesselView vesselView(const Read& file, const Vessel& vessel, Day on);

/// The class of what the Pfund scale said, "Light Amber"; empty where nobody read it.
std::string colourClassOf(const HoneyTraits& traits);

/// Warming, creaming and drying that are known, as the trade reckons them; how many are not goes
/// into `notKnown`.
std::vector<HeatStep> heatSteps(const std::vector<HoneyStep>& steps, int* notKnown = nullptr);
/// What a step would cost by itself, and with all the honey has been through before it.
struct HeatOutlook {
    HoneyHeat step;
    HoneyHeat inAll;
};
HeatOutlook heatOutlook(const Read& file, const Vessel& vessel, Day on, const HoneyStep& planned);
/// The keeper's own lines between gentle, noticeable and harsh.
HeatLines heatLines(const Read& file, Day on);

}  // namespace combwright
