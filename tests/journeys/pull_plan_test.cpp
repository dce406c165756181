// The question of a pull asked by keyboard: yards, day, constants tried out, boxes held back, the
// plan kept, found again and compared; units, large type, and an answer that takes its time.
#include <QCheckBox>
#include <QScrollBar>
#include <QSemaphore>

#include "core/actions/boxes/looks.h"
#include "tests/support/in_pull.h"

namespace combwright {
namespace {

using test::InPull;

class PullAskedFor : public InPull {
  protected:
    void keepPlan() {
        closeDialogs();
        place->act();
        closer.stop();
    }
    bool tells(const char* label, const char* words) const {
        return text(label).find(words) != std::string::npos;
    }
    bool told(const char* words) const {
        return session.lastTold().contains(QString::fromUtf8(words));
    }
    void backToTheWindow() const {
        window->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
    }
};

TEST_F(PullAskedFor, YardsAreTickedByKeyboard) {
    EXPECT_EQ(place->sheet().yards.size(), 2U);
    tabTo("yard_2");
    press(Qt::Key_Space);
    ASSERT_EQ(place->sheet().yards.size(), 1U);
    EXPECT_EQ(place->sheet().yards[0].yard.name.text(), "Hill");
    EXPECT_EQ(place->sheet().taken, 1);
    EXPECT_TRUE(place->head().under.startsWith(QStringLiteral("Hill · ")));
    tabTo("yard_1");
    press(Qt::Key_Space);
    EXPECT_TRUE(place->sheet().yards.empty());
    EXPECT_TRUE(find<QLabel>("no_super")->isVisible()) << "an empty place says so";
    EXPECT_FALSE(nextThing()->isVisible());
    press(Qt::Key_Space);
    EXPECT_EQ(place->sheet().taken, 1);
    tabTo("yard_2");
    press(Qt::Key_Space);
    keepPlan();
    EXPECT_EQ(session.read().all<PullLine>().size(), 10U);
}

TEST_F(PullAskedFor, TheDayIsTypedAsOneSaysIt) {
    EXPECT_EQ(limit("for_day"), QStringLiteral("Sat 31 Jul 2027")) << "boards take two days";
    const struct {
        const char* typed;
        const char* meant;
    } rows[] = {{"6 aug", "2027-08-06"}, {"fri", "2027-07-30"},   {"thu", "2027-07-29"},
                {"wed", "2027-08-04"},   {"15.9.", "2027-09-15"}, {"2027-08-09", "2027-08-09"}};
    for (const auto& row : rows) {
        typeLimit("for_day", row.typed);
        EXPECT_EQ(place->sheet().asked.forDay, test::day(row.meant)) << row.typed;
    }
    typeLimit("for_day", "2027-08-06");
    EXPECT_EQ(place->sheet().boardsIn, test::day("2027-08-04"));
    EXPECT_TRUE(tells("follows", "Wed&nbsp;4&nbsp;Aug")) << text("follows");
    press(Qt::Key_Tab);
    EXPECT_EQ(limit("for_day"), QStringLiteral("Fri 6 Aug 2027")) << "read back in words";
    for (const char* bad : {"yesterday", "28 jul", "30 feb", "soon"}) {
        typeLimit("for_day", bad);
        EXPECT_TRUE(told(bad)) << session.lastTold().toStdString();
        EXPECT_TRUE(find<QLabel>("day_trouble")->isVisible());
        EXPECT_EQ(limit("for_day"), QString::fromUtf8(bad)) << "what was typed stays";
    }
    EXPECT_EQ(place->sheet().asked.forDay, test::day("2027-08-06")) << "the last holds";
    typeLimit("for_day", "today");
    EXPECT_FALSE(find<QLabel>("day_trouble")->isVisible());
    EXPECT_TRUE(place->sheet().boardsFor.empty()) << "no evening is left for boards";
    EXPECT_TRUE(tells("follows", "Too late for boards. Brush H1 C1")) << text("follows");
}

TEST_F(PullAskedFor, ConstantsAreTriedOutAndBecomeOnesOwnWithThePlan) {
    EXPECT_EQ(limit("full_frame"), QStringLiteral("1.6"));
    EXPECT_FALSE(find<QLabel>("supposed_note")->isVisible());
    typeLimit("full_frame", "1.8");
    EXPECT_NEAR(place->sheet().honey.grams, 1800 * (9 * 0.9 + 9 * 0.5), 1e-6);
    EXPECT_TRUE(find<QLabel>("supposed_note")->isVisible());
    EXPECT_TRUE(tells("supposed_note", "was 1.6 kg")) << text("supposed_note");
    typeLimit("extractor_slots", "4");
    EXPECT_EQ(place->sheet().day->loads, 3 + 3);
    typeLimit("bucket", "10");
    EXPECT_EQ(place->sheet().day->buckets, 2 + 1);
    typeLimit("spare_buckets", "100");
    EXPECT_EQ(place->sheet().day->bucketsWithSpare, 6);
    EXPECT_EQ(session.read().all<Constant>().size(), 4U) << "nothing is kept before the plan is";
    typeLimit("spare_buckets", "");
    EXPECT_EQ(place->sheet().day->bucketsWithSpare, 4) << "cleared: what is in force";

    keepPlan();
    EXPECT_EQ(session.read().all<Constant>().size(), 7U);
    EXPECT_EQ(session.read().all<PullPlan>().size(), 1U);
    EXPECT_NEAR(place->sheet().honey.grams, 1800 * (9 * 0.9 + 9 * 0.5), 1e-6);
    EXPECT_FALSE(find<QLabel>("supposed_note")->isVisible()) << "it is one's own now";
    EXPECT_EQ(limit("full_frame"), QStringLiteral("1.8"));
    backToTheWindow();
    for (int n = 0; n < 4; ++n) {
        QTest::keyClick(window.get(), Qt::Key_Z, Qt::ControlModifier);
        place->settle();
    }
    EXPECT_EQ(session.read().all<Constant>().size(), 4U);
    EXPECT_NEAR(place->sheet().honey.grams, 20160, 1e-6);
}

TEST_F(PullAskedFor, ConstantsThatCannotBeMeantAreSaidAndTheLastHolds) {
    const struct {
        const char* field;
        const char* typed;
    } rows[] = {{"full_frame", "0"},      {"full_frame", "heavy"},  {"full_frame", "99"},
                {"extractor_slots", "0"}, {"extractor_slots", "x"}, {"extractor_slots", "-4"},
                {"bucket", "0"},          {"bucket", "-1"},         {"spare_buckets", "-5"},
                {"spare_buckets", "abc"}};
    for (const auto& row : rows) {
        typeLimit(row.field, "");
        const double honey = place->sheet().honey.grams;
        typeLimit(row.field, row.typed);
        EXPECT_TRUE(told(row.typed)) << row.field << " " << session.lastTold().toStdString();
        EXPECT_TRUE(find<QLabel>("limit_trouble")->isVisible()) << row.field << row.typed;
        if (std::string(row.typed).size() < 2) {
            EXPECT_EQ(place->sheet().honey.grams, honey);
        }
        typeLimit(row.field, "");
        EXPECT_FALSE(find<QLabel>("limit_trouble")->isVisible()) << row.field;
    }
    typeLimit("winter_need", "1.240");
    EXPECT_TRUE(tells("limit_trouble", "1240 or 1.2400")) << text("limit_trouble");
}

TEST_F(PullAskedFor, WhatIsHeldBackIsTakenOnlyWithAReason) {
    goTo(2, 0);
    ASSERT_EQ(current(), "M04");
    EXPECT_TRUE(tells("chosen_head", "treated while on")) << text("chosen_head");
    auto* reason = find<QLineEdit>("take_reason");
    press(Qt::Key_T);
    ASSERT_TRUE(reason->isVisible() && reason->hasFocus()) << "it asks again";
    EXPECT_TRUE(tells("ask_words", "not for people"));
    EXPECT_FALSE(place->board().current()->forced);
    press(Qt::Key_Return);
    EXPECT_TRUE(told("Without a reason"));
    press(Qt::Key_Escape);
    EXPECT_FALSE(reason->isVisible());
    EXPECT_TRUE(place->board().hasFocus());
    EXPECT_FALSE(place->board().current()->forced) << "Esc leaves it refused";
    press(Qt::Key_T);
    QTest::keyClicks(reason, QStringLiteral("on C2 then, not (this) hive"));
    press(Qt::Key_Return);
    ASSERT_TRUE(place->board().current()->forced);
    EXPECT_EQ(place->board().current()->verdict, PullVerdict::Take);
    EXPECT_EQ(place->board().current()->reason, "on C2 then, not this hive");
    EXPECT_TRUE(tells("chosen_head", "on C2 then")) << text("chosen_head");
    keepPlan();
    bool found = false;
    for (const PullLine& line : session.read().all<PullLine>())
        if (line.forced.value_or(false)) {
            found = true;
            EXPECT_EQ(line.why, "on C2 then, not this hive");
        }
    EXPECT_TRUE(found);
    // Written down and played again it is the same file, reason and all.
    auto other = Season::create(path("again.combwright"), clock);
    ASSERT_TRUE(other);
    playAll(*other, scriptOf(session.season()));
    EXPECT_EQ(other->dump(), session.season().dump());
}

TEST_F(PullAskedFor, TheButtonsDecideTheChosenBoxToo) {
    ASSERT_EQ(current(), "M02");
    tabTo("take_it");
    press(Qt::Key_Space);
    EXPECT_EQ(place->board().current()->verdict, PullVerdict::Take);
    EXPECT_TRUE(place->board().hasFocus()) << "the cursor is not lost with the button";
    tabTo("look_first");
    press(Qt::Key_Space);
    EXPECT_EQ(place->board().current()->verdict, PullVerdict::LookFirst);
    tabTo("as_reckoned");
    press(Qt::Key_Space);
    EXPECT_FALSE(place->board().current()->forced);
    EXPECT_TRUE(find<QWidget>("flat_box")->isVisible());
    EXPECT_FALSE(find<QWidget>("flat_box")->accessibleDescription().isEmpty());
}

TEST_F(PullAskedFor, AKeptPlanIsFoundAgainAndSaysWhenTheAnswerMoved) {
    typeLimit("boxes", "3");
    typeLimit("for_day", "6 aug");
    goTo(0, 0);
    ASSERT_EQ(current(), "M02");
    press(Qt::Key_T);
    EXPECT_EQ(place->sheet().taken, 3);
    EXPECT_TRUE(nextThing()->text().startsWith(QStringLiteral("Keep plan")));
    keepPlan();
    EXPECT_TRUE(tells("follows", "kept Thu 29 Jul: 32 kg from 3 boxes")) << text("follows");
    EXPECT_FALSE(tells("follows", "; now"));
    backToTheWindow();
    EXPECT_TRUE(nextThing()->text().startsWith(QStringLiteral("Print"))) << "it stands as kept";
    keepPlan();
    EXPECT_EQ(session.read().all<PullPlan>().size(), 1U) << "nothing is kept twice";

    openWindow();
    EXPECT_EQ(limit("boxes"), QStringLiteral("3"));
    EXPECT_EQ(limit("for_day"), QStringLiteral("Fri 6 Aug 2027"));
    EXPECT_EQ(place->sheet().taken, 3);
    EXPECT_TRUE(place->board().current()->forced);
    EXPECT_TRUE(nextThing()->text().startsWith(QStringLiteral("Print")));

    playAll(
        session.season(),
        R"({"do":"look-box","on":"2027-07-29","box":"M07","contents":"9 drawn; 9 capped, 40 % full"})");
    place->settle();
    EXPECT_TRUE(tells("follows", "32 kg from 3 boxes; now 30 from 3")) << text("follows");
    EXPECT_TRUE(nextThing()->text().startsWith(QStringLiteral("Keep plan")));
    keepPlan();
    EXPECT_EQ(session.read().all<PullPlan>().size(), 2U);
}

TEST_F(PullAskedFor, APlanWhoseBoxesAreBroughtIsDone) {
    keepPlan();
    const auto lines = session.read().where<PullLine>({});
    int brought = 0;
    for (const PullLine& line : lines) {
        if (line.verdict != PullVerdict::Take) continue;
        const auto box = session.read().find(line.box);
        playAll(session.season(), R"({"do":"move-box","on":"2027-07-29","box":")" + box->mark +
                                      R"(","to":"cleared"})");
        ++brought;
        place->settle();
        if (brought == 1) {
            EXPECT_TRUE(tells("follows", "; 1 of ")) << text("follows");
        }
    }
    ASSERT_GT(brought, 1);
    EXPECT_TRUE(tells("follows", ("done, " + std::to_string(brought) + " of ").c_str()))
        << text("follows");
    EXPECT_FALSE(tells("follows", "; now")) << text("follows");
}

