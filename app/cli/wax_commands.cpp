#include <QJsonArray>
#include <QJsonObject>

#include "app/cli/groups.h"
#include "app/cli/season_asked.h"
#include "app/cli/why.h"
#include "core/exchange/or_null.h"
#include "core/places/due/due_wax.h"
#include "core/places/explain/explain_wax.h"
#include "core/places/pages/due/due_calendar.h"
#include "core/places/pages/page_text.h"
#include "core/places/pages/wax_bench/candle_plan_page.h"
#include "core/places/pages/wax_bench/wax_pages.h"
#include "core/places/pages/wax_bench/wax_words.h"
#include "core/storage/whole_file.h"
#include "core/words/words.h"

namespace combwright::cli {
namespace {

qint64 waxGrams(Mass mass) { return static_cast<qint64>(mass.grams()); }

QJsonValue waxKey(std::string_view key) { return fromUtf8(key); }

QJsonValue betweenValue(const std::optional<Between>& range) {
    if (!range) return {};
    return QJsonObject{{QStringLiteral("low"), range->low},
                       {QStringLiteral("likely"), range->likely},
                       {QStringLiteral("high"), range->high}};
}

QJsonArray textsArray(const std::vector<std::string>& texts) {
    QJsonArray array;
    for (const std::string& text : texts) array.append(fromUtf8(text));
    return array;
}

QJsonArray heatArray(const std::vector<HeatSession>& heat) {
    QJsonArray array;
    for (const HeatSession& each : heat)
        array.append(QJsonObject{{QStringLiteral("number"), static_cast<qint64>(each.id.number)},
                                 {QStringLiteral("what"), fromUtf8(each.what.text())},
                                 {QStringLiteral("on"), orNull(std::optional(each.on))},
                                 {QStringLiteral("begun"), fromUtf8(isoText(each.begun))}});
    return array;
}

QJsonObject waxBatchObject(const BatchShown& batch) {
    const WaxBatch& own = batch.ledger.batch;
    return {{QStringLiteral("name"), fromUtf8(own.name.text())},
            {QStringLiteral("on"), orNull(std::optional(own.on))},
            {QStringLiteral("source"), orNull(std::optional(own.source))},
            {QStringLiteral("state"), orNull(own.state)},
            {QStringLiteral("state_now"), orNull(batch.state)},
            {QStringLiteral("weighed_last_g"), orNull(batch.weighed)},
            {QStringLiteral("slumgum_g"), waxGrams(batch.ledger.slumgum)},
            {QStringLiteral("melted_again_g"), waxGrams(batch.ledger.again)},
            {QStringLiteral("shade"), orNull(own.shade)},
            {QStringLiteral("from"), textsArray(batch.from)},
            {QStringLiteral("material"), waxKey(key(batch.material))},
            {QStringLiteral("raw_g"), orNull(batch.raw)},
            {QStringLiteral("in_g"), orNull(batch.ledger.in)},
            {QStringLiteral("clean_g"), waxGrams(batch.ledger.clean)},
            {QStringLiteral("all_weighed"), batch.ledger.allWeighed},
            {QStringLiteral("honey_drained_g"), waxGrams(batch.ledger.drained)},
            {QStringLiteral("yield"), batch.lost ? QJsonValue(batch.lost->yield) : QJsonValue()},
            {QStringLiteral("lost_g"), batch.lost ? QJsonValue(batch.lost->lostG) : QJsonValue()},
            {QStringLiteral("expected_share"),
             batch.yield ? betweenValue(batch.yield->share) : QJsonValue()},
            {QStringLiteral("expected_g"), betweenValue(batch.expectedG)},
            {QStringLiteral("honey_in_it_g"), betweenValue(batch.honeyG)},
            {QStringLiteral("kept"), orNull(batch.kept)},
            {QStringLiteral("kept_since"), orNull(batch.kept ? own.keptSince : std::nullopt)},
            {QStringLiteral("days"), batch.days},
            {QStringLiteral("waits"), batch.waits},
            {QStringLiteral("washed_not_melted_since"), orNull(batch.washedOn)}};
}

QJsonObject mouldObject(const MouldShown& mould) {
    QJsonObject object{
        {QStringLiteral("name"), fromUtf8(mould.mould.name.text())},
        {QStringLiteral("candle"), orNull(mould.candle)},
        {QStringLiteral("cavities"), static_cast<qint64>(mould.mould.cavities.value())},
        {QStringLiteral("volume_ml"), mould.mass ? QJsonValue(mould.mass->volumeMl) : QJsonValue()},
        {QStringLiteral("candle_g"), mould.mass ? QJsonValue(mould.mass->massG) : QJsonValue()},
        {QStringLiteral("first_pour_g"),
         mould.mass ? QJsonValue(mould.mass->firstPourG) : QJsonValue()},
        {QStringLiteral("by_water"), mould.byWater},
        {QStringLiteral("by_scales"), mould.byScales},
        {QStringLiteral("wick"), orNull(mould.mould.wick)},
        {QStringLiteral("set_hours"), orNull(mould.setHours)},
        {QStringLiteral("one_way"), orNull(mould.mould.oneWay)},
        {QStringLiteral("may_be_sold"), mould.safe},
        {QStringLiteral("test_burns"), static_cast<qint64>(mould.tests.size())}};
    if (mould.guess)
        object.insert(QStringLiteral("first_wick_to_try"),
                      QJsonArray{fromUtf8(mould.guess->thinnest), fromUtf8(mould.guess->thickest)});
    return object;
}

QJsonObject waxYearObject(const WaxYear& year) {
    const WaxMoved& moved = year.moved;
    const auto of = [&year](double WaxYearBalance::*member) {
        return year.balance ? QJsonValue((*year.balance).*member) : QJsonValue();
    };
    return {{QStringLiteral("year"), year.year},
            {QStringLiteral("opening_g"), moved.openingG},
            {QStringLiteral("cast_g"), moved.castG},
            {QStringLiteral("brought_g"), moved.broughtG},
            {QStringLiteral("returned_g"), moved.returnedG},
            {QStringLiteral("returned_waits_g"), waxGrams(year.returnedWaits)},
            {QStringLiteral("melted_again_g"), waxGrams(year.again)},
            {QStringLiteral("poured_g"), moved.pouredG},
            {QStringLiteral("given_g"), moved.givenG},
            {QStringLiteral("lost_g"), moved.lostG},
            {QStringLiteral("in_g"), of(&WaxYearBalance::inG)},
            {QStringLiteral("out_g"), of(&WaxYearBalance::outG)},
            {QStringLiteral("in_stock_g"), of(&WaxYearBalance::inStockG)},
            {QStringLiteral("raw_g"), waxGrams(year.raw)},
            {QStringLiteral("clean_g"), waxGrams(year.clean)},
            {QStringLiteral("honey_drained_g"), waxGrams(year.honeyDrained)},
            {QStringLiteral("crop_g"), orNull(year.crop)},
            {QStringLiteral("wax_per_100_honey"),
             year.per100 ? QJsonValue(year.per100->per100) : QJsonValue()},
            {QStringLiteral("against_published"),
             year.per100 ? waxKey(key(year.per100->verdict)) : QJsonValue()}};
}

QJsonObject combObject(const CombProject& comb, Day on) {
    QJsonArray treated;
    for (const TreatmentLine& line : comb.treated)
        treated.append(
            QJsonObject{{QStringLiteral("medicine"), fromUtf8(line.medicine.name.text())},
                        {QStringLiteral("on"), orNull(std::optional(line.treatment.on))}});
    return {{QStringLiteral("name"), fromUtf8(comb.project.name.text())},
            {QStringLiteral("what"), orNull(std::optional(comb.project.what))},
            {QStringLiteral("pieces"), static_cast<qint64>(comb.project.pieces.value())},
            {QStringLiteral("hive"), orNull(comb.hive)},
            {QStringLiteral("put_on"), orNull(comb.project.putOn)},
            {QStringLiteral("off"), orNull(comb.project.off)},
            {QStringLiteral("lidded"), orNull(comb.project.lidded)},
            {QStringLiteral("good"), orNull(comb.project.good)},
            {QStringLiteral("lot"), orNull(comb.project.code)},
            {QStringLiteral("next_look"), orNull(comb.nextLook)},
            {QStringLiteral("on_latest"), orNull(comb.onLatest)},
            {QStringLiteral("treated_while_on"), treated},
            {QStringLiteral("quarantined_since"),
             comb.quarantine ? orNull(std::optional(comb.quarantine->since)) : QJsonValue()},
            {QStringLiteral("may_be_sold"), comb.forSale()},
            {QStringLiteral("says"), projectText(comb, on)}};
}

QJsonArray ofShadeArray(const CandleEvenings& plan, const std::vector<CandlesOfShade>& counts) {
    QJsonArray array;
    for (const CandlesOfShade& each : counts)
        array.append(QJsonObject{{QStringLiteral("what"), fromUtf8(plan.wants[each.want].what)},
                                 {QStringLiteral("shade"), orNull(each.shade)},
                                 {QStringLiteral("count"), static_cast<qint64>(each.count)}});
    return array;
}

QJsonObject shadesObject(const std::vector<ShadeOfWax>& shades) {
    QJsonObject object;
    for (const ShadeOfWax& each : shades) object.insert(fromUtf8(each.shade), each.massG);
    return object;
}

QJsonArray wantedArray(const CandleEvenings& plan) {
    QJsonArray kinds;
    std::size_t want = 0;
    for (const CandlesWantedShown& kind : plan.kinds) {
        QJsonArray wishes;
        for (const CandlesWantedShown::Wish& wish : kind.wishes)
            wishes.append(QJsonObject{{QStringLiteral("by"), orNull(std::optional(wish.by))},
                                      {QStringLiteral("what_for"), orNull(wish.whatFor)},
                                      {QStringLiteral("count"), static_cast<qint64>(wish.count)}});
        QJsonObject object{{QStringLiteral("what"), fromUtf8(kind.kind.name.text())},
                           {QStringLiteral("wished"), static_cast<qint64>(kind.wished)},
                           {QStringLiteral("wishes"), wishes},
                           {QStringLiteral("ready"), static_cast<qint64>(kind.ready)},
                           {QStringLiteral("candle_g"), orNull(kind.massG)},
                           {QStringLiteral("by_mould"), kind.massByMould},
                           {QStringLiteral("wick"), orNull(kind.wick)},
                           {QStringLiteral("cavities"), static_cast<qint64>(kind.cavities)},
                           {QStringLiteral("may_be_sold"), kind.safe},
                           {QStringLiteral("shades"), textsArray(kind.shades)}};
        if (kind.massG && *kind.massG > 0) {
            const auto& needs = plan.needs.kinds[want];
            const CandleReach& reach = plan.reach.kinds[want];
            QJsonArray bites;
            for (const CandleLimit limit : reach.bites) bites.append(waxKey(key(limit)));
            object.insert(QStringLiteral("count"), static_cast<qint64>(plan.wants[want].count));
            object.insert(QStringLiteral("evenings_needed"), orNull(needs.eveningsNeeded));
            object.insert(QStringLiteral("possible"), static_cast<qint64>(needs.possible));
            object.insert(QStringLiteral("short"), static_cast<qint64>(needs.missing));
            object.insert(QStringLiteral("cavities_to_add"), orNull(needs.cavitiesToAdd));
            object.insert(QStringLiteral("by_moulds"), static_cast<qint64>(reach.byMoulds));
            object.insert(QStringLiteral("by_wax"), static_cast<qint64>(reach.byWax));
            object.insert(QStringLiteral("by_wick"), static_cast<qint64>(reach.byWick));
            object.insert(QStringLiteral("come_out"), static_cast<qint64>(reach.made));
            object.insert(QStringLiteral("bites"), bites);
            ++want;
        }
        kinds.append(object);
    }
    return kinds;
}

QJsonArray moreArray(const CandleEvenings& plan) {
    QJsonArray array;
    for (const OneMoreCandleThing& each : plan.oneMore) {
        QJsonObject change;
        for (std::size_t want = 0; want < each.change.size(); ++want)
            change.insert(fromUtf8(plan.wants[want].what), static_cast<qint64>(each.change[want]));
        QJsonObject object{{QStringLiteral("one_more"), waxKey(key(each.what))},
                           {QStringLiteral("change"), change},
                           {QStringLiteral("more"), static_cast<qint64>(each.more)}};
        if (each.what == OneMoreCandleThing::What::Cavity)
            object.insert(QStringLiteral("for"), fromUtf8(plan.wants[each.want].what));
        else
            object.insert(QStringLiteral("name"), orNull(each.name));
        array.append(object);
    }
    return array;
}

QJsonArray eveningsArray(const CandleEvenings& plan) {
    QJsonArray array;
    for (const PouringEvening& evening : plan.plan.evenings) {
        QJsonArray poured;
        for (const PouringEvening::Pours& each : evening.pours)
            poured.append(
                QJsonObject{{QStringLiteral("what"), fromUtf8(plan.wants[each.want].what)},
                            {QStringLiteral("count"), static_cast<qint64>(each.count)},
                            {QStringLiteral("cycles"), static_cast<qint64>(each.cycles)},
                            {QStringLiteral("out_from"), orNull(std::optional(each.outFrom))}});
        array.append(QJsonObject{{QStringLiteral("day"), orNull(std::optional(evening.day))},
                                 {QStringLiteral("pours"), poured}});
    }
    return array;
}

QJsonObject candlePlanObject(const CandleEvenings& plan) {
    QJsonObject wick;
    for (const auto& [size, left] : plan.needs.wickLeftM)
        if (!size.empty()) wick.insert(fromUtf8(size), left);
    double mixedLeft = 0;
    for (const ShadeOfWax& each : plan.mixed.waxLeft) mixedLeft += each.massG;
    return {{QStringLiteral("wanted_by"), orNull(std::optional(plan.date.by))},
            {QStringLiteral("what_for"), orNull(plan.date.whatFor)},
            {QStringLiteral("evenings_free"), static_cast<qint64>(plan.eveningsFree)},
            {QStringLiteral("loss_share"), plan.lossShare},
            {QStringLiteral("stock_g"), shadesObject(plan.stock.wax)},
            {QStringLiteral("wax_net_g"), plan.needs.waxNetG},
            {QStringLiteral("wax_needed_g"), plan.needs.waxNeededG},
            {QStringLiteral("wax_short_g"), plan.needs.waxShortG},
            {QStringLiteral("kinds"), wantedArray(plan)},
            {QStringLiteral("mass_not_known"), textsArray(plan.unknown)},
            {QStringLiteral("wick_left_m"), wick},
            {QStringLiteral("from_stock"), ofShadeArray(plan, plan.needs.fromStock)},
            {QStringLiteral("wax_left_g"), shadesObject(plan.needs.waxLeft)},
            {QStringLiteral("mixed"),
             QJsonObject{{QStringLiteral("from_stock"), ofShadeArray(plan, plan.mixed.fromStock)},
                         {QStringLiteral("wax_left_g"), mixedLeft}}},
            {QStringLiteral("best_mix"), ofShadeArray(plan, plan.best.ofShade)},
            {QStringLiteral("best_mix_proven"), plan.best.proven},
            {QStringLiteral("one_more"), moreArray(plan)},
            {QStringLiteral("evenings"), eveningsArray(plan)},
            {QStringLiteral("last_pour"), orNull(plan.plan.lastPour)},
            {QStringLiteral("finishing"), orNull(plan.plan.finishing)}};
}

QJsonObject waxBenchObject(const Read& file, const WaxBench& bench) {
    QJsonArray batches;
    for (const BatchShown& each : bench.batches) batches.append(waxBatchObject(each));
    QJsonArray blocks;
    for (const BlockLedger& each : bench.blocks)
        blocks.append(
            QJsonObject{{QStringLiteral("name"), fromUtf8(each.block.name.text())},
                        {QStringLiteral("shade"), orNull(std::optional(each.block.shade))},
                        {QStringLiteral("mass_g"), orNull(each.mass)},
                        {QStringLiteral("how"), orNull(std::optional(each.how))},
                        {QStringLiteral("used_g"), waxGrams(each.used)},
                        {QStringLiteral("left_g"), orNull(each.left)}});
    QJsonArray shades;
    for (const ShadeStock& each : bench.shades)
        shades.append(QJsonObject{{QStringLiteral("shade"), orNull(std::optional(each.shade))},
                                  {QStringLiteral("left_g"), waxGrams(each.left)},
                                  {QStringLiteral("how"), orNull(std::optional(each.how))},
                                  {QStringLiteral("blocks"), each.blocks},
                                  {QStringLiteral("not_weighed"), each.notWeighed}});
    QJsonArray moulds;
    for (const MouldShown& each : bench.moulds) moulds.append(mouldObject(each));
    QJsonArray unfinished;
    for (const PourShown& each : bench.unfinished)
        unfinished.append(
            QJsonObject{{QStringLiteral("number"), static_cast<qint64>(each.pour.id.number)},
                        {QStringLiteral("mould"), fromUtf8(each.mould)},
                        {QStringLiteral("candle"), fromUtf8(each.candle)},
                        {QStringLiteral("good"), static_cast<qint64>(each.pour.good.value())},
                        {QStringLiteral("on"), orNull(std::optional(each.pour.on))},
                        {QStringLiteral("set_by"), orNull(each.setBy)},
                        {QStringLiteral("released"), orNull(each.pour.released)},
                        {QStringLiteral("trimmed"), orNull(each.pour.trimmed)},
                        {QStringLiteral("drawn_g"), waxGrams(each.drawn)}});
    QJsonObject wick;
    for (const auto& [size, left] : bench.wick)
        wick.insert(fromUtf8(size), static_cast<double>(left.count()) / 10'000.0);
    QJsonArray projects;
    for (const CombProject& each : combProjects(file, bench.on))
        projects.append(combObject(each, bench.on));
    return {{QStringLiteral("as_of"), orNull(std::optional(bench.on))},
            {QStringLiteral("heat_on"), heatArray(bench.heat)},
            {QStringLiteral("batches"), batches},
            {QStringLiteral("blocks"), blocks},
            {QStringLiteral("shades"), shades},
            {QStringLiteral("moulds"), moulds},
            {QStringLiteral("unfinished"), unfinished},
            {QStringLiteral("wick_m"), wick},
            {QStringLiteral("propolis_g"), waxGrams(bench.propolis)},
            {QStringLiteral("returned_waits_g"), waxGrams(bench.returned)},
            {QStringLiteral("comb_jars"), projects},
            {QStringLiteral("year"), waxYearObject(bench.year)}};
}

/// The day named with --plan, else the next; none where no candles are wanted.
Result<std::optional<CandleDate>> dateAsked(const Context& context, const Read& file) {
    const auto dates = candleDates(file, context.clock.today());
    const auto said = context.arguments.value("plan");
    if (!said) return dates.empty() ? std::nullopt : std::optional(dates.front());
    const auto day = parseDay(said->toStdString());
    if (!day) return Refusal{Code::NotADay, "wanted_by", {{"value", said->toStdString()}}};
    for (const CandleDate& each : candleDates(file, *day))
        if (each.by == *day) return std::optional(each);
    std::string days;
    for (const CandleDate& each : dates) days += (days.empty() ? "" : ", ") + isoText(each.by);
    return Refusal{
        Code::NotFound,
        "wanted_by",
        {{"lacks", "candles"}, {"name", said->toStdString()}, {"choices", std::move(days)}}};
}

Result<Page> waxSheetAsked(const QString& name, const Read& file, const WaxBench& bench,
                           const std::optional<CandleEvenings>& plan) {
    if (name == QStringLiteral("plan"))
        return plan ? candlePlanPage(file, *plan) : nextCandlePlanPage(file, bench.on);
    if (name == QStringLiteral("batch")) return nextBatchSheetPage(file, bench);
    if (name == QStringLiteral("care-cards")) return careCardsPage(file, bench);
    if (name == QStringLiteral("balance")) return waxBalancePage(file, bench);
    if (name == QStringLiteral("propolis")) return propolisCardPage(file, bench.on);
    if (name == QStringLiteral("comb-jars")) return combJarsPage(file, bench.on);
    return Refusal{Code::NoSuchCommand,
                   "print",
                   {{"name", name.toStdString()},
                    {"choices", "plan, batch, care-cards, balance, propolis, comb-jars"}}};
}

int runWax(Context& context) {
    const Season season = seasonToRead(context);
    const Read& file = season.read();
    const OneState still(file);
    const Day today = context.clock.today();
    const WaxBench bench = waxBench(file, today);
    const auto date = dateAsked(context, file);
    if (!date) return refuse(context, date.error());
    std::optional<CandleEvenings> plan;
    if (*date) {
        auto planned = candleEvenings(file, today, *date);
        if (!planned) return refuse(context, planned.error());
        plan = *std::move(planned);
    }
    std::optional<Page> sheet;
    if (const auto print = context.arguments.value("print")) {
        auto page = waxSheetAsked(*print, file, bench, plan);
        if (!page) return refuse(context, page.error());
        sheet = *std::move(page);
    }
    if (const auto path = context.arguments.value("calendar")) {
        const auto entries = plan && context.arguments.has("plan")
                                 ? candleCalendar(*plan)
                                 : candleCalendar(candlePlans(file, today));
        writeWholeFile(path->toStdString(), icalendarText(entries, {}, context.clock.now()));
        if (context.json())
            printJson(context, QJsonObject{{QStringLiteral("calendar"), *path},
                                           {QStringLiteral("entries"),
                                            static_cast<qint64>(entries.size())}});
        else
            context.streams.out << entries.size() << " entries written to " << *path << ".\n";
        return Done;
    }
    std::vector<Explained> why;
    if (context.arguments.has("why")) {
        why = explainWax(file, bench);
        if (plan)
            for (Explained& each : explainCandlePlan(file, *plan)) why.push_back(std::move(each));
    }
    if (context.json()) {
        QJsonObject object = waxBenchObject(file, bench);
        object.insert(QStringLiteral("plan"),
                      plan ? QJsonValue(candlePlanObject(*plan)) : QJsonValue());
        if (context.arguments.has("why")) object.insert(QStringLiteral("why"), whyArray(why));
        printJson(context, object);
        return Done;
    }
    if (sheet) {
        for (const HeatSession& heat : bench.heat)
            context.streams.out << openHeatText(heat) << "\n\n";
        context.streams.out << pageText(*sheet);
        return Done;
    }
    context.streams.out << pageText(waxBenchPage(file, bench));
    if (plan) context.streams.out << '\n' << pageText(candlePlanPage(file, *plan));
    printWhy(context, why);
    return Done;
}

}  // namespace

std::vector<Command> waxCommands() {
    return {{"wax",
             "FILE",
             "the wax bench, the year's balance, and the candles wanted, planned backwards",
             1,
             1,
             {{"plan", "DATE", "the candles wanted by that day; else the next that are"},
              {"print", "SHEET", "plan, batch, care-cards, balance, propolis or comb-jars"},
              {"calendar", "OUT.ics", "write the evenings of the plan as a calendar file instead"},
              {"why", nullptr, "how each figure came about"}},
             &runWax}};
}

}  // namespace combwright::cli
