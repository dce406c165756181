// The stock-take typed back by keyboard.
#include "ui/storeroom/stock_take_form.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/actions/storeroom/equipment.h"
#include "core/places/pages/page_text.h"
#include "core/places/pages/storeroom/stock_page.h"
#include "tests/ui/storeroom/form_hands.h"

namespace combwright {
namespace {

using testing::HasSubstr;

class StockTakeFormTest : public test::FormTest {
  protected:
    static void type(QDialog& form, const char* text) {
        QTest::keyClicks(form.focusWidget(), QString::fromUtf8(text));
    }
    static QString at(QDialog& form) { return form.focusWidget()->accessibleName(); }
    std::vector<Equipment> of(EquipmentItem item) const {
        return read().where<Equipment>({is("item", item)});
    }
};

TEST_F(StockTakeFormTest, GoesThroughTheLinesOfTheSheetByEnter) {
    const auto sheet = stockTake(stockOn(read(), today));
    const auto before = steps();
    inForm([&](QDialog& form) {
        const auto* table = form.findChild<QTableWidget*>();
        ASSERT_EQ(table->rowCount(), static_cast<int>(sheet.size()));
        EXPECT_EQ(at(form), QStringLiteral("floor, sound"));
        type(form, "14");
        enter(form);
        EXPECT_EQ(at(form), QStringLiteral("floor, in repair"));
        type(form, "2");
        enter(form);
        enter(form);
        EXPECT_EQ(at(form), QStringLiteral("lid, sound"));
        type(form, "9");
        QTest::keyClick(form.focusWidget(), Qt::Key_Down);
        EXPECT_EQ(at(form), QStringLiteral("crown board, sound"));
        QTest::keyClick(form.focusWidget(), Qt::Key_Return, Qt::ControlModifier);
    });
    EXPECT_TRUE(askToTakeStock(window.get(), session, today));
    EXPECT_EQ(steps(), before + 2) << "a line nobody filled is nothing";
    ASSERT_EQ(of(EquipmentItem::Floor).size(), 1U);
    EXPECT_EQ(of(EquipmentItem::Floor).front().inRepair, Count(2));
    EXPECT_EQ(of(EquipmentItem::Lid).front().lent, std::nullopt) << "empty is not counted, not 0";
    EXPECT_TRUE(of(EquipmentItem::CrownBoard).empty());
}

TEST_F(StockTakeFormTest, AsksWhyOnlyWhereThereAreFewer) {
    for (const EquipmentItem item : {EquipmentItem::Floor, EquipmentItem::Lid}) {
        CountEquipment count;
        count.on = test::day("2027-10-01");
        count.item = item;
        count.onHand = Count(10);
        ASSERT_TRUE(session.run(count));
    }
    inForm([&](QDialog& form) {
        auto* why = form.findChild<QLineEdit*>(QStringLiteral("why_fewer"));
        type(form, "8");
        QTest::keyClick(form.focusWidget(), Qt::Key_Down);
        type(form, "12");
        QTest::keyClick(form.focusWidget(), Qt::Key_Return, Qt::ControlModifier);
        EXPECT_EQ(form.focusWidget(), why);
        EXPECT_THAT(
            form.findChild<QLabel*>(QStringLiteral("fewer"))->text().toStdString(),
            testing::AllOf(HasSubstr("floor: 10 before, now 8"), testing::Not(HasSubstr("lid"))));
        EXPECT_EQ(of(EquipmentItem::Lid).front().onHand, Count(10)) << "all lines or none";
        type(form, "rotten");
        enter(form);
    });
    EXPECT_TRUE(askToTakeStock(window.get(), session, today));
    EXPECT_EQ(of(EquipmentItem::Floor).front().onHand, Count(8));
    EXPECT_EQ(of(EquipmentItem::Lid).front().onHand, Count(12));
    for (const EquipmentCount& each : read().all<EquipmentCount>())
        EXPECT_EQ(each.why, each.onHand == Count(8) ? "rotten" : "") << "where it fell only";
}

TEST_F(StockTakeFormTest, TakesAnotherKindAndRefusesWhatIsNoCount) {
    inForm([&](QDialog& form) {
        type(form, "some");
        QTest::keyClick(form.focusWidget(), Qt::Key_Return, Qt::ControlModifier);
        EXPECT_THAT(reason(form).toStdString(), HasSubstr("\"some\" is no whole number"));
        QTest::keyClick(form.focusWidget(), Qt::Key_Backspace);
        choose(form, "item", QStringLiteral("feeder"));
        fill(form, "called", "4 l tray");
        enter(form);
        EXPECT_EQ(at(form), QStringLiteral("feeder, 4 l tray, sound"));
        QTest::keyClick(form.focusWidget(), Qt::Key_Tab);
        type(form, "1");
        QTest::keyClick(form.focusWidget(), Qt::Key_Return, Qt::ControlModifier);
        EXPECT_THAT(reason(form).toStdString(), HasSubstr("how many are sound"));
        EXPECT_EQ(at(form), QStringLiteral("feeder, 4 l tray, sound"));
        type(form, "6");
        goTo(form, "keep");
        QTest::keyClick(form.focusWidget(), Qt::Key_Space);
    });
    EXPECT_TRUE(askToTakeStock(window.get(), session, today));
    ASSERT_EQ(of(EquipmentItem::Feeder).size(), 1U);
    EXPECT_EQ(of(EquipmentItem::Feeder).front().name, "4 l tray");
    EXPECT_EQ(of(EquipmentItem::Feeder).front().onHand, Count(6));
}

TEST_F(StockTakeFormTest, ADrumIsDescribedAndOnlyWhatIsChangedIsKept) {
    inForm([&](QDialog& form) {
        fill(form, "called", "big");
        fill(form, "holds", "4");
        fill(form, "radius", "22.54 cm");
        expectReachable(form);
        enter(form);
    });
    EXPECT_TRUE(askToDescribeEquipment(window.get(), session, EquipmentItem::Extractor, {}, today));
    ASSERT_EQ(of(EquipmentItem::Extractor).size(), 1U);
    const Equipment drum = of(EquipmentItem::Extractor).front();
    EXPECT_EQ(drum.radius, Length::tenthsOfMm(2254));
    const UnitsWhile us(Units::UsCustomary);
    inForm([&](QDialog& form) {
        EXPECT_EQ(form.focusWidget()->objectName(), QStringLiteral("holds"));
        fill(form, "rpm", "280");
        enter(form);
    });
    EXPECT_TRUE(
        askToDescribeEquipment(window.get(), session, EquipmentItem::Extractor, drum, today));
    EXPECT_EQ(of(EquipmentItem::Extractor).front().radius, Length::tenthsOfMm(2254));
    EXPECT_EQ(of(EquipmentItem::Extractor).front().rpm, Count(280));
}

TEST_F(StockTakeFormTest, AnEmptyCellLeavesWhatWasCounted) {
    CountEquipment count;
    count.on = test::day("2027-10-01");
    count.item = EquipmentItem::Floor;
    count.onHand = Count(10);
    count.inRepair = Count(3);
    ASSERT_TRUE(session.run(count));
    inForm([&](QDialog& form) {
        QTest::keyClick(form.focusWidget(), Qt::Key_Tab);
        QTest::keyClick(form.focusWidget(), Qt::Key_Tab);
        type(form, "2");
        QTest::keyClick(form.focusWidget(), Qt::Key_Return, Qt::ControlModifier);
    });
    EXPECT_TRUE(askToTakeStock(window.get(), session, today));
    EXPECT_EQ(of(EquipmentItem::Floor).front().onHand, Count(10));
    EXPECT_EQ(of(EquipmentItem::Floor).front().inRepair, Count(3));
    EXPECT_EQ(of(EquipmentItem::Floor).front().lent, Count(2));
}

}  // namespace
}  // namespace combwright
