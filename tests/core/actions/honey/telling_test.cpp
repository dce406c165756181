// What stands on labels, where a printer puts them, and sheets kept: what is kept, what is refused
// without a trace.
#include "core/actions/honey/telling.h"

#include <gtest/gtest.h>

#include "core/storage/queries/labels.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

class ToldOnPaper : public test::DeedsTest {
  protected:
    static std::string labels(const std::string& more, const char* on = "2027-06-01") {
        return R"({"do":"set-labels","on":")" + std::string(on) + "\"," + more + "}";
    }
    static std::string moved(const std::string& more, const char* on = "2027-06-01") {
        return R"({"do":"move-labels","on":")" + std::string(on) + "\"," + more + "}";
    }
    LabelText text(const char* on) const {
        return labelTextInForce(file(), test::day(on)).value_or(LabelText{});
    }
};

TEST_F(ToldOnPaper, WhatIsNotGivenStaysAndADashTakesAway) {
    done(labels(R"("producer":"Hill Bees","address":"1 Lane","months":24)"));
    done(labels(R"("producer":"Hill Honey","address":"-")", "2027-08-01"));
    EXPECT_EQ(text("2027-07-31").producer, "Hill Bees");
    EXPECT_EQ(text("2027-08-01").producer, "Hill Honey");
    EXPECT_EQ(text("2027-08-01").address, "");
    EXPECT_EQ(text("2027-08-01").months, Count(24));
    EXPECT_FALSE(labelTextInForce(file(), test::day("2027-05-31")));
    done(labels(R"("origin":"Ireland")", "2027-08-01"));
    EXPECT_EQ(file().all<LabelText>().size(), 2U) << "the same day is put right, not added";
    expectClean();
}

TEST_F(ToldOnPaper, LabelsRefuseWhatNoTableHas) {
    EXPECT_EQ(outcome(labels(R"("label_region":"Atlantis")")), "not_a_choice label_region");
    EXPECT_EQ(outcome(labels(R"("limits_edition":"mine")")), "not_a_choice limits_edition");
    EXPECT_EQ(outcome(labels(R"("months":0)")), "out_of_range months");
    EXPECT_EQ(outcome(labels(R"("months":121)")), "out_of_range months");
    EXPECT_EQ(outcome(labels(R"("flower":"Lime")")), "missing flower_grounds");
    EXPECT_EQ(outcome(labels(R"("more":")" + std::string(201, 'x') + '"')), "out_of_range more");
    EXPECT_EQ(outcome(labels(R"("producer":"")")), "nothing_to_do ");
}

TEST_F(ToldOnPaper, AFlowerWithoutAStatementIsFoundByTheCheck) {
    done(
        labels(R"("flower":"Lime","flower_grounds":"the limes of the avenue, in flower in June")"));
    expectClean();
    // No deed can write that; a file that came from elsewhere may hold it.
    LabelText bare = text("2027-06-01");
    bare.flowerGrounds.clear();
    ASSERT_TRUE(season.perform({"test", "{}", {}, {}}, [&](Write& into) -> Result<void> {
        into.change(bare);
        return {};
    }));
    const auto findings = audit(file());
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings.front().about, "labels since 2027-06-01");
}

TEST_F(ToldOnPaper, LabelsLieWhereTheyWereMeasuredLast) {
    done(moved(R"("grid":"a4-3x7","right_mm":1.5)"));
    done(moved(R"("grid":"a4-3x7","down_mm":-2)", "2027-07-01"));
    const auto offset = labelOffsetInForce(file(), "a4-3x7", test::day("2027-07-01"));
    ASSERT_TRUE(offset);
    EXPECT_DOUBLE_EQ(offset->right.value(), 1.5);
    EXPECT_DOUBLE_EQ(offset->down.value(), -2);
    EXPECT_FALSE(labelOffsetInForce(file(), "a4-3x8", test::day("2027-07-01")));
    EXPECT_EQ(outcome(moved(R"("grid":"a4","right_mm":1)")), "not_a_choice grid");
    EXPECT_EQ(outcome(moved(R"("grid":"a4-3x7","right_mm":31)")), "out_of_range right_mm");
    EXPECT_EQ(outcome(moved(R"("grid":"a4-3x7","down_mm":-31)")), "out_of_range down_mm");
    EXPECT_EQ(outcome(moved(R"("grid":"a4-3x7","down_mm":-2)", "2027-07-02")), "nothing_to_do ");
    EXPECT_EQ(outcome(moved(R"("grid":"a4-3x8","down_mm":0)")), "nothing_to_do ");
}

TEST_F(ToldOnPaper, ASheetIsKeptOnceADayAsItReads) {
    const std::string keep =
        R"({"do":"keep-sheet","on":"2027-06-02","what_sheet":"trace","subject":"Summer blend",)"
        R"("as_it_read":"H1 9.0 kg"})";
    done(keep);
    EXPECT_EQ(outcome(keep), "nothing_to_do ");
    EXPECT_EQ(outcome(R"({"do":"keep-sheet","on":"2027-06-02","what_sheet":"trace","subject":"x",)"
                      R"("as_it_read":""})"),
              "missing as_it_read");
    ASSERT_EQ(file().all<KeptSheet>().size(), 1U);
    EXPECT_EQ(file().all<KeptSheet>()[0].text, "H1 9.0 kg");
    ASSERT_TRUE(season.undo());
    EXPECT_TRUE(file().all<KeptSheet>().empty());
    ASSERT_TRUE(season.redo());
    EXPECT_EQ(file().all<KeptSheet>().size(), 1U);
}

}  // namespace
}  // namespace combwright
