// The season book's pages by keyboard: yields by colony, queen and yard, the colonies and winters,
// wax and goods with the records behind each line, and the year beside in a window of its own.
#include <gtest/gtest.h>

#include <QApplication>
#include <QComboBox>
#include <QFile>
#include <QHeaderView>
#include <QImage>
#include <QTest>

#include "tests/support/book_season.h"
#include "tests/support/in_window.h"
#include "ui/look/style.h"
#include "ui/season_book/season_book_place.h"

namespace combwright {
namespace {

/// The three years of the book, and in the last of them colonies that come and go, wax, candles and
/// jars that went out of the door.
std::string fullYears() {
    return test::bookYears() +
           R"({"do":"put-queen","on":"2027-04-10","hive":"H1","reared":2025,"number":"41"}
{"do":"split-colony","on":"2027-05-10","hive":"H1","mark":"N1","new_boxes":"deep N1","frames":3,"queen_goes":false,"step":"queen lost"}
{"do":"end-colony","on":"2027-09-20","hive":"N1","ending":"queenless"}
{"do":"add-goods","on":"2027-08-01","name":"454 g jar","net_g":454,"price":8.5}
{"do":"name-season","on":"2027-04-01","season":"Hill bees"}
{"do":"set-prices","on":"2027-08-01","prices":"454 g jar 8.5","currency":"€"}
{"do":"fill-jars","on":"2027-09-01","bucket":{"bucket":"B","run":"27-3"},"jars":"20 454 g"}
{"do":"go-out","on":"2027-10-02","goods":"12 454 g jar"}
)";
}

class InTheBooksPages : public test::WindowTest {
  protected:
    void SetUp() override {
        clock.set("2027-11-20");
        openWindow(fullYears());
        book = goToPlace<SeasonBookPlace>(6);
        ASSERT_NE(book, nullptr);
        QApplication::processEvents();
    }
    static void press(int key, Qt::KeyboardModifiers with = Qt::NoModifier) {
        QTest::keyClick(QApplication::focusWidget(), static_cast<Qt::Key>(key), with);
    }
    QString exported(const char* name) {
        EXPECT_TRUE(book->exportTo(QString::fromStdString(path(name))))
            << session.lastTold().toStdString();
        QFile file(QString::fromStdString(path(name)));
        EXPECT_TRUE(file.open(QIODevice::ReadOnly));
        return QString::fromUtf8(file.readAll());
    }
    void playLine(std::string_view line) { EXPECT_FALSE(play(session.season(), line).stopped); }
    AccountPage& account() { return book->account(book->page()); }
    AccountView* section(const char* id) {
        for (AccountView* each : account().sections())
            if (each->section().id == QLatin1String(id)) return each;
        return nullptr;
    }
    static QString figureOf(const AccountView* view, const char* name) {
        for (const AccountLine& line : view->section().lines)
            if (line.name == QString::fromUtf8(name)) return accountFigure(line);
        return QStringLiteral("no such line");
    }

