// What one's hands do in the yard, by keyboard in the real window: hives moved and closed, boxes
// put on, taken off, moved, looked into, counted and held back; what cannot be is told and stays
// typed.
#include <gtest/gtest.h>

#include <QApplication>
#include <QComboBox>
#include <QDialog>
#include <QLabel>
#include <QLineEdit>
#include <QTest>
#include <QTimer>

#include "core/places/yard/yard_box.h"
#include "core/storage/queries/names.h"
#include "core/words/units.h"
#include "tests/support/in_window.h"
#include "tests/support/mill_lane.h"
#include "tests/support/open_place.h"
#include "ui/yard/yard_place.h"

namespace combwright {
namespace {

class YardHands : public test::WindowTest {
  protected:
    void SetUp() override {
        openWindow(test::millLaneBefore() + test::millLaneVisit() +
                   R"({"do":"add-yard","on":"2027-04-01","yard_name":"Creek","usual_super":"medium"}
{"do":"add-hive","on":"2027-04-10","yard":"Creek","mark":"C1","boxes":"deep D90","origin":"swarm"})");
        place = test::openPlace<YardPlace>(*window);
    }
    static void press(Qt::Key key, Qt::KeyboardModifiers with = Qt::NoModifier) {
        QTest::keyClick(QApplication::focusWidget(), key, with);
    }
    /// Presses the key that opens a form; its hands were told by inForm. A window without a display
    /// does not become active by itself again.
    void pressForForm(Qt::Key key) const {
        press(key);
        window->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
        ASSERT_NE(QApplication::focusWidget(), nullptr);
    }
    /// Types into the line at the foot of the board and presses Enter.
    void typeLine(const char* text) const {
        auto* edit = qobject_cast<QLineEdit*>(QApplication::focusWidget());
        ASSERT_NE(edit, nullptr) << "no line is asked for";
        QTest::keyClicks(edit, QString::fromUtf8(text));
        QTest::keyClick(edit, Qt::Key_Return);
    }
    bool isAsking() const { return place->boardPage().line().isAsking(); }
    QString typed() const {
        const auto* edit = window->findChild<QLineEdit*>(QStringLiteral("board_edit"));
        return edit->text();
    }
    /// What is done in a form while it is open.
    static void inForm(const std::function<void(QDialog&)>& hands) {
        QTimer::singleShot(0, qApp, [hands] {
            auto* form = qobject_cast<QDialog*>(QApplication::activeModalWidget());
            ASSERT_NE(form, nullptr);
            hands(*form);
            if (form->isVisible()) form->reject();
        });
    }
    static void choose(QDialog& form, const char* name, const QString& text) {
        auto* box = form.findChild<QComboBox*>(QLatin1String(name));
        ASSERT_NE(box, nullptr) << name;
        box->setFocus();
        for (int n = 0; n < box->count() && !box->currentText().startsWith(text); ++n)
            QTest::keyClick(box, Qt::Key_Down);
        ASSERT_TRUE(box->currentText().startsWith(text)) << box->currentText().toStdString();
    }
    static void fill(QDialog& form, const char* name, const char* text) {
        auto* edit = form.findChild<QLineEdit*>(QLatin1String(name));
        ASSERT_NE(edit, nullptr) << name;
        QTest::keyClicks(edit, QString::fromUtf8(text));
    }
    static void enter(QDialog& form) { QTest::keyClick(&form, Qt::Key_Return); }

    const Read& file() const { return session.read(); }
    Hive hive(const char* mark) const {
        return *file().find(Id<Hive>{*findNamed(
            file(), Hive::table, NameQuery{.name = mark, .on = test::day("2027-06-09")})});
    }
    Box box(const char* mark) const {
        return *file().find(Id<Box>{*findNamed(
            file(), Box::table, NameQuery{.name = mark, .on = test::day("2027-06-09")})});
    }
    std::string stack(const char* mark) const {
        std::string marks;
        for (const Box& each : boxesOn(file(), hive(mark).id))
            marks += (marks.empty() ? "" : " ") + each.mark;
        return marks;
    }
    std::string walk() const {
        std::string marks;
        for (const Hive& each : openHives(file(), *place->yard()))
            marks += (marks.empty() ? "" : " ") + each.mark.text();
        return marks;
    }
    void undo() { QTest::keyClick(window.get(), Qt::Key_Z, Qt::ControlModifier); }

