// The board walked by keyboard and mouse, without a display: where the cursor goes, what is chosen,
// what is said of it, and that the counts and the filters beside it ask for what they show.
#include "ui/storeroom/frame_board_view.h"

#include <gtest/gtest.h>

#include <QCheckBox>
#include <QComboBox>
#include <QPainter>
#include <QScrollBar>
#include <QSignalSpy>
#include <QTest>

#include "tests/support/bench_deeds.h"
#include "ui/storeroom/board_counts.h"
#include "ui/storeroom/board_filter.h"

namespace combwright {
namespace {

Look boardLook(bool dark = false, double factor = 1.0) {
    return lookFor(QFont(QStringLiteral("DejaVu Sans"), 10), dark, factor);
}

class FrameBoardWalked : public test::BenchTest {
  protected:
    void SetUp() override {
        clock.set("2028-01-17");
        done(
            R"({"do":"add-boxes","on":"2027-05-01","kind":"medium","first_mark":"M01","count":8,"contents":"9 drawn","stack":"Shelf 1"}
{"do":"add-boxes","on":"2027-05-01","kind":"medium","first_mark":"M09","count":8,"contents":"9 drawn","stack":"Shelf 2"}
{"do":"add-boxes","on":"2027-05-01","kind":"deep","first_mark":"D1","count":4,"contents":"10 drawn","stack":"Floor"})");
        done(review("M01", "7 keep, 1 W, 1 V; scraped") + "\n" +
             review("M02", "6 keep, 2 T; scraped") + "\n" + review("D1", "7 keep, 2 D, 1 O"));
        view.resize(960, 420);
        show();
    }
    void show(const BoardFilter& filter = {}) {
        view.setBoard(frameBoard(file(), clock.today(), filter));
    }
    void shown() {
        view.show();
        view.activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&view));
        view.setFocus();
    }
    void key(Qt::Key which, Qt::KeyboardModifiers with = Qt::NoModifier) {
        QTest::keyClick(&view, which, with);
    }
    std::string at() const { return view.currentRow() ? view.currentRow()->name : "nowhere"; }
    std::string chosen() const {
        std::string marks;
        for (const BoardRow* row : view.selectedRows())
            marks += (marks.empty() ? "" : " ") + row->name;
        return marks;
    }

    FrameBoardView view{boardLook()};
};

TEST_F(FrameBoardWalked, ArrowsGoByRowAndByFrame) {
    shown();
    QSignalSpy rows(&view, &FrameBoardView::currentChanged);
    QSignalSpy frames(&view, &FrameBoardView::frameChanged);
    EXPECT_EQ(view.columns(), 2);
    EXPECT_EQ(at(), "D1");
    key(Qt::Key_Down);
    EXPECT_EQ(at(), "D2");
    EXPECT_EQ(rows.count(), 1);
    key(Qt::Key_Right);
    key(Qt::Key_Right);
    EXPECT_EQ(view.currentFrameIndex(), 2);
    EXPECT_EQ(rows.count(), 1) << "the row is the same";
    EXPECT_EQ(frames.count(), 3);
    key(Qt::Key_Left);
    EXPECT_EQ(view.currentFrameIndex(), 1);
    key(Qt::Key_End);
    EXPECT_EQ(at(), "M08") << "the foot of the second column";
    key(Qt::Key_Home);
    EXPECT_EQ(at(), "D1");
    key(Qt::Key_Up);
    EXPECT_EQ(at(), "D1") << "there is nothing above";
}

TEST_F(FrameBoardWalked, OverTheEndOfARowIsTheRowBesideIt) {
    shown();
    ASSERT_TRUE(view.goToBox(box("D1").id, 9));
    key(Qt::Key_Right);
    EXPECT_EQ(at(), "M01");
    EXPECT_EQ(view.currentFrameIndex(), 0);
    key(Qt::Key_Left);
    EXPECT_EQ(at(), "D1");
    EXPECT_EQ(view.currentFrameIndex(), 9);
}

