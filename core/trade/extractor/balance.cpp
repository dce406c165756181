#include "core/trade/extractor/balance.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <numeric>
#include <string>

#include "core/trade/extractor/ring_moves.h"
#include "core/trade/extractor/ring_placing.h"
#include "core/trade/honey/published_table.h"

namespace combwright {
namespace {

/// √(−2 · ln 0.1 / 2) = 1.517, as it is told to the keeper.
constexpr double ninetyPercentLength = 1.52;

std::string frameField(std::size_t index, const char* key) {
    return "frames[" + std::to_string(index) + "]." + key;
}

std::optional<Refusal> refuseMass(double grams, std::size_t index, const char* key) {
    if (grams >= 0.0 && std::isfinite(grams)) return std::nullopt;
    return Refusal{Code::Negative, frameField(index, key), {}};
}

std::optional<Refusal> refuseFrame(const LoadedFrame& frame, const LoadedFrame& first,
                                   std::size_t index) {
    if (auto refused = refuseMass(frame.startG, index, "start_g")) return refused;
    if (auto refused = refuseMass(frame.endG, index, "end_g")) return refused;
    if (auto refused = refuseMass(frame.sdG.value_or(0.0), index, "sd_g")) return refused;
    if (frame.radiusMm && !(*frame.radiusMm > 0.0))
        return Refusal{*frame.radiusMm < 0.0 ? Code::Negative : Code::OutOfRange,
                       frameField(index, "radius_mm"),
                       {{"low", "0"}}};
    if (frame.sdG.has_value() != first.sdG.has_value())
        return Refusal{Code::Missing, frameField(frame.sdG ? 0 : index, "sd_g"), {}};
    if (frame.radiusMm.has_value() != first.radiusMm.has_value())
        return Refusal{Code::Missing, frameField(frame.radiusMm ? 0 : index, "radius_mm"), {}};
    return std::nullopt;
}

std::optional<Refusal> refuseLoad(std::int64_t slotCount, const std::vector<LoadedFrame>& frames) {
    if (slotCount < fewestSlots || slotCount > mostSlots)
        return outOfRange("slots", static_cast<double>(slotCount), static_cast<double>(fewestSlots),
                          static_cast<double>(mostSlots));
    if (frames.size() > static_cast<std::size_t>(slotCount))
        return Refusal{Code::TooMany, "frames", {{"most", std::to_string(slotCount)}}};
    return refuseFrames(frames);
}

double largestRadius(const std::vector<LoadedFrame>& frames) {
    double largest = 0.0;
    for (const LoadedFrame& frame : frames) largest = std::max(largest, frame.radiusMm.value_or(0));
    return largest;
}

double leverOf(const LoadedFrame& frame, double largest) {
    return frame.radiusMm ? *frame.radiusMm / largest : 1.0;
}

/// What each frame weighs at the largest radius.
std::vector<RingItem> scaledFrames(const std::vector<LoadedFrame>& frames) {
    const double largest = largestRadius(frames);
    std::vector<RingItem> items;
    for (const LoadedFrame& frame : frames) {
        const double lever = leverOf(frame, largest);
        items.push_back({frame.startG * lever, frame.endG * lever});
    }
    return items;
}

bool heavier(const RingItem& a, const RingItem& b) {
    return a.start != b.start ? a.start > b.start : a.end > b.end;
}

/// Which frame leads: it stands in slot 0.
std::size_t leadingFrame(const std::vector<LoadedFrame>& frames) {
    const auto first = std::max_element(
        frames.begin(), frames.end(),
        [](const LoadedFrame& a, const LoadedFrame& b) { return a.startG < b.startG; });
    return static_cast<std::size_t>(first - frames.begin());
}

/// The frames in the order of a RingLoad's items: the leading one first among those alike, empty
/// places last.
std::vector<std::optional<std::size_t>> framesByWeight(const std::vector<LoadedFrame>& frames,
                                                       const std::vector<RingItem>& items,
                                                       std::size_t slotCount) {
    std::vector<std::size_t> order(frames.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    const std::size_t lead = leadingFrame(frames);
    std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        if (items[a] != items[b]) return heavier(items[a], items[b]);
        return a == lead || (b != lead && a < b);
    });
    std::vector<std::optional<std::size_t>> all(order.begin(), order.end());
    all.resize(slotCount);
    return all;
}

/// Of turns and mirror images the one the contract names. Frames alike are interchangeable, so they
/// stand in their order; `alike` is the ring of a RingLoad's items.
FrameSlots canonicalSlots(const Ring& ring, const RingLoad& load,
                          const std::vector<std::optional<std::size_t>>& byWeight,
                          std::size_t lead) {
    const std::size_t slotCount = ring.size();
    const auto leadItem = static_cast<std::size_t>(
        std::find(byWeight.begin(), byWeight.end(), std::optional(lead)) - byWeight.begin());
    std::size_t turn = 0;
    while (load.kind[ring[turn]] != load.kind[leadItem]) ++turn;

    std::vector<std::size_t> next(slotCount);
    for (std::size_t i = slotCount; i-- > 0;) next[load.kind[i]] = i;
    FrameSlots turned;
    for (std::size_t slot = 0; slot < slotCount; ++slot)
        turned.push_back(byWeight[next[load.kind[ring[(slot + turn) % slotCount]]]++]);

    const auto rank = [slotCount](const std::optional<std::size_t>& frame) {
        return frame.value_or(slotCount);
    };
    for (std::size_t slot = 1; slot < slotCount; ++slot) {
        if (turned[slot] == turned[slotCount - slot]) continue;
        if (rank(turned[slot]) > rank(turned[slotCount - slot]))
            std::reverse(turned.begin() + 1, turned.end());
        break;
    }
    return turned;
}

void noteBalance(const LoadBalance& balance, Working* working) {
    const char* sum = "|Σ m · r / r_max · (cos 2πk/N, sin 2πk/N)|";
    note(working, "start_offset_g", balance.offset.startG, "g", sum);
    note(working, "end_offset_g", balance.offset.endG, "g", sum);
    note(working, "lower_bound_g", balance.lowerBoundG, "g");
    if (balance.doubtG)
        note(working, "doubt_g", *balance.doubtG, "g", "1.52 · √(Σ (sd · r / r_max)²)",
             "Rayleigh, 9 of 10");
}

/// A way to arrange a ring.
using Arrange = std::function<RingAnswer(const RingLoad& load)>;

Arrange arrangeWith(const RingWork& work) {
    return [work](const RingLoad& load) { return arrangeRing(load, work); };
}

/// Few arrangements are tried all; of many only some exchanges of places.
RingAnswer arrangeAtOnce(const RingLoad& load) {
    constexpr double placingsAtOnce = 5e3;
    constexpr int roundsAtOnce = 20;
    if (countPlacings(load) <= placingsAtOnce)
        return placeAll(load, std::numeric_limits<double>::infinity());
    return searchMoves(load, roundsAtOnce, std::numeric_limits<double>::infinity());
}

LoadBalance balanceGood(std::size_t slotCount, const std::vector<LoadedFrame>& frames,
                        const Arrange& arrange) {
    LoadBalance balance;
    balance.doubtG = doubtOf(frames);
    if (frames.empty()) {
        balance.places.resize(slotCount);
        balance.proven = true;
        return balance;
    }
    const auto byWeight = framesByWeight(frames, scaledFrames(frames), slotCount);
    const RingLoad load = ringLoadOf(slotCount, frames);
    const RingAnswer answer = arrange(load);
    balance.places = canonicalSlots(answer.ring, load, byWeight, leadingFrame(frames));
    balance.offset = offsetsOf(balance.places, frames);
    balance.proven = answer.proven;
    balance.lowerBoundG = answer.proven ? balance.offset.largerG() : load.boundG();
    return balance;
}

/// Indices of a list from which one frame was left out, as in the whole list.
void countLeftOut(FrameSlots& places, std::size_t leftOut) {
    for (auto& frame : places)
        if (frame && *frame >= leftOut) ++*frame;
}

}  // namespace

