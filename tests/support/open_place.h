// Finds a place of the window by what it is, whatever its number in the rail.
#pragma once

#include "ui/shell/main_window.h"

namespace combwright::test {

/// Brings it to the front.
template <class InFront>
InFront* openPlace(MainWindow& window) {
    for (std::size_t i = 0; i < window.places().size(); ++i)
        if (auto* place = qobject_cast<InFront*>(window.places()[i])) {
            window.goTo(static_cast<int>(i));
            return place;
        }
    return nullptr;
}

}  // namespace combwright::test