    YardPlace* place = nullptr;
};

TEST_F(YardHands, MoveAHiveInTheWalkAndToAnotherYard) {
    press(Qt::Key_Left, Qt::ShiftModifier);
    EXPECT_EQ(session.season().history(1).front().info.action, "add-hive") << "no further left";
    press(Qt::Key_Right, Qt::ShiftModifier);
    EXPECT_EQ(walk().substr(0, 11), "ML2 ML1 ML3");
    EXPECT_EQ(place->board().currentHive()->mark, QStringLiteral("ML1")) << "the cursor goes along";
    undo();
    EXPECT_EQ(walk().substr(0, 11), "ML1 ML2 ML3");
    inForm([](QDialog& form) {
        choose(form, "to_yard", QStringLiteral("Creek"));
        fill(form, "stand_order", "first");
        enter(form);
        EXPECT_TRUE(form.isVisible()) << "\"first\" is no number; it stays typed";
        auto* order = form.findChild<QLineEdit*>(QStringLiteral("stand_order"));
        EXPECT_EQ(order->text(), QStringLiteral("first"));
        order->selectAll();
        fill(form, "stand_order", "1");
        enter(form);
    });
    pressForForm(Qt::Key_M);
    EXPECT_EQ(openHives(file(), hive("C1").yard).front().mark.text(), "ML1");
    EXPECT_EQ(place->board().currentHive()->mark, QStringLiteral("ML2"));
}

TEST_F(YardHands, TheYardsUsualSuperIsChangedWithAReason) {
    const auto usual = [&] {
        const auto kind = file().find(file().find(*place->yard())->usualSuper);
        return kind ? kind->name.text() : std::string();
    };
    const std::string before = usual();
    inForm([&](QDialog& form) {
        auto* super = form.findChild<QLineEdit*>(QStringLiteral("usual_super"));
        ASSERT_NE(super, nullptr);
        EXPECT_EQ(super->text().toStdString(), before) << "what it is now stands there";
        super->selectAll();
        fill(form, "usual_super", "shelf");
        enter(form);
        EXPECT_TRUE(form.isVisible()) << "no such kind; it stays typed";
        super->selectAll();
        fill(form, "usual_super", "shallow");
        enter(form);
        EXPECT_TRUE(form.isVisible()) << "a reason is wanted";
        fill(form, "why", "lighter to lift");
        enter(form);
        EXPECT_FALSE(form.isVisible());
    });
    pressForForm(Qt::Key_U);
    EXPECT_NE(usual(), before);
    EXPECT_NE(usual().find("shallow"), std::string::npos) << usual();
    EXPECT_EQ(session.season().history(1).front().info.why, "lighter to lift");
    undo();
    EXPECT_EQ(usual(), before);
}

TEST_F(YardHands, AFormIsTypedIntoAtOnce) {
    inForm([](QDialog& form) {
        // Without a display the form is not active yet; what has its focus will have the keys.
        const auto at = [&form] { return form.focusWidget(); };
        const auto type = [&at](const char* text) {
            QTest::keyClicks(at(), QString::fromUtf8(text));
        };
        const auto* mark = form.findChild<QLineEdit*>(QStringLiteral("mark"));
        const auto* boxes = form.findChild<QLineEdit*>(QStringLiteral("boxes"));
        EXPECT_GE(boxes->width(), 50 * boxes->fontMetrics().averageCharWidth());
        type("ML90");
        EXPECT_EQ(mark->text(), QStringLiteral("ML90"));
        QTest::keyClick(at(), Qt::Key_Tab);
        type("depe D99");
        const int high = boxes->height();
        QTest::keyClick(at(), Qt::Key_Return);
        EXPECT_TRUE(form.isVisible()) << "refused, and still typed";
        const auto* reason = form.findChild<QLabel*>(QStringLiteral("reason"));
        EXPECT_TRUE(reason->text().contains(QStringLiteral("nothing is called depe. It may be: ")))
            << reason->text().toStdString();
        QApplication::processEvents();
        EXPECT_EQ(boxes->height(), high);
        EXPECT_GE(reason->height(), reason->heightForWidth(reason->width()));
        QTest::keyClick(at(), Qt::Key_A, Qt::ControlModifier);
        type("deep D99");
        QTest::keyClick(at(), Qt::Key_Return);
        EXPECT_FALSE(form.isVisible()) << reason->text().toStdString();
        form.reject();  // so that a failure does not wait for ever
    });
    pressForForm(Qt::Key_H);
    EXPECT_EQ(place->board().currentHive()->mark, QStringLiteral("ML90"))
        << "the new one is chosen";
    const auto* day = window->findChild<QLineEdit*>(QStringLiteral("day"));
    EXPECT_GE(day->width(),
              day->fontMetrics().horizontalAdvance(QStringLiteral("Wed 25 Aug 2027")) + 12);
}

TEST_F(YardHands, CloseAHiveWithHowItEndedAndItsBoxes) {
    const std::string before = session.season().dump();
    inForm([](QDialog& chooser) {
        QTest::keyClick(chooser.focusWidget(), Qt::Key_C);
        inForm([](QDialog& form) {
            choose(form, "ending", QStringLiteral("united"));
            choose(form, "boxes_to", QStringLiteral("another hive"));
            choose(form, "onto", QStringLiteral("ML2"));
            enter(form);
        });
    });
    pressForForm(Qt::Key_X);
    EXPECT_EQ(walk().substr(0, 7), "ML2 ML3");
    EXPECT_EQ(stack("ML2"), "D32 M32 M44 D31 M31 M43");
    undo();
    EXPECT_EQ(session.season().dump(), before) << "one step back";
}

TEST_F(YardHands, ABoxIsClimbedToAndLaidFlat) {
    press(Qt::Key_Up);
    EXPECT_EQ(box("D31").id, *place->board().currentBox());
    press(Qt::Key_Up);
    EXPECT_EQ(box("M31").id, *place->board().currentBox());
    press(Qt::Key_Return);
    ASSERT_TRUE(place->boardPage().flat().isVisible());
    EXPECT_EQ(place->boardPage().flat().row().counted.size(), 9U);
    EXPECT_TRUE(place->boardPage().flat().row().pointed.empty());
    press(Qt::Key_Down);
    EXPECT_TRUE(place->boardPage().flat().row().counted.empty()) << "D31 was never counted";
    press(Qt::Key_Escape);
    EXPECT_FALSE(place->board().currentBox());
    EXPECT_FALSE(place->boardPage().flat().isVisible());
}

TEST_F(YardHands, LookAndCountInOneLineOfTyping) {
    press(Qt::Key_Up);
    press(Qt::Key_Up);
    press(Qt::Key_L);
    typeLine("9 golden");
    EXPECT_TRUE(isAsking()) << "what is refused stays typed";
    EXPECT_EQ(typed(), QStringLiteral("9 golden"));
    EXPECT_FALSE(file().first<BoxLook>({}));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_A, Qt::ControlModifier);
    typeLine("9 drawn; 7 capped, 85 % full");
    EXPECT_FALSE(isAsking());
    const auto look = newestLookHere(file(), box("M31"), test::day("2027-06-09"));
    ASSERT_TRUE(look);
    EXPECT_EQ(look->cappedFrames->value, Frames::whole(7));
    press(Qt::Key_Return);
    const auto& counted = place->boardPage().flat().row().counted;
    ASSERT_EQ(counted.size(), 9U);
    double filled = 0;
    double capped = 0;
    for (const FrameView& frame : counted) {
        filled += *frame.a.filled;
        capped += *frame.a.capped;
    }
    EXPECT_NEAR(filled, 9 * 0.85, 1e-9) << "the frames add up to what was seen of the box";
    EXPECT_NEAR(capped, 7.0, 1e-9);
    EXPECT_NEAR(*counted[6].a.capped, 1.0, 1e-9);
    EXPECT_NEAR(*counted[7].a.capped, 0.0, 1e-9) << "seven of nine are capped";
    press(Qt::Key_L);
    typeLine("");
    EXPECT_TRUE(isAsking()) << "an empty look is none";
    press(Qt::Key_Escape);
    press(Qt::Key_C);
    typeLine("7 drawn, 1 foundation, 1 broken");
    EXPECT_EQ(boxInside(file(), box("M31").id, test::day("2027-06-09"))->frames.back().faults, "V");
}

TEST_F(YardHands, PutOnTakeOffAndMoveBoxes) {
    press(Qt::Key_B);
    EXPECT_EQ(typed(), QStringLiteral("M51")) << "the next of the usual super is offered";
    press(Qt::Key_Delete);
    press(Qt::Key_Return);
    EXPECT_EQ(stack("ML1"), "D31 M31 M43") << "wiped out it asks which";
    EXPECT_TRUE(isAsking());
    press(Qt::Key_Escape);
    press(Qt::Key_B);
    press(Qt::Key_Return);
    EXPECT_EQ(stack("ML1"), "D31 M31 M43 M51");
    press(Qt::Key_B);
    typeLine("cupboard");
    EXPECT_TRUE(isAsking());
    EXPECT_EQ(typed(), QStringLiteral("cupboard"));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_A, Qt::ControlModifier);
    typeLine("medium 2");
    EXPECT_EQ(stack("ML1"), "D31 M52 M31 M43 M51") << "at place 2 from the floor";
    press(Qt::Key_Up);
    press(Qt::Key_Up);
    press(Qt::Key_Up, Qt::ShiftModifier);
    EXPECT_EQ(stack("ML1"), "D31 M31 M52 M43 M51");
    press(Qt::Key_M);
    typeLine("ML99");
    EXPECT_TRUE(isAsking());
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_A, Qt::ControlModifier);
    typeLine("ml3 2");
    EXPECT_EQ(stack("ML3"), "D33 M52 M33");
    press(Qt::Key_Up);
    press(Qt::Key_M);
    typeLine("C1, Creek");
    EXPECT_EQ(stack("C1"), "D90 D31") << "another yard's hive, by mark and yard";
    press(Qt::Key_Up);
    press(Qt::Key_T);
    typeLine("freezer shelf 2");
    EXPECT_EQ(box("M31").place, BoxPlace::Freezer);
    EXPECT_EQ(box("M31").stack, "shelf 2");
    press(Qt::Key_Up);
    press(Qt::Key_T);
    typeLine("north wall");
    EXPECT_EQ(box("M43").place, BoxPlace::Storeroom);
    EXPECT_EQ(box("M43").stack, "north wall");
    undo();
    EXPECT_EQ(stack("ML1"), "M43 M51");
}

