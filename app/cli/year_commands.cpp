#include <QCoreApplication>
#include <QJsonArray>
#include <QJsonObject>
#include <map>

#include "app/cli/groups.h"
#include "app/cli/season_asked.h"
#include "core/exchange/or_null.h"
#include "core/places/pages/chart_words.h"
#include "core/places/pages/page_text.h"
#include "core/places/pages/season_book/harvest_chart.h"
#include "core/places/pages/season_book/through_year_charts.h"
#include "core/places/season_book/harvest_line.h"
#include "core/places/season_book/through_year.h"
#include "core/storage/season.h"
#include "core/words/words.h"

namespace combwright::cli {
namespace {

std::optional<int> wholeYear(const QString& text) {
    bool isNumber = false;
    const int year = text.trimmed().toInt(&isNumber);
    return isNumber && year >= 1900 && year <= 2200 ? std::optional(year) : std::nullopt;
}

QJsonObject harvestObject(const HarvestLine& line) {
    QJsonArray parts;
    for (const HarvestPart& part : line.parts) {
        QJsonArray came;
        Mass sum;
        for (const HarvestCame& each : part.came) {
            sum += each.mass;
            came.append(
                QJsonObject{{QStringLiteral("on"), fromUtf8(isoText(each.on))},
                            {QStringLiteral("run"), fromUtf8(each.lot)},
                            {QStringLiteral("yard"), orNull(each.yard)},
                            {QStringLiteral("honey_g"), static_cast<qint64>(each.mass.grams())},
                            {QStringLiteral("how"), fromUtf8(word(each.how))},
                            {QStringLiteral("added_up_g"), static_cast<qint64>(sum.grams())}});
        }
        parts.append(
            QJsonObject{{QStringLiteral("name"), orNull(part.name)},
                        {QStringLiteral("hive_known"), !part.withoutHive},
                        {QStringLiteral("honey_g"), static_cast<qint64>(part.total.grams())},
                        {QStringLiteral("how"), fromUtf8(word(part.how))},
                        {QStringLiteral("undated_g"), static_cast<qint64>(part.undated.grams())},
                        {QStringLiteral("came"), came}});
    }
    return {{QStringLiteral("season"), line.year},
            {QStringLiteral("by"), fromUtf8(key(line.by))},
            {QStringLiteral("honey_g"), static_cast<qint64>(line.total.grams())},
            {QStringLiteral("parts"), parts}};
}

/// What lines have in common; the points are `point`'s.
template <class Line, class PointObject>
QJsonArray linesArray(const std::vector<Line>& lines, const PointObject& pointObject) {
    QJsonArray array;
    for (const Line& line : lines) {
        QJsonArray points;
        for (const auto& point : line.points) {
            QJsonObject object = pointObject(point);
            object.insert(QStringLiteral("on"), fromUtf8(isoText(point.on)));
            points.append(object);
        }
        array.append(QJsonObject{{QStringLiteral("hive"), fromUtf8(line.mark)},
                                 {QStringLiteral("yard"), fromUtf8(line.yard)},
                                 {QStringLiteral("colony"), line.ordinal},
                                 {QStringLiteral("points"), points}});
    }
    return array;
}

QJsonObject mitesObject(const MitesThroughYear& mites) {
    QJsonArray limits;
    for (const MiteLineThroughYear& limit : mites.limits)
        for (const MiteLineFrom& step : limit.steps)
            limits.append(QJsonObject{{QStringLiteral("yard"), orNull(limit.yard)},
                                      {QStringLiteral("from"), fromUtf8(isoText(step.from))},
                                      {QStringLiteral("per_100"), step.per100},
                                      {QStringLiteral("whose"), fromUtf8(key(step.whose))}});
    QJsonArray treated;
    for (const TreatedSpan& span : mites.treated) {
        QJsonArray hives;
        for (const std::string& hive : span.hives) hives.append(fromUtf8(hive));
        treated.append(QJsonObject{{QStringLiteral("medicine"), fromUtf8(span.name)},
                                   {QStringLiteral("yard"), fromUtf8(span.yard)},
                                   {QStringLiteral("from"), fromUtf8(isoText(span.from))},
                                   {QStringLiteral("to"), orNull(span.to)},
                                   {QStringLiteral("hives"), hives}});
    }
    return {{QStringLiteral("hives"),
             linesArray(mites.lines,
                        [](const MitePoint& point) {
                            return QJsonObject{
                                {QStringLiteral("method"), fromUtf8(word(point.method))},
                                {QStringLiteral("mites"), static_cast<qint64>(point.mites)},
                                {QStringLiteral("bees"), static_cast<qint64>(point.bees)},
                                {QStringLiteral("per_100"), point.rate.per100},
                                {QStringLiteral("low"), point.rate.low},
                                {QStringLiteral("high"), point.rate.high},
                                {QStringLiteral("how"), fromUtf8(word(point.how))},
                                {QStringLiteral("over_the_line"), point.over}};
                        })},
            {QStringLiteral("line"), limits},
            {QStringLiteral("treated"), treated},
            {QStringLiteral("without_bees"), mites.withoutBees},
            {QStringLiteral("other_methods"), mites.otherMethods}};
}

QJsonObject weightsObject(const WeightsThroughYear& weights) {
    return {{QStringLiteral("hives"),
             linesArray(weights.lines,
                        [](const WeightPoint& point) {
                            return QJsonObject{{QStringLiteral("weight_g"), point.grossG},
                                               {QStringLiteral("how"), fromUtf8(word(point.how))}};
                        })},
            {QStringLiteral("one_side_only"), weights.oneSide}};
}

QJsonObject combsObject(const CombsThroughYear& combs) {
    const auto how = [](const std::optional<double>& value, How known) {
        return value ? QJsonValue(fromUtf8(word(known))) : QJsonValue();
    };
    return {{QStringLiteral("hives"), linesArray(combs.lines, [&](const CombPoint& point) {
                 return QJsonObject{
                     {QStringLiteral("brood_frames"), orNull(point.brood)},
                     {QStringLiteral("brood_how"), how(point.brood, point.broodHow)},
                     {QStringLiteral("stores_frames"), orNull(point.stores)},
                     {QStringLiteral("stores_how"), how(point.stores, point.storesHow)}};
             })}};
}

/// What is drawn of a year, each by the name it is asked for with.
std::vector<std::pair<QString, ChartBlock>> chartsOf(const std::vector<HarvestLine>& harvest,
                                                     const HarvestDrawn& drawn,
                                                     const MitesThroughYear& mites,
                                                     const WeightsThroughYear& weights,
                                                     const CombsThroughYear& combs) {
    return {{QStringLiteral("harvest"), harvestChart(harvest, drawn)},
            {QStringLiteral("mites"), mitesChart(mites)},
            {QStringLiteral("weights"), weightsChart(weights)},
            {QStringLiteral("brood"), broodChart(combs)},
            {QStringLiteral("stores"), storesChart(combs)}};
}

int runYear(Context& context) {
    const Season season = seasonToRead(context);
    const Read& file = season.read();
    const Day today = context.clock.today();
    int year = newestHarvest(file, today);
    if (const auto asked = context.arguments.value("season")) {
        const auto named = wholeYear(*asked);
        if (!named) return misused(context, QStringLiteral("--season needs a year"));
        year = *named;
    }
    HarvestDrawn drawn;
    drawn.each = context.arguments.has("each");
    if (const auto asked = context.arguments.value("by")) {
        const auto by = harvestByOf(asked->toStdString());
        if (!by) return misused(context, QStringLiteral("--by is run, lot, yard or hive"));
        drawn.by = *by;
    }
    std::vector<int> besides;
    if (const auto asked = context.arguments.value("beside"))
        for (const QString& each : asked->split(QLatin1Char(','))) {
            const auto named = wholeYear(each);
            if (!named)
                return misused(context,
                               QStringLiteral("--beside needs a year, or several with commas"));
            besides.push_back(*named);
        }
    std::vector<HarvestLine> harvest{harvestLine(seasonYield(file, year), drawn.by)};
    for (const int each : besides)
        harvest.push_back(harvestLine(seasonYield(file, each), drawn.by));
    const MitesThroughYear mites = mitesThroughYear(file, year, today);
    const WeightsThroughYear weights = weightsThroughYear(file, year);
    const CombsThroughYear combs = combsThroughYear(file, year);
    if (context.json()) {
        QJsonArray beside;
        for (std::size_t i = 1; i < harvest.size(); ++i) beside.append(harvestObject(harvest[i]));
        printJson(context, QJsonObject{{QStringLiteral("season"), year},
                                       {QStringLiteral("harvest"), harvestObject(harvest.front())},
                                       {QStringLiteral("beside"), beside},
                                       {QStringLiteral("mites"), mitesObject(mites)},
                                       {QStringLiteral("weights"), weightsObject(weights)},
                                       {QStringLiteral("brood_and_stores"), combsObject(combs)}});
        return Done;
    }
    const auto charts = chartsOf(harvest, drawn, mites, weights, combs);
    if (const auto asked = context.arguments.value("csv")) {
        for (const auto& [name, chart] : charts)
            if (name == *asked) {
                context.streams.out << csvText(chartTable(chart));
                return Done;
            }
        return misused(context,
                       QStringLiteral("--csv is harvest, mites, weights, brood or stores"));
    }
    bool first = true;
    for (const auto& each : charts) {
        if (!first) context.streams.out << '\n';
        first = false;
        context.streams.out << pageText(chartPage(file, each.second, today));
    }
    return Done;
}

}  // namespace

std::vector<Command> yearCommands() {
    return {
        {"year",
         "FILE",
         "a year day by day: honey, mites, weights, brood",
         1,
         1,
         {{"season", "YEAR", "another year than the last with honey"},
          {"by", "WHAT", "honey by run, lot, yard or hive"},
          {"each", nullptr, "what came each day, not added up"},
          {"beside", "YEARS", "other years beside it, with commas"},
          {"csv", "WHAT", "the rows of one chart: harvest, mites, weights, brood or stores"}},
         &runYear},
    };
}

}  // namespace combwright::cli
