// Sales, fairs and the sheets that go with jars, figures by hand.
#include "core/places/goods/goods.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/places/explain/explain_goods.h"
#include "core/places/goods/sales.h"
#include "core/places/pages/goods/fair_pages.h"
#include "core/places/pages/goods/goods_pages.h"
#include "core/places/pages/page_text.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

using test::day;
using testing::HasSubstr;
using testing::Not;

class GoodsPlaces : public test::DeedsTest {
  protected:
    void SetUp() override {
        clock.set("2028-12-20");
        done(R"({"do":"name-season","on":"2027-04-01","season":"Hill bees"}
{"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"open-run","on":"2027-08-08","name":"27-1","yard":"Hill"}
{"do":"fill-bucket","on":"2027-08-08","run":"27-1","mark":"B1","net_g":40000}
{"do":"add-goods","on":"2027-08-01","name":"454 g jar","net_g":454,"price":8.5}
{"do":"add-goods","on":"2027-08-01","name":"227 g jar","net_g":227}
{"do":"add-goods","on":"2027-08-01","name":"skep candle","what":"candle","price":6}
{"do":"set-prices","on":"2027-08-01","currency":"€"}
{"do":"fill-jars","on":"2027-09-01","bucket":{"bucket":"B1","run":"27-1"},"jars":"60 454 g, 10 227 g"}
{"do":"count-goods","on":"2027-11-20","goods_kind":"skep candle","count":12})");
    }
    /// 28 jars at 8.50 = 238.00 and 12 candles at 7.00 = 84.00: 322.00.
    void heldFair(const char* cash = R"(,"cash":352)") {
        done(
            R"({"do":"pack-fair","on":"2027-12-10","fair_name":"Advent","fair_day":"2027-12-11","place":"Church hall","goods":"40 454 g, 12 skep at 7","change_money":30}
{"do":"fair-home","on":"2027-12-11","fair":"Advent","home":"9 454 g, 2 broken, 1 given")" +
            std::string(cash) + "}");
    }
    FairSheet advent() const { return fairSheet(file(), fairs(file()).front()); }
    std::string text(const Page& page) const { return pageText(page).toStdString(); }
};

TEST_F(GoodsPlaces, AFairIsPackedAndTheRestIsSold) {
    heldFair();
    const FairSheet sheet = advent();
    ASSERT_EQ(sheet.rows.size(), 2U);
    EXPECT_EQ(sheet.rows[0].sold, 28) << "40 − 9 − 2 − 1";
    EXPECT_EQ(sheet.rows[0].takings, Money::hundredths(23'800));
    EXPECT_FALSE(sheet.rows[0].ranOut);
    EXPECT_EQ(sheet.rows[1].sold, 12) << "not named: none came home";
    EXPECT_TRUE(sheet.rows[1].ranOut);
    EXPECT_EQ(sheet.takings, Money::hundredths(32'200));
    EXPECT_EQ(sheet.earned, Money::hundredths(32'200)) << "352 − 30";
    EXPECT_EQ(sheet.difference, Money{});
    EXPECT_THAT(fairCashText(sheet).toStdString(), HasSubstr("That is what was sold."));
    EXPECT_THAT(text(fairPage(file(), sheet)), HasSubstr("40 sold, 322.00 €"));
    const auto why = explainFair(file(), sheet.fair);
    ASSERT_EQ(why.size(), 1U);
    EXPECT_EQ(why[0].working.steps[4].what, "goods_sold");
    EXPECT_EQ(why[0].working.steps[4].value, 28);
}

TEST_F(GoodsPlaces, CashThatDoesNotFitIsSaidAndNoMore) {
    heldFair(R"(,"cash":340)");
    EXPECT_EQ(advent().difference, Money::hundredths(-1'200));
    EXPECT_THAT(fairCashText(advent()).toStdString(), HasSubstr("12.00 € less than what was sold"));
    // Nobody said what was in the box in the morning: no difference is made up.
    done(
        R"({"do":"amend","on":"2027-12-12","fair":"Advent","set":{"change_money":null},"why":"not counted"})");
    EXPECT_FALSE(advent().earned);
    EXPECT_FALSE(advent().difference);
    EXPECT_THAT(fairCashText(advent()).toStdString(), HasSubstr("is not known"));
}

TEST_F(GoodsPlaces, WithoutAPriceTakingsStayUnknown) {
    done(
        R"({"do":"pack-fair","on":"2027-12-11","fair_name":"Advent","goods":"5 227 g","change_money":30}
{"do":"fair-home","on":"2027-12-11","fair":"Advent","home":"2","cash":40})");
    EXPECT_EQ(advent().sold, 3);
    EXPECT_EQ(advent().unpriced, 3);
    EXPECT_FALSE(advent().rows[0].takings);
    EXPECT_FALSE(advent().difference) << "nobody knows what should be in the box";
    EXPECT_THAT(fairSoldText(advent()).toStdString(), HasSubstr("3 of them without a price"));
}

TEST_F(GoodsPlaces, ThePackingListHasLinesToWriteOnAndLastYearBesideIt) {
    heldFair();
    done(
        R"({"do":"fill-jars","on":"2028-09-01","bucket":{"bucket":"B1","run":"27-1"},"jars":"20 454 g"}
{"do":"pack-fair","on":"2028-12-09","fair_name":"Advent","goods":"45 454 g"})");
    const FairSheet sheet = advent();
    EXPECT_EQ(sheet.fair.on, day("2028-12-09"));
    EXPECT_EQ(sheet.rows[0].packedBefore, 40);
    EXPECT_EQ(sheet.rows[0].soldBefore, 28);
    EXPECT_FALSE(sheet.rows[0].sold);
    EXPECT_FALSE(sheet.rows[0].line.bottling) << "of two fillings, nobody said which";
    const std::string page = text(fairPage(file(), sheet));
    EXPECT_THAT(page, HasSubstr("Packing list: Advent"));
    EXPECT_THAT(page, HasSubstr("40 packed, 28 sold"));
    EXPECT_THAT(page, HasSubstr("cash at night"));
    EXPECT_THAT(page, HasSubstr("12 months"));
    EXPECT_THAT(text(fairCardsPage(file(), sheet)), HasSubstr("8.50 €"));
}

// At the gate 10 at 8.50 = 85.00 and 3 given; with the fair 38 sold, 407.00; 1 broken more.
TEST_F(GoodsPlaces, AYearIsAddedUpByKindPlaceAndMonth) {
    done(R"({"do":"go-out","on":"2027-10-02","goods":"10 454 g","place":"gate"}
{"do":"go-out","on":"2027-10-02","went":"given","goods":"3 454 g"}
{"do":"go-out","on":"2027-11-05","went":"broken","goods":"1 454 g"}
{"do":"go-out","on":"2027-11-06","goods":"2 227 g","place":"gate"}
{"do":"go-out","on":"2027-11-07","went":"came back","goods":"1 454 g","price":8.5,"place":"gate"}
{"do":"go-out","on":"2027-11-08","bucket":{"bucket":"B1","run":"27-1"},"mass_g":2500,"price":20})");
    heldFair();
    const Sales year = sales(file(), 2027, day("2028-12-20"));
    EXPECT_EQ(year.until, day("2027-12-31"));
    ASSERT_EQ(year.kinds.size(), 3U);
    EXPECT_EQ(year.kinds[0].out.sold, 38) << "10 at the gate, 28 at the fair";
    EXPECT_EQ(year.kinds[0].out.given, 4);
    EXPECT_EQ(year.kinds[0].out.broken, 3);
    EXPECT_EQ(year.kinds[0].out.cameBack, 1);
    EXPECT_EQ(year.kinds[0].out.takings, Money::hundredths(31'450)) << "85 + 238 − 8.50";
    EXPECT_EQ(year.kinds[1].out.unpriced, 2);
    EXPECT_EQ(year.kinds[2].ranOut, day("2027-12-11"));
    ASSERT_EQ(year.places.size(), 3U);
    EXPECT_EQ(year.places[0].place, "Church hall");
    EXPECT_EQ(year.places[0].out.sold, 40);
    EXPECT_EQ(year.places[1].place, "gate");
    EXPECT_EQ(year.places[1].out.takings, Money::hundredths(7'650));
    EXPECT_EQ(year.places[2].place, "") << "not said";
    ASSERT_EQ(year.months.size(), 3U);
    EXPECT_EQ(year.months[0].month, 10U);
    EXPECT_EQ(year.months[2].out.takings, Money::hundredths(32'200));
    EXPECT_EQ(year.all.sold, 52) << "38 + 2 + 12";
    EXPECT_EQ(year.bulk.sold, Mass::grams(2'500));
    EXPECT_EQ(year.bulk.takings, Money::hundredths(2'000));
    ASSERT_EQ(year.wishes.size(), 1U);
    EXPECT_EQ(year.wishes[0].kind.name.text(), "skep candle");
    EXPECT_EQ(year.wishes[0].sold, 12);
    const std::string page = text(salesPage(file(), year));
    EXPECT_THAT(page, HasSubstr("314.50"));
    EXPECT_THAT(page, HasSubstr("2 without a price"));
    EXPECT_THAT(page, HasSubstr("not said"));
    EXPECT_THAT(page, HasSubstr("skep candle: all 12 sold at Advent"));
    EXPECT_THAT(page, HasSubstr("babies under 12 months"));
    // Jars: 60 − 10 − 3 − 1 + 1 − 40 + 9 = 16, and as the totals have it 60 − 38 − 4 − 3 + 1 = 16.
    EXPECT_EQ(goodsStock(file(), day("2027-12-31")).shelves[0].left, 16);
    EXPECT_FALSE(sales(file(), 2026, day("2028-12-20")).all.any());
}

// 0.6 kg of wax for 12.00 and 20 g of propolis for 9.00 went, and nothing else.
TEST_F(GoodsPlaces, WaxAndPropolisThatWereSoldStandInTheYear) {
    done(
        R"({"do":"cast-block","on":"2026-11-02","name":"L1","shade":"light","mass_g":2000}
{"do":"use-wax","on":"2026-11-20","block":"L1","went":"sold","mass_g":600,"price":12,"buyer":"joiner"}
{"do":"use-wax","on":"2026-11-21","block":"L1","went":"traded for foundation","mass_g":1000}
{"do":"use-wax","on":"2026-11-22","block":"L1","went":"lost","mass_g":10}
{"do":"note-propolis","on":"2026-10-01","went":"scraped","mass_g":45}
{"do":"note-propolis","on":"2026-10-05","went":"sold","mass_g":20,"price":9})");
    const Sales year = sales(file(), 2026, day("2028-12-20"));
    EXPECT_EQ(year.wax.sold, Mass::grams(600));
    EXPECT_EQ(year.wax.given, Mass::grams(1000));
    EXPECT_EQ(year.wax.takings.whole(), 12);
    EXPECT_EQ(year.propolis.sold, Mass::grams(20));
    EXPECT_EQ(year.propolis.takings.whole(), 9);
    const std::string page = text(salesPage(file(), year));
    EXPECT_THAT(page, Not(HasSubstr("Nothing went out")));
    EXPECT_THAT(page, AllOf(HasSubstr("600 g sold"), HasSubstr("20 g sold")));
    EXPECT_EQ(salesYears(file(), day("2028-12-20")).back(), 2026);
}

TEST_F(GoodsPlaces, TheShelfIsShownWithWhatIsKnown) {
    const GoodsStock stock = goodsStock(file(), day("2027-12-01"));
    EXPECT_EQ(stock.honeyInJars, Mass::grams(29'510)) << "60 × 454 + 10 × 227";
    const std::string page = text(goodsStockPage(file(), stock));
    EXPECT_THAT(page, HasSubstr("L27-1-1"));
    EXPECT_THAT(page, HasSubstr("60 filled"));
    EXPECT_THAT(page, Not(HasSubstr("Empty jars"))) << "of those nothing was written down";
    EXPECT_THAT(text(priceListPage(file(), stock)), Not(HasSubstr("227 g jar")))
        << "it has no price";
    EXPECT_THAT(text(priceCardsPage(file(), stock)), HasSubstr("burning candle"));
}

// EU table for 300 to 500 g: 3 % of 454 g is 13.62, up to 0.1 g 13.7. 440 lacks 14; 426 lacks 28,
// more than twice 13.7.
TEST_F(GoodsPlaces, TheScaleIsHeldAgainstTheTableOfThePlace) {
    FilledJars jars;
    jars.kind = *file().find(Id<GoodsKind>{1});
    jars.line.weighed = Count(3);
    jars.line.mean = Number::rounded(454);
    jars.line.lightest = Mass::grams(441);
    judgeNet(jars, "EU");
    EXPECT_EQ(jars.meanHolds, true);
    EXPECT_DOUBLE_EQ(*jars.deficitG, 13.7);
    EXPECT_EQ(jars.lightestShort, false) << "it lacks 13";
    jars.line.lightest = Mass::grams(440);
    judgeNet(jars, "UK");
    EXPECT_EQ(jars.lightestShort, true);
    EXPECT_EQ(jars.lightestFarShort, false);
    jars.line.lightest = Mass::grams(426);
    jars.line.mean = Number::rounded(453.9);
    judgeNet(jars, "EU");
    EXPECT_EQ(jars.lightestFarShort, true);
    EXPECT_EQ(jars.meanHolds, false);
    EXPECT_THAT(netJudgedText(jars).toStdString(), HasSubstr("not to be sold"));
    FilledJars us = jars;
    us.deficitG.reset();
    us.lightestShort.reset();
    us.lightestFarShort.reset();
    judgeNet(us, "US");
    EXPECT_FALSE(us.deficitG) << "only the mean is judged there";
    EXPECT_FALSE(us.lightestShort);
    EXPECT_THAT(netJudgedText(us).toStdString(), HasSubstr("is not known here"));
}

}  // namespace
}  // namespace combwright