TEST_F(PullAskedFor, ALimitShowsAtMostThreeDigitsBehindThePoint) {
    typeLimit("full_frame", "1858 g");
    EXPECT_NEAR(place->sheet().honey.grams, 1858 * (9 * 0.9 + 9 * 0.5), 1e-6);
    keepPlan();
    openWindow();
    EXPECT_EQ(limit("full_frame"), QStringLiteral("1.858"));
    typeLimit("full_frame", "1.858");
    EXPECT_FALSE(find<QLabel>("limit_trouble")->isVisible()) << "it says what stands there";
    EXPECT_NEAR(place->sheet().honey.grams, 1858 * (9 * 0.9 + 9 * 0.5), 1e-6);
}

TEST_F(PullAskedFor, ThePlanOfAPassedDayGivesOnlyItsLimits) {
    typeLimit("boxes", "1");
    press(Qt::Key_Tab);
    goTo(0, 0);
    press(Qt::Key_T);
    keepPlan();
    clock.set("2027-08-05");
    openWindow();
    EXPECT_EQ(limit("boxes"), QStringLiteral("1"));
    EXPECT_FALSE(place->board().current()->forced);
    EXPECT_FALSE(tells("follows", "kept"));
}

TEST_F(PullAskedFor, AllOfItIsShownAndTypedInPounds) {
    session.setUnits(Units::UsCustomary);
    place->settle();
    EXPECT_EQ(place->head().big.unit, QStringLiteral("lb"));
    EXPECT_EQ(limit("winter_need"), QStringLiteral("35.27"));
    typeLimit("winter_need", "30");
    EXPECT_EQ(place->sheet().asked.limits.winterNeed, Mass::grams(13608));
    typeLimit("bucket", "60 lb");
    EXPECT_NEAR(place->sheet().room.bucketG, 27216, 1);
    for (const QLabel* label : place->findChildren<QLabel*>())
        EXPECT_FALSE(label->text().contains(QStringLiteral(" kg"))) << label->text().toStdString();
    session.setUnits(Units::Metric);
    place->settle();
    EXPECT_EQ(limit("winter_need"), QStringLiteral("13.608")) << "the same in the other unit";
}

