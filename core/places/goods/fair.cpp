#include "core/places/goods/fair.h"

#include <algorithm>

#include "core/places/goods/goods.h"
#include "core/storage/queries/goods_shelf.h"

namespace combwright {
namespace {

std::optional<Fair> fairBefore(const Read& file, const Fair& fair) {
    std::optional<Fair> before;
    for (const Fair& each : file.all<Fair>())
        if (each.name == fair.name && each.on < fair.on && each.closed &&
            (!before || each.on > before->on))
            before = each;
    return before;
}

void addBefore(const Read& file, const Fair& before, FairRow& row) {
    for (const FairLine& each : file.where<FairLine>({is("fair", before.id)})) {
        if (each.kind != row.kind.id) continue;
        row.packedBefore = row.packedBefore.value_or(0) + each.packed.value();
        if (const auto sold = soldOf(each)) row.soldBefore = row.soldBefore.value_or(0) + *sold;
    }
}

FairRow fairRow(const Read& file, const Fair& fair, const FairLine& line) {
    FairRow row;
    row.line = line;
    if (const auto kind = file.find(line.kind)) row.kind = *kind;
    if (const auto bottling = file.find(line.bottling)) row.code = bottling->code.text();
    if (fair.closed) row.sold = soldOf(line);
    if (row.sold && line.each) row.takings = *line.each * *row.sold;
    if (row.sold == 0) row.takings = Money{};
    row.ranOut = row.sold && *row.sold > 0 && line.home == Count(0);
    return row;
}

}  // namespace

FairSheet fairSheet(const Read& file, const Fair& fair, Working* working) {
    return fairSheetOf(file, fair, file.where<FairLine>({is("fair", fair.id)}), working);
}

FairSheet fairSheetOf(const Read& file, const Fair& fair, const std::vector<FairLine>& lines,
                      Working* working) {
    FairSheet sheet;
    sheet.fair = fair;
    sheet.before = fairBefore(file, fair);
    sheet.currency = currencyOf(file);
    for (const FairLine& line : lines) {
        FairRow row = fairRow(file, fair, line);
        if (sheet.before) addBefore(file, *sheet.before, row);
        sheet.packed += line.packed.value();
        sheet.sold += row.sold.value_or(0);
        if (!row.sold) ++sheet.notCounted;
        if (row.takings)
            sheet.takings += *row.takings;
        else
            sheet.unpriced += row.sold.value_or(0);
        if (row.sold) {
            note(working, "goods_packed", static_cast<double>(line.packed.value()), "");
            note(working, "goods_home", static_cast<double>(line.home->value()), "");
            note(working, "goods_broken",
                 line.broken ? static_cast<double>(line.broken->value()) : 0.0, "");
            note(working, "goods_given",
                 line.given ? static_cast<double>(line.given->value()) : 0.0, "");
            note(working, "goods_sold", static_cast<double>(*row.sold), "",
                 "packed − home − broken − given");
        }
        sheet.rows.push_back(std::move(row));
    }
    if (fair.closed) note(working, "takings", sheet.takings.whole(), "", "Σ sold · price");
    if (fair.cash && fair.change) {
        sheet.earned = *fair.cash - *fair.change;
        note(working, "cash", fair.cash->whole(), "");
        note(working, "change_money", fair.change->whole(), "");
        note(working, "earned", sheet.earned->whole(), "", "cash − change");
        if (fair.closed && sheet.unpriced == 0 && sheet.notCounted == 0) {
            sheet.difference = *sheet.earned - sheet.takings;
            note(working, "cash_difference", sheet.difference->whole(), "", "earned − takings");
        }
    }
    return sheet;
}

std::vector<Fair> fairs(const Read& file) {
    auto all = file.all<Fair>();
    std::stable_sort(all.begin(), all.end(),
                     [](const Fair& a, const Fair& b) { return a.on > b.on; });
    return all;
}

std::optional<Fair> fairToShow(const Read& file) {
    auto all = fairs(file);
    if (all.empty()) return std::nullopt;
    const auto open = std::find_if(all.begin(), all.end(),
                                   [](const Fair& each) { return !each.closed.has_value(); });
    return open == all.end() ? all.front() : *open;
}

std::vector<Wish> wishes(const Read& file, int year, Day until) {
    std::vector<Wish> all;
    for (const Fair& fair : fairs(file)) {
        if (yearOf(fair.on) != year || !fair.closed || *fair.closed > until) continue;
        // Of two fillings of a kind both must have run out.
        std::vector<Wish> here;
        std::vector<Id<GoodsKind>> cameHome;
        for (const FairRow& row : fairSheet(file, fair).rows) {
            if (row.line.home && row.line.home->value() > 0) cameHome.push_back(row.kind.id);
            const auto same = std::find_if(here.begin(), here.end(), [&](const Wish& each) {
                return each.kind.id == row.kind.id;
            });
            if (same == here.end()) {
                here.push_back({row.kind, row.line.packed.value(), row.sold.value_or(0), fair});
            } else {
                same->packed += row.line.packed.value();
                same->sold += row.sold.value_or(0);
            }
        }
        std::erase_if(here, [&](const Wish& each) {
            return each.sold == 0 ||
                   std::find(cameHome.begin(), cameHome.end(), each.kind.id) != cameHome.end();
        });
        all.insert(all.end(), here.begin(), here.end());
    }
    return all;
}

}  // namespace combwright
