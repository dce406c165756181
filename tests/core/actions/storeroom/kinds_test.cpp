// Home-made boxes and frames, measured with a rule.
#include "core/actions/storeroom/kinds.h"

#include "core/model/frames/frame.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

class MeasuredKinds : public test::DeedsTest {
  protected:
    static constexpr auto frame =
        R"({"do":"measure-frame-kind","on":"2027-11-01","called":"my frame","top_bar_length_mm":470,"height_mm":200,"bottom_bar_length_mm":430,"spacing_mm":36})";
    static constexpr auto box =
        R"({"do":"measure-box-kind","on":"2027-11-01","called":"my box","frames_nominal":9,"outer_height_mm":210,"inner_length_mm":448,"inner_width_mm":340,"bee_space":"top","takes":"my frame"})";
};

TEST_F(MeasuredKinds, MayBeUsedLikeTheTradesOwn) {
    done(frame);
    done(box);
    done(
        R"({"do":"add-boxes","on":"2027-11-02","kind":"my box","first_mark":"X1","contents":"8 drawn"})");
    const auto frames = file().where<Frame>({is("box", DeedsTest::box("X1").id)});
    ASSERT_EQ(frames.size(), 8U);
    EXPECT_EQ(file().find(frames.front().kind)->name.text(), "my frame");
}

TEST_F(MeasuredKinds, SaidAgainTakeTheNewMeasureAndKeepTheOthers) {
    done(frame);
    done(R"({"do":"measure-frame-kind","on":"2027-11-03","called":"my frame","height_mm":201})");
    const auto kind = file().first<FrameKind>({is("name", std::string("my frame"))});
    ASSERT_TRUE(kind);
    EXPECT_EQ(kind->height, Length::mm(201));
    EXPECT_EQ(kind->topBarLength, Length::mm(470));
    EXPECT_EQ(outcome(R"({"do":"measure-frame-kind","on":"2027-11-03","called":"my frame"})"),
              "nothing_to_do called");
}

TEST_F(MeasuredKinds, ThatCannotBeAreRefused) {
    EXPECT_EQ(outcome(R"({"do":"measure-frame-kind","on":"2027-11-01","called":"LANG-F-MED"})"),
              "taken called");
    EXPECT_EQ(
        outcome(
            R"({"do":"measure-frame-kind","on":"2027-11-01","called":"odd","top_bar_length_mm":400,"bottom_bar_length_mm":430})"),
        "contradiction bottom_bar_length_mm");
    EXPECT_EQ(
        outcome(
            R"({"do":"measure-box-kind","on":"2027-11-01","called":"odd","outer_height_mm":0})"),
        "out_of_range outer_height_mm");
    EXPECT_EQ(
        outcome(
            R"({"do":"measure-box-kind","on":"2027-11-01","called":"odd","outer_width_mm":300,"inner_width_mm":300})"),
        "contradiction inner_width_mm");
    EXPECT_EQ(
        outcome(R"({"do":"measure-box-kind","on":"2027-11-01","called":"odd","frames_nominal":0})"),
        "out_of_range frames_nominal");
}

TEST_F(MeasuredKinds, AWordOfTheTradeMeansAKindAlready) {
    for (const char* word : {"deep", "Medium", "shallow"}) {
        const std::string called = R"("on":"2027-11-01","called":")" + std::string(word) + "\"}";
        EXPECT_EQ(outcome(R"({"do":"measure-box-kind",)" + called), "taken called") << word;
        EXPECT_EQ(outcome(R"({"do":"measure-frame-kind",)" + called), "taken called") << word;
    }
    done(frame);
    done(box);
    EXPECT_EQ(outcome(R"({"do":"measure-box-kind","on":"2027-11-01","called":"my deep"})"), "kept");
}

TEST_F(MeasuredKinds, AreNotLongerThanTwoMetres) {
    const auto measured = [](const char* verb, const std::string& field, const char* mm) {
        return R"({"do":")" + std::string(verb) + R"(","on":"2027-11-01","called":"odd",")" +
               field + "\":" + mm + "}";
    };
    EXPECT_EQ(outcome(measured("measure-frame-kind", "height_mm", "2000.1")),
              "out_of_range height_mm");
    EXPECT_EQ(outcome(measured("measure-box-kind", "outer_length_mm", "4700")),
              "out_of_range outer_length_mm");
    EXPECT_EQ(outcome(measured("measure-box-kind", "rest_depth_mm", "2500")),
              "out_of_range rest_depth_mm");
    EXPECT_EQ(outcome(measured("measure-box-kind", "outer_length_mm", "2000")), "kept");
}

TEST_F(MeasuredKinds, ABoxWithoutItsFrameTakesNoContents) {
    done(R"({"do":"measure-box-kind","on":"2027-11-01","called":"my box","frames_nominal":9})");
    const auto adding = [](const char* contents) {
        return R"({"do":"add-boxes","on":"2027-11-02","kind":"my box","first_mark":"X1","contents":")" +
               std::string(contents) + "\"}";
    };
    EXPECT_EQ(outcome(adding("8 drawn")), "unknown_size contents");
    EXPECT_EQ(refusalValue(adding("8 drawn"), "name"), "my box");
    done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"})");
    EXPECT_EQ(
        code(
            R"({"do":"add-hive","on":"2027-11-02","yard":"Hill","mark":"H1","boxes":"my box 8 drawn","origin":"swarm"})"),
        "unknown_size");
    EXPECT_EQ(outcome(R"({"do":"add-boxes","on":"2027-11-02","kind":"my box","first_mark":"X1"})"),
              "kept")
        << "an empty one, or one nobody counted";
}

}  // namespace
}  // namespace combwright
