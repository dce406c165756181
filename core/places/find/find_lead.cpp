// Where a record is shown: the place and page its trade belongs to, and the hive and yard where it
// is of one.
#include <algorithm>
#include <string>

#include "core/model/records.h"
#include "core/model/yard/moves.h"
#include "core/model/yard/queen.h"
#include "core/places/find/find.h"
#include "core/storage/queries/hive_days.h"

namespace combwright {
namespace {

using Where = FindLead::Where;
using Page = FindLead::Page;

/// The row another row refers to by that field; none where it refers to none, or is gone.
std::optional<std::int64_t> referred(const Read& file, std::string_view table, std::int64_t row,
                                     std::string_view field) {
    const RecordType* type = findRecordType(table);
    if (!type) return std::nullopt;
    const Fields& fields = type->fields();
    const FieldInfo* wanted = fields.find(field);
    if (!wanted) return std::nullopt;
    const auto rows = file.rows(table, fields, {Match{"id", Value{row}}});
    if (rows.empty()) return std::nullopt;
    const auto at = static_cast<std::size_t>(wanted - &fields[0]);
    const auto* number = std::get_if<std::int64_t>(&rows.front()[at]);
    return number ? std::optional(*number) : std::nullopt;
}

std::optional<std::int64_t> hiveOfQueen(const Read& file, std::int64_t row) {
    std::optional<QueenStay> newest;
    for (const QueenStay& stay : file.where<QueenStay>({is("queen", Id<Queen>{row})}))
        if (!newest || stay.since >= newest->since) newest = stay;
    return newest ? referred(file, "colony", newest->colony.number, "hive") : std::nullopt;
}

/// The hive a record is of: itself, or by a box, a frame or a colony.
std::optional<std::int64_t> hiveOf(const Read& file, std::string_view table, std::int64_t row) {
    if (table == "hive") return row;
    if (table == "queen") return hiveOfQueen(file, row);
    for (const std::string_view field : {"hive", "to_hive"})
        if (const auto hive = referred(file, table, row, field)) return hive;
    for (const std::string_view of : {"colony", "box", "frame"})
        if (const auto other = referred(file, table, row, of))
            if (const auto hive = hiveOf(file, of, *other)) return hive;
    return std::nullopt;
}

FindLead leadOfKind(FindKind kind) {
    switch (kind) {
        case FindKind::Hive:
        case FindKind::Queen:
        case FindKind::Visit:
            return {Where::Yard, Page::Story};
        case FindKind::Box:
            return {Where::Storeroom, Page::Front};
        case FindKind::Health:
            return {Where::Yard, Page::Health};
        case FindKind::Honey:
            return {Where::HoneyRoom, Page::Honey};
        case FindKind::Goods:
            return {Where::HoneyRoom, Page::Jars};
        case FindKind::Wax:
            return {Where::WaxBench, Page::Front};
        case FindKind::Storeroom:
            return {Where::Storeroom, Page::Front};
        case FindKind::Note:
            return {Where::Today, Page::Front};
    }
    return {};
}

/// Records that are shown elsewhere than most of their kind.
FindLead leadOfTable(const FindHit& hit) {
    if (hit.table == "extraction" || hit.table == "set_aside" || hit.table == "room_day")
        return {Where::HoneyRoom, Page::Front};
    if (hit.table == "pull_plan" || hit.table == "truck_item") return {Where::Pull, Page::Front};
    if (hit.table == "crop_note") return {Where::SeasonBook, Page::Front};
    if (hit.table == "fair") return {Where::HoneyRoom, Page::Fair};
    if (hit.table == "feed_stock") return {Where::Yard, Page::Stores};
    if (hit.table == "dead_out") return {Where::Storeroom, Page::Front};
    return leadOfKind(hit.kind);
}

/// To the hive as it stands, or as it last stood where it is closed.
void leadToHive(const Read& file, std::int64_t number, const FindHit& hit, Day today,
                FindLead& lead) {
    const auto hive = file.find(Id<Hive>{number});
    if (!hive) return;
    lead.hive = hive->id;
    if (hive->closed && *hive->closed <= today)
        lead.on = hit.on && *hit.on < *hive->closed ? *hit.on : *hive->closed - days(1);
    lead.yard = hive->yard;
    if (!lead.on) return;
    const auto moves = hiveMovesByHive(file);
    const auto own = moves.find(number);
    if (own != moves.end()) lead.yard = asItWas(*hive, own->second, *lead.on).yard;
}

/// The record and those it names, in the order in which it names them.
std::vector<std::pair<std::string_view, std::int64_t>> recordsNamed(const Read& file,
                                                                    const FindHit& hit) {
    std::vector<std::pair<std::string_view, std::int64_t>> named{{hit.table, hit.row}};
    for (const FieldInfo& field : findRecordType(hit.table)->fields())
        if (field.kind == Kind::Reference)
            if (const auto other = referred(file, hit.table, hit.row, field.name))
                named.emplace_back(field.refersTo, *other);
    // A filling is one, a kind of goods is many.
    std::stable_partition(named.begin(), named.end(),
                          [](const auto& each) { return each.first != "goods_kind"; });
    return named;
}

FindLead leadOf(const Read& file, const FindHit& hit, Day today) {
    FindLead lead = leadOfTable(hit);
    if (hit.table == "visit") {
        const auto yard = referred(file, "visit", hit.row, "yard");
        if (yard) lead.yard = Id<Yard>{*yard};
        lead.on = hit.on;
        lead.page = Page::Sheet;
        return lead;
    }
    if (hit.table == "yard") {
        lead.yard = Id<Yard>{hit.row};
        lead.page = Page::Front;
        return lead;
    }
    if (hit.table == "hold" &&
        (referred(file, "hold", hit.row, "bucket") || referred(file, "hold", hit.row, "lot")))
        return FindLead{Where::HoneyRoom, Page::Honey};
    if (hit.table == "going_out" && (referred(file, "going_out", hit.row, "bucket") ||
                                     referred(file, "going_out", hit.row, "lot")))
        return FindLead{Where::HoneyRoom, Page::Honey};
    if (hit.table == "hold" && referred(file, "hold", hit.row, "bottling"))
        return FindLead{Where::HoneyRoom, Page::Jars};
    const bool ofHives = lead.where == Where::Yard || hit.kind == FindKind::Box;
    const auto hive = ofHives ? hiveOf(file, hit.table, hit.row) : std::nullopt;
    if (hive) {
        // A box that stands on a hive is shown there.
        if (hit.kind == FindKind::Box) lead = {Where::Yard, Page::Front};
        leadToHive(file, *hive, hit, today, lead);
        // What follows of mites and medicines is shown of hives that stand.
        if (lead.on && lead.page == Page::Health) lead.page = Page::Story;
    } else if (hit.table == "hold") {
        lead = {Where::Storeroom, Page::Front};
    }
    return lead;
}

}  // namespace

std::optional<FindLead> findLead(const Read& file, const FindHit& hit, Day today) {
    if (!file.holds(hit.table, hit.row)) return std::nullopt;
    FindLead lead = leadOf(file, hit, today);
    lead.records = recordsNamed(file, hit);
    return lead;
}

}  // namespace combwright
