// Last time's line put right at the bench, by keyboard; what a box weighs, said before it is
// lifted.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QLabel>
#include <QLineEdit>

#include "core/model/storeroom/review.h"
#include "tests/support/in_window.h"
#include "ui/shell/rail.h"
#include "ui/storeroom/storeroom_place.h"

namespace combwright {
namespace {

using testing::HasSubstr;
using testing::Not;

class BenchCorrection : public test::WindowTest {
  protected:
    void SetUp() override {
        clock.set("2028-01-10");
        openWindow(
            R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H1","boxes":"deep D1, x, medium M3 10 drawn","origin":"overwintered"}
{"do":"add-boxes","on":"2027-08-30","kind":"medium","first_mark":"M1","count":2,"contents":"9 drawn","stack":"a"}
{"do":"move-box","on":"2027-08-30","box":"M3","to":"storeroom","stack":"b"}
{"do":"review-box","on":"2028-01-06","box":"M1","contents":"7 keep, 1 web, 1 broken","scrapings_g":70,"comb_years":"24x3","wood":"1 lug"})");
        place = goToPlace<StoreroomPlace>(5);
        ASSERT_NE(place, nullptr);
        QApplication::processEvents();
    }
    void press(Qt::Key key) { QTest::keyClick(focus(), key); }
    void retype(const char* text) {
        auto* edit = qobject_cast<QLineEdit*>(focus());
        ASSERT_NE(edit, nullptr);
        edit->selectAll();
        QTest::keyClicks(edit, QString::fromUtf8(text));
    }
    QString line() const { return place->bench().line().text(); }
    BoxReview review(const char* mark) const {
        const auto box = session.read().first<Box>({is("mark", std::string(mark))});
        return session.read().where<BoxReview>({is("box", box->id)}).back();
    }
    std::string facts() const {
        std::string all;
        for (const QLabel* each : place->bench().findChildren<QLabel*>())
            if (!each->isHidden()) all += each->text().toStdString() + "\n";
        return all;
    }
    JournalEntry newest() { return session.season().history(1).front(); }

