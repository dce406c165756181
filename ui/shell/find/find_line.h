// One line of the box that finds anything, and the heads between them.
#pragma once

#include <QString>
#include <functional>
#include <vector>

namespace combwright {

struct FindLine {
    QString title;
    QString context = {};           ///< what it is, muted behind the title
    QString key = {};               ///< that does the same
    std::function<void()> go = {};  ///< none: a head
    bool isHead() const { return !go; }
};

using FindLines = std::vector<FindLine>;

}  // namespace combwright
