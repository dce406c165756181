// "Explain this number": a figure a place shows, and how it came about. core/places reckons it on
// request only, by asking the same trade functions again with a Working; the window's dialog and
// --why on the command line show the same list.
#pragma once

#include <QString>
#include <vector>

#include "core/support/working.h"

namespace combwright {

struct Explained {
    QString what;    ///< what the figure is: "Honey in M07 on H1"
    QString answer;  ///< the figure as it is shown, with unit and how-known letter
    Working working;
};

}  // namespace combwright
