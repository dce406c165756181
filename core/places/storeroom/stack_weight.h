// How heavy a box of the storeroom is to lift, and the stack it stands in: reckoned from its kind,
// its frames and what may still be in them, and said before somebody bends down to it.
#pragma once

#include <QString>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/model/frames/box.h"
#include "core/storage/rows.h"
#include "core/trade/storeroom/comb_wax.h"
#include "core/trade/storeroom/stack_load.h"

namespace combwright {

struct BoxWeight {
    Id<Box> box;
    std::optional<Between> grams;  ///< none: of a kind nobody measured
    bool mayBeFull = false;      ///< it came off a hive and nobody looked into it or spun it since
    Lift lift = Lift::NotKnown;  ///< by the most it may weigh

    bool tooHeavy() const { return lift == Lift::Careful || lift == Lift::TwoPeople; }
};

/// Boxes of one stack of the storeroom.
struct StackWeight {
    std::string stack;
    std::vector<BoxWeight> boxes;
    Between grams;                ///< of those that are known
    std::int64_t notWeighed = 0;  ///< the others: the stack is heavier by them
    std::int64_t tooHeavy = 0;    ///< boxes of it over the limit of one person
};

/// Everything in storeroom, honey room and freezer, asked of the file at once by a constant number
/// of queries.
class ShelfWeights {
  public:
    ShelfWeights(const Read& file, Day on);
    /// Nothing for a box that is not there.
    const BoxWeight* of(Id<Box> box) const;
    /// The stack a box stands in; nothing where it stands in none that has a name, or alone.
    std::optional<StackWeight> stackOf(Id<Box> box) const;

  private:
    std::map<std::int64_t, BoxWeight> m_boxes;
    std::map<std::int64_t, std::string> m_stackOf;
    std::map<std::string, std::vector<std::int64_t>> m_stacks;
};

/// "weighs about 5 kg a (4 to 5)"; "weight not known".
QString weightText(const BoxWeight& weight);
/// "its stack of 8 about 38 kg (32 to 44)".
QString weightText(const StackWeight& weight);
/// What to mind when it is lifted; empty where one person lifts it.
QString liftText(const BoxWeight& weight);

}  // namespace combwright
