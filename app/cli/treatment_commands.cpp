#include <QCoreApplication>
#include <QJsonArray>
#include <QJsonObject>

#include "app/cli/groups.h"
#include "app/cli/season_asked.h"
#include "app/cli/why.h"
#include "core/exchange/or_null.h"
#include "core/places/pages/health/health_pages.h"
#include "core/places/pages/health/health_words.h"
#include "core/places/pages/page_text.h"
#include "core/storage/queries/names.h"
#include "core/storage/season.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright::cli {
namespace {

QJsonObject rateObject(const MiteRate& rate) {
    return {{QStringLiteral("per_100"), rate.per100},
            {QStringLiteral("low"), rate.low},
            {QStringLiteral("high"), rate.high}};
}

QJsonObject miteSampleObject(const MiteSample& sample) {
    const Finding& finding = sample.finding;
    const auto value = [](const std::optional<Known<Count>>& counted) {
        return counted ? orNull(counted->value) : QJsonValue();
    };
    QJsonObject object{{QStringLiteral("on"), fromUtf8(isoText(finding.on))},
                       {QStringLiteral("method"), fromUtf8(word(finding.method))},
                       {QStringLiteral("mites"), value(finding.mites)},
                       {QStringLiteral("bees"), value(finding.bees)}};
    if (finding.mites) object.insert(QStringLiteral("how"), fromUtf8(word(sample.how)));
    if (sample.rate) {
        const QJsonObject rate = rateObject(*sample.rate);
        for (auto at = rate.begin(); at != rate.end(); ++at) object.insert(at.key(), at.value());
        object.insert(QStringLiteral("reckoned_bees"), static_cast<qint64>(sample.bees));
        // Without the bees there is no rate; the key stays for those who read it.
        object.insert(QStringLiteral("bees_assumed"), false);
    }
    if (sample.corrected) {
        object.insert(QStringLiteral("recovery"), sample.recovery);
        object.insert(QStringLiteral("corrected"), rateObject(*sample.corrected));
    }
    if (finding.method == FindingMethod::Board) {
        object.insert(QStringLiteral("days_on_board"), orNull(finding.daysOnBoard));
        object.insert(QStringLiteral("per_day"), orNull(sample.perDay));
        object.insert(QStringLiteral("verdict"),
                      sample.verdict ? QJsonValue(fromUtf8(key(*sample.verdict))) : QJsonValue());
        object.insert(QStringLiteral("source"), orNull(sample.fallSource));
    }
    if (sample.cellShare) {
        object.insert(QStringLiteral("cells"), value(finding.cells));
        object.insert(QStringLiteral("cells_per_100"), rateObject(*sample.cellShare));
    }
    return object;
}

QJsonValue miteLineObject(const std::optional<MiteLineInForce>& line) {
    if (!line) return {};
    return QJsonObject{{QStringLiteral("per_100"), line->per100},
                       {QStringLiteral("from"), fromUtf8(key(line->from))},
                       {QStringLiteral("phase"), fromUtf8(key(line->phase.phase))},
                       {QStringLiteral("edition"), orNull(line->edition)},
                       {QStringLiteral("region"), orNull(line->region)},
                       {QStringLiteral("since"), orNull(line->since)},
                       {QStringLiteral("source"), orNull(line->source)}};
}

QJsonObject hiveMitesObject(const HiveMites& mites) {
    QJsonArray samples;
    for (const MiteSample& each : mites.samples) samples.append(miteSampleObject(each));
    QJsonArray pests;
    for (const Finding& each : mites.otherPests)
        pests.append(QJsonObject{{QStringLiteral("what"), fromUtf8(word(each.what))},
                                 {QStringLiteral("on"), fromUtf8(isoText(each.on))},
                                 {QStringLiteral("level"), orNull(each.level)}});
    QJsonValue forecast;
    if (mites.forecast)
        forecast = QJsonObject{{QStringLiteral("earliest"), orNull(mites.forecast->earliest)},
                               {QStringLiteral("likely"), orNull(mites.forecast->likely)},
                               {QStringLiteral("latest"), orNull(mites.forecast->latest)},
                               {QStringLiteral("doubling_days"), mites.doublingDays}};
    return {
        {QStringLiteral("hive"), fromUtf8(mites.hive.mark.text())},
        {QStringLiteral("yard"), fromUtf8(mites.yard.name.text())},
        {QStringLiteral("standing"), fromUtf8(key(mites.standing))},
        {QStringLiteral("undecided"), mites.undecided},
        {QStringLiteral("sample"),
         mites.sample ? QJsonValue(miteSampleObject(*mites.sample)) : QJsonValue()},
        {QStringLiteral("line"), miteLineObject(mites.line)},
        {QStringLiteral("stands_by"), miteLineObject(mites.standsBy)},
        {QStringLiteral("board"),
         mites.board ? QJsonValue(miteSampleObject(*mites.board)) : QJsonValue()},
        {QStringLiteral("other_pests"), pests},
        {QStringLiteral("forecast"), forecast},
        {QStringLiteral("treated_since"),
         mites.treatedSince ? QJsonValue(fromUtf8(isoText(mites.treatedSince->on))) : QJsonValue()},
        {QStringLiteral("samples"), samples}};
}

int runMites(Context& context) {
    const Season season = seasonToRead(context);
    const Read& file = season.read();
    const Day today = context.clock.today();
    const auto yard = yardNamed(context, file);
    if (!yard) return refuse(context, yard.error());
    const auto hives = mites(file, *yard, today);
    const auto why =
        context.arguments.has("why") ? explainMites(file, hives, today) : std::vector<Explained>();
    if (context.json()) {
        QJsonArray list;
        for (const HiveMites& each : hives) list.append(hiveMitesObject(each));
        QJsonObject object{{QStringLiteral("as_of"), fromUtf8(isoText(today))},
                           {QStringLiteral("hives"), list}};
        if (context.arguments.has("why")) object.insert(QStringLiteral("why"), whyArray(why));
        printJson(context, object);
        return Done;
    }
    context.streams.out << pageText(mitesPage(file, hives, today));
    printWhy(context, why);
    return Done;
}

QJsonValue publishedObject(const MedicineStock& stock) {
    if (!stock.published) return {};
    const PublishedWait& row = *stock.published;
    const char* supers = row.supers == PublishedSupers::Off       ? "off"
                         : row.supers == PublishedSupers::MayStay ? "may stay"
                                                                  : "see label";
    return QJsonObject{{QStringLiteral("edition"), fromUtf8(row.edition)},
                       {QStringLiteral("region"), orNull(row.region)},
                       {QStringLiteral("supers"), QLatin1String(supers)},
                       {QStringLiteral("in_hive_from_days"), orNull(row.inHiveFromDays)},
                       {QStringLiteral("in_hive_to_days"), orNull(row.inHiveToDays)},
                       {QStringLiteral("wait_days"), orNull(row.waitDays)},
                       {QStringLiteral("warm_from_c"), orNull(row.fromC)},
                       {QStringLiteral("warm_to_c"), orNull(row.toC)},
                       {QStringLiteral("source"), fromUtf8(row.source)}};
}

const char* windowKey(InWindow window) {
    switch (window) {
        case InWindow::TooCold:
            return "too_cold";
        case InWindow::Suits:
            return "suits";
        case InWindow::TooWarm:
            return "too_warm";
    }
    return "";
}

QJsonObject medicineObject(const MedicineStock& stock, std::optional<double> warmthC) {
    const Medicine& medicine = stock.medicine;
    const auto celsius = [](const std::optional<Temperature>& warmth) {
        return warmth ? QJsonValue(warmth->celsius()) : QJsonValue();
    };
    QJsonObject object{
        {QStringLiteral("medicine"), fromUtf8(medicine.name.text())},
        {QStringLiteral("active"), orNull(medicine.active)},
        {QStringLiteral("batch"), orNull(medicine.batch)},
        {QStringLiteral("expires"), orNull(medicine.expires)},
        {QStringLiteral("expired"), stock.expired},
        {QStringLiteral("bought_on"), orNull(medicine.boughtOn)},
        {QStringLiteral("bought"), orNull(stock.use.bought)},
        {QStringLiteral("used"), stock.use.unknown ? QJsonValue() : QJsonValue(stock.use.used)},
        {QStringLiteral("disposed"),
         stock.use.unknown ? QJsonValue() : QJsonValue(stock.use.disposed)},
        {QStringLiteral("left"), orNull(stock.use.left())},
        {QStringLiteral("unit"), orNull(medicine.unit)},
        {QStringLiteral("hives"), static_cast<qint64>(stock.use.hives)},
        {QStringLiteral("withdrawal"), orNull(medicine.withdrawal)},
        {QStringLiteral("supers"), orNull(medicine.supers)},
        {QStringLiteral("in_hive_from_days"), orNull(medicine.inHiveFrom)},
        {QStringLiteral("in_hive_to_days"), orNull(medicine.inHiveTo)},
        {QStringLiteral("wait_days"), orNull(medicine.waitDays)},
        {QStringLiteral("warm_from_c"), celsius(medicine.warmFrom)},
        {QStringLiteral("warm_to_c"), celsius(medicine.warmTo)},
        {QStringLiteral("published"), publishedObject(stock)}};
    if (warmthC) {
        const auto window = suits(medicine, *warmthC);
        object.insert(QStringLiteral("warmth"),
                      window ? QJsonValue(QLatin1String(windowKey(*window))) : QJsonValue());
        const auto published = suitsPublished(stock, *warmthC);
        object.insert(QStringLiteral("published_warmth"),
                      published ? QJsonValue(QLatin1String(windowKey(*published))) : QJsonValue());
    }
    return object;
}

QJsonObject treatmentObject(const TreatmentLine& line) {
    const Treatment& given = line.treatment;
    return {
        {QStringLiteral("yard"), fromUtf8(line.yard.name.text())},
        {QStringLiteral("hive"), fromUtf8(line.hive.mark.text())},
        {QStringLiteral("medicine"), fromUtf8(line.medicine.name.text())},
        {QStringLiteral("on"), fromUtf8(isoText(given.on))},
        {QStringLiteral("amount"), given.amount ? QJsonValue(given.amount->value()) : QJsonValue()},
        {QStringLiteral("out"), orNull(given.out)},
        {QStringLiteral("out_from"), line.dueOut ? orNull(line.dueOut->from) : QJsonValue()},
        {QStringLiteral("out_by"), line.dueOut ? orNull(line.dueOut->to) : QJsonValue()},
        {QStringLiteral("supers_on"), orNull(given.supersOn)},
        {QStringLiteral("supers_may_stay"), line.supersMayStay},
        {QStringLiteral("supers_back_from"), orNull(line.supersBack)},
        {QStringLiteral("supers_earliest"), orNull(line.supersEarliest)}};
}

QJsonObject treatedBoxObject(const TreatedBox& box) {
    return {{QStringLiteral("box"), fromUtf8(box.name)},
            {QStringLiteral("since"), fromUtf8(isoText(box.hold.since))},
            {QStringLiteral("place"), fromUtf8(word(box.box.place))},
            {QStringLiteral("hive"),
             box.line ? QJsonValue(fromUtf8(box.line->hive.mark.text())) : QJsonValue()},
            {QStringLiteral("medicine"),
             box.line ? QJsonValue(fromUtf8(box.line->medicine.name.text())) : QJsonValue()}};
}

/// The treatments behind a lot, and its boxes that were on meanwhile.
int runLot(Context& context, const Read& file, const QString& name) {
    const auto found =
        findNamed(file, Extraction::table,
                  NameQuery{.name = name.toStdString(), .on = context.clock.today()});
    if (!found) return refuse(context, found.error());
    const Id<Extraction> run{*found};
    const auto behind = treatmentsBehind(file, run);
    const auto treated = treatedInRun(file, run);
    if (context.json()) {
        QJsonArray treatments;
        for (const TreatmentLine& each : behind) {
            QJsonObject object = treatmentObject(each);
            object.insert(QStringLiteral("box_was_on"), each.boxWasOn);
            treatments.append(object);
        }
        QJsonArray boxes;
        for (const TreatedBox& each : treated) boxes.append(treatedBoxObject(each));
        printJson(context, QJsonObject{{QStringLiteral("run"), name},
                                       {QStringLiteral("treatments"), treatments},
                                       {QStringLiteral("treated_boxes"), boxes}});
        return Done;
    }
    context.streams.out << pageText(lotTreatmentsPage(file, run));
    return Done;
}

int runMedicines(Context& context) {
    const Season season = seasonToRead(context);
    const Read& file = season.read();
    const Day today = context.clock.today();
    if (const auto run = context.arguments.value("run")) return runLot(context, file, *run);
    const auto yard = yardNamed(context, file);
    if (!yard) return refuse(context, yard.error());
    std::optional<double> warmthC;
    if (const auto typed = context.arguments.value("warm")) {
        const auto warmth = typedTemperature(*typed);
        if (!warmth)
            return misused(context,
                           QCoreApplication::translate(
                               "cli", "--warm needs the warmth of the day, as 24 or 75 F"));
        warmthC = warmth->celsius();
    }
    const auto why = context.arguments.has("why") ? explainTreatments(file, *yard, today)
                                                  : std::vector<Explained>();
    if (context.json()) {
        QJsonArray stock;
        for (const MedicineStock& each : medicinesOn(file, today))
            stock.append(medicineObject(each, warmthC));
        QJsonArray running;
        for (const TreatmentLine& each : runningTreatments(file, *yard, today))
            running.append(treatmentObject(each));
        QJsonArray waiting;
        for (const TreatmentLine& each : waitingTreatments(file, *yard, today))
            waiting.append(treatmentObject(each));
        QJsonArray early;
        for (const SuperTooEarly& each : supersTooEarlyIn(file, *yard, today))
            early.append(QJsonObject{
                {QStringLiteral("box"), fromUtf8(each.name)},
                {QStringLiteral("hive"), fromUtf8(each.back.line.hive.mark.text())},
                {QStringLiteral("medicine"), fromUtf8(each.back.line.medicine.name.text())},
                {QStringLiteral("went_on"), fromUtf8(isoText(each.wentOn))},
                {QStringLiteral("not_before"), orNull(each.back.from)}});
        QJsonArray boxes;
        for (const TreatedBox& each : treatedBoxes(file, today))
            boxes.append(treatedBoxObject(each));
        QJsonObject object{{QStringLiteral("as_of"), fromUtf8(isoText(today))},
                           {QStringLiteral("medicines"), stock},
                           {QStringLiteral("in_hives"), running},
                           {QStringLiteral("supers_wait"), waiting},
                           {QStringLiteral("supers_too_early"), early},
                           {QStringLiteral("treated_boxes"), boxes}};
        if (context.arguments.has("why")) object.insert(QStringLiteral("why"), whyArray(why));
        printJson(context, object);
        return Done;
    }
    const bool record = context.arguments.has("record");
    const bool inspector = context.arguments.has("inspector");
    context.streams.out << pageText(record      ? medicineRecordPage(file, today)
                                    : inspector ? inspectorPage(file, today)
                                                : treatmentsPage(file, *yard, today, warmthC));
    printWhy(context, why);
    return Done;
}

}  // namespace

std::vector<Command> treatmentCommands() {
    return {
        {"mites",
         "FILE",
         "mites of each hive: rate and interval, the line, what follows",
         1,
         1,
         {{"yard", "NAME", "only this yard"}, {"why", nullptr, "how each figure came about"}},
         &runMites},
        {"medicines",
         "FILE",
         "what is left, what is in which hive, when supers may return",
         1,
         1,
         {{"yard", "NAME", "only hives of this yard"},
          {"warm", "DEGREES", "the warmth of the day, held against each label"},
          {"run", "NAME", "the treatments behind this lot"},
          {"record", nullptr, "the medicine record, as text"},
          {"inspector", nullptr, "the inspector's list, as text"},
          {"why", nullptr, "how each figure came about"}},
         &runMedicines},
    };
}

}  // namespace combwright::cli
