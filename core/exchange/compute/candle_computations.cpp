#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/exchange/compute/computations.h"
#include "core/exchange/compute/object_reader.h"
#include "core/exchange/or_null.h"
#include "core/trade/wax/candle_mass.h"
#include "core/trade/wax/candle_mix.h"
#include "core/trade/wax/candle_plan.h"
#include "core/trade/wax/candle_reach.h"
#include "core/trade/wax/candle_time.h"
#include "core/trade/wax/pouring_evenings.h"

namespace combwright {
namespace {

constexpr Range candleCount{0, 1e6};
constexpr Range candleCavities{0, 10'000};
constexpr Range candleCycles{1, 100};
constexpr Range candleEvenings{0, 10'000};
constexpr Range candleWorth{0, 10'000};

QString candleText(std::string_view text) {
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

qint64 candleWhole(std::int64_t count) { return static_cast<qint64>(count); }

/// A list of words that may be left out.
std::vector<std::string> candleWordsOf(ObjectReader& in, std::string_view key) {
    std::vector<std::string> words;
    const QJsonValue value = in.raw(key);
    if (value.isUndefined() || value.isNull()) return words;
    if (!value.isArray()) {
        in.refuse(Code::WrongType, key, {{"wanted", "list"}});
        return words;
    }
    const QJsonArray list = value.toArray();
    for (qsizetype i = 0; i < list.size(); ++i) {
        if (list[i].isString())
            words.push_back(list[i].toString().toStdString());
        else
            in.refuse(Code::WrongType, std::string(key) + "[" + std::to_string(i) + "]",
                      {{"wanted", "text"}});
    }
    return words;
}

/// Blocks in one mass or by shade, what is lost of them, and the wick.
CandleStock candleStockOf(ObjectReader& in) {
    CandleStock stock;
    const bool byShade = in.has("blocks");
    if (byShade && in.has("blocks_g"))
        in.refuse(Code::Contradiction, "blocks", {{"other", "blocks_g"}});
    if (!byShade && !in.has("blocks_g"))
        in.refuse(Code::Missing, "blocks_g", {{"other", "blocks"}});
    stock.mixed = !byShade;
    if (byShade) {
        in.raw("blocks_g");
        for (ObjectReader& each : in.objects("blocks")) {
            ShadeOfWax block;
            block.shade = each.text("shade");
            block.massG = each.mass("mass_g");
            stock.wax.push_back(std::move(block));
        }
    } else {
        in.raw("blocks");
        stock.wax.push_back({{}, in.optionalMass("blocks_g").value_or(0)});
    }
    stock.lossShare = in.share("loss_share");
    for (const auto& [size, metres] : in.numbersByName("wick_m", {0})) stock.wickM[size] = metres;
    return stock;
}

CandleWanted candleWantedOf(ObjectReader& in) {
    CandleWanted want;
    want.what = in.text("what");
    want.count = in.count("count", candleCount);
    want.massG = in.mass("mass_g");
    want.wick = in.text("wick");
    want.wickM = in.number("wick_m", {0});
    want.cavities = in.count("cavities", candleCavities);
    want.cyclesPerEvening = in.count("cycles_per_evening", candleCycles);
    want.shades = candleWordsOf(in, "shades");
    return want;
}

/// The trade names a block's mass by its list; one mass is a key of its own.
Refusal candleRefusal(Refusal refusal, const CandleStock& stock) {
    if (stock.mixed && refusal.field == "blocks[0].mass_g") refusal.field = "blocks_g";
    return refusal;
}

QJsonArray ofShadeJson(const std::vector<CandlesOfShade>& parts,
                       const std::vector<CandleWanted>& wants, bool mixed) {
    QJsonArray list;
    for (const CandlesOfShade& part : parts) {
        QJsonObject row{{"what", candleText(wants[part.want].what)},
                        {"count", candleWhole(part.count)}};
        if (!mixed) row.insert("shade", candleText(part.shade));
        list.append(row);
    }
    return list;
}

void insertNeeds(const CandleNeeds& needs, const std::vector<CandleWanted>& wants, bool mixed,
                 QJsonObject& answer) {
    answer.insert("wax_net_g", needs.waxNetG);
    answer.insert("wax_needed_g", needs.waxNeededG);
    answer.insert("wax_short_g", needs.waxShortG);
    QJsonArray kinds;
    for (std::size_t i = 0; i < wants.size(); ++i) {
        const CandleNeeds::Kind& kind = needs.kinds[i];
        kinds.append(QJsonObject{{"what", candleText(wants[i].what)},
                                 {"evenings_needed", orNull(kind.eveningsNeeded)},
                                 {"possible", candleWhole(kind.possible)},
                                 {"short", candleWhole(kind.missing)},
                                 {"cavities_to_add", orNull(kind.cavitiesToAdd)}});
    }
    answer.insert("kinds", kinds);
    QJsonObject wick;
    for (const auto& [size, metres] : needs.wickLeftM) wick.insert(candleText(size), metres);
    answer.insert("wick_left_m", wick);
    answer.insert("from_stock", ofShadeJson(needs.fromStock, wants, mixed));
    if (mixed) {
        answer.insert("wax_left_g", needs.waxLeft.front().massG);
        return;
    }
    QJsonObject left;
    for (const ShadeOfWax& shade : needs.waxLeft) left.insert(candleText(shade.shade), shade.massG);
    answer.insert("wax_left_g", left);
}

Result<QJsonObject> computeCandles(const QJsonObject& input) {
    ObjectReader in(input);
    const CandleStock stock = candleStockOf(in);
    const std::int64_t evenings = in.count("evenings", candleEvenings);
    std::vector<CandleWanted> wants;
    for (ObjectReader& each : in.objects("want")) wants.push_back(candleWantedOf(each));
    if (auto good = in.finish(); !good) return good.error();

    const auto needs = candleNeeds(stock, evenings, wants);
    if (!needs) return candleRefusal(needs.error(), stock);
    QJsonObject answer;
    insertNeeds(*needs, wants, stock.mixed, answer);
    return answer;
}

/// A kind wanted, with what only a plan by evenings asks.
struct PlannedCandle {
    double setHours = 0;
    std::optional<std::int64_t> worth;
};

PlannedCandle plannedCandleOf(ObjectReader& in) {
    PlannedCandle planned;
    const auto diameterMm = in.optionalNumber("diameter_mm");
    const auto hours = in.optionalNumber("set_hours");
    planned.worth = in.optionalCount("worth", candleWorth);
    if (in.has("set_hours") && in.has("diameter_mm"))
        in.refuse(Code::Contradiction, "diameter_mm", {{"other", "set_hours"}});
    if (!in.has("set_hours") && !in.has("diameter_mm"))
        in.refuse(Code::Missing, "set_hours", {{"other", "diameter_mm"}});
    planned.setHours = hours.value_or(1);
    if (diameterMm) {
        const auto usual = setHours(*diameterMm);
        if (usual)
            planned.setHours = usual->high;
        else
            in.refuse(usual.error().code, "diameter_mm", usual.error().values);
    }
    return planned;
}

FreeEvenings freeEveningsOf(ObjectReader& in) {
    FreeEvenings free;
    const std::vector<std::string> texts = candleWordsOf(in, "evenings");
    if (!in.has("evenings")) in.refuse(Code::Missing, "evenings");
    for (std::size_t i = 0; i < texts.size(); ++i) {
        const auto day = parseDay(texts[i]);
        if (day)
            free.days.push_back(*day);
        else
            in.refuse(Code::NotADay, "evenings[" + std::to_string(i) + "]", {{"value", texts[i]}});
    }
    free.keepLast = in.optionalFlag("keep_last").value_or(true);
    free.wantedOn = in.optionalDay("wanted_on");
    return free;
}

QJsonArray reachJson(const CandleReaches& reach, const std::vector<CandleWanted>& wants) {
    QJsonArray list;
    for (std::size_t i = 0; i < wants.size(); ++i) {
        const CandleReach& kind = reach.kinds[i];
        QJsonArray bites;
        for (const CandleLimit limit : kind.bites) bites.append(candleText(key(limit)));
        list.append(QJsonObject{{"what", candleText(wants[i].what)},
                                {"made", candleWhole(kind.made)},
                                {"by_wax", candleWhole(kind.byWax)},
                                {"by_moulds", candleWhole(kind.byMoulds)},
                                {"by_wick", candleWhole(kind.byWick)},
                                {"bites", bites}});
    }
    return list;
}

QJsonArray oneMoreJson(const std::vector<OneMoreCandleThing>& things,
                       const std::vector<CandleWanted>& wants) {
    QJsonArray list;
    for (const OneMoreCandleThing& thing : things) {
        QJsonObject row{{"of", candleText(key(thing.what))}, {"more", candleWhole(thing.more)}};
        if (thing.what == OneMoreCandleThing::What::Cavity)
            row.insert("what", candleText(wants[thing.want].what));
        if (thing.what == OneMoreCandleThing::What::Kilogram && !thing.name.empty())
            row.insert("shade", candleText(thing.name));
        if (thing.what == OneMoreCandleThing::What::Metre)
            row.insert("wick", candleText(thing.name));
        QJsonArray change;
        for (const std::int64_t each : thing.change) change.append(candleWhole(each));
        row.insert("change", change);
        list.append(row);
    }
    return list;
}

QJsonArray eveningsJson(const PouringPlan& plan, const std::vector<CandleWanted>& wants) {
    QJsonArray list;
    for (const PouringEvening& evening : plan.evenings) {
        QJsonArray pours;
        for (const PouringEvening::Pours& pour : evening.pours)
            pours.append(QJsonObject{{"what", candleText(wants[pour.want].what)},
                                     {"count", candleWhole(pour.count)},
                                     {"cycles", candleWhole(pour.cycles)},
                                     {"out_from", candleText(isoText(pour.outFrom))}});
        list.append(QJsonObject{{"day", candleText(isoText(evening.day))}, {"pours", pours}});
    }
    return list;
}

Result<QJsonObject> computeCandlePlan(const QJsonObject& input) {
    ObjectReader in(input);
    const CandleStock stock = candleStockOf(in);
    const FreeEvenings free = freeEveningsOf(in);
    std::vector<CandleWanted> wants;
    std::vector<PlannedCandle> planned;
    for (ObjectReader& each : in.objects("want")) {
        wants.push_back(candleWantedOf(each));
        planned.push_back(plannedCandleOf(each));
    }
    if (auto good = in.finish(); !good) return good.error();

    const std::int64_t evenings = pouringEvenings(free);
    const auto needs = candleNeeds(stock, evenings, wants);
    if (!needs) return candleRefusal(needs.error(), stock);
    const auto reach = candleReach(stock, evenings, wants);
    if (!reach) return candleRefusal(reach.error(), stock);
    const auto more = oneMoreOfEach(stock, evenings, wants);
    if (!more) return more.error();

    std::vector<std::int64_t> worth;
    std::vector<KindToPour> kinds;
    for (std::size_t i = 0; i < wants.size(); ++i) {
        worth.push_back(planned[i].worth.value_or(1));
        kinds.push_back({wants[i].what, reach->kinds[i].made, wants[i].cavities,
                         wants[i].cyclesPerEvening, planned[i].setHours});
    }
    const auto mix = bestMix(stock, evenings, wants, worth);
    if (!mix) return mix.error();
    const auto plan = planEvenings(free, kinds);
    if (!plan) return plan.error();

    QJsonObject answer;
    insertNeeds(*needs, wants, stock.mixed, answer);
    answer.insert("pouring_evenings", candleWhole(evenings));
    answer.insert("made", reachJson(*reach, wants));
    answer.insert("made_of", ofShadeJson(reach->ofShade, wants, stock.mixed));
    answer.insert("one_more", oneMoreJson(*more, wants));
    answer.insert("best_mix", QJsonObject{{"of", ofShadeJson(mix->ofShade, wants, stock.mixed)},
                                          {"worth", candleWhole(mix->worth)},
                                          {"bound", candleWhole(mix->bound)},
                                          {"proven", mix->proven},
                                          {"ties_by_order", mix->firstAmongEquals}});
    answer.insert("evenings", eveningsJson(*plan, wants));
    answer.insert("last_pour", orNull(plan->lastPour));
    answer.insert("finishing", orNull(plan->finishing));
    QJsonArray notPoured;
    for (std::size_t i = 0; i < wants.size(); ++i)
        if (plan->open[i] > 0)
            notPoured.append(QJsonObject{{"what", candleText(wants[i].what)},
                                         {"count", candleWhole(plan->open[i])}});
    answer.insert("not_poured", notPoured);
    return answer;
}

Result<QJsonObject> computeCandleMass(const QJsonObject& input) {
    ObjectReader in(input);
    const std::string shape = in.choice("shape", {"cylinder", "taper"});
    const double diameterMm = in.number("diameter_mm");
    const double lengthMm = in.number("length_mm");
    const auto tipMm = in.optionalNumber("tip_mm");
    if (shape == "taper" && !in.has("tip_mm")) in.refuse(Code::Missing, "tip_mm");
    if (shape == "cylinder" && in.has("tip_mm"))
        in.refuse(Code::Contradiction, "tip_mm", {{"other", "shape"}});
    if (auto good = in.finish(); !good) return good.error();

    const auto candle =
        tipMm ? taperCandle(diameterMm, *tipMm, lengthMm) : cylinderCandle(diameterMm, lengthMm);
    if (!candle) return candle.error();
    return QJsonObject{{"volume_ml", candle->volumeMl},
                       {"mass_g", candle->massG},
                       {"first_pour_g", candle->firstPourG}};
}

Result<QJsonObject> computeCandleBatch(const QJsonObject& input) {
    ObjectReader in(input);
    const auto volumeMl = in.optionalNumber("volume_ml");
    const auto waterG = in.optionalNumber("water_g");
    const std::int64_t pieces = in.count("pieces", candleCount);
    const double spareShare = in.share("spare_share");
    const auto solid = in.optionalNumber("solid_g_per_ml");
    const auto liquid = in.optionalNumber("liquid_g_per_ml");
    if (in.has("volume_ml") && in.has("water_g"))
        in.refuse(Code::Contradiction, "water_g", {{"other", "volume_ml"}});
    if (!in.has("volume_ml") && !in.has("water_g"))
        in.refuse(Code::Missing, "volume_ml", {{"other", "water_g"}});
    if (auto good = in.finish(); !good) return good.error();

    // A millilitre of water weighs a gram.
    WaxDensities wax;
    if (solid) wax.solidGPerMl = *solid;
    if (liquid) wax.liquidGPerMl = *liquid;
    const auto candle = candleMass(volumeMl ? *volumeMl : *waterG, wax);
    if (!candle) {
        Refusal refusal = candle.error();
        if (waterG && refusal.field == "volume_ml") refusal.field = "water_g";
        return refusal;
    }
    const auto batch = candleBatchG(pieces, candle->massG, spareShare);
    if (!batch) return batch.error();
    return QJsonObject{{"mass_g", candle->massG},
                       {"first_pour_g", candle->firstPourG},
                       {"top_up_g", candle->topUpG},
                       {"batch_g", *batch}};
}

}  // namespace

std::vector<Computation> candleComputations() {
    return {{"candles", computeCandles},
            {"candle-mass", computeCandleMass},
            {"candle-batch", computeCandleBatch},
            {"candle-plan", computeCandlePlan}};
}

}  // namespace combwright
