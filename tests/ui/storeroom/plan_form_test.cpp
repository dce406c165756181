// The plan of a season by keyboard.
#include "ui/storeroom/plan_form.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/ui/storeroom/form_hands.h"

namespace combwright {
namespace {

using testing::HasSubstr;

class PlanFormTest : public test::FormTest {};

TEST_F(PlanFormTest, KeepsAndShowsWhatFollows) {
    inForm([&](QDialog& form) {
        auto* follows = form.findChild<QTableWidget*>(QStringLiteral("follows"));
        const auto* echo = form.findChild<QLabel*>(QStringLiteral("items_read_back"));
        const auto* gaps = form.findChild<QLabel*>(QStringLiteral("gaps"));
        EXPECT_EQ(form.focusWidget()->objectName(), QStringLiteral("colonies"));
        EXPECT_THAT(
            form.findChild<QLineEdit*>(QStringLiteral("colonies"))->placeholderText().toStdString(),
            HasSubstr("2: as many as live now"));
        EXPECT_EQ(follows->rowCount(), 0);
        EXPECT_FALSE(gaps->text().isEmpty()) << "nobody planned yet";
        expectReachable(form);
        fill(form, "splits", "1");
        fill(form, "supers_per_colony", "3");
        enter(form);
        EXPECT_FALSE(reason(form).isEmpty()) << "of which kind?";
        EXPECT_TRUE(read().all<SeasonPlan>().empty());
        auto* kind = qobject_cast<QComboBox*>(goTo(form, "super_kind"));
        kind->setCurrentIndex(kind->findData(static_cast<qlonglong>(box("M11").kind.number)));
        fill(form, "items", "floor 1 1, lidd 1");
        EXPECT_THAT(echo->text().toStdString(), HasSubstr("lidd"));
        fill(form, "items", "floor 1 1, excluder 1 0 10 %");
        EXPECT_THAT(echo->text().toStdString(),
                    HasSubstr("excluder: 1 a colony, 0 a split, 10 % spare"));
        enter(form);
        ASSERT_EQ(read().all<SeasonPlan>().size(), 1U) << reason(form).toStdString();
        const NextSeason next = nextSeason(read(), today, 2028);
        std::size_t sheets = 0;
        for (const FrameNeed& each : next.frames) sheets += each.sheets > 0;
        ASSERT_EQ(follows->rowCount(), static_cast<int>(next.boxes.size() + next.frames.size() +
                                                        sheets + next.pieces.size()));
        EXPECT_EQ(follows->item(0, 1)->text(), QStringLiteral("6")) << "two colonies, three each";
        QTest::keyClick(&form, Qt::Key_Escape);
    });
    EXPECT_TRUE(askToPlanSeason(window.get(), session, 2028, today));
    inForm([&](QDialog& form) {
        EXPECT_EQ(form.findChild<QLineEdit*>(QStringLiteral("items"))->text(),
                  QStringLiteral("floor 1 1, excluder 1 0 10 %"));
        EXPECT_EQ(form.findChild<QLineEdit*>(QStringLiteral("supers_per_colony"))->text(),
                  QStringLiteral("3"));
        QTest::keyClick(&form, Qt::Key_Escape);
    });
    EXPECT_FALSE(askToPlanSeason(window.get(), session, 2028, today)) << "nothing was kept";
}

TEST_F(PlanFormTest, WhatFollowsIsShownWhileOneTypes) {
    const auto before = steps();
    SeasonPlan plan;
    plan.year = Count(2028);
    plan.splits = Count(0);
    plan.superKind = box("M11").kind;
    plan.supersPerColony = Number::rounded(3);
    plan.framePack = Count(50);
    const auto meant = nextSeason(read(), stockOn(read(), today), today, plan, {});
    ASSERT_TRUE(meant);
    ASSERT_GT(meant->frames.front().sheets, 0);
    inForm([&](QDialog& form) {
        auto* follows = form.findChild<QTableWidget*>(QStringLiteral("follows"));
        const auto* head = form.findChild<QLabel*>(QStringLiteral("follows_head"));
        const auto* gaps = form.findChild<QLabel*>(QStringLiteral("gaps"));
        const auto column = [&](int n) {
            QStringList cells;
            for (int row = 0; row < follows->rowCount(); ++row)
                cells << follows->item(row, n)->text();
            return cells.join(QLatin1Char(' ')).toStdString();
        };
        auto* kind = qobject_cast<QComboBox*>(goTo(form, "super_kind"));
        kind->setCurrentIndex(kind->findData(static_cast<qlonglong>(box("M11").kind.number)));
        fill(form, "supers_per_colony", "3");
        fill(form, "frame_pack", "50");
        fill(form, "items", "floor 1 1");
        fill(form, "splits", "0");
        ASSERT_TRUE(QTest::qWaitFor([&] { return follows->rowCount() == 4; }));
        EXPECT_EQ(column(1).substr(0, 2), "6 ") << "two colonies, three each";
        const Shortage& boxes = meant->boxes.front().boxes;
        EXPECT_EQ(follows->item(0, 2)->text(), QString::number(boxes.there));
        EXPECT_EQ(follows->item(0, 3)->text(), QString::number(boxes.nowAtMost));
        EXPECT_EQ(follows->item(2, 1)->text(), QString::number(meant->frames.front().sheets));
        EXPECT_THAT(follows->item(1, 4)->text().toStdString(), HasSubstr("1 × 50"));
        EXPECT_THAT(head->text().toStdString(), HasSubstr("not kept yet"));
        fill(form, "supers_per_colony", "4");
        EXPECT_TRUE(QTest::qWaitFor(
            [&] { return follows->item(0, 1) && follows->item(0, 1)->text() == "8"; }));
        fill(form, "supers_per_colony", "four");
        EXPECT_TRUE(QTest::qWaitFor([&] { return follows->rowCount() == 0; }));
        EXPECT_THAT(gaps->text().toStdString(), HasSubstr("cannot be read yet"));
        EXPECT_TRUE(reason(form).isEmpty()) << "nobody is told off while typing";
        EXPECT_EQ(form.focusWidget()->objectName(), QStringLiteral("supers_per_colony"));
        fill(form, "supers_per_colony", "3");
        fill(form, "frames_per_super", "5000");
        EXPECT_TRUE(QTest::qWaitFor([&] { return follows->rowCount() == 0; }));
        EXPECT_FALSE(gaps->text().isEmpty()) << "beyond all reason is said, not reckoned";
        QTest::keyClick(&form, Qt::Key_Escape);
    });
    EXPECT_FALSE(askToPlanSeason(window.get(), session, 2028, today));
    EXPECT_EQ(steps(), before) << "nothing was kept";
}

}  // namespace
}  // namespace combwright
