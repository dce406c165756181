// The window stands with the place in front; the others are made after its first frame, or at once
// where one goes there sooner.
#include <gtest/gtest.h>

#include <QTest>

#include "tests/support/support.h"
#include "ui/look/style.h"
#include "ui/pull/pull_place.h"
#include "ui/shell/main_window.h"

namespace combwright {
namespace {

class PlacesMade : public test::SeasonTest {
  protected:
    void SetUp() override {
        clock.set("2028-01-10");
        {
            auto season = newSeason();
            playAll(season, R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H1","boxes":"deep D1, x, medium M3 10 drawn","origin":"overwintered"}
{"do":"add-boxes","on":"2027-08-30","kind":"medium","first_mark":"M1","count":2,"contents":"9 drawn","stack":"a"})");
        }
        session.setLook(applyLook(*qobject_cast<QApplication*>(QApplication::instance()), false));
        ASSERT_TRUE(session.open(QString::fromStdString(path("season.combwright"))));
        window = std::make_unique<MainWindow>(session);
        window->resize(1280, 800);
    }
    qsizetype made() const { return window->findChildren<Place*>().size(); }

    Session session{clock};
    std::unique_ptr<MainWindow> window;
};

TEST_F(PlacesMade, TheOthersOnceTheFirstFrameStands) {
    EXPECT_EQ(made(), 1);
    EXPECT_EQ(window->findChildren<RailItem*>().size(), 7) << "all are in the rail from the start";
    window->show();
    ASSERT_TRUE(QTest::qWaitFor([this] { return made() == 7; }, 10'000));
    const auto* rail = window->findChild<Rail*>();
    for (int i = 0; i < rail->count(); ++i)
        EXPECT_EQ(rail->waiting(i), window->places()[static_cast<std::size_t>(i)]->waiting()) << i;
    EXPECT_GT(rail->waiting(5), 0) << "two boxes were never looked through";
}

TEST_F(PlacesMade, AtOnceWhereOneGoesThereSooner) {
    window->goTo(2);
    EXPECT_NE(qobject_cast<PullPlace*>(window->current()), nullptr);
    EXPECT_EQ(made(), 2);
    EXPECT_EQ(window->places().size(), 7U) << "who asks for all of them is given all";
    EXPECT_EQ(made(), 7);
}

TEST_F(PlacesMade, AlsoOfAFileThatCannotBeReadAnyMore) {
    // Another program writes what no field of ours can hold.
    Database::open(path("season.combwright"), Database::Mode::ReadWrite)
        .run("UPDATE hive SET since = 'no day'");
    window->show();
    ASSERT_TRUE(QTest::qWaitFor([this] { return made() == 7; }, 10'000));
    EXPECT_FALSE(session.unreadable().isEmpty());
    for (int i = 0; i < 7; ++i) window->goTo(i);
    EXPECT_FALSE(session.unreadable().isEmpty());
}

TEST_F(PlacesMade, InTheOrderOfTheRailHoweverTheyWereComeTo) {
    window->goTo(5);
    window->goTo(2);
    const auto items = window->findChildren<RailItem*>();
    const auto& places = window->places();
    for (std::size_t i = 0; i < places.size(); ++i)
        EXPECT_EQ(items[static_cast<qsizetype>(i)]->text(), places[i]->railWord());
}

}  // namespace
}  // namespace combwright
