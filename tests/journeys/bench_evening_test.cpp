// One bench session at the window, by keyboard alone: the three evenings of the worked example as
// one, box after box. The keys are counted: ten seconds a box is the aim, and three keys a second
// are a slow hand (common practice, no source).
#include <gtest/gtest.h>

#include <QLabel>
#include <QLineEdit>
#include <algorithm>
#include <set>

#include "core/places/storeroom/frame_ledger.h"
#include "core/places/storeroom/needs.h"
#include "tests/support/in_window.h"
#include "ui/shell/place_head.h"
#include "ui/storeroom/storeroom_place.h"

namespace combwright {
namespace {

constexpr int keysInTenSeconds = 30;

class BenchEvening : public test::WindowTest {
  protected:
    void SetUp() override {
        clock.set("2028-01-06");
        openWindow(
            R"({"do":"add-boxes","on":"2027-08-30","kind":"medium","first_mark":"M01","count":9,"contents":"9 drawn","stack":"a shelf"}
{"do":"add-boxes","on":"2027-08-30","kind":"medium","first_mark":"M10","count":13,"contents":"9 drawn","stack":"a shelf"}
{"do":"add-boxes","on":"2027-10-30","kind":"deep","first_mark":"D1","count":4,"contents":"10 drawn","stack":"b floor"}
{"do":"plan-season","on":"2028-01-05","year":2028,"colonies":11,"splits":0,"super_kind":"LANG10-MED","supers_per_colony":2,"frames_per_super":9})");
        place = goToPlace<StoreroomPlace>(5);
        ASSERT_NE(place, nullptr);
        QApplication::processEvents();
    }
    void type(const QString& text) {
        for (const QChar each : text) {
            QTest::keyClick(focus(), each.toLatin1());
            ++keys;
        }
    }
    void press(Qt::Key key) {
        QTest::keyClick(focus(), key);
        ++keys;
    }
    std::string mark() {
        const BoardRow* row = place->board().currentRow();
        return row ? row->name : "none";
    }
    Box box(const std::string& name) { return *session.read().first<Box>({is("mark", name)}); }
    std::string seen(const std::string& name) {
        std::string letters;
        for (const Frame& frame : session.read().where<Frame>({is("box", box(name).id)}))
            if (!frame.retired) letters += frame.faults.empty() ? "." : frame.faults;
        std::sort(letters.begin(), letters.end());
        return letters;
    }

