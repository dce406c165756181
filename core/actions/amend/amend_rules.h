// What may be amended of each record, and the rules that hold for it: those of the action that
// recorded it. A list a group of records; amend.cpp looks up the record's own.
#pragma once

#include <functional>
#include <string_view>
#include <vector>

#include "core/exchange/described_json.h"
#include "core/model/yard/yard.h"
#include "core/storage/rows.h"

namespace combwright {

/// A field that is not amended: the action that sets it, or none where it stays for good.
struct Bound {
    std::string_view field;  ///< base name
    std::string_view action;
};

/// How records of one table are amended.
struct AmendType {
    std::string_view table;
    std::function<Result<void>(Write& file, std::int64_t id, const Changes& changes)> amend;
};

std::vector<AmendType> yardAmends();   ///< yard, hive, colony, visit, inspection, task, quiet
std::vector<AmendType> queenAmends();  ///< hive_move, colony_move, queen, its stays and waits
std::vector<AmendType> boxAmends();    ///< box, box_look, frame, frame_check, hold
std::vector<AmendType> benchAmends();  ///< box_review, raw_wax
std::vector<AmendType> storeAmends();  ///< equipment, equipment_count, season_plan, plan_item
std::vector<AmendType> feedAmends();   ///< hive_weighing, feeding, feed_stock, truck_item
std::vector<AmendType>
healthAmends();  ///< finding, medicine, treatment, medicine_disposal, mite_line, phase_day
std::vector<AmendType>
goodsAmends();  ///< goods_kind, packing_stock … bottling, going_out, fair, fair_line
std::vector<AmendType>
honeyAmends();  ///< pull_plan, crop_note, extraction … room_day, clearer_board
std::vector<AmendType> waxAmends();     ///< wax_batch … pour, candle_wish … project_look
std::vector<AmendType> vesselAmends();  ///< lot, lot_part, water_reading, honey_step, honey_left

namespace detail {

/// Refused with Fixed or OtherAction where a bound field is among the changes.
Result<void> demandFree(const Fields& fields, const std::vector<Bound>& bound,
                        const Changes& changes);
/// Refused with NotFound where a reference leads nowhere.
Result<void> demandReferences(const Read& file, const Fields& fields, const Row& row);

}  // namespace detail

/// `settle` sees the record before and after, refuses what may not be, and changes what hangs on
/// it.
template <class Record>
AmendType amends(std::vector<Bound> bound,
                 Result<void> (*settle)(Write& file, const Record& before, Record& after)) {
    const auto amend = [bound = std::move(bound), settle](Write& file, std::int64_t id,
                                                          const Changes& set) -> Result<void> {
        const auto before = file.find(Id<Record>{id});
        if (!before) return Refusal{Code::NotFound, std::string(Record::table), {}};
        const Fields& fields = Record::fields();
        if (auto free = detail::demandFree(fields, bound, set); !free) return free;
        const auto row = changedRow(fields, toRow(*before), set);
        if (!row) return row.error();
        auto after = fromRow<Record>(*row);
        if (!after) return Refusal{Code::WrongType, {}, {}};
        if (toRow(*after) == toRow(*before)) return {};
        if (auto exist = detail::demandReferences(file, fields, *row); !exist) return exist;
        if (auto settled = settle(file, *before, *after); !settled) return settled;
        file.change(*after);
        return {};
    };
    return {Record::table, amend};
}

/// A value that cannot hold beside another.
inline Refusal against(std::string field, std::string other) {
    return Refusal{Code::Contradiction, std::move(field), {{"other", std::move(other)}}};
}

/// Where a colony came on another day: what of its queens began with it goes along. Refused with
/// Contradiction under `field` where something of them would come before it.
Result<void> moveQueenComing(Write& file, Id<Colony> colony, Day before, Day after,
                             const std::string& field);
/// Refused with Contradiction under `field` where a queen came or left after the colony's end,
/// other than with it.
Result<void> demandQueensWithin(const Read& file, const Colony& colony, const std::string& field);

}  // namespace combwright
