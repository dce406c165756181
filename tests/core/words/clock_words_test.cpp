// Times of day as the clock on the wall shows them.
#include "core/words/clock_words.h"

#include <gtest/gtest.h>

namespace combwright {
namespace {

TEST(ClockWords, ReadsWhatOnePencilsOnTheSheet) {
    const Day day = *parseDay("2027-08-08");
    const Instant quarterPastNine = *parseInstant("2027-08-08T09:15:00Z");
    for (const char* text : {"9:15", "09:15", "9.15", "915", "0915", " 9:15 "})
        EXPECT_EQ(typedClock(QString::fromLatin1(text), day), quarterPastNine) << text;
    EXPECT_EQ(typedClock(QStringLiteral("9"), day), *parseInstant("2027-08-08T09:00:00Z"));
    EXPECT_EQ(clockText(quarterPastNine), QStringLiteral("09:15"));
}

TEST(ClockWords, ReadsNothingElse) {
    const Day day = *parseDay("2027-08-08");
    for (const char* text : {"", "25:00", "9:61", "9:1", "noon", "9:15:30", "-9", "91500"})
        EXPECT_FALSE(typedClock(QString::fromLatin1(text), day)) << text;
}

}  // namespace
}  // namespace combwright
