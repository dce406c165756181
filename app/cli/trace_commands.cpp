#include <QCoreApplication>
#include <QJsonArray>
#include <QJsonObject>

#include "app/cli/groups.h"
#include "app/cli/season_asked.h"
#include "core/exchange/or_null.h"
#include "core/places/pages/page_text.h"
#include "core/places/pages/trace/comb_trace_page.h"
#include "core/places/pages/trace/trace_page.h"
#include "core/places/pages/trace/trace_words.h"
#include "core/storage/queries/names.h"
#include "core/words/words.h"

namespace combwright::cli {
namespace {

QString traceSaid(const char* text) { return QCoreApplication::translate("cli", text); }

QJsonArray outArray(const std::vector<TracedOut>& all) {
    QJsonArray list;
    for (const TracedOut& each : all)
        list.append(QJsonObject{
            {QStringLiteral("on"), fromUtf8(isoText(each.on))},
            {QStringLiteral("went"), fromUtf8(word(each.how))},
            {QStringLiteral("kind"), orNull(each.kind)},
            {QStringLiteral("count"), orNull(each.count)},
            {QStringLiteral("mass_g"), orNull(each.mass ? each.mass->middle() : std::nullopt)},
            {QStringLiteral("place"), orNull(each.place)},
            {QStringLiteral("buyer"), orNull(each.buyer)},
            {QStringLiteral("fair"), orNull(each.fair)},
            {QStringLiteral("not_counted_up"), each.inTheBox}});
    return list;
}

QJsonArray vesselArray(const std::vector<TracedVessel>& all) {
    QJsonArray list;
    for (const TracedVessel& each : all)
        list.append(
            QJsonObject{{QStringLiteral("name"), fromUtf8(each.name)},
                        {QStringLiteral("what"),
                         each.vessel.lot ? QStringLiteral("lot") : QStringLiteral("bucket")},
                        {QStringLiteral("on"), fromUtf8(isoText(each.on))},
                        {QStringLiteral("part"), orNull(each.part)},
                        {QStringLiteral("in_g"), orNull(each.in)},
                        {QStringLiteral("of_it_g"), orNull(each.ofIt)},
                        {QStringLiteral("how"), fromUtf8(word(each.how))},
                        {QStringLiteral("left_g"), orNull(each.left)}});
    return list;
}

QJsonObject forwardObject(const TraceForward& forward) {
    QJsonArray fillings;
    for (const TracedFilling& each : forward.fillings) {
        QJsonArray jars;
        for (const TracedJars& kind : each.jars)
            jars.append(QJsonObject{{QStringLiteral("kind"), fromUtf8(kind.kind)},
                                    {QStringLiteral("filled"), static_cast<qint64>(kind.filled)},
                                    {QStringLiteral("gone"), static_cast<qint64>(kind.gone)},
                                    {QStringLiteral("left"), static_cast<qint64>(kind.left)}});
        QJsonArray complaints;
        for (const Complaint& said : each.complaints)
            complaints.append(QJsonObject{{QStringLiteral("on"), fromUtf8(isoText(said.on))},
                                          {QStringLiteral("what"), fromUtf8(said.what.text())},
                                          {QStringLiteral("who"), orNull(said.who)},
                                          {QStringLiteral("closed"), orNull(said.closed)}});
        fillings.append(QJsonObject{{QStringLiteral("code"), fromUtf8(each.bottling.code.text())},
                                    {QStringLiteral("on"), fromUtf8(isoText(each.bottling.on))},
                                    {QStringLiteral("from"), fromUtf8(each.from)},
                                    {QStringLiteral("part"), orNull(each.part)},
                                    {QStringLiteral("honey_g"), orNull(each.honey)},
                                    {QStringLiteral("of_it_g"), orNull(each.ofIt)},
                                    {QStringLiteral("jars"), jars},
                                    {QStringLiteral("out"), outArray(each.out)},
                                    {QStringLiteral("complaints"), complaints}});
    }
    QJsonArray bulk;
    for (const TracedBulk& each : forward.bulk) {
        QJsonObject out = outArray({each.out}).first().toObject();
        out.insert(QStringLiteral("from"), fromUtf8(each.from));
        out.insert(QStringLiteral("part"), orNull(each.part));
        bulk.append(out);
    }
    return {{QStringLiteral("in"), vesselArray(forward.starts)},
            {QStringLiteral("lots"), vesselArray(forward.lots)},
            {QStringLiteral("fillings"), fillings},
            {QStringLiteral("bulk"), bulk}};
}

QJsonObject runObject(const TraceRun& run) {
    QJsonArray hives;
    for (const TraceHive& each : run.hives)
        hives.append(QJsonObject{
            {QStringLiteral("hive"), each.hive ? QJsonValue(fromUtf8(each.mark)) : QJsonValue()},
            {QStringLiteral("part"), each.part},
            {QStringLiteral("mass_g"), orNull(each.mass)},
            {QStringLiteral("how"), fromUtf8(word(each.how))},
            {QStringLiteral("at_closing_g"), orNull(each.atClosing)}});
    QJsonArray boxes;
    for (const TraceBox& each : run.boxes)
        boxes.append(QJsonObject{{QStringLiteral("box"), fromUtf8(each.mark)},
                                 {QStringLiteral("hive"), orNull(each.hive)},
                                 {QStringLiteral("on"), orNull(each.on)},
                                 {QStringLiteral("off"), orNull(each.off)}});
    QJsonArray medicines;
    for (const TraceMedicine& each : run.medicines)
        medicines.append(
            QJsonObject{{QStringLiteral("hive"), fromUtf8(each.hive)},
                        {QStringLiteral("medicine"), fromUtf8(each.line.medicine.name.text())},
                        {QStringLiteral("on"), fromUtf8(isoText(each.line.treatment.on))},
                        {QStringLiteral("out"), orNull(each.line.treatment.out)},
                        {QStringLiteral("boxes_on"), each.boxesOn},
                        {QStringLiteral("boxes"), each.boxes}});
    return {{QStringLiteral("run"), fromUtf8(run.run.name.text())},
            {QStringLiteral("yard"), orNull(run.yard)},
            {QStringLiteral("on"), fromUtf8(isoText(run.run.on))},
            {QStringLiteral("part"), run.part},
            {QStringLiteral("mass_g"), orNull(run.mass)},
            {QStringLiteral("revised"), run.revised},
            {QStringLiteral("hives"), hives},
            {QStringLiteral("boxes"), boxes},
            {QStringLiteral("treatments"), medicines}};
}

QJsonValue backObject(const std::optional<TraceBack>& back) {
    if (!back) return {};
    QJsonArray sources;
    for (const TraceSource& each : back->sources)
        sources.append(QJsonObject{{QStringLiteral("name"), fromUtf8(each.name)},
                                   {QStringLiteral("part"), each.part},
                                   {QStringLiteral("mass_g"), orNull(each.mass)},
                                   {QStringLiteral("how"), fromUtf8(word(each.how))}});
    QJsonArray runs;
    for (const TraceRun& each : back->runs) runs.append(runObject(each));
    return QJsonObject{{QStringLiteral("mass_g"), orNull(back->mass)},
                       {QStringLiteral("sources"), sources},
                       {QStringLiteral("runs"), runs}};
}

QJsonValue combObject(const std::optional<CombTrace>& traced) {
    if (!traced) return {};
    const HiveProject& project = traced->comb.project;
    return QJsonObject{{QStringLiteral("name"), fromUtf8(project.name.text())},
                       {QStringLiteral("hive"), orNull(traced->comb.hive)},
                       {QStringLiteral("put_on"), orNull(project.putOn)},
                       {QStringLiteral("taken_off"), orNull(project.off)},
                       {QStringLiteral("lidded_on"), orNull(project.lidded)},
                       {QStringLiteral("good"), orNull(project.good)},
                       {QStringLiteral("treated_while_on"), !traced->comb.treated.empty()},
                       {QStringLiteral("out_of_kind"), outArray(traced->out)}};
}

template <class Record>
Result<void> meant(const Context& context, const Read& file, const char* option,
                   std::optional<Id<Record>>& into) {
    const auto name = context.arguments.value(option);
    if (!name) return {};
    NameQuery query{.name = name->toStdString(), .on = context.clock.today()};
    if (const auto yard = context.arguments.value("yard")) query.yard = yard->toStdString();
    if (const auto run = context.arguments.value("run")) query.run = run->toStdString();
    if (const auto hive = context.arguments.value("hive")) query.hive = hive->toStdString();
    const auto found = findNamed(file, Record::table, query);
    if (!found) return found.error();
    into = Id<Record>{*found};
    return {};
}

/// What is asked for; --run and --hive say more of a bucket or a treatment where these are given.
Result<TraceOf> traceAsked(const Context& context, const Read& file) {
    TraceOf of;
    const auto asked = [&](const char* option) { return context.arguments.has(option); };
    // Comb jars have a code, and no filling and no lot behind it.
    for (const char* const option : {"code", "lot"})
        if (const auto code = context.arguments.value(option)) {
            const NameQuery query{.name = code->toStdString(), .on = context.clock.today()};
            const bool honey = findNamed(file, Bottling::table, query).has_value() ||
                               findNamed(file, Lot::table, query).has_value();
            of.comb = honey ? std::nullopt : combCalled(file, query.name);
            if (of.comb) return of;
        }
    for (const auto& ok :
         {meant(context, file, "lot", of.lot), meant(context, file, "code", of.bottling),
          meant(context, file, "bucket", of.bucket), meant(context, file, "box", of.box),
          meant(context, file, "treatment", of.treatment),
          asked("bucket") ? Result<void>() : meant(context, file, "run", of.run),
          asked("treatment") || asked("box") ? Result<void>()
                                             : meant(context, file, "hive", of.hive)})
        if (!ok) return ok.error();
    return of;
}

int thingsAsked(const TraceOf& of) {
    int asked = 0;
    for (const bool is :
         {of.bucket.has_value(), of.lot.has_value(), of.bottling.has_value(), of.run.has_value(),
          of.hive.has_value(), of.box.has_value(), of.treatment.has_value(), of.comb.has_value()})
        asked += is ? 1 : 0;
    return asked;
}

int printKept(Context& context, const Read& file, const Trace& traced) {
    if (!context.json()) {
        if (traced.kept.empty())
            context.streams.out << traceSaid("No sheet of it was kept.") << '\n';
        for (const KeptSheet& each : traced.kept)
            context.streams.out << pageText(keptSheetPage(file, each));
        return Done;
    }
    QJsonArray kept;
    for (const KeptSheet& each : traced.kept)
        kept.append(QJsonObject{{QStringLiteral("on"), fromUtf8(isoText(each.on))},
                                {QStringLiteral("as_it_read"), fromUtf8(each.text)}});
    printJson(context, QJsonObject{{QStringLiteral("of"), fromUtf8(traced.name)},
                                   {QStringLiteral("kept"), kept}});
    return Done;
}

int runTrace(Context& context) {
    const Season season = seasonToRead(context);
    const Read& file = season.read();
    const auto of = traceAsked(context, file);
    if (!of) return refuse(context, of.error());
    if (thingsAsked(*of) != 1)
        return misused(context, traceSaid("trace needs one of --lot, --code, --bucket, --run, "
                                          "--hive, --box and --treatment"));
    const auto traced = trace(file, *of, context.clock.today());
    if (!traced) {
        const auto since = tracedSince(file, *of);
        if (!since) return refuse(context, Refusal{Code::NotFound, "trace", {}});
        return refuse(context,
                      Refusal{Code::BeforeItBegan,
                              "on",
                              {{"name", traceSubject(file, *of)}, {"since", isoText(*since)}}});
    }
    if (context.arguments.has("kept")) return printKept(context, file, *traced);
    if (!context.json()) {
        context.streams.out << pageText(tracePage(file, *traced));
        return Done;
    }
    QJsonArray holds;
    for (const TraceHold& each : traced->holds) holds.append(traceHoldText(each));
    QJsonArray unknown;
    for (const TraceUnknown& each : traced->unknown) unknown.append(traceGapText(each));
    if (traced->comb)
        for (const QString& each : combGapTexts(*traced->comb)) unknown.append(each);
    printJson(context, QJsonObject{{QStringLiteral("of"), fromUtf8(traced->name)},
                                   {QStringLiteral("as_of"), fromUtf8(isoText(traced->on))},
                                   {QStringLiteral("held"), holds},
                                   {QStringLiteral("treated_boxes"), traced->treated.boxes},
                                   {QStringLiteral("treated_of"), traced->treated.of},
                                   {QStringLiteral("back"), backObject(traced->back)},
                                   {QStringLiteral("forward"), forwardObject(traced->forward)},
                                   {QStringLiteral("comb"), combObject(traced->comb)},
                                   {QStringLiteral("not_known"), unknown},
                                   {QStringLiteral("kept_sheets"),
                                    static_cast<qint64>(traced->kept.size())}});
    return Done;
}

}  // namespace

std::vector<Command> traceCommands() {
    return {{"trace",
             "FILE",
             "where honey came from and where it went, with what cannot be known",
             1,
             1,
             {{"lot", "NAME", "a blend, or honey bought in"},
              {"code", "CODE", "the code on a jar, or on comb jars"},
              {"bucket", "MARK", "a bucket, with --run where the mark is not enough"},
              {"run", "NAME", "all of a run"},
              {"hive", "MARK", "a hive, with --yard where the mark is not enough"},
              {"box", "MARK", "a box"},
              {"treatment", "DAY", "what was given that day to the hive of --hive"},
              {"yard", "NAME", "the hive's yard"},
              {"kept", nullptr, "the sheet as it was printed and kept before"}},
             &runTrace}};
}

}  // namespace combwright::cli
