// The season as it stood: whatever was done, undone and done again since, the copy that was walked
// back holds what the season held then, and nobody writes on in it.
#include "core/storage/as_it_stood.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QFile>

#include "core/actions/yard/yards.h"
#include "core/places/copies/copy_words.h"
#include "core/storage/audit.h"
#include "core/storage/copy_mark.h"
#include "core/storage/sqlite/storage_error.h"
#include "core/storage/what_if.h"
#include "tests/core/storage/random_actions.h"
#include "tests/support/support.h"

namespace combwright {
namespace {

using test::day;

class AsItStood : public test::SeasonTest {
  protected:
    /// What a copy of that step holds; it is opened as anybody would.
    std::string dumpAt(const Season& season, std::int64_t step) {
        const auto aside = asItStoodAside(season.read().database(), step, clock.today());
        EXPECT_TRUE(aside);
        return aside ? Season::open(aside->path, clock).dump() : std::string();
    }
};

TEST_F(AsItStood, IsWhatTheSeasonHeldThenWhateverWasDoneSince) {
    test::RandomActions random(20271128);
    Season season = newSeason();
    std::vector<std::string> dumps{season.dump()};
    const auto keep = [&] { dumps.push_back(season.dump()); };
    for (int yard = 1; yard <= 4; ++yard) {
        playAll(season, R"({"do":"add-yard","on":"2027-03-01","yard_name":"Y)" +
                            std::to_string(yard) + R"(","usual_super":"medium"})");
        keep();
    }
    for (int hive = 1; hive <= 12; ++hive) {
        playAll(season, R"({"do":"add-hive","on":"2027-03-01","yard":"Y)" +
                            std::to_string(hive % 4 + 1) + R"(","mark":"H)" + std::to_string(hive) +
                            R"(","boxes":"deep, x, medium"})");
        keep();
    }
    std::size_t turned = 0;
    for (int round = 0; round < 900; ++round) {
        const unsigned what = random.pick(10);
        if (what < 7) {
            const PlayResult result = play(season, random.line());
            if (result.stopped || result.steps.front().step == 0) continue;
        } else if (!(what == 7 ? season.redo() : season.undo())) {
            continue;
        } else {
            ++turned;
        }
        keep();
    }
    ASSERT_GT(dumps.size(), 150U);
    ASSERT_GT(turned, 50U);
    ASSERT_EQ(newestStep(season.read()), static_cast<std::int64_t>(dumps.size()) - 1);
    for (std::size_t step = 0; step < dumps.size(); step += 1 + random.pick(12))
        ASSERT_EQ(dumpAt(season, static_cast<std::int64_t>(step)), dumps[step])
            << "after step " << step;
    EXPECT_EQ(season.dump(), dumps.back()) << "the season itself is only read";
}

TEST_F(AsItStood, KnowsWhatStoodAndWhatWasTakenBackThen) {
    Season season = newSeason();
    playAll(season, R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"})");
    playAll(season, R"({"do":"add-yard","on":"2027-04-01","yard_name":"Creek"})");
    ASSERT_TRUE(season.undo());  // step 3
    playAll(season, R"({"do":"add-yard","on":"2027-04-01","yard_name":"Mill"})");
    const auto aside = asItStoodAside(season.read().database(), 3, clock.today());
    ASSERT_TRUE(aside);
    const Season then = Season::open(aside->path, clock, Database::Mode::ReadOnly);
    ASSERT_EQ(then.history().size(), 3U);
    EXPECT_EQ(then.nextUndo()->seq, 1);
    EXPECT_EQ(then.nextRedo()->seq, 2);
    EXPECT_FALSE(season.nextRedo());
    EXPECT_TRUE(audit(then.read()).empty());
}

