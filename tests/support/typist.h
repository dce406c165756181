// A window in a process of its own, wired as in main, whose keyboard is the test's: the test
// program starts itself anew with these in its environment, and ends it while it types.
#pragma once

namespace combwright::test {

inline constexpr const char* typistSeason = "COMBWRIGHT_TYPIST_SEASON";
inline constexpr const char* typistState = "COMBWRIGHT_TYPIST_STATE";
/// It does not stop after one line: it fills the sheet as a slow hand does, and says "letter N"
/// when the window has the n-th letter of a line and "kept N" when the n-th line is kept.
inline constexpr const char* typistGoesOn = "COMBWRIGHT_TYPIST_GOES_ON";

inline constexpr const char* typedLine = "e b7 s3 gentle, and the comb leans to the fence";
inline constexpr int typistHives = 6;
inline constexpr int msPerLetter = 60;

}  // namespace combwright::test