TEST_F(YardHands, HoldBackAndLiftTheHold) {
    press(Qt::Key_Up);
    press(Qt::Key_Up);
    inForm([](QDialog& form) {
        choose(form, "reason", QStringLiteral("treated while on"));
        fill(form, "note", "strip was in");
        enter(form);
    });
    pressForForm(Qt::Key_K);
    ASSERT_EQ(holdsOn(file(), box("M31").id).size(), 1U);
    inForm([](QDialog& form) {
        enter(form);
        EXPECT_TRUE(form.isVisible()) << "on what grounds?";
        fill(form, "grounds", "strip was in another hive");
        enter(form);
    });
    pressForForm(Qt::Key_K);
    EXPECT_TRUE(holdsOn(file(), box("M31").id).empty());
    press(Qt::Key_Escape);
    inForm([](QDialog& form) {
        choose(form, "reason", QStringLiteral("suspected disease"));
        enter(form);
    });
    pressForForm(Qt::Key_K);
    EXPECT_EQ(holdsOn(file(), hive("ML1").id).size(), 1U) << "without a box it is the colony";
}

TEST_F(YardHands, NewBoxesComeInByAShortForm) {
    inForm([](QDialog& form) {
        fill(form, "kind", "cupboard");
        fill(form, "first_mark", "M80");
        enter(form);
        EXPECT_TRUE(form.isVisible());
        auto* kind = form.findChild<QLineEdit*>(QStringLiteral("kind"));
        EXPECT_EQ(kind->text(), QStringLiteral("cupboard"));
        kind->selectAll();
        fill(form, "kind", "medium");
        fill(form, "count", "3");
        fill(form, "contents", "9 drawn");
        enter(form);
    });
    pressForForm(Qt::Key_N);
    EXPECT_EQ(box("M82").place, BoxPlace::Storeroom);
}

