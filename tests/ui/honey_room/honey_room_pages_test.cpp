// The pages of the honey room: one chord to each, and the line of the number pad keeps its keys.
#include <gtest/gtest.h>

#include "tests/support/in_honey_room.h"
#include "ui/honey_room/honey_page.h"

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

TEST_F(PagesOfTheRoom, TheHelpTellsTheWay) {
    EXPECT_TRUE(room->help().contains(QStringLiteral("Ctrl+Page Down")));
    const auto hints = room->hints();
    EXPECT_EQ(hints.back().key, QStringLiteral("Ctrl+PgDn"));
}

}  // namespace
}  // namespace combwright
