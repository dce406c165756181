// Paper for the wax bench: what can hurt stands on every sheet that goes to the pot or goes away
// with what was made there.
#include "core/places/pages/wax_bench/wax_pages.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/places/pages/page_text.h"
#include "core/places/pages/wax_bench/candle_plan_page.h"
#include "core/places/pages/wax_bench/wax_words.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

using test::day;
using testing::HasSubstr;
using testing::Not;

class WaxPaper : public test::DeedsTest {
  protected:
    void SetUp() override {
        clock.set("2027-11-13");
        done(R"({"do":"open-run","on":"2027-08-08","name":"27-1"}
{"do":"gather-wax","on":"2027-08-09","name":"Hill cappings","source":"cappings","state":"drained","shade":"light","runs":"27-1","raw_g":8000,"kept":"open"})");
    }
    WaxBench bench() const { return waxBench(file(), day("2027-11-13")); }
    static std::string text(const Page& page) { return pageText(page).simplified().toStdString(); }
    void barkCup() {
        done(R"({"do":"add-goods","on":"2027-10-01","name":"bark light","what":"candle","price":9}
{"do":"add-mould","on":"2027-10-01","name":"Bark cups","goods_kind":"bark light","cavities":10,"volume_ml":110,"diameter_mm":60,"one_way":true,"made_of":"bark","wick":"#3"})");
    }
};

// 8,000 g drained give 40 to 50 %, 3.2 to 4.0 kg.
TEST_F(WaxPaper, TheBatchSheetCarriesTheSafetyWords) {
    const std::string sheet = text(nextBatchSheetPage(file(), bench()));
    for (const char* part : {"Hill cappings", "27-1", "3.20 kg to 4.00 kg", "over water",
                             "Thermometer", "Never leave", "Lid", "extinguisher", "fire blanket",
                             "No water on burning wax", "pot OFF at", "foot scraped", "entered by"})
        EXPECT_THAT(sheet, HasSubstr(part));
}

TEST_F(WaxPaper, WithoutABatchItIsAnEmptySheetWithTheSameWords) {
    done(
        R"({"do":"cast-block","on":"2027-11-02","name":"L","batch":"Hill cappings","shade":"light","mass_g":3400})");
    const std::string sheet = text(nextBatchSheetPage(file(), bench()));
    EXPECT_THAT(sheet, Not(HasSubstr("Hill cappings")));
    EXPECT_THAT(sheet, HasSubstr("No water on burning wax"));
}

TEST_F(WaxPaper, AHolderNobodyBurntIsNotForSale) {
    barkCup();
    EXPECT_THAT(text(careCardsPage(file(), bench())), HasSubstr("NOT FOR SALE"));
    EXPECT_THAT(mouldText(bench().moulds.front()).toStdString(), HasSubstr("not for sale"));
    done(
        R"({"do":"test-burn","on":"2027-11-01","mould":"Bark cups","hours":12,"verdict":"burns well"})");
    const std::string cards = text(careCardsPage(file(), bench()));
    EXPECT_THAT(cards, Not(HasSubstr("NOT FOR SALE")));
    EXPECT_THAT(cards, HasSubstr("Never leave it burning alone"));
    EXPECT_THAT(cards, HasSubstr("Burns about"));
}

TEST_F(WaxPaper, ATinIsNotSaidToBurn) {
    barkCup();
    done(
        R"({"do":"add-mould","on":"2027-10-01","name":"Tins","goods_kind":"bark light","cavities":10,"volume_ml":110,"one_way":true,"made_of":"tin","wick":"#3"})");
    EXPECT_THAT(mouldText(bench().moulds.back()).toStdString(),
                AllOf(HasSubstr("not for sale"), Not(HasSubstr("and burns"))));
    done(
        R"({"do":"test-burn","on":"2027-11-01","mould":"Bark cups","hours":12,"verdict":"burns well"})");
    EXPECT_THAT(text(careCardsPage(file(), bench())),
                AllOf(HasSubstr("NOT FOR SALE in the holder Tins"), Not(HasSubstr("burns, and"))));
}

TEST_F(WaxPaper, TheTestOfTheWickInUseIsNotHiddenByATrialOfAnother) {
    done(
        R"({"do":"add-mould","on":"2027-10-01","name":"Skeps","cavities":4,"volume_ml":47,"diameter_mm":45,"wick":"#1"}
{"do":"test-burn","on":"2027-10-05","mould":"Skeps","hours":9,"verdict":"tunnels"}
{"do":"test-burn","on":"2027-10-06","mould":"Skeps","hours":9,"verdict":"burns well"}
{"do":"test-burn","on":"2027-10-07","mould":"Skeps","wick":"#2","hours":2,"verdict":"smokes"})");
    const std::string wick = mouldWickText(bench().moulds.front()).toStdString();
    EXPECT_THAT(wick, AllOf(HasSubstr("#1 burnt"), HasSubstr("burns well"), HasSubstr("#2 burnt"),
                            HasSubstr("smokes"), Not(HasSubstr("tunnels"))));
    EXPECT_LT(wick.find("burns well"), wick.find("smokes")) << "the wick in use first";
}

TEST_F(WaxPaper, PropolisCanCauseAnAllergy) {
    EXPECT_THAT(text(propolisCardPage(file(), day("2027-11-13"))),
                AllOf(HasSubstr("allergy"), HasSubstr("gloves"), HasSubstr("rash")));
}

TEST_F(WaxPaper, WhatWasWashedAndLeftIsSaid) {
    done(R"({"do":"work-wax","on":"2027-11-12","batch":"Hill cappings","work":"washed"})");
    EXPECT_THAT(batchWaitsText(bench().batches.front()).toStdString(), HasSubstr("not melted"));
}

TEST_F(WaxPaper, NothingPlannedIsAPageThatSaysSo) {
    EXPECT_THAT(text(nextCandlePlanPage(file(), day("2027-11-13"))),
                HasSubstr("No candles are wanted"));
}

TEST_F(WaxPaper, TheBalanceCloses) {
    done(
        R"({"do":"cast-block","on":"2027-11-02","name":"L","batch":"Hill cappings","shade":"light","mass_g":3400}
{"do":"use-wax","on":"2027-11-03","block":"L","went":"sold","mass_g":400,"price":6})");
    const std::string page = text(waxBalancePage(file(), bench()));
    EXPECT_THAT(page, HasSubstr("closes at"));
    EXPECT_THAT(page, HasSubstr("3.00"));
    EXPECT_THAT(page, HasSubstr("0.40"));
}

}  // namespace
}  // namespace combwright
