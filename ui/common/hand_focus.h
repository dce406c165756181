// A page that is given the keyboard hands it to the part one works in. Qt's own focus proxy would
// do it too, but Tab, coming to such a page from before it, then jumps to that part at once and
// leaves out what stands in front of it.
#pragma once

class QWidget;

namespace combwright {

/// From now on `to`, which lies within `whole`, has the keyboard whenever `whole` is given it.
/// Called again, the newer one counts.
void handFocusTo(QWidget& whole, QWidget& to);

}  // namespace combwright
