// Pegs: numbered clips, one to a box as it leaves its hive. They stand for the box in the honey
// room, where nobody reads a painted mark under propolis, and for boxes that never had one.
#pragma once

#include "core/actions/action.h"
#include "core/model/honey/room.h"

namespace combwright {

/// Clips a peg to a box. A box that stands on a hive comes off it with that and waits; one cleared
/// waits from then on. Without box the peg is on a box nobody knows, of a hive where that much is
/// known. Refused with OutOfRange outside 1 to 999, with Taken where the number is on another box
/// that day or the box carries another peg, with BeforeItBegan before the
/// box was there, with Contradiction where it came off another hive, with HeldBack where the box or
/// hive is held and may not be taken off.
struct ClipPeg {
    static constexpr std::string_view name = "clip-peg";
    using Answer = Id<Peg>;
    Day on;
    Count peg;
    std::optional<Id<Box>> box;
    std::optional<Id<Hive>> hive;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Takes a peg off its box; the number is free from the next day on. Refused with NotFound where no
/// box carries it.
struct TakePegOff {
    static constexpr std::string_view name = "take-peg-off";
    using Answer = Id<Peg>;
    Day on;
    Count peg;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// A peg's own rules, whoever writes it down: its number 1 to 999 and on one box a day, its box
/// carrying no other, off not before on.
Result<void> demandPeg(const Read& file, const Peg& peg);

/// Refused with Contradiction where a hive is given that is not the one the box stood on last.
Result<void> demandFilledBy(const Read& file, Id<Box> box, const std::optional<Id<Hive>>& hive,
                            Day on);

/// Taken: the peg is on another box, and which.
Refusal pegTaken(const Read& file, const Peg& peg);
/// NotFound: no box carries that peg on that day.
Refusal noSuchPeg(Count peg);

/// Clips it without asking what the box is doing; rules as demandPeg.
Result<Id<Peg>> addPeg(Write& file, Peg peg);

/// The peg a box carries comes off on that day; nothing where it carries none.
void unpeg(Write& file, Id<Box> box, Day on);
/// Pegs of all boxes of a run come off, also those of boxes nobody knows.
void unpegRun(Write& file, Id<Extraction> run, Day on);

}  // namespace combwright
