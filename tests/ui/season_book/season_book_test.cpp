// The season book by keyboard: years, blocks, records behind a number, what is taken for the next
// season, files and prints, in both units, at large type and in years without honey.
#include <gtest/gtest.h>

#include <QApplication>
#include <QComboBox>
#include <QFile>
#include <QPrintPreviewDialog>
#include <QPrintPreviewWidget>
#include <QPrinter>
#include <QPushButton>
#include <QTest>
#include <QTimer>

#include "core/model/season_info.h"
#include "core/storage/queries/constants.h"
#include "tests/support/book_season.h"
#include "tests/support/in_window.h"
#include "ui/look/style.h"
#include "ui/season_book/season_book_place.h"

namespace combwright {
namespace {

class InTheSeasonBook : public test::WindowTest {
  protected:
    void SetUp() override {
        clock.set("2027-11-20");
        openWindow(test::bookYears());
        book = goToPlace<SeasonBookPlace>(6);
        ASSERT_NE(book, nullptr);
        QApplication::processEvents();
    }
    void TearDown() override { setShownUnits(Units::Metric); }
    static Look look(double factor) {
        return applyLook(*qobject_cast<QApplication*>(QApplication::instance()), false, factor);
    }
    static void press(int key, Qt::KeyboardModifiers with = Qt::NoModifier) {
        QTest::keyClick(QApplication::focusWidget(), static_cast<Qt::Key>(key), with);
    }
    void chooseYear(int year) {
        QComboBox& years = book->years();
        years.setFocus();
        while (years.currentData().toInt() > year) press(Qt::Key_Down);
        while (years.currentData().toInt() < year) press(Qt::Key_Up);
        ASSERT_EQ(years.currentData().toInt(), year);
        ASSERT_EQ(book->year(), year);
    }
    QString fileText(const char* name) const {
        QFile file(QString::fromStdString(path(name)));
        EXPECT_TRUE(file.open(QIODevice::ReadOnly));
        return QString::fromUtf8(file.readAll());
    }
    QString exported(const char* name) {
        EXPECT_TRUE(book->exportTo(QString::fromStdString(path(name))))
            << session.lastTold().toStdString();
        return fileText(name);
    }
    double fullFrameIn(const char* day) {
        return constantOr(session.read(), "full_frame_g LANG-F-MED", std::nullopt, test::day(day),
                          0);
    }
    /// What is wider than its page, or words that do not fit their label.
    void expectNothingClipped() const {
        // Each round lets one more of the nested layouts settle.
        for (int n = 0; n < 6; ++n) QApplication::processEvents();
        for (QScrollArea* area : book->findChildren<QScrollArea*>())
            EXPECT_LE(area->widget()->width(), area->viewport()->width()) << "scrolls sideways";
        for (QLabel* label : book->findChildren<QLabel*>()) {
            if (!label->isVisible() || label->text().isEmpty()) continue;
            const int needs = label->wordWrap() ? label->heightForWidth(label->width())
                                                : label->sizeHint().height();
            EXPECT_GE(label->height() + 1, needs) << label->text().toStdString();
            if (label->wordWrap()) continue;
            EXPECT_GE(label->width() + 1, label->sizeHint().width()) << label->text().toStdString();
        }
        for (QPushButton* button : book->findChildren<QPushButton*>())
            EXPECT_TRUE(!button->isVisible() ||
                        button->width() + 1 >= button->minimumSizeHint().width())
                << button->text().toStdString();
    }

