#include "ui/shell/start/recent_seasons.h"

#include <QFileInfo>

namespace combwright {
namespace {

constexpr QLatin1String recentKey("recent_seasons");

}  // namespace

RecentSeasons::RecentSeasons()
    : m_settings(QSettings::IniFormat, QSettings::UserScope, QStringLiteral("combwright"),
                 QStringLiteral("combwright")) {}

RecentSeasons::RecentSeasons(const QString& settingsFile)
    : m_settings(settingsFile, QSettings::IniFormat) {}

std::vector<RecentSeason> RecentSeasons::list() const {
    m_settings.sync();
    std::vector<RecentSeason> seasons;
    const int size = m_settings.beginReadArray(recentKey);
    for (int i = 0; i < size && seasons.size() < most; ++i) {
        m_settings.setArrayIndex(i);
        RecentSeason season;
        season.path = m_settings.value(QStringLiteral("path")).toString();
        if (season.path.isEmpty()) continue;
        season.name = m_settings.value(QStringLiteral("name")).toString();
        season.opened =
            parseDay(m_settings.value(QStringLiteral("opened")).toString().toStdString());
        season.there = QFileInfo(season.path).isFile();
        seasons.push_back(std::move(season));
    }
    m_settings.endArray();
    return seasons;
}

void RecentSeasons::add(const QString& path, const QString& name, Day opened) {
    const QString whole = QFileInfo(path).absoluteFilePath();
    std::vector<RecentSeason> seasons = list();
    std::erase_if(seasons, [&](const RecentSeason& season) { return season.path == whole; });
    seasons.insert(seasons.begin(), RecentSeason{whole, name, opened, true});
    if (seasons.size() > most) seasons.resize(most);
    write(seasons);
}

void RecentSeasons::remove(const QString& path) {
    std::vector<RecentSeason> seasons = list();
    std::erase_if(seasons, [&](const RecentSeason& season) { return season.path == path; });
    write(seasons);
}

void RecentSeasons::clear() { write({}); }

void RecentSeasons::write(const std::vector<RecentSeason>& seasons) {
    m_settings.remove(recentKey);
    m_settings.beginWriteArray(recentKey, static_cast<int>(seasons.size()));
    for (int i = 0; i < static_cast<int>(seasons.size()); ++i) {
        const RecentSeason& season = seasons[static_cast<std::size_t>(i)];
        m_settings.setArrayIndex(i);
        m_settings.setValue(QStringLiteral("path"), season.path);
        m_settings.setValue(QStringLiteral("name"), season.name);
        if (season.opened)
            m_settings.setValue(QStringLiteral("opened"),
                                QString::fromStdString(isoText(*season.opened)));
    }
    m_settings.endArray();
    m_settings.sync();
}

}  // namespace combwright
