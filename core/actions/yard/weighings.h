// Hives on the scale: lifted at each side by a hook, or as a whole; and what a hive weighs empty,
// without which the scale says nothing of the stores.
#pragma once

#include "core/actions/action.h"
#include "core/model/yard/weighing.h"

namespace combwright {

/// What the scale said of one hive, or of many in one line: "H1 20+21, H2 41, H3 18+19 without
/// 17.5", in kilograms, or in pounds with "lb" behind the figures. A second weighing on the same
/// day puts right what it gives and leaves the rest: the right side may come after the left.
/// Refused with Missing where nothing was weighed, Contradiction where sides and the whole are
/// given, or one hive and a list, OutOfRange for nothing on the scale, Duplicate for a hive named
/// twice, WrongType for a part that is no reading; as every deed at a hive with NotFound,
/// BeforeItBegan and Closed.
struct WeighHive {
    static constexpr std::string_view name = "weigh-hive";
    using Answer = std::vector<Id<HiveWeighing>>;
    Day on;
    std::optional<Id<Hive>> hive;
    std::optional<Known<Mass>> left;
    std::optional<Known<Mass>> right;
    std::optional<Known<Mass>> whole;
    std::optional<Known<Mass>> without;
    std::string readings;          ///< of many hives, instead of one
    std::optional<Id<Yard>> yard;  ///< of the hives in the list
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Floor, lid and the boxes of the nest, without frames and supers. Refused with NothingToDo where
/// it is so already.
struct SetTare {
    static constexpr std::string_view name = "set-tare";
    using Answer = Id<Hive>;
    Day on;
    Id<Hive> hive;
    std::optional<Known<Mass>> tare;  ///< none: not known any more
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Something was weighed, sides or the whole, and more than nothing; also when it is amended.
Result<void> demandWeighing(const HiveWeighing& weighing);

}  // namespace combwright
