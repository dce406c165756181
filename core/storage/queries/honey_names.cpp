#include "core/storage/queries/honey_names.h"

#include <algorithm>
#include <type_traits>

#include "core/model/honey/going_out.h"
#include "core/storage/queries/vessels.h"

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

/// The day a record is called by; the query's own where no other is said.
Result<Day> dayCalled(std::string_view table, const NameQuery& query) {
    if (query.name.empty()) return query.on;
    if (const auto day = parseDay(query.name)) return *day;
    return Refusal{Code::NotADay, std::string(table), {{"value", query.name}}};
}

/// The bucket or lot of the query; none where it names neither.
Result<std::optional<Vessel>> vesselCalled(const Read& file, const NameQuery& query) {
    if (query.bucket) {
        const auto id =
            findNamed(file, Bucket::table,
                      NameQuery{.name = *query.bucket, .run = query.run, .on = query.on});
        if (!id) return id.error();
        return std::optional(Vessel{Id<Bucket>{*id}, std::nullopt});
    }
    if (query.lot) {
        const auto id = findNamed(file, Lot::table, NameQuery{.name = *query.lot, .on = query.on});
        if (!id) return id.error();
        return std::optional(Vessel{std::nullopt, Id<Lot>{*id}});
    }
    return std::optional<Vessel>{};
}

Result<std::optional<Id<Bottling>>> fillingCalled(const Read& file, const NameQuery& query) {
    if (!query.bottling) return std::optional<Id<Bottling>>{};
    const auto id =
        findNamed(file, Bottling::table, NameQuery{.name = *query.bottling, .on = query.on});
    if (!id) return id.error();
    return std::optional(Id<Bottling>{*id});
}

template <class Record>
std::vector<Record> ofThat(const Read& file, const Vessel& vessel) {
    return vessel.bucket ? file.where<Record>({is("bucket", *vessel.bucket)})
                         : file.where<Record>({is("lot", *vessel.lot)});
}

/// Of a day, or done that way: the records of a vessel that are meant.
template <class Record>
Result<std::vector<std::int64_t>> datedOf(const Read& file, const NameQuery& query) {
    const auto vessel = vesselCalled(file, query);
    if (!vessel) return vessel.error();
    if (!*vessel) return Refusal{Code::Missing, "bucket", {}};
    std::vector<std::int64_t> found;
    if constexpr (std::is_same_v<Record, HoneyStep>)
        if (const auto work = Codec<HoneyWork>::unpack(Value{query.name})) {
            for (const HoneyStep& each : ofThat<HoneyStep>(file, **vessel))
                if (each.work == *work) found.push_back(each.id.number);
            return found;
        }
    const auto day = dayCalled(Record::table, query);
    if (!day) return day.error();
    for (const Record& each : ofThat<Record>(file, **vessel))
        if (each.on == *day) found.push_back(each.id.number);
    return found;
}

Result<std::vector<std::int64_t>> partsCalled(const Read& file, const NameQuery& query) {
    if (!query.lot) return Refusal{Code::Missing, "lot", {}};
    const auto lot = findNamed(file, Lot::table, NameQuery{.name = *query.lot, .on = query.on});
    if (!lot) return lot.error();
    std::vector<std::int64_t> found;
    for (const LotPart& each : file.where<LotPart>({is("lot", Id<Lot>{*lot})})) {
        const auto bucket = file.find(each.bucket);
        const std::string name = nameOf(file, Vessel{each.bucket, each.from});
        if (name == query.name || (bucket && bucket->mark.text() == query.name))
            found.push_back(each.id.number);
    }
    return found;
}

Result<std::vector<std::int64_t>> jarsCalled(const Read& file, const NameQuery& query) {
    const auto filling = fillingCalled(file, query);
    if (!filling) return filling.error();
    if (!*filling) return Refusal{Code::Missing, "bottling", {}};
    std::vector<std::int64_t> found;
    for (const BottledJars& each : file.where<BottledJars>({is("bottling", **filling)}))
        if (const auto kind = file.find(each.kind); kind && kind->name.text() == query.name)
            found.push_back(each.id.number);
    return found;
}

Result<std::vector<std::int64_t>> complaintsCalled(const Read& file, const NameQuery& query) {
    const auto filling = fillingCalled(file, query);
    if (!filling) return filling.error();
    const auto day = parseDay(query.name);
    std::vector<std::int64_t> found;
    for (const Complaint& each : file.all<Complaint>()) {
        if (*filling && each.bottling != *filling) continue;
        const bool meant = query.name.empty() ? filling->has_value()
                           : day              ? each.on == *day
                                              : each.what.text() == query.name;
        if (meant) found.push_back(each.id.number);
    }
    return found;
}

Result<std::vector<std::int64_t>> goneCalled(const Read& file, const NameQuery& query) {
    const auto day = dayCalled(GoingOut::table, query);
    if (!day) return day.error();
    const auto filling = fillingCalled(file, query);
    if (!filling) return filling.error();
    const auto vessel = vesselCalled(file, query);
    if (!vessel) return vessel.error();
    std::vector<std::int64_t> found;
    for (const GoingOut& each : file.where<GoingOut>({is("on_day", *day)}))
        if ((!*filling || each.bottling == *filling) && (!*vessel || vesselOf(each) == **vessel))
            found.push_back(each.id.number);
    return found;
}

}  // namespace

bool isOfHoney(std::string_view table) {
    return table == WaterReading::table || table == HoneyStep::table || table == HoneyLeft::table ||
           table == LotPart::table || table == BottledJars::table || table == Complaint::table ||
           table == GoingOut::table;
}

Result<std::vector<std::int64_t>> ofHoneyNamed(const Read& file, std::string_view table,
                                               const NameQuery& query) {
    if (table == WaterReading::table) return datedOf<WaterReading>(file, query);
    if (table == HoneyStep::table) return datedOf<HoneyStep>(file, query);
    if (table == HoneyLeft::table) return datedOf<HoneyLeft>(file, query);
    if (table == LotPart::table) return partsCalled(file, query);
    if (table == BottledJars::table) return jarsCalled(file, query);
    if (table == Complaint::table) return complaintsCalled(file, query);
    return goneCalled(file, query);
}

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
