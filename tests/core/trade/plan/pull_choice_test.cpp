#include "core/trade/plan/pull_choice.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

namespace combwright {
namespace {

using PullPlace = PullChoice::Place;

PullBox ripeBox(std::string mark, double honeyG, double grossG = 0) {
    PullBox box;
    box.mark = std::move(mark);
    box.honeyG = honeyG;
    box.frames = 9;
    box.cappedShare = 1;
    box.waterPercent = 17;
    box.grossG = grossG > 0 ? grossG : honeyG + 5000;
    return box;
}

PullHive pullHiveOf(std::string mark, std::optional<double> nestG, std::vector<PullBox> boxes) {
    return {std::move(mark), nestG, 0, std::move(boxes)};
}

std::vector<std::string> pulledMarks(const std::vector<PullHive>& hives, const PullChoice& choice) {
    std::vector<std::string> marks;
    for (const PullPlace& each : choice.take)
        marks.push_back(hives[each.hive].boxes[each.box].mark);
    return marks;
}

std::optional<WhyLeft> pullWhyOf(const std::vector<PullHive>& hives, const PullChoice& choice,
                                 const std::string& mark) {
    for (const auto& each : choice.leave)
        if (hives[each.place.hive].boxes[each.place.box].mark == mark) return each.why;
    return std::nullopt;
}

using PullMarks = std::vector<std::string>;

// --- The rules, one by one -----------------------------------------------------------------------

TEST(PullChoice, WholeBoxesOnly) {
    // 18 kg in the nest, need 20: of 8 + 6 + 5 kg above 17 may go. No two leave 14, three leave 19.
    const std::vector<PullHive> hives{
        pullHiveOf("H1", 18000, {ripeBox("a", 8000), ripeBox("b", 6000), ripeBox("c", 5000)})};
    PullLimits limits;
    limits.winterNeedG = 20000;
    const PullChoice choice = choosePull(hives, limits);
    EXPECT_EQ(pulledMarks(hives, choice), (PullMarks{"a", "b"}));
    EXPECT_EQ(choice.honeyG, 14000);
    EXPECT_EQ(choice.boundG, 14000);
    EXPECT_TRUE(choice.proven);
    EXPECT_EQ(pullWhyOf(hives, choice, "c"), WhyLeft::HiveNeedsIt);
    ASSERT_EQ(choice.winter.size(), 1U);
    EXPECT_EQ(choice.winter[0].remainingG, 23000);
    EXPECT_EQ(choice.winter[0].shortG, 0);
}

TEST(PullChoice, FeedAndExpectedChangeCount) {
    std::vector<PullHive> hives{pullHiveOf("H1", 12000, {ripeBox("a", 10000)})};
    hives[0].expectedChangeG = -2000;
    PullLimits limits;
    limits.winterNeedG = 16000;
    limits.feedUpToG = 5999;
    PullChoice choice = choosePull(hives, limits);
    EXPECT_TRUE(choice.take.empty()) << "one gram short";
    EXPECT_EQ(choice.winter[0].remainingG, 20000);
    limits.feedUpToG = 6000;
    choice = choosePull(hives, limits);
    EXPECT_EQ(pulledMarks(hives, choice), PullMarks{"a"});
    EXPECT_EQ(choice.winter[0].remainingG, 10000);
    EXPECT_EQ(choice.winter[0].shortG, 6000) << "what is to be fed";
}

TEST(PullChoice, AHiveShortAnywayIsNotWrongOnlyShort) {
    const std::vector<PullHive> hives{pullHiveOf("H4", 8000, {ripeBox("M06", 6000)})};
    PullLimits limits;
    limits.winterNeedG = 20000;
    limits.feedUpToG = 3000;
    const PullChoice choice = choosePull(hives, limits);
    EXPECT_TRUE(choice.take.empty());
    EXPECT_EQ(pullWhyOf(hives, choice, "M06"), WhyLeft::HiveNeedsIt);
    EXPECT_EQ(choice.winter[0].remainingG, 14000);
    EXPECT_EQ(choice.winter[0].shortG, 6000);
    EXPECT_TRUE(choice.proven);
}

struct ReasonRow {
    const char* name;
    void (*spoil)(PullBox&);
    void (*limit)(PullLimits&);
    std::optional<WhyLeft> why;  ///< nothing: taken
};

const ReasonRow reasonRows[] = {
    {"as it is", [](PullBox&) {}, [](PullLimits&) {}, std::nullopt},
    {"held", [](PullBox& b) { b.held = b.brood = true; }, [](PullLimits&) {}, WhyLeft::Held},
    {"brood", [](PullBox& b) { b.brood = true; }, [](PullLimits&) {}, WhyLeft::Brood},
    {"capping not asked", [](PullBox& b) { b.cappedShare.reset(); }, [](PullLimits&) {},
     std::nullopt},
    {"capping unknown", [](PullBox& b) { b.cappedShare.reset(); },
     [](PullLimits& l) { l.minCappedShare = 0.75; }, WhyLeft::CappingNotKnown},
    {"capping unknown, water known", [](PullBox& b) { b.cappedShare.reset(); },
     [](PullLimits& l) { l.minCappedShare = 0.75, l.maxWaterPercent = 18.5; },
     WhyLeft::CappingNotKnown},
    {"open", [](PullBox& b) { b.cappedShare = 0.74; },
     [](PullLimits& l) { l.minCappedShare = 0.75; }, WhyLeft::NotCappedEnough},
    {"just capped", [](PullBox& b) { b.cappedShare = 0.75; },
     [](PullLimits& l) { l.minCappedShare = 0.75; }, std::nullopt},
    {"water unknown", [](PullBox& b) { b.waterPercent.reset(); },
     [](PullLimits& l) { l.maxWaterPercent = 18.5; }, WhyLeft::WaterNotKnown},
    {"wet", [](PullBox& b) { b.waterPercent = 18.6; },
     [](PullLimits& l) { l.maxWaterPercent = 18.5; }, WhyLeft::TooWet},
    {"just dry", [](PullBox& b) { b.waterPercent = 18.5; },
     [](PullLimits& l) { l.maxWaterPercent = 18.5; }, std::nullopt},
    {"open but dry: water decides", [](PullBox& b) { b.cappedShare = 0.1; },
     [](PullLimits& l) { l.minCappedShare = 0.75, l.maxWaterPercent = 18.5; }, std::nullopt},
    {"capped but wet: water decides", [](PullBox& b) { b.waterPercent = 19; },
     [](PullLimits& l) { l.minCappedShare = 0.75, l.maxWaterPercent = 18.5; }, WhyLeft::TooWet},
    {"mass not asked", [](PullBox& b) { b.grossG.reset(); }, [](PullLimits&) {}, std::nullopt},
    {"mass unknown", [](PullBox& b) { b.grossG.reset(); }, [](PullLimits& l) { l.carryG = 100000; },
     WhyLeft::MassNotKnown},
    {"nothing in it", [](PullBox& b) { b.honeyG = 0; }, [](PullLimits&) {}, WhyLeft::NothingInIt},
    {"honey unknown", [](PullBox& b) { b.honeyG.reset(); }, [](PullLimits&) {}, WhyLeft::LookFirst},
    {"frames", [](PullBox&) {}, [](PullLimits& l) { l.frames = 8; }, WhyLeft::LimitOnFrames},
    {"frames just", [](PullBox&) {}, [](PullLimits& l) { l.frames = 9; }, std::nullopt},
    {"mass", [](PullBox&) {}, [](PullLimits& l) { l.carryG = 16999; }, WhyLeft::LimitOnMass},
    {"mass just", [](PullBox&) {}, [](PullLimits& l) { l.carryG = 17000; }, std::nullopt},
    {"boxes", [](PullBox&) {}, [](PullLimits& l) { l.boxes = 0; }, WhyLeft::LimitOnBoxes},
    {"boards", [](PullBox&) {}, [](PullLimits& l) { l.clearerBoards = 0; }, WhyLeft::LimitOnBoards},
};

TEST(PullChoice, ReasonsToLeaveABox) {
    for (const ReasonRow& row : reasonRows) {
        std::vector<PullHive> hives{pullHiveOf("H1", 25000, {ripeBox("a", 12000)})};
        row.spoil(hives[0].boxes[0]);
        PullLimits limits;
        limits.winterNeedG = 20000;
        row.limit(limits);
        const PullChoice choice = choosePull(hives, limits);
        EXPECT_EQ(choice.take.empty(), row.why.has_value()) << row.name;
        EXPECT_EQ(pullWhyOf(hives, choice, "a"), row.why) << row.name;
        EXPECT_TRUE(choice.proven) << row.name;
    }
}

TEST(PullChoice, WordsOfTheReasonsAreTheirOwn) {
    std::vector<std::string_view> words;
    for (int i = 0; i <= static_cast<int>(WhyLeft::LimitOnBoards); ++i)
        words.push_back(key(static_cast<WhyLeft>(i)));
    for (const auto word : words) EXPECT_FALSE(word.empty());
    std::sort(words.begin(), words.end());
    EXPECT_EQ(std::adjacent_find(words.begin(), words.end()), words.end());
}

TEST(PullChoice, WhatNobodyLookedAtIsLookedAtFirst) {
    std::vector<PullHive> hives{pullHiveOf("C1", std::nullopt, {ripeBox("a", 12000)}),
                                pullHiveOf("C2", 30000, {ripeBox("b", 12000), ripeBox("c", 12000)}),
                                pullHiveOf("C3", 30000, {ripeBox("d", 12000)}),
                                pullHiveOf("C5", std::nullopt, {})};
    hives[1].boxes[0].honeyG.reset();
    hives[1].boxes[0].held = true;
    const PullChoice choice = choosePull(hives, {});
    EXPECT_EQ(pulledMarks(hives, choice), PullMarks{"d"});
    EXPECT_EQ(choice.lookFirst, (std::vector<std::size_t>{0, 1, 3}));
    EXPECT_EQ(pullWhyOf(hives, choice, "a"), WhyLeft::LookFirst);
    EXPECT_EQ(pullWhyOf(hives, choice, "b"), WhyLeft::Held);
    EXPECT_EQ(pullWhyOf(hives, choice, "c"), WhyLeft::LookFirst);
    ASSERT_EQ(choice.winter.size(), 1U);
    EXPECT_EQ(choice.winter[0].hive, 2U);
}

TEST(PullChoice, OneBoardIsOneHiveHoweverManyBoxes) {
    const std::vector<PullHive> hives{
        pullHiveOf("H1", 20000, {ripeBox("a", 15000)}),
        pullHiveOf("H2", 20000, {ripeBox("b", 9000), ripeBox("c", 9000)}),
    };
    PullLimits limits;
    limits.clearerBoards = 1;
    const PullChoice choice = choosePull(hives, limits);
    EXPECT_EQ(pulledMarks(hives, choice), (PullMarks{"b", "c"}));
    EXPECT_EQ(pullWhyOf(hives, choice, "a"), WhyLeft::LimitOnBoards);
}

TEST(PullChoice, OfEqualChoicesTheEarlierBoxes) {
    const std::vector<PullHive> hives{
        pullHiveOf("H1", 20000, {ripeBox("a", 12000, 17000), ripeBox("b", 12000, 17000)}),
        pullHiveOf("H2", 20000, {ripeBox("c", 12000, 17000), ripeBox("d", 12000, 17000)}),
    };
    PullLimits limits;
    limits.carryG = 3 * 17000;
    EXPECT_EQ(pulledMarks(hives, choosePull(hives, limits)), (PullMarks{"a", "b", "c"}));
    limits = {};
    limits.winterNeedG = 32000;  // each hive can give one of two equal boxes
    EXPECT_EQ(pulledMarks(hives, choosePull(hives, limits)), (PullMarks{"a", "c"}));
}

TEST(PullChoice, FractionsAreRoundedSoThatNoLimitBreaks) {
    const std::vector<PullHive> hives{pullHiveOf("H1", 10000.0004, {ripeBox("a", 5000.0009)})};
    PullLimits limits;
    limits.winterNeedG = 10000.0004;
    EXPECT_TRUE(choosePull(hives, limits).take.empty()) << "0.4 mg are not counted on";
    limits.winterNeedG = 9999.999;
    const PullChoice choice = choosePull(hives, limits);
    EXPECT_EQ(choice.take.size(), 1U);
    EXPECT_DOUBLE_EQ(choice.honeyG, 5000.0009) << "the answer itself is not rounded";
    // 9 frames · 0.85 · 1.6 kg is a hair over 12240 g in floating point.
    limits.winterNeedG = 10000;
    const double reckoned = 9 * 0.85 * 1600;
    const std::vector<PullHive> other{pullHiveOf("H1", 10000, {ripeBox("a", reckoned, reckoned)})};
    limits.carryG = 12240;
    EXPECT_EQ(choosePull(other, limits).take.size(), 1U);
}

TEST(PullChoice, NoHives) {
    const PullChoice choice = choosePull({}, {});
    EXPECT_TRUE(choice.take.empty());
    EXPECT_EQ(choice.honeyG, 0);
    EXPECT_EQ(choice.boundG, 0);
    EXPECT_TRUE(choice.proven);
}

TEST(PullChoice, TwentyBoxesOnOneHive) {
    // More than are tried in every combination: what is left out of the search is filled up, and
    // the bound says how far off that may be.
    std::vector<PullBox> boxes;
    for (int i = 0; i < 20; ++i) boxes.push_back(ripeBox("b" + std::to_string(i), 1000 + 37 * i));
    const std::vector<PullHive> all{pullHiveOf("H", 20000, boxes)};
    PullLimits limits;
    limits.winterNeedG = 20000;
    const PullChoice everything = choosePull(all, limits);
    EXPECT_EQ(everything.take.size(), 20U);
    EXPECT_TRUE(everything.proven);
    limits.winterNeedG = 25000;
    const PullChoice some = choosePull(all, limits);
    // Which sums up to what can be spared 20 boxes make, by a table.
    const int spare = static_cast<int>(everything.honeyG) - 5000;
    std::vector<bool> reached(static_cast<std::size_t>(spare) + 1, false);
    reached[0] = true;
    for (const PullBox& box : boxes)
        for (int sum = spare; sum >= static_cast<int>(*box.honeyG); --sum)
            if (reached[static_cast<std::size_t>(sum - static_cast<int>(*box.honeyG))])
                reached[static_cast<std::size_t>(sum)] = true;
    int best = spare;
    while (!reached[static_cast<std::size_t>(best)]) --best;
    EXPECT_LE(some.honeyG, best);
    EXPECT_GE(some.boundG, best);
    EXPECT_GE(some.winter[0].remainingG, 25000);
    EXPECT_GT(some.honeyG, 0.98 * best);
    EXPECT_EQ(some.proven, some.honeyG == some.boundG);
}

TEST(PullChoice, WorkingNamesTheHoney) {
    Working working;
    choosePull({pullHiveOf("H1", 25000, {ripeBox("a", 12000)})}, {}, &working);
    const auto step = std::find_if(working.steps.begin(), working.steps.end(),
                                   [](const auto& each) { return each.what == "honey_taken"; });
    ASSERT_NE(step, working.steps.end());
    EXPECT_EQ(step->value, 12000);
}

// --- Against trying every set of boxes -----------------------------------------------------------

/// The rules said once more, over all sets, in the order in which equals are preferred.
struct EverySet {
    const std::vector<PullHive>& hives;
    const PullLimits& limits;
    std::vector<PullPlace> places = {};
    double bestHoney = -1;
    std::vector<PullPlace> best = {};

