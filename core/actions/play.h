// Lines for `play`: one JSON object a line performs one action. Whatever the window does has such a
// line; the journal keeps it, and a whole season can be written out and played again.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "core/actions/action.h"

namespace combwright {

/// One line that was performed.
struct Played {
    std::size_t line = 0;   ///< its number in the script, from 1
    std::int64_t step = 0;  ///< of the journal; 0 where it changed nothing
    Made made;
    std::optional<Day> ahead = std::nullopt;  ///< its day, where that has not come yet: kept, said
};

/// A line that was refused, and what was kept of the lines before it.
struct PlayStopped {
    std::size_t line = 0;
    Refusal refusal;
    std::size_t kept = 0;
};

struct PlayResult {
    std::vector<Played> steps;
    std::optional<PlayStopped> stopped;
};

enum class AllOrNothing { No, Yes };

/// The lines that are no action but walk the journal, by their "do": undo and redo.
const std::vector<std::string_view>& turnLines();

/// Performs a script. Blank lines and lines beginning with # are skipped. It stops at the first
/// line that is refused; the lines before are kept unless all or nothing was asked for.
PlayResult play(Season& season, std::string_view script, AllOrNothing all = AllOrNothing::No);

/// The journal as a script, oldest first: what was undone and redone is in it too, so that playing
/// it into a new file gives the same file, numbers and all.
std::string scriptOf(const Season& season);

}  // namespace combwright
