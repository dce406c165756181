// What is taken to the yard on paper: hive, box by mark or place, what to do, what to expect, what
// to lift, and what to leave alone.
#include "core/places/pages/pull/pull_list_page.h"

#include <gtest/gtest.h>

#include "core/places/pages/page_text.h"
#include "core/places/pages/pull/pull_words.h"
#include "core/words/units.h"
#include "tests/support/deeds.h"
#include "tests/support/pull_season.h"

namespace combwright {
namespace {

class PullListPage : public test::DeedsTest {
  protected:
    void SetUp() override {
        clock.set(test::pullDay);
        done(test::pullSeason());
        asked = startingQuestion(file(), clock.today());
        asked.limits = test::pullLimits();
        asked.forDay = test::day("2027-08-06");
    }
    PullSheet sheet() const { return reckonPull(pullInput(file(), clock.today(), asked)); }
    std::string text() const { return pageText(pullListPage(file(), sheet())).toStdString(); }
    bool says(const char* words) const { return text().find(words) != std::string::npos; }
    std::string line(const char* mark) const {
        const std::string all = text();
        const std::size_t at = all.find(mark);
        if (at == std::string::npos) return {};
        const std::size_t from = all.rfind('\n', at) + 1;
        return all.substr(from, all.find('\n', at) - from);
    }

    PullAsked asked;
};

TEST_F(PullListPage, TellsTheYardWhatToDo) {
    EXPECT_TRUE(says("for Fri 6 Aug 2027"));
    EXPECT_TRUE(says("2 boxes with about 20 kg of honey")) << text();
    EXPECT_TRUE(says("Clearer boards in on Wed 4 Aug at dusk: H1 C1.")) << text();
    EXPECT_NE(line("M01").find("take"), std::string::npos) << line("M01");
    EXPECT_NE(line("M01").find("13ᵉ"), std::string::npos) << line("M01");
    EXPECT_NE(line("M01").find("18ᵃ"), std::string::npos) << "what lifting it weighs";
    EXPECT_NE(line("M04").find("REFUSE"), std::string::npos) << line("M04");
    EXPECT_NE(line("M04").find("treated while on"), std::string::npos);
    EXPECT_NE(line("M06").find("never looked into"), std::string::npos) << line("M06");
    EXPECT_NE(line("M08").find("not looked into since 20 Jun"), std::string::npos) << line("M08");
    EXPECT_NE(line("M10").find("suspected disease"), std::string::npos) << line("M10");
    EXPECT_TRUE(says("1 box")) << "each yard has its total";
    EXPECT_TRUE(says("robbing starts within the hour"));
}

TEST_F(PullListPage, OneLoadAndOneBucketAreOne) {
    ASSERT_EQ(sheet().yards[0].loads, 1);
    EXPECT_TRUE(says("1 load, 1 bucket")) << text();
    EXPECT_FALSE(says("1 loads")) << text();
    EXPECT_FALSE(says("1 buckets")) << text();
}

TEST_F(PullListPage, EachBoxToTakeHasItsPlaceAndTheNextFreePeg) {
    done(R"({"do":"clip-peg","on":"2027-07-29","peg":1,"box":"M06"})");
    EXPECT_NE(line("M01").find("the lowest super"), std::string::npos) << text();
    EXPECT_NE(line("M06").find("brought"), std::string::npos) << text();
    EXPECT_NE(line("M06").find(" 1"), std::string::npos) << line("M06");
    EXPECT_EQ(sheet().yards[0].hives[0].boxes[1].peg, 2) << "1 is on M06";
    EXPECT_FALSE(sheet().yards[0].hives[0].boxes[0].peg) << "it stays";
    EXPECT_TRUE(says("weighed wet"));
    // Off its box today it is free tomorrow.
    done(R"({"do":"take-peg-off","on":"2027-07-29","peg":1})");
    EXPECT_EQ(sheet().yards[0].hives[0].boxes[1].peg, 2);
    clock.set("2027-07-30");
    EXPECT_EQ(sheet().yards[0].hives[0].boxes[1].peg, 1);
}

TEST_F(PullListPage, BoardsThatAreTooFewGoRoundByRound) {
    done(R"({"do":"count-equipment","on":"2027-07-29","item":"clearer board","on_hand":1})");
    QString wrapped = QString::fromStdString(text());
    wrapped.replace(QLatin1Char('\n'), QLatin1Char(' '));
    EXPECT_TRUE(wrapped.contains(
        QStringLiteral("Clearer boards: 1 for 2 hives. Round 1 in Wed 4 Aug at dusk, pulled "
                       "Fri 6 Aug: H1. Round 2 in Fri 6 Aug at dusk, pulled Sun 8 Aug: C1.")))
        << text();
    done(
        R"({"do":"count-equipment","on":"2027-07-29","item":"clearer board","on_hand":0,"why_fewer":"lent"})");
    EXPECT_TRUE(says("No board for H1 C1: brush on Fri 6 Aug")) << text();
}

TEST_F(PullListPage, WarnsOfLiftingOnlyWhereSomethingIsHeavy) {
    EXPECT_FALSE(says("lift with two"));
    asked.supposed.fullFrameG = 2400;
    EXPECT_TRUE(says("over 23 kg lift with two")) << text();
    EXPECT_NE(line("M01").find("lift with two"), std::string::npos);
}

TEST_F(PullListPage, ABoxWithoutAMarkIsFoundByItsPlace) {
    done(
        R"({"do":"add-hive","on":"2027-05-01","yard":"Creek","mark":"C9","boxes":"deep, x, medium 9, medium 9","origin":"overwintered"})");
    EXPECT_TRUE(says("no mark; at the top")) << text();
    EXPECT_TRUE(says("no mark; the lowest super")) << text();
}

TEST_F(PullListPage, TheKeepersReasonIsOnIt) {
    asked.forced[box("M04").id.number] = ForcedVerdict(PullVerdict::Take, "on C2 then");
    EXPECT_TRUE(says("M04 on H3 is taken")) << text();
    EXPECT_TRUE(says("Reason: on C2")) << text();
    EXPECT_NE(text().find("treated while on; decided"), std::string::npos);
}

TEST_F(PullListPage, IsInPoundsForWhoeverReadsPounds) {
    const UnitsWhile us(Units::UsCustomary);
    EXPECT_FALSE(says(" kg")) << text();
    EXPECT_TRUE(says("44 lb of honey")) << text();
}

TEST_F(PullListPage, SaysWhatHoldsTheDayUp) {
    const PullSheet now = sheet();
    ASSERT_TRUE(now.day);
    EXPECT_TRUE(bottleneckText(*now.day).contains(hoursText(now.day->aloneMin)));
    EXPECT_EQ(hoursText(315), QStringLiteral("5 h 15"));
    EXPECT_EQ(hoursText(59.6), QStringLiteral("1 h 00"));
    EXPECT_EQ(honeySumText(now), QStringLiteral("Hill 13.0 + Creek 7.2 = 20.2"));
}

}  // namespace
}  // namespace combwright