    bool ripe(const PullBox& box) const {
        if (box.held || box.brood) return false;
        if (limits.minCappedShare && !box.cappedShare) return false;
        if (limits.maxWaterPercent && !box.waterPercent) return false;
        if (limits.carryG && !box.grossG) return false;
        if (limits.maxWaterPercent) return *box.waterPercent <= *limits.maxWaterPercent;
        return !limits.minCappedShare || *box.cappedShare >= *limits.minCappedShare;
    }

    bool allowed(const std::vector<PullPlace>& set) const {
        double gross = 0;
        std::int64_t frames = 0;
        std::int64_t pulledFrom = 0;
        for (std::size_t h = 0; h < hives.size(); ++h) {
            double stays = hives[h].nestStoresG.value_or(0) + hives[h].expectedChangeG;
            bool any = false;
            bool unknown = !hives[h].nestStoresG;
            for (std::size_t b = 0; b < hives[h].boxes.size(); ++b) {
                const PullBox& box = hives[h].boxes[b];
                unknown = unknown || !box.honeyG;
                if (std::find(set.begin(), set.end(), PullPlace{h, b}) == set.end()) {
                    stays += box.honeyG.value_or(0);
                    continue;
                }
                if (!ripe(box) || box.honeyG.value_or(0) == 0) return false;
                any = true;
                frames += box.frames;
                gross += box.grossG.value_or(0);
            }
            if (any && (unknown || stays + limits.feedUpToG < limits.winterNeedG)) return false;
            pulledFrom += any ? 1 : 0;
        }
        return (!limits.frames || frames <= *limits.frames) &&
               (!limits.carryG || gross <= *limits.carryG) &&
               (!limits.boxes || static_cast<std::int64_t>(set.size()) <= *limits.boxes) &&
               (!limits.clearerBoards || pulledFrom <= *limits.clearerBoards);
    }