    SeasonBookPlace* book = nullptr;
};

TEST_F(InTheBooksPages, TheHoneyIsToldByColonyQueenAndYard) {
    EXPECT_TRUE(book->sentence().contains(QStringLiteral("One colony was lost between 1 May and")))
        << book->sentence().toStdString();
    press(Qt::Key_B);
    EXPECT_EQ(book->by().currentText(), QStringLiteral("colony"));
    EXPECT_EQ(book->yields().accessibleName(), QStringLiteral("Honey by colony 2027"));
    // 25.2 shared by two, 38.0 by three, 25.6 by two: H1 and H2 12.6 + 12.667, the others less.
    EXPECT_EQ(book->yields().current()->name, QStringLiteral("H1"));
    EXPECT_EQ(book->yields().current()->mass, Mass::grams(12600 + 12667));
    press(Qt::Key_Return);
    EXPECT_TRUE(book->records().records().of.colony);
    EXPECT_EQ(book->records().records().runs.size(), 2U);
    EXPECT_EQ(book->explained().front().what, QStringLiteral("Colony of H1: honey in 2027"));
    press(Qt::Key_Escape);
    EXPECT_EQ(QApplication::focusWidget(), &book->yields());
    EXPECT_TRUE(exported("c.csv").startsWith(QStringLiteral("colony,where,2027 (kg)")));
    press(Qt::Key_B);
    EXPECT_EQ(book->yields().current()->name, QStringLiteral("41 of 2025 in H1"));
    press(Qt::Key_End, Qt::ControlModifier);
    EXPECT_EQ(book->yields().current()->mass, Mass::grams(88800));
    press(Qt::Key_Up);
    EXPECT_EQ(book->yields().current()->name, QStringLiteral("queen not written down"));
    EXPECT_EQ(book->yields().current()->mass, Mass::grams(88800 - 12600 - 12667));
    press(Qt::Key_B);
    EXPECT_EQ(book->yields().model()->rowCount(), 3) << "two yards and their sum";
    EXPECT_TRUE(book->yields().current()->averages.contains(QStringLiteral("per hive on 1 May")));
    // The box over the table is reached by Tab and says the same.
    press(Qt::Key_Backtab, Qt::ShiftModifier);
    EXPECT_EQ(QApplication::focusWidget(), &book->by());
    press(Qt::Key_Home);
    EXPECT_EQ(book->yields().accessibleName(), QStringLiteral("Honey by hive 2027"));
    EXPECT_EQ(book->yields().model()->rowCount(), 9);
}

TEST_F(InTheBooksPages, ColoniesAndWintersHaveAPageWithTheRecordsOfEachLine) {
    press(Qt::Key_PageDown, Qt::ControlModifier);
    ASSERT_EQ(book->page(), SeasonBookPlace::BookPage::Colonies);
    AccountView* colonies = section("colonies");
    ASSERT_NE(colonies, nullptr);
    EXPECT_EQ(QApplication::focusWidget(), &colonies->lines());
    EXPECT_EQ(figureOf(colonies, "on 1 May"), QStringLiteral("5 c"));
    EXPECT_EQ(figureOf(colonies, "made by splits"), QStringLiteral("+ 1"));
    EXPECT_EQ(figureOf(colonies, "lost: queenless"), QStringLiteral("− 1"));
    EXPECT_EQ(figureOf(colonies, "into winter"), QStringLiteral("5 c"));
    EXPECT_FALSE(book->yields().isVisible());
    press(Qt::Key_Down);
    EXPECT_EQ(book->explained().front().what,
              QStringLiteral("Colonies through the year: made by splits"));
    press(Qt::Key_Return);
    EXPECT_EQ(QApplication::focusWidget(), &account().records().table());
    EXPECT_EQ(account().records().table().item(0, 1)->text(), QStringLiteral("N1"));
    EXPECT_EQ(account().records().table().item(0, 3)->text(), QStringLiteral("from H1"));
    EXPECT_FALSE(section("winter-losses")->isVisible()) << "the records stand in its place";
    EXPECT_TRUE(exported("r.csv").contains(QStringLiteral("2027-05-10,N1,split,from H1")));
    press(Qt::Key_Escape);
    EXPECT_EQ(QApplication::focusWidget(), &colonies->lines());
    EXPECT_TRUE(section("winter-losses")->isVisible());
    EXPECT_TRUE(exported("a.csv").contains(QStringLiteral("into winter,5,,counted")));
    EXPECT_TRUE(book->exportTo(QString::fromStdString(path("a.png"))));
    EXPECT_GT(QImage(QString::fromStdString(path("a.png"))).width(), 1000);
    press(Qt::Key_Tab);
    EXPECT_EQ(QApplication::focusWidget(), &section("winter-losses")->lines());
    EXPECT_EQ(figureOf(section("winter-losses"), "of all colonies together"),
              QStringLiteral("0.0 %"));
    press(Qt::Key_Tab);
    EXPECT_NE(QApplication::focusWidget(), &section("winter-losses")->lines()) << "no trap";
    // Keys of the harvest do nothing here.
    section("colonies")->lines().setFocus();
    press(Qt::Key_T);
    press(Qt::Key_B);
    press(Qt::Key_1);
    EXPECT_EQ(book->by().currentText(), QStringLiteral("hive"));
}

TEST_F(InTheBooksPages, WaxAndGoodsHaveAPage) {
    press(Qt::Key_G, Qt::AltModifier);
    ASSERT_EQ(book->page(), SeasonBookPlace::BookPage::Goods);
    AccountView* sales = section("sales");
    ASSERT_NE(sales, nullptr);
    EXPECT_EQ(figureOf(sales, "454 g jar"), QStringLiteral("12 sold c"));
    EXPECT_EQ(figureOf(sales, "takings"), QStringLiteral("102.00 €"));
    sales->lines().setFocus();
    press(Qt::Key_Return);
    EXPECT_EQ(account().records().table().item(0, 2)->text(), QStringLiteral("12 sold"));
    EXPECT_FALSE(section("short")->isVisible());
    press(Qt::Key_Escape);
    EXPECT_FALSE(section("wax")->section().note.isEmpty()) << "no wax is written down";
    press(Qt::Key_H, Qt::AltModifier);
    EXPECT_EQ(book->page(), SeasonBookPlace::BookPage::Harvest);
    EXPECT_EQ(QApplication::focusWidget(), &book->yields());
}

TEST_F(InTheBooksPages, YearsStandBelowEachOtherWithWhatPaperSays) {
    press(Qt::Key_Y, Qt::AltModifier);
    ASSERT_EQ(book->page(), SeasonBookPlace::BookPage::Years);
    AccountView* honey = section("honey-by-year");
    ASSERT_NE(honey, nullptr);
    // 25.2 + 25.6 + 38.0; 25.0 + 12.8 with a note of 13 beside it; 20 + 12 + 30 from paper alone.
    EXPECT_EQ(figureOf(honey, "2027"), QStringLiteral("88.8 kg w"));
    EXPECT_EQ(figureOf(honey, "2026"), QStringLiteral("37.8 kg w"));
    EXPECT_EQ(figureOf(honey, "2025"), QStringLiteral("62 kg e"));
    EXPECT_TRUE(honey->section().lines[1].note.contains(QStringLiteral("paper says 13 kg e")))
        << honey->section().lines[1].note.toStdString();
    press(Qt::Key_End);
    press(Qt::Key_Return);
    EXPECT_EQ(account().records().table().rowCount(), 3);
    press(Qt::Key_Escape);
    EXPECT_EQ(figureOf(section("colonies-by-year"), "2026"), QStringLiteral("5 on 1 May c"));
}

TEST_F(InTheBooksPages, TheYearBesideStandsInAWindowOfItsOwn) {
    press(Qt::Key_W);
    BookWindow* beside = book->besideWindow();
    ASSERT_NE(beside, nullptr);
    ASSERT_TRUE(QTest::qWaitForWindowActive(beside));
    SeasonBookPlace& other = beside->book();
    EXPECT_EQ(other.year(), 2026);
    EXPECT_EQ(book->year(), 2027) << "the book keeps its year";
    EXPECT_TRUE(QTest::qWaitFor([&] { return QApplication::focusWidget() == &other.yields(); }))
        << QApplication::focusWidget()->metaObject()->className();
    // Nothing is taken from here, and there is no third window.
    press(Qt::Key_1);
    press(Qt::Key_W);
    EXPECT_EQ(other.besideWindow(), nullptr);
    EXPECT_FALSE(other.reckoned().button(0)->isVisible());
    // It has its pages, and Esc closes first the records, then the window.
    press(Qt::Key_Return);
    EXPECT_TRUE(other.records().isVisible());
    press(Qt::Key_Escape);
    ASSERT_NE(book->besideWindow(), nullptr);
    EXPECT_FALSE(other.records().isVisible());
    // It follows what is written in the other.
    playLine(R"({"do":"note-crop","on":"2026-11-01","year":2026,"hive":"H3","mass_g":7000})");
    QApplication::processEvents();
    EXPECT_TRUE(other.sentence().contains(QStringLiteral("4 of 5 colonies")))
        << other.sentence().toStdString();
    press(Qt::Key_C, Qt::AltModifier);
    EXPECT_EQ(other.page(), SeasonBookPlace::BookPage::Colonies);
    EXPECT_EQ(book->page(), SeasonBookPlace::BookPage::Harvest);
    press(Qt::Key_Escape);
    QApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    EXPECT_EQ(book->besideWindow(), nullptr);
}

TEST_F(InTheBooksPages, PagesAreWholeAtAnyTextSize) {
    for (const auto page :
         {SeasonBookPlace::BookPage::Colonies, SeasonBookPlace::BookPage::Goods}) {
        book->openPage(page);
        for (const double factor : {1.0, 1.5, 2.0}) {
            setTextSize(factor);
            for (int n = 0; n < 6; ++n) QApplication::processEvents();
            for (QScrollArea* area : book->findChildren<QScrollArea*>())
                EXPECT_LE(area->widget()->width(), area->viewport()->width()) << factor;
            for (AccountView* view : account().sections()) {
                AccountLines& lines = view->lines();
                EXPECT_GE(lines.viewport()->height() + 1, lines.verticalHeader()->length())
                    << view->section().id.toStdString() << " at " << factor;
                EXPECT_LE(view->geometry().right(), view->parentWidget()->width());
            }
        }
        setTextSize(1.0);
    }
}

}  // namespace
}  // namespace combwright
