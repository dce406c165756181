// The walk through a first year: what stands in the panel at each step, and where in the invented
// season it is. Each is one thing to look at and one to try.
#pragma once

#include <QString>
#include <string>
#include <vector>

#include "core/actions/demo_season.h"
#include "ui/shell/place.h"

namespace combwright {

struct WalkStep {
    DemoUntil until;
    const QMetaObject* place;
    GoTo where;
    std::string yard;  ///< by name, for `where`; empty: the one the place opens with
    std::string hive;
    QString title;
    QString says;
};

/// In the order of the year.
std::vector<WalkStep> walkSteps();

}  // namespace combwright
