#include "core/places/pull/fill_judged.h"

namespace combwright {
namespace {

constexpr int lookIntoBoxSpeaksDays = 35;

}  // namespace

std::optional<Known<Share>> fillLookedAt(const Read& file, Id<Box> box, Day on) {
    std::optional<BoxLook> newest;
    for (BoxLook& look : file.where<BoxLook>({is("box", box)}))
        if (look.filled && look.on <= on && look.on + days(lookIntoBoxSpeaksDays) >= on &&
            (!newest || look.on >= newest->on))
            newest = std::move(look);
    return newest ? newest->filled : std::nullopt;
}

}  // namespace combwright
