// Every frame that ever came is kept, or its going is written down: in = kept + melted + burnt +
// sold + missing + gone. Nobody is asked to number a frame for it.
#pragma once

#include <vector>

#include "core/model/frames/frame.h"
#include "core/storage/rows.h"

namespace combwright {

struct FrameLedgerRow {
    FrameKind kind;
    int in = 0;  ///< ever came
    int kept = 0;
    int melted = 0, burnt = 0, sold = 0, missing = 0;
    int gone = 0;  ///< with their box; they are kept again once it is back
    bool conserved() const { return in == kept + melted + burnt + sold + missing + gone; }
};

struct FrameLedger {
    std::vector<FrameLedgerRow> rows;  ///< kinds of which there ever was a frame, as catalogued
    FrameLedgerRow total;              ///< its kind says nothing
    bool conserved() const;
};

/// As the file stands. Two queries.
FrameLedger frameLedger(const Read& file);

/// How so many frames of a kind may be used: one row a kind, one number a use.
struct FrameClasses {
    FrameKind kind;
    int drawn = 0, foundation = 0, bare = 0, repairable = 0, held = 0, lost = 0, unknown = 0;
    /// To put on now or when work is done that needs no new frame.
    int usable() const { return drawn + foundation + bare + repairable; }
    int all() const { return usable() + held + lost + unknown; }
};

/// Frames in use by class, whatever box still about or shelf they are in.
std::vector<FrameClasses> frameClasses(const Read& file, Day on);

}  // namespace combwright
