#include "core/storage/queries/wax_names.h"

#include "core/model/wax/candle.h"
#include "core/model/wax/hive_goods.h"

namespace combwright {
namespace {

template <class Record>
std::vector<std::int64_t> byName(const Read& file, const std::string& text) {
    std::vector<std::int64_t> found;
    const auto name = Name::of(text);
    if (!name) return found;
    for (const Record& each : file.where<Record>({is("name", *name)}))
        found.push_back(each.id.number);
    return found;
}

template <class Record>
std::optional<std::string> nameIn(const Read& file, std::int64_t id) {
    const auto record = file.find(Id<Record>{id});
    return record ? std::optional(record->name.text()) : std::nullopt;
}

/// A name is used again once its mould is gone: the one there is that day is meant, else all.
std::vector<std::int64_t> mouldsOf(const Read& file, const NameQuery& query) {
    auto found = byName<Mould>(file, query.name);
    if (found.size() < 2) return found;
    std::vector<std::int64_t> there;
    for (const std::int64_t id : found)
        if (const auto mould = file.find(Id<Mould>{id});
            mould && mould->since <= query.on && (!mould->gone || query.on < *mould->gone))
            there.push_back(id);
    return there.empty() ? found : there;
}

std::vector<std::int64_t> poursOf(const Read& file, const NameQuery& query) {
    std::optional<Pour> newest;
    for (const std::int64_t mould : byName<Mould>(file, query.name))
        for (const Pour& pour :
             file.where<Pour>({is("mould", Id<Mould>{mould}), isUpTo("on_day", query.on)}))
            if (!newest || newest->on <= pour.on) newest = pour;
    return newest ? std::vector{newest->id.number} : std::vector<std::int64_t>{};
}

std::vector<std::int64_t> wishesOf(const Read& file, const NameQuery& query) {
    std::optional<CandleWish> next;
    for (const std::int64_t kind : byName<GoodsKind>(file, query.name))
        for (const CandleWish& wish :
             file.where<CandleWish>({is("goods_kind", Id<GoodsKind>{kind}), isUnknown("dropped")}))
            if (wish.by >= query.on && (!next || wish.by < next->by)) next = wish;
    return next ? std::vector{next->id.number} : std::vector<std::int64_t>{};
}

std::vector<std::int64_t> heatOf(const Read& file, const NameQuery& query) {
    std::optional<HeatSession> newest;
    for (const HeatSession& each : file.where<HeatSession>({isUpTo("on_day", query.on)}))
        if (each.what.text() == query.name && (!newest || newest->begun <= each.begun))
            newest = each;
    return newest ? std::vector{newest->id.number} : std::vector<std::int64_t>{};
}

}  // namespace

bool isWaxNamed(std::string_view table) {
    return table == WaxBatch::table || table == WaxBlock::table || table == Mould::table ||
           table == HiveProject::table || table == Pour::table || table == CandleWish::table ||
           table == HeatSession::table;
}

std::vector<std::int64_t> waxNamed(const Read& file, std::string_view table,
                                   const NameQuery& query) {
    if (table == WaxBatch::table) return byName<WaxBatch>(file, query.name);
    if (table == WaxBlock::table) return byName<WaxBlock>(file, query.name);
    if (table == Mould::table) return mouldsOf(file, query);
    if (table == HiveProject::table) return byName<HiveProject>(file, query.name);
    if (table == Pour::table) return poursOf(file, query);
    if (table == CandleWish::table) return wishesOf(file, query);
    if (table == HeatSession::table) return heatOf(file, query);
    return {};
}

std::optional<std::string> waxNameOf(const Read& file, std::string_view table, std::int64_t id) {
    if (table == WaxBatch::table) return nameIn<WaxBatch>(file, id);
    if (table == WaxBlock::table) return nameIn<WaxBlock>(file, id);
    if (table == Mould::table) return nameIn<Mould>(file, id);
    if (table == HiveProject::table) return nameIn<HiveProject>(file, id);
    return std::nullopt;
}

}  // namespace combwright
