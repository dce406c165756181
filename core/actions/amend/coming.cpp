#include "core/actions/amend/coming.h"

#include "core/actions/amend/amend_rules.h"

namespace combwright {

Result<void> moveComing(Write& file, Id<Box> box, Day from, Day to, const char* field) {
    bool first = true;
    for (BoxMove& move : file.where<BoxMove>({is("box", box)})) {
        if (first && move.on == from) {
            move.on = to;
            file.change(move);
        } else if (move.on < to) {
            return against(field, "box_move " + isoText(move.on));
        }
        first = false;
    }
    for (BoxCount& count : file.where<BoxCount>({is("box", box)})) {
        if (count.occasion == Occasion::Added && count.on == from) {
            count.on = to;
            file.change(count);
        } else if (count.on < to) {
            return against(field, "box_count " + isoText(count.on));
        }
    }
    for (const BoxLook& look : file.where<BoxLook>({is("box", box)}))
        if (look.on < to) return against(field, "box_look " + isoText(look.on));
    for (const FrameCheck& check : file.where<FrameCheck>({is("box", box)}))
        if (check.on < to) return against(field, "frame_check " + isoText(check.on));
    return {};
}

}  // namespace combwright
