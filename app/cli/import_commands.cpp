#include <QFile>
#include <QFileInfo>
#include <utility>

#include "app/cli/groups.h"
#include "app/cli/season_asked.h"
#include "app/cli/season_json.h"
#include "core/exchange/import/import_json.h"
#include "core/exchange/import/import_plan.h"
#include "core/exchange/strict_json.h"
#include "core/storage/whole_file.h"
#include "core/words/import_words.h"
#include "core/words/words.h"

namespace combwright::cli {
namespace {

std::optional<QByteArray> bytesOf(const QString& path) {
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly)) return std::nullopt;
    return file.readAll();
}

std::string_view viewOfBytes(const QByteArray& bytes) {
    return {bytes.constData(), static_cast<std::size_t>(bytes.size())};
}

QString reasonOf(const PlannedRow& row) {
    if (row.why) return sentence(*row.why);
    QStringList asks;
    for (const std::string& ask : row.asks) asks << fromUtf8(ask);
    for (const std::string& odd : row.odd) asks << fromUtf8(odd);
    return asks.join(QStringLiteral(", "));
}

void sayPlan(Context& context, const ImportPlan& plan) {
    QTextStream& out = context.streams.out;
    out << "Read as " << fromUtf8(plan.encoding) << ", parted by "
        << (plan.parter == '\t' ? QStringLiteral("tabs") : QString(QLatin1Char(plan.parter)))
        << (plan.header ? ", with headings.\n" : ", without headings.\n");
    for (const PlannedColumn& column : plan.columns)
        out << "  " << fromUtf8(column.heading) << ": "
            << (column.field.empty() ? QStringLiteral("passed over")
                                     : importFieldText(column.field))
            << '\n';
    for (const PlannedRow& row : plan.rows) {
        out << "Line " << row.line << ": " << verdictText(key(row.verdict));
        const QString reason = reasonOf(row);
        if (!reason.isEmpty()) out << ": " << reason;
        out << '\n';
    }
    for (const ImportQuestion& question : plan.questions) {
        out << "Asked (" << fromUtf8(question.ask) << "): "
            << importQuestionText(question.ask, fromUtf8(question.field),
                                  fromUtf8(question.example));
        QStringList choices;
        for (const std::string& choice : question.choices) choices << fromUtf8(choice);
        if (!choices.isEmpty()) out << " " << choices.join(QStringLiteral(" | "));
        out << '\n';
    }
    out << plan.count(RowVerdict::WillBeAdded) << " will be added, "
        << plan.count(RowVerdict::AlreadyThere) << " already there, "
        << plan.count(RowVerdict::Refused) << " refused, " << plan.count(RowVerdict::Asked)
        << " asked.\n";
    if (plan.count(RowVerdict::ChangedSince) > 0)
        out << "Changed here since they came in: " << plan.count(RowVerdict::ChangedSince)
            << ". They stay as they are.\n";
}

/// The rows that stay out, saved beforehand: nothing is kept where that fails, and nothing of them
/// stays where nothing is kept.
class Rejects {
  public:
    Rejects(QString path, const ImportPlan& plan) : m_path(std::move(path)) {
        writeWholeFile(m_path.toStdString(), rejectedRows(plan, [](const PlannedRow& row) {
                           return reasonOf(row).toStdString();
                       }));
    }
    ~Rejects() {
        if (!m_stays) QFile::remove(m_path);
    }
    Rejects(const Rejects&) = delete;
    Rejects& operator=(const Rejects&) = delete;
    void stay() { m_stays = true; }

  private:
    QString m_path;
    bool m_stays = false;
};

Result<ImportMap> mapGiven(const Context& context, ImportKind kind, QString& unreadable) {
    const auto path = context.arguments.value("map");
    if (!path) return ImportMap{};
    const auto bytes = bytesOf(*path);
    if (!bytes) {
        unreadable = *path;
        return ImportMap{};
    }
    const auto object = strictObject(viewOfBytes(*bytes));
    if (!object) return object.error();
    return importMapOf(*object, kind);
}

