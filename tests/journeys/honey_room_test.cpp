// The honey room in the real window: weights typed line by line give the worked example's shares; a
// frame is taken up and put down by keyboard and the offset follows.
#include <gtest/gtest.h>

#include <QApplication>
#include <QLineEdit>
#include <QTest>

#include "tests/support/hill_and_creek.h"
#include "tests/support/support.h"
#include "ui/honey_room/honey_room_place.h"
#include "ui/look/style.h"
#include "ui/season_book/season_book_place.h"
#include "ui/shell/main_window.h"

namespace combwright {
namespace {

class InTheHoneyRoom : public test::SeasonTest {
  protected:
    void SetUp() override {
        clock.set("2027-08-07");
        {
            Season season = newSeason();
            playAll(season, test::hillAndCreekBefore());
        }
        session.setLook(applyLook(*qobject_cast<QApplication*>(QApplication::instance()), false));
        ASSERT_TRUE(session.open(QString::fromStdString(path())));
        window = std::make_unique<MainWindow>(session);
        window->resize(1280, 800);
        window->show();
        window->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
        QTest::keyClick(window.get(), Qt::Key_3, Qt::ControlModifier);
        room = qobject_cast<HoneyRoomPlace*>(window->current());
        ASSERT_NE(room, nullptr);
    }
    void type(const std::string& line) const {
        auto* entry = qobject_cast<QLineEdit*>(QApplication::focusWidget());
        ASSERT_NE(entry, nullptr) << "the entry line has the cursor";
        QTest::keyClicks(entry, QString::fromStdString(line));
        QTest::keyClick(entry, Qt::Key_Return);
        EXPECT_TRUE(entry->text().isEmpty()) << line << ": " << session.lastTold().toStdString();
    }
    static std::string kilos(int grams) {
        return QString::number(grams / 1000.0, 'f', 1).toStdString();
    }

    Session session{clock};
    std::unique_ptr<MainWindow> window;
    HoneyRoomPlace* room = nullptr;
};

TEST_F(InTheHoneyRoom, TypedWeightsGiveTheShares) {
    type("open 27-2 Hill");
    for (const auto& box : test::hillBoxes) {
        const std::string mark = box.box ? box.box : "tagless";
        type(mark + " " + kilos(box.gross));
        type(mark + " wet " + kilos(box.wet));
    }
    type("cappings 11");
    type("B1 45.0 17.2");
    type("B2 46,5 17,4");
    window->current()->act();
    const auto balance = runBalance(session.read(), *room->run());
    ASSERT_TRUE(balance);
    ASSERT_EQ(balance->shares.size(), 5U);
    EXPECT_EQ(balance->shares[0].mass, Mass::grams(27512));
    EXPECT_EQ(balance->shares[1].mass, Mass::grams(14910));
    EXPECT_EQ(balance->shares[2].mass, Mass::grams(25648));
    EXPECT_EQ(balance->shares[3].mass, Mass::grams(10650));
    EXPECT_EQ(balance->shares[4].mass, Mass::grams(12780));
    EXPECT_TRUE(balance->run.closed);
    EXPECT_EQ(room->head().big.figure, QStringLiteral("91.5"));
}

TEST_F(InTheHoneyRoom, KeepsWhatWasTypedWrong) {
    type("open 27-2 Hill");
    auto* entry = qobject_cast<QLineEdit*>(QApplication::focusWidget());
    QTest::keyClicks(entry, QStringLiteral("H1a 1.240"));
    QTest::keyClick(entry, Qt::Key_Return);
    EXPECT_EQ(entry->text(), QStringLiteral("H1a 1.240")) << "1.240 means two things";
    EXPECT_TRUE(session.read().all<ExtractionBox>().empty());
}

TEST_F(InTheHoneyRoom, AFrameChangesPlacesByKeyboard) {
    type("open 27-2 Hill");
    type("H1a 21.4");
    type("H5a 17.0");
    LoadView& load = room->loadView();
    ASSERT_TRUE(load.hasLoad());
    const double before = load.load().offset.startG;
    load.setFocus();
    QTest::keyClick(&load, Qt::Key_Space);
    for (int n = 0; n < 4; ++n) QTest::keyClick(&load, Qt::Key_Right);
    const auto planned = load.load().places;
    QTest::keyClick(&load, Qt::Key_Return);
    EXPECT_TRUE(load.isChanged());
    EXPECT_EQ(load.load().places[0].has_value(), planned[4].has_value());
    EXPECT_GE(load.load().offset.startG + 1e-6, before) << "the plan was the best there is";
}

TEST_F(InTheHoneyRoom, TheSeasonBookShowsItAndItsTableTwin) {
    playAll(session.season(),
            test::runScript("27-2", "Hill", "2027-08-07", test::hillBoxes, 91500, 11000));
    QTest::keyClick(window.get(), Qt::Key_4, Qt::ControlModifier);
    auto* book = qobject_cast<SeasonBookPlace*>(window->current());
    ASSERT_NE(book, nullptr);
    EXPECT_EQ(book->head().big.figure, QStringLiteral("91.5"));
    EXPECT_FALSE(book->timeline().tableShown());
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_T);
    EXPECT_TRUE(book->timeline().tableShown());
    EXPECT_EQ(book->timeline().table().rowCount(), 1);
}

TEST_F(InTheHoneyRoom, EveryControlOfEveryPlaceHasAName) {
    for (std::size_t i = 0; i < window->places().size(); ++i) {
        window->goTo(static_cast<int>(i));
        window->places()[i]->settle();
        for (QWidget* widget : window->findChildren<QWidget*>()) {
            if (widget->focusPolicy() == Qt::NoFocus || !widget->isVisible()) continue;
            if (widget->inherits("QScrollArea") || widget->inherits("QStackedWidget")) continue;
            EXPECT_FALSE(widget->accessibleName().isEmpty() &&
                         widget->property("text").toString().isEmpty())
                << window->places()[i]->railWord().toStdString() << ": "
                << widget->metaObject()->className() << " " << widget->objectName().toStdString();
        }
    }
}

}  // namespace
}  // namespace combwright
