// What is left of blocks, batches, wick and propolis, kept like money: what came in less what went
// out, reckoned anew each time, so that a deed taken back is there again.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/model/wax/candle.h"
#include "core/model/wax/hive_goods.h"
#include "core/storage/rows.h"

namespace combwright {

/// What a weighing says at the most: its upper end where it is a range.
std::optional<Mass> atMost(const std::optional<Known<Mass>>& mass);

/// A block: what it weighed, what went where up to a day, what is left.
struct BlockLedger {
    WaxBlock block;
    std::optional<Mass> mass;  ///< as cast or bought; none: not weighed
    How how = How::Unknown;
    std::vector<WaxUse> uses;  ///< up to the day, in the order they were written down
    Mass used;                 ///< by those
    std::optional<Mass> left;  ///< none where the block was not weighed
};
BlockLedger blockLedger(const Read& file, const WaxBlock& block, Day until);
/// Of every block there was by a day, in the order of their coming.
std::vector<BlockLedger> blockLedgers(const Read& file, Day until);

/// A batch: what went in, what came out of it.
struct BatchLedger {
    WaxBatch batch;
    std::vector<WaxSource> sources;
    std::vector<WaxStep> steps;    ///< by day, then in the order they were written down
    std::vector<WaxBlock> blocks;  ///< cast of it
    std::optional<Mass> in;        ///< raw, other batches and blocks melted again; none: not known
    Mass clean;                    ///< blocks that were weighed
    bool allWeighed = true;        ///< every block was
    Mass again;                    ///< of what went in, wax that had been clean before
    Mass drained;                  ///< honey in the buckets its steps filled, as far as weighed
    std::map<std::int64_t, Mass> drainedBy;  ///< the same by the number of its step
    Mass slumgum;                            ///< and foot scraped off
    std::optional<Day> joined;               ///< the last day another batch or a block came to it
    std::optional<Id<WaxBatch>> wentInto;    ///< it went together with another
    bool melted = false;                     ///< a block, or a step says so
};
BatchLedger batchLedger(const Read& file, const WaxBatch& batch, Day until);
std::vector<BatchLedger> batchLedgers(const Read& file, Day until);

/// Two weighings on two scales differ: a step may have so much more of a batch than there is by its
/// other weighings. Planning assumption, no source.
inline constexpr double stepOverBatch = 1.1;
/// A step of a batch that had more in hand than there is of it.
struct StepAbove {
    WaxStep step;
    bool cameOut = false;  ///< it came out, else it was put in
    Mass most;             ///< of the batch at that step
};
/// The first of them; none where all fit, or where nobody knows what there was. Water of washing
/// counts as weighed; after a washing nobody weighed everything may be.
std::optional<StepAbove> stepAboveBatch(const BatchLedger& ledger);
/// Wax that was taken from blocks for a pour.
Mass waxPoured(const Read& file, Id<Pour> pour);
/// Wax of failed pieces and sprues that came back up to a day and was not cast since.
Mass waxReturned(const Read& file, Day until);

/// Wick of a size on the spool at the end of a day: counted or bought, less what was poured since.
/// None where nobody ever wrote any down.
std::optional<Length> wickLeft(const Read& file, const std::string& wick, Day until);
/// Every size there ever was, in the order they came.
std::vector<std::string> wickStocked(const Read& file);

/// Whether a time goes with a day: at most a day beside it, for times are kept as world time and an
/// evening may end after midnight.
bool isAboutDay(Instant at, Day on);
/// Pots on heat that nobody has ticked off, the longest on first.
std::vector<HeatSession> openHeat(const Read& file);

/// Propolis there is at the end of a day, as far as it was weighed; below 0 where more went.
std::int64_t propolisLeft(const Read& file, Day until);

/// Free evenings from one day to another, both counted, each once: what was written of it last.
std::vector<FreeEvening> freeEvenings(const Read& file, Day from, Day to);

/// Whether candles of a mould with its wick may be sold: always where it comes off the candle, else
/// after a test burn that went well and none of the same wick that did not since.
bool burnsSafely(const Read& file, const Mould& mould, Day on);
/// A one-way holder whose candles may not be sold yet, and why.
struct UntestedHolder {
    Mould mould;
    std::string wick;        ///< poured with; empty: nobody said
    bool wentBadly = false;  ///< the last test of that wick did
    std::string otherWick;   ///< burnt well with this one, none of `wick` was burnt
};
/// Of the holders whose candles came onto the shelf up to a day the first; where none did, of those
/// the candle may be poured in. None where all may be sold.
std::optional<UntestedHolder> untestedHolder(const Read& file, Id<GoodsKind> candle, Day on);

}  // namespace combwright