TEST_F(YardHands, WriteTheLineOfTheDayAtTheHive) {
    press(Qt::Key_W);
    EXPECT_EQ(typed(), QStringLiteral("e b7 s3 +1"));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_A, Qt::ControlModifier);
    typeLine("e b6 -9");
    EXPECT_TRUE(isAsking()) << "nine supers are not there to be taken off";
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_A, Qt::ControlModifier);
    typeLine("e b6");
    EXPECT_EQ(stack("ML1"), "D31 M31") << "the box of the earlier line went back";
    press(Qt::Key_W);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_A, Qt::ControlModifier);
    QTest::keyClicks(QApplication::focusWidget(), QStringLiteral("e b5"));
    window->close();
    const auto sheet = yardSheet(file(), *place->yard(), test::day("2027-06-09"));
    EXPECT_EQ(sheet.rows[0].today->line, "e b5") << "half typed is kept when the window closes";
}

TEST_F(YardHands, EnterOpensTheStoryAndEscapeComesBack) {
    std::string script;
    for (int n = 1; n <= 28; ++n)
        script += R"({"do":"write-line","on":"2027-05-)" + std::string(n < 10 ? "0" : "") +
                  std::to_string(n) + R"(","hive":"ML1","line":"e b5 s2 all quiet on this day"})" +
                  "\n";
    playAll(session.season(), script);
    StoryCard& card = place->boardPage().card();
    EXPECT_GT(card.hidden(), 10);
    press(Qt::Key_Return);
    EXPECT_TRUE(card.isOpen());
    EXPECT_EQ(card.hidden(), 0);
    EXPECT_TRUE(card.isAncestorOf(QApplication::focusWidget()));
    press(Qt::Key_Escape);
    EXPECT_FALSE(card.isOpen());
    EXPECT_EQ(QApplication::focusWidget(), &place->board());
}