    StoreroomPlace* place = nullptr;
    int keys = 0;
};

TEST_F(BenchEvening, GoesBoxByBoxInUnderTenSecondsOfTyping) {
    const std::vector<std::pair<std::string, QString>> lines{
        {"M01", QStringLiteral("7 keep, 1 web, 1 broken")},
        {"M02", QStringLiteral("7 keep, 1 w, 1 t")},
        {"M03", QStringLiteral("8 keep, 1 w8")},
        {"M04", QStringLiteral("7 keep, 1 w8, 1 v8")},
        {"M05", QStringLiteral("7 keep, 1 w, 1 v")},
        {"M06", QStringLiteral("7 keep, 1 w, 1 t")},
        {"M07", QStringLiteral("7 keep, 1 t, 1 v8")},
        {"M08", QStringLiteral("8 keep, 1 t")},
        {"M09", QStringLiteral("8 keep, 1 w")},
        {"M10", QStringLiteral("8 keep, 1 w")},
        {"M11", QStringLiteral("8 keep, 1 v")},
        {"M12", QStringLiteral("7 keep, 1 t")},
        {"M13", QStringLiteral("7 keep, 1 v, 1 t")},
        {"M14", QStringLiteral("8 keep, 1 t")},
        {"M15", QStringLiteral("7 keep, 1 v8, 1 t")},
        {"M16", QStringLiteral("8 keep, 1 t")},
        {"M17", QStringLiteral("8 keep, 1 v8")},
        {"M18", QStringLiteral("8 keep, 1 v")},
        {"M19", QStringLiteral("8 keep, 1 t")},
        {"M20", QStringLiteral("7 keep, 1 t, 1 g")},
        {"M21", QStringLiteral("8 keep, 1 t")},
        {"M22", QStringLiteral("8 keep, 1 g")},
        {"D1", QStringLiteral("5 keep, 2 d, 1 o, 2 t")},
        {"D2", QStringLiteral("4 keep, 2 d, 2 o, 2 t")},
        {"D3", QStringLiteral("5 keep, 2 d, 1 o, 2 t")},
        {"D4", QStringLiteral("4 keep, 2 d, 2 o, 2 t")}};
    int most = 0;
    for (const auto& [name, line] : lines) {
        ASSERT_EQ(mark(), name) << "the next box comes by itself";
        const int before = keys;
        type(line);
        press(Qt::Key_Return);
        most = std::max(most, keys - before);
    }
    EXPECT_LE(most, keysInTenSeconds) << "keys for the longest box";
    RecordProperty("keys_a_box", keys / static_cast<int>(lines.size()));
    const FrameLedger ledger = frameLedger(session.read());
    EXPECT_TRUE(ledger.conserved());
    EXPECT_EQ(ledger.total.missing, 1) << "M12 held eight";
    const NextSeason& next = place->next();
    ASSERT_FALSE(next.frames.empty());
    EXPECT_EQ(next.frames.front().frames.need, 198);
    EXPECT_EQ(next.frames.front().frames.there + next.frames.front().frames.inRepair, 191);
    EXPECT_EQ(next.frames.front().frames.afterRepairsAtMost, 7);
    EXPECT_EQ(next.frames.front().sheets, 30);
    EXPECT_EQ(place->head().big.figure, QStringLiteral("191 of 198"));
    // The evening's work is taken back box by box, across restarts too.
    QTest::keyClick(window.get(), Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(seen("D4"), "..........");
    EXPECT_EQ(seen("D3"), ".....DDOTT");
}

TEST_F(BenchEvening, AFrameIsPointedAtByArrowsLettersAndDigits) {
    press(Qt::Key_Right);
    press(Qt::Key_Right);
    ASSERT_TRUE(place->atFrame());
    type(QStringLiteral("w"));
    const auto at =
        session.read().first<Frame>({is("box", box("M01").id), is("position", Count(3))});
    ASSERT_TRUE(at);
    EXPECT_EQ(at->faults, "W");
    EXPECT_EQ(at->verdict, Verdict::Refit) << "what usually becomes of it";
    type(QStringLiteral("8"));
    EXPECT_EQ(session.read().find(at->id)->verdict, Verdict::Burn) << "the keeper overrules";
    type(QStringLiteral("w"));
    EXPECT_EQ(session.read().find(at->id)->faults, "") << "pressed again it goes";
    type(QStringLiteral("k"));
    EXPECT_TRUE(session.lastTold().contains(QStringLiteral("no letter")))
        << session.lastTold().toStdString();
}

TEST_F(BenchEvening, ADigitIsAMarkOnlyWhereAMarkGoesOnSo) {
    const auto line = [&] { return place->bench().line().text().toStdString(); };
    type(QStringLiteral("m14"));
    EXPECT_EQ(mark(), "M14");
    EXPECT_EQ(line(), "");
    type(QStringLiteral("7 keep, 2 t"));
    EXPECT_EQ(mark(), "M14");
    EXPECT_EQ(line(), "7 keep, 2 t") << "not a key of it is lost, however fast it is typed";
    press(Qt::Key_Return);
    EXPECT_EQ(seen("M14"), ".......TT");
    type(QStringLiteral("d4"));
    EXPECT_EQ(mark(), "D4");
    type(QStringLiteral("10"));
    EXPECT_EQ(line(), "10");
    press(Qt::Key_Escape);
    EXPECT_EQ(line(), "");
}

TEST_F(BenchEvening, ALetterAndADigitAreWhatIsSeenAndItsVerdict) {
    const auto steps = session.season().history().size();
    type(QStringLiteral("w6"));
    EXPECT_EQ(place->bench().line().text(), QStringLiteral("1 W6")) << "no mark begins with W";
    EXPECT_TRUE(place->bench()
                    .findChild<QLabel*>(QStringLiteral("bench_echo"))
                    ->text()
                    .contains(QStringLiteral("web of moth: melt")));
    EXPECT_EQ(session.season().history().size(), steps) << "nothing is kept before Enter";
    type(QStringLiteral(", 8 keep"));
    press(Qt::Key_Return);
    EXPECT_EQ(seen("M01"), "........W");
    EXPECT_EQ(mark(), "M02");
    // A frame clicked on is pointed at as one gone to by arrows.
    QTest::mouseClick(place->board().viewport(), Qt::LeftButton, {},
                      place->board().rectOf(box("M03").id, 4).center());
    ASSERT_TRUE(place->atFrame());
    type(QStringLiteral("d7"));
    const auto at =
        session.read().first<Frame>({is("box", box("M03").id), is("position", Count(5))});
    ASSERT_TRUE(at);
    EXPECT_EQ(at->faults, "D") << "and not the mark of a deep";
    EXPECT_EQ(at->verdict, Verdict::Hold);
    EXPECT_EQ(mark(), "M03");
    press(Qt::Key_Right);
    type(QStringLiteral("v8"));
    const auto next =
        session.read().first<Frame>({is("box", box("M03").id), is("faults", std::string("V"))});
    ASSERT_TRUE(next);
    EXPECT_EQ(next->verdict, Verdict::Burn);
    // Beside its frames the box is meant again.
    const QRect row = place->board().rectOf(box("M03").id);
    QTest::mouseClick(place->board().viewport(), Qt::LeftButton, {},
                      row.topLeft() + QPoint(8, row.height() / 2));
    EXPECT_FALSE(place->atFrame());
    type(QStringLiteral("k"));
    EXPECT_EQ(place->bench().line().text(), QStringLiteral("k")) << "shown, and not read as counts";
    press(Qt::Key_Return);
    EXPECT_EQ(mark(), "M03");
}

TEST_F(BenchEvening, FiltersAndGroupsAreReachedByKeyAndLeftByEscape) {
    type(QStringLiteral("7 keep, 1 w, 1 v"));
    press(Qt::Key_Return);
    const auto pressWith = [&](Qt::Key key) { QTest::keyClick(focus(), key, Qt::ControlModifier); };
    const auto name = [&] { return focus()->objectName().toStdString(); };
    pressWith(Qt::Key_F);
    EXPECT_EQ(name(), "filter_kind");
    std::set<std::string> met;
    for (int i = 0; i < 12 && name() != "frame_board"; ++i) {
        met.insert(name());
        QTest::keyClick(focus(), Qt::Key_Tab);
    }
    for (const char* each :
         {"filter_kind", "filter_state", "filter_verdict", "filter_place", "filter_not_frozen",
          "filter_not_reviewed", "filter_on_hives", "filter_group"})
        EXPECT_TRUE(met.contains(each)) << each;
    place->board().setFocus();
    const auto all = place->board().board().shown;
    pressWith(Qt::Key_F);
    QTest::keyClick(focus(), Qt::Key_Tab);
    ASSERT_EQ(name(), "filter_state");
    QTest::keyClick(focus(), Qt::Key_W);
    EXPECT_EQ(place->board().board().shown, 1);
    EXPECT_EQ(name(), "filter_state") << "one stays at the choice";
    press(Qt::Key_Escape);
    EXPECT_TRUE(place->board().hasFocus());
    pressWith(Qt::Key_Backspace);
    EXPECT_EQ(place->board().board().shown, all);
    pressWith(Qt::Key_G);
    ASSERT_EQ(name(), "filter_group");
    press(Qt::Key_Down);
    EXPECT_EQ(place->board().board().group(), BoardGroup::Kind);
    press(Qt::Key_Escape);
    EXPECT_TRUE(place->board().hasFocus());
    pressWith(Qt::Key_L);
    ASSERT_TRUE(place->counts().hasFocus());
    press(Qt::Key_Return);
    EXPECT_TRUE(place->board().board().filter.narrows());
    press(Qt::Key_Escape);
    EXPECT_TRUE(place->board().hasFocus());
    // Each key is said where one looks for it.
    for (const char* key : {"Ctrl+F", "Ctrl+G", "Ctrl+L", "Ctrl+Backspace"})
        EXPECT_TRUE(place->help().contains(QLatin1String(key))) << key;
    EXPECT_EQ(place->hints().front().key, QStringLiteral("Ctrl+F"));
    EXPECT_TRUE(place->findChild<QWidget*>(QStringLiteral("filter_group"))
                    ->toolTip()
                    .contains(QStringLiteral("Ctrl+G")));
}

TEST_F(BenchEvening, ChosenBoxesAreJudgedAtOnceAndTakenBackInOneStep) {
    QTest::keyClick(focus(), Qt::Key_Down, Qt::ShiftModifier);
    QTest::keyClick(focus(), Qt::Key_Down, Qt::ShiftModifier);
    ASSERT_EQ(place->board().selectedCount(), 3);
    const auto steps = session.season().history().size();
    type(QStringLiteral("5"));
    EXPECT_EQ(session.season().history().size(), steps) << "first it says what that would do";
    EXPECT_TRUE(session.lastTold().contains(QStringLiteral("27 frames of 3 boxes")))
        << session.lastTold().toStdString();
    type(QStringLiteral("5"));
    EXPECT_EQ(session.season().history().size(), steps + 1);
    for (const char* name : {"M01", "M02", "M03"})
        for (const Frame& frame : session.read().where<Frame>({is("box", box(name).id)}))
            EXPECT_EQ(frame.verdict, Verdict::Freeze) << name;
    QTest::keyClick(window.get(), Qt::Key_Z, Qt::ControlModifier);
    for (const Frame& frame : session.read().where<Frame>({is("box", box("M02").id)}))
        EXPECT_FALSE(frame.verdict);
}

TEST_F(BenchEvening, ALineThatCannotBeReadStaysTypedAndChangesNothing) {
    const auto steps = session.season().history().size();
    type(QStringLiteral("7 keep, 1 purple"));
    EXPECT_TRUE(place->bench()
                    .findChild<QLabel*>(QStringLiteral("bench_echo"))
                    ->text()
                    .contains(QStringLiteral("purple")));
    press(Qt::Key_Return);
    EXPECT_EQ(place->bench().line().text(), QStringLiteral("7 keep, 1 purple"));
    EXPECT_EQ(session.season().history().size(), steps);
    EXPECT_EQ(mark(), "M01");
    press(Qt::Key_Escape);
    EXPECT_TRUE(place->board().hasFocus());
    EXPECT_EQ(place->bench().line().text(), QString());
}

TEST_F(BenchEvening, ALineHalfTypedStaysWithItsBoxUntilItIsKeptOrLeft) {
    const auto held = [&] { return session.drafts().of(QStringLiteral("bench")); };
    type(QStringLiteral("7 keep, 1 w"));
    ASSERT_EQ(held().size(), 1U) << "a crash cannot take it";
    place->board().setFocus();
    press(Qt::Key_Down);
    EXPECT_EQ(place->bench().line().text(), QString()) << "it is no other box's line";
    press(Qt::Key_Up);
    EXPECT_TRUE(place->bench()
                    .findChild<QLabel*>(QStringLiteral("bench_alarm"))
                    ->text()
                    .contains(QStringLiteral("7 keep, 1 w")));
    press(Qt::Key_Return);
    EXPECT_EQ(place->bench().line().text(), QStringLiteral("7 keep, 1 w")) << "taken up again";
    press(Qt::Key_Return);
    EXPECT_TRUE(held().empty()) << "kept";
    type(QStringLiteral("9 keep"));
    press(Qt::Key_Escape);
    EXPECT_TRUE(held().empty()) << "left by Escape";
}

TEST_F(BenchEvening, AtTwiceTheTextTheHeadStillSaysAllOfIt) {
    auto* head = window->findChild<PlaceHeadBar*>();
    ASSERT_NE(head, nullptr);
    const int high = head->height();
    QTest::keyClick(focus(), Qt::Key_A, Qt::ControlModifier);
    EXPECT_TRUE(head->showsAll());
    EXPECT_EQ(head->height(), high) << "choosing moves nothing";
    setTextSize(2.0);
    QApplication::processEvents();
    EXPECT_TRUE(head->showsAll());
    EXPECT_GT(head->height(), 2 * high) << "the number has a line of its own";
    EXPECT_LT(head->button()->geometry().bottom(), head->height() / 2) << "level with the title";
}

TEST_F(BenchEvening, TabGoesRoundAndIsNeverTrapped) {
    std::set<QWidget*> met;
    for (int i = 0; i < 60; ++i) {
        QTest::keyClick(focus(), Qt::Key_Tab);
        ASSERT_NE(focus(), nullptr);
        met.insert(focus());
    }
    EXPECT_TRUE(met.contains(&place->board()));
    EXPECT_TRUE(met.contains(&place->counts()));
    EXPECT_TRUE(met.contains(&place->bench().line()));
    for (const char* name : {"open_work", "open_freezer", "open_wets", "open_dead_outs",
                             "open_stock_take", "open_plan", "open_fit"})
        EXPECT_TRUE(met.contains(place->findChild<QWidget*>(QLatin1String(name)))) << name;
}

}  // namespace
}  // namespace combwright