TEST_F(FrameBoardWalked, RowsAreChosenOneByOneInARunAndAll) {
    shown();
    QSignalSpy changes(&view, &FrameBoardView::selectionChanged);
    ASSERT_TRUE(view.goToBox(box("M02").id));
    EXPECT_EQ(view.chosenBoxes().size(), 1U) << "none selected: the one under the cursor";
    key(Qt::Key_Space);
    EXPECT_EQ(chosen(), "M02");
    key(Qt::Key_Space);
    EXPECT_EQ(chosen(), "");
    key(Qt::Key_Down, Qt::ShiftModifier);
    key(Qt::Key_Down, Qt::ShiftModifier);
    EXPECT_EQ(chosen(), "M02 M03 M04");
    key(Qt::Key_Up, Qt::ShiftModifier);
    EXPECT_EQ(chosen(), "M02 M03");
    EXPECT_EQ(view.chosenFrames().size(), 17U) << "8 and 9 found";
    EXPECT_EQ(changes.count(), 5);
    key(Qt::Key_A, Qt::ControlModifier);
    EXPECT_EQ(view.selectedCount(), 20);
    EXPECT_EQ(view.chosenBoxes().size(), 20U);
    key(Qt::Key_Escape);
    EXPECT_EQ(view.selectedCount(), 0);
}

TEST_F(FrameBoardWalked, TypedMarksAreFound) {
    shown();
    QTest::keyClicks(&view, QStringLiteral("m1"));
    EXPECT_EQ(at(), "M10") << "the next that begins so";
    QTest::keyClicks(&view, QStringLiteral("4"));
    EXPECT_EQ(at(), "M14");
    EXPECT_FALSE(view.typeMark(QStringLiteral("7"))) << "there is no M147: the 7 is a count";
    EXPECT_FALSE(view.isTypingMark());
    QTest::keyClicks(&view, QStringLiteral("zz"));
    EXPECT_EQ(at(), "M14");
    QTest::keyClicks(&view, QStringLiteral("m0"));
    EXPECT_EQ(at(), "M01");
    key(Qt::Key_Down);
    EXPECT_FALSE(view.isTypingMark()) << "an arrow ends the mark";
    QTest::keyClicks(&view, QStringLiteral("md"));
    EXPECT_EQ(at(), "D1") << "no mark goes on like that, but one begins so";
}

// The frames of a board as they stand, row by row and by their sum.
TEST(RowPlaces, StretchesStandAsTheirRowsWould) {
    FrameBoard board;
    int name = 0;
    for (const std::vector<std::size_t>& rows : std::vector<std::vector<std::size_t>>{
             {9, 9, 10, 9}, {}, std::vector<std::size_t>(61, 9)}) {
        board.shelves.emplace_back();
        for (const std::size_t frames : rows) {
            BoardRow row;
            row.name = std::to_string(++name);
            row.frames.resize(frames);
            board.shelves.back().rows.push_back(row);
        }
    }
    const auto height = [](const BoardRow& row) { return row.frames.size() == 9 ? 20.0 : 25.0; };
    for (const std::size_t columns : {1U, 2U}) {
        RowPlaces places;
        for (std::uint32_t shelf = 0; shelf < board.shelves.size(); ++shelf)
            for (std::uint32_t row = 0; row < board.shelves[shelf].rows.size(); ++row)
                places.add(shelf, row, board.shelves[shelf].rows[row]);
        places.layOut(board, {columns, 30, 10}, height);
        ASSERT_EQ(places.size(), 65U);
        EXPECT_LE(places.stretches(), 5U);
        EXPECT_EQ(places.heads().size(), 3U);
        for (std::size_t column = 0; column < places.columns(); ++column)
            for (std::size_t line = places.begin(column); line < places.end(column); ++line) {
                const RowPlace at = places[line];
                EXPECT_EQ(places.find(at.shelf, at.row), line);
                EXPECT_EQ(places.columnOf(line), column);
                EXPECT_EQ(at.height, height(board.shelves[at.shelf].rows[at.row]));
                EXPECT_EQ(places.lineAt(column, at.top), line);
                EXPECT_EQ(places.lineAt(column, at.top + at.height - 0.5), line);
                EXPECT_LE(at.top + at.height, places.height());
                if (line > places.begin(column)) {
                    const RowPlace above = places[line - 1];
                    const double between = at.top - above.top - above.height;
                    EXPECT_EQ(between == 0, above.shelf == at.shelf) << "names stand between";
                }
            }
    }
}

