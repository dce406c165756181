#include <cstdint>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "core/catalogue/catalogue.h"
#include "core/exchange/compute/computations.h"
#include "core/exchange/compute/object_reader.h"
#include "core/exchange/or_null.h"
#include "core/trade/storeroom/cold.h"
#include "core/trade/storeroom/fit.h"
#include "core/trade/storeroom/frame_needs.h"
#include "core/trade/storeroom/freezer.h"
#include "core/trade/storeroom/kit_needs.h"

namespace combwright {
namespace {

// No shelf holds more; sums of four of them stay far from overflow.
constexpr Range storeCount{0, 1e9};
constexpr Range storeColonies{0, 1e6};
constexpr Range storePerColony{0, 1000};
constexpr Range boxPlaces{0, 1000};
constexpr Range boxPlacesAtLeastOne{1, 1000};

QString storeText(std::string_view text) {
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

std::optional<double> mmOf(const std::optional<Length>& length) {
    if (!length) return std::nullopt;
    return length->mm();
}

BoxMeasures measuresOf(const PublishedBox& kind) {
    BoxMeasures box;
    box.system = kind.family;
    box.height = mmOf(kind.outerHeight);
    box.innerLength = mmOf(kind.innerLength);
    box.innerWidth = mmOf(kind.innerWidth);
    box.restDepth = mmOf(kind.restDepth);
    if (kind.beeSpace == PublishedBeeSpace::Top) box.beeSpace = BeeSpaceAt::Top;
    if (kind.beeSpace == PublishedBeeSpace::Bottom) box.beeSpace = BeeSpaceAt::Bottom;
    return box;
}

FrameMeasures measuresOf(const PublishedFrame& kind) {
    return {mmOf(kind.sideBarHeight), mmOf(kind.topBarLength), mmOf(kind.bottomBarLength),
            mmOf(kind.endBarSpacing)};
}

/// The box or frame kind a key names; nothing, and refused, where there is none.
const PublishedBox* boxKindOfKey(ObjectReader& in, std::string_view key, const std::string& id) {
    const PublishedBox* kind = findPublishedBox(id);
    if (!kind) in.refuse(Code::NotFound, key, {{"name", id}});
    return kind;
}

Result<QJsonObject> computeBeeSpace(const QJsonObject& input) {
    ObjectReader in(input);
    const std::string boxId = in.text("box");
    const PublishedBox* box = boxKindOfKey(in, "box", boxId);
    const std::string frameId = in.text("frame");
    const PublishedFrame* frame = findPublishedFrame(frameId);
    if (!frame) in.refuse(Code::NotFound, "frame", {{"name", frameId}});
    const auto overId = in.optionalText("over");
    const PublishedBox* over = overId ? boxKindOfKey(in, "over", *overId) : nullptr;
    const auto framesInBox = in.optionalCount("frames_in_box", boxPlaces);
    if (auto good = in.finish(); !good) return good.error();

    std::optional<BoxMeasures> below;
    if (over && over != box) below = measuresOf(*over);
    const auto fit = fitFrame(measuresOf(*box), measuresOf(*frame), below, framesInBox);
    if (!fit) {
        Refusal refusal = fit.error();
        refusal.values.emplace_back("name", refusal.field == "frame"  ? frameId
                                            : refusal.field == "over" ? *overId
                                                                      : boxId);
        return refusal;
    }
    QJsonObject answer{{"gap_mm", orNull(fit->gapMm)}, {"verdict", storeText(key(fit->verdict))}};
    if (fit->endVerdict) {
        answer.insert("end_gap_mm", orNull(fit->endGapMm));
        answer.insert("end_verdict", storeText(key(*fit->endVerdict)));
    }
    if (fit->sideVerdict) {
        answer.insert("side_gap_mm", orNull(fit->sideGapMm));
        answer.insert("side_verdict", storeText(key(*fit->sideVerdict)));
    }
    return answer;
}

Result<QJsonObject> computeColdKill(const QJsonObject& input) {
    ObjectReader in(input);
    const double temperatureC = in.number("temperature_c");
    if (auto good = in.finish(); !good) return good.error();
    const auto hours = coldKillHours(temperatureC);
    if (!hours) return hours.error();
    return QJsonObject{{"hours", *hours}};
}

Result<QJsonObject> computeFreezerRounds(const QJsonObject& input) {
    ObjectReader in(input);
    std::vector<FreezerBatch> batches;
    for (ObjectReader& each : in.objects("batches")) {
        FreezerBatch batch;
        batch.kind = each.text("kind");
        batch.frames = each.count("frames", {0, 100'000});
        batch.capacity = each.count("capacity", {1, 100'000});
        batches.push_back(std::move(batch));
    }
    const double hours = in.number("hours");
    const Day day = in.day("day");
    const bool mix = in.optionalFlag("mix").value_or(false);
    if (auto good = in.finish(); !good) return good.error();

    const auto rounds = planFreezer(batches, hours, day, mix);
    if (!rounds) return rounds.error();
    QJsonArray list;
    for (const PlannedRound& round : *rounds) {
        QJsonArray frames;
        for (const auto& each : round.frames)
            frames.append(QJsonObject{{"kind", storeText(each.kind)},
                                      {"count", static_cast<qint64>(each.count)}});
        list.append(QJsonObject{{"in", storeText(isoText(round.in))},
                                {"out", storeText(isoText(round.out))},
                                {"frames", frames}});
    }
    return QJsonObject{
        {"rounds", list},
        {"last_out",
         rounds->empty() ? QJsonValue() : QJsonValue(storeText(isoText(rounds->back().out)))}};
}

Result<QJsonObject> computeKitNeeds(const QJsonObject& input) {
    ObjectReader in(input);
    const std::int64_t colonies = in.count("colonies", storeColonies);
    const std::int64_t splits = in.count("splits", storeColonies);
    std::vector<std::string> names;
    std::vector<KitNeed> kits;
    std::set<std::string> seen;
    for (ObjectReader& each : in.objects("items")) {
        names.push_back(each.text("item"));
        if (!seen.insert(names.back()).second)
            each.refuse(Code::Duplicate, "item", {{"value", names.back()}});
        KitNeed kit;
        kit.perColony = each.optionalNumber("per_colony", storePerColony).value_or(0);
        kit.perSplit = each.optionalNumber("per_split", storePerColony).value_or(0);
        kit.spareShare = each.optionalShare("spare_share").value_or(0);
        kit.usable = each.count("usable", storeCount);
        kit.inRepair = each.optionalCount("in_repair", storeCount).value_or(0);
        kits.push_back(kit);
    }
    if (auto good = in.finish(); !good) return good.error();

    QJsonArray items;
    for (std::size_t i = 0; i < kits.size(); ++i) {
        const auto answer = kitNeeds(colonies, splits, kits[i]);
        if (!answer) return answer.error();
        items.append(
            QJsonObject{{"item", storeText(names[i])},
                        {"need", static_cast<qint64>(answer->need)},
                        {"short", static_cast<qint64>(answer->missing)},
                        {"short_after_repair", static_cast<qint64>(answer->missingAfterRepair)}});
    }
    return QJsonObject{{"items", items}};
}

/// Either the places as they are, or boxes to fill.
std::optional<BoxesToFill> boxesToFillOf(ObjectReader& in) {
    const bool hasSlots = in.has("slots");
    for (const char* key : {"boxes", "drawn_per_box", "undrawn_per_box"}) {
        if (hasSlots && in.has(key)) in.refuse(Code::Contradiction, key, {{"other", "slots"}});
        if (hasSlots) in.raw(key);
    }
    if (hasSlots) return std::nullopt;
    if (!in.has("boxes")) in.refuse(Code::Missing, "slots", {{"other", "boxes"}});
    in.raw("slots");
    BoxesToFill fill;
    fill.boxes = in.count("boxes", {0, 1e6});
    fill.drawnPerBox = in.count("drawn_per_box", boxPlacesAtLeastOne);
    fill.undrawnPerBox = in.count("undrawn_per_box", boxPlacesAtLeastOne);
    return fill;
}

Result<QJsonObject> computeFrameNeeds(const QJsonObject& input) {
    ObjectReader in(input);
    const auto fill = boxesToFillOf(in);
    std::int64_t places = fill ? 0 : in.count("slots", storeCount);
    FrameStock stock;
    stock.drawn = in.count("drawn", storeCount);
    stock.withFoundation = in.count("with_foundation", storeCount);
    stock.bareSound = in.count("bare_sound", storeCount);
    stock.repairable = in.count("repairable", storeCount);
    if (auto good = in.finish(); !good) return good.error();

    if (fill) {
        const auto filled = placesToFill(*fill, stock.drawn);
        if (!filled) return filled.error();
        places = *filled;
    }
    const auto answer = frameNeeds(places, stock);
    if (!answer) return answer.error();
    return QJsonObject{{"usable", static_cast<qint64>(answer->usable)},
                       {"buy_frames", static_cast<qint64>(answer->buyFrames)},
                       {"foundation_sheets", static_cast<qint64>(answer->foundationSheets)}};
}

}  // namespace

std::vector<Computation> storeroomComputations() {
    return {{"bee-space", computeBeeSpace},
            {"cold-kill", computeColdKill},
            {"freezer-rounds", computeFreezerRounds},
            {"kit-needs", computeKitNeeds},
            {"frame-needs", computeFrameNeeds}};
}

}  // namespace combwright
