// Labels by keyboard: the first cell chosen with arrows, grids of both papers, what the printer is
// off, what stands on them, a flower only with the keeper's own statement.
#include "ui/honey_room/labels_dialog.h"

#include "core/places/pages/goods/label_pages.h"
#include "core/storage/queries/labels.h"
#include "core/words/words.h"
#include "tests/ui/honey_room/goods_in_room.h"

namespace combwright {
namespace {

using testing::HasSubstr;
using testing::Not;

class LabelsInRoom : public test::GoodsInRoom {
  protected:
    void SetUp() override {
        GoodsInRoom::SetUp();
        page = openRoom<JarsPage>(GoTo::Page::Jars, test::sixtyJars);
        ASSERT_NE(page, nullptr);
    }
    static std::string reminders(QDialog& form) {
        return plain(form.findChild<QLabel*>("reminders")->text());
    }
    JarsPage* page = nullptr;
};

TEST_F(LabelsInRoom, TheFirstCellIsChosenWithArrows) {
    inForm([&](QDialog& form) {
        auto& labels = dynamic_cast<LabelsDialog&>(form);
        ASSERT_TRUE(labels.sheet());
        EXPECT_EQ(form.focusWidget(), &labels.cells());
        EXPECT_EQ(labels.sheet()->placed.size(), 64U) << "one a jar: 60 and 4";
        EXPECT_EQ(labels.sheet()->placed.front().cell, 1);
        for (const Qt::Key pressed : {Qt::Key_Down, Qt::Key_Down, Qt::Key_Right})
            QTest::keyClick(&labels.cells(), pressed);
        EXPECT_EQ(labels.sheet()->placed.front().cell, 8) << "three across: third row, second";
        EXPECT_THAT(said(form, "where"), HasSubstr("first in cell 8 of 21"));
        EXPECT_THAT(labels.cells().accessibleDescription().toStdString(),
                    HasSubstr("row 3, column 2"));
        QTest::keyClick(&labels.cells(), Qt::Key_Up);
        QTest::keyClick(&labels.cells(), Qt::Key_Up);
        QTest::keyClick(&labels.cells(), Qt::Key_Up);
        EXPECT_EQ(labels.sheet()->placed.front().cell, 2) << "not off the sheet";
        choose(form, "grid", QStringLiteral("Letter"));
        EXPECT_EQ(labels.sheet()->grid.paper, "Letter");
        choose(form, "kind", QStringLiteral("227"));
        EXPECT_EQ(labels.sheet()->placed.size(), 4U);
        fill(form, "count", "7");
        EXPECT_EQ(labels.sheet()->placed.size(), 7U);
        fill(form, "count", "0");
        EXPECT_FALSE(labels.sheet()) << "refused, and said";
        EXPECT_FALSE(reason(form).isEmpty());
        fill(form, "count", "");
        EXPECT_TRUE(labels.sheet());
        expectReachable(form);
        for (const char* button : {"calibrate", "measured", "words", "print", "close"})
            goTo(form, button);
        QTest::keyClick(&form, Qt::Key_Escape);
    });
    key(Qt::Key_L);
}

TEST_F(LabelsInRoom, WhatThePrinterIsOffIsTakenBack) {
    inForm([&](QDialog& form) {
        auto& labels = dynamic_cast<LabelsDialog&>(form);
        const double left = labels.sheet()->placed.front().leftMm;
        const double top = labels.sheet()->placed.front().topMm;
        fill(form, "right", "1.5");
        fill(form, "down", "-0.5");
        QTest::keyClick(goTo(form, "measured"), Qt::Key_Space);
        EXPECT_DOUBLE_EQ(labels.sheet()->placed.front().leftMm, left - 1.5);
        EXPECT_DOUBLE_EQ(labels.sheet()->placed.front().topMm, top + 0.5);
        QTest::keyClick(&form, Qt::Key_Escape);
    });
    key(Qt::Key_L);
    EXPECT_EQ(read().all<LabelOffset>().size(), 1U);
}

TEST_F(LabelsInRoom, AFlowerStandsThereOnlyWithTheKeepersStatement) {
    inForm([&](QDialog& form) {
        auto& labels = dynamic_cast<LabelsDialog&>(form);
        EXPECT_THAT(reminders(form), HasSubstr(infantCaution().toStdString()));
        EXPECT_THAT(reminders(form), HasSubstr("Not on the label:")) << "no address yet";
        FormTest::inForm([&](QDialog& words) {
            fill(words, "address", "1 Mill Lane");
            fill(words, "flower", "Heather");
            EXPECT_THAT(said(words, "claim"), HasSubstr("is a claim"));
            enter(words);
            EXPECT_TRUE(words.isVisible()) << "a taste word is no claim";
            EXPECT_FALSE(reason(words).isEmpty());
            fill(words, "flower_grounds", "on the moor in August");
            EXPECT_EQ(said(words, "claim"), "");
            expectReachable(words);
            enter(words);
        });
        QTest::keyClick(goTo(form, "words"), Qt::Key_Space);
        form.activateWindow();
        EXPECT_TRUE(QTest::qWaitForWindowActive(&form));
        EXPECT_EQ(labelHead(labels.sheet()->labels.front()), QStringLiteral("Heather honey"));
        EXPECT_THAT(reminders(form), HasSubstr("your own statement: on the moor in August"));
        EXPECT_THAT(reminders(form), HasSubstr(infantCaution().toStdString()));
        QTest::keyClick(&form, Qt::Key_Escape);
    });
    key(Qt::Key_L);
    const auto text = labelTextInForce(read(), today);
    ASSERT_TRUE(text);
    EXPECT_EQ(text->producer, "Ann Hill") << "what was not changed stays";
    EXPECT_EQ(text->flower, "Heather");
}

}  // namespace
}  // namespace combwright
