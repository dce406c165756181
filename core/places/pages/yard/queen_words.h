// How a queen and what is waited for are said, on screen, on paper and by the command line.
#pragma once

#include <QString>
#include <optional>
#include <string>

#include "core/places/yard/queens.h"

namespace combwright {

/// "queen 42, blue, of 2025, clipped"; "a queen, unmarked, year not known".
QString queenText(const Queen& queen, const std::string& colour);
/// "Queen 42 of 2025, blue, marked, clipped"; "Queen, year not known". As a head begins.
QString queenHeadText(const Queen& queen, const std::string& colour);
/// A queen where others are named beside her: "42 of 2025", "#7 of 2024".
QString queenShortText(const Queen& queen);
/// How she left: "lost", "went with the swarm" …
QString queenLeftText(QueenLeft left);
/// What a wait began with: "a capped cell" …
QString queenStepText(QueenStep step);
/// "leave shut to 5 Aug": the last day on which the hive stays shut, so said everywhere.
QString leaveShutText(Day lastDay);
/// "Leave shut to 12 Jun, look for eggs from then; test frame from 19 Jun, act by 26
/// Jun."
QString waitingText(const WaitingQueen& waiting, Day today);

}  // namespace combwright
