// The season book's charts by keyboard: from mark to mark and series to series, their sentence,
// their table, their records, other years beside them, and every one of them as a file.
#include "ui/season_book/year_charts.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QClipboard>
#include <QFile>
#include <QImage>
#include <QTest>

#include "tests/support/book_season.h"
#include "tests/support/in_window.h"
#include "ui/season_book/season_book_place.h"
#include "ui/yard/yard_place.h"

namespace combwright {
namespace {

/// The three years of the book with washes, weighings and looks in them.
std::string chartYears() {
    std::string script = test::bookYears();
    const auto wash = [&](const char* hive, const char* on, int mites) {
        script += test::bookLine("record-finding", on,
                                 R"("hive":")" + std::string(hive) +
                                     R"(","what":"varroa","method":"wash","bees":300,"mites":)" +
                                     std::to_string(mites));
    };
    wash("H1", "2027-05-10", 2);
    wash("H1", "2027-06-09", 11);
    wash("H1", "2027-09-20", 1);
    wash("C1", "2027-06-12", 4);
    wash("C1", "2027-08-20", 8);
    wash("H3", "2027-08-21", 3);
    script += test::bookLine("weigh-hive", "2027-10-01", R"("hive":"H2","whole_g":31000)");
    script += test::bookLine("write-line", "2027-05-10", R"("hive":"H1","line":"b7 s3")");
    return script;
}

class TheYearsCharts : public test::WindowTest {
  protected:
    void SetUp() override {
        clock.set("2027-11-20");
        openWindow(chartYears());
        book = goToPlace<SeasonBookPlace>(6);
        ASSERT_NE(book, nullptr);
        QApplication::processEvents();
    }
    static void press(int key) {
        QTest::keyClick(QApplication::focusWidget(), static_cast<Qt::Key>(key));
    }
    YearCharts& charts() const { return book->yearCharts(); }
    MarkChartView& chart() const { return charts().pane().chart(); }
    /// By Tab from the place's first control, as somebody without a mouse comes to it.
    void tabTo(QWidget* wanted) {
        for (int n = 0; n < 60 && QApplication::focusWidget() != wanted; ++n) press(Qt::Key_Tab);
        ASSERT_EQ(QApplication::focusWidget(), wanted);
    }
    void chooseIn(QComboBox& box, const QString& text) {
        box.setFocus();
        const int to = box.findText(text);
        ASSERT_GE(to, 0);
        while (box.currentIndex() < to) press(Qt::Key_Down);
        while (box.currentIndex() > to) press(Qt::Key_Up);
        QApplication::processEvents();
    }
    QByteArray written(const char* name) {
        EXPECT_TRUE(book->exportTo(QString::fromStdString(path(name))));
        QFile file(QString::fromStdString(path(name)));
        EXPECT_TRUE(file.open(QIODevice::ReadOnly));
        return file.readAll();
    }

    SeasonBookPlace* book = nullptr;
};

TEST_F(TheYearsCharts, ArrowsGoFromMarkToMarkAndSeriesToSeries) {
    tabTo(&chart());
    EXPECT_EQ(chart().current(), (ChartMark{0, 0}));
    EXPECT_EQ(chart().accessibleDescription(),
              QStringLiteral("H1 on Mon 10 May 2027: 2 of 300, 0.7 in 100 bees (between 0.1 and "
                             "2.4)."));
    EXPECT_EQ(chart().view().said, chart().accessibleDescription()) << "seen as well as heard";
    press(Qt::Key_Right);
    EXPECT_EQ(chart().current(), (ChartMark{0, 1}));
    EXPECT_TRUE(chart().accessibleDescription().endsWith(QStringLiteral("; over the line.")));
    press(Qt::Key_Down);
    EXPECT_EQ(chart().current(), (ChartMark{1, 0})) << "the nearest day of the next hive";
    press(Qt::Key_End);
    EXPECT_EQ(chart().current(), (ChartMark{1, 1}));
    press(Qt::Key_Down);
    press(Qt::Key_Down);
    EXPECT_EQ(chart().current(), (ChartMark{2, 0})) << "and no further";
    press(Qt::Key_Left);
    EXPECT_EQ(chart().current(), (ChartMark{2, 0}));
    press(Qt::Key_Up);
    press(Qt::Key_Home);
    EXPECT_EQ(chart().current(), (ChartMark{1, 0}));
    press(Qt::Key_Tab);
    EXPECT_NE(QApplication::focusWidget(), &chart()) << "never a trap";
    EXPECT_TRUE(chart().accessibleDescription().startsWith(QStringLiteral("Mites 2027, ")))
        << "the whole chart while nobody is at a mark";
}

