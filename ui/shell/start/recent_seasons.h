// The season files this person opened last, for the start page. Kept with the person's other
// choices, not in any season; what is no longer where it was stays in the list and says so.
#pragma once

#include <QSettings>
#include <QString>
#include <optional>
#include <vector>

#include "core/units/day.h"

namespace combwright {

struct RecentSeason {
    QString path;
    QString name;  ///< of the season itself; may be empty
    std::optional<Day> opened;
    bool there = false;
};

class RecentSeasons {
  public:
    static constexpr std::size_t most = 8;

    RecentSeasons();
    explicit RecentSeasons(const QString& settingsFile);

    /// The one opened last first. Looks at the disk for each.
    std::vector<RecentSeason> list() const;
    void add(const QString& path, const QString& name, Day opened);
    void remove(const QString& path);
    void clear();

  private:
    void write(const std::vector<RecentSeason>& seasons);
    mutable QSettings m_settings;
};

}  // namespace combwright
