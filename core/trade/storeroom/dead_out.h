// A hive found dead: eight plain questions, what it looks like, and what may be done with its
// combs. It looks like something and is never a diagnosis; and whatever it looks like, nothing of
// the hive is used again until somebody looked for scale and for brood that ropes, and found
// neither.
//
// Signs after dead-out keys printed in one to three sources each; where a row is our own, it says
// "common practice, no source".
#pragma once

#include <optional>
#include <string_view>
#include <vector>

namespace combwright {

/// The bees that are left.
enum class ClusterFound {
    TightHeadsIn,  ///< a tight cluster, heads in cells, bottoms out
    Few,           ///< a handful, perhaps with the queen
    Gone           ///< none to speak of
};
/// Honey near the cluster.
enum class DeadStores {
    None,        ///< empty combs round it
    InchesAway,  ///< some, out of reach
    Touching     ///< the cluster sat on it
};
/// What the brood and its capping look like.
enum class DeadBrood {
    None,
    Healthy,       ///< capping whole, brood white
    Chilled,       ///< dead, but of good colour and shape, under sound capping
    DeadEmerging,  ///< died coming out, some with crippled wings
    Sunken,        ///< capping sunken, holed, greasy or dark; or a pupal tongue
    Twisted,       ///< dead larvae twisted in open cells
    DronesOnly     ///< drone brood in worker cells
};
enum class DeadDroppings {
    None,
    BeesStreaks,  ///< streaks of bees on combs and front
    Mouse         ///< a nest, droppings of a mouse, chewed comb
};
/// What a laboratory or the inspector said.
enum class BroodFinding { Clear, AmericanFoulbrood, EuropeanFoulbrood };

/// The signs of the card: nothing stands for a question nobody answered.
struct DeadOutSigns {
    std::optional<ClusterFound> cluster;
    std::optional<DeadStores> storesNear;
    std::optional<DeadBrood> brood;
    std::optional<bool> frass;  ///< white specks of mites in the roofs of brood cells
    std::optional<bool> wet;    ///< wet or mouldy combs, a damp lid
    std::optional<bool> queen;  ///< a queen was found
    std::optional<DeadDroppings> droppings;
    std::optional<bool> ropy;   ///< brood draws a thread on a match
    std::optional<bool> scale;  ///< dark scale, stuck hard to the lower wall of cells

    std::optional<BroodFinding> finding = {};  ///< as recorded, by whom stands in the record
    bool poisonedOrMedicated = false;  ///< fed or treated with what must not go on: as recorded
    bool frozen = false;               ///< its combs went through the freezer
    bool coldWinter = false;           ///< it stood in hard frost long enough
};

/// What it looks like.
enum class LooksLike {
    Foulbrood,  ///< American foulbrood, suspected or found
    EuropeanFoulbrood,
    Starvation,
    VarroaAndVirus,
    MitesOrDwindling,  ///< the cluster went in autumn; it did not abscond
    QueenLoss,
    Dysentery,  ///< nosema possible
    Damp,       ///< often comes after another cause
    Mouse,
    Chilled  ///< too few bees to keep brood warm; common practice, no source
};
std::string_view key(LooksLike cause);

/// What may be done with its combs, mildest first: the gravest of what was seen holds for all.
enum class CombUse {
    Reuse,
    ReuseAfterDrying,
    ReuseAfterScrubbing,  ///< freezing does not prove it safe
    ReuseAfterCutting,    ///< cut out what was chewed, freeze the rest
    ReuseAfterFreezing,   ///< no frost to speak of and not frozen yet: moth
    Hold,
    Quarantine,
    Never  ///< found, not suspected: destroyed as the inspector says
};
std::string_view key(CombUse use);

/// What to do today, in this order.
enum class DoToday {
    CallInspector,
    MoveNothing,
    CloseHive,  ///< or it is robbed, and what killed it goes along
    LookForScaleAndRope,
    WashDeadBees,  ///< half a cup from the cluster, in soapy water, for mites
    DryCombs,
    ScrubCombs,
    CutOutChewed,
    FreezeCombs,
    HoneyToBeesOnly  ///< never for sale
};
std::string_view key(DoToday deed);

/// What to keep of it for somebody to look at.
enum class SampleToKeep {
    LeaveToInspector,
    HalfCupOfBees,  ///< for the mite wash
    BeesForSpores   ///< 30 to 60 bees, frozen, for a spore count
};
std::string_view key(SampleToKeep sample);

struct DeadOutReading {
    std::vector<LooksLike> causes;  ///< gravest first; empty: it cannot be told
    CombUse combs = CombUse::Hold;
    std::vector<DoToday> today;
    SampleToKeep sample = SampleToKeep::BeesForSpores;
};

/// Reads the card. Combs are free again only where scale and ropy brood were looked for and not
/// found (or a finding is clear), nothing harmful was fed, and frost or freezer killed the moth;
/// blank answers to either leave the hold. Either found: suspected foulbrood, quarantine. Sunken
/// capping while either is blank: quarantine; with both "no": hold. Printed rule.
DeadOutReading readDeadOut(const DeadOutSigns& card);

}  // namespace combwright