TEST_F(FrameBoardWalked, TheMouseChoosesToo) {
    shown();
    const auto click = [&](const char* mark, Qt::KeyboardModifiers with = Qt::NoModifier,
                           int frame = 3) {
        QTest::mouseClick(view.viewport(), Qt::LeftButton, with,
                          view.rectOf(box(mark).id, frame).center());
    };
    click("M03");
    EXPECT_EQ(at(), "M03");
    EXPECT_EQ(view.currentFrameIndex(), 3);
    EXPECT_EQ(chosen(), "");
    click("M05", Qt::ShiftModifier);
    EXPECT_EQ(chosen(), "M03 M04 M05");
    click("D2", Qt::ControlModifier);
    EXPECT_EQ(chosen(), "D2 M03 M04 M05");
    click("D2", Qt::ControlModifier);
    EXPECT_EQ(chosen(), "M03 M04 M05");
    click("M01");
    EXPECT_EQ(chosen(), "");
    QSignalSpy opened(&view, &FrameBoardView::activated);
    QTest::mouseDClick(view.viewport(), Qt::LeftButton, {}, view.rectOf(box("M01").id).center());
    key(Qt::Key_Return);
    EXPECT_EQ(opened.count(), 2);
}

TEST_F(FrameBoardWalked, ANarrowBoardScrollsAndKeepsTheCursorInSight) {
    view.resize(460, 260);
    shown();
    EXPECT_EQ(view.columns(), 1);
    EXPECT_GT(view.verticalScrollBar()->maximum(), 0);
    for (int i = 0; i < 30; ++i) {
        key(Qt::Key_Down);
        EXPECT_TRUE(view.viewport()->rect().contains(view.currentRect().center())) << at();
    }
    EXPECT_EQ(at(), "M16");
    key(Qt::Key_PageUp);
    EXPECT_NE(at(), "M16");
    key(Qt::Key_Home);
    EXPECT_EQ(view.verticalScrollBar()->value(), 0);
}

TEST_F(FrameBoardWalked, CursorAndSelectionStayWithTheirBoxes) {
    shown();
    ASSERT_TRUE(view.goToBox(box("M02").id));
    key(Qt::Key_Space);
    key(Qt::Key_Down);
    done(R"({"do":"move-box","on":"2028-01-10","box":"M02","to":"storeroom","stack":"Attic"})");
    show();
    EXPECT_EQ(at(), "M03");
    EXPECT_EQ(chosen(), "M02");
    BoardFilter filter;
    filter.state = FrameState{FrameState::Kind::Letter, 'W', Verdict::Keep};
    show(filter);
    EXPECT_EQ(at(), "M01") << "what is left";
    EXPECT_EQ(chosen(), "");
    filter.state->letter = 'Q';
    show(filter);
    EXPECT_EQ(at(), "nowhere");
    EXPECT_TRUE(view.chosenBoxes().empty());
    key(Qt::Key_Down);
    key(Qt::Key_Space);
    key(Qt::Key_Right);
    key(Qt::Key_PageDown);
    key(Qt::Key_Return);
    EXPECT_FALSE(view.grab().isNull()) << "an empty board is painted too";
}

TEST_F(FrameBoardWalked, TheRowAndTheFrameAreSaid) {
    ASSERT_TRUE(view.goToBox(box("M02").id, 8));
    const QString said = view.accessibleDescription();
    for (const char* part :
         {"M02", "scraped 18 Nov", "8 found of 9", "T dark old comb", "Frame not found"})
        EXPECT_TRUE(said.contains(QLatin1String(part))) << part << " in " << said.toStdString();
    EXPECT_FALSE(view.accessibleName().isEmpty());
}

TEST_F(FrameBoardWalked, TwiceTheTextCutsNothing) {
    view.setLook(boardLook(false, 2.0));
    view.resize(1240, 500);
    shown();
    const QRect last = view.rectOf(box("D1").id, 9);
    EXPECT_LE(last.right(), view.viewport()->width());
    EXPECT_GE(last.width(), boardLook(false, 2.0).px(10));
    EXPECT_GE(view.rectOf(box("D1").id).height(), 40);
    ASSERT_TRUE(view.goToBox(box("M12").id));
    view.setLook(boardLook());
    EXPECT_EQ(at(), "M12") << "the cursor stays with its box in another size of text";
    view.resize(500, 500);
    QCoreApplication::processEvents();
    EXPECT_EQ(view.columns(), 1);
    EXPECT_EQ(at(), "M12") << "and in another width";
}

