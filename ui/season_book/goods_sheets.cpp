#include "ui/season_book/goods_sheets.h"

#include <QCoreApplication>

#include "core/places/pages/goods/fair_pages.h"
#include "core/places/pages/goods/goods_pages.h"

namespace combwright {
namespace {

QString goodsTitle(const char* text) { return QCoreApplication::translate("goods_sheets", text); }

}  // namespace

std::vector<PrintSheet> goodsSheets(Session& session, int year) {
    const auto stock = [&session] { return goodsStock(session.read(), session.clock().today()); };
    return {{QStringLiteral("jars"), goodsTitle("Jars and goods"),
             [&session, stock] { return goodsStockPage(session.read(), stock()); }},
            {QStringLiteral("price-list"), goodsTitle("Prices"),
             [&session, stock] { return priceListPage(session.read(), stock()); }},
            {QStringLiteral("price-cards"), goodsTitle("Price cards"),
             [&session, stock] { return priceCardsPage(session.read(), stock()); }},
            {QStringLiteral("packing-list"), goodsTitle("Packing list of the fair"),
             [&session] { return newestFairPage(session.read(), session.clock().today()); }},
            {QStringLiteral("sales"), goodsTitle("Out of the door"), [&session, year] {
                 const Day today = session.clock().today();
                 return salesPage(session.read(), sales(session.read(), year, today));
             }}};
}

}  // namespace combwright
