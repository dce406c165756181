// How counts meet frames. What is counted in a box is matched with the frames that were in it, and
// no frame is ever struck out: one that is not found is missing, and comes back when one more is
// found.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/frames/frame.h"
#include "core/storage/rows.h"

namespace combwright {

/// One frame as it was counted.
struct CountedFrame {
    Id<FrameKind> kind;
    std::optional<Comb> comb;
    std::string faults;
    std::optional<Verdict> verdict;
};

/// A counted frame with the frame it is taken to be.
struct MetFrame {
    CountedFrame counted;
    Frame frame;
    bool isNew = false;  ///< nobody knew of it before
};

/// Frames of a box that were not struck from use.
std::vector<Frame> liveFrames(const Read& file, Id<Box> box);

/// Matches what was counted with the frames in the box, each with the one most like it; those that
/// are over turn missing, those that lack are taken from the box's missing ones and then made anew.
/// Frames met keep their values: what was seen is put on them by whoever counted.
std::vector<MetFrame> meetFrames(Write& file, Id<Box> box, const std::vector<CountedFrame>& counted,
                                 Day on);

/// Takes a frame out of use. It stays in the file, and with the box it was in.
void retire(Write& file, Frame& frame, Retired how, Day on);

}  // namespace combwright
