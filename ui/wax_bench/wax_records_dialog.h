// The records behind a band, as a plain list.
#pragma once

#include <vector>

#include "core/places/wax_bench/wax_records.h"
#include "ui/look/tokens.h"

class QWidget;

namespace combwright {

void showWaxRecords(QWidget* parent, const Look& look, const std::vector<WaxRecordLine>& lines);

}  // namespace combwright
