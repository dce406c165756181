// A table taken in through the window, by keyboard: kind guessed, questions answered in place,
// nothing kept before Keep, and one step back takes it out again.
#include "ui/shell/import/import_dialog.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QElapsedTimer>
#include <QMenu>
#include <QProgressBar>
#include <algorithm>
#include <functional>
#include <set>

#include "core/model/yard/weighing.h"
#include "tests/ui/shell/shell_season.h"

namespace combwright {
namespace {

using testing::HasSubstr;

class ImportsInTheWindow : public test::ShellTest {
  protected:
    void SetUp() override {
        ShellTest::SetUp();
        openSeason();
        made = std::make_unique<ImportDialog>(session, window.get());
        made->show();
        ASSERT_TRUE(QTest::qWaitForWindowActive(made.get()));
    }
    void TearDown() override { made.reset(); }
    QString write(const char* name, const QByteArray& text) const {
        QFile out(file(name));
        EXPECT_TRUE(out.open(QIODevice::WriteOnly));
        out.write(text);
        return file(name);
    }
    template <class Widget>
    Widget* in(const char* name) const {
        auto* found = named<Widget>(name, made.get());
        EXPECT_NE(found, nullptr) << name;
        return found;
    }
    /// Away from the window; the answer is waited for.
    bool settled() const {
        return QTest::qWaitFor([this] { return !made->isBusy(); }, 60'000);
    }
    bool look(const QString& path) const {
        made->look(path);
        return settled() && !made->plan().rows.empty();
    }
    /// The time the window's thread was away longest, ms, while `until` was waited for.
    static qint64 longestAway(const std::function<bool()>& until, int atMostMs) {
        QTimer tick;
        tick.setTimerType(Qt::PreciseTimer);
        QElapsedTimer since;
        qint64 longest = 0;
        QObject::connect(&tick, &QTimer::timeout, &tick,
                         [&] { longest = std::max(longest, since.restart()); });
        since.start();
        tick.start(10);
        (void)QTest::qWaitFor(until, atMostMs);
        return std::max(longest, since.elapsed());
    }
    /// Weighings of the two hives, day after day from the first.
    QString longTable(int rows) const {
        QByteArray text("Hive,Date,Weight kg\n");
        for (int row = 0; row < rows; ++row)
            text += (row % 2 ? "L2," : "L1,") +
                    QByteArray::fromStdString(isoText(test::day("1890-01-01") + days{row / 2})) +
                    ",41.5\n";
        return write("long.csv", text);
    }
    /// Two hives that stood there long before.
    void addOldHives() {
        playAll(session.season(), R"({"do":"add-yard","on":"1889-04-01","yard_name":"Old"}
{"do":"add-hive","on":"1889-04-10","yard":"Old","mark":"L1","boxes":"deep","origin":"overwintered"}
{"do":"add-hive","on":"1889-04-10","yard":"Old","mark":"L2","boxes":"deep","origin":"overwintered"}
)");
    }
    std::string summary() const { return in<QLabel>("import_summary")->text().toStdString(); }
    /// Down so often in a combo box that has the keyboard; each step counts as chosen.
    void choose(const char* combo, int down) const {
        auto* box = in<QComboBox>(combo);
        box->setFocus();
        for (int i = 0; i < down; ++i) QTest::keyClick(box, Qt::Key_Down);
        EXPECT_TRUE(settled());
    }
    std::size_t weighings() const { return session.read().all<HiveWeighing>().size(); }

    std::unique_ptr<ImportDialog> made;
};

TEST_F(ImportsInTheWindow, KindIsGuessedQuestionsAreAnsweredAndRowsKept) {
    ASSERT_TRUE(
        look(write("scale.csv", "Hive;Date;Weight kg\nH1;5/6/2027;41,25\nH2;4/6/2027;39\n")));
    EXPECT_EQ(in<QComboBox>("import_kind")->currentIndex(), static_cast<int>(ImportKind::Weights));
    EXPECT_THAT(in<QLabel>("import_found")->text().toStdString(), HasSubstr("semicolons"));
    EXPECT_FALSE(in<QPushButton>("import_keep")->isEnabled());
    EXPECT_THAT(summary(), HasSubstr("2 asked"));
    choose("import_ask_dates", 1);  // the day stands first
    EXPECT_THAT(summary(), HasSubstr("2 will be added"));
    EXPECT_EQ(made->plan().questions.size(), 0u);
    choose("import_ask_dates", 1);  // the month does: one is before the hives stood there
    EXPECT_THAT(summary(), HasSubstr("1 will be added, 0 already there, 1 refused"));
}

TEST_F(ImportsInTheWindow, NothingChangesBeforeKeepAndOneStepTakesItBack) {
    const std::string before = session.season().dump();
    ASSERT_TRUE(look(write("scale.csv",
                           "Hive,When weighed,Weight kg\nH1,2027-05-03,41.25\n"
                           "H2,2027-05-03,39\n")));
    choose("import_kind", 2);  // hives, boxes, weights
    EXPECT_THAT(in<QLabel>("import_found")->text().toStdString(), HasSubstr("Which column holds"));
    choose("import_column_1", 3);  // passed over, hive, yard, day
    EXPECT_THAT(summary(), HasSubstr("2 will be added"));
    auto* rows = in<QTableView>("import_rows");
    ASSERT_EQ(rows->model()->rowCount(), 2);
    EXPECT_EQ(rows->model()->index(0, 0).data().toString(), QStringLiteral("2"));
    EXPECT_EQ(rows->model()->index(0, 1).data().toString(), QStringLiteral("will be added"));
    EXPECT_EQ(session.season().dump(), before);
    auto* keep = in<QPushButton>("import_keep");
    ASSERT_TRUE(keep->isEnabled());
    keep->setFocus();
    QTest::keyClick(keep, Qt::Key_Space);
    ASSERT_TRUE(settled());
    EXPECT_EQ(made->result(), QDialog::Accepted);
    EXPECT_EQ(session.season().history(1).front().info.action, "import-rows");
    EXPECT_EQ(weighings(), 2u);
    EXPECT_THAT(session.lastTold().toStdString(), HasSubstr("2 rows of scale.csv"));
    session.undo();
    EXPECT_EQ(session.season().dump(), before);
}

TEST_F(ImportsInTheWindow, RefusedRowsAreSavedWhereTheGoodOnesAreKept) {
    ASSERT_TRUE(
        look(write("scale.csv", "Hive,Date,Weight kg\nH1,2027-05-03,41\nH9,2027-05-03,39\n")));
    EXPECT_FALSE(in<QPushButton>("import_keep")->isEnabled());
    auto* goodOnly = in<QCheckBox>("import_good_only");
    ASSERT_TRUE(goodOnly->isVisible());
    goodOnly->setFocus();
    QTest::keyClick(goodOnly, Qt::Key_Space);
    ASSERT_TRUE(in<QPushButton>("import_keep")->isEnabled());
    answerFileDialog(file("refused.csv"));
    QTest::keyClick(in<QPushButton>("import_keep"), Qt::Key_Space);
    ASSERT_TRUE(settled());
    EXPECT_EQ(weighings(), 1u);
    EXPECT_THAT(bytes(file("refused.csv")).toStdString(), HasSubstr("H9,2027-05-03,39,3,hive,"));
}

/// A hundred thousand rows: the window answers while they are looked at, and given up in the midst
/// they leave nothing.
TEST_F(ImportsInTheWindow, ALongTableDoesNotHoldTheWindow) {
    addOldHives();
    const std::string before = session.season().dump();
    const QString path = longTable(100'000);
    // Of a machine that is busy with something else, the best of three.
    qint64 longest = 0;
    for (int attempt = 0; attempt < 3; ++attempt) {
        made->look(path);
        EXPECT_TRUE(made->isBusy());
        longest = longestAway([this] { return !made->isBusy(); }, 2500);
        EXPECT_TRUE(made->isBusy()) << "it is still at work";
        EXPECT_TRUE(in<QProgressBar>("import_progress")->isVisible()) << "and says so";
        EXPECT_FALSE(in<QPushButton>("import_keep")->isEnabled());
        if (longest <= 100) break;
    }
    EXPECT_LE(longest, 100);
    QElapsedTimer stopping;
    stopping.start();
    QTest::keyClick(made.get(), Qt::Key_Escape);
    made.reset();
    EXPECT_LE(stopping.elapsed(), 1000);
    EXPECT_EQ(session.season().dump(), before);
}

TEST_F(ImportsInTheWindow, KeepingIsStoppedInTheMidstAndLeavesNothing) {
    addOldHives();
    const std::string before = session.season().dump();
    const auto steps = session.season().history().size();
    ASSERT_TRUE(look(longTable(1500)));
    auto* keep = in<QPushButton>("import_keep");
    ASSERT_TRUE(keep->isEnabled()) << summary();
    keep->setFocus();
    QTest::keyClick(keep, Qt::Key_Space);
    ASSERT_TRUE(made->isBusy());
    EXPECT_FALSE(keep->isEnabled());
    EXPECT_FALSE(in<QComboBox>("import_kind")->isEnabled()) << "the plan stays what it is";
    const qint64 longest = longestAway([] { return false; }, 100);
    QTest::keyClick(made.get(), Qt::Key_Escape);
    EXPECT_TRUE(made->isVisible()) << "it stays open to say so";
    ASSERT_TRUE(settled());
    EXPECT_TRUE(made->isVisible());
    EXPECT_THAT(summary(), HasSubstr("Stopped, as was asked. Nothing was changed."));
    EXPECT_EQ(session.season().dump(), before);
    EXPECT_EQ(session.season().history().size(), steps);
    EXPECT_LE(longest, 100);
    // The same plan is kept after all, and one step back takes it out again.
    ASSERT_TRUE(keep->isEnabled());
    keep->setFocus();
    QTest::keyClick(keep, Qt::Key_Space);
    ASSERT_TRUE(settled());
    EXPECT_EQ(weighings(), 1500u);
    EXPECT_EQ(session.season().history().size(), steps + 1);
    EXPECT_THAT(session.lastTold().toStdString(), HasSubstr("1500 rows of long.csv"));
    session.undo();
    EXPECT_EQ(session.season().dump(), before);
}

TEST_F(ImportsInTheWindow, EveryControlIsReachedByTab) {
    ASSERT_TRUE(look(write("scale.csv", "Hive;Date;Weight\nH1;3/4/2027;41,25\nH2;3/5/2027;39\n")));
    QCoreApplication::processEvents();  // what was just laid out is shown
    std::set<QString> met;
    const auto* first = in<QPushButton>("import_choose");
    for (const QWidget* at = first->nextInFocusChain(); at != first; at = at->nextInFocusChain())
        if (at->isVisible() && at->isEnabled() && (at->focusPolicy() & Qt::TabFocus) != 0)
            met.insert(at->objectName());
    for (const char* name : {"import_kind", "import_column_0", "import_column_2",
                             "import_ask_dates", "import_ask_unit", "import_rows"})
        EXPECT_TRUE(met.contains(QLatin1String(name))) << name;
    for (const QComboBox* each : made->findChildren<QComboBox*>()) {
        EXPECT_FALSE(each->accessibleName().isEmpty()) << each->objectName().toStdString();
    }
}

TEST_F(ImportsInTheWindow, TheWholeSeasonGoesOutAndComesBackInANewFile) {
    made->hide();
    answerFileDialog(file("tables"));
    ASSERT_TRUE(window->files().writeWhole());
    EXPECT_TRUE(QFile::exists(file("tables/season.json")));
    const std::string dump = session.season().dump();
    answerFileDialog(file("tables/season.json"));
    QTimer::singleShot(200, window.get(), [this] { answerFileDialog(file("again")); });
    window->files().makeFromJson();
    EXPECT_EQ(session.path(), file("again.combwright"));
    EXPECT_EQ(session.season().dump(), dump);
}

TEST_F(ImportsInTheWindow, CtrlIOffersWhatComesInAndGoesOut) {
    made->hide();
    QStringList offered;
    auto* timer = new QTimer(window.get());
    QObject::connect(timer, &QTimer::timeout, timer, [&offered, timer] {
        auto* menu = qobject_cast<QMenu*>(QApplication::activePopupWidget());
        if (!menu) return;
        for (const QAction* action : menu->actions())
            if (action->isEnabled() && !action->isSeparator()) offered << action->objectName();
        timer->stop();
        menu->close();
    });
    timer->start(10);
    key(Qt::Key_I, Qt::ControlModifier);
    EXPECT_EQ(offered.join(QLatin1Char(' ')).toStdString(),
              "import_table write_whole photos_of_day write_calendar from_json for_helpers");
}

}  // namespace
}  // namespace combwright