TEST_F(PullAskedFor, EveryFigureSaysHowItCameAbout) {
    goTo(0, 1);
    ASSERT_EQ(current(), "M01");
    const auto figures = place->explained();
    ASSERT_FALSE(figures.empty());
    EXPECT_EQ(figures[0].what, QStringLiteral("Honey in M01 on H1"));
    EXPECT_NEAR(figures[0].working.steps.back().value, 12960, 1e-6);
}

TEST_F(PullAskedFor, LargeTypeAndSmallWindowsCutNothingOff) {
    for (const auto& [factor, size] : {std::pair{1.0, QSize(1280, 800)},
                                       {1.15, QSize(1280, 800)},
                                       {1.5, QSize(1280, 800)},
                                       {2.0, QSize(1280, 800)},
                                       {1.0, QSize(1000, 700)}}) {
        setTextSize(factor);
        window->resize(size);
        place->settle();
        QApplication::processEvents();
        for (const QScrollArea* area : place->findChildren<QScrollArea*>()) {
            if (!area->isVisible()) continue;
            EXPECT_LE(area->widget()->width(), area->viewport()->width())
                << area->objectName().toStdString() << " at " << factor;
            for (const QWidget* child : area->widget()->findChildren<QWidget*>()) {
                if (!child->isVisible()) continue;
                const int right = child->mapTo(area->widget(), QPoint(child->width(), 0)).x();
                EXPECT_LE(right, area->viewport()->width())
                    << child->objectName().toStdString() << " at " << factor;
            }
        }
        // Words that wrap have the height they need.
        for (const QLabel* label : place->findChildren<QLabel*>()) {
            if (!label->isVisible() || label->text().isEmpty() || !label->wordWrap()) continue;
            EXPECT_GE(label->height(), label->heightForWidth(label->width()))
                << label->objectName().toStdString() << " at " << factor;
        }
        EXPECT_GE(find<QWidget>("flat_box")->height(), 40) << factor;
    }
}

