// A whole day entered from the kept pull list with nothing typed before, in at most sixty
// keystrokes: by words, by the number pad, and with frames that lie set aside.
#include "ui/honey_room/close_day_form.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QDir>
#include <QFile>
#include <QTest>
#include <QTimer>
#include <functional>

#include "core/model/honey/room.h"
#include "core/places/honey_room/run_balance.h"
#include "core/storage/queries/names.h"
#include "tests/support/hill_and_creek.h"
#include "tests/support/in_window.h"
#include "ui/honey_room/honey_room_place.h"

namespace combwright {
namespace {

constexpr int mostStrokes = 60;

/// Strikes keys at whatever has the keyboard, and counts them.
class Strokes {
  public:
    void press(int key, Qt::KeyboardModifiers with = Qt::NoModifier) {
        ++m_count;
        QTest::keyClick(there(), static_cast<Qt::Key>(key), with);
    }
    void type(const char* text, Qt::KeyboardModifiers with = Qt::NoModifier) {
        for (; *text; ++text) {
            ++m_count;
            QTest::keyClick(there(), *text, with);
        }
    }
    int count() const { return m_count; }

  private:
    /// The form's own field: without a window manager the window behind keeps the keyboard.
    static QWidget* there() {
        const QWidget* form = QApplication::activeModalWidget();
        return form && form->focusWidget() ? form->focusWidget() : QApplication::focusWidget();
    }

    int m_count = 0;
};

class ClosingTheDay : public test::WindowTest {
  protected:
    /// From the pull to the closed run: the keys in the form are `deed`.
    void closeTheDay(Strokes& strokes, const std::function<void(CloseDayForm&)>& deed) {
        ASSERT_NE(goToPlace<QWidget>(2), nullptr);
        QTimer::singleShot(0, [deed] {
            auto* form = qobject_cast<CloseDayForm*>(QApplication::activeModalWidget());
            ASSERT_NE(form, nullptr);
            form->activateWindow();
            if (QTest::qWaitForWindowActive(form)) deed(*form);
            if (form->isVisible()) {
                ADD_FAILURE() << "the form stays: " << form->outlook().text.toStdString();
                form->reject();
            }
        });
        strokes.press(Qt::Key_4, Qt::ControlModifier);
        strokes.press(Qt::Key_Return, Qt::ControlModifier);
        room = qobject_cast<HoneyRoomPlace*>(window->current());
        ASSERT_NE(room, nullptr);
    }
    /// Of the newest run: "H1 26193 e", the unknown line without a name.
    std::vector<std::string> shares() const {
        std::vector<std::string> all;
        for (const RunShare& share : balance().shares)
            all.push_back(share.mark + ' ' + std::to_string(share.mass.grams()) + ' ' +
                          letter(share.how));
        return all;
    }
    RunBalance balance() const {
        const auto run = session.read().all<Extraction>().back();
        const auto found = runBalance(session.read(), run.id);
        EXPECT_TRUE(found);
        return *found;
    }
    void expectSumOfBuckets() const {
        Mass sum;
        for (const RunShare& share : balance().shares) sum += share.mass;
        EXPECT_EQ(sum, balance().buckets);
        EXPECT_TRUE(balance().run.closed);
    }

    HoneyRoomPlace* room = nullptr;
};

/// The yards with every super judged on the hive and the pull of both planned.
std::string plannedPull() {
    std::string script = test::hillAndCreekBefore();
    const auto look = [&](const char* box, const char* filled) {
        script += R"({"do":"look-box","on":"2027-07-25","box":")" + std::string(box) +
                  R"(","contents":"9 drawn; 8 capped, )" + filled + " % full\"}\n";
    };
    look("H1a", "85");
    look("H1b", "75");
    look("H2a", "90");
    look("H3a", "60");
    look("H3b", "80");
    look("H5a", "50");
    for (const char* box : {"C1a", "C2a", "C2b", "C4a", "C4b"}) look(box, "80");
    return script +
           R"({"do":"keep-plan","on":"2027-07-29","for_day":"2027-08-06","yards":"Hill, Creek",)"
           R"("feed_up_to_g":60000,"force":"H1a take, H1b take, H2a take, H3a take, H3b take, )"
           R"(H5a take, C1a take, C2a take, C2b take, C4a take, C4b take"})"
           "\n";
}

