// What is said while jars are filled, goods go out and a fair is packed, before anything is kept.
#pragma once

#include <QString>
#include <QStringList>
#include <optional>
#include <string>

#include "core/places/goods/fair_offer.h"
#include "core/places/goods/goods_ahead.h"

namespace combwright {

/// "13.847 kg in jars and 120 g lost, out of B1 of Hill 27; 0.133 kg stay in it", then what is left
/// of jars and lids; a sentence each.
QStringList fillingAheadText(const FillingAhead& ahead);
/// What speaks against filling it: held, not settled, too wet, not read, not enough.
QStringList fillingAheadCautions(const FillingAhead& ahead, Day on);
/// "8.600 kg stay in B1 of Hill 27": of honey that goes in bulk, which is all drawn.
QString bulkAheadText(const FillingAhead& ahead);
/// "On the jars: lot L27-1-1, best before Sat 1 Sep 2029"; what is not known is said.
QString onTheJarsText(const std::optional<std::string>& code, const std::optional<Day>& bestBefore);

/// "454 g jar: 8 stay on the shelf"; a sentence each, and what they bring at the end.
QStringList outAheadText(const OutAhead& ahead, OutHow how, const std::string& currency);
/// More goes than there is.
QStringList outAheadCautions(const OutAhead& ahead);

/// "20 on the shelf, 12 in the box; last time 40 packed, 28 sold, ran out".
QString fairOfferText(const FairOffer& offer);
/// "28 sold, 238.00 €"; "not counted yet".
QString fairRowSoldText(const FairRow& row, const std::string& currency);
/// "28 sold, 238.00 €; 2 kinds are not counted yet", and the cash against it.
QStringList fairSumText(const FairSheet& sheet);

}  // namespace combwright
