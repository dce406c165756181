// What comes of cappings and old comb. The same cappings are half honey or nine tenths honey,
// depending on when they were weighed, so the moment is kept with the mass; old comb keeps its wax
// in the cocoons. What is published are ranges, and the keeper's own weighings soon know better.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string_view>

#include "core/support/result.h"
#include "core/support/working.h"
#include "core/trade/storeroom/comb_wax.h"

namespace combwright {

/// What was put in, and for cappings the moment it was weighed.
enum class WaxMaterial {
    CappingsUndrained,
    CappingsDrained,  ///< a day or two, still honey-wet
    CappingsWashed,   ///< washed and drained
    WhiteComb,        ///< never brooded
    OldCombSolar,     ///< brood comb in a solar melter
    OldCombPressed,   ///< brood comb by hot water or steam, with a press
    Slumgum,          ///< what is left of a simple melting
    Scrapings,        ///< wax and propolis from the bench: nothing is published
    Mixed,            ///< nobody can know
};
inline constexpr WaxMaterial allWaxMaterials[] = {
    WaxMaterial::CappingsUndrained, WaxMaterial::CappingsDrained, WaxMaterial::CappingsWashed,
    WaxMaterial::WhiteComb,         WaxMaterial::OldCombSolar,    WaxMaterial::OldCombPressed,
    WaxMaterial::Slumgum,           WaxMaterial::Scrapings,       WaxMaterial::Mixed};
/// "cappings undrained", "cappings drained", "cappings washed", "white comb", "old comb solar",
/// "old comb pressed", "slumgum", "scrapings", "mixed".
std::string_view key(WaxMaterial material);

/// Clean wax as a share of the mass put in; the middle of the range is the likely one. Washed 90 to
/// 98 %, white comb 80 to 95, solar 25 to 40 (common practice, no source), drained 40 to 50,
/// undrained 9 to 17 (computed from wax and honey of a crop), pressed 35 to 55, slumgum 10 to 30
/// (from memory). Nothing for scrapings and mixed.
std::optional<Between> publishedWaxYield(WaxMaterial material);

/// One batch that was weighed in and out, grams.
struct WaxWeighed {
    double rawG = 0;
    double cleanG = 0;
};

/// What the keeper's batches of one material came to.
struct OwnWaxYield {
    std::size_t n = 0;
    double rawG = 0;
    double cleanG = 0;
    double share = 0;              ///< clean ÷ raw over all, so a large batch counts for more
    std::optional<double> spread;  ///< standard deviation of one batch; nobody knows with one
};
/// Nothing without a batch. Refused: Negative or OutOfRange "batches[N].raw_g" (above 0), Negative
/// "batches[N].clean_g", Contradiction where more came out than went in.
Result<std::optional<OwnWaxYield>> ownWaxYield(std::span<const WaxWeighed> batches);

/// A yield to plan with.
struct WaxYield {
    /// Share of the mass put in. One batch lies between low and high, as far as anybody knows; both
    /// are the likely one where a single own batch is all there is.
    Between share;
    std::size_t ownBatches = 0;
    bool published = false;  ///< a published range is part of it
};
/// Published and own together: the mean of both, each weighted by how surely it is known
/// (learnRate), own batches by their mass. A range is as wide as the evenly likely values of the
/// published one; from three batches on their own spread is believed, never less than 1 % for
/// scales and pots. Nothing published and nothing weighed: nothing. Refused as ownWaxYield.
Result<std::optional<WaxYield>> waxYield(WaxMaterial material,
                                         std::span<const WaxWeighed> batches = {});

/// Clean wax to expect of a raw mass, grams. Refused: Negative or OutOfRange "raw_g".
Result<Between> cleanWaxG(double rawG, const WaxYield& yield, Working* working = nullptr);

/// Honey still in cappings, grams of them: undrained about 87 % (10 of 11.5; 83 to 91), drained
/// half or more (taken as 50 to 60 %), washed none. Computed and common practice. Nothing for other
/// material. Refused: Negative or OutOfRange "raw_g".
Result<std::optional<Between>> honeyInCappingsG(double rawG, WaxMaterial material);

/// What a crop leaves in cappings, grams: wax 1 to 2 kg a 100 kg of honey (printed in 2
/// sources), 1.5 to plan with; honey in them before draining a tenth of the crop or more (printed
/// in 1 source).
struct CappingsOfCrop {
    Between waxG;
    double honeyG = 0;    ///< at least
    double freshG = 0;    ///< both together, undrained
    double drainedG = 0;  ///< twice the wax: half of it honey
};
/// `waxShare` is the keeper's own where known. Refused: Negative or OutOfRange "honey_g";
/// OutOfRange "wax_share" (0 to 1).
Result<CappingsOfCrop> cappingsOfCrop(double honeyG, std::optional<double> waxShare = std::nullopt,
                                      Working* working = nullptr);

/// Clean wax of a year on 100 units of honey, held against the published 1 to 2.
enum class WaxAgainstHoney { Less, AsPublished, More };
std::string_view key(WaxAgainstHoney verdict);  ///< "less", "as published", "more"
struct WaxPerHoney {
    double per100 = 0;
    WaxAgainstHoney verdict = WaxAgainstHoney::AsPublished;
};
/// Nothing without honey. Refused: Negative or OutOfRange "wax_g", "honey_g".
Result<std::optional<WaxPerHoney>> waxPer100Honey(double waxG, double honeyG,
                                                  Working* working = nullptr);

/// Propolis that scraping brings, grams: 50 to 100 a colony and year (printed in 1 source).
/// Refused: Negative "colonies".
Result<Between> propolisG(std::int64_t colonies, Working* working = nullptr);

}  // namespace combwright
