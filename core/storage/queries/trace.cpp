#include "core/storage/queries/trace.h"

#include <algorithm>
#include <string>

namespace combwright {
namespace {

/// "[3,7]": a set of rows bound as one value.
template <class Record>
std::string idSet(const std::vector<Id<Record>>& ids) {
    std::string set = "[";
    for (const Id<Record>& id : ids) set += (set.size() > 1 ? "," : "") + std::to_string(id.number);
    return set + "]";
}

std::vector<LotPart> partsRead(Statement& statement) {
    std::vector<LotPart> parts;
    while (statement.next()) {
        LotPart part;
        part.id = Id<LotPart>{statement.number(0)};
        part.lot = Id<Lot>{statement.number(1)};
        if (!statement.isNull(2)) part.bucket = Id<Bucket>{statement.number(2)};
        if (!statement.isNull(3)) part.from = Id<Lot>{statement.number(3)};
        if (const auto day = parseDay(statement.text(4))) part.on = *day;
        part.mass = Mass::grams(statement.number(5));
        part.how = Codec<How>::unpack(statement.value(6)).value_or(How::Unknown);
        parts.push_back(part);
    }
    return parts;
}

/// The rows a query names.
template <class Record>
std::vector<Record> rowsNamed(const Read& file, Statement& statement) {
    std::vector<Id<Record>> ids;
    while (statement.next()) ids.push_back(Id<Record>{statement.number(0)});
    return file.whereAny<Record>("id", ids);
}

void byDay(std::vector<GoingOut>& gone) {
    std::stable_sort(gone.begin(), gone.end(),
                     [](const GoingOut& a, const GoingOut& b) { return a.on < b.on; });
}

/// With their fairs; those that were held later are left out.
std::vector<PackedLine> withFairs(const Read& file, std::vector<FairLine> lines, Day until) {
    std::vector<Id<Fair>> ids;
    for (const FairLine& each : lines)
        if (std::find(ids.begin(), ids.end(), each.fair) == ids.end()) ids.push_back(each.fair);
    const auto fairs = file.findAny(ids);
    std::vector<PackedLine> packed;
    for (FairLine& each : lines) {
        const auto fair = fairs.find(each.fair.number);
        if (fair == fairs.end()) continue;
        // When a box was packed nobody writes down; one that is not over yet is packed.
        if (fair->second.on > until && fair->second.closed) continue;
        if (fair->second.closed && *fair->second.closed > until) {
            each.home.reset();
            each.broken.reset();
            each.given.reset();
        }
        packed.push_back({std::move(each), fair->second});
    }
    return packed;
}

}  // namespace

std::vector<LotPart> partsBehind(const Read& file, const std::vector<Id<Lot>>& lots, Day until) {
    const std::string set = idSet(lots);
    const std::string last = isoText(until);
    Statement& statement = file.prepared(
        "WITH RECURSIVE behind(lot) AS (SELECT value FROM json_each(?1) UNION "
        "SELECT lot_part.from_lot_id FROM behind JOIN lot_part ON lot_part.lot_id = behind.lot "
        "WHERE lot_part.from_lot_id IS NOT NULL AND lot_part.on_day <= ?2) "
        "SELECT id, lot_id, bucket_id, from_lot_id, on_day, mass_g, how FROM lot_part "
        "WHERE lot_id IN (SELECT lot FROM behind) AND on_day <= ?2 ORDER BY id");
    statement.bind(std::string_view(set)).bind(std::string_view(last)).run();
    return partsRead(statement);
}

std::vector<LotPart> partsBeyond(const Read& file, const std::vector<Vessel>& vessels, Day until) {
    std::vector<Id<Bucket>> buckets;
    std::vector<Id<Lot>> lots;
    for (const Vessel& each : vessels) {
        if (each.bucket) buckets.push_back(*each.bucket);
        if (each.lot) lots.push_back(*each.lot);
    }
    const std::string inBuckets = idSet(buckets);
    const std::string inLots = idSet(lots);
    const std::string last = isoText(until);
    Statement& statement = file.prepared(
        "WITH RECURSIVE beyond(lot) AS ("
        "SELECT lot_id FROM lot_part WHERE bucket_id IN (SELECT value FROM json_each(?1)) "
        "AND on_day <= ?3 UNION "
        "SELECT lot_id FROM lot_part WHERE from_lot_id IN (SELECT value FROM json_each(?2)) "
        "AND on_day <= ?3 UNION "
        "SELECT lot_part.lot_id FROM beyond JOIN lot_part ON lot_part.from_lot_id = beyond.lot "
        "WHERE lot_part.on_day <= ?3) "
        "SELECT id, lot_id, bucket_id, from_lot_id, on_day, mass_g, how FROM lot_part "
        "WHERE lot_id IN (SELECT lot FROM beyond) AND on_day <= ?3 ORDER BY id");
    statement.bind(std::string_view(inBuckets))
        .bind(std::string_view(inLots))
        .bind(std::string_view(last))
        .run();
    return partsRead(statement);
}

std::vector<GoingOut> goneOf(const Read& file, const std::vector<Id<Bottling>>& fillings,
                             Day until) {
    auto gone = file.whereAny<GoingOut>("bottling", fillings);
    std::erase_if(gone, [until](const GoingOut& each) { return each.on > until; });
    byDay(gone);
    return gone;
}

std::vector<GoingOut> goneOfNoFilling(const Read& file, const std::vector<Id<GoodsKind>>& kinds,
                                      Day from, Day until) {
    const std::string set = idSet(kinds);
    const std::string first = isoText(from);
    const std::string last = isoText(until);
    Statement& statement = file.prepared(
        "SELECT id FROM going_out WHERE bottling_id IS NULL AND goods_kind_id IN "
        "(SELECT value FROM json_each(?)) AND on_day >= ? AND on_day <= ?");
    statement.bind(std::string_view(set))
        .bind(std::string_view(first))
        .bind(std::string_view(last))
        .run();
    auto gone = rowsNamed<GoingOut>(file, statement);
    byDay(gone);
    return gone;
}

std::vector<PackedLine> packedOf(const Read& file, const std::vector<Id<Bottling>>& fillings,
                                 Day until) {
    return withFairs(file, file.whereAny<FairLine>("bottling", fillings), until);
}

std::vector<PackedLine> packedOfNoFilling(const Read& file, const std::vector<Id<GoodsKind>>& kinds,
                                          Day from, Day until) {
    const std::string set = idSet(kinds);
    const std::string first = isoText(from);
    Statement& statement = file.prepared(
        "SELECT fair_line.id FROM fair_line JOIN fair ON fair.id = fair_line.fair_id WHERE "
        "fair_line.bottling_id IS NULL AND fair_line.goods_kind_id IN (SELECT value FROM "
        "json_each(?)) AND fair.on_day >= ?");
    statement.bind(std::string_view(set)).bind(std::string_view(first)).run();
    return withFairs(file, rowsNamed<FairLine>(file, statement), until);
}

}  // namespace combwright
