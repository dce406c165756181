// Money as it stands on a price card: two decimals always, the file's own sign behind it.
#pragma once

#include <QString>
#include <optional>
#include <string_view>

#include "core/units/money.h"

namespace combwright {

/// "8.50"
QString moneyFigure(Money money);
/// The amount typed, "8.50", "8,5" or "8": at most two decimals, up to a million. Nothing where
/// that is none.
std::optional<Money> typedMoney(const QString& text);
/// "8.50 €"; without a sign where the keeper gave none.
QString moneyText(Money money, std::string_view currency);

}  // namespace combwright
