// Colonies through the year in the real window, by keyboard: a split that is requeened and becomes
// a full colony, a treatment too early that is seen up to the jar, autumn weights that say who
// starves in March of a leap year.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/actions/health/treatments.h"
#include "core/places/health/treatments.h"
#include "core/places/pages/health/health_pages.h"
#include "core/places/stores/stores.h"
#include "tests/support/in_yard.h"
#include "ui/honey_room/honey_room_place.h"
#include "ui/pull/pull_place.h"
#include "ui/storeroom/storeroom_place.h"

namespace combwright {
namespace {

using testing::HasSubstr;
using testing::Not;

class ColonyThroughTheYear : public test::InYard {};

constexpr const char* hillInSpring =
    R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill","usual_super":"medium"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H1","boxes":"deep D1 10 drawn, x, medium M1 9 drawn","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H4","boxes":"deep D4 6 drawn"}
{"do":"put-queen","on":"2027-04-20","hive":"H1","reared":2025,"number":"42","marked":true}
)";

TEST_F(ColonyThroughTheYear, ASplitIsRequeenedAndBecomesAFullColony) {
    begin("2027-05-20", hillInSpring);
    toHive("H1");
    byLetter(Qt::Key_X, Qt::Key_S, [](QDialog& form) {
        fill(form, "stand", "N1");
        fill(form, "new_boxes", "deep N7");
        fill(form, "frames", "4");
        choose(form, "queen", QStringLiteral("stays in H1"));
        choose(form, "step", QStringLiteral("a capped"));
        enter(form);
    });
    ASSERT_EQ(stack("N1"), "N7") << session.lastTold().toStdString();
    toHive("N1");
    EXPECT_THAT(card(), HasSubstr("H1"));

    // Capped on 20 May: out by the 28th, look from 11 June, test frame 18 June, act by 25 June.
    dayComes("2027-06-02");
    key(Qt::Key_S);
    EXPECT_THAT(mind("N1"), HasSubstr("leave shut to 10 Jun"));
    key(Qt::Key_Return, Qt::ControlModifier);
    QApplication::processEvents();
    const std::string shut = today();
    EXPECT_THAT(shut, HasSubstr("N1"));

    dayComes("2027-06-12");
    EXPECT_THAT(today(), HasSubstr("N1"));
    toYard();
    toHive("H1");
    writeSheet({"e b8 s3 +1", "", "e0 q? b0 s2"});

    dayComes("2027-06-19");
    EXPECT_THAT(today(), HasSubstr("N1"));
    toYard();
    toHive("N1");
    byLetter(Qt::Key_Q, Qt::Key_P, [](QDialog& form) {
        fill(form, "reared", "2027");
        choose(form, "origin", QStringLiteral("bought"));
        choose(form, "marked", QStringLiteral("marked"));
        fill(form, "number", "7");
        enter(form);
    });

    dayComes("2027-07-03");
    toHive("H1");
    writeSheet({"e b8 s5", "", "e b3 s2 q"});

    dayComes("2027-07-10");
    toHive("N1");
    byLetter(Qt::Key_X, Qt::Key_M, [](QDialog& form) {
        choose(form, "to_hive", QStringLiteral("H4"));
        fill(form, "boxes", "N7");
        enter(form);
    });
    EXPECT_EQ(stack("H4"), "D4 N7") << session.lastTold().toStdString();
    toHive("H4");
    toHive("N1");
    toHive("H1");
}

constexpr const char* hillInJuly =
    R"({"do":"set-constant","on":"2027-04-01","constant":"full_frame_g LANG-F-MED","value":1600}
{"do":"set-constant","on":"2027-04-01","constant":"full_frame_g LANG-F-DEEP","value":2500}
{"do":"add-yard","on":"2027-04-01","yard_name":"Hill","usual_super":"medium","winter_need_g":16000}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H1","boxes":"deep D1 10 drawn, x, medium M1 9 drawn","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H2","boxes":"deep D2 10 drawn, x, medium M2 9 drawn","origin":"overwintered"}
{"do":"write-line","on":"2027-07-20","hive":"H1","line":"e s9"}
{"do":"write-line","on":"2027-07-20","hive":"H2","line":"e s9"}
{"do":"look-box","on":"2027-07-20","box":"M1","contents":"9 drawn; 9 capped, 95 % full"}
{"do":"look-box","on":"2027-07-20","box":"M2","contents":"9 drawn; 9 capped, 95 % full"}
)";

