// What the loads as reckoned and a load typed by feel have in common: frames that wait, their wood
// and comb, and a load hung as it was found best.
#pragma once

#include <optional>
#include <vector>

#include "core/model/frames/box.h"
#include "core/places/honey_room/load_sheet.h"
#include "core/trade/extractor/balance.h"

namespace combwright {

/// Wood and wet comb of a frame, per dm² of one side, and how far frames differ in it. 400 g for a
/// medium of 5.58 dm². Planning assumption, no source; a keeper's scale knows better.
inline constexpr double wetFrameGPerDm2 = 72.0;
inline constexpr double wetFrameSdG = 30.0;

/// Comb of one side, dm²; of a medium where nobody knows the kind.
double combDm2(const std::optional<FrameKind>& kind);

/// A box's frames that wait for the machine.
struct WaitingFrames {
    LoadFrame each;
    std::optional<Id<FrameKind>> kind;
    std::int64_t left = 0;
    std::int64_t frames = 0;  ///< that were in the box
};

/// Of every box of a run whose frames are counted; of a closed run as when its boxes came in.
std::vector<WaitingFrames> waitingFrames(const Read& file, const Extraction& run,
                                         const Extractor& machine);

/// The load with its frames, by their numbers, in those slots; offsets and doubts follow.
SheetLoad arranged(const SheetLoad& before, const FrameSlots& places,
                   const std::vector<LoadFrame>& known);

}  // namespace combwright
