// The wax bench on a day: raw wax by its source, what came of it, clean blocks by shade, candles
// being finished, moulds with what they hold, wick, propolis, pots on heat, and the year's balance.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/storage/queries/wax_ledger.h"
#include "core/support/working.h"
#include "core/trade/wax/candle_mass.h"
#include "core/trade/wax/wax_balance.h"
#include "core/trade/wax/wax_yield.h"
#include "core/trade/wax/wick.h"

namespace combwright {

/// A moment at which a batch was weighed, and what it was then: raw, dripped, pressed, washed.
struct WaxStage {
    WaxMaterial material = WaxMaterial::Mixed;
    Mass mass;
};

/// A batch as the bench shows it.
struct BatchShown {
    BatchLedger ledger;
    std::vector<std::string> from;              ///< names of runs and boxes it came from
    WaxMaterial material = WaxMaterial::Mixed;  ///< as it was weighed last
    std::optional<WaxState> state;              ///< by its steps since it was gathered
    std::optional<Mass> raw;                    ///< the middle of what was weighed
    How rawHow = How::Unknown;
    std::optional<Mass> weighed;          ///< last, on its way to the pot; raw where never since
    std::optional<WaxYield> yield;        ///< published and own together, of what weighed so
    std::optional<Between> expectedG;     ///< clean wax of that
    std::optional<Between> honeyG;        ///< honey still in it; none: nobody knows
    std::optional<RenderedBalance> lost;  ///< where it is cast and everything was weighed
    int days = 0;                         ///< since it came
    std::optional<WaxKeeping> kept;       ///< and nothing was done to it since
    std::optional<Day> keptSince;         ///< where that was later than it came
    bool waits = false;                   ///< nothing of it was melted, and it went nowhere
    /// Washed on a day and not melted the same: cappings ferment.
    std::optional<Day> washedOn;
};

/// What is left of one shade.
struct ShadeStock {
    WaxShade shade = WaxShade::Light;
    Mass left;
    How how = How::Weighed;  ///< the weakest of its blocks
    int blocks = 0;          ///< with anything left
    int notWeighed = 0;
};

struct MouldShown {
    Mould mould;
    std::string candle;  ///< the kind it makes; empty: nobody said
    std::optional<CandleMass> mass;
    bool byWater = false;   ///< its volume was measured
    bool byScales = false;  ///< a candle of it was weighed
    std::optional<double> setHours;
    std::optional<WickGuess> guess;  ///< by its diameter
    std::optional<Between> burns;    ///< hours, by mass and diameter
    std::vector<BurnTest> tests;     ///< the newest first
    bool safe = true;                ///< a one-way holder burnt well to test, or none
};
/// The newest test burn of each wick, that of the wick in use first: a trial of another says
/// nothing of it.
std::vector<BurnTest> lastTests(const MouldShown& mould);

/// A pour whose candles are not all on the shelf yet.
struct PourShown {
    Pour pour;
    std::string mould;
    std::string candle;
    std::optional<Day> setBy;  ///< the first day it may be taken out
    Mass drawn;                ///< off the blocks
};

struct WaxYear {
    int year = 0;
    WaxMoved moved;
    Mass again;          ///< of what was given: blocks melted again
    Mass returnedWaits;  ///< of what was poured: failed pieces and sprues not cast yet
    std::optional<WaxYearBalance> balance;  ///< none where more went out than there was
    Mass raw;                               ///< weighed raw wax that came to the bench
    Mass clean;                             ///< blocks cast of wax that was raw before
    Mass honeyDrained;                      ///< out of cappings, in buckets
    std::optional<Mass> crop;               ///< honey of that year
    std::optional<WaxPerHoney> per100;
};

struct WaxBench {
    Day on;
    std::vector<BatchShown> batches;  ///< in the order of their coming
    std::vector<BlockLedger> blocks;  ///< with anything left, or not weighed
    std::vector<ShadeStock> shades;   ///< light, mid, dark; those there is or was any of
    std::vector<HeatSession> heat;    ///< on
    std::vector<MouldShown> moulds;
    std::vector<PourShown> unfinished;
    std::vector<std::pair<std::string, Length>> wick;  ///< by size, the thinnest first
    Mass propolis;
    Mass returned;                      ///< failed pieces and sprues that wait to be melted again
    std::vector<HiveProject> projects;  ///< not lidded yet, or this year's
    WaxYear year;
};

/// The material of a batch as it was gathered, as far as its source and state say. Old comb counts
/// as pressed where a step says it was pressed.
WaxMaterial materialOf(const BatchLedger& batch);
/// When it was weighed: raw with what came to it, and cappings after each step that changed what
/// they are. Never empty where anything was weighed, the last last.
std::vector<WaxStage> stagesOf(const BatchLedger& batch);
/// The wax that came out of the pot last, as it was weighed; none where nobody weighed it.
std::optional<Mass> outOfPot(const BatchLedger& batch);
/// What the keeper's own batches of a material came to, each weighed in and out, up to a day; but
/// one.
std::vector<WaxWeighed> weighedBatches(const Read& file, WaxMaterial material, Day until,
                                       std::optional<Id<WaxBatch>> but = std::nullopt);
/// `working` gathers how the balance of the year came about.
WaxYear waxYear(const Read& file, int year, Day until, Working* working = nullptr);
MouldShown mouldShown(const Read& file, const Mould& mould, Day on);
WaxBench waxBench(const Read& file, Day on);

}  // namespace combwright
