// The honey that stands in buckets and lots, and whether it is ready: does it keep, does it pass
// the limits the keeper goes by, what does it become when it sets, does the air of the room dry or
// wet it, has it settled, and how much water must go.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/places/honey/vessel.h"
#include "core/trade/honey/equilibrium.h"
#include "core/trade/honey/ferment_risk.h"
#include "core/trade/honey/limits.h"

namespace combwright {

/// What honey turns to when it sets, told where the sugars are not known: so much glucose in 100 g
/// may set until the liquid between the crystals is as wet as that.
inline constexpr double setDangerPercent = 20.0;
/// Glucose that sets in honey that sets at all: 10 to 15 g of 100 g, the two worked values of the
/// trade's page. Planning assumption.
inline constexpr double setsUsuallyFromG = 10.0;
inline constexpr double setsUsuallyToG = 15.0;

/// Whether it has stood long enough.
struct Settling {
    /// Of a width: somebody measured the vessel. Likely: taken to be as deep as it is wide when
    /// full. Usual: nobody knows how much honey it is, and the depth of an ordinary tank stands for
    /// it.
    enum class Depth { OfWidth, Likely, Usual };
    double depthMm = 0;
    Depth depth = Depth::Usual;
    std::optional<double> honeyG;  ///< that stood in it; none: nobody knows
    std::optional<double> wideMm;
    double temperatureC = 0;  ///< of the room on the day, else the warmth honey is strained at
    bool warmthAssumed = false;
    double waterPercent = 0;
    double bubbleUm = 0;        ///< for bubbles so large and larger
    double hours = 0;           ///< with the factor to plan with
    Day until;                  ///< the first day it has settled
    double oneDayClearsUm = 0;  ///< what a day clears, without the factor
};

/// The air of the room, and what honey in an open vessel does in it.
struct AirOverHoney {
    double dampPercent = 0;
    Day on;
    std::optional<AirVerdict> verdict;
    std::optional<double> restsAtPercent;  ///< the water it comes to; none beyond the table
};

/// What keeps honey from being bottled, the worst first.
enum class HoneyLacks {
    Held,
    WaterNotRead,
    ReadsTooDry,  ///< it was cold and nothing was corrected: wetter than it shows
    PartTooDry,   ///< a part of it reads so
    WaterMustGo,  ///< over the keeper's line
    NotSettled,
};

struct StoredHoney {
    VesselView view;
    std::optional<FermentVerdict> ferment;  ///< by its water as the keeper should reckon with it
    std::vector<LimitAnswer> limits;        ///< water against the profile the keeper picked
    std::optional<double> whenSetFrom;      ///< water between the crystals, per cent
    std::optional<double> whenSetTo;
    std::optional<double> glucoseToDanger;  ///< grams of 100 g
    bool setAtRisk = false;                 ///< sound now, in danger once it has set
    std::optional<AirOverHoney> air;
    std::optional<Settling> settling;
    /// How full it is, 0 to 1: of what its bucket or tank holds, else of what the keeper fills a
    /// bucket with. None: nobody knows.
    std::optional<double> level;
    std::optional<double> targetPercent;  ///< the keeper's line
    std::optional<double> waterOffG;      ///< to drive off to the target; 0: dry enough

    /// Settled, dry enough for the line, held by nothing, and its water known without doubt that
    /// makes it wetter.
    bool ready(Day on) const;
    /// What is missing to that.
    std::vector<HoneyLacks> lacks(Day on) const;
};

struct HoneyStore {
    Day on;
    std::string profile;                    ///< whose limits; empty: none picked
    double targetPercent = 18;              ///< "max_water_percent"
    std::vector<StoredHoney> standing;      ///< with honey in them, or nobody knows
    std::vector<StoredHoney> emptied;       ///< in the last year
    std::vector<std::string> notWrittenOf;  ///< not emptied, and nothing written for a year
    Mass known;                             ///< in all that is known
    How knownHow = How::Unknown;
    int notKnown = 0;  ///< vessels of which nobody knows how much
};

/// One vessel; `working` gathers the steps of its figures.
StoredHoney storedHoney(const Read& file, const Vessel& vessel, Day on, HeldHoney& held);
HoneyStore honeyStore(const Read& file, Day on);

/// The name of the colour its Pfund reading has by the standard; empty where nobody read it.
std::string colourName(const HoneyTraits& traits);

/// The profile of limits the keeper picked, up to a day; empty where none was.
std::string limitsPicked(const Read& file, Day on);

}  // namespace combwright
