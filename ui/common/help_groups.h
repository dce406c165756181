// The help of a place in short groups under heads, each line a key and what it does: who looks for
// one key does not read a page.
#pragma once

#include <QString>
#include <vector>

namespace combwright {

struct HelpLine {
    QString keys;  ///< empty: words alone, over the whole width
    QString what;
};

struct HelpGroup {
    QString head;
    std::vector<HelpLine> lines;
};

/// As rich text for the help of a place.
QString helpOf(const std::vector<HelpGroup>& groups);

}  // namespace combwright
