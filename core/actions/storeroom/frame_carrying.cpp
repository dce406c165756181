#include "core/actions/storeroom/frame_carrying.h"

#include "core/model/season_info.h"

namespace combwright {

void moveFrameTo(Write& file, const Frame& frame, std::optional<Id<Box>> box,
                 const std::string& stack, Day on) {
    Frame moved = frame;
    moved.box = box;
    moved.position.reset();
    moved.stack = box ? std::string() : stack;
    file.change(moved);
    file.add(FrameMove{{}, frame.id, on, frame.box, box, frame.stack, moved.stack});
}

bool isKnownApart(const Read& file, const Frame& frame) {
    return frame.position || !frame.mark.empty() || file.first<Hold>({is("frame", frame.id)});
}

}  // namespace combwright
