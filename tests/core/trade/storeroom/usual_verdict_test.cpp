#include "core/trade/storeroom/usual_verdict.h"

#include <gtest/gtest.h>

#include "core/model/frames/frame.h"

namespace combwright {
namespace {

TEST(UsualVerdict, EachFaultAlone) {
    const std::pair<char, UsualVerdict> rows[] = {
        {'W', UsualVerdict::Refit},  {'S', UsualVerdict::Refit}, {'B', UsualVerdict::Refit},
        {'U', UsualVerdict::Refit},  {'O', UsualVerdict::Keep},  {'D', UsualVerdict::Hold},
        {'X', UsualVerdict::Scrape}, {'N', UsualVerdict::Refit}, {'V', UsualVerdict::Repair},
        {'T', UsualVerdict::Refit},  {'G', UsualVerdict::Keep},  {'Y', UsualVerdict::Refit},
        {'P', UsualVerdict::Scrape}, {'C', UsualVerdict::Refit}, {'L', UsualVerdict::Freeze},
        {'Q', UsualVerdict::Hold}};
    ASSERT_EQ(std::size(rows), faultRules().size());
    for (const auto& [letter, verdict] : rows) {
        const auto answer = usualVerdict(std::string(1, letter));
        ASSERT_TRUE(answer) << letter;
        EXPECT_EQ(answer->verdict, verdict) << letter;
        EXPECT_EQ(answer->letter, letter);
        EXPECT_FALSE(answer->reason.empty());
        EXPECT_FALSE(answer->source.empty());
    }
}

TEST(UsualVerdict, EveryFaultOfAFrameHasItsRuleAndTheDigitsAreTheVerdicts) {
    ASSERT_EQ(faults().size(), faultRules().size());
    for (std::size_t i = 0; i < faults().size(); ++i)
        EXPECT_EQ(faults()[i].letter, faultRules()[i].letter);
    const auto& words = Choices<Verdict>::words;
    EXPECT_EQ(words[static_cast<int>(UsualVerdict::Keep) - 1], "keep");
    EXPECT_EQ(words[static_cast<int>(UsualVerdict::Refit) - 1], "refit");
    EXPECT_EQ(words[static_cast<int>(UsualVerdict::Melt) - 1], "melt");
    EXPECT_EQ(words[static_cast<int>(UsualVerdict::Burn) - 1], "burn");
    EXPECT_EQ(words.size(), 8u);
}

TEST(UsualVerdict, TheGravestCountsAndSaysWhy) {
    struct Row {
        const char* faults;
        UsualVerdict verdict;
        char letter;
    };
    for (const Row& row :
         {Row{"", UsualVerdict::Keep, 0}, Row{"OG", UsualVerdict::Keep, 'O'},
          Row{"LO", UsualVerdict::Freeze, 'L'}, Row{"LP", UsualVerdict::Scrape, 'P'},
          Row{"PV", UsualVerdict::Repair, 'V'}, Row{"VW", UsualVerdict::Refit, 'W'},
          Row{"TCW", UsualVerdict::Refit, 'W'}, Row{"WD", UsualVerdict::Hold, 'D'},
          Row{"QD", UsualVerdict::Hold, 'D'}, Row{"QQ", UsualVerdict::Hold, 'Q'}}) {
        const auto answer = usualVerdict(row.faults);
        ASSERT_TRUE(answer);
        EXPECT_EQ(answer->verdict, row.verdict) << row.faults;
        EXPECT_EQ(answer->letter, row.letter) << row.faults;
    }
}

TEST(UsualVerdict, BlackMouldIsMeltedUnlessHeld) {
    EXPECT_EQ(usualVerdict("O", true)->verdict, UsualVerdict::Melt);
    EXPECT_EQ(usualVerdict("OW", true)->verdict, UsualVerdict::Melt);
    EXPECT_EQ(usualVerdict("OD", true)->verdict, UsualVerdict::Hold);
    EXPECT_EQ(usualVerdict("W", true)->verdict, UsualVerdict::Refit);
}

TEST(UsualVerdict, NothingSeenEverBurns) {
    for (const FaultRule& rule : faultRules()) EXPECT_NE(rule.verdict, UsualVerdict::Burn);
    const auto unknown = usualVerdict("WZ");
    ASSERT_FALSE(unknown);
    EXPECT_EQ(unknown.error().code, Code::NotAChoice);
    EXPECT_EQ(unknown.error().value("value"), "Z");
}

}  // namespace
}  // namespace combwright
