// A table taken in through the window, by keyboard: kind guessed, questions answered in place,
// nothing kept before Keep, and one step back takes it out again.
#include "ui/shell/import/import_dialog.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QMenu>
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
    std::string summary() const { return in<QLabel>("import_summary")->text().toStdString(); }
    /// Down so often in a combo box that has the keyboard; each step counts as chosen.
    void choose(const char* combo, int down) const {
        auto* box = in<QComboBox>(combo);
        box->setFocus();
        for (int i = 0; i < down; ++i) QTest::keyClick(box, Qt::Key_Down);
    }
    std::size_t weighings() const { return session.read().all<HiveWeighing>().size(); }

    std::unique_ptr<ImportDialog> made;
};

TEST_F(ImportsInTheWindow, KindIsGuessedQuestionsAreAnsweredAndRowsKept) {
    ASSERT_TRUE(
        made->look(write("scale.csv", "Hive;Date;Weight kg\nH1;5/6/2027;41,25\nH2;4/6/2027;39\n")));
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
    ASSERT_TRUE(made->look(write("scale.csv",
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
    EXPECT_EQ(made->result(), QDialog::Accepted);
    EXPECT_EQ(weighings(), 2u);
    EXPECT_THAT(session.lastTold().toStdString(), HasSubstr("2 rows of scale.csv"));
    session.undo();
    EXPECT_EQ(session.season().dump(), before);
}

TEST_F(ImportsInTheWindow, RefusedRowsAreSavedWhereTheGoodOnesAreKept) {
    ASSERT_TRUE(made->look(
        write("scale.csv", "Hive,Date,Weight kg\nH1,2027-05-03,41\nH9,2027-05-03,39\n")));
    EXPECT_FALSE(in<QPushButton>("import_keep")->isEnabled());
    auto* goodOnly = in<QCheckBox>("import_good_only");
    ASSERT_TRUE(goodOnly->isVisible());
    goodOnly->setFocus();
    QTest::keyClick(goodOnly, Qt::Key_Space);
    ASSERT_TRUE(in<QPushButton>("import_keep")->isEnabled());
    answerFileDialog(file("refused.csv"));
    QTest::keyClick(in<QPushButton>("import_keep"), Qt::Key_Space);
    EXPECT_EQ(weighings(), 1u);
    EXPECT_THAT(bytes(file("refused.csv")).toStdString(), HasSubstr("H9,2027-05-03,39,3,hive,"));
}

TEST_F(ImportsInTheWindow, EveryControlIsReachedByTab) {
    ASSERT_TRUE(
        made->look(write("scale.csv", "Hive;Date;Weight\nH1;3/4/2027;41,25\nH2;3/5/2027;39\n")));
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
