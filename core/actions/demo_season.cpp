#include "core/actions/demo_season.h"

#include <QDir>
#include <QFile>
#include <QJsonDocument>
#include <QJsonObject>
#include <algorithm>
#include <vector>

#include "core/storage/season_file.h"
#include "core/storage/sqlite/storage_error.h"

namespace combwright {
namespace {

struct DemoPart {
    QString name;
    QByteArray script;
};

/// The scripts compiled in. Their names begin with numbers so that the order of the names is the
/// order of the years.
std::vector<DemoPart> demoParts() {
    const QDir folder(QStringLiteral(":/combwright/demo"));
    std::vector<DemoPart> parts;
    for (const QString& name : folder.entryList(QDir::Files, QDir::Name)) {
        QFile script(folder.filePath(name));
        if (!script.open(QIODevice::ReadOnly))
            throw StorageError(Trouble::Failed, name.toStdString(), "missing resource");
        parts.push_back({name, script.readAll()});
    }
    return parts;
}

/// One transaction a part: a thousand deeds are not a thousand waits for the disk.
Result<void> playPart(Season& season, const DemoPart& part) {
    const PlayResult played =
        play(season, {part.script.constData(), static_cast<std::size_t>(part.script.size())},
             AllOrNothing::Yes);
    if (played.stopped) return played.stopped->refusal;
    return {};
}

Day lastDayOf(const std::vector<DemoPart>& parts, std::size_t count) {
    Day last{};
    for (std::size_t n = 0; n < count; ++n)
        for (const QByteArray& line : parts[n].script.split('\n')) {
            const auto on = QJsonDocument::fromJson(line).object().value(QLatin1String("on"));
            if (const auto day = parseDay(on.toString().toStdString())) last = std::max(last, *day);
        }
    return last;
}

const char* lastScript(DemoUntil until) {
    switch (until) {
        case DemoUntil::JuneVisit:
            return "1-yard-visits.play";
        case DemoUntil::PullPlan:
            return "2-pull.play";
        case DemoUntil::HoneyRoom:
            return "3-honey-room.play";
        case DemoUntil::Jars:
            return "5-bucket-to-jar.play";
        case DemoUntil::Whole:
            break;
    }
    return nullptr;
}

/// How many scripts it takes.
std::size_t scriptsUntil(const std::vector<DemoPart>& parts, DemoUntil until) {
    const char* name = lastScript(until);
    if (!name) return parts.size();
    const auto last = std::find_if(parts.begin(), parts.end(), [name](const DemoPart& part) {
        return part.name == QLatin1String(name);
    });
    if (last == parts.end()) throw StorageError(Trouble::Failed, name, "missing resource");
    return static_cast<std::size_t>(last - parts.begin()) + 1;
}

}  // namespace

Result<Season> makeDemoSeason(const std::string& path, const Clock& clock) {
    auto season = Season::create(path, clock);
    if (!season) return season;
    try {
        for (const DemoPart& part : demoParts())
            if (const auto played = playPart(*season, part); !played) return played.error();
    } catch (const StorageError&) {
        // Half a sample is none.
        season = Refusal{Code::Missing, {}, {}};
        removeHalfMade(path);
        throw;
    }
    return season;
}

Day demoSeasonDay() { return demoDay(DemoUntil::Whole); }

Day demoDay(DemoUntil until) {
    const auto parts = demoParts();
    return lastDayOf(parts, scriptsUntil(parts, until));
}

bool DemoShelf::isTold(DemoUntil until) const { return m_told >= scriptsUntil(demoParts(), until); }

std::string DemoShelf::endOf(std::size_t script) const {
    return m_folder.filePath(QStringLiteral("%1.combwright").arg(script)).toStdString();
}

Result<void> DemoShelf::tellOn() {
    const auto parts = demoParts();
    if (m_told == parts.size()) return {};
    if (!m_season) {
        auto begun = Season::create(
            m_folder.filePath(QStringLiteral("told.combwright")).toStdString(), m_clock);
        if (!begun) return begun.error();
        m_season.emplace(*std::move(begun));
    }
    if (auto played = playPart(*m_season, parts[m_told]); !played) return played;
    if (auto kept = m_season->copyTo(endOf(m_told + 1)); !kept) return kept;
    ++m_told;
    return {};
}

Result<void> DemoShelf::copyTo(DemoUntil until, const std::string& path) {
    if (QFile::exists(QString::fromStdString(path)))
        return Refusal{Code::PathTaken, {}, {{"path", path}}};
    const std::size_t scripts = scriptsUntil(demoParts(), until);
    while (m_told < scripts)
        if (auto told = tellOn(); !told) return told;
    if (!QFile::copy(QString::fromStdString(endOf(scripts)), QString::fromStdString(path)))
        throw StorageError(Trouble::Failed, path, "cannot be copied");
    return {};
}

}  // namespace combwright
