// Where each frame hangs in a radial extractor, so that the machine runs smooth. A frame's mass
// pulls outwards at its place; what the pulls do not cancel shakes the machine. They must cancel
// when the spin begins and when it ends: while honey leaves, if all frames drain by the same law,
// every mass is start · (1 − u) + end · u with one u, and so is the sum, which is never longer than
// the longer of its ends. Frames that drain differently (thick honey, cold combs) can exceed it.
//
// Offsets are in grams at the largest radius of the load: the one mass that, hung there, would
// shake as much. They are as good as the masses; doubtG says how good that is.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

#include "core/support/result.h"
#include "core/support/working.h"
#include "core/trade/extractor/ring.h"

namespace combwright {

inline constexpr std::int64_t fewestSlots = 2;
inline constexpr std::int64_t mostSlots = 72;

/// A frame as it hangs in the machine.
struct LoadedFrame {
    double startG = 0.0;                  ///< when the spin begins
    double endG = 0.0;                    ///< when it is empty
    std::optional<double> sdG = {};       ///< standard deviation of what is known of its mass
    std::optional<double> radiusMm = {};  ///< of its centre of mass; absent: all hang alike
};

/// For each slot, in the order they stand round the axle, the index of its frame.
using FrameSlots = std::vector<std::optional<std::size_t>>;

/// What the machine feels of a load, grams at the largest radius.
struct LoadOffsets {
    double startG = 0.0;
    double endG = 0.0;

    double largerG() const { return startG > endG ? startG : endG; }
};

struct LoadBalance {
    FrameSlots places;
    LoadOffsets offset;
    bool proven = false;       ///< no arrangement of these masses has a smaller larger offset
    double lowerBoundG = 0.0;  ///< none has one below this; 0 where nothing better is known
    std::optional<double> doubtG = {};
};

/// The arrangement whose larger offset is smallest. Proven up to 12 slots, and beyond where it can
/// be; else the best a fixed amount of work finds, about 100 ms. Slot 0 holds the frame of the
/// largest startG, of equal ones the earlier; of the two mirror images it is the one whose slot 1
/// has the frame earlier in the list (both empty: slot 2, and so on). Refused: slots outside 2 to
/// 72
/// ("slots"), more frames than slots ("frames"), a negative mass or doubt and a radius not above 0
/// ("frames[2].end_g" …), doubt or radius given for some frames only.
Result<LoadBalance> balanceLoad(std::int64_t slotCount, const std::vector<LoadedFrame>& frames,
                                const RingWork& work = thoroughRingWork(),
                                Working* working = nullptr);

/// A first answer within a few milliseconds whatever the masses, for a window that arranges anew at
/// every letter typed; balanceLoad, asked next, proves it or finds a better one. Says `proven` only
/// where it is. Refused as balanceLoad.
Result<LoadBalance> balanceAtOnce(std::int64_t slotCount, const std::vector<LoadedFrame>& frames);

/// What is wrong with the frames themselves, as balanceLoad refuses it.
std::optional<Refusal> refuseFrames(const std::vector<LoadedFrame>& frames);
/// The frames as bare masses at the largest radius, filled up with empty places.
RingLoad ringLoadOf(std::size_t slotCount, const std::vector<LoadedFrame>& frames);

/// What a given arrangement does, for instance after the person exchanged two frames. Slots name
/// frames of the list; a frame may be left out.
LoadOffsets offsetsOf(const FrameSlots& places, const std::vector<LoadedFrame>& frames);

/// How far the real offset may lie from the one reckoned, 9 times of 10, grams at the largest
/// radius: 1.52 · √(Σ sd²). Each of the sum's two components has the variance Σ sd² / 2, so its
/// length is Rayleigh distributed and √(−2 · ln 0.1 / 2) = 1.517. Absent where a frame's doubt is
/// unknown.
std::optional<double> doubtOf(const std::vector<LoadedFrame>& frames);

/// Whether so many frames of equal mass can be balanced exactly: both they and the empty slots must
/// be sums of prime factors of the number of slots (sums of roots of unity; from memory, confirmed
/// by enumeration for up to 18 slots).
bool balancesAlike(std::size_t frames, std::size_t slotCount);

/// What helps a load that does not balance, and the balance it then has.
struct BalanceAdvice {
    std::size_t frame = 0;  ///< left out, or one past the last frame: the empty one added
    LoadBalance balance;    ///< indices as in the list given
};

/// The frame whose absence helps most, of equal ones the last; nothing where there is none to spare
/// (fewer than two frames). Refused as balanceLoad.
Result<std::optional<BalanceAdvice>> adviseLeavingOut(std::int64_t slotCount,
                                                      const std::vector<LoadedFrame>& frames);
/// What one empty drawn frame does, hung where it helps most; nothing where no slot is free. Its
/// mass at the start is that at the end.
Result<std::optional<BalanceAdvice>> adviseAddingEmpty(std::int64_t slotCount,
                                                       const std::vector<LoadedFrame>& frames,
                                                       const LoadedFrame& empty);

}  // namespace combwright