int importWhole(Context& context) {
    const QStringList& words = context.arguments.positional;
    for (const char* option : {"dry-run", "map", "rejects"})
        if (context.arguments.has(option))
            return misused(
                context, QStringLiteral("a whole season takes no --%1").arg(QLatin1String(option)));
    const auto json = seasonJsonAt(words[2]);
    if (!json) return misused(context, QStringLiteral("%1 cannot be read").arg(words[2]));
    Season season =
        Season::open(words.front().toStdString(), context.clock, Database::Mode::ReadWrite);
    const auto step = loadSeason(season, *json);
    if (!step) return refuse(context, step.error());
    if (context.json())
        printJson(context, QJsonObject{{QStringLiteral("kept"), true},
                                       {QStringLiteral("step"), static_cast<qint64>(*step)}});
    else
        context.streams.out << "Kept as step " << *step << ".\n";
    return Done;
}

int runImport(Context& context) {
    const QStringList& words = context.arguments.positional;
    if (words[1] == QLatin1String("season")) return importWhole(context);
    const auto kind = importKindNamed(words[1].toStdString());
    if (!kind)
        return misused(context, QStringLiteral("there is no kind of table %1; there are hives, "
                                               "boxes, weights, visits, crop-notes, sales "
                                               "and season")
                                    .arg(words[1]));
    QString unreadable;
    const auto map = mapGiven(context, *kind, unreadable);
    if (!unreadable.isEmpty())
        return misused(context, QStringLiteral("the map %1 cannot be read").arg(unreadable));
    if (!map) return refuse(context, map.error());
    const auto bytes = bytesOf(words[2]);
    if (!bytes)
        return misused(context, QStringLiteral("the table %1 cannot be read").arg(words[2]));
    const bool dry = context.arguments.has("dry-run");
    const auto rejects = context.arguments.value("rejects");
    if (dry && rejects)
        return misused(context, QStringLiteral("--rejects goes with an import that is kept"));
    Season season = Season::open(words.front().toStdString(), context.clock,
                                 dry ? Database::Mode::ReadOnly : Database::Mode::ReadWrite);
    const auto plan = planImport(season, *kind, *bytes, *map);
    if (!plan) return refuse(context, plan.error());

    const bool held =
        !plan->questions.empty() || (!rejects && plan->count(RowVerdict::Refused) > 0);
    std::int64_t step = 0;
    if (!dry && !held) {
        std::optional<Rejects> saved;
        if (rejects && plan->count(RowVerdict::Refused) > 0) {
            if (QFileInfo::exists(*rejects))
                return refuse(context,
                              Refusal{Code::PathTaken, {}, {{"path", rejects->toStdString()}}});
            saved.emplace(*rejects, *plan);
        }
        const auto kept = keepImport(season, *plan, QFileInfo(words[2]).fileName().toStdString(),
                                     rejects ? RefusedRows::StayOut : RefusedRows::HoldUpAll);
        if (!kept) return refuse(context, kept.error());
        step = *kept;
        if (saved) saved->stay();
    }
    if (context.json()) {
        QJsonObject json = toJson(*plan);
        json.insert(QStringLiteral("kept"), !dry && !held);
        json.insert(QStringLiteral("step"),
                    step ? QJsonValue(static_cast<qint64>(step)) : QJsonValue(QJsonValue::Null));
        printJson(context, json);
    } else {
        sayPlan(context, *plan);
        if (step)
            context.streams.out << "Kept as step " << step
                                << ". One step back takes all of it out again.\n";
        else if (dry)
            context.streams.out << "Nothing was changed: this was a look only.\n";
        else if (held)
            context.streams.out << "Nothing was changed. Answer what is asked in a map; with "
                                   "--rejects the good rows go in and the others are saved.\n";
        else
            context.streams.out << "Nothing was changed: all of it is there already.\n";
    }
    return held ? Refused : Done;
}

}  // namespace

std::vector<Command> importCommands() {
    return {
        {"import",
         "FILE KIND CSV",
         "rows of a table: hives, boxes, weights, visits, crop-notes, sales",
         3,
         3,
         {{"dry-run", nullptr, "only tell what each row would do, and what is asked"},
          {"map", "FILE.json", "which column is what, and the answers to what was asked"},
          {"rejects", "FILE.csv", "good rows go in, refused rows are saved here with reasons"}},
         &runImport},
    };
}

}  // namespace combwright::cli
