// The sheets about jars, candles and fairs, as every place that prints them offers them.
#pragma once

#include <vector>

#include "ui/shell/place.h"

namespace combwright {

/// Stock of jars, prices, price cards, the packing list of the fair, what went out this year.
std::vector<PrintSheet> goodsSheets(Session& session, int year);

}  // namespace combwright
