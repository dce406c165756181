// The pages of the honey room: one chord to each, and the line of the number pad keeps its keys.
#include <gtest/gtest.h>

#include "tests/support/in_honey_room.h"
#include "ui/honey_room/honey_page.h"
#include "ui/shell/place_head.h"

namespace combwright {
namespace {

class PagesOfTheRoom : public test::InTheHoneyRoom {
  protected:
    void chord(Qt::Key key, Qt::KeyboardModifiers with) const {
        QTest::keyClick(focus(), key, with);
    }
};

TEST_F(PagesOfTheRoom, AChordOpensAPageAndLeavesTheLineAlone) {
    room->setFocus();
    QTest::keyClicks(focus(), QStringLiteral("14"));
    chord(Qt::Key_H, Qt::AltModifier);
    ASSERT_NE(qobject_cast<HoneyPage*>(room->page()), nullptr);
    EXPECT_TRUE(room->page()->isAncestorOf(focus()));
    EXPECT_FALSE(part<QWidget>("entry")->isVisible());
    EXPECT_EQ(room->page()->head().title, QStringLiteral("Honey"));
    EXPECT_EQ(room->sheets().front().id, QStringLiteral("honey-store"));
    chord(Qt::Key_E, Qt::AltModifier);
    EXPECT_EQ(room->page(), nullptr);
    EXPECT_EQ(focus(), entry());
    EXPECT_EQ(entry()->text(), QStringLiteral("14")) << "what was half typed is still there";
    EXPECT_EQ(room->head().title, QStringLiteral("Honey room"));
    chord(Qt::Key_PageDown, Qt::ControlModifier);
    EXPECT_NE(qobject_cast<HoneyPage*>(room->page()), nullptr);
    chord(Qt::Key_PageUp, Qt::ControlModifier);
    EXPECT_EQ(room->page(), nullptr);
    chord(Qt::Key_PageUp, Qt::ControlModifier);
    EXPECT_NE(room->page(), nullptr) << "round and round";
}

TEST_F(PagesOfTheRoom, TheRunBelongsToTheDayOfSpinning) {
    openCreek();
    auto* run = window->findChild<QComboBox*>(QStringLiteral("run"));
    ASSERT_NE(run, nullptr);
    EXPECT_TRUE(run->isVisible());
    chord(Qt::Key_H, Qt::AltModifier);
    EXPECT_FALSE(run->isVisible());
    chord(Qt::Key_E, Qt::AltModifier);
    EXPECT_TRUE(run->isVisible());
}

TEST_F(PagesOfTheRoom, OneIsSentToAPage) {
    room->goFor({DueWhere::HoneyRoom, {}, {}, {}, false, GoTo::Page::Honey});
    EXPECT_NE(qobject_cast<HoneyPage*>(room->page()), nullptr);
    room->goFor({DueWhere::HoneyRoom, {}, {}, {}, false});
    EXPECT_EQ(room->page(), nullptr);
    EXPECT_EQ(focus(), entry());
}

TEST_F(PagesOfTheRoom, TheWordsAreWalkedByTheArrows) {
    auto* words = window->findChild<PageWords*>();
    ASSERT_NE(words, nullptr);
    auto* extract = words->findChild<QAbstractButton*>(QStringLiteral("page_extract"));
    auto* honey = words->findChild<QAbstractButton*>(QStringLiteral("page_honey"));
    ASSERT_NE(extract, nullptr);
    ASSERT_NE(honey, nullptr);
    EXPECT_TRUE(extract->isChecked());
    extract->setFocus(Qt::TabFocusReason);
    QTest::keyClick(extract, Qt::Key_Right);
    EXPECT_TRUE(honey->isChecked());
    EXPECT_NE(qobject_cast<HoneyPage*>(room->page()), nullptr);
}

TEST_F(PagesOfTheRoom, TheWordsStandClearOfAllElseInTheHead) {
    openCreek();
    auto* head = window->findChild<PlaceHeadBar*>();
    auto* words = window->findChild<PageWords*>();
    auto* run = window->findChild<QComboBox*>(QStringLiteral("run"));
    ASSERT_TRUE(head && words && run);
    const auto placed = [head](const QWidget* widget) {
        return QRect(widget->mapTo(head, QPoint()), widget->size());
    };
    for (const double factor : {1.0, 1.3, 2.0})
        for (const GoTo::Page page : {GoTo::Page::Board, GoTo::Page::Honey}) {
            setTextSize(factor);
            room->openPage(page);
            QApplication::processEvents();
            EXPECT_TRUE(head->rect().contains(placed(words))) << factor;
            EXPECT_GE(words->width(), words->sizeHint().width()) << factor;
            for (const QWidget* other :
                 {static_cast<QWidget*>(head->button()), static_cast<QWidget*>(run)})
                EXPECT_FALSE(other->isVisible() && placed(other).intersects(placed(words)))
                    << other->objectName().toStdString() << " at " << factor;
        }
    setTextSize(1.0);
}

TEST_F(PagesOfTheRoom, TheHelpTellsTheWay) {
    EXPECT_TRUE(room->help().contains(QStringLiteral("Ctrl+Page Down")));
    const auto hints = room->hints();
    EXPECT_EQ(hints.back().key, QStringLiteral("Ctrl+PgDown"));
}

}  // namespace
}  // namespace combwright
