#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

#include "app/cli/groups.h"
#include "app/cli/season_asked.h"
#include "app/cli/season_json.h"
#include "core/actions/demo_season.h"
#include "core/exchange/diagnostics.h"
#include "core/exchange/export.h"
#include "core/places/copies/salvage_words.h"
#include "core/storage/audit.h"
#include "core/storage/backup.h"
#include "core/storage/salvage/record_trail.h"
#include "core/storage/salvage/salvage.h"
#include "core/storage/season.h"
#include "core/storage/sqlite/storage_error.h"
#include "core/words/words.h"

namespace combwright::cli {
namespace {

std::string filePath(const Context& context) {
    return context.arguments.positional.front().toStdString();
}

int runNew(Context& context) {
    std::optional<SeasonJson> json;
    if (const auto from = context.arguments.value("from")) {
        json = seasonJsonAt(*from);
        if (!json) return misused(context, QStringLiteral("%1 cannot be read").arg(*from));
    }
    auto season = Season::create(filePath(context), context.clock);
    if (!season) return refuse(context, season.error());
    if (json) {
        // A file that could not be filled was never asked for.
        const auto takeAway = [&] {
            season = Refusal{Code::Missing, {}, {}};
            removeHalfMade(filePath(context));
        };
        try {
            if (const auto read = loadSeason(*season, *json); !read) {
                takeAway();
                return refuse(context, read.error());
            }
        } catch (const StorageError&) {
            takeAway();
            throw;
        }
    }
    if (context.json())
        printJson(context,
                  QJsonObject{{QStringLiteral("made"), context.arguments.positional.front()}});
    else
        context.streams.out << "Made " << context.arguments.positional.front() << ".\n";
    return Done;
}

int runDemo(Context& context) {
    const auto season = makeDemoSeason(filePath(context), context.clock);
    if (!season) return refuse(context, season.error());
    const QString path = context.arguments.positional.front();
    const QString day = fromUtf8(isoText(demoSeasonDay()));
    if (context.json())
        printJson(context, QJsonObject{{QStringLiteral("made"), path},
                                       {QStringLiteral("invented"), true},
                                       {QStringLiteral("told_until"), day}});
    else
        context.streams.out << "Made the invented sample season " << path << ".\nIt is told until "
                            << day << ": look at it with --day " << day << ".\n";
    return Done;
}

int runCheck(Context& context) {
    const Season season = seasonToRead(context);
    auto findings = audit(season.read());
    const auto trail = trailFindings(season.read());
    findings.insert(findings.end(), trail.begin(), trail.end());
    QJsonArray list;
    for (const AuditFinding& finding : findings) {
        list.append(QJsonObject{{QStringLiteral("about"), fromUtf8(finding.about)},
                                {QStringLiteral("says"), fromUtf8(finding.says)}});
        if (!context.json())
            context.streams.out << fromUtf8(finding.about) << ": " << fromUtf8(finding.says)
                                << '\n';
    }
    if (context.json())
        printJson(context, QJsonObject{{QStringLiteral("findings"), list}});
    else if (findings.empty())
        context.streams.out << "The file is whole and its records agree.\n";
    return findings.empty() ? Done : Refused;
}

int runBackup(Context& context) {
    const Database file = openSeasonFile(filePath(context), Database::Mode::ReadOnly).database;
    const auto folder = context.arguments.value("into");
    const auto& words = context.arguments.positional;
    if (folder.has_value() == (words.size() == 2))
        return misused(context, QStringLiteral("give either DEST or --into DIR"));
    CopyMade made;
    if (folder) {
        made = copyInto(file, folder->toStdString(), context.clock.today());
    } else {
        made.path = words[1].toStdString();
        if (recognise(made.path).kind != FileKind::NotThere)
            return refuse(context, Refusal{Code::PathTaken, {}, {{"path", made.path}}});
        made.digest = copyVerified(file, made.path);
    }
    if (!context.json()) {
        context.streams.out << "Copied to " << fromUtf8(made.path) << "\nSHA-256 "
                            << fromUtf8(made.digest) << '\n';
        for (const std::string& path : made.thinned)
            context.streams.out << "Old copy removed: " << fromUtf8(path) << '\n';
        return Done;
    }
    QJsonArray thinned;
    for (const std::string& path : made.thinned) thinned.append(fromUtf8(path));
    printJson(context, QJsonObject{{QStringLiteral("copy"), fromUtf8(made.path)},
                                   {QStringLiteral("sha256"), fromUtf8(made.digest)},
                                   {QStringLiteral("thinned"), thinned}});
    return Done;
}

QJsonObject salvageJson(const Salvaged& done) {
    QJsonArray tables;
    for (const SalvagedTable& table : done.tables)
        tables.append(
            QJsonObject{{QStringLiteral("table"), fromUtf8(table.table)},
                        {QStringLiteral("saved"), static_cast<qint64>(table.saved)},
                        {QStringLiteral("from_history"), static_cast<qint64>(table.madeAgain)},
                        {QStringLiteral("mended"), static_cast<qint64>(table.mended)},
                        {QStringLiteral("left_out"), static_cast<qint64>(table.leftOut)},
                        {QStringLiteral("nothing_left"), static_cast<qint64>(table.unknown)}});
    return QJsonObject{
        {QStringLiteral("pages"), static_cast<qint64>(done.pages)},
        {QStringLiteral("pages_broken"), static_cast<qint64>(done.brokenPages)},
        {QStringLiteral("history_kept"), done.historyKept},
        {QStringLiteral("steps"), static_cast<qint64>(done.steps)},
        {QStringLiteral("steps_missing"), static_cast<qint64>(done.stepsMissing)},
        {QStringLiteral("references_cleared"), static_cast<qint64>(done.referencesCleared)},
        {QStringLiteral("disagreeing"), static_cast<qint64>(done.disagreeing)},
        {QStringLiteral("moved_up"), static_cast<qint64>(done.movedUp)},
        {QStringLiteral("pictures"), static_cast<qint64>(done.pictures)},
        {QStringLiteral("pictures_lost"), static_cast<qint64>(done.picturesLost)},
        {QStringLiteral("left_out_file"),
         done.leftOutFile ? QJsonValue(fromUtf8(*done.leftOutFile)) : QJsonValue()},
        {QStringLiteral("tables"), tables}};
}

int runSalvage(Context& context) {
    const QString to = context.arguments.positional[1];
    const auto done = salvage(filePath(context), to.toStdString(), context.clock);
    if (!done) return refuse(context, done.error());
    if (context.json()) {
        printJson(context, salvageJson(*done));
        return Done;
    }
    for (const QString& each : salvageReport(*done)) context.streams.out << each << '\n';
    context.streams.out << salvageSentence(*done, to) << '\n';
    return Done;
}

int runDiagnose(Context& context) {
    const Season season = seasonToRead(context);
    const QJsonObject told = diagnostics(factsOf(season.read()));
    if (context.json())
        printJson(context, told);
    else
        context.streams.out << QString::fromUtf8(QJsonDocument(told).toJson());
    return Done;
}

int runExport(Context& context) {
    const Season season = seasonToRead(context);
    const auto written = exportSeason(season.read(), context.arguments.positional[1].toStdString());
    if (!written) return refuse(context, written.error());
    QJsonArray list;
    for (const std::string& path : *written) list.append(fromUtf8(path));
    if (context.json())
        printJson(context, QJsonObject{{QStringLiteral("written"), list}});
    else
        context.streams.out << written->size() << " files written to "
                            << context.arguments.positional[1] << ".\n";
    return Done;
}

}  // namespace

std::vector<Command> seasonCommands() {
    return {
        {"new",
         "FILE",
         "an empty season file; refuses an existing path",
         1,
         1,
         {{"from", "season.json", "with all that an export wrote into that file"}},
         &runNew},
        {"export",
         "FILE DIR",
         "every table as CSV and one JSON; DIR absent or empty",
         2,
         2,
         {},
         &runExport},
        {"demo",
         "FILE",
         "the invented sample season; refuses an existing path",
         1,
         1,
         {},
         &runDemo},
        {"check", "FILE", "whether the file is whole and its records agree", 1, 1, {}, &runCheck},
        {"diagnose",
         "FILE",
         "versions and counts for whoever helps; no word of the records",
         1,
         1,
         {},
         &runDiagnose},
        {"salvage",
         "FILE NEW",
         "what a damaged file still holds, into a new one",
         2,
         2,
         {},
         &runSalvage},
        {"backup",
         "FILE [DEST]",
         "a verified copy; refuses an existing DEST",
         1,
         2,
         {{"into", "DIR", "copy into a folder under the day's name, and thin it"}},
         &runBackup},
    };
}

}  // namespace combwright::cli
