// Goods on paper: what stands on the shelf, what it costs, what a year brought. The infant caution
// stands on every one that goes with honey.
#pragma once

#include "core/places/goods/goods.h"
#include "core/places/goods/sales.h"
#include "core/places/pages/page.h"

namespace combwright {

/// "30 filled, 12 sold, 2 given": what became of a kind; empty for nothing.
QString goodsStoryText(const GoodsShelf& shelf);
/// "20", "14 to 20": jars of a filling on the shelf.
QString fillingLeftText(const FillingLeft& left);
/// Held, treated while on, complaints; empty where there is nothing to know.
QString fillingToKnowText(const FillingSheet& sheet);
/// "13.967 kg w of honey, 120 g of it not in jars"; what is not known is said.
QString fillingDrawnText(const FillingSheet& sheet);
/// What the scale said of jars against their label; empty where none was weighed.
QString netJudgedText(const FilledJars& jars);
/// "454 g jar: 168 empty jars, counted Wed 1 Sep".
QString packingText(const PackingShelf& shelf);

Page goodsStockPage(const Read& file, const GoodsStock& stock);
/// What one of each costs, to hang on the wall or the gate.
Page priceListPage(const Read& file, const GoodsStock& stock);
/// To cut out and stand before what is on the table: of the kinds that have a price.
Page priceCardsPage(const Read& file, const GoodsStock& stock);
Page salesPage(const Read& file, const Sales& sales);

/// The caution every paper with honey carries, framed.
Block infantCautionBlock();
/// A price card.
Card priceCard(const GoodsKind& kind, Money price, const std::string& currency);

}  // namespace combwright
