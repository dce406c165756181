#include "core/trade/colony/phase_starts.h"

#include <gtest/gtest.h>

namespace combwright {
namespace {

Day phaseDay(const char* text) { return *parseDay(text); }

const std::vector<PhaseStart> northern{{SeasonPhase::Dormant, 11, 1},
                                       {SeasonPhase::Increase, 2, 29},
                                       {SeasonPhase::Peak, 5, 15},
                                       {SeasonPhase::Decrease, 8, 1}};

TEST(PhaseStarts, TheOneBegunLastWhateverTheOrderOfTheTable) {
    struct Row {
        const char* day;
        SeasonPhase phase;
    };
    for (const Row& row :
         {Row{"2027-01-01", SeasonPhase::Dormant}, Row{"2027-02-28", SeasonPhase::Dormant},
          Row{"2027-03-01", SeasonPhase::Increase}, Row{"2028-02-28", SeasonPhase::Dormant},
          Row{"2028-02-29", SeasonPhase::Increase}, Row{"2027-05-14", SeasonPhase::Increase},
          Row{"2027-05-15", SeasonPhase::Peak}, Row{"2027-07-31", SeasonPhase::Peak},
          Row{"2027-08-01", SeasonPhase::Decrease}, Row{"2027-10-31", SeasonPhase::Decrease},
          Row{"2027-11-01", SeasonPhase::Dormant}, Row{"2027-12-31", SeasonPhase::Dormant}}) {
        const auto phase = seasonPhase(phaseDay(row.day), northern);
        ASSERT_TRUE(phase) << row.day;
        EXPECT_EQ(*phase, row.phase) << row.day;
    }
}

TEST(PhaseStarts, OnePhaseLastsTheWholeYear) {
    EXPECT_EQ(*seasonPhase(phaseDay("2027-03-03"), {{SeasonPhase::Increase, 7, 1}}),
              SeasonPhase::Increase);
}

TEST(PhaseStarts, Refuses) {
    const Day day = phaseDay("2027-06-09");
    EXPECT_EQ(seasonPhase(day, {}).error(), (Refusal{Code::Missing, "phases"}));
    const auto noDay = seasonPhase(day, {{SeasonPhase::Peak, 5, 1}, {SeasonPhase::Dormant, 2, 30}});
    ASSERT_FALSE(noDay);
    EXPECT_EQ(noDay.error().code, Code::NotADay);
    EXPECT_EQ(noDay.error().field, "phases[1]");
    EXPECT_EQ(seasonPhase(day, {{SeasonPhase::Peak, 13, 1}}).error().code, Code::NotADay);
    const auto twice = seasonPhase(day, {{SeasonPhase::Peak, 5, 1}, {SeasonPhase::Dormant, 5, 1}});
    ASSERT_FALSE(twice);
    EXPECT_EQ(twice.error().code, Code::Duplicate);
    EXPECT_EQ(twice.error().field, "phases[1]");
}

TEST(PhaseStarts, EachHasItsWord) {
    for (const SeasonPhase phase :
         {SeasonPhase::Dormant, SeasonPhase::Increase, SeasonPhase::Peak, SeasonPhase::Decrease})
        EXPECT_EQ(seasonPhaseOf(key(phase)), phase);
    EXPECT_FALSE(seasonPhaseOf("summer"));
    EXPECT_FALSE(seasonPhaseOf(""));
}

TEST(PhaseStarts, TheLineOfAPhaseIsTheLowestAndMayBeMissing) {
    const std::vector<PhaseThreshold> table{{SeasonPhase::Peak, 3},
                                            {SeasonPhase::Increase, 2},
                                            {SeasonPhase::Peak, 2.5},
                                            {SeasonPhase::Peak, 5}};
    EXPECT_EQ(thresholdIn(SeasonPhase::Peak, table), 2.5);
    EXPECT_EQ(thresholdIn(SeasonPhase::Increase, table), 2.0);
    EXPECT_FALSE(thresholdIn(SeasonPhase::Dormant, table));
}

}  // namespace
}  // namespace combwright
