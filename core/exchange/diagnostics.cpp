#include "core/exchange/diagnostics.h"

#include <QSysInfo>

#include "core/support/version.h"

namespace combwright {
namespace {

QString latin(std::string_view text) {
    return QString::fromLatin1(text.data(), static_cast<qsizetype>(text.size()));
}

QJsonObject seasonObject(const FileFacts& facts) {
    QJsonObject rows;
    for (const auto& [table, count] : facts.rows)
        if (count > 0) rows.insert(latin(table), static_cast<qint64>(count));
    return {{QStringLiteral("shape"), static_cast<qint64>(facts.shape)},
            {QStringLiteral("page_bytes"), static_cast<qint64>(facts.pageBytes)},
            {QStringLiteral("pages"), static_cast<qint64>(facts.pages)},
            {QStringLiteral("free_pages"), static_cast<qint64>(facts.freePages)},
            {QStringLiteral("journal_mode"), latin(facts.journalMode)},
            {QStringLiteral("synchronous"), static_cast<qint64>(facts.synchronous)},
            {QStringLiteral("foreign_keys"), facts.foreignKeys},
            {QStringLiteral("rows"), rows},
            {QStringLiteral("steps"), static_cast<qint64>(facts.steps)},
            {QStringLiteral("steps_standing"), static_cast<qint64>(facts.stepsStanding)},
            {QStringLiteral("pictures"), static_cast<qint64>(facts.pictures)},
            {QStringLiteral("findings"), static_cast<qint64>(facts.findings)}};
}

}  // namespace

QJsonObject diagnostics(const std::optional<FileFacts>& season) {
    QJsonObject all{{QStringLiteral("program"), latin(programVersion)},
                    {QStringLiteral("qt"), latin(qVersion())},
                    {QStringLiteral("system"), QSysInfo::prettyProductName()},
                    {QStringLiteral("kernel"), QSysInfo::kernelVersion()},
                    {QStringLiteral("processor"), QSysInfo::currentCpuArchitecture()}};
    if (season) {
        all.insert(QStringLiteral("sqlite"), latin(season->sqlite));
        all.insert(QStringLiteral("season"), seasonObject(*season));
    }
    return all;
}

}  // namespace combwright