// Nine frames each, judged 85, 75, 90, 60, 80 and 50 %; the tag lost in the truck had nine frames
// nobody judged, taken as full: 540 in all. Six buckets and a half of 13.6 kg are 88.4 kg, 163.70 g
// a point: H1 160, H2 90, H3 140, H5 50, unknown 100.
TEST_F(ClosingTheDay, TheSevenBoxesOfHillWithNothingWeighed) {
    clock.set("2027-08-07");
    openWindow(plannedPull());
    Strokes strokes;
    closeTheDay(strokes, [&](CloseDayForm& form) {
        int ticked = 0;
        for (const QCheckBox* in : form.findChildren<QCheckBox*>(QStringLiteral("in_run")))
            ticked += in->isVisible() && in->isChecked();
        EXPECT_EQ(ticked, 6) << "Hill alone: lots are kept apart";
        strokes.type("/");
        EXPECT_EQ(form.focusWidget()->objectName(), QStringLiteral("buckets"));
        for (int n = 0; n < 4; ++n) strokes.press(Qt::Key_Backtab, Qt::ShiftModifier);
        strokes.type("tag lost 9");
        strokes.type("/", Qt::KeypadModifier);
        strokes.type("6 full, 1 half");
        EXPECT_TRUE(form.findChild<QLabel*>(QStringLiteral("filled"))
                        ->text()
                        .startsWith(QStringLiteral("B1 to B6 14 kg e each, B7 7 kg e: 88 kg e")))
            << form.findChild<QLabel*>(QStringLiteral("filled"))->text().toStdString();
        strokes.press(Qt::Key_Return);
        strokes.type("half");
        strokes.press(Qt::Key_Return);
        EXPECT_EQ(form.focusWidget()->objectName(), QStringLiteral("keep_and_close"));
        strokes.press(Qt::Key_Return);
    });
    EXPECT_LE(strokes.count(), mostStrokes);
    EXPECT_EQ(shares(), (std::vector<std::string>{"H1 26193 e", "H2 14733 e", "H3 22919 e",
                                                  "H5 8185 e", " 16370 e"}));
    expectSumOfBuckets();
    EXPECT_EQ(balance().cappings, Mass::grams(7500));
    EXPECT_EQ(session.read().all<ExtractionBox>().size(), 7U);
    RecordProperty("strokes", strokes.count());
}

// Without the lost tag the fills add up to 440; with H3b, on top of H3a, left standing to 360.
// 6.5 · 13.6 = 88.4 kg is 245.56 g a point: H1 160, H2 90, H3 60, H5 50.
TEST_F(ClosingTheDay, SpaceUnticksAndTheNumberPadDoesTheRest) {
    clock.set("2027-08-07");
    openWindow(plannedPull());
    Strokes strokes;
    closeTheDay(strokes, [&](CloseDayForm&) {
        // To the fourth box, three fields a box.
        for (int n = 0; n < 9; ++n) strokes.press(Qt::Key_Enter, Qt::KeypadModifier);
        strokes.press(Qt::Key_Space);
        strokes.type("/6.5*/.5*+", Qt::KeypadModifier);
    });
    EXPECT_LE(strokes.count(), mostStrokes);
    EXPECT_EQ(shares(),
              (std::vector<std::string>{"H1 39289 e", "H2 22100 e", "H3 14733 e", "H5 12278 e"}));
    expectSumOfBuckets();
    EXPECT_EQ(session.read().all<ExtractionBox>().size(), 5U);
}

TEST_F(ClosingTheDay, WhatWasWeighedIsTypedAtItsBox) {
    clock.set("2027-08-07");
    openWindow(plannedPull());
    Strokes strokes;
    closeTheDay(strokes, [&](CloseDayForm& form) {
        strokes.type("21.4", Qt::KeypadModifier);
        EXPECT_EQ(form.focusWidget()->objectName(), QStringLiteral("full"));
        strokes.press(Qt::Key_Enter, Qt::KeypadModifier);
        strokes.type("5.2");
        EXPECT_FALSE(form.outlook().closes) << "the others lack their weights";
        auto* line = form.findChild<QLineEdit*>(QStringLiteral("buckets"));
        line->setFocus();
        strokes.type("3/4, lots");
        EXPECT_EQ(line->text(), QStringLiteral("3/4, lots")) << "a fraction, no next block";
        EXPECT_TRUE(form.outlook().text.contains(QStringLiteral("lots")));
        strokes.type("+");
        EXPECT_TRUE(form.isVisible());
        EXPECT_EQ(form.focusWidget(), line) << "what cannot be read is pointed at";
        line->setText(QStringLiteral("7 13.0"));
        auto* keep = form.findChild<QPushButton*>(QStringLiteral("keep"));
        keep->setFocus();
        strokes.press(Qt::Key_Return);
    });
    EXPECT_FALSE(session.read().all<Extraction>().back().closed);
    EXPECT_EQ(session.read().all<Bucket>().size(), 7U);
    EXPECT_EQ(session.read().all<ExtractionBox>()[0].gross->value, Mass::grams(21400));
}