TEST_F(PullAskedFor, AnAnswerThatTakesItsTimeIsShownToAndMayBeStopped) {
    auto gate = std::make_shared<QSemaphore>();
    place->reckonBy([gate](PullInput input) {
        gate->acquire();
        return reckonPull(std::move(input));
    });
    auto* busy = find<QWidget>("reckoning");
    auto* boxes = find<QLineEdit>("boxes");
    boxes->setFocus();
    QTest::keyClicks(boxes, QStringLiteral("1"));
    EXPECT_FALSE(busy->isVisible()) << "not within the first second";
    EXPECT_TRUE(QTest::qWaitFor([&] { return busy->isVisible(); }, 3000));
    EXPECT_EQ(place->sheet().taken, 2) << "the window answers keys meanwhile";
    auto* stop = find<QPushButton>("stop_reckoning");
    stop->setFocus();
    QTest::keyClick(stop, Qt::Key_Space);
    EXPECT_FALSE(busy->isVisible());
    gate->release();
    QTest::qWait(50);
    EXPECT_EQ(place->sheet().taken, 2) << "an answer nobody waits for is not shown";

    // Of questions asked one after the other only the newest is answered.
    boxes->setFocus();
    boxes->clear();
    QTest::keyClicks(boxes, QStringLiteral("0"));
    QTest::keyClick(boxes, Qt::Key_Backspace);
    QTest::keyClicks(boxes, QStringLiteral("1"));
    gate->release(3);
    EXPECT_TRUE(QTest::qWaitFor([&] { return place->sheet().asked.limits.boxes == Count(1); }));
    place->settle();
    EXPECT_EQ(place->sheet().taken, 1);
    EXPECT_FALSE(busy->isVisible());
}

}  // namespace
}  // namespace combwright
