#include <QJsonArray>
#include <QJsonObject>

#include "app/cli/groups.h"
#include "app/cli/season_asked.h"
#include "app/cli/why.h"
#include "core/exchange/or_null.h"
#include "core/places/explain/explain_vessels.h"
#include "core/places/pages/honey/honey_store_page.h"
#include "core/places/pages/page_text.h"
#include "core/storage/queries/constants.h"
#include "core/storage/season.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright::cli {
namespace {

QString honeyKey(std::string_view text) { return fromUtf8(text); }

QJsonArray namesArray(const std::vector<std::string>& names) {
    QJsonArray array;
    for (const std::string& name : names) array.append(fromUtf8(name));
    return array;
}

QJsonObject waterObject(const WaterInUse& water) {
    QJsonArray doubts;
    for (const WaterDoubt doubt : water.doubts) doubts.append(honeyKey(key(doubt)));
    return {{QStringLiteral("percent"), water.percent},
            {QStringLiteral("from"), honeyKey(key(water.from))},
            {QStringLiteral("on"), orNull(water.on)},
            {QStringLiteral("corrected_percent"), orNull(water.correctedPercent)},
            {QStringLiteral("doubts"), doubts}};
}

QJsonArray heldArray(const std::vector<Hold>& holds) {
    QJsonArray array;
    for (const Hold& hold : holds)
        array.append(
            QJsonObject{{QStringLiteral("why"),
                         honeyKey(Choices<HoldWhy>::words[static_cast<std::size_t>(hold.why)])},
                        {QStringLiteral("since"), fromUtf8(isoText(hold.since))}});
    return array;
}

QJsonObject treatedObject(const TreatedShare& share) {
    return {{QStringLiteral("boxes"), share.boxes},
            {QStringLiteral("of"), share.of},
            {QStringLiteral("unknown"), share.unknown},
            {QStringLiteral("bought_in"), share.boughtIn}};
}

QJsonObject balanceObject(const VesselLedger& ledger) {
    const auto grams = [](Mass mass) { return static_cast<qint64>(mass.grams()); };
    return {{QStringLiteral("in_g"), orNull(ledger.in)},
            {QStringLiteral("in_how"),
             ledger.in ? QJsonValue(honeyKey(word(ledger.inHow))) : QJsonValue()},
            {QStringLiteral("into_lots_g"), grams(ledger.intoLots)},
            {QStringLiteral("into_jars_g"), grams(ledger.intoJars)},
            {QStringLiteral("lost_in_filling_g"), grams(ledger.lostInFilling)},
            {QStringLiteral("in_bulk_g"), grams(ledger.inBulk)},
            {QStringLiteral("off_by_work_g"), grams(ledger.offByWork)},
            {QStringLiteral("missing_g"), grams(ledger.missing)},
            {QStringLiteral("left_g"), orNull(ledger.left)},
            {QStringLiteral("left_how"),
             ledger.left ? QJsonValue(honeyKey(word(ledger.leftHow))) : QJsonValue()},
            {QStringLiteral("empty_since"), orNull(ledger.empty)}};
}

QJsonObject heatObject(const HoneyHeat& heat) {
    QJsonObject object{{QStringLiteral("hours"), heat.hours},
                       {QStringLiteral("not_known"), heat.notKnown},
                       {QStringLiteral("class"), QJsonValue()}};
    if (!heat.damage) return object;
    object.insert(QStringLiteral("class"), honeyKey(key(heat.heat)));
    object.insert(QStringLiteral("hmf_low_mg_per_kg"), heat.damage->hmfLow);
    object.insert(QStringLiteral("hmf_high_mg_per_kg"), heat.damage->hmfHigh);
    object.insert(QStringLiteral("diastase_left_share"), heat.damage->diastaseLeftShare);
    object.insert(QStringLiteral("invertase_left_share"), heat.damage->invertaseLeftShare);
    return object;
}

QJsonObject storedObject(const StoredHoney& honey, const HoneyStore& store) {
    QJsonArray limits;
    for (const LimitAnswer& each : honey.limits)
        limits.append(QJsonObject{{QStringLiteral("grade"), fromUtf8(each.limit.grade)},
                                  {QStringLiteral("at_most"), orNull(each.limit.atMost)},
                                  {QStringLiteral("verdict"), honeyKey(key(each.verdict))}});
    QJsonArray tastes;
    for (const TasteWord& taste : honey.view.tastes) tastes.append(fromUtf8(taste.word));
    QJsonObject object{
        {QStringLiteral("name"), fromUtf8(honey.view.name)},
        {QStringLiteral("since"), fromUtf8(isoText(honey.view.ledger.since))},
        {QStringLiteral("balance"), balanceObject(honey.view.ledger)},
        {QStringLiteral("water"),
         honey.view.water ? QJsonValue(waterObject(*honey.view.water)) : QJsonValue()},
        {QStringLiteral("keeps"),
         honey.ferment ? QJsonValue(honeyKey(key(honey.ferment->keeping))) : QJsonValue()},
        {QStringLiteral("ferment_risk"),
         honey.ferment ? QJsonValue(honeyKey(key(honey.ferment->risk))) : QJsonValue()},
        {QStringLiteral("limits"), limits},
        {QStringLiteral("when_set_from_percent"), orNull(honey.whenSetFrom)},
        {QStringLiteral("when_set_to_percent"), orNull(honey.whenSetTo)},
        {QStringLiteral("set_at_risk"), honey.setAtRisk},
        {QStringLiteral("air"), honey.air && honey.air->verdict
                                    ? QJsonValue(honeyKey(key(*honey.air->verdict)))
                                    : QJsonValue()},
        {QStringLiteral("air_rests_at_percent"),
         honey.air ? orNull(honey.air->restsAtPercent) : QJsonValue()},
        {QStringLiteral("settled_on"),
         honey.settling ? QJsonValue(fromUtf8(isoText(honey.settling->until))) : QJsonValue()},
        {QStringLiteral("settling_hours"),
         honey.settling ? QJsonValue(honey.settling->hours) : QJsonValue()},
        {QStringLiteral("settling_depth_mm"),
         honey.settling ? QJsonValue(honey.settling->depthMm) : QJsonValue()},
        {QStringLiteral("settling_depth_assumed"),
         honey.settling ? QJsonValue(honey.settling->depth != Settling::Depth::OfWidth)
                        : QJsonValue()},
        {QStringLiteral("water_off_g"), orNull(honey.waterOffG)},
        {QStringLiteral("heat"), heatObject(honey.view.heat)},
        {QStringLiteral("held"), heldArray(honey.view.held)},
        {QStringLiteral("treated_while_on"), treatedObject(honey.view.treated)},
        {QStringLiteral("tastes"), tastes},
        {QStringLiteral("colour"), orNull(honey.view.traits.colour)},
        {QStringLiteral("pfund_mm"),
         honey.view.traits.pfund ? QJsonValue(honey.view.traits.pfund->mm()) : QJsonValue()},
        {QStringLiteral("colour_class"), orNull(colourClassOf(honey.view.traits))},
        {QStringLiteral("lidded"), orNull(honey.view.lidded)},
        {QStringLiteral("lost_in_pouring_g"), orNull(honey.view.lostPouring)},
        {QStringLiteral("ready"), honey.ready(store.on)}};
    return object;
}

int runHoney(Context& context) {
    const Season season = seasonToRead(context);
    const Read& file = season.read();
    const HoneyStore store = honeyStore(file, context.clock.today());
    const auto why =
        context.arguments.has("why") ? explainHoneyStore(file, store) : std::vector<Explained>();
    if (!context.json()) {
        context.streams.out << pageText(honeyStorePage(file, store));
        printWhy(context, why);
        return Done;
    }
    QJsonArray standing;
    for (const StoredHoney& each : store.standing) standing.append(storedObject(each, store));
    QJsonArray emptied;
    for (const StoredHoney& each : store.emptied)
        emptied.append(QJsonObject{{QStringLiteral("name"), fromUtf8(each.view.name)},
                                   {QStringLiteral("balance"), balanceObject(each.view.ledger)}});
    QJsonObject object{{QStringLiteral("as_of"), fromUtf8(isoText(store.on))},
                       {QStringLiteral("limits_of"), fromUtf8(store.profile)},
                       {QStringLiteral("target_percent"), store.targetPercent},
                       {QStringLiteral("known_g"), static_cast<qint64>(store.known.grams())},
                       {QStringLiteral("not_known"), store.notKnown},
                       {QStringLiteral("not_written_of"), namesArray(store.notWrittenOf)},
                       {QStringLiteral("standing"), standing},
                       {QStringLiteral("emptied"), emptied}};
    if (context.arguments.has("why")) object.insert(QStringLiteral("why"), whyArray(why));
    printJson(context, object);
    return Done;
}

/// The buckets and lots named behind an option, parted by commas.
Result<std::vector<Vessel>> vesselsNamed(const Context& context, const Read& file,
                                         const char* option) {
    std::vector<Vessel> vessels;
    const auto said = context.arguments.value(option);
    if (!said) return vessels;
    for (const QString& each : said->split(QLatin1Char(','), Qt::SkipEmptyParts)) {
        const auto vessel =
            vesselNamed(file, each.trimmed().toStdString(), context.clock.today(), option);
        if (!vessel) return vessel.error();
        vessels.push_back(*vessel);
    }
    return vessels;
}

Result<BlendWanted> blendAsked(const Context& context, const Read& file) {
    BlendWanted wanted;
    wanted.targetPercent =
        constantOr(file, "max_water_percent", {}, context.clock.today(), wanted.targetPercent);
    if (const auto target = context.arguments.value("target")) {
        const auto percent = typedNumber(*target);
        if (!percent)
            return Refusal{
                Code::WrongType, "target", {{"value", target->toStdString()}, {"wanted", "17.8"}}};
        wanted.targetPercent = *percent;
    }
    if (const auto tank = context.arguments.value("tank")) {
        wanted.tankHolds = typedMass(*tank);
        if (!wanted.tankHolds)
            return Refusal{
                Code::WrongType, "tank", {{"value", tank->toStdString()}, {"wanted", "50 kg"}}};
    }
    auto with = vesselsNamed(context, file, "with");
    if (!with) return with.error();
    auto without = vesselsNamed(context, file, "without");
    if (!without) return without.error();
    wanted.mustGoIn = *std::move(with);
    wanted.stayOut = *std::move(without);
    return wanted;
}

QJsonObject outcomeObject(const BlendOutcome& outcome) {
    return {{QStringLiteral("mass_g"), static_cast<qint64>(outcome.mass.grams())},
            {QStringLiteral("how"), honeyKey(word(outcome.how))},
            {QStringLiteral("water_percent"), orNull(outcome.waterPercent)},
            {QStringLiteral("water_if_corrected_percent"), orNull(outcome.wettestPercent)},
            {QStringLiteral("room_left_g"), orNull(outcome.roomLeft)},
            {QStringLiteral("reads_too_dry"), namesArray(outcome.tooDry)},
            {QStringLiteral("warmth_not_said"), namesArray(outcome.doubtful)},
            {QStringLiteral("held"), namesArray(outcome.held)},
            {QStringLiteral("water_not_read"), namesArray(outcome.noWater)},
            {QStringLiteral("heat"), heatObject(outcome.worstHeat)},
            {QStringLiteral("treated_while_on"), treatedObject(outcome.treated)}};
}

int runBlend(Context& context) {
    const Season season = seasonToRead(context);
    const Read& file = season.read();
    const Day on = context.clock.today();
    const auto wanted = blendAsked(context, file);
    if (!wanted) return refuse(context, wanted.error());
    const auto plan = blendPlan(file, on, *wanted);
    if (!plan) return refuse(context, plan.error());
    const auto why =
        context.arguments.has("why") ? explainBlend(file, *wanted, on) : std::vector<Explained>();
    if (!context.json()) {
        context.streams.out << pageText(blendPage(file, *plan));
        if (!plan->parts.empty()) context.streams.out << '\n' << fromUtf8(plan->parts) << '\n';
        printWhy(context, why);
        return Done;
    }
    QJsonArray lines;
    for (const BlendLine& line : plan->lines)
        lines.append(
            QJsonObject{{QStringLiteral("name"), fromUtf8(line.name)},
                        {QStringLiteral("there_g"), orNull(line.there)},
                        {QStringLiteral("water"),
                         line.water ? QJsonValue(waterObject(*line.water)) : QJsonValue()},
                        {QStringLiteral("held"), heldArray(line.held)},
                        {QStringLiteral("left_out"), line.leftOut == BlendLeftOut::Not
                                                         ? QJsonValue()
                                                         : QJsonValue(honeyKey(key(line.leftOut)))},
                        {QStringLiteral("use_g"), static_cast<qint64>(line.use.grams())}});
    QJsonObject object{{QStringLiteral("as_of"), fromUtf8(isoText(plan->on))},
                       {QStringLiteral("target_percent"), plan->targetPercent},
                       {QStringLiteral("room_g"), orNull(plan->room)},
                       {QStringLiteral("lines"), lines},
                       {QStringLiteral("blend"), outcomeObject(plan->outcome)},
                       {QStringLiteral("parts"), fromUtf8(plan->parts)}};
    if (context.arguments.has("why")) object.insert(QStringLiteral("why"), whyArray(why));
    printJson(context, object);
    return Done;
}

}  // namespace

std::vector<Command> honeyCommands() {
    return {
        {"honey",
         "FILE",
         "the honey in buckets and lots: how much, how wet, whether it keeps and is ready",
         1,
         1,
         {{"why", nullptr, "how each figure came about"}},
         &runHoney},
        {"blend",
         "FILE",
         "the most honey that can be poured together at or under a water content",
         1,
         1,
         {{"target", "PERCENT", "at most so much water; else the keeper's line"},
          {"tank", "MASS", "what the tank holds to the brim, with its unit"},
          {"with", "NAMES", "buckets and lots that must go in, parted by commas"},
          {"without", "NAMES", "and those that stay out"},
          {"why", nullptr, "how the blend came about"}},
         &runBlend},
    };
}

}  // namespace combwright::cli