// H1a was looked into on the same day: that is kept beside its water.
TEST_F(ClosingTheDay, TheWaterOfATagStandsBehindItsWeights) {
    clock.set("2027-08-07");
    openWindow(plannedPull() +
               R"({"do":"open-run","on":"2027-08-07","name":"27-2","yard":"Hill"}
{"do":"weigh-box","on":"2027-08-07","run":"27-2","box":"H1a","gross_g":21400}
{"do":"weigh-box","on":"2027-08-07","run":"27-2","known_as":"tag lost","gross_g":19500}
{"do":"look-box","on":"2027-08-07","box":"H1a","contents":"9 drawn; 9 capped","water_percent":18.1})");
    const auto waterOf = [&](const CloseDayForm& form, const char* box) -> QLineEdit* {
        for (QLineEdit* each : form.findChildren<QLineEdit*>(QStringLiteral("box_water")))
            if (each->accessibleName().startsWith(QLatin1String(box))) return each;
        return nullptr;
    };
    Strokes strokes;
    closeTheDay(strokes, [&](CloseDayForm& form) {
        QLineEdit* known = waterOf(form, "H1a");
        QLineEdit* lost = waterOf(form, "tag lost");
        ASSERT_TRUE(known && lost);
        EXPECT_EQ(known->text(), QStringLiteral("18.1"));
        QLineEdit* wet = nullptr;
        for (QLineEdit* each : form.findChildren<QLineEdit*>(QStringLiteral("wet")))
            if (each->accessibleName() == QStringLiteral("H1a wet")) wet = each;
        ASSERT_TRUE(wet);
        wet->setFocus();
        strokes.press(Qt::Key_Tab);
        EXPECT_EQ(form.focusWidget(), known) << "Tab stops there";
        wet->setFocus();
        strokes.press(Qt::Key_Return);
        EXPECT_NE(form.focusWidget()->objectName(), QStringLiteral("box_water"))
            << "Enter passes it by";
        known->setText(QStringLiteral("17.2"));
        lost->setText(QStringLiteral("16.9"));
        EXPECT_TRUE(form.outlook().text.contains(QStringLiteral("with its bucket")))
            << form.outlook().text.toStdString();
        lost->clear();
        auto* keep = form.findChild<QPushButton*>(QStringLiteral("keep"));
        keep->setFocus();
        strokes.press(Qt::Key_Return);
    });
    std::vector<BoxLook> ofToday;
    for (const BoxLook& look : session.read().all<BoxLook>())
        if (look.on == clock.today()) ofToday.push_back(look);
    ASSERT_EQ(ofToday.size(), 1U);
    EXPECT_EQ(ofToday[0].water, WaterContent::hundredths(1720));
    EXPECT_TRUE(ofToday[0].cappedFrames) << "what was seen stays";
}

TEST_F(ClosingTheDay, FramesSetAsideAreSettledFirst) {
    clock.set("2027-08-07");
    openWindow(plannedPull() +
               R"({"do":"open-run","on":"2027-08-07","name":"27-2","yard":"Hill"}
{"do":"weigh-box","on":"2027-08-07","run":"27-2","box":"H1a"}
{"do":"set-aside","on":"2027-08-07","run":"27-2","box":{"extraction_box":"H1a","run":"27-2"},"frames":2,"reason":"granulated"})");
    Strokes strokes;
    closeTheDay(strokes, [&](CloseDayForm& form) {
        strokes.type("/6.5*", Qt::KeypadModifier);
        EXPECT_FALSE(form.outlook().closes);
        strokes.type("+");
        ASSERT_TRUE(form.isVisible()) << "two frames lie there still";
        EXPECT_EQ(form.focusWidget()->objectName(), QStringLiteral("became"));
        strokes.type("2");
        EXPECT_TRUE(form.outlook().closes) << form.outlook().text.toStdString();
        strokes.type("+");
    });
    const SetAside aside = session.read().all<SetAside>()[0];
    EXPECT_EQ(aside.became, AsideBecame::GivenBack);
    EXPECT_TRUE(balance().run.closed);
    EXPECT_LE(strokes.count(), mostStrokes);
}

int tickedIn(const CloseDayForm& form) {
    int ticked = 0;
    for (const QCheckBox* in : form.findChildren<QCheckBox*>(QStringLiteral("in_run")))
        ticked += !in->isHidden() && in->isChecked();
    return ticked;
}

