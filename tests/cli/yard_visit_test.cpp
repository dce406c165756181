// The worked example of a June visit (tests/support/mill_lane.h), typed as lines for play: the rows
// of the yard sheet, and what follows from them, are those worked out by hand.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "core/places/yard/yard_sheet.h"
#include "tests/cli/run_cli.h"
#include "tests/support/mill_lane.h"

namespace combwright {
namespace {

using test::CliAnswer;
using test::day;
using testing::ElementsAre;

class YardVisit : public test::CliTest {
  protected:
    void SetUp() override {
        makeSeason();
        const CliAnswer before = on("play", {}, test::millLaneBefore());
        ASSERT_EQ(before.exit, cli::Done) << before;
        const CliAnswer visit = on("play", {}, test::millLaneVisit());
        ASSERT_EQ(visit.exit, cli::Done) << visit;
    }
    YardSheet sheet() const {
        const Season season = Season::open(path(), clock, Database::Mode::ReadOnly);
        return yardSheet(season.read(), Id<Yard>{1}, day("2027-06-09"));
    }
    /// The row of "ML3" is the third.
    static const YardSheetRow& row(const YardSheet& sheet, std::size_t n) {
        return sheet.rows.at(n - 1);
    }
    static const Mind* mind(const YardSheetRow& row, MindKind kind) {
        const auto found = std::find_if(row.minds.begin(), row.minds.end(),
                                        [&](const Mind& each) { return each.kind == kind; });
        return found == row.minds.end() ? nullptr : &*found;
    }
    static std::vector<std::string> takenAlong(const YardSheet& sheet, TakeAlong::What what) {
        for (const TakeAlong& each : sheet.takeAlong)
            if (each.what == what) return each.hives;
        return {};
    }
};

TEST_F(YardVisit, CountsWhatWasOpenedAndPutOn) {
    const YardSheet visit = sheet();
    ASSERT_EQ(visit.rows.size(), 12U);
    EXPECT_EQ(visit.opened, 11);
    EXPECT_EQ(visit.notOpened, 1);
    EXPECT_EQ(visit.supersPutOn, 8);
    EXPECT_EQ(visit.supersInStore, 12);
    // Every hive carried one before; these got what.
    std::vector<std::int64_t> before;
    std::vector<std::int64_t> got;
    for (const YardSheetRow& each : visit.rows) {
        before.push_back(each.supersBefore);
        got.push_back(each.supersNow - each.supersBefore);
    }
    EXPECT_THAT(before, testing::Each(1));
    EXPECT_THAT(got, ElementsAre(1, 1, 0, 0, 1, 0, 0, 2, 1, 1, 1, 0));
}

TEST_F(YardVisit, AveragesOnlyWhereThereWasAFigure) {
    const YardSheet visit = sheet();
    ASSERT_TRUE(visit.brood);
    EXPECT_EQ(visit.brood->n, 10);
    EXPECT_NEAR(visit.brood->value, 7.1, 1e-9) << "a blank is not zero";
    EXPECT_EQ(visit.brood->how, How::Counted);
    EXPECT_FALSE(row(visit, 3).today->seen.brood);
    EXPECT_FALSE(row(visit, 12).today->seen.stores) << "a blank stays a blank";
}

TEST_F(YardVisit, TellsWhenToLookIntoTheHiveWithTheQueenCell) {
    const YardSheet visit = sheet();
    const YardSheetRow& three = row(visit, 3);
    EXPECT_EQ(three.today->seen.eggs, false);
    EXPECT_EQ(three.today->seen.queenSeen, false);
    const Mind* wait = mind(three, MindKind::QueenWait);
    ASSERT_TRUE(wait && wait->queen);
    EXPECT_EQ(isoText(wait->queen->emergesTo), "2027-06-17");
    EXPECT_EQ(isoText(wait->queen->lookFrom), "2027-07-01");
    EXPECT_EQ(isoText(wait->queen->testFrameFrom), "2027-07-08");
    EXPECT_EQ(isoText(wait->queen->actBy), "2027-07-15");
    EXPECT_FALSE(mind(three, MindKind::NoEggs)) << "a cell was left; no eggs is what one expects";
    EXPECT_THAT(takenAlong(visit, TakeAlong::What::LeaveShut), ElementsAre("ML3"));
}

TEST_F(YardVisit, ReckonsTheWashesAndFlagsTheOneOverTheLine) {
    const YardSheet visit = sheet();
    const Mind* five = mind(row(visit, 5), MindKind::Mites);
    ASSERT_TRUE(five);
    EXPECT_NEAR(*five->mitesPer100, 1.33, 0.005);
    const Mind* nine = mind(row(visit, 9), MindKind::MitesOver);
    ASSERT_TRUE(nine);
    EXPECT_NEAR(*nine->mitesPer100, 3.67, 0.005);
    EXPECT_TRUE(nine->supersOn) << "supers are on: the label decides";
    EXPECT_THAT(takenAlong(visit, TakeAlong::What::TreatmentDecision), ElementsAre("ML9"));
    EXPECT_THAT(takenAlong(visit, TakeAlong::What::Feed), ElementsAre("ML6"));
}

TEST_F(YardVisit, AHiveNotOpenedShowsWhenItLastWas) {
    const YardSheet visit = sheet();
    const YardSheetRow& seven = row(visit, 7);
    EXPECT_EQ(seven.today->seen.looked, Looked::NotOpened);
    EXPECT_EQ(seven.today->seen.note, "rain");
    EXPECT_FALSE(seven.today->seen.brood);
    ASSERT_TRUE(seven.last);
    EXPECT_EQ(isoText(seven.last->on), "2027-06-02");
    EXPECT_EQ(visit.on - seven.last->on, days(7));
    ASSERT_TRUE(mind(seven, MindKind::NotOpened));
    EXPECT_EQ(row(visit, 10).today->seen.note, "cross");
}

TEST_F(YardVisit, ALineWrittenAnewTakesTheSuperBack) {
    const CliAnswer later = on(
        "play", {},
        R"({"do":"write-line","on":"2027-06-09","hive":"ML8","line":"e b9 s5 +1","why":"counted"})");
    ASSERT_EQ(later.exit, cli::Done) << later;
    const YardSheet visit = sheet();
    EXPECT_EQ(visit.supersPutOn, 7);
    EXPECT_EQ(visit.supersInStore, 13);
    EXPECT_EQ(row(visit, 8).supersNow, 2);
    EXPECT_EQ(visit.brood->n, 10);
    // The old line stays in the journal with the reason, and can come back.
    const QJsonArray history = on("history", {QStringLiteral("--json")}).array();
    EXPECT_EQ(history[0][QLatin1String("why")], QStringLiteral("counted"));
    const auto wasWritten = std::count_if(history.begin(), history.end(), [](const auto& each) {
        return each.toObject()[QLatin1String("line")].toString().contains(
            QLatin1String("e b9 s5 +2"));
    });
    EXPECT_EQ(wasWritten, 1);
    ASSERT_EQ(on("undo").exit, cli::Done);
    EXPECT_EQ(sheet().supersPutOn, 8);
    EXPECT_EQ(sheet().supersInStore, 12);
}

}  // namespace
}  // namespace combwright
