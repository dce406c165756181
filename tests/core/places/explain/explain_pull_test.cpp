// The last step of every figure explained is the figure shown, on a real season.
#include "core/places/explain/explain_pull.h"

#include <gtest/gtest.h>

#include <cmath>
#include <map>

#include "core/words/working_words.h"
#include "tests/support/deeds.h"
#include "tests/support/pull_season.h"

namespace combwright {
namespace {

class PullExplained : public test::DeedsTest {
  protected:
    void SetUp() override {
        clock.set(test::pullDay);
        done(test::pullSeason());
        asked = startingQuestion(file(), clock.today());
        asked.limits = test::pullLimits();
        reckon();
    }
    void reckon(std::optional<std::int64_t> chosen = std::nullopt) {
        const PullInput input = pullInput(file(), clock.today(), asked);
        sheet = reckonPull(input);
        figures = explainPull(file(), input, sheet, chosen);
        last.clear();
        for (const Explained& each : figures) {
            ASSERT_FALSE(each.working.steps.empty()) << each.what.toStdString();
            last[each.what.toStdString()] = each.working.steps.back().value;
        }
    }
    const Working::Step* step(const char* figure, const char* what) const {
        for (const Explained& each : figures)
            if (each.what == QLatin1String(figure))
                for (const Working::Step& one : each.working.steps)
                    if (one.what == what) return &one;
        return nullptr;
    }

    PullAsked asked;
    PullSheet sheet;
    std::vector<Explained> figures;
    std::map<std::string, double> last;
};

TEST_F(PullExplained, EveryFigureEndsInWhatIsShown) {
    EXPECT_NEAR(last.at("Honey in all"), sheet.honey.grams, 1e-6);
    EXPECT_NEAR(last.at("Most that any choice takes"), sheet.boundG, 1e-6);
    EXPECT_NEAR(last.at("To carry"), sheet.gross.grams, 1e-6);
    EXPECT_EQ(last.at("Loads"), static_cast<double>(sheet.day->loads));
    EXPECT_NEAR(last.at("The day"), sheet.day->dayMin, 1e-6);
    EXPECT_EQ(last.at("Buckets with spare"), static_cast<double>(sheet.day->bucketsWithSpare));
    EXPECT_EQ(last.at("Jars"), static_cast<double>(sheet.jars));
    int boxes = 0;
    for (const PullYardRow& yard : sheet.yards)
        for (const PullHiveRow& hive : yard.hives) {
            const std::string mark = hive.hive.mark.text();
            for (const PullBoxRow& row : hive.boxes) {
                if (!row.honey) continue;
                ++boxes;
                const std::string name = row.box.mark + " on " + mark;
                EXPECT_NEAR(last.at("Honey in " + name), row.honey->grams, 1e-6);
                EXPECT_NEAR(last.at("Weight of " + name + " to lift"), row.gross->grams, 1e-6);
            }
            if (!hive.remainingG) continue;
            EXPECT_NEAR(last.at("Left to " + mark), *hive.remainingG, 1e-6);
            EXPECT_NEAR(last.at("To feed " + mark), hive.shortG, 1e-6);
        }
    EXPECT_EQ(boxes, 7) << "all that were looked into lately";
}

TEST_F(PullExplained, EveryStepHasItsWord) {
    for (const Explained& each : figures)
        for (const Working::Step& one : each.working.steps)
            EXPECT_TRUE(hasStepWord(one.what)) << one.what;
}

TEST_F(PullExplained, SaysWhoseFigureItIs) {
    const auto* own = step("Honey in M01 on H1", "full_frame_g");
    ASSERT_NE(own, nullptr);
    EXPECT_NE(own->source.find("own figure since 2027-04-01"), std::string::npos) << own->source;
    const auto* printed = step("Buckets with spare", "bucket_g");
    ASSERT_NE(printed, nullptr);
    EXPECT_FALSE(printed->source.empty());
    EXPECT_EQ(printed->source.find("own figure"), std::string::npos);
    asked.supposed.fullFrameG = 1800;
    asked.supposed.bucketG = 10000;
    reckon();
    EXPECT_NE(step("Honey in M01 on H1", "full_frame_g")->source.find("not kept yet"),
              std::string::npos);
    EXPECT_NE(step("Buckets with spare", "bucket_g")->source.find("not kept yet"),
              std::string::npos);
    EXPECT_NEAR(last.at("Honey in all"), 1800 * 12.6, 1e-6);
}

TEST_F(PullExplained, TheChosenBoxComesFirst) {
    reckon(box("M07").id.number);
    EXPECT_EQ(figures[0].what, QStringLiteral("Honey in M07 on C1"));
    EXPECT_EQ(std::count_if(figures.begin(), figures.end(),
                            [](const Explained& each) {
                                return each.what == QStringLiteral("Honey in M07 on C1");
                            }),
              1);
}

TEST_F(PullExplained, DecidedBoxesAreInTheBound) {
    asked.forced[box("M02").id.number] = PullVerdict::Take;
    reckon();
    EXPECT_NEAR(last.at("Most that any choice takes"), sheet.boundG, 1e-6);
    EXPECT_NEAR(last.at("Honey in all"), 12960 + 11520 + 7200, 1e-6);
}

}  // namespace
}  // namespace combwright