    SeasonBookPlace* book = nullptr;
};

TEST_F(InTheSeasonBook, OpensAtTheNewestHarvestWithTheYearBeforeBesideIt) {
    EXPECT_EQ(book->year(), 2027);
    EXPECT_EQ(book->besides().currentData().toInt(), 2026);
    EXPECT_EQ(book->head().big.figure, QStringLiteral("88.8"));
    EXPECT_TRUE(book->sentence().contains(QStringLiteral("51.0 more than the year before")))
        << book->sentence().toStdString();
    EXPECT_EQ(QApplication::focusWidget(), &book->yields());
}

TEST_F(InTheSeasonBook, AYearBesideWithoutFiguresTakesNoColumn) {
    EXPECT_FALSE(book->yields().isColumnHidden(YieldModel::BeforeColumn));
    chooseYear(2025);
    EXPECT_TRUE(book->yields().isColumnHidden(YieldModel::BeforeColumn));
}

TEST_F(InTheSeasonBook, YearsAreChosenByKeyboardAndComparedAsOneLikes) {
    chooseYear(2025);
    EXPECT_TRUE(book->sentence().contains(QStringLiteral("noted from paper")));
    EXPECT_FALSE(book->timeline().isVisible()) << "no chart where no day is known";
    chooseYear(2027);
    QComboBox& besides = book->besides();
    besides.setFocus();
    while (besides.currentData().toInt() > 2025) press(Qt::Key_Down);
    EXPECT_TRUE(book->sentence().contains(QStringLiteral("more than in 2025")))
        << book->sentence().toStdString();
    EXPECT_EQ(book->timeline().chart().view().lines.size(), 2U);
    EXPECT_GT(book->timeline().chart().view().lines[1].rest, 0) << "from paper, on no day";
}

TEST_F(InTheSeasonBook, AYearWithoutHoneySaysWhatToDoFirst) {
    clock.set("2029-03-01");
    book->reload();
    chooseYear(2029);
    EXPECT_TRUE(book->sentence().contains(QStringLiteral("No honey was written down in 2029")));
    auto* first = book->findChild<QLabel*>(QStringLiteral("what_first"));
    ASSERT_NE(first, nullptr);
    EXPECT_TRUE(first->isVisible());
    EXPECT_TRUE(first->text().contains(QStringLiteral("Ctrl+4")));
    EXPECT_FALSE(book->timeline().isVisible());
    EXPECT_FALSE(book->yields().isVisible());
    // What would stand there says what goes there.
    for (const char* name : {"no_timeline", "no_reckoned", "year_chart_note"}) {
        auto* instead = book->findChild<QLabel*>(QLatin1String(name));
        ASSERT_NE(instead, nullptr) << name;
        EXPECT_TRUE(instead->isVisible()) << name;
        EXPECT_TRUE(instead->text().contains(QStringLiteral("2029")))
            << instead->text().toStdString();
    }
    EXPECT_TRUE(book->yearCharts().isVisible());
    EXPECT_TRUE(book->explained().empty());
    window->goTo(6);
    EXPECT_EQ(QApplication::focusWidget(), &book->years()) << "somewhere one can go on from";
    press(Qt::Key_P);
    press(Qt::Key_E);
    press(Qt::Key_1);
    EXPECT_EQ(QApplication::activeModalWidget(), nullptr);
}

TEST_F(InTheSeasonBook, TabGoesThroughItsBlocksAndOut) {
    std::vector<QWidget*> seen;
    for (int n = 0; n < 40; ++n) {
        press(Qt::Key_Tab);
        seen.push_back(QApplication::focusWidget());
    }
    for (QWidget* wanted : std::initializer_list<QWidget*>{
             &book->timeline().chart(), book->reckoned().button(0), book->reckoned().button(2),
             &book->yields(), &book->years(), &book->besides()})
        EXPECT_NE(std::find(seen.begin(), seen.end(), wanted), seen.end())
            << wanted->objectName().toStdString();
    seen.clear();
    for (int n = 0; n < 40; ++n) {
        press(Qt::Key_Backtab, Qt::ShiftModifier);
        seen.push_back(QApplication::focusWidget());
    }
    EXPECT_NE(std::find(seen.begin(), seen.end(), &book->timeline().chart()), seen.end());
    EXPECT_NE(std::find(seen.begin(), seen.end(), &book->years()), seen.end());
}

TEST_F(InTheSeasonBook, EnterOpensTheRecordsOfARowAndEscGoesBack) {
    press(Qt::Key_Down);  // from the yard to H1
    ASSERT_EQ(book->yields().current()->name, QStringLiteral("H1"));
    press(Qt::Key_Return);
    EXPECT_EQ(QApplication::focusWidget(), &book->records().table());
    EXPECT_EQ(book->records().records().name, "H1");
    EXPECT_EQ(book->records().table().rowCount(), 4) << "two runs with a box each";
    EXPECT_EQ(book->records().table().item(1, 3)->text(), QStringLiteral("19.5 w"));
    ASSERT_FALSE(book->explained().empty());
    EXPECT_EQ(book->explained().front().what, QStringLiteral("H1: honey in 2027"));
    press(Qt::Key_Return);  // the run it was in
    EXPECT_TRUE(book->records().records().of.run);
    press(Qt::Key_Escape);
    EXPECT_EQ(QApplication::focusWidget(), &book->yields());
    EXPECT_FALSE(book->records().isVisible());
}

TEST_F(InTheSeasonBook, ArrowsGoFromRunToRunAndTShowsTheTable) {
    book->timeline().chart().setFocus();
    press(Qt::Key_Right);
    EXPECT_EQ(book->timeline().chart().view().current, 1U);
    EXPECT_EQ(book->explained().front().what, QStringLiteral("Run 27-2: in the buckets"));
    press(Qt::Key_Return);
    EXPECT_EQ(book->records().records().name, "27-2");
    press(Qt::Key_Escape);
    EXPECT_EQ(QApplication::focusWidget(), &book->timeline().chart());
    press(Qt::Key_T);
    EXPECT_TRUE(book->timeline().tableShown());
    EXPECT_EQ(QApplication::focusWidget(), &book->timeline().table());
    EXPECT_EQ(book->timeline().table().rowCount(), 5) << "three runs and two of the year beside it";
    press(Qt::Key_Down);
    press(Qt::Key_Return);
    EXPECT_EQ(book->records().records().name, "27-2");
    press(Qt::Key_Escape);
    press(Qt::Key_T);
    EXPECT_FALSE(book->timeline().tableShown());
}

TEST_F(InTheSeasonBook, TakesAValueForTheNextSeasonAndTakesItBack) {
    EXPECT_TRUE(book->reckoned().note().contains(QStringLiteral("Your 1.36 was 1.60 × 85 % full")))
        << book->reckoned().note().toStdString();
    EXPECT_TRUE(book->reckoned().note().contains(QStringLiteral("Nothing changes until")));
    press(Qt::Key_1);
    EXPECT_DOUBLE_EQ(fullFrameIn("2027-12-31"), 1600);
    EXPECT_DOUBLE_EQ(fullFrameIn("2028-06-01"), 1880);
    EXPECT_TRUE(session.lastTold().contains(QStringLiteral("1.88 kg")))
        << session.lastTold().toStdString();
    EXPECT_EQ(book->reckoned().button(0)->text(), QStringLiteral("taken"));
    EXPECT_TRUE(book->reckoned().note().contains(QStringLiteral("Taken: 1.88 kg from")));
    press(Qt::Key_1);  // once is enough
    EXPECT_EQ(session.read().where<Constant>({{"name", "full_frame_g LANG-F-MED"}}).size(), 2U);
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_DOUBLE_EQ(fullFrameIn("2028-06-01"), 1600);
    EXPECT_TRUE(book->reckoned().button(0)->text().startsWith(QStringLiteral("take for")));
    // The same by its button, which keeps the focus.
    book->reckoned().button(2)->setFocus();
    EXPECT_EQ(book->explained().front().what, QStringLiteral("Cappings of the honey: reckoned"));
    press(Qt::Key_Space);
    EXPECT_EQ(book->reckoned().button(2)->text(), QStringLiteral("taken"));
    EXPECT_EQ(QApplication::focusWidget(), book->reckoned().button(2));
    EXPECT_NEAR(constantOr(session.read(), "cappings_honey_share", std::nullopt,
                           test::day("2028-05-01"), 0),
                0.106, 1e-9)
        << "of all runs so far: 0.118, 0.104, 0.104, 0.101, 0.102 by what each weighed";
}

TEST_F(InTheSeasonBook, EachBlockLeavesAsPictureDrawingAndTable) {
    const auto all = [&](const char* png, const char* svg, const char* csv) {
        EXPECT_TRUE(book->exportTo(QString::fromStdString(path(png))));
        QImage picture(QString::fromStdString(path(png)));
        EXPECT_GT(picture.width(), 1000) << png;
        EXPECT_TRUE(exported(svg).contains(QStringLiteral("<text"))) << "text stays text";
        return exported(csv);
    };
    EXPECT_TRUE(all("y.png", "y.svg", "y.csv").startsWith(QStringLiteral("yard,hive,2027 (kg)")));
    book->timeline().chart().setFocus();
    EXPECT_TRUE(all("t.png", "t.svg", "t.csv").startsWith(QStringLiteral("year,day,lot,yard")));
    book->reckoned().button(0)->setFocus();
    EXPECT_TRUE(all("r.png", "r.svg", "r.csv").contains(QStringLiteral("full_frame_g LANG-F-MED")));
    book->yields().setFocus();
    press(Qt::Key_Return);
    EXPECT_TRUE(all("b.png", "b.svg", "b.csv").startsWith(QStringLiteral("day,run,yard,box")));
    EXPECT_FALSE(book->exportTo(QStringLiteral("/no such folder/x.csv")));
    EXPECT_TRUE(session.lastTold().contains(QStringLiteral("Choose another place")));
}

TEST_F(InTheSeasonBook, PrintsABlockAfterAPreviewWithAChoiceOfPaper) {
    bool previewed = false;
    QTimer::singleShot(0, [&] {
        auto* preview = qobject_cast<QPrintPreviewDialog*>(QApplication::activeModalWidget());
        ASSERT_NE(preview, nullptr);
        auto* paper = preview->findChild<QComboBox*>(QStringLiteral("paper"));
        ASSERT_NE(paper, nullptr);
        auto* print = preview->findChild<QPushButton*>(QStringLiteral("print_now"));
        ASSERT_NE(print, nullptr);
        preview->resize(1000, 700);
        QApplication::processEvents();
        for (const QWidget* each : std::initializer_list<QWidget*>{
                 print, paper, preview->findChild<QWidget*>(QStringLiteral("save_pdf"))}) {
            EXPECT_TRUE(each->isVisible());
            EXPECT_LE(each->mapTo(preview, each->rect().topRight()).x(), 1000);
        }
        EXPECT_EQ(preview->findChild<QPrintPreviewWidget*>()->zoomMode(),
                  QPrintPreviewWidget::FitToWidth);
        paper->setFocus();
        QTest::keyClick(paper, Qt::Key_Down);
        EXPECT_EQ(preview->printer()->pageLayout().pageSize().id(), QPageSize::Letter);
        QTest::keyClick(paper, Qt::Key_Up);
        EXPECT_EQ(preview->printer()->pageLayout().pageSize().id(), QPageSize::A4);
        previewed = true;
        preview->reject();
    });
    press(Qt::Key_P);
    EXPECT_TRUE(previewed);
}

TEST_F(InTheSeasonBook, EverythingIsShownInPounds) {
    press(Qt::Key_U, Qt::ControlModifier);
    EXPECT_EQ(book->head().big.unit, QStringLiteral("lb"));
    EXPECT_EQ(book->timeline().chart().view().axis, QStringLiteral("lb in buckets, added up"));
    EXPECT_FALSE(book->sentence().contains(QStringLiteral(" kg")));
    for (QLabel* label : book->findChildren<QLabel*>())
        EXPECT_FALSE(label->text().contains(QStringLiteral("kg"))) << label->text().toStdString();
    EXPECT_TRUE(exported("us.csv").contains(QStringLiteral("2027 (lb),2027 (g)")));
    press(Qt::Key_U, Qt::ControlModifier);
    EXPECT_EQ(book->head().big.unit, QStringLiteral("kg"));
}

TEST_F(InTheSeasonBook, AtLargeTypeThePageFollowsTheRowOneIsAt) {
    session.setLook(look(2.0));
    book->reload();
    for (int n = 0; n < 6; ++n) QApplication::processEvents();
    book->yields().setFocus();
    press(Qt::Key_End, Qt::ControlModifier);
    QApplication::processEvents();
    const QPoint row = book->yields().viewport()->mapTo(
        book, book->yields().visualRect(book->yields().currentIndex()).center());
    EXPECT_EQ(book->yields().current()->name, QStringLiteral("All"));
    EXPECT_TRUE(book->rect().contains(row)) << row.y() << " of " << book->height();
    session.setLook(look(1.0));
}

TEST_F(InTheSeasonBook, NothingIsClippedAtAnyTextSize) {
    for (const double factor : {1.0, 1.15, 1.5, 2.0}) {
        session.setLook(look(factor));
        for (const QSize size : {QSize(1280, 800), QSize(1000, 700)}) {
            window->resize(size);
            book->reload();
            SCOPED_TRACE(testing::Message() << factor << " at " << size.width());
            expectNothingClipped();
        }
    }
    session.setLook(look(1.0));
}

}  // namespace
}  // namespace combwright
