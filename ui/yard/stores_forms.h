// The short forms of the stores page: hives weighed, their empty weight, feed given, bought and
// counted, and what is always in the truck. What a feeding takes off the shelf is said before it is
// kept; what is half typed comes back.
#pragma once

#include <vector>

#include "core/model/yard/yard.h"
#include "ui/shell/session.h"
#include "ui/yard/hives_field.h"

class QWidget;

namespace combwright {

/// Each says whether it was done. The first has a line for each hive, "20+21" or "41", in the order
/// they are given, and begins in that of one of them.
bool askToWeigh(QWidget* parent, Session& session, const Yard& yard, const std::vector<Hive>& hives,
                Id<Hive> first, Day on);
bool askForTare(QWidget* parent, Session& session, const Hive& hive, Day on);
bool askToFeed(QWidget* parent, Session& session, const Yard& yard, const HivesAsked& hives,
               Day on);
bool askToBuyFeed(QWidget* parent, Session& session, Day on);
bool askToCountFeed(QWidget* parent, Session& session, Day on);
bool askForTruck(QWidget* parent, Session& session, const Yard& yard, Day on);

}  // namespace combwright
