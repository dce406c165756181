// The season as it was recorded up to a step or the end of a day: a proven copy whose journal was
// walked back by its inverted changes. The file itself is only read.
#pragma once

#include <QTemporaryDir>
#include <memory>
#include <string>

#include "core/storage/rows.h"
#include "core/support/result.h"

namespace combwright {

/// The newest step of the journal; 0 without one.
std::int64_t newestStep(const Read& file);
/// The newest step that was kept by the end of that day, by the clock on the wall; 0 where none
/// was.
std::int64_t newestStepOn(const Read& file, Day day);
/// The day on which a step was kept, by the clock on the wall; nothing for step 0.
std::optional<Day> dayOfStep(const Read& file, std::int64_t step);

/// Makes a new file that holds what the season held after that step, marked so that it is only
/// read. Refused with PathTaken where there is a file of that name, with NotFound for a step the
/// journal has not, with MovedOn where the rows do not follow from the journal ("step" says
/// where). Throws StorageError.
Result<void> makeAsItStood(const Database& season, const std::string& to, std::int64_t step,
                           Day day);

/// A copy of our own in a folder that goes with it.
struct CopyAside {
    std::unique_ptr<QTemporaryDir> folder;
    std::string path;
};
/// The season after that step, as makeAsItStood.
Result<CopyAside> asItStoodAside(const Database& season, std::int64_t step, Day day);
/// A season that may be of an older shape, or is written by somebody else meanwhile, copied to be
/// read at leisure; brought up to date there. Throws StorageError(NotThere, NotOurs, Newer …).
CopyAside seasonAside(const std::string& path);

}  // namespace combwright
