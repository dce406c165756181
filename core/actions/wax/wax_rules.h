// What may stand in the records of the wax bench, whoever writes them: the action that records, or
// the one that amends. Wax is kept like money: nothing comes out that did not go in.
#pragma once

#include <array>
#include <chrono>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/model/wax/candle.h"
#include "core/model/wax/hive_goods.h"
#include "core/places/wax_bench/candle_shades.h"
#include "core/places/wax_bench/mould_wax.h"
#include "core/storage/queries/wax_holds.h"
#include "core/storage/rows.h"
#include "core/support/result.h"

namespace combwright {

/// How far candles of a pour have come.
enum class CandleWork { Released, Trimmed, Labelled };
template <>
struct Choices<CandleWork> {
    static constexpr auto words =
        std::to_array<std::string_view>({"released", "trimmed", "labelled"});
};
/// A step of a small project on a hive.
enum class ProjectWork { Starter, PutOn, Off, Lidded };
template <>
struct Choices<ProjectWork> {
    static constexpr auto words =
        std::to_array<std::string_view>({"starter in", "put on", "taken off", "lidded"});
};

/// More than comes to any bench.
inline constexpr Mass mostWax = Mass::grams(10'000'000);

/// Not negative, above 0 with a figure where `needed`, at most mostWax. Refused with Missing,
/// OutOfRange.
Result<void> demandWax(const std::optional<Known<Mass>>& mass, const std::string& field,
                       bool needed = false);
/// Wax is heated over water: 0 to 100 °C. Refused with OutOfRange "temperature_c".
Result<void> demandWaxHeat(const std::optional<Temperature>& temperature);

/// A batch's own figures. Refused with Taken, OutOfRange, and Contradiction where it was kept since
/// a day before it came.
Result<void> demandBatch(const Read& file, const WaxBatch& batch);
/// Refused as WorkWax.
Result<void> demandWaxStep(const Read& file, const WaxStep& step);
/// The refusal that says wax is held, with what the wax is of: HeldBack.
Refusal heldWax(std::string field, std::string wax, const WaxHold& hold);
/// Before bees are given cappings to clean. Refused with HeldBack "hive" where theirs is held,
/// "batch" where honey of a held hive is in it: nothing of that goes to bees.
Result<void> demandBeesMayClean(const Read& file, const WaxStep& step);
/// Asked when everything is written: no step of the batch had more of it than there is
/// (stepAboveBatch). Refused with TooMany under the step's own mass, or under `field`.
Result<void> demandStepLedger(const Read& file, const std::optional<Id<WaxBatch>>& batch,
                              const std::string& field = {});
/// A time of day goes with the day of its line: at most a day beside it, for the time is kept as
/// world time and an evening may end after midnight. Refused with OutOfRange under `field`.
Result<void> demandAboutDay(Instant at, Day on, const std::string& field);
/// Asked when everything is written: no more clean wax out of a batch than went in. Refused with
/// TooMany under `field`.
Result<void> demandBatchLedger(const Read& file, const std::optional<Id<WaxBatch>>& batch,
                               const std::string& field);
Result<void> demandBlock(const Read& file, const WaxBlock& block);
/// Asked when everything is written: nothing was taken from a block before it was cast, and never
/// more than it weighed. Refused with BeforeItBegan ("on"), TooMany under `field`.
Result<void> demandBlockLedger(const Read& file, Id<WaxBlock> block, const std::string& field);

Result<void> demandMould(const Read& file, const Mould& mould);
/// The mould on a day it was there. Refused with NotFound, BeforeItBegan, Closed.
Result<Mould> mouldOn(const Read& file, Id<Mould> mould, Day on);
/// Candles of goods only. Refused with NotAChoice "goods_kind".
Result<void> demandCandle(const Read& file, const std::optional<Id<GoodsKind>>& kind);

/// So often a mould is filled in an evening at most.
inline constexpr std::int64_t mostCycles = 50;
/// The step of a pour that lies before the one it follows: "released", "trimmed", "labelled", or
/// nothing.
const char* stepOutOfOrder(const Pour& pour);
/// Refused as PourCandles; `cycles` as said there.
Result<void> demandPour(const Read& file, const Pour& pour, const Mould& mould,
                        const std::optional<Count>& cycles);
/// Asked when everything is written: no more wax came back than was poured. Refused with TooMany
/// under `field`.
Result<void> demandPourLedger(const Read& file, const std::optional<Id<Pour>>& pour,
                              const std::string& field);
/// One candle burns no more wax than one takes. Refused with TooMany "burnt_g".
Result<void> demandBurnt(const Mould& mould, const std::optional<Known<Mass>>& burnt);
/// "L1 900 g, M2 0.4 kg": what each block gave. What is left out behind the last is what is needed
/// less what was said. Refused under "blocks" with Missing, WrongType, NotFound, Duplicate.
Result<std::vector<WaxUse>> readWaxDrawn(const Read& file, std::string_view line, Day on,
                                         const std::optional<Mass>& needed);

/// A day before the one it cannot lie before: Contradiction, with both days.
Refusal liesBefore(const char* field, Day day, const char* other, Day before);

Result<void> demandWish(const Read& file, const CandleWish& wish);
/// Monday is the first; all seven where nothing is said. Refused with WrongType "weekdays".
Result<std::array<bool, 7>> readWeekdays(std::string_view line);
/// 0 is Monday.
std::size_t weekdayOf(Day day);

/// Refused with TooMany under `field` where at any time more propolis went than there was: with the
/// day, and how much of the move asked for there was at the most.
Result<void> demandPropolis(const Read& file, Id<PropolisMove> asked, const std::string& field);
Result<void> demandProject(const Read& file, const HiveProject& project);
/// Refused with HeldBack where the hive is quarantined, or held for another reason and none is
/// given.
Result<void> demandProjectFree(const Read& file, const HiveProject& project, Day on,
                               const std::string& reason);

}  // namespace combwright