// H1a is in and weighed; the other five of the plan stand on their hives still: they gave nothing.
TEST_F(ClosingTheDay, WhatStandsOnItsHiveGaveNothingWhereOthersAreIn) {
    clock.set("2027-08-07");
    openWindow(plannedPull() +
               R"({"do":"open-run","on":"2027-08-07","name":"27-2","yard":"Hill"}
{"do":"weigh-box","on":"2027-08-07","run":"27-2","box":"H1a","gross_g":21400,"wet_g":5200})");
    Strokes strokes;
    closeTheDay(strokes, [&](CloseDayForm& form) {
        EXPECT_EQ(tickedIn(form), 0);
        auto* other = form.findChildren<QCheckBox*>(QStringLiteral("in_run")).front();
        other->setFocus();
        strokes.type("1");
        EXPECT_TRUE(other->isChecked()) << "what is weighed was here";
        strokes.press(Qt::Key_Backspace);
        other->setChecked(false);
        form.findChild<QLineEdit*>(QStringLiteral("buckets"))->setFocus();
        strokes.type("16.0/+", Qt::KeypadModifier);
    });
    EXPECT_EQ(shares(), (std::vector<std::string>{"H1 16000 w"}));
    EXPECT_EQ(session.read().all<ExtractionBox>().size(), 1U);
}

TEST_F(ClosingTheDay, FramesTheLoadsLeftOverAreAskedAboutOnce) {
    clock.set("2027-08-07");
    openWindow(plannedPull() +
               R"({"do":"open-run","on":"2027-08-07","name":"27-2","yard":"Hill"}
{"do":"weigh-box","on":"2027-08-07","run":"27-2","box":"H1a","gross_g":21400,"wet_g":9200}
{"do":"spin-load","on":"2027-08-07","run":"27-2","boxes":"H1a 3"})");
    Strokes strokes;
    closeTheDay(strokes, [&](CloseDayForm& form) {
        form.findChild<QLineEdit*>(QStringLiteral("buckets"))->setFocus();
        strokes.type("12.0", Qt::KeypadModifier);
        EXPECT_TRUE(form.outlook().closes) << form.outlook().text.toStdString();
        strokes.type("+", Qt::KeypadModifier);
        ASSERT_TRUE(form.isVisible());
        EXPECT_TRUE(form.findChild<QLabel*>(QStringLiteral("how_it_closes"))
                        ->text()
                        .startsWith(QStringLiteral("6 frames of H1a were not spun")))
            << form.findChild<QLabel*>(QStringLiteral("how_it_closes"))->text().toStdString();
        strokes.type("+", Qt::KeypadModifier);
    });
    EXPECT_TRUE(balance().run.closed);
}

class ClosingTheDemoDay : public ClosingTheDay {
  protected:
    /// Three years at once: in one go, or it takes long.
    void openDemo(const std::string& script) {
        {
            Season season = newSeason();
            ASSERT_FALSE(play(season, script, AllOrNothing::Yes).stopped);
        }
        setTextSize(1.0);
        ASSERT_TRUE(session.open(QString::fromStdString(path())));
        window = std::make_unique<MainWindow>(session);
        window->resize(1280, 800);
        window->show();
        window->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
    }
};

// Judged on 25 July, nine frames each: H1 97 + 85, H2 92 + 78, H3 90 + 70, H5 90, together 602. The
// keeper's buckets take 13 kg, six and a half 84.5 kg: 140.37 g a point.
TEST_F(ClosingTheDemoDay, ByTheNumberPadAlone) {
    clock.set("2027-08-07");
    std::string script;
    for (const char* part : {"0-2025", "0-2026", "1-yard-visits", "2-pull"}) {
        QFile file(QStringLiteral(COMBWRIGHT_SOURCE_DIR "/demo/%1.play").arg(QLatin1String(part)));
        ASSERT_TRUE(file.open(QIODevice::ReadOnly)) << part;
        script += file.readAll().toStdString();
    }
    openDemo(script);
    Strokes strokes;
    closeTheDay(strokes, [&](CloseDayForm&) { strokes.type("/6.5*/.5*+", Qt::KeypadModifier); });
    EXPECT_LE(strokes.count(), mostStrokes);
    EXPECT_EQ(shares(),
              (std::vector<std::string>{"H1 25547 e", "H2 23862 e", "H3 22458 e", "H5 12633 e"}));
    expectSumOfBuckets();
}

}  // namespace
}  // namespace combwright
