// A window in a process of its own, wired as in main, whose keyboard is the test's: the test
// program starts itself anew with these in its environment, and ends it while it types.
#pragma once

namespace combwright::test {

inline constexpr const char* typistSeason = "COMBWRIGHT_TYPIST_SEASON";
inline constexpr const char* typistState = "COMBWRIGHT_TYPIST_STATE";

}  // namespace combwright::test
