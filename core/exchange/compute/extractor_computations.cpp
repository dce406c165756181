#include <QJsonArray>
#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "core/exchange/compute/computations.h"
#include "core/exchange/compute/object_reader.h"
#include "core/trade/extractor/balance.h"
#include "core/trade/extractor/spin_loads.h"
#include "core/trade/extractor/unbalance.h"

namespace combwright {
namespace {

const Range slotsRange{static_cast<double>(fewestSlots), static_cast<double>(mostSlots)};

double numberAbove0(ObjectReader& in, std::string_view key, std::optional<double> number) {
    if (number && *number == 0.0) in.refuse(Code::OutOfRange, key, {{"value", "0"}, {"low", "0"}});
    return number.value_or(1.0);
}

/// What extractor-balance and spin-loads say alike of a frame.
LoadedFrame loadedFrameIn(ObjectReader& in) {
    LoadedFrame frame;
    frame.startG = in.mass("start_g");
    frame.endG = in.mass("end_g");
    frame.radiusMm = in.optionalNumber("radius_mm", {0});
    if (frame.radiusMm) numberAbove0(in, "radius_mm", frame.radiusMm);
    return frame;
}

/// Ids in the order of the list; one given twice is refused.
class FrameIds {
  public:
    void add(ObjectReader& in) {
        const std::string id = in.text("id");
        if (!m_met.insert(id).second) in.refuse(Code::Duplicate, "id", {{"value", id}});
        m_ids.push_back(id);
    }
    QJsonArray inSlots(const FrameSlots& places) const {
        QJsonArray list;
        for (const auto& frame : places)
            list.append(frame ? QJsonValue(QString::fromStdString(m_ids[*frame])) : QJsonValue());
        return list;
    }

  private:
    std::vector<std::string> m_ids;
    std::set<std::string> m_met;
};

QJsonArray textList(const std::vector<std::string>& texts) {
    QJsonArray list;
    for (const std::string& text : texts) list.append(QString::fromStdString(text));
    return list;
}

Result<QJsonObject> computeExtractorBalance(const QJsonObject& input) {
    ObjectReader in(input);
    const std::int64_t slotCount = in.count("slots", slotsRange);
    std::vector<LoadedFrame> frames;
    FrameIds ids;
    for (ObjectReader& each : in.objects("frames")) {
        ids.add(each);
        frames.push_back(loadedFrameIn(each));
        frames.back().sdG = each.optionalMass("sd_g");
    }
    if (auto good = in.finish(); !good) return good.error();

    const auto balance = balanceLoad(slotCount, frames);
    if (!balance) return balance.error();
    QJsonObject answer{{"slots", ids.inSlots(balance->places)},
                       {"start_offset_g", balance->offset.startG},
                       {"end_offset_g", balance->offset.endG},
                       {"proven", balance->proven},
                       {"lower_bound_g", balance->lowerBoundG}};
    if (balance->doubtG) answer.insert("doubt_g", *balance->doubtG);
    return answer;
}

Result<QJsonObject> computeUnbalance(const QJsonObject& input) {
    ObjectReader in(input);
    const double offsetG = in.mass("offset_g");
    TurningRotor rotor;
    rotor.radiusMm = in.number("radius_mm", {0});
    rotor.rpm = numberAbove0(in, "rpm", in.number("rpm", {0}));
    rotor.rotorKg = numberAbove0(in, "rotor_kg", in.number("rotor_kg", {0}));
    const auto grade = in.optionalNumber("grade", {0});
    if (grade) rotor.grade = numberAbove0(in, "grade", grade);
    if (auto good = in.finish(); !good) return good.error();

    const auto unbalance = unbalanceOf(offsetG, rotor);
    if (!unbalance) return unbalance.error();
    return QJsonObject{{"g_mm", unbalance->gMm},
                       {"newton", unbalance->newton},
                       {"allowed_g_mm", unbalance->allowedGMm},
                       {"share_of_allowed", unbalance->shareOfAllowed}};
}

/// The slots of each kind: one number for all, or a number by kind.
std::map<std::string, std::int64_t> slotsOfKindIn(ObjectReader& in,
                                                  const std::vector<SpinFrame>& frames) {
    std::map<std::string, std::int64_t> counts;
    if (!in.has("slots")) {
        in.refuse(Code::Missing, "slots");
    } else if (in.raw("slots").isObject()) {
        ObjectReader byKind = in.object("slots");
        for (const auto& [kind, number] : in.numbersByName("slots"))
            counts[kind] = byKind.count(kind, slotsRange);
    } else {
        const std::int64_t all = in.count("slots", slotsRange);
        for (const SpinFrame& frame : frames) counts[frame.kind] = all;
    }
    return counts;
}

QJsonObject loadObject(const PlannedLoad& load, const FrameIds& ids) {
    return {{"kinds", textList(load.kinds)},
            {"lots", textList(load.lots)},
            {"slots", ids.inSlots(load.places)},
            {"start_offset_g", load.offset.startG},
            {"end_offset_g", load.offset.endG}};
}

Result<QJsonObject> computeSpinLoads(const QJsonObject& input) {
    ObjectReader in(input);
    std::vector<SpinFrame> frames;
    FrameIds ids;
    for (ObjectReader& each : in.objects("frames")) {
        ids.add(each);
        SpinFrame frame;
        frame.box = each.text("box");
        frame.kind = each.text("kind");
        frame.lot = each.optionalText("lot");
        frame.frame = loadedFrameIn(each);
        frames.push_back(std::move(frame));
    }
    SpinRules rules;
    rules.slotsOfKind = slotsOfKindIn(in, frames);
    rules.openBoxes = in.optionalCount("open_boxes", {1});
    rules.mixLots = in.optionalFlag("mix_lots").value_or(false);
    rules.mixKinds = in.optionalFlag("mix_kinds").value_or(false);
    if (auto good = in.finish(); !good) return good.error();

    const auto loads = planSpinLoads(frames, rules);
    if (!loads) return loads.error();
    QJsonArray list;
    for (const PlannedLoad& load : *loads) list.append(loadObject(load, ids));
    return QJsonObject{{"loads", list}};
}

}  // namespace

std::vector<Computation> extractorComputations() {
    return {{"extractor-balance", &computeExtractorBalance},
            {"unbalance", &computeUnbalance},
            {"spin-loads", &computeSpinLoads}};
}

}  // namespace combwright