    void run() {
        for (std::size_t h = 0; h < hives.size(); ++h)
            for (std::size_t b = 0; b < hives[h].boxes.size(); ++b) places.push_back({h, b});
        for (std::uint32_t mask = 1U << places.size(); mask-- > 0;) {
            std::vector<PullPlace> set;
            double honey = 0;
            for (std::size_t i = 0; i < places.size(); ++i)
                if ((mask >> (places.size() - 1 - i) & 1U) != 0) {
                    set.push_back(places[i]);
                    honey += hives[places[i].hive].boxes[places[i].box].honeyG.value_or(0);
                }
            if (honey > bestHoney && allowed(set)) {
                bestHoney = honey;
                best = set;
            }
        }
    }
};

double pullDraw(std::mt19937& random, int low, int high, int step) {
    return low +
           step * static_cast<int>(random() % static_cast<std::uint32_t>((high - low) / step + 1));
}

std::vector<PullHive> randomHives(std::mt19937& random, int step) {
    std::vector<PullHive> hives;
    int boxes = 0;
    for (int h = 0; h < 4 && boxes < 9; ++h) {
        PullHive hive =
            pullHiveOf("H" + std::to_string(h), pullDraw(random, 8000, 26000, step), {});
        hive.expectedChangeG = pullDraw(random, -3000, 3000, step);
        if (random() % 12 == 0) hive.nestStoresG.reset();
        for (std::size_t b = 0; b < 1 + random() % 4; ++b, ++boxes) {
            PullBox box = ripeBox("b" + std::to_string(boxes), pullDraw(random, 0, 16000, step));
            box.grossG = *box.honeyG + pullDraw(random, 4000, 6000, step);
            box.frames = 8 + static_cast<int>(random() % 3);
            box.cappedShare = pullDraw(random, 0, 100, 5) / 100;
            box.waterPercent = pullDraw(random, 160, 200, 1) / 10;
            if (random() % 12 == 0) box.cappedShare.reset();
            if (random() % 12 == 0) box.waterPercent.reset();
            if (random() % 12 == 0) box.grossG.reset();
            if (random() % 30 == 0) box.honeyG.reset();
            box.brood = random() % 15 == 0;
            box.held = random() % 15 == 0;
            hive.boxes.push_back(std::move(box));
        }
        hives.push_back(std::move(hive));
    }
    return hives;
}

PullLimits randomLimits(std::mt19937& random, bool shared, int step) {
    PullLimits limits;
    limits.winterNeedG = pullDraw(random, 15000, 25000, step);
    if (random() % 2) limits.feedUpToG = pullDraw(random, 0, 8000, step);
    if (random() % 4 == 0) limits.minCappedShare = 0.3;
    if (random() % 4 == 0) limits.maxWaterPercent = 19.2;
    if (!shared) return limits;
    if (random() % 2) limits.frames = static_cast<std::int64_t>(random() % 60);
    if (random() % 2) limits.carryG = pullDraw(random, 0, 100000, step);
    if (random() % 2) limits.boxes = static_cast<std::int64_t>(random() % 7);
    if (random() % 2) limits.clearerBoards = static_cast<std::int64_t>(random() % 4);
    return limits;
}

/// Adding any box left for a shared reason or the hive's need must indeed not be allowed.
void expectReasonsTrue(const EverySet& oracle, const PullChoice& choice, int at) {
    for (const auto& each : choice.leave) {
        if (each.why == WhyLeft::NothingInIt) continue;
        std::vector<PullPlace> more = choice.take;
        more.push_back(each.place);
        EXPECT_FALSE(oracle.allowed(more)) << at << " " << key(each.why);
    }
}

void expectAgreement(unsigned seed, bool shared, int step, int cases) {
    std::mt19937 random(seed);
    int taken = 0;
    for (int i = 0; i < cases; ++i) {
        const auto hives = randomHives(random, step);
        const PullLimits limits = randomLimits(random, shared, step);
        EverySet oracle{hives, limits};
        oracle.run();
        const PullChoice choice = choosePull(hives, limits);
        EXPECT_EQ(choice.honeyG, oracle.bestHoney) << i;
        EXPECT_EQ(choice.take, oracle.best) << i;
        EXPECT_TRUE(choice.proven) << i;
        EXPECT_EQ(choice.boundG, choice.honeyG) << i;
        EXPECT_TRUE(oracle.allowed(choice.take)) << i;
        EXPECT_EQ(choice.take.size() + choice.leave.size(), oracle.places.size()) << i;
        EXPECT_EQ(choice.winter.size() + choice.lookFirst.size(), hives.size()) << i;
        expectReasonsTrue(oracle, choice, i);
        taken += static_cast<int>(choice.take.size());
    }
    EXPECT_GT(taken, cases / 2) << "cases in which nothing can be taken test nothing";
}

TEST(PullChoiceEverySet, WithoutSharedLimits) { expectAgreement(1, false, 1, 400); }
TEST(PullChoiceEverySet, WithSharedLimits) { expectAgreement(2, true, 1, 800); }
TEST(PullChoiceEverySet, CoarseMassesWithTies) { expectAgreement(3, true, 2000, 800); }

}  // namespace
}  // namespace combwright
