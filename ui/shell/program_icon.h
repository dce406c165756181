// The program's own picture, a wooden frame with comb, compiled in: the window has it too where
// nothing is installed.
#pragma once

#include <QIcon>
#include <QPixmap>

namespace combwright {

/// Of that many px on a side, for a screen of that ratio.
QPixmap programPicture(int side, double ratio);
QIcon programIcon();

}  // namespace combwright
