#include "core/storage/queries/honey_names.h"

#include <algorithm>

#include "core/model/honey/going_out.h"

namespace combwright {
namespace {

template <class Record, class NameOf>
std::vector<std::int64_t> calledSo(const std::vector<Record>& all, const std::string& name,
                                   NameOf nameOf) {
    std::vector<std::int64_t> found;
    for (const Record& each : all)
        if (nameOf(each) == name) found.push_back(each.id.number);
    return found;
}

std::vector<std::int64_t> fairsNamed(const Read& file, const NameQuery& query) {
    std::optional<Fair> meant;
    for (const Fair& each : file.all<Fair>()) {
        if (each.name.text() != query.name) continue;
        const bool isPast = each.on <= query.on;
        const bool nearer = !meant || (isPast ? each.on >= meant->on || meant->on > query.on
                                              : meant->on > query.on && each.on < meant->on);
        if (nearer) meant = each;
    }
    return meant ? std::vector{meant->id.number} : std::vector<std::int64_t>{};
}

template <class Record, class NameOf>
std::optional<std::string> nameFrom(const std::optional<Record>& record, NameOf nameOf) {
    return record ? std::optional(nameOf(*record)) : std::nullopt;
}

}  // namespace

bool isHoneyNamed(std::string_view table) {
    return table == Lot::table || table == GoodsKind::table || table == Bottling::table ||
           table == Fair::table;
}

std::vector<std::int64_t> honeyNamed(const Read& file, std::string_view table,
                                     const NameQuery& query) {
    if (table == Lot::table)
        return calledSo(file.all<Lot>(), query.name,
                        [](const Lot& lot) { return lot.name.text(); });
    if (table == GoodsKind::table)
        return calledSo(file.all<GoodsKind>(), query.name,
                        [](const GoodsKind& kind) { return kind.name.text(); });
    if (table == Bottling::table)
        return calledSo(file.all<Bottling>(), query.name,
                        [](const Bottling& each) { return each.code.text(); });
    if (table == Fair::table) return fairsNamed(file, query);
    return {};
}

std::optional<std::string> honeyNameOf(const Read& file, std::string_view table, std::int64_t id) {
    if (table == Lot::table)
        return nameFrom(file.find(Id<Lot>{id}), [](const Lot& lot) { return lot.name.text(); });
    if (table == GoodsKind::table)
        return nameFrom(file.find(Id<GoodsKind>{id}),
                        [](const GoodsKind& kind) { return kind.name.text(); });
    if (table == Bottling::table)
        return nameFrom(file.find(Id<Bottling>{id}),
                        [](const Bottling& each) { return each.code.text(); });
    if (table == Fair::table)
        return nameFrom(file.find(Id<Fair>{id}), [](const Fair& fair) { return fair.name.text(); });
    return std::nullopt;
}

}  // namespace combwright
