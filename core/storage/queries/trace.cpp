#include "core/storage/queries/trace.h"

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

struct VesselSets {
    std::string buckets;
    std::string lots;
};

VesselSets vesselSets(const std::vector<Vessel>& vessels) {
    std::vector<Id<Bucket>> buckets;
    std::vector<Id<Lot>> lots;
    for (const Vessel& each : vessels) {
        if (each.bucket) buckets.push_back(*each.bucket);
        if (each.lot) lots.push_back(*each.lot);
    }
    return {idSet(buckets), idSet(lots)};
}

/// The rows a query names, in its order.
template <class Record>
std::vector<Record> rowsNamed(const Read& file, Statement& statement) {
    std::vector<Id<Record>> ids;
    while (statement.next()) ids.push_back(Id<Record>{statement.number(0)});
    std::vector<Record> records;
    for (const Id<Record> id : ids)
        if (auto record = file.find(id)) records.push_back(*std::move(record));
    return records;
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

template <class Record>
std::vector<Record> leaving(const Read& file, const std::vector<Vessel>& vessels,
                            std::string_view sql) {
    const VesselSets sets = vesselSets(vessels);
    Statement& statement = file.prepared(sql);
    statement.bind(std::string_view(sets.buckets)).bind(std::string_view(sets.lots)).run();
    return rowsNamed<Record>(file, statement);
}

template <class Record>
std::vector<Record> ofFillings(const Read& file, const std::vector<Id<Bottling>>& fillings,
                               std::string_view sql) {
    const std::string set = idSet(fillings);
    Statement& statement = file.prepared(sql);
    statement.bind(std::string_view(set)).run();
    return rowsNamed<Record>(file, statement);
}

template <class Record>
std::vector<Record> ofNoFilling(const Read& file, const std::vector<Id<GoodsKind>>& kinds, Day from,
                                std::string_view sql) {
    const std::string set = idSet(kinds);
    const std::string day = isoText(from);
    Statement& statement = file.prepared(sql);
    statement.bind(std::string_view(set)).bind(std::string_view(day)).run();
    return rowsNamed<Record>(file, statement);
}

}  // namespace

std::vector<LotPart> partsBehind(const Read& file, const std::vector<Id<Lot>>& lots) {
    const std::string set = idSet(lots);
    Statement& statement = file.prepared(
        "WITH RECURSIVE behind(lot) AS (SELECT value FROM json_each(?) UNION "
        "SELECT lot_part.from_lot_id FROM behind JOIN lot_part ON lot_part.lot_id = behind.lot "
        "WHERE lot_part.from_lot_id IS NOT NULL) "
        "SELECT id, lot_id, bucket_id, from_lot_id, on_day, mass_g, how FROM lot_part "
        "WHERE lot_id IN (SELECT lot FROM behind) ORDER BY id");
    statement.bind(std::string_view(set)).run();
    return partsRead(statement);
}

std::vector<LotPart> partsBeyond(const Read& file, const std::vector<Vessel>& vessels) {
    const VesselSets sets = vesselSets(vessels);
    Statement& statement = file.prepared(
        "WITH RECURSIVE beyond(lot) AS ("
        "SELECT lot_id FROM lot_part WHERE bucket_id IN (SELECT value FROM json_each(?)) UNION "
        "SELECT lot_id FROM lot_part WHERE from_lot_id IN (SELECT value FROM json_each(?)) UNION "
        "SELECT lot_part.lot_id FROM beyond JOIN lot_part ON lot_part.from_lot_id = beyond.lot) "
        "SELECT id, lot_id, bucket_id, from_lot_id, on_day, mass_g, how FROM lot_part "
        "WHERE lot_id IN (SELECT lot FROM beyond) ORDER BY id");
    statement.bind(std::string_view(sets.buckets)).bind(std::string_view(sets.lots)).run();
    return partsRead(statement);
}

std::vector<Bottling> fillingsFrom(const Read& file, const std::vector<Vessel>& vessels) {
    return leaving<Bottling>(file, vessels,
                             "SELECT id FROM bottling WHERE bucket_id IN (SELECT value FROM "
                             "json_each(?)) OR lot_id IN (SELECT value FROM json_each(?)) "
                             "ORDER BY id");
}

std::vector<GoingOut> bulkFrom(const Read& file, const std::vector<Vessel>& vessels) {
    return leaving<GoingOut>(file, vessels,
                             "SELECT id FROM going_out WHERE bucket_id IN (SELECT value FROM "
                             "json_each(?)) OR lot_id IN (SELECT value FROM json_each(?)) "
                             "ORDER BY on_day, id");
}

std::vector<GoingOut> goneOf(const Read& file, const std::vector<Id<Bottling>>& fillings) {
    return ofFillings<GoingOut>(file, fillings,
                                "SELECT id FROM going_out WHERE bottling_id IN (SELECT value FROM "
                                "json_each(?)) ORDER BY on_day, id");
}

std::vector<FairLine> atFairsOf(const Read& file, const std::vector<Id<Bottling>>& fillings) {
    return ofFillings<FairLine>(file, fillings,
                                "SELECT id FROM fair_line WHERE bottling_id IN (SELECT value FROM "
                                "json_each(?)) ORDER BY id");
}

std::vector<GoingOut> goneOfNoFilling(const Read& file, const std::vector<Id<GoodsKind>>& kinds,
                                      Day from) {
    return ofNoFilling<GoingOut>(file, kinds, from,
                                 "SELECT id FROM going_out WHERE bottling_id IS NULL AND "
                                 "goods_kind_id IN (SELECT value FROM json_each(?)) AND "
                                 "on_day >= ? ORDER BY on_day, id");
}

std::vector<FairLine> atFairsOfNoFilling(const Read& file, const std::vector<Id<GoodsKind>>& kinds,
                                         Day from) {
    return ofNoFilling<FairLine>(
        file, kinds, from,
        "SELECT fair_line.id FROM fair_line JOIN fair ON fair.id = fair_line.fair_id WHERE "
        "fair_line.bottling_id IS NULL AND fair_line.goods_kind_id IN (SELECT value FROM "
        "json_each(?)) AND fair.on_day >= ? ORDER BY fair_line.id");
}

}  // namespace combwright
