// The demo season is the acceptance test: its parts play without a refusal, the records agree, and
// the journal written out and played again gives the same season.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QFile>

#include "core/actions/demo_season.h"
#include "core/model/season_info.h"
#include "core/places/season_yield.h"
#include "core/storage/audit.h"
#include "tests/support/support.h"

namespace combwright {
namespace {

class DemoSeason : public test::SeasonTest {};

TEST_F(DemoSeason, PlaysWholeAndGivesWhatItSays) {
    Season season = newSeason();
    for (const char* part : {"1-yard-visits", "2-pull", "3-honey-room", "4-season-book"}) {
        QFile script(
            QStringLiteral(COMBWRIGHT_SOURCE_DIR "/demo/%1.play").arg(QLatin1String(part)));
        ASSERT_TRUE(script.open(QIODevice::ReadOnly)) << part;
        playAll(season, script.readAll().toStdString());
    }
    EXPECT_THAT(audit(season.read()), testing::IsEmpty());
    const SeasonYield yields = seasonYield(season.read(), 2027);
    EXPECT_EQ(yields.total, Mass::grams(157500));
    EXPECT_FALSE(yields.unknown) << "the lost tag was found in November";

    auto again = Season::create(path("again.combwright"), clock);
    ASSERT_TRUE(again);
    playAll(*again, scriptOf(season));
    EXPECT_EQ(again->dump(), season.dump());
}

TEST_F(DemoSeason, IsMadeFromWhatIsCompiledIn) {
    const auto made = makeDemoSeason(path("demo.combwright"), clock);
    ASSERT_TRUE(made);
    EXPECT_EQ(seasonYield(made->read(), 2027).total, Mass::grams(157500));
    EXPECT_TRUE(made->read().first<SeasonInfo>({})->invented.value_or(false));
    const auto again = makeDemoSeason(path("demo.combwright"), clock);
    ASSERT_FALSE(again);
    EXPECT_EQ(again.error().code, Code::PathTaken);
}

}  // namespace
}  // namespace combwright
