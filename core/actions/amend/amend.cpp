#include "core/actions/amend/amend.h"

#include <QJsonDocument>

#include "core/actions/amend/amend_rules.h"

namespace combwright {
namespace {

const AmendType* findAmendType(std::string_view table) {
    static const std::vector<AmendType> all = [] {
        std::vector<AmendType> list;
        for (const auto& group : {yardAmends(), queenAmends(), boxAmends(), honeyAmends(),
                                  vesselAmends(), goodsAmends(), waxAmends(), benchAmends(),
                                  storeAmends(), feedAmends(), healthAmends()})
            list.insert(list.end(), group.begin(), group.end());
        return list;
    }();
    for (const AmendType& type : all)
        if (type.table == table) return &type;
    return nullptr;
}

struct AmendTarget {
    const FieldInfo* field;
    std::int64_t id;
};

/// The one record that is named.
Result<AmendTarget> targetOf(const Amend& amend) {
    std::optional<AmendTarget> target;
    for (const FieldInfo& field : Amend::fields()) {
        if (field.kind != Kind::Reference) continue;
        const Value value = field.valueIn(&amend);
        const auto* id = std::get_if<std::int64_t>(&value);
        if (!id) continue;
        if (target)
            return Refusal{Code::Contradiction, field.key(), {{"other", target->field->key()}}};
        target = AmendTarget{&field, *id};
    }
    if (!target) return Refusal{Code::Missing, "record", {}};
    return *target;
}

}  // namespace

namespace detail {

Result<void> demandFree(const Fields& fields, const std::vector<Bound>& bound,
                        const Changes& changes) {
    const auto set =
        QJsonDocument::fromJson(QByteArray::fromStdString(changes.json)).object().keys();
    for (const QString& key : set) {
        const FieldInfo* field = fields.findKey(key.toStdString());
        if (!field) continue;
        for (const Bound& each : bound) {
            if (each.field != field->name) continue;
            if (each.action.empty()) return Refusal{Code::Fixed, field->key(), {}};
            return Refusal{Code::OtherAction, field->key(), {{"action", std::string(each.action)}}};
        }
    }
    return {};
}

Result<void> demandReferences(const Read& file, const Fields& fields, const Row& row) {
    for (std::size_t i = 0; i < row.size(); ++i) {
        const auto* id = std::get_if<std::int64_t>(&row[i]);
        if (fields[i].kind == Kind::Reference && id && !file.holds(fields[i].refersTo, *id))
            return Refusal{Code::NotFound, fields[i].key(), {{"name", "#" + std::to_string(*id)}}};
    }
    return {};
}

}  // namespace detail

const Fields& Amend::fields() {
    static const Fields all = describe(
        field<&Amend::on>("on"), field<&Amend::yard>("yard"), field<&Amend::hive>("hive"),
        field<&Amend::colony>("colony"), field<&Amend::visit>("visit"),
        field<&Amend::inspection>("inspection"), field<&Amend::box>("box"),
        field<&Amend::boxLook>("box_look"), field<&Amend::frame>("frame"),
        field<&Amend::frameCheck>("frame_check"), field<&Amend::pullPlan>("pull_plan"),
        field<&Amend::cropNote>("crop_note"), field<&Amend::run>("run"),
        field<&Amend::boxInRun>("extraction_box"), field<&Amend::load>("spin_load"),
        field<&Amend::bucket>("bucket"), field<&Amend::hold>("hold"),
        field<&Amend::boxReview>("box_review"), field<&Amend::rawWax>("raw_wax"),
        field<&Amend::equipment>("equipment"), field<&Amend::equipmentCount>("equipment_count"),
        field<&Amend::seasonPlan>("season_plan"), field<&Amend::planItem>("plan_item"),
        field<&Amend::setAside>("set_aside"), field<&Amend::gateOpening>("gate_opening"),
        field<&Amend::roomDay>("room_day"), field<&Amend::peg>("peg"),
        field<&Amend::clearerBoard>("clearer_board"), field<&Amend::weighing>("hive_weighing"),
        field<&Amend::feeding>("feeding"), field<&Amend::feedStock>("feed_stock"),
        field<&Amend::truckItem>("truck_item"), field<&Amend::finding>("finding"),
        field<&Amend::medicine>("medicine"), field<&Amend::treatment>("treatment"),
        field<&Amend::disposal>("medicine_disposal"), field<&Amend::miteLine>("mite_line"),
        field<&Amend::phaseDay>("phase_day"), field<&Amend::hiveMove>("hive_move"),
        field<&Amend::colonyMove>("colony_move"), field<&Amend::queen>("queen"),
        field<&Amend::queenStay>("queen_stay"), field<&Amend::queenWait>("queen_wait"),
        field<&Amend::queenColour>("queen_colour"), field<&Amend::task>("task"),
        field<&Amend::quiet>("quiet"), field<&Amend::lot>("lot"),
        field<&Amend::lotPart>("lot_part"), field<&Amend::waterReading>("water_reading"),
        field<&Amend::honeyStep>("honey_step"), field<&Amend::honeyLeft>("honey_left"),
        field<&Amend::goodsKind>("goods_kind"), field<&Amend::packingStock>("packing_stock"),
        field<&Amend::goodsCount>("goods_count"), field<&Amend::bottling>("bottling"),
        field<&Amend::bottledJars>("bottled_jars"), field<&Amend::complaint>("complaint"),
        field<&Amend::goingOut>("going_out"), field<&Amend::fair>("fair"),
        field<&Amend::fairLine>("fair_line"), field<&Amend::waxBatch>("wax_batch"),
        field<&Amend::waxSource>("wax_source"), field<&Amend::waxStep>("wax_step"),
        field<&Amend::heatSession>("heat_session"), field<&Amend::waxBlock>("wax_block"),
        field<&Amend::waxUse>("wax_use"), field<&Amend::mould>("mould"),
        field<&Amend::burnTest>("burn_test"), field<&Amend::pour>("pour"),
        field<&Amend::candleWish>("candle_wish"), field<&Amend::freeEvening>("free_evening"),
        field<&Amend::wickStock>("wick_stock"), field<&Amend::propolisMove>("propolis_move"),
        field<&Amend::hiveProject>("hive_project"), field<&Amend::projectLook>("project_look"),
        field<&Amend::set>("set"));
    return all;
}

Result<Made> Amend::perform(Write& file) const {
    const auto target = targetOf(*this);
    if (!target) return target.error();
    const AmendType* type = findAmendType(target->field->refersTo);
    if (!type || !file.holds(type->table, target->id))
        return Refusal{Code::NotFound, target->field->key(), {}};
    if (auto amended = type->amend(file, target->id, set); !amended) {
        Refusal refusal = amended.error();
        refusal.field = refusal.field.empty() ? "set" : "set." + refusal.field;
        return refusal;
    }
    return Made{{type->table, target->id}};
}

}  // namespace combwright