    StoreroomPlace* place = nullptr;
};

TEST_F(BenchCorrection, OpensTheLineAsItWasAndCountsAnewForThatDay) {
    press(Qt::Key_F2);
    EXPECT_EQ(focus(), &place->bench().line());
    EXPECT_EQ(line(),
              QStringLiteral("7 keep, 1 web, 1 broken; web, wax 70 g, years 24x3, wood 1 lug"));
    retype("8 keep, 1 web; wax 70, years 24x3, wood 1 lug");
    press(Qt::Key_Return);
    ASSERT_EQ(focus(), &place->bench().why());
    press(Qt::Key_Return);
    EXPECT_THAT(session.lastTold().toStdString(), HasSubstr("why"));
    EXPECT_EQ(review("M1").line, "7 keep, 1 web, 1 broken") << "not without a reason";
    QTest::keyClicks(focus(), QStringLiteral("lug was whole"));
    press(Qt::Key_Return);
    const BoxReview now = review("M1");
    EXPECT_EQ(now.line, "8 keep, 1 web");
    EXPECT_EQ(now.on, test::day("2028-01-06")) << "the look of that day, not a new one";
    EXPECT_EQ(now.scrapings->value, Mass::grams(70));
    EXPECT_EQ(session.read().all<BoxReview>().size(), 1U);
    EXPECT_EQ(newest().info.why, "lug was whole");
    EXPECT_EQ(focus(), &place->board());
    int broken = 0;
    for (const Frame& frame : session.read().all<Frame>()) broken += frame.faults == "V";
    EXPECT_EQ(broken, 0);
    QTest::keyClick(window.get(), Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(review("M1").line, "7 keep, 1 web, 1 broken") << "one step";
}

TEST_F(BenchCorrection, WhatWasWeighedWrongIsAmendedAndTheFramesStay) {
    const auto frames = session.read().all<Frame>();
    press(Qt::Key_F2);
    retype("7 keep, 1 web, 1 broken; web, wax 90, propolis ~12, years 24x3, wood 1 lug");
    press(Qt::Key_Return);
    QTest::keyClicks(focus(), QStringLiteral("scale misread"));
    press(Qt::Key_Return);
    EXPECT_EQ(review("M1").scrapings->value, Mass::grams(90));
    EXPECT_EQ(review("M1").propolis->how, How::ByEye);
    EXPECT_THAT(newest().info.line, HasSubstr("\"do\":\"amend\""));
    EXPECT_EQ(newest().info.why, "scale misread");
    EXPECT_EQ(session.read().all<RawWax>().front().clean->value, Mass::grams(90))
        << "and so is the wax it went into";
    for (const Frame& frame : frames)
        EXPECT_TRUE(toRow(*session.read().find(frame.id)) == toRow(frame));
}

TEST_F(BenchCorrection, EscapeLeavesItAndWhatIsHalfPutRightStays) {
    const auto steps = session.season().history().size();
    press(Qt::Key_F2);
    retype("6 keep");
    press(Qt::Key_Return);
    place->board().setFocus();
    press(Qt::Key_Down);
    press(Qt::Key_Up);
    press(Qt::Key_Return);
    EXPECT_EQ(line(), QString()) << "a new line is none of the one being put right";
    press(Qt::Key_Escape);
    press(Qt::Key_F2);
    EXPECT_EQ(line(), QStringLiteral("6 keep"));
    press(Qt::Key_Escape);
    EXPECT_EQ(focus(), &place->board());
    EXPECT_TRUE(place->bench().why().isHidden());
    press(Qt::Key_F2);
    EXPECT_THAT(line().toStdString(), HasSubstr("7 keep")) << "given up, it is as it was kept";
    press(Qt::Key_Return);
    press(Qt::Key_Return);
    EXPECT_THAT(session.lastTold().toStdString(), HasSubstr("says what it said"));
    press(Qt::Key_Escape);
    press(Qt::Key_Down);
    press(Qt::Key_F2);
    EXPECT_THAT(session.lastTold().toStdString(), HasSubstr("not looked through yet"));
    EXPECT_EQ(session.season().history().size(), steps);
}

TEST_F(BenchCorrection, ABoxSaysItsWeightAndWhenNotToLiftItAlone) {
    EXPECT_THAT(facts(), HasSubstr("weighs about 4"));
    EXPECT_THAT(facts(), HasSubstr("its stack of 2 about 9"));
    EXPECT_THAT(facts(), Not(HasSubstr("lift with two")));
    press(Qt::Key_Down);
    press(Qt::Key_Down);
    ASSERT_EQ(place->board().currentRow()->name, "M3");
    EXPECT_THAT(facts(), HasSubstr("It may be full, up to 27"))
        << "it came off a hive and nobody looked into it";
    EXPECT_THAT(facts(), HasSubstr("over 23 kg lift with two"));
}

TEST_F(BenchCorrection, TheHelpSaysHowAMixedBoxIsCounted) {
    EXPECT_THAT(place->help().toStdString(), HasSubstr("of shallow"));
    EXPECT_THAT(place->help().toStdString(), HasSubstr("F2"));
}

TEST_F(BenchCorrection, TheRailSaysHowManyBoxesWait) {
    const auto* rail = window->findChild<Rail*>();
    ASSERT_NE(rail, nullptr);
    EXPECT_EQ(rail->waiting(5), 2) << "M2 and M3 were never looked through";
    EXPECT_EQ(rail->waiting(0), 0);
    press(Qt::Key_Down);
    for (const Qt::Key each : {Qt::Key_9, Qt::Key_Return}) press(each);
    EXPECT_TRUE(QTest::qWaitFor([&] { return rail->waiting(5) == 1; }, 3000));
    const auto items = rail->findChildren<RailItem*>();
    EXPECT_EQ(items.at(5)->accessibleDescription(), QStringLiteral("1 waiting"));
}

}  // namespace
}  // namespace combwright