TEST_F(ColonyThroughTheYear, ATreatmentTooEarlyIsSeenUpToTheJar) {
    begin("2027-07-22", hillInJuly);
    toHive("H1");
    key(Qt::Key_V);
    inDialog("small_form", [](QDialog& form) {
        fill(form, "medicine", "Formic strips");
        fill(form, "active", "formic acid");
        fill(form, "quantity", "10 strips");
        fill(form, "batch", "F-22");
        choose(form, "supers", QStringLiteral("off"));
        fill(form, "in_hive", "7 to 14");
        fill(form, "wait_days", "14");
        enter(form);
    });
    key(Qt::Key_B);
    comeBack();
    place->setFocus();
    key(Qt::Key_Space);
    inDialog("small_form", [](QDialog& form) {
        EXPECT_EQ(form.findChild<QLineEdit*>("hives")->text(), QStringLiteral("H1"));
        fill(form, "amount", "2");
        EXPECT_THAT(form.findChild<QLabel*>("caution")->text().toStdString(),
                    HasSubstr("Supers are on H1"));
        enter(form);
    });
    key(Qt::Key_T);
    comeBack();
    ASSERT_EQ(read().all<Treatment>().size(), 1U) << session.lastTold().toStdString();
    EXPECT_THAT(place->health().cardText().toStdString(), HasSubstr("M1"));

    dayComes("2027-08-03");
    place->setFocus();
    inDialog("small_form", [](QDialog& form) { enter(form); });
    key(Qt::Key_O);
    comeBack();

    // Pull: it stays on the hive, says why, and is taken only with a reason.
    auto* pull = test::openPlace<PullPlace>(*window);
    pull->settle();
    pull->board().setFocus();
    key(Qt::Key_Left);
    key(Qt::Key_Up);
    pull->settle();
    EXPECT_THAT(label("chosen_head"), HasSubstr("treated while on"));
    EXPECT_THAT(printed("pull-list"), HasSubstr("treated"));

    // Off the hive it keeps the flag, and into a run too.
    toYard();
    key(Qt::Key_Escape);
    toHive("H1");
    key(Qt::Key_Up);
    key(Qt::Key_Up);
    key(Qt::Key_T);
    QTest::keyClicks(focus(), QStringLiteral("waiting"));
    key(Qt::Key_Return);
    ASSERT_NE(box("M1").place, BoxPlace::OnHive);
    auto* room = test::openPlace<HoneyRoomPlace>(*window);
    const auto type = [&](const char* text) {
        room->setFocus();
        QTest::keyClicks(focus(), QString::fromUtf8(text));
        key(Qt::Key_Return);
    };
    type("open 27-1 Hill");
    type("M1 19.0");
    type("M1 wet 5.0");
    type("B1 13.0");
    const auto run =
        findNamed(read(), Extraction::table, NameQuery{.name = "27-1", .on = clock.today()});
    ASSERT_TRUE(run);
    const std::string lot = pageText(lotTreatmentsPage(read(), Id<Extraction>{*run})).toStdString();
    EXPECT_THAT(lot, HasSubstr("a box of this lot was on"));
}

constexpr const char* hillInAutumn =
    R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill","usual_super":"medium"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H1","boxes":"deep D1 10 drawn","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H2","boxes":"deep D2 10 drawn","origin":"overwintered"}
)";

TEST_F(ColonyThroughTheYear, AutumnWeightsSayWhoStarvesInMarchOfALeapYear) {
    begin("2027-10-01", hillInAutumn);
    toHive("H1");
    key(Qt::Key_F);
    const auto weigh = [&](const char* reading) {
        place->setFocus();
        inDialog("small_form", [reading](QDialog& form) {
            QTest::keyClicks(form.focusWidget(), QString::fromUtf8(reading));
            // Past the second hive, which is not weighed, to the button.
            for (int n = 0; n < 3; ++n) enter(form);
        });
        key(Qt::Key_W);
        comeBack();
    };
    // Two-sided; all that is no stores is 14 kg: 29.65 kg of stores on 1 October.
    weigh("21.8+21.85 without 14");
    ASSERT_EQ(read().all<HiveWeighing>().size(), 1U) << session.lastTold().toStdString();
    // A month later 25.00 kg, 150 g a day.
    dayComes("2027-11-01");
    key(Qt::Key_F);
    weigh("19.5+19.5 without 14");
    ASSERT_EQ(read().all<HiveWeighing>().size(), 2U) << session.lastTold().toStdString();
    const Stores all = stores(read(), {*place->yard()}, clock.today());
    // 20.00 kg above the floor at 150 g: 133 days, over 29 February to 13 March.
    EXPECT_EQ(all.yards.front().second.front().byOwn, test::day("2028-03-13"));
    EXPECT_THAT(printed("feeding-sheet"), HasSubstr("1 does not last to the first flow"));
    dayComes("2028-02-20");
    EXPECT_THAT(today(), HasSubstr("13 Mar"));
}

}  // namespace
}  // namespace combwright