TEST_F(FrameBoardWalked, CountsAreButtons) {
    BoardCounts counts(boardLook());
    counts.setBoard(view.board());
    counts.resize(160, 500);
    counts.show();
    BoardFilter asked;
    int times = 0;
    QObject::connect(&counts, &BoardCounts::filterAsked, [&](const BoardFilter& filter) {
        asked = filter;
        ++times;
        show(filter);
        counts.setBoard(view.board());
    });
    const QString medium = QStringLiteral("Medium frames");
    ASSERT_TRUE(counts.goToLine(medium + QStringLiteral(", W web of moth: 1")));
    QTest::keyClick(&counts, Qt::Key_Return);
    EXPECT_EQ(times, 1);
    ASSERT_TRUE(asked.state);
    EXPECT_EQ(asked.state->letter, 'W');
    EXPECT_EQ(view.board().shown, 1);
    EXPECT_TRUE(counts.currentText().contains(QStringLiteral("only these are shown")));
    QTest::keyClick(&counts, Qt::Key_Space);
    EXPECT_FALSE(asked.narrows()) << "pressed again it is taken back";
    EXPECT_EQ(view.board().shown, view.board().all);
    QTest::keyClick(&counts, Qt::Key_End);
    QTest::keyClick(&counts, Qt::Key_Up);
    QTest::keyClick(&counts, Qt::Key_Home);
    EXPECT_TRUE(counts.currentText().contains(QStringLiteral("keep"))) << "the first line";
    QTest::mouseClick(counts.viewport(), Qt::LeftButton, {}, QPoint(40, 45));
    EXPECT_EQ(times, 3);
}

TEST_F(FrameBoardWalked, FiltersAskAndOneKeyShowsAll) {
    BoardFilterRow row(boardLook());
    row.resize(900, 80);
    row.setBoard(view.board());
    row.show();
    row.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&row));
    int times = 0;
    QObject::connect(&row, &BoardFilterRow::filterAsked, [&](const BoardFilter& filter) {
        ++times;
        show(filter);
        row.setBoard(view.board());
    });
    auto* state = row.findChild<QComboBox*>(QStringLiteral("filter_state"));
    ASSERT_NE(state, nullptr);
    const int broken = state->findText(QStringLiteral("V broken wood"));
    ASSERT_GT(broken, 0);
    state->setFocus();
    QTest::keyClick(state, Qt::Key_V);
    EXPECT_EQ(view.board().shown, 1);
    EXPECT_EQ(row.shownLine().toStdString(), "showing 1 of 183 frames");
    QTest::keyClick(row.findChild<QCheckBox*>(QStringLiteral("filter_not_frozen")), Qt::Key_Space);
    EXPECT_TRUE(view.board().filter.notFrozen);
    EXPECT_EQ(times, 2);
    QTest::keyClick(&row, Qt::Key_Backspace, Qt::ControlModifier);
    EXPECT_FALSE(view.board().filter.narrows());
    EXPECT_EQ(times, 3);
    auto* group = row.findChild<QComboBox*>(QStringLiteral("filter_group"));
    QTest::keyClick(group, Qt::Key_Down);
    EXPECT_EQ(view.board().group(), BoardGroup::Kind);
    EXPECT_EQ(view.board().shelves.size(), 2U);
}

TEST_F(FrameBoardWalked, FramesThatLookAlikeArePaintedOnce) {
    BoardFrames frames;
    frames.setLook(boardLook());
    frames.setKinds(view.board().kinds);
    QPixmap paper(400, 40);
    QPainter painter(&paper);
    const BoardRow& row = view.board().shelves.back().rows.back();
    ASSERT_EQ(row.name, "M16");
    for (const BoardFrame& frame : row.frames)
        frames.paint(painter, {0, 0}, frame, row.frameKind, 30);
    EXPECT_EQ(frames.kept(), 1);
    const int kept = frames.kept();
    for (const BoardFrame& frame : row.frames)
        frames.paint(painter, {0, 0}, frame, row.frameKind, 30);
    EXPECT_EQ(frames.kept(), kept);
    BoardFrame moth = row.frames.front();
    moth.faults = "W";
    frames.paint(painter, {0, 0}, moth, row.frameKind, 30);
    EXPECT_EQ(frames.kept(), kept + 1);
}

}  // namespace
}  // namespace combwright