TEST_F(YardHands, TheLedgerSaysWhatTheYardAddsUpTo) {
    const auto& figures = place->boardPage().totals().figures();
    ASSERT_EQ(figures.size(), 5U);
    EXPECT_EQ(figures[0].figure.figure, QStringLiteral("11"));
    EXPECT_EQ(figures[0].words, QStringLiteral("of 12, 1 not: rain"));
    EXPECT_EQ(figures[1].figure.figure, QStringLiteral("7.1"));
    EXPECT_EQ(figures[1].words, QStringLiteral("frames, 10 of 12 counted"));
    EXPECT_EQ(figures[2].figure.figure, QStringLiteral("20"));
    EXPECT_EQ(figures[3].figure.figure, QStringLiteral("12"));
    EXPECT_EQ(figures[4].figure.figure, QStringLiteral("12"));
    EXPECT_EQ(figures[4].words, QStringLiteral("(1 waiting)")) << "ML3, with a cell left";
    place->choose(*place->yard(), test::day("2027-06-20"));
    EXPECT_EQ(place->boardPage().totals().figures()[0].figure.figure, QString())
        << "no visit is not nought";
}

TEST_F(YardHands, ThePlaceSpeaksTheUnitsShown) {
    EXPECT_TRUE(place->help().contains(QStringLiteral("kg")));
    session.setUnits(Units::UsCustomary);
    EXPECT_FALSE(place->help().contains(QStringLiteral("kg")));
    session.setUnits(Units::Metric);
    EXPECT_FALSE(place->explained().empty());
}

}  // namespace
}  // namespace combwright
