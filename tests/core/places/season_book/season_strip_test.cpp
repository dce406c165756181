// The strip for the wall: which week shows what. Two invented hives; every week was read off a
// calendar by hand.
#include "core/places/season_book/season_strip.h"

#include <gtest/gtest.h>

#include "core/places/pages/page_text.h"
#include "core/places/pages/season_book/season_strip_page.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

class StripOfTwoHives : public test::DeedsTest {
  protected:
    void SetUp() override {
        clock.set("2027-11-01");
        done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill","usual_super":"medium"}
{"do":"add-hive","on":"2027-04-12","yard":"Hill","mark":"H1","boxes":"deep D1 9","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-12","yard":"Hill","mark":"H2","boxes":"deep D2 9","origin":"overwintered"}
{"do":"add-boxes","on":"2027-04-12","kind":"medium","first_mark":"M1","count":1,"contents":"9 drawn"}
{"do":"record-visit","on":"2027-05-05","yard":"Hill"}
{"do":"write-line","on":"2027-05-05","hive":"H1","line":"e b6 s2 +S"}
{"do":"write-line","on":"2027-05-05","hive":"H2","line":"not opened, rain"}
{"do":"buy-medicine","on":"2027-04-01","name":"Strips","supers":"may stay","in_hive_from_days":10,"in_hive_to_days":20,"wait_days":0}
{"do":"treat","on":"2027-06-09","medicine":"Strips","hives":"H1","out_day":"2027-06-22"}
{"do":"end-colony","on":"2027-07-01","hive":"H2","ending":"queenless"})");
    }
    SeasonStrip strip() { return seasonStrip(file(), 2027, clock.today()); }
    static const StripWeek& week(const SeasonStrip& strip, std::size_t row, const char* monday) {
        static const StripWeek none;
        for (std::size_t n = 0; n < strip.weeks.size(); ++n)
            if (strip.weeks[n] == test::day(monday)) return strip.yards.at(0).rows.at(row).weeks[n];
        ADD_FAILURE() << "no week from " << monday;
        return none;
    }
};

TEST_F(StripOfTwoHives, AWeekShowsWhatWasWrittenDownInIt) {
    const SeasonStrip all = strip();
    ASSERT_EQ(all.yards.size(), 1U);
    ASSERT_EQ(all.yards.front().rows.size(), 2U);
    EXPECT_EQ(all.weeks.front(), test::day("2027-05-03")) << "the set-up itself is no work";
    EXPECT_EQ(all.weeks.back(), test::day("2027-06-28"));
    EXPECT_TRUE(week(all, 0, "2027-05-03").opened);
    EXPECT_EQ(week(all, 0, "2027-05-03").marks, std::set{StripMark::BoxesOn});
    EXPECT_FALSE(week(all, 1, "2027-05-03").opened);
    EXPECT_TRUE(week(all, 1, "2027-05-03").lidOnly);
    EXPECT_FALSE(week(all, 0, "2027-05-10").opened);
    EXPECT_TRUE(week(all, 0, "2027-05-10").marks.empty());
}

TEST_F(StripOfTwoHives, AMedicineIsInFromThePuttingInToTheTakingOut) {
    const SeasonStrip all = strip();
    EXPECT_EQ(week(all, 0, "2027-06-07").marks, std::set{StripMark::Treated});
    for (const char* monday : {"2027-06-07", "2027-06-14", "2027-06-21"})
        EXPECT_TRUE(week(all, 0, monday).medicine) << monday;
    EXPECT_FALSE(week(all, 0, "2027-05-31").medicine);
    EXPECT_FALSE(week(all, 0, "2027-06-28").medicine);
    EXPECT_FALSE(week(all, 1, "2027-06-14").medicine);
}

TEST_F(StripOfTwoHives, WhoEndedIsShownOnceAndNobodyLivesThereThen) {
    done(R"({"do":"record-visit","on":"2027-07-20","yard":"Hill"}
{"do":"write-line","on":"2027-07-20","hive":"H1","line":"e b7"})");
    const SeasonStrip all = strip();
    EXPECT_EQ(week(all, 1, "2027-06-28").marks, std::set{StripMark::Ended});
    EXPECT_FALSE(week(all, 1, "2027-06-28").nobody);
    EXPECT_TRUE(week(all, 1, "2027-07-05").nobody);
    EXPECT_FALSE(week(all, 0, "2027-07-05").nobody);
}

TEST_F(StripOfTwoHives, ThePageHasARowAHiveAndSaysWhatTheLettersAre) {
    const Page page = seasonStripPage(file(), strip(), clock.today());
    EXPECT_TRUE(page.wide);
    const std::string text = pageText(page).toStdString();
    for (const char* each :
         {"Season strip 2027", "Hill", "H1", "H2", "boxes added", "dead or lost"})
        EXPECT_NE(text.find(each), std::string::npos) << each << " in " << text;
    const Page none =
        seasonStripPage(file(), seasonStrip(file(), 2026, clock.today()), clock.today());
    EXPECT_NE(pageText(none).toStdString().find("Nothing is written down of 2026"),
              std::string::npos);
}

TEST_F(StripOfTwoHives, ALongYearIsParted) {
    SeasonStrip all = strip();
    const Day first = all.weeks.front();
    all.weeks.clear();
    for (int n = 0; n < 52; ++n) all.weeks.push_back(first + days(7 * n));
    for (StripRow& row : all.yards.front().rows) row.weeks.resize(52);
    int tables = 0;
    for (const Block& block : seasonStripPage(file(), all, clock.today()).blocks)
        if (const auto* table = std::get_if<TableBlock>(&block)) {
            ++tables;
            EXPECT_EQ(table->columns.size(), 27U) << "26 weeks and their hive";
            EXPECT_FALSE(table->title.isEmpty());
        }
    EXPECT_EQ(tables, 2);
}

}  // namespace
}  // namespace combwright
