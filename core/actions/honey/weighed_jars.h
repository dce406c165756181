// Jars put on the scale: while they are filled, or a sample of them later, because a label promises
// a mass. What is kept is how many, their mean and the lightest.
#pragma once

#include "core/actions/action.h"
#include "core/model/honey/bottling.h"

namespace combwright {

/// What the scale said of some jars of a filling, honey alone in grams: as FillJars has `weighed`.
/// It replaces what was weighed of that kind before. Refused with BeforeItBegan before they were
/// filled, Missing where nothing was weighed, NotFound for a kind the filling has none of, TooMany
/// for more jars than were filled, WrongType and OutOfRange for what is no mass.
struct WeighJars {
    static constexpr std::string_view name = "weigh-jars";
    using Answer = Id<Bottling>;
    Day on;
    Id<Bottling> bottling;
    std::string weighed;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// The line of a kind; nothing where there is none.
BottledJars* jarsLineOf(std::vector<BottledJars>& lines, Id<GoodsKind> kind);
/// Reads "456, 455.5" of the first line's kind, or "227 g: 229, 228; 454 g: 456", into the lines.
/// Refused as WeighJars under "weighed"; says whether anything was.
Result<bool> readWeighed(const Read& file, const std::string& text,
                         std::vector<BottledJars>& lines);

}  // namespace combwright
