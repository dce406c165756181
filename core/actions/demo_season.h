// The invented season: yards, hives and numbers are made up, and every page says so. It is played
// from the same scripts as demo/run plays, so what it shows can be made by hand. It tells of years
// of its own, so it has a day of its own on which it is best looked at; and a story is looked in on
// while it is being told, when the honey is still in the supers.
#pragma once

#include <QTemporaryDir>
#include <optional>
#include <string>

#include "core/actions/play.h"

namespace combwright {

/// Makes a new file at that path and plays the whole season into it. Refused with PathTaken where
/// there is a file; throws StorageError.
Result<Season> makeDemoSeason(const std::string& path, const Clock& clock);

/// The last day the invented season tells of. As of that day it is whole, whatever day it is.
Day demoSeasonDay();

/// How far it is told, each the end of a script.
enum class DemoUntil {
    JuneVisit,  ///< a visit is written down, but for the hives the rain kept shut
    PullPlan,   ///< the supers are full, and which of them come off is planned
    HoneyRoom,  ///< in the middle of extracting
    Jars,       ///< the harvest is closed; honey in buckets, lots and jars, the first of it sold
    Whole,      ///< what stood in the shed was looked through, and wax became candles
};

/// The day it has come to then.
Day demoDay(DemoUntil until);

/// The invented season as far as it was told, script by script, each end kept: telling it once
/// serves who turns back too. In a folder that goes with it.
class DemoShelf {
  public:
    explicit DemoShelf(const Clock& clock) : m_clock(clock) {}
    /// Whether a copy of it is at hand without playing any more.
    bool isTold(DemoUntil until) const;
    /// Plays one script more. Throws StorageError.
    Result<void> tellOn();
    /// Lays the season as told until then at that path, and tells on to there first. Refused with
    /// PathTaken where there is a file; throws StorageError.
    Result<void> copyTo(DemoUntil until, const std::string& path);

  private:
    std::string endOf(std::size_t script) const;

    const Clock& m_clock;
    QTemporaryDir m_folder;
    std::optional<Season> m_season;
    std::size_t m_told = 0;  ///< scripts
};

}  // namespace combwright
