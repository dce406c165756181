// Labels of a filling: where each lies by the geometry of the sheet, what stands on them, what a
// keeper is reminded of, and that a flower stands there on the keeper's own statement only.
#include "core/places/goods/label_sheet.h"

#include <gtest/gtest.h>

#include "core/exchange/qr_code.h"
#include "core/places/pages/goods/label_pages.h"
#include "core/places/pages/page_text.h"
#include "tests/support/honey_lots.h"

namespace combwright {
namespace {

class LabelledJars : public test::HoneyLotsTest {
  protected:
    LabelSheet sheet(const LabelsAsked& asked) const {
        const auto made = labelSheet(file(), asked, clock.today());
        EXPECT_TRUE(made);
        return made ? *made : LabelSheet{};
    }
    LabelSheet usual() const { return sheet({.bottling = jars}); }
    std::string refused(const LabelsAsked& asked) const {
        const auto made = labelSheet(file(), asked, clock.today());
        return made ? "made" : std::string(key(made.error().code)) + " " + made.error().field;
    }
    std::string text() const { return pageText(labelsPage(usual()), 400).toStdString(); }
    static std::string setLabels(const std::string& more) {
        return R"({"do":"set-labels","on":"2027-09-01",)" + more + "}";
    }
    LabelWordState state(const char* what) const {
        for (const LabelReminder& each : usual().reminders)
            if (each.word.what == what) return each.state;
        ADD_FAILURE() << what;
        return LabelWordState::Yours;
    }
};

TEST_F(LabelledJars, OneAJarFromTheStartCellOnOverTwoSheets) {
    const LabelSheet labels = sheet({.bottling = jars, .startCell = 5});
    ASSERT_EQ(labels.placed.size(), 30U);
    EXPECT_EQ(labels.sheets, 2) << "17 cells are left on the first of 21";
    const LabelAt& first = labels.placed.front();
    EXPECT_EQ(first.cell, 5);
    // Row 2, column 2 of 3 by 7: 7.25 + 66.0 and 15.15 + 38.1 mm.
    EXPECT_NEAR(first.leftMm, 73.25, 1e-9);
    EXPECT_NEAR(first.topMm, 53.25, 1e-9);
    EXPECT_EQ(labels.placed[16].cell, 21);
    EXPECT_EQ(labels.placed[17].sheet, 1);
    EXPECT_EQ(labels.placed[17].cell, 1);
    EXPECT_NEAR(labels.placed[17].leftMm, 7.25, 1e-9);
}

TEST_F(LabelledJars, WhatThePrinterIsOffIsTakenBack) {
    done(R"({"do":"move-labels","on":"2027-09-01","grid":"a4-3x7","right_mm":1.5,"down_mm":-0.5})");
    const LabelAt first = usual().placed.front();
    EXPECT_NEAR(first.leftMm, 5.75, 1e-9);
    EXPECT_NEAR(first.topMm, 15.65, 1e-9);
    const auto empty = emptyLabelSheet(file(), "a4-3x7", clock.today());
    ASSERT_TRUE(empty);
    EXPECT_EQ(empty->placed.size(), 21U);
    EXPECT_NEAR(empty->placed.front().leftMm, 5.75, 1e-9);
    EXPECT_NEAR(sheet({.bottling = jars, .grid = "a4-3x8"}).placed.front().topMm, 0.5, 1e-9)
        << "another grid has an offset of its own";
}

TEST_F(LabelledJars, EveryCellOfEveryGridLiesOnItsPaper) {
    for (const std::string& grid : labelGridsOf({})) {
        const auto empty = emptyLabelSheet(file(), grid, clock.today());
        ASSERT_TRUE(empty) << grid;
        for (const LabelAt& each : empty->placed) {
            EXPECT_GE(each.leftMm, 0) << grid;
            EXPECT_GE(each.topMm, 0) << grid;
            EXPECT_LE(each.leftMm + empty->grid.cellWidthMm, empty->paper.widthMm + 0.1) << grid;
            EXPECT_LE(each.topMm + empty->grid.cellHeightMm, empty->paper.heightMm + 0.1) << grid;
        }
    }
}

TEST_F(LabelledJars, BadQuestionsAreRefused) {
    EXPECT_EQ(refused({.bottling = Id<Bottling>{9}}), "not_found bottling");
    EXPECT_EQ(refused({.bottling = jars, .grid = "a5-2x2"}), "not_a_choice grid");
    EXPECT_EQ(refused({.bottling = jars, .startCell = 22}), "out_of_range start_cell");
    EXPECT_EQ(refused({.bottling = jars, .startCell = 0}), "out_of_range start_cell");
    EXPECT_EQ(refused({.bottling = jars, .count = 0}), "out_of_range count");
    EXPECT_EQ(refused({.bottling = jars, .kind = Id<GoodsKind>{77}}), "not_found goods_kind");
}

TEST_F(LabelledJars, TheInfantCautionStandsOnEveryLabelWhateverElse) {
    EXPECT_NE(text().find("Not for babies under 12 months."), std::string::npos);
    EXPECT_NE(text().find("454 g"), std::string::npos);
    EXPECT_NE(text().find("lot L27-1"), std::string::npos);
    EXPECT_NE(text().find("best before 10 Sep 2029"), std::string::npos);
    ASSERT_FALSE(usual().reminders.empty());
    EXPECT_EQ(usual().reminders.front().word.what, "infant_caution");
}

TEST_F(LabelledJars, RemindersSayWhatLacksInTheRegionChosen) {
    EXPECT_EQ(state("name_and_address"), LabelWordState::Lacks);
    done(setLabels(
        R"("producer":"Hill Bees","address":"1 Lane, Hill","label_region":"EU","origin":"")"));
    EXPECT_EQ(state("name_and_address"), LabelWordState::There);
    EXPECT_EQ(state("origin"), LabelWordState::Lacks);
    EXPECT_EQ(state("lot"), LabelWordState::There);
    EXPECT_EQ(state("figure_height"), LabelWordState::Yours) << "only a ruler knows";
    done(setLabels(R"("label_region":"US")"));
    // 454 g are 454 / 28.349523125 = 16.01 oz.
    EXPECT_NE(text().find("16.0 oz (454 g)"), std::string::npos);
}

TEST_F(LabelledJars, AWordForTheTasteIsNoFlower) {
    EXPECT_EQ(outcome(setLabels(R"("flower":"Heather")")), "missing flower_grounds");
    write([this](Write& file) {
        Lot lot = *file.find(summer);
        lot.traits.taste = "heather";
        file.change(lot);
    });
    EXPECT_EQ(text().find("eather"), std::string::npos) << "however it tastes";
    done(setLabels(
        R"("flower":"Heather","flower_grounds":"stood on the moor, nothing else in bloom")"));
    EXPECT_NE(text().find("Heather honey"), std::string::npos);
    EXPECT_EQ(outcome(R"({"do":"set-labels","on":"2027-09-02","flower":"Lime"})"),
              "missing flower_grounds")
        << "what was said of heather does not speak for lime";
    const QString words = pageText(labelWordsPage(file(), usual(), clock.today()), 300);
    EXPECT_TRUE(words.contains(QStringLiteral("stood on the moor")));
    done(R"({"do":"set-labels","on":"2027-09-03","flower":"-"})");
    EXPECT_EQ(text().find("Heather"), std::string::npos);
}

TEST_F(LabelledJars, TheSquareCodeIsALotCodeAndNothingElse) {
    const auto code = qrCode("L27-1");
    ASSERT_TRUE(code);
    EXPECT_EQ(code->side, 21) << "the smallest there is";
    EXPECT_EQ(code->dark.size(), 441U);
    EXPECT_FALSE(qrCode(""));
    EXPECT_FALSE(qrCode(std::string("a\0b", 3)));
    EXPECT_FALSE(qrCode(std::string(4000, 'x'))) << "longer than any holds";
}

}  // namespace
}  // namespace combwright
