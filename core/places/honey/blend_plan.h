// What to pour together: the most honey at or under a water content, exact, out of all that stands
// in the room; and the same shown live for a blend put together by hand. The keeper decides; what
// is held, doubtful or not known is said and left out unless it is asked for.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/places/honey/blend_line.h"
#include "core/places/honey/vessel.h"
#include "core/support/result.h"
#include "core/trade/honey/blend.h"

namespace combwright {

enum class BlendLeftOut {
    Not,
    NoWater,       ///< nobody read it
    NoMass,        ///< nobody knows how much is in it
    Held,          ///< held back
    NotAsked,      ///< the keeper left it out
    NotWrittenOf,  ///< nothing was written of it for a year
};
std::string_view key(
    BlendLeftOut why);  ///< "", "water not read", "not weighed", "held", "left out"

struct BlendLine {
    Vessel vessel;
    std::string name;
    std::optional<Mass> there;
    How thereHow = How::Unknown;
    std::optional<WaterInUse> water;
    std::vector<Hold> held;
    BlendLeftOut leftOut = BlendLeftOut::Not;
    Mass use;
};

/// What the blend would be.
struct BlendOutcome {
    Mass mass;
    std::optional<double> waterPercent;    ///< none: empty, or a part's water is not known
    std::optional<double> wettestPercent;  ///< with the corrections nobody took yet, where wetter
    std::optional<Mass> roomLeft;          ///< in the tank, headroom kept; below 0: it does not fit
    How how = How::Weighed;
    std::vector<std::string> tooDry;    ///< parts that read too dry: wetter than they show
    std::vector<std::string> doubtful;  ///< parts of which nobody said how warm the sample was
    std::vector<std::string> held;
    std::vector<std::string> noWater;
    std::vector<TasteWord> tastes;
    HoneyHeat worstHeat;
    TreatedShare treated;  ///< boxes of all runs behind
};

struct BlendWanted {
    double targetPercent = 18;
    std::optional<Mass> tankHolds;  ///< to the brim
    std::vector<Vessel> mustGoIn;   ///< to the last gram
    std::vector<Vessel> stayOut;
};

struct BlendPlan {
    Day on;
    double targetPercent = 18;
    std::optional<Mass> room;      ///< with the headroom kept
    std::vector<BlendLine> lines;  ///< all that stand in the room
    BlendOutcome outcome;
    std::string parts;  ///< the line for blend-honey; empty for an empty blend
};

/// Reckoned with water as it is in use; what nobody corrected is never corrected in secret. Refused
/// as bestBlend, with NotFound for a vessel that is not there.
Result<BlendPlan> blendPlan(const Read& file, Day on, const BlendWanted& wanted,
                            Working* working = nullptr);

/// The same for the keeper's own line of water, whatever it is poured into.
Result<BlendPlan> usualBlend(const Read& file, Day on);
double waterLine(const Read& file, Day on);  ///< per cent

/// Live, for parts typed or chosen. Refused as readBlendLine, with Missing and TooMany where a part
/// is not there.
Result<BlendOutcome> blendByHand(const Read& file, Day on, const std::string& parts,
                                 std::optional<Mass> tankHolds);

}  // namespace combwright
