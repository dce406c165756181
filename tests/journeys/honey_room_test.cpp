// The honey room in the real window: weights typed line by line give the worked example's shares,
// slips are asked about, a day is entered afterwards and closed.
#include <gtest/gtest.h>

#include <QApplication>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTest>
#include <QTimer>
#include <functional>
#include <set>

#include "tests/support/in_honey_room.h"
#include "ui/look/style.h"
#include "ui/season_book/season_book_place.h"

namespace combwright {
namespace {

using InTheHoneyRoom = test::InTheHoneyRoom;

TEST_F(InTheHoneyRoom, TypedWeightsGiveTheShares) {
    type("open 27-2 Hill");
    for (const auto& box : test::hillBoxes) {
        const std::string mark = box.box ? box.box : "tag lost";
        type(mark + " " + kilos(box.gross));
        type(mark + " wet " + kilos(box.wet));
    }
    type("cappings 11");
    type("B1 45.0 17.2");
    type("B2 46,5 17,4");
    inDialog([](CloseDayForm& form) {
        EXPECT_TRUE(form.outlook().closes) << form.outlook().text.toStdString();
        EXPECT_TRUE(form.outlook().text.contains(QStringLiteral("0.6 kg is missing")));
        QTest::keyClick(&form, Qt::Key_Return, Qt::ControlModifier);
    });
    EXPECT_EQ(room->head().action, QStringLiteral("Close the day")) << "nothing is left to spin";
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

TEST_F(InTheHoneyRoom, ChoosingABoxAndTypingItsNumberNeedsNoGrammar) {
    openCreek();
    type("C4b ?");
    WaitingView& waiting = room->waiting();
    ASSERT_EQ(waiting.boxes().size(), 3U);
    waiting.setFocus();
    QTest::keyClick(&waiting, Qt::Key_End);
    EXPECT_EQ(waiting.current()->mark, "C4b");
    EXPECT_TRUE(part<QLabel>("entry_for")->text().startsWith(QStringLiteral("C4b full")));
    QTest::keyClick(&waiting, Qt::Key_1);
    QTest::keyClicks(QApplication::focusWidget(), QStringLiteral("9.2"));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    EXPECT_EQ(entries()[2].gross->value, Mass::grams(19200));
    EXPECT_TRUE(entry()->text().isEmpty());
    // Up and Down in the line choose as well; what is weighed full is weighed wet next.
    waiting.choose(0);
    EXPECT_EQ(waiting.current()->mark, "C2a");
    type("5.4");
    EXPECT_EQ(entries()[0].wet->value, Mass::grams(5400));
    QTest::keyClick(entry(), Qt::Key_Up);
    QTest::keyClick(entry(), Qt::Key_Down);
    EXPECT_EQ(QApplication::focusWidget(), entry()) << "the cursor stays in the line";
}

TEST_F(InTheHoneyRoom, AWrongWeightIsTypedAgainAndTheOldOneStaysInTheHistory) {
    openCreek();
    type("C2a 22.6");
    EXPECT_EQ(entries()[0].gross->value, Mass::grams(22600));
    EXPECT_TRUE(session.lastTold().contains(QStringLiteral("was 23.6 kg")));
    EXPECT_EQ(entries().size(), 2U);
    const auto history = session.season().history(2);
    EXPECT_NE(history[0].info.line.find("22600"), std::string::npos);
    session.undo();
    EXPECT_EQ(entries()[0].gross->value, Mass::grams(23600));
}

TEST_F(InTheHoneyRoom, SlipsAreAskedAboutAndChangeNothing) {
    openCreek();
    tryLine("C2x 20.0");
    EXPECT_EQ(entries().size(), 2U) << "a mark nobody painted is asked about";
    EXPECT_EQ(entry()->text(), QStringLiteral("C2x 20.0"));
    QTest::keyClick(entry(), Qt::Key_Return);
    EXPECT_EQ(entries().size(), 3U) << "and kept when it is said again";
    tryLine("C2a wet 22.9");
    EXPECT_FALSE(entries()[0].wet) << "nearly the full weight";
    tryLine("C2a wet 30");
    QTest::keyClick(entry(), Qt::Key_Return);
    EXPECT_FALSE(entries()[0].wet) << "heavier than full";
    tryLine("C2a 230");
    EXPECT_EQ(entries()[0].gross->value, Mass::grams(23600));
    tryLine("B1 13.0 172");
    tryLine("B1 lots");
    tryLine("cappings");
    tryLine("open 27-3 Creek");
    tryLine("open 27-9 Nowhere");
    EXPECT_TRUE(session.read().all<Bucket>().empty());
    EXPECT_EQ(session.read().all<Extraction>().size(), 1U);
}

TEST_F(InTheHoneyRoom, DeleteTakesABoxOutOfTheRunAgain) {
    openCreek();
    WaitingView& waiting = room->waiting();
    waiting.setFocus();
    QTest::keyClick(&waiting, Qt::Key_Home);
    QTest::keyClick(&waiting, Qt::Key_Delete);
    ASSERT_EQ(entries().size(), 1U);
    EXPECT_EQ(session.read().find(entries()[0].box)->mark, "C2b");
}

TEST_F(InTheHoneyRoom, TheTableTwinIsOneKeyAway) {
    openCreek();
    WaitingView& waiting = room->waiting();
    waiting.setFocus();
    QTest::keyClick(&waiting, Qt::Key_T);
    ASSERT_TRUE(room->table().isVisible());
    EXPECT_EQ(room->table().rowCount(), 2);
    EXPECT_EQ(room->table().item(0, 0)->text(), QStringLiteral("C2a"));
    QTest::keyClick(&room->table(), Qt::Key_T);
    EXPECT_TRUE(waiting.isVisible());
    EXPECT_TRUE(waiting.hasFocus());
    EXPECT_TRUE(waiting.accessibleDescription().contains(QStringLiteral("C2a")));
}

TEST_F(InTheHoneyRoom, AfterAFullWeightTheNextBoxThatLacksOneIsAsked) {
    openCreek();
    type("C1a ?");
    type("C4b ?");
    WaitingView& waiting = room->waiting();
    const auto asked = [&] { return part<QLabel>("entry_for")->text(); };
    EXPECT_TRUE(asked().startsWith(QStringLiteral("C1a full"))) << asked().toStdString();
    type("20.0");
    EXPECT_TRUE(asked().startsWith(QStringLiteral("C4b full"))) << asked().toStdString();
    type("19.2");
    EXPECT_FALSE(asked().contains(QStringLiteral("wet"))) << "nothing was spun yet";
    waiting.choose(0);
    EXPECT_TRUE(asked().contains(QStringLiteral("wet"))) << "chosen by hand it may be weighed wet";
}

TEST_F(InTheHoneyRoom, ExamplesAreOfTheKeepersOwnYardsAndBoxes) {
    EXPECT_TRUE(part<QLabel>("empty")->text().contains(QStringLiteral("Hill")));
    openCreek();
    EXPECT_TRUE(entry()->placeholderText().contains(QStringLiteral("C2a wet 5.2")))
        << entry()->placeholderText().toStdString();
    EXPECT_FALSE(entry()->placeholderText().contains(QStringLiteral("M07")));
}

TEST_F(InTheHoneyRoom, BucketsByLevelAndByChoosing) {
    openCreek();
    type("B1 half 17.2");
    const Bucket half = session.read().all<Bucket>()[0];
    EXPECT_EQ(half.net->value, Mass::grams(6800));
    EXPECT_EQ(half.net->how, How::ByEye);
    BucketBoard& board = room->buckets();
    board.setFocus();
    EXPECT_TRUE(board.current()->underGate);
    QTest::keyClick(&board, Qt::Key_Right);
    EXPECT_EQ(board.current()->mark, "B2");
    QTest::keyClick(&board, Qt::Key_1);
    QTest::keyClicks(QApplication::focusWidget(), QStringLiteral("3.0 18.9"));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    const Bucket second = session.read().all<Bucket>().back();
    EXPECT_EQ(second.mark.text(), "B2");
    EXPECT_EQ(second.net->value, Mass::grams(13000));
    EXPECT_TRUE(part<QLabel>("bucket_foot")->text().contains(QStringLiteral("do not bottle")));
}

TEST_F(InTheHoneyRoom, TheLostBoxIsNamedFromTheBalance) {
    playAll(session.season(),
            test::runScript("27-2", "Hill", "2027-08-07", test::hillBoxes, 91500, 11000));
    RunView& balance = room->balance();
    ASSERT_FALSE(balance.isFolded());
    balance.setFocus();
    for (int n = 0; n < 4; ++n) QTest::keyClick(&balance, Qt::Key_Down);
    EXPECT_TRUE(balance.currentText().contains(QStringLiteral("no tag")));
    QTest::keyClick(&balance, Qt::Key_Return);
    ASSERT_EQ(QApplication::focusWidget(), entry());
    tryLine("H9");
    EXPECT_EQ(entry()->text(), QStringLiteral("H9")) << "no such hive";
    tryLine("H2");
    const auto run = runBalance(session.read(), *room->run());
    EXPECT_TRUE(run->revised);
    EXPECT_EQ(run->shares[1].mass, Mass::grams(27690));
    EXPECT_TRUE(balance.accessibleDescription().contains(QStringLiteral("revised, was 14.9")));
}

TEST_F(InTheHoneyRoom, ADayIsEnteredAfterwardsByKeyboardAlone) {
    inDialog([](CloseDayForm& form) {
        auto* lot = form.findChild<QLineEdit*>(QStringLiteral("lot"));
        ASSERT_NE(lot, nullptr);
        EXPECT_EQ(lot->text(), QStringLiteral("27-1"));
        const auto next = [&](const QString& text) {
            auto* edit = qobject_cast<QLineEdit*>(form.focusWidget());
            ASSERT_NE(edit, nullptr)
                << text.toStdString() << ": " << form.focusWidget()->metaObject()->className();
            edit->selectAll();
            QTest::keyClicks(edit, text);
            QTest::keyClick(edit, Qt::Key_Return);
        };
        QTest::keyClick(lot, Qt::Key_Return);
        auto* yard = form.findChild<QComboBox*>(QStringLiteral("yard"));
        ASSERT_EQ(form.focusWidget(), yard);
        yard->setCurrentText(QStringLiteral("Creek"));
        QTest::keyClick(yard, Qt::Key_Tab);
        QTest::keyClick(form.focusWidget(), Qt::Key_Return);  // the day stands
        for (const auto& box : test::creekBoxes) {
            next(QString::fromLatin1(box.box));
            next(box.gross ? QString::number(box.gross / 1000.0) : QString());
            next(QString::number(box.wet / 1000.0));
        }
        QTest::keyClick(form.focusWidget(), Qt::Key_Return);  // no further box
        QTest::keyClick(form.focusWidget(), Qt::Key_Return);
        QTest::keyClick(form.focusWidget(), Qt::Key_Return);
        EXPECT_EQ(form.focusWidget()->objectName(), QStringLiteral("buckets"));
        QTest::keyClick(form.focusWidget(), Qt::Key_Return);  // not all in one line
        EXPECT_EQ(form.focusWidget()->objectName(), QStringLiteral("bucket"));
        next(QStringLiteral("all"));
        next(QStringLiteral("66.0"));
        next(QStringLiteral("17.3"));
        EXPECT_FALSE(form.outlook().closes) << "one box and the cappings are not known";
        auto* cappings = form.findChild<QLineEdit*>(QStringLiteral("cappings"));
        cappings->setFocus();
        next(QStringLiteral("8"));
        EXPECT_TRUE(form.outlook().closes);
        EXPECT_TRUE(form.outlook().text.contains(QStringLiteral("by difference")));
        QTest::keyClick(&form, Qt::Key_Return, Qt::ControlModifier);
    });
    QTest::keyClick(entry(), Qt::Key_Return, Qt::ControlModifier);
    const auto run = runBalance(session.read(), *room->run());
    ASSERT_TRUE(run);
    EXPECT_TRUE(run->run.closed);
    ASSERT_EQ(run->shares.size(), 3U);
    EXPECT_EQ(run->shares[2].how, How::ByDifference);
    EXPECT_EQ(run->yard, "Creek");
}

TEST_F(InTheHoneyRoom, TheFormKeepsNothingOfWhatItRefuses) {
    openCreek();
    inDialog([](CloseDayForm& form) {
        const auto wets = form.findChildren<QLineEdit*>(QStringLiteral("wet"));
        ASSERT_GE(wets.size(), 2);
        wets[0]->setText(QStringLiteral("1.240"));
        EXPECT_FALSE(form.outlook().closes);
        EXPECT_TRUE(form.outlook().text.contains(QStringLiteral("1.240")));
        wets[0]->setText(QStringLiteral("30"));
        wets[1]->setText(QStringLiteral("5.0"));
        auto* keep = form.findChild<QPushButton*>(QStringLiteral("keep"));
        keep->setFocus();
        QTest::keyClick(keep, Qt::Key_Space);
        EXPECT_TRUE(form.isVisible()) << "wet outweighs full";
        EXPECT_EQ(wets[0]->text(), QStringLiteral("30"));
        wets[0]->setText(QStringLiteral("5.4"));
        QTest::keyClick(keep, Qt::Key_Space);
    });
    QTest::keyClick(entry(), Qt::Key_Return, Qt::ControlModifier);
    EXPECT_EQ(entries()[0].wet->value, Mass::grams(5400));
    EXPECT_EQ(entries()[1].wet->value, Mass::grams(5000));
    EXPECT_FALSE(session.read().find(*room->run())->closed);
}

TEST_F(InTheHoneyRoom, CautionsStandUntilSeenAndSpeakOfTheHeavyBox) {
    auto* caution = part<QLabel>("caution");
    openCreek();
    EXPECT_TRUE(caution->text().contains(QStringLiteral("over 23 kg: two people")))
        << "C2a weighs 23.6";
    EXPECT_TRUE(caution->text().contains(QStringLiteral("infants")));
    type("C2a 22.0");
    EXPECT_FALSE(caution->text().contains(QStringLiteral("<b style"))) << "no box is over it";
    auto* seen = part<QPushButton>("seen");
    seen->setFocus();
    QTest::keyClick(seen, Qt::Key_Space);
    EXPECT_FALSE(caution->isVisible());
    clock.set("2027-08-08");
    room->reload();
    EXPECT_TRUE(caution->isVisible()) << "once a day";
}

TEST_F(InTheHoneyRoom, PoundsThroughout) {
    openCreek();
    type("B1 13.0 17.2");
    session.setUnits(Units::UsCustomary);
    for (QLabel* label : room->findChildren<QLabel*>())
        EXPECT_FALSE(label->text().contains(QStringLiteral("kg"))) << label->text().toStdString();
    EXPECT_FALSE(room->loadView().accessibleDescription().contains(QStringLiteral("kg")));
    EXPECT_EQ(room->head().big.unit, QStringLiteral("lb"));
    type("C2a wet 11.9");
    EXPECT_EQ(entries()[0].wet->value, Mass::grams(5398));
    session.setUnits(Units::Metric);
}

TEST_F(InTheHoneyRoom, NothingScrollsSidewaysOrIsClippedAtTwiceTheText) {
    openCreek();
    type("B1 13.0 17.2");
    for (const double factor : {1.0, 1.15, 1.5, 2.0}) {
        for (const QSize size : {QSize(1280, 800), QSize(1000, 700)}) {
            session.setLook(
                applyLook(*qobject_cast<QApplication*>(QApplication::instance()), false, factor));
            window->resize(size);
            room->reload();
            QApplication::processEvents();
            if (window->width() > size.width()) continue;  // the shell itself needs more there
            auto* scroll = room->findChild<QScrollArea*>(QStringLiteral("room_scroll"));
            EXPECT_LE(scroll->widget()->width(), scroll->viewport()->width())
                << factor << " at " << size.width();
            for (QPushButton* button : room->findChildren<QPushButton*>()) {
                if (!button->isVisible()) continue;
                EXPECT_GE(button->width() + 1, button->sizeHint().width())
                    << button->text().toStdString() << " at " << factor;
                EXPECT_LE(button->mapTo(room, button->rect().topRight()).x(), room->width());
            }
        }
    }
    session.setLook(applyLook(*qobject_cast<QApplication*>(QApplication::instance()), false));
}

TEST_F(InTheHoneyRoom, ExplainsWhatItShows) {
    playAll(session.season(),
            test::runScript("27-2", "Hill", "2027-08-07", test::hillBoxes, 91500, 11000));
    room->reload();
    const auto figures = room->explained();
    ASSERT_FALSE(figures.empty());
    EXPECT_EQ(figures.front().what, QStringLiteral("Share of H1"));
    EXPECT_EQ(figures.front().answer, QStringLiteral("27.5 kg w"));
    EXPECT_FALSE(room->sheets().front().page().blocks.empty());
}

TEST_F(InTheHoneyRoom, TabGoesThroughTheRoomAndBack) {
    openCreek();
    entry()->setFocus();
    std::set<QWidget*> seen;
    for (int n = 0; n < 60; ++n) {
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
        seen.insert(QApplication::focusWidget());
    }
    for (QWidget* stop : std::initializer_list<QWidget*>{
             &room->waiting(), &room->loadView(), &room->buckets(), &room->balance(), entry()})
        EXPECT_TRUE(seen.contains(stop)) << stop->objectName().toStdString();
    entry()->setFocus();
    QTest::keyClick(entry(), Qt::Key_Backtab, Qt::ShiftModifier);
    EXPECT_NE(QApplication::focusWidget(), entry());
}

TEST_F(InTheHoneyRoom, TheSeasonBookShowsItAndItsTableTwin) {
    playAll(session.season(),
            test::runScript("27-2", "Hill", "2027-08-07", test::hillBoxes, 91500, 11000));
    QTest::keyClick(window.get(), Qt::Key_7, Qt::ControlModifier);
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
