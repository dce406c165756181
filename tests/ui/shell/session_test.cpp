// The session's own promises: what the foot says after undo, redo and another program's writing,
// and that undo takes back what the foot names and nothing else.
#include "ui/shell/session.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/actions/yard/yards.h"
#include "tests/ui/shell/shell_season.h"

namespace combwright {
namespace {

using test::name;
using testing::HasSubstr;

class SessionTest : public test::ShellTest {
  protected:
    void SetUp() override {
        ShellTest::SetUp();
        openSeason();
    }
    AddYard yard(const char* called) const {
        return AddYard{.on = test::day("2027-04-01"), .yard = name(called)};
    }
    /// What the foot shows as told, the last word of the session's.
    std::string foot() const { return named<FootBar>("foot")->told().toStdString(); }
};

TEST_F(SessionTest, TheFootNamesWhatUndoAndRedoWouldDo) {
    EXPECT_THAT(session.undoText().toStdString(), HasSubstr("kept 14:00"));
    EXPECT_TRUE(session.redoText().isEmpty());
    session.undo();
    EXPECT_THAT(foot(), HasSubstr("Taken back"));
    EXPECT_FALSE(session.redoText().isEmpty());
    session.redo();
    EXPECT_THAT(foot(), HasSubstr("Done again"));
    EXPECT_TRUE(session.redoText().isEmpty());
    session.undo();
    ASSERT_TRUE(session.run(yard("Creek")));
    EXPECT_TRUE(session.redoText().isEmpty()) << "a new deed gives up what was taken back";
    EXPECT_EQ(foot(), "") << "what was told is about something else now";
}

TEST_F(SessionTest, SaysThatAnotherProgramWroteAndStillSaysSoAfterTheViewsRead) {
    Season theirs = Season::open(path(), clock);
    ASSERT_TRUE(perform(theirs, yard("Creek")));
    ASSERT_TRUE(session.run(yard("Lake")));
    EXPECT_THAT(foot(), HasSubstr("Another program wrote"));
    ASSERT_TRUE(session.run(yard("Moor")));
    EXPECT_EQ(foot(), "");
    // Coming back to the window is enough to see it.
    ASSERT_TRUE(perform(theirs, yard("Wood")));
    session.lookAgain();
    EXPECT_THAT(foot(), HasSubstr("Another program wrote"));
}

TEST_F(SessionTest, UndoTakesBackOnlyWhatTheFootNames) {
    Season theirs = Season::open(path(), clock);
    ASSERT_TRUE(session.run(yard("Lake")));
    ASSERT_TRUE(perform(theirs, yard("Creek")));
    session.undo();
    EXPECT_THAT(foot(), HasSubstr("Another program wrote"));
    EXPECT_EQ(session.read().where<Yard>({}).size(), 3U) << "nothing was taken back unseen";
    // Now the foot names their step, and undo takes that back.
    session.undo();
    EXPECT_THAT(foot(), HasSubstr("Taken back"));
    EXPECT_EQ(session.read().where<Yard>({}).size(), 2U);
    // Likewise with what would be done again.
    ASSERT_TRUE(theirs.undo());
    session.redo();
    EXPECT_THAT(foot(), HasSubstr("Another program wrote"));
    EXPECT_EQ(session.read().where<Yard>({}).size(), 1U);
}

}  // namespace
}  // namespace combwright
