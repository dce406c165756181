#include <QJsonArray>
#include <QJsonObject>

#include "app/cli/groups.h"
#include "app/cli/season_asked.h"
#include "app/cli/why.h"
#include "core/exchange/or_null.h"
#include "core/places/explain/explain_goods.h"
#include "core/places/pages/goods/fair_pages.h"
#include "core/places/pages/goods/goods_pages.h"
#include "core/places/pages/page_text.h"
#include "core/storage/queries/names.h"
#include "core/words/words.h"

namespace combwright::cli {
namespace {

QJsonValue moneyValue(const std::optional<Money>& money) {
    return money ? QJsonValue(money->whole()) : QJsonValue();
}

qint64 wholeValue(std::int64_t many) { return static_cast<qint64>(many); }

QJsonObject shelfObject(const Read& file, const GoodsShelf& shelf) {
    const auto out = [&shelf](OutHow how) {
        return wholeValue(shelf.out[static_cast<std::size_t>(how)]);
    };
    QJsonArray fillings;
    for (const FillingLeft& each : shelf.fillings) {
        const auto bottling = file.find(each.bottling);
        fillings.append(QJsonObject{{QStringLiteral("code"), fromUtf8(bottling->code.text())},
                                    {QStringLiteral("filled"), wholeValue(each.filled)},
                                    {QStringLiteral("left_at_least"), wholeValue(each.least)},
                                    {QStringLiteral("left_at_most"), wholeValue(each.most)}});
    }
    return {
        {QStringLiteral("kind"), fromUtf8(shelf.kind.name.text())},
        {QStringLiteral("what"), orNull(std::optional(shelf.kind.what))},
        {QStringLiteral("net_g"), orNull(shelf.kind.net)},
        {QStringLiteral("price"), moneyValue(shelf.kind.price)},
        {QStringLiteral("left"), shelf.written ? QJsonValue(wholeValue(shelf.left)) : QJsonValue()},
        {QStringLiteral("at_fair"), wholeValue(shelf.atFair)},
        {QStringLiteral("filled"), wholeValue(shelf.filled)},
        {QStringLiteral("sold"), out(OutHow::Sold) + wholeValue(shelf.soldAtFairs)},
        {QStringLiteral("given"), out(OutHow::Given) + wholeValue(shelf.givenAtFairs)},
        {QStringLiteral("kept"), out(OutHow::Kept)},
        {QStringLiteral("broken"), out(OutHow::Broken) + wholeValue(shelf.brokenAtFairs)},
        {QStringLiteral("came_back"), out(OutHow::CameBack)},
        {QStringLiteral("found_when_counted"), wholeValue(shelf.corrected)},
        {QStringLiteral("counted_on"), orNull(shelf.counted)},
        {QStringLiteral("of_no_filling"), wholeValue(shelf.ofNoFilling)},
        {QStringLiteral("seconds"), wholeValue(shelf.seconds)},
        {QStringLiteral("fillings"), fillings}};
}

QJsonObject fillingObject(const FillingSheet& sheet) {
    QJsonArray jars;
    for (const FilledJars& each : sheet.jars)
        jars.append(
            QJsonObject{{QStringLiteral("kind"), fromUtf8(each.kind.name.text())},
                        {QStringLiteral("count"), wholeValue(each.line.count.value())},
                        {QStringLiteral("spoiled"), orNull(each.line.spoiled)},
                        {QStringLiteral("weighed"), orNull(each.line.weighed)},
                        {QStringLiteral("mean_g"),
                         each.line.mean ? QJsonValue(each.line.mean->value()) : QJsonValue()},
                        {QStringLiteral("lightest_g"), orNull(each.line.lightest)},
                        {QStringLiteral("mean_holds"), orNull(each.meanHolds)},
                        {QStringLiteral("may_lack_g"), orNull(each.deficitG)},
                        {QStringLiteral("lightest_short"), orNull(each.lightestShort)},
                        {QStringLiteral("lightest_far_short"), orNull(each.lightestFarShort)},
                        {QStringLiteral("left_at_least"), wholeValue(each.left.least)},
                        {QStringLiteral("left_at_most"), wholeValue(each.left.most)}});
    QJsonArray holds;
    for (const Hold& each : sheet.holds)
        holds.append(QJsonObject{{QStringLiteral("why"), orNull(std::optional(each.why))},
                                 {QStringLiteral("since"), fromUtf8(isoText(each.since))}});
    QJsonArray complaints;
    for (const Complaint& each : sheet.complaints)
        complaints.append(QJsonObject{{QStringLiteral("on"), fromUtf8(isoText(each.on))},
                                      {QStringLiteral("what"), fromUtf8(each.what.text())},
                                      {QStringLiteral("closed"), orNull(each.closed)},
                                      {QStringLiteral("became"), orNull(each.became)}});
    return {{QStringLiteral("code"), fromUtf8(sheet.bottling.code.text())},
            {QStringLiteral("on"), fromUtf8(isoText(sheet.bottling.on))},
            {QStringLiteral("from"), fromUtf8(sheet.from)},
            {QStringLiteral("best_before"), orNull(sheet.bottling.bestBefore)},
            {QStringLiteral("drawn_g"), orNull(sheet.drawn.mass)},
            {QStringLiteral("drawn_how"), orNull(std::optional(sheet.drawn.how))},
            {QStringLiteral("in_jars_g"), orNull(sheet.inJars)},
            {QStringLiteral("lost_g"), wholeValue(sheet.drawn.lost.grams())},
            {QStringLiteral("treated_boxes"), sheet.treated.boxes},
            {QStringLiteral("of_boxes"), sheet.treated.of},
            {QStringLiteral("holds"), holds},
            {QStringLiteral("complaints"), complaints},
            {QStringLiteral("jars"), jars}};
}

QJsonObject stockObject(const Read& file, const GoodsStock& stock) {
    QJsonArray kinds;
    for (const GoodsShelf& each : stock.shelves) kinds.append(shelfObject(file, each));
    QJsonArray fillings;
    for (const FillingSheet& each : stock.fillings) fillings.append(fillingObject(each));
    QJsonArray packing;
    for (const PackingShelf& each : stock.packing)
        packing.append(
            QJsonObject{{QStringLiteral("jars_of"),
                         each.kind ? QJsonValue(fromUtf8(each.kind->name.text())) : QJsonValue()},
                        {QStringLiteral("lid"), orNull(each.lid)},
                        {QStringLiteral("bought"), wholeValue(each.bought)},
                        {QStringLiteral("used"), wholeValue(each.used)},
                        {QStringLiteral("left"), wholeValue(each.left)},
                        {QStringLiteral("counted_on"), orNull(each.counted)}});
    return {{QStringLiteral("as_of"), fromUtf8(isoText(stock.on))},
            {QStringLiteral("currency"), orNull(stock.currency)},
            {QStringLiteral("honey_in_jars_g"), wholeValue(stock.honeyInJars.grams())},
            {QStringLiteral("kinds"), kinds},
            {QStringLiteral("fillings"), fillings},
            {QStringLiteral("packing"), packing}};
}

Refusal noSheet(const QString& name, const char* choices) {
    return {Code::NoSuchCommand, "print", {{"name", name.toStdString()}, {"choices", choices}}};
}

int runJars(Context& context) {
    const Season season = seasonToRead(context);
    const Read& file = season.read();
    const auto print = context.arguments.value("print");
    const bool list = print == QStringLiteral("price-list");
    const bool cards = print == QStringLiteral("price-cards");
    if (print && !list && !cards)
        return refuse(context, noSheet(*print, "price-list, price-cards"));
    const OneState still(file);
    const GoodsStock stock = goodsStock(file, context.clock.today());
    const auto why =
        context.arguments.has("why") ? explainNet(file, stock) : std::vector<Explained>();
    if (context.json()) {
        QJsonObject object = stockObject(file, stock);
        if (context.arguments.has("why")) object.insert(QStringLiteral("why"), whyArray(why));
        printJson(context, object);
        return Done;
    }
    context.streams.out << pageText(list    ? priceListPage(file, stock)
                                    : cards ? priceCardsPage(file, stock)
                                            : goodsStockPage(file, stock));
    printWhy(context, why);
    return Done;
}

QJsonObject totalsObject(const OutTotals& out) {
    return {{QStringLiteral("sold"), wholeValue(out.sold)},
            {QStringLiteral("given"), wholeValue(out.given)},
            {QStringLiteral("kept"), wholeValue(out.kept)},
            {QStringLiteral("broken"), wholeValue(out.broken)},
            {QStringLiteral("came_back"), wholeValue(out.cameBack)},
            {QStringLiteral("takings"), out.takings.whole()},
            {QStringLiteral("sold_without_price"), wholeValue(out.unpriced)}};
}

QJsonObject fairObject(const FairSheet& sheet) {
    QJsonArray rows;
    for (const FairRow& row : sheet.rows)
        rows.append(QJsonObject{{QStringLiteral("kind"), fromUtf8(row.kind.name.text())},
                                {QStringLiteral("code"), orNull(row.code)},
                                {QStringLiteral("packed"), wholeValue(row.line.packed.value())},
                                {QStringLiteral("price"), moneyValue(row.line.each)},
                                {QStringLiteral("home"), orNull(row.line.home)},
                                {QStringLiteral("broken"), orNull(row.line.broken)},
                                {QStringLiteral("given"), orNull(row.line.given)},
                                {QStringLiteral("sold"), orNull(row.sold)},
                                {QStringLiteral("takings"), moneyValue(row.takings)},
                                {QStringLiteral("ran_out"), row.ranOut},
                                {QStringLiteral("packed_before"), orNull(row.packedBefore)},
                                {QStringLiteral("sold_before"), orNull(row.soldBefore)}});
    return {{QStringLiteral("fair"), fromUtf8(sheet.fair.name.text())},
            {QStringLiteral("on"), fromUtf8(isoText(sheet.fair.on))},
            {QStringLiteral("place"), orNull(sheet.fair.place)},
            {QStringLiteral("over_on"), orNull(sheet.fair.closed)},
            {QStringLiteral("packed"), wholeValue(sheet.packed)},
            {QStringLiteral("sold"),
             sheet.fair.closed ? QJsonValue(wholeValue(sheet.sold)) : QJsonValue()},
            {QStringLiteral("takings"),
             sheet.fair.closed ? QJsonValue(sheet.takings.whole()) : QJsonValue()},
            {QStringLiteral("sold_without_price"), wholeValue(sheet.unpriced)},
            {QStringLiteral("change"), moneyValue(sheet.fair.change)},
            {QStringLiteral("cash"), moneyValue(sheet.fair.cash)},
            {QStringLiteral("cash_less_change"), moneyValue(sheet.earned)},
            {QStringLiteral("difference"), moneyValue(sheet.difference)},
            {QStringLiteral("rows"), rows}};
}

QJsonObject bulkObject(const BulkTotals& bulk) {
    return {{QStringLiteral("sold_g"), wholeValue(bulk.sold.grams())},
            {QStringLiteral("given_g"), wholeValue(bulk.given.grams())},
            {QStringLiteral("kept_g"), wholeValue(bulk.kept.grams())},
            {QStringLiteral("spilled_g"), wholeValue(bulk.broken.grams())},
            {QStringLiteral("came_back_g"), wholeValue(bulk.cameBack.grams())},
            {QStringLiteral("takings"), bulk.takings.whole()},
            {QStringLiteral("sales_without_price"), bulk.unpriced}};
}

QJsonObject salesObject(const Sales& all) {
    QJsonArray kinds;
    for (const KindTotals& each : all.kinds) {
        QJsonObject object = totalsObject(each.out);
        object.insert(QStringLiteral("kind"), fromUtf8(each.kind.name.text()));
        object.insert(QStringLiteral("none_left_since"), orNull(each.ranOut));
        kinds.append(object);
    }
    QJsonArray places;
    for (const PlaceTotals& each : all.places) {
        QJsonObject object = totalsObject(each.out);
        object.insert(QStringLiteral("place"), orNull(each.place));
        places.append(object);
    }
    QJsonArray months;
    for (const MonthTotals& each : all.months) {
        QJsonObject object = totalsObject(each.out);
        object.insert(QStringLiteral("month"), static_cast<int>(each.month));
        months.append(object);
    }
    QJsonArray fairs;
    for (const FairSheet& each : all.fairs) fairs.append(fairObject(each));
    QJsonArray wishes;
    for (const Wish& each : all.wishes)
        wishes.append(QJsonObject{{QStringLiteral("kind"), fromUtf8(each.kind.name.text())},
                                  {QStringLiteral("packed"), wholeValue(each.packed)},
                                  {QStringLiteral("sold"), wholeValue(each.sold)},
                                  {QStringLiteral("fair"), fromUtf8(each.fair.name.text())},
                                  {QStringLiteral("on"), fromUtf8(isoText(each.fair.on))}});
    return {{QStringLiteral("year"), all.year},
            {QStringLiteral("until"), fromUtf8(isoText(all.until))},
            {QStringLiteral("currency"), orNull(all.currency)},
            {QStringLiteral("all"), totalsObject(all.all)},
            {QStringLiteral("bulk"), bulkObject(all.bulk)},
            {QStringLiteral("wax"), bulkObject(all.wax)},
            {QStringLiteral("propolis"), bulkObject(all.propolis)},
            {QStringLiteral("kinds"), kinds},
            {QStringLiteral("places"), places},
            {QStringLiteral("months"), months},
            {QStringLiteral("fairs"), fairs},
            {QStringLiteral("ran_out"), wishes}};
}

int runSales(Context& context) {
    const Season season = seasonToRead(context);
    const Read& file = season.read();
    const Day today = context.clock.today();
    int year = yearOf(today);
    if (const auto asked = context.arguments.value("season")) {
        bool isYear = false;
        year = asked->toInt(&isYear);
        if (!isYear || !makeDay(year, 1, 1))
            return refuse(context,
                          Refusal{Code::WrongType,
                                  "season",
                                  {{"wanted", "a year"}, {"value", asked->toStdString()}}});
    }
    const OneState still(file);
    const Sales all = sales(file, year, today);
    if (context.json())
        printJson(context, salesObject(all));
    else
        context.streams.out << pageText(salesPage(file, all));
    return Done;
}

/// The fair named, else the one that is not over, else the newest.
Result<Fair> fairAsked(const Context& context, const Read& file) {
    if (const auto name = context.arguments.value("fair")) {
        const auto found = findNamed(
            file, Fair::table, NameQuery{.name = name->toStdString(), .on = context.clock.today()});
        if (!found) return Refusal{found.error().code, "fair", {{"name", name->toStdString()}}};
        return *file.find(Id<Fair>{*found});
    }
    if (const auto fair = fairToShow(file)) return *fair;
    return Refusal{Code::Missing, "fair", {}};
}

int runFair(Context& context) {
    const Season season = seasonToRead(context);
    const Read& file = season.read();
    const auto print = context.arguments.value("print");
    const bool cards = print == QStringLiteral("price-cards");
    if (print && !cards && print != QStringLiteral("packing-list"))
        return refuse(context, noSheet(*print, "packing-list, price-cards"));
    const OneState still(file);
    const auto fair = fairAsked(context, file);
    if (!fair) return refuse(context, fair.error());
    const FairSheet sheet = fairSheet(file, *fair);
    const auto why =
        context.arguments.has("why") ? explainFair(file, *fair) : std::vector<Explained>();
    if (context.json()) {
        QJsonObject object = fairObject(sheet);
        if (context.arguments.has("why")) object.insert(QStringLiteral("why"), whyArray(why));
        printJson(context, object);
        return Done;
    }
    context.streams.out << pageText(cards ? fairCardsPage(file, sheet) : fairPage(file, sheet));
    printWhy(context, why);
    return Done;
}

}  // namespace

std::vector<Command> goodsCommands() {
    return {
        {"jars",
         "FILE",
         "full jars and candles by kind and filling, empty jars and lids",
         1,
         1,
         {{"print", "SHEET", "price-list or price-cards"},
          {"why", nullptr, "how the net mass of each filling was judged"}},
         &runJars},
        {"sales",
         "FILE",
         "what a year sold, gave away, kept and broke, by kind, place and month",
         1,
         1,
         {{"season", "YEAR", "another year"}},
         &runSales},
        {"fair",
         "FILE",
         "the box for a fair and what was sold there",
         1,
         1,
         {{"fair", "NAME", "which fair; without it the one not over, or the newest"},
          {"print", "SHEET", "packing-list or price-cards"},
          {"why", nullptr, "how sold, takings and cash came about"}},
         &runFair},
    };
}

}  // namespace combwright::cli
