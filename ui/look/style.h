// Makes plain Qt widgets look like the rest of the workshop: flat, hairlines, corners of 4, one
// accent. A sheet of rules on top of the palette, so no widget of ours needs its own paint code.
#pragma once

#include <QString>

#include "ui/look/tokens.h"

class QApplication;

namespace combwright {

/// The rules for one look. A button with the dynamic property "primary" set to true is the one
/// thing to do next; "small" makes it 24 px high, "large" 40 px (the honey room).
QString styleSheetFor(const Look& look);

/// Sets palette, font and rules of the program and returns the look that goes with them. May be
/// called again at any time: the base font is the one the program started with.
/// @param factor the person's own text size, 1.0 to 2.0
Look applyLook(QApplication& application, bool dark, double factor = 1.0);

}  // namespace combwright
