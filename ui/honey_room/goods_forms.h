// The short forms about goods: a new kind, what one costs, empty jars and lids bought.
#pragma once

#include "core/units/day.h"
#include "ui/shell/session.h"

class QWidget;

namespace combwright {

/// Each says whether anything was kept.
bool askToAddGoods(QWidget* parent, Session& session, Day on);
bool askForPrices(QWidget* parent, Session& session, Day on);
bool askToBuyPacking(QWidget* parent, Session& session, Day on);

}  // namespace combwright
