// What stands on each other in the storeroom weighs something, and somebody will lift it: each
// stack with its mass as far as it is known, the box in it that is too heavy for one person, and
// what a full one of its kind would weigh.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/places/storeroom/stock.h"
#include "core/support/working.h"
#include "core/trade/storeroom/stack_load.h"
#include "core/units/known.h"

namespace combwright {

struct BoxInStack {
    Id<Box> box;
    std::string name;
    std::string kind;
    std::optional<double> massG;  ///< none: nobody weighed it, and nobody said what is in it
    How how = How::Unknown;       ///< weighed in a run, else assumed: the empty combs of its kind
    Lift lift = Lift::NotKnown;
    std::optional<double> fullG;  ///< with every comb full of honey; assumed
    Lift fullLift = Lift::NotKnown;
};

/// Boxes of one place and stack, in the order of the file: which stands on which nobody wrote down.
struct BoxStack {
    BoxPlace place = BoxPlace::Storeroom;
    std::string stack;  ///< empty: nobody said where
    std::vector<BoxInStack> boxes;
    StackLoad load;
    Working working;

    /// The heaviest as it stands, and that which would be the heaviest when full.
    const BoxInStack* heaviest() const;
    const BoxInStack* heaviestFull() const;
};

/// Boxes off the hives and not lent, by place and stack. A box weighed in its last run, gross while
/// it waits and wet once it was spun, weighs that; one with drawn comb what an empty one of its
/// kind weighs. The limits of a lift are the keeper's own, else the published ones.
std::vector<BoxStack> boxStacks(const Read& file, const Stock& stock);

}  // namespace combwright
