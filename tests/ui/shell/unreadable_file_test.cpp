// A file that cannot be read while it is open: the window says so and goes on with what it shows,
// and it says so no longer when the file can be read again.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/ui/shell/shell_season.h"

namespace combwright {
namespace {

using testing::HasSubstr;

class UnreadableFile : public test::ShellTest {
  protected:
    void SetUp() override {
        ShellTest::SetUp();
        openSeason();
    }
    /// Another program writes what no field of ours can hold, or puts it right again.
    void write(const char* sql) const {
        Database::open(path(), Database::Mode::ReadWrite).run(sql);
    }
    const QWidget* notice() const { return named<QWidget>("notice"); }
    std::string noticeText() const { return named<QLabel>("notice_text")->text().toStdString(); }
};

TEST_F(UnreadableFile, IsSaidInTheNoticeAndTheWindowGoesOn) {
    EXPECT_FALSE(notice()->isVisible());
    write("UPDATE hive SET since = 'no day'");
    key(Qt::Key_3, Qt::ControlModifier);
    key(Qt::Key_2, Qt::ControlModifier);
    EXPECT_EQ(window->current(), place);
    ASSERT_TRUE(notice()->isVisible());
    EXPECT_THAT(noticeText(), HasSubstr("is damaged (a value does not fit its field)"));
    EXPECT_THAT(noticeText(), HasSubstr("What is shown was read before that."));
    EXPECT_EQ(session.lastTold().toStdString() + " What is shown was read before that.",
              noticeText());
    EXPECT_EQ(place->board().currentHive()->mark, QStringLiteral("H1")) << "still shown";
    // The sheet reads the same records.
    place->openSheet();
    EXPECT_TRUE(notice()->isVisible());
    place->closeSheet();

    write("UPDATE hive SET since = '2027-04-10'");
    key(Qt::Key_2, Qt::ControlModifier);
    EXPECT_FALSE(notice()->isVisible());
    EXPECT_EQ(place->board().currentHive()->mark, QStringLiteral("H1"));
}

TEST_F(UnreadableFile, IsNotOpened) {
    session.close();
    write("UPDATE hive SET since = 'no day'");
    EXPECT_FALSE(session.open(file()));
    EXPECT_FALSE(session.hasSeason());
    ASSERT_TRUE(session.notOpened());
    EXPECT_THAT(session.notOpened()->says.toStdString(), HasSubstr("damaged"));
}

}  // namespace
}  // namespace combwright
