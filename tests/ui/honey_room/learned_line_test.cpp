// What a run taught, in the honey room: said in words, taken for next year by one key.
#include "ui/honey_room/learned_line.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QTest>

#include "core/storage/queries/constants.h"
#include "tests/support/book_season.h"
#include "tests/support/in_window.h"

namespace combwright {
namespace {

class TheLearnedLine : public test::WindowTest {
  protected:
    ReckonedAndGot ofLastRun() const {
        const auto runs = session.read().all<Extraction>();
        return reckonedAndGotOfRun(session.read(), *runBalance(session.read(), runs.back().id),
                                   clock.today());
    }
    double fullFrame() const {
        return constantOr(session.read(), "full_frame_g LANG-F-MED", std::nullopt,
                          test::day("2028-06-01"), 0);
    }
};

TEST_F(TheLearnedLine, SaysWhatWasReckonedAndGotAndTakesItByOneKey) {
    clock.set("2027-08-08");
    openWindow(test::bookYears());
    LearnedLine line(session);
    line.resize(600, 200);
    line.show(ofLastRun());
    line.QWidget::show();
    ASSERT_TRUE(line.isVisible());
    EXPECT_TRUE(line.text().contains(QStringLiteral("honey a medium frame: 1.36 → 1.60 kg w")))
        << line.text().toStdString();
    EXPECT_TRUE(line.text().contains(QStringLiteral("Offered from")));
    EXPECT_TRUE(line.button().toolTip().contains(QStringLiteral("the mean of the published")));
    line.activateWindow();
    line.button().setFocus();
    QTest::keyClick(&line.button(), Qt::Key_Space);
    EXPECT_DOUBLE_EQ(fullFrame(), 1880);
    line.show(ofLastRun());
    EXPECT_FALSE(line.button().isVisible()) << "all is taken";
    EXPECT_FALSE(line.text().contains(QStringLiteral("Offered")));
}

TEST_F(TheLearnedLine, StaysAwayWhereARunTeachesNothing) {
    clock.set("2027-08-08");
    openWindow(test::bookYards() +
               R"({"do":"open-run","on":"2027-08-08","name":"27-1","yard":"Hill"}
{"do":"fill-bucket","on":"2027-08-08","run":"27-1","mark":"all","net_g":10000})");
    LearnedLine line(session);
    line.show(ofLastRun());
    EXPECT_TRUE(line.isHidden());
}

}  // namespace
}  // namespace combwright
