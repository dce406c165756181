// A plan of an import as JSON: every row with its verdict, every question, and the map that, with
// its answers, goes in beside the table.
#pragma once

#include <QJsonObject>

#include "core/exchange/import/import_plan.h"

namespace combwright {

QJsonObject toJson(const ImportPlan& plan);

}  // namespace combwright