Result<LoadBalance> balanceLoad(std::int64_t slotCount, const std::vector<LoadedFrame>& frames,
                                const RingWork& work, Working* working) {
    if (const auto refused = refuseLoad(slotCount, frames)) return *refused;
    LoadBalance balance =
        balanceGood(static_cast<std::size_t>(slotCount), frames, arrangeWith(work));
    noteBalance(balance, working);
    return balance;
}

Result<LoadBalance> balanceAtOnce(std::int64_t slotCount, const std::vector<LoadedFrame>& frames) {
    if (const auto refused = refuseLoad(slotCount, frames)) return *refused;
    return balanceGood(static_cast<std::size_t>(slotCount), frames, &arrangeAtOnce);
}

std::optional<Refusal> refuseFrames(const std::vector<LoadedFrame>& frames) {
    for (std::size_t i = 0; i < frames.size(); ++i)
        if (auto refused = refuseFrame(frames[i], frames.front(), i)) return refused;
    return std::nullopt;
}

RingLoad ringLoadOf(std::size_t slotCount, const std::vector<LoadedFrame>& frames) {
    std::vector<RingItem> items = scaledFrames(frames);
    items.resize(slotCount);
    return ringLoad(std::move(items));
}

LoadOffsets offsetsOf(const FrameSlots& places, const std::vector<LoadedFrame>& frames) {
    const std::vector<RingItem> items = scaledFrames(frames);
    RingSum sum;
    for (std::size_t slot = 0; slot < places.size(); ++slot)
        if (places[slot]) sum = sum.plus(items[*places[slot]], ringDirection(slot, places.size()));
    // What only the rounding of the sums leaves is nothing.
    const double rounding = roundingOfRing(items, places.size());
    const auto cleaned = [rounding](double grams) { return grams <= rounding ? 0.0 : grams; };
    return {cleaned(sum.startLength()), cleaned(sum.endLength())};
}