TEST_F(AsItStood, GoesByTheDayOnWhichAStepWasKept) {
    Season season = newSeason();
    clock.set("2027-06-09");
    playAll(season, R"({"do":"add-yard","on":"2027-06-12","yard_name":"Hill"})");
    clock.set("2027-06-12");
    playAll(season, R"({"do":"add-yard","on":"2027-06-09","yard_name":"Creek"})");
    const Read& file = season.read();
    EXPECT_EQ(newestStepOn(file, day("2027-06-08")), 0);
    EXPECT_EQ(newestStepOn(file, day("2027-06-09")), 1);
    EXPECT_EQ(newestStepOn(file, day("2027-06-11")), 1);
    EXPECT_EQ(newestStepOn(file, day("2027-06-12")), 2);
    EXPECT_EQ(dayOfStep(file, 2), day("2027-06-12"));
    EXPECT_EQ(dayOfStep(file, 0), std::nullopt);
}

TEST_F(AsItStood, IsNeverWrittenOn) {
    Season season = newSeason();
    playAll(season, R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"})");
    const std::string to = path("then.combwright");
    ASSERT_TRUE(makeAsItStood(season.read().database(), to, 1, day("2027-06-09")));
    EXPECT_EQ(makeAsItStood(season.read().database(), to, 1, day("2027-06-09")).error().code,
              Code::PathTaken);
    Season then = Season::open(to, clock);
    EXPECT_EQ(then.readOnly(), ReadOnlyWhy::AsItStood);
    ASSERT_TRUE(then.copyMark());
    EXPECT_EQ(then.copyMark()->kind, CopyKind::AsItStood);
    EXPECT_EQ(then.copyMark()->ofFile, "season.combwright");
    EXPECT_EQ(then.copyMark()->on, day("2027-06-09"));
    EXPECT_THAT(copyTitle(*then.copyMark()).toStdString(), testing::HasSubstr("9 Jun 2027"));
    const auto refused =
        perform(then, AddYard{.on = day("2027-04-01"), .yard = test::name("Creek")});
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().code, Code::ReadOnly);
    EXPECT_FALSE(season.copyMark());
}

TEST_F(AsItStood, SaysWhereTheRowsDoNotFollowFromTheJournal) {
    Season season = newSeason();
    playAll(season, R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"})");
    season.read().database().run("UPDATE yard SET name = 'Other'");
    const std::string to = path("then.combwright");
    const auto made = makeAsItStood(season.read().database(), to, 0, clock.today());
    ASSERT_FALSE(made);
    EXPECT_EQ(made.error().code, Code::MovedOn);
    EXPECT_EQ(made.error().value("step"), "1");
    EXPECT_FALSE(QFile::exists(QString::fromStdString(to)));
    EXPECT_EQ(makeAsItStood(season.read().database(), to, 9, clock.today()).error().code,
              Code::NotFound);
}

TEST_F(AsItStood, AWhatIfIsMarkedAndDroppedAndNothingElseIs) {
    Season season = newSeason();
    playAll(season, R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"})");
    const std::string to = path("plan.combwright");
    ASSERT_TRUE(beginWhatIf(season.read().database(), to, "more hives", clock.today()));
    {
        Season whatIf = Season::open(to, clock);
        ASSERT_TRUE(whatIf.copyMark());
        EXPECT_EQ(whatIf.copyMark()->kind, CopyKind::WhatIf);
        EXPECT_EQ(whatIf.copyMark()->step, 1);
        EXPECT_FALSE(whatIf.readOnly());
        playAll(whatIf, R"({"do":"add-yard","on":"2027-04-01","yard_name":"Creek"})");
        // The mark goes along into a copy of the copy.
        ASSERT_TRUE(whatIf.copyTo(path("copy.combwright")));
    }
    EXPECT_EQ(Season::open(path("copy.combwright"), clock).copyMark()->name, "more hives");
    EXPECT_EQ(season.history().size(), 1U);
    EXPECT_EQ(dropWhatIf(path()).error().code, Code::NotFound);
    EXPECT_TRUE(QFile::exists(QString::fromStdString(path())));
    ASSERT_TRUE(dropWhatIf(to));
    EXPECT_FALSE(QFile::exists(QString::fromStdString(to)));
}

}  // namespace
}  // namespace combwright
