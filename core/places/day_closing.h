// How a run would close as it stands: by weight, with one box by difference, by eye, or not yet and
// what to do. Asked before the run is closed, so that what is missing is asked for kindly and not
// refused at the end of a long day.
#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "core/trade/honey/share_yield.h"
#include "core/units/known.h"

namespace combwright {

/// What is typed or kept of a run, box by box.
struct DayTyped {
    std::vector<YieldBox> boxes;
    std::optional<double> bucketsG;  ///< none: no bucket holds honey yet
    How how = How::Weighed;          ///< the weakest of all that was typed
    std::optional<double> cappingsG;
};

struct ClosingOutlook {
    bool closes = false;
    QString text;                        ///< one sentence: how, or what to do first
    std::optional<std::size_t> lacking;  ///< the box a weight is asked of
};

ClosingOutlook closingOutlook(const DayTyped& day);

}  // namespace combwright