std::optional<double> doubtOf(const std::vector<LoadedFrame>& frames) {
    const double largest = largestRadius(frames);
    double squares = 0.0;
    for (const LoadedFrame& frame : frames) {
        if (!frame.sdG) return std::nullopt;
        const double sd = *frame.sdG * leverOf(frame, largest);
        squares += sd * sd;
    }
    if (frames.empty()) return std::nullopt;
    return ninetyPercentLength * std::sqrt(squares);
}

bool balancesAlike(std::size_t frames, std::size_t slotCount) {
    if (frames > slotCount) return false;
    std::vector<bool> sum(slotCount + 1, false);
    sum[0] = true;
    std::size_t rest = slotCount;
    for (std::size_t prime = 2; rest > 1; ++prime) {
        if (rest % prime != 0) continue;
        while (rest % prime == 0) rest /= prime;
        for (std::size_t n = prime; n <= slotCount; ++n) sum[n] = sum[n] || sum[n - prime];
    }
    return sum[frames] && sum[slotCount - frames];
}

Result<std::optional<BalanceAdvice>> adviseLeavingOut(std::int64_t slotCount,
                                                      const std::vector<LoadedFrame>& frames) {
    if (const auto refused = refuseLoad(slotCount, frames)) return *refused;
    if (frames.size() < 2) return std::optional<BalanceAdvice>();
    const auto places = static_cast<std::size_t>(slotCount);
    const auto without = [&](std::size_t i, const RingWork& work) {
        std::vector<LoadedFrame> rest = frames;
        rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(i));
        LoadBalance balance = balanceGood(places, rest, arrangeWith(work));
        countLeftOut(balance.places, i);
        return balance;
    };
    std::size_t best = frames.size() - 1;
    double least = without(best, quickRingWork()).offset.largerG();
    for (std::size_t i = best; i-- > 0;) {
        const double offset = without(i, quickRingWork()).offset.largerG();
        if (offset >= least) continue;
        least = offset;
        best = i;
    }
    return std::optional(BalanceAdvice{best, without(best, thoroughRingWork())});
}

Result<std::optional<BalanceAdvice>> adviseAddingEmpty(std::int64_t slotCount,
                                                       const std::vector<LoadedFrame>& frames,
                                                       const LoadedFrame& empty) {
    if (const auto refused = refuseLoad(slotCount, frames)) return *refused;
    if (frames.size() >= static_cast<std::size_t>(slotCount)) return std::optional<BalanceAdvice>();
    std::vector<LoadedFrame> all = frames;
    all.push_back(empty);
    const auto balance = balanceLoad(slotCount, all);
    if (!balance) return balance.error();
    return std::optional(BalanceAdvice{frames.size(), *balance});
}

}  // namespace combwright
