// Clearer boards: put under the supers of a hive a day or two before they are pulled, and out again
// within three, before the bees find their way back up.
#pragma once

#include "core/actions/action.h"
#include "core/model/honey/room.h"

namespace combwright {

/// A clearer board goes in under the supers of a hive. Refused with Taken where one is in, with
/// Closed or BeforeItBegan where the hive does not stand that day, with HeldBack where it is
/// quarantined.
struct PutClearer {
    static constexpr std::string_view name = "put-clearer";
    using Answer = Id<ClearerBoard>;
    Day on;
    Id<Hive> hive;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// It comes out. Refused with NotFound where none is in.
struct TakeClearer {
    static constexpr std::string_view name = "take-clearer";
    using Answer = Id<ClearerBoard>;
    Day on;
    Id<Hive> hive;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// One board in a hive at a time, out not before in; also when it is amended.
Result<void> demandBoard(const Read& file, const ClearerBoard& board);

}  // namespace combwright
