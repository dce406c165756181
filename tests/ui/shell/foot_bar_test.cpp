// The foot tells a refusal whole, however long the sentence and large the type.
#include "ui/shell/foot_bar.h"

#include <gtest/gtest.h>

#include "tests/ui/shell/shell_season.h"

namespace combwright {
namespace {

using FootBarTest = test::ShellTest;

const QString told = QStringLiteral(
    "The box M1 cannot be put on hive H2 on 12 June 2027, for it stands on hive H1 from 1 June on "
    "and nobody wrote that it was taken off. Nothing was kept. Write the day it was taken off "
    "first, or put right the day it was put on.");

TEST_F(FootBarTest, GrowsWithWhatIsToldAndIsOneLineAgainAfterwards) {
    openSeason();
    auto* foot = window->findChild<FootBar*>(QStringLiteral("foot"));
    ASSERT_TRUE(foot);
    const int oneLine = foot->height();
    session.tell(QStringLiteral("Kept."));
    EXPECT_EQ(foot->height(), oneLine);
    session.tell(told, true);
    QApplication::processEvents();
    EXPECT_GT(foot->height(), oneLine);
    EXPECT_EQ(foot->toolTip(), told);
    EXPECT_EQ(foot->geometry().bottom(), foot->parentWidget()->rect().bottom());
    session.tell({});
    EXPECT_EQ(foot->height(), oneLine);
}

TEST_F(FootBarTest, TakesMoreLinesWhereTheWindowIsNarrow) {
    openSeason();
    auto* foot = window->findChild<FootBar*>(QStringLiteral("foot"));
    window->resize(1700, 800);
    session.tell(told, true);
    QApplication::processEvents();
    const int wide = foot->height();
    window->resize(1100, 800);
    QApplication::processEvents();
    EXPECT_GT(foot->height(), wide);
    window->resize(1700, 800);
    QApplication::processEvents();
    EXPECT_EQ(foot->height(), wide);
}

}  // namespace
}  // namespace combwright
