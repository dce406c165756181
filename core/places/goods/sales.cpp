#include "core/places/goods/sales.h"

#include <algorithm>
#include <functional>
#include <map>
#include <set>

#include "core/model/wax/block.h"
#include "core/model/wax/hive_goods.h"
#include "core/places/goods/goods.h"
#include "core/storage/queries/goods_shelf.h"

namespace combwright {
namespace {

/// Goods that left, whichever way.
struct OutLine {
    Day on;
    OutHow how = OutHow::Sold;
    Id<GoodsKind> kind;
    std::int64_t count = 0;
    std::optional<Money> each;
    std::string place;
};

void addOut(OutTotals& totals, const OutLine& line) {
    switch (line.how) {
        case OutHow::Sold:
            totals.sold += line.count;
            if (line.each)
                totals.takings += *line.each * line.count;
            else
                totals.unpriced += line.count;
            break;
        case OutHow::Given:
            totals.given += line.count;
            break;
        case OutHow::Kept:
            totals.kept += line.count;
            break;
        case OutHow::Broken:
            totals.broken += line.count;
            break;
        case OutHow::CameBack:
            totals.cameBack += line.count;
            if (line.each) totals.takings -= *line.each * line.count;
            break;
    }
}

void addBulk(BulkTotals& totals, const GoingOut& out) {
    const auto middle = out.mass ? out.mass->middle() : std::nullopt;
    totals.add(out.how, Mass::roundedGrams(middle.value_or(0)), out.each);
}

/// None where it did not leave: it was poured, melted again or lost.
std::optional<OutHow> outOf(WaxWent went) {
    switch (went) {
        case WaxWent::Sold:
            return OutHow::Sold;
        case WaxWent::Given:
        case WaxWent::Traded:
            return OutHow::Given;
        case WaxWent::Poured:
        case WaxWent::MeltedAgain:
        case WaxWent::Lost:
            return std::nullopt;
    }
    return std::nullopt;
}

std::optional<OutHow> outOf(PropolisWent went) {
    switch (went) {
        case PropolisWent::Sold:
            return OutHow::Sold;
        case PropolisWent::Given:
            return OutHow::Given;
        case PropolisWent::Kept:
            return OutHow::Kept;
        case PropolisWent::Lost:
            return OutHow::Broken;
        case PropolisWent::Scraped:
        case PropolisWent::Trapped:
            return std::nullopt;
    }
    return std::nullopt;
}

/// A fair that is over, as lines like those out of the door.
void addFairLines(const FairSheet& sheet, std::vector<OutLine>& lines) {
    const std::string place = sheet.fair.place.empty() ? sheet.fair.name.text() : sheet.fair.place;
    for (const FairRow& row : sheet.rows) {
        const auto add = [&](OutHow how, std::int64_t count, std::optional<Money> each) {
            if (count > 0) lines.push_back({sheet.fair.on, how, row.kind.id, count, each, place});
        };
        add(OutHow::Sold, row.sold.value_or(0), row.line.each);
        add(OutHow::Given, row.line.given ? row.line.given->value() : 0, std::nullopt);
        add(OutHow::Broken, row.line.broken ? row.line.broken->value() : 0, std::nullopt);
    }
}

/// The last day something of the kind left, where the shelf has been bare since.
std::optional<Day> ranOutOn(const Read& file, const GoodsKind& kind,
                            const std::vector<OutLine>& lines, Day until) {
    const GoodsShelf shelf = goodsShelf(file, kind, until);
    if (shelf.left > 0 || shelf.atFair > 0) return std::nullopt;
    std::optional<Day> last;
    for (const OutLine& each : lines)
        if (each.kind == kind.id && each.how == OutHow::Sold && (!last || each.on > *last))
            last = each.on;
    return last;
}

void addTotals(const Read& file, const std::vector<OutLine>& lines, Sales& sales) {
    std::map<std::int64_t, OutTotals> byKind;
    std::map<std::string, OutTotals> byPlace;
    std::map<unsigned, OutTotals> byMonth;
    for (const OutLine& each : lines) {
        addOut(byKind[each.kind.number], each);
        addOut(byPlace[each.place], each);
        addOut(byMonth[monthOf(each.on)], each);
        addOut(sales.all, each);
    }
    for (const GoodsKind& kind : file.all<GoodsKind>()) {
        const auto found = byKind.find(kind.id.number);
        if (found != byKind.end())
            sales.kinds.push_back({kind, found->second, ranOutOn(file, kind, lines, sales.until)});
    }
    for (const auto& [place, out] : byPlace) sales.places.push_back({place, out});
    std::stable_sort(
        sales.places.begin(), sales.places.end(),
        [](const PlaceTotals& a, const PlaceTotals& b) { return a.out.takings > b.out.takings; });
    for (const auto& [month, out] : byMonth) sales.months.push_back({month, out});
}

}  // namespace

void BulkTotals::add(OutHow how, Mass mass, const std::optional<Money>& price) {
    any = true;
    switch (how) {
        case OutHow::Sold:
            sold += mass;
            if (price)
                takings += *price;
            else
                ++unpriced;
            break;
        case OutHow::Given:
            given += mass;
            break;
        case OutHow::Kept:
            kept += mass;
            break;
        case OutHow::Broken:
            broken += mass;
            break;
        case OutHow::CameBack:
            cameBack += mass;
            if (price) takings -= *price;
            break;
    }
}

Sales sales(const Read& file, int year, Day today) {
    Sales sales;
    sales.year = year;
    const Day last = *makeDay(year, 12, 31);
    sales.until = std::min(last, today);
    sales.currency = currencyOf(file);
    std::vector<OutLine> lines;
    const auto within = [&](Day on) { return yearOf(on) == year && on <= sales.until; };
    for (const GoingOut& each : file.all<GoingOut>()) {
        if (!within(each.on)) continue;
        if (each.kind)
            lines.push_back({each.on, each.how, *each.kind, each.count ? each.count->value() : 0,
                             each.each, each.place});
        else
            addBulk(sales.bulk, each);
    }
    for (const WaxUse& each : file.all<WaxUse>())
        if (const auto how = outOf(each.went); how && within(each.on))
            sales.wax.add(*how, each.mass, each.price);
    for (const PropolisMove& each : file.all<PropolisMove>()) {
        const auto mass = each.mass ? each.mass->middle() : std::nullopt;
        if (const auto how = outOf(each.went); how && within(each.on))
            sales.propolis.add(*how, Mass::roundedGrams(mass.value_or(0)), each.price);
    }
    for (const Fair& each : file.all<Fair>()) {
        if (!each.closed || !within(each.on) || *each.closed > today) continue;
        sales.fairs.push_back(fairSheet(file, each));
        addFairLines(sales.fairs.back(), lines);
    }
    std::stable_sort(sales.fairs.begin(), sales.fairs.end(),
                     [](const FairSheet& a, const FairSheet& b) { return a.fair.on < b.fair.on; });
    addTotals(file, lines, sales);
    sales.wishes = wishes(file, year, today);
    return sales;
}

std::vector<int> salesYears(const Read& file, Day today) {
    std::set<int, std::greater<>> years{yearOf(today)};
    for (const GoingOut& each : file.all<GoingOut>())
        if (each.on <= today) years.insert(yearOf(each.on));
    for (const Fair& each : file.all<Fair>())
        if (each.closed && each.on <= today) years.insert(yearOf(each.on));
    for (const WaxUse& each : file.all<WaxUse>())
        if (each.on <= today && outOf(each.went)) years.insert(yearOf(each.on));
    for (const PropolisMove& each : file.all<PropolisMove>())
        if (each.on <= today && outOf(each.went)) years.insert(yearOf(each.on));
    return {years.begin(), years.end()};
}

}  // namespace combwright
