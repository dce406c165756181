// The evenings to the December fair as a board, by hand: 12 evenings, 48 skeps by four cavities, 40
// tapers of which 37 have wax, 12 pillars of which 3 have.
#include "core/places/wax_bench/evening_board.h"

#include <gtest/gtest.h>

#include "core/places/wax_bench/mould_change.h"
#include "tests/support/candle_lines.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

using test::day;

class EveningsToTheFair : public test::DeedsTest {
  protected:
    void SetUp() override {
        clock.set("2027-11-13");
        done(test::candleStockLines);
        done(test::candleBlockLines);
        done(test::candleWishLines);
    }
    CandleEvenings plan(const std::vector<CavitiesIf>& whatIf = {}) {
        const auto all = candleEvenings(file(), day("2027-11-13"), {}, {}, whatIf);
        EXPECT_TRUE(all && *all);
        return all && *all ? **all : CandleEvenings{};
    }
    EveningBoard board() { return eveningBoard(file(), plan()); }
    Id<GoodsKind> kind(const char* called) {
        return file().first<GoodsKind>({is("name", test::name(called))})->id;
    }
    static std::int64_t countOf(const EveningRow& row, EveningCandles::State state) {
        std::int64_t many = 0;
        for (const auto& cell : row.cells)
            for (const EveningCandles& each : cell)
                if (each.state == state) many += each.count;
        return many;
    }
};

TEST_F(EveningsToTheFair, ColumnsAreEveningsAndRowsKinds) {
    const EveningBoard all = board();
    ASSERT_EQ(all.columns.size(), 12U);
    EXPECT_EQ(all.columns.front().day, day("2027-11-15"));
    EXPECT_EQ(all.columns.back().day, day("2027-12-10"));
    EXPECT_EQ(all.weekdays, "Mon, Wed, Fri");
    EXPECT_EQ(all.last, day("2027-12-10"));
    EXPECT_FALSE(all.lastKept);
    ASSERT_EQ(all.rows.size(), 3U);
    EXPECT_EQ(all.rows[0].form, CandleForm::Domed);
    EXPECT_EQ(all.rows[1].form, CandleForm::Taper);
    EXPECT_EQ(all.rows[2].form, CandleForm::Pillar);
    EXPECT_EQ(all.rows[0].cavitiesInFile, 4);
}

TEST_F(EveningsToTheFair, EachCandleHasItsWaxOrNone) {
    const EveningBoard all = board();
    using State = EveningCandles::State;
    EXPECT_EQ(countOf(all.rows[0], State::Planned), 48);
    EXPECT_EQ(countOf(all.rows[0], State::NoWax), 0);
    EXPECT_EQ(countOf(all.rows[1], State::Planned), 37);
    EXPECT_EQ(countOf(all.rows[1], State::NoWax), 3);
    EXPECT_EQ(countOf(all.rows[2], State::Planned), 3);
    EXPECT_EQ(countOf(all.rows[2], State::NoWax), 9);
    // 30 of mid on five evenings, then light.
    EXPECT_EQ(all.rows[1].cells[4], (std::vector<EveningCandles>{{State::Planned, "mid", 6}}));
    EXPECT_EQ(all.rows[1].cells[5], (std::vector<EveningCandles>{{State::Planned, "light", 6}}));
    EXPECT_EQ(all.rows[1].cells[6],
              (std::vector<EveningCandles>{{State::Planned, "light", 1}, {State::NoWax, "", 3}}));
    EXPECT_EQ(all.rows[0].byMoulds, 48);
    EXPECT_EQ(all.rows[0].missing, 12);
    EXPECT_EQ(all.rows[0].cavitiesToAdd, 1);
    EXPECT_EQ(all.rows[1].byWax, 37);
    EXPECT_EQ(all.rows[1].finish, 37);
    EXPECT_EQ(all.rows[2].finish, 3);
    EXPECT_EQ(all.rows[1].evenings, 7);
}

TEST_F(EveningsToTheFair, WhatWasPouredStandsOnItsEvening) {
    done(R"({"do":"pour-candles","on":"2027-11-12","mould":"Skeps","good":4,"blocks":"L 180 g"})");
    const EveningBoard all = board();
    ASSERT_EQ(all.columns.size(), 13U);
    EXPECT_TRUE(all.columns.front().past);
    EXPECT_EQ(all.rows[0].cells[0],
              (std::vector<EveningCandles>{{EveningCandles::State::Done, "light", 4}}));
    EXPECT_EQ(all.rows[0].byMoulds, 52);
    EXPECT_EQ(all.rows[0].wanted, 60);
}

TEST_F(EveningsToTheFair, WhatIfIsAskedAndNothingKept) {
    const std::string before = season.dump();
    const CandleEvenings five = plan({{kind("skep"), 5}});
    EXPECT_EQ(five.needs.kinds[0].possible, 60);
    EXPECT_EQ(five.needs.kinds[0].missing, 0);
    EXPECT_EQ(season.dump(), before);
    EXPECT_EQ(plan().needs.kinds[0].possible, 48);
}

TEST_F(EveningsToTheFair, LimitsToTheDigit) {
    const auto rows = candleLimits(plan());
    ASSERT_EQ(rows.size(), 5U);
    EXPECT_NEAR(rows[0].have, 6750, 1e-6);
    EXPECT_NEAR(rows[0].need, 9621.05, 0.005);
    EXPECT_NEAR(rows[0].over, -2871.05, 0.005);
    EXPECT_EQ(rows[1].what, CandleLimit::Moulds);
    EXPECT_EQ(rows[1].name, "skep");
    EXPECT_DOUBLE_EQ(rows[1].over, -12);
    EXPECT_EQ(rows[1].evenings, 15);
    EXPECT_EQ(rows[2].name, "#1");
    EXPECT_NEAR(rows[2].need, 7.2, 1e-9);
    EXPECT_NEAR(rows[2].over, -2.2, 1e-9);
    EXPECT_NEAR(rows[3].over, 3.0, 1e-9);
    EXPECT_NEAR(rows[4].over, 0.6, 1e-9);
    EXPECT_EQ(rows[4].pieces, 12);
    const CandleEvenings all = plan();
    EXPECT_EQ(withThisWax(all, all.needs).counts, (std::vector<std::int64_t>{60, 37, 3}));
    EXPECT_EQ(withThisWax(all, all.mixed).counts, (std::vector<std::int64_t>{60, 40, 3}));
    EXPECT_NEAR(withThisWax(all, all.mixed).leftG, 66, 0.5);
}

TEST_F(EveningsToTheFair, ANumberOfCavitiesIsMouldsThatComeAndGo) {
    const MouldChange more = mouldChange(file(), kind("skep"), 5, day("2027-11-13"));
    EXPECT_TRUE(more.gone.empty());
    ASSERT_TRUE(more.comes);
    EXPECT_EQ(more.comes->cavities, Count(1));
    EXPECT_EQ(more.comes->name.text(), "Skeps 2");
    EXPECT_EQ(more.comes->wick, "#1");
    const MouldChange fewer = mouldChange(file(), kind("taper"), 4, day("2027-11-13"));
    ASSERT_EQ(fewer.gone.size(), 1U);
    ASSERT_TRUE(fewer.comes);
    EXPECT_EQ(fewer.comes->cavities, Count(4));
    EXPECT_FALSE(mouldChange(file(), kind("pillar"), 2, day("2027-11-13")).anything());
    const MouldChange none = mouldChange(file(), kind("pillar"), 0, day("2027-11-13"));
    EXPECT_EQ(none.gone.size(), 1U);
    EXPECT_FALSE(none.comes);
}

}  // namespace
}  // namespace combwright