TEST_F(TheYearsCharts, TShowsTheSameNumbersAsATable) {
    tabTo(&chart());
    press(Qt::Key_Down);
    press(Qt::Key_T);
    QTableWidget& table = charts().pane().table();
    ASSERT_TRUE(charts().pane().tableShown());
    EXPECT_EQ(QApplication::focusWidget(), &table);
    EXPECT_FALSE(book->timeline().tableShown()) << "only the one the person is at";
    EXPECT_EQ(table.currentRow(), 3) << "at the same mark";
    EXPECT_EQ(table.item(3, 0)->text(), QStringLiteral("C1"));
    EXPECT_EQ(table.item(3, 7)->text(), QStringLiteral("1.3"));
    QTest::keyClick(&table, Qt::Key_Down, Qt::ShiftModifier);
    QTest::keyClick(&table, Qt::Key_C, Qt::ControlModifier);
    const QStringList copied = QApplication::clipboard()->text().split(QLatin1Char('\n'));
    ASSERT_EQ(copied.size(), 3) << "the heads and two rows";
    EXPECT_TRUE(copied[1].startsWith(QStringLiteral("C1\tCreek\t2027-06-12\t")));
    press(Qt::Key_T);
    EXPECT_EQ(chart().current(), (ChartMark{1, 1})) << "and back at that row's";
}

TEST_F(TheYearsCharts, AMarkIsExplained) {
    tabTo(&chart());
    press(Qt::Key_Right);
    std::vector<Explained> figures = book->explained();
    ASSERT_FALSE(figures.empty());
    EXPECT_EQ(figures.front().what, QStringLiteral("Mites in H1"));
    EXPECT_TRUE(figures.front().answer.startsWith(QStringLiteral("3.7 in 100 bees, between 1.8")))
        << figures.front().answer.toStdString();
    ASSERT_FALSE(figures.front().working.steps.empty());
    EXPECT_EQ(figures.front().working.steps.front().value, 11);
    chooseIn(charts().choice(), QStringLiteral("Weights"));
    tabTo(&chart());
    figures = book->explained();
    ASSERT_FALSE(figures.empty());
    EXPECT_EQ(figures.front().what, QStringLiteral("H2 on the scale, Fri 1 Oct 2027"));
    chooseIn(charts().choice(), QStringLiteral("Brood"));
    tabTo(&chart());
    figures = book->explained();
    ASSERT_GT(figures.size(), 1U);
    EXPECT_TRUE(figures[0].what.startsWith(QStringLiteral("Frames of brood in ")))
        << figures[0].what.toStdString();
}

TEST_F(TheYearsCharts, EnterOpensTheHivesStory) {
    tabTo(&chart());
    press(Qt::Key_Down);
    press(Qt::Key_Return);
    auto* yard = qobject_cast<YardPlace*>(window->current());
    ASSERT_NE(yard, nullptr);
    ASSERT_TRUE(yard->board().currentHive());
    EXPECT_EQ(yard->board().currentHive()->mark, QStringLiteral("C1")) << "of the other yard";
}

TEST_F(TheYearsCharts, OneBoxChoosesWhatIsDrawnAndNothingIsNoChart) {
    QComboBox& box = charts().choice();
    box.setFocus();
    press(Qt::Key_Down);
    EXPECT_EQ(charts().chosen(), YearCharts::What::Weights);
    EXPECT_EQ(charts().chartBlock().series[0].end, QStringLiteral("H2 31.0 kg"));
    press(Qt::Key_Down);
    EXPECT_EQ(charts().chartBlock().title, QStringLiteral("Brood"));
    press(Qt::Key_Down);
    EXPECT_EQ(charts().chartBlock().title, QStringLiteral("Stores"));
    EXPECT_TRUE(charts().pane().isVisible());
    QComboBox& years = book->years();
    years.setFocus();
    while (years.currentData().toInt() > 2026) press(Qt::Key_Down);
    auto* note = charts().findChild<QLabel*>(QStringLiteral("year_chart_note"));
    EXPECT_FALSE(charts().pane().isVisible()) << "no empty axes";
    EXPECT_TRUE(note->text().startsWith(QStringLiteral("No frames of stores were written down")))
        << note->text().toStdString();
}

TEST_F(TheYearsCharts, EveryChartLeavesAsPictureDrawingAndRows) {
    tabTo(&chart());
    EXPECT_EQ(book->currentBlock(), SeasonBookPlace::BookBlock::Year);
    written("mites.png");
    const QImage picture(QString::fromStdString(path("mites.png")));
    EXPECT_EQ(picture.width(), 2 * 760) << "twice the size";
    const QByteArray svg = written("mites.svg");
    EXPECT_TRUE(svg.contains("<text"));
    EXPECT_TRUE(svg.contains("H1 11 in 300")) << "text stays text";
    const QByteArray csv = written("mites.csv");
    EXPECT_TRUE(csv.startsWith("hive,yard,day,until,what,mites,bees,in 100 bees,at least,at most,"))
        << csv.toStdString();
    EXPECT_TRUE(csv.contains("\r\nH1,Hill,2027-06-09,,wash,11,300,3.7,"));
    // The timeline as it is drawn.
    chooseIn(book->timeline().choice(), QStringLiteral("by yard, each"));
    EXPECT_EQ(book->currentBlock(), SeasonBookPlace::BookBlock::Timeline);
    EXPECT_TRUE(written("yards.svg").contains("Hill 63.2 kg"));
    EXPECT_TRUE(written("yards.csv").contains("\r\nHill,2027,2027-06-24,27-1,Hill,25.2,25200,"));
}

TEST_F(TheYearsCharts, TheTimelineIsDrawnByWhatIsChosen) {
    Timeline& timeline = book->timeline();
    chooseIn(timeline.choice(), QStringLiteral("by hive, added up"));
    tabTo(&timeline.pane().chart());
    EXPECT_EQ(timeline.pane().chartBlock().series[0].name, QStringLiteral("H1"));
    double sum = 0;
    for (const ChartBlock::Series& series : timeline.pane().chartBlock().series)
        if (!series.besideOf) sum += series.points.back().value;
    EXPECT_NEAR(sum, 88.8, 1e-6) << "all hives together are the year";
    press(Qt::Key_End);
    EXPECT_EQ(book->explained().front().what, QStringLiteral("Run 27-3: in the buckets"));
    press(Qt::Key_Return);
    EXPECT_EQ(book->records().records().name, "27-3");
    press(Qt::Key_Escape);
    EXPECT_EQ(QApplication::focusWidget(), &timeline.pane().chart()) << "back where one was";
    press(Qt::Key_T);
    EXPECT_TRUE(timeline.tableShown());
    EXPECT_EQ(QApplication::focusWidget(), &timeline.pane().table());
}

TEST_F(TheYearsCharts, YLaysMoreYearsBesideAndComesBack) {
    Timeline& timeline = book->timeline();
    timeline.chart().setFocus();
    EXPECT_EQ(timeline.chart().view().lines.size(), 2U);
    press(Qt::Key_Y);
    ASSERT_EQ(timeline.besides().size(), 2U);
    EXPECT_EQ(timeline.besides()[1].year, 2025);
    EXPECT_EQ(timeline.chart().view().lines.size(), 3U);
    press(Qt::Key_Y);
    EXPECT_EQ(timeline.besides().size(), 1U) << "there is no other: back to the one chosen";
}

TEST_F(TheYearsCharts, TheOtherYearsRunsAreReachedAndOpenToo) {
    Timeline& timeline = book->timeline();
    timeline.chart().setFocus();
    press(Qt::Key_Down);
    EXPECT_EQ(timeline.chart().view().currentLine, 1U);
    EXPECT_EQ(timeline.chart().accessibleDescription(),
              QStringLiteral("2026: 30 Jul Hill 25.0 kg"));
    press(Qt::Key_Return);
    EXPECT_EQ(book->records().records().name, "26-1");
    EXPECT_FALSE(book->records().records().empty());
    EXPECT_EQ(book->records().records().year, 2026);
}

TEST_F(TheYearsCharts, NothingIsClippedAtTwiceTheSize) {
    setTextSize(2.0);
    for (int n = 0; n < 6; ++n) QApplication::processEvents();
    EXPECT_GE(chart().height(), chart().minimumSizeHint().height());
    for (QLabel* label : charts().findChildren<QLabel*>()) {
        if (!label->isVisible() || label->text().isEmpty() || !label->wordWrap()) continue;
        EXPECT_GE(label->height() + 1, label->heightForWidth(label->width()))
            << label->text().toStdString();
    }
    setTextSize(1.0);
}

}  // namespace
}  // namespace combwright
