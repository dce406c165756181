// The card of a dead colony and its words; scenario A's step.
#include "core/places/health/dead_outs.h"

#include <gtest/gtest.h>

#include "core/places/pages/health/dead_out_pages.h"
#include "core/places/pages/page_text.h"
#include "core/storage/queries/holds.h"
#include "core/words/dead_out_words.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

using test::day;

TEST(DeadOutWords, EveryKeyOfTheTradeHasItsWord) {
    for (int i = 0; i <= static_cast<int>(LooksLike::Chilled); ++i)
        EXPECT_TRUE(hasDeadOutWord(key(static_cast<LooksLike>(i)))) << i;
    for (int i = 0; i <= static_cast<int>(CombUse::Never); ++i)
        EXPECT_TRUE(hasDeadOutWord(key(static_cast<CombUse>(i)))) << i;
    for (int i = 0; i <= static_cast<int>(DoToday::HoneyToBeesOnly); ++i)
        EXPECT_TRUE(hasDeadOutWord(key(static_cast<DoToday>(i)))) << i;
    for (int i = 0; i <= static_cast<int>(SampleToKeep::BeesForSpores); ++i)
        EXPECT_TRUE(hasDeadOutWord(key(static_cast<SampleToKeep>(i)))) << i;
    EXPECT_FALSE(hasDeadOutWord("a whim"));
}

class DeadOutCards : public test::DeedsTest {
  protected:
    // Scenario A: two of Orchard's double deeps found dead on 5 April, with 20 frames each.
    void SetUp() override {
        done(R"(
{"do":"add-yard","on":"2026-04-01","yard_name":"Orchard"}
{"do":"add-hive","on":"2026-04-01","yard":"Orchard","mark":"O1","boxes":"deep D1 10 drawn, deep D2 10 drawn","origin":"overwintered"}
{"do":"add-hive","on":"2026-04-01","yard":"Orchard","mark":"O2","boxes":"deep D3 10 drawn, deep D4 10 drawn","origin":"overwintered"}
{"do":"add-hive","on":"2026-04-01","yard":"Orchard","mark":"O3","boxes":"deep D5 10 drawn","origin":"overwintered"}
{"do":"end-colony","on":"2027-04-05","hive":"O1","ending":"winter loss"}
{"do":"end-colony","on":"2027-04-05","hive":"O2","ending":"winter loss"})");
    }
    std::vector<DeadOutCard> cards(const char* on = "2027-04-05") const {
        return deadOuts(file(), day(on));
    }
    void starved(const char* hive) {
        done(
            R"({"do":"record-dead-out","on":"2027-04-05","hive":")" + std::string(hive) +
            R"(","cluster":"heads in cells","stores_near":"away","brood_seen":"none","ropy":false,)"
            R"("scale":false,"cause":"starved","by":"the keeper"})");
    }
};

TEST_F(DeadOutCards, NothingOfTwoDeadOutsIsUsableUntilTheyAreRecorded) {
    EXPECT_TRUE(cards("2027-04-04").empty());
    std::int64_t boxes = 0;
    std::int64_t frames = 0;
    std::int64_t floors = 0;
    std::int64_t lids = 0;
    for (const DeadOutCard& card : cards()) {
        EXPECT_TRUE(card.unanswered());
        EXPECT_EQ(card.reading.combs, CombUse::Hold);
        EXPECT_TRUE(card.reading.causes.empty());
        EXPECT_EQ(card.stillToAnswer.size(), 4U);
        boxes += static_cast<std::int64_t>(card.boxes.size());
        frames += card.frames.at(FrameUse::Drawn);
        floors += card.floors;
        lids += card.lids;
    }
    EXPECT_EQ(boxes, 4);
    EXPECT_EQ(frames, 40);
    EXPECT_EQ(floors, 2);
    EXPECT_EQ(lids, 2);
    const HeldThings held = heldThings(file(), day("2027-04-05"));
    for (const Frame& frame : file().all<Frame>())
        EXPECT_EQ(useOf(frame, held.holds(frame)) == FrameUse::Held,
                  file().find(*frame.box)->mark != "D5");

    starved("O1");
    EXPECT_FALSE(cards().back().hold) << "released ones come last";
    EXPECT_EQ(cards().back().reading.causes, std::vector<LooksLike>{LooksLike::Starvation});
    EXPECT_EQ(cards().back().heldFrames(), 0);
    starved("O2");
    EXPECT_TRUE(heldThings(file(), day("2027-04-05")).boxes.empty());
}

// Scenario D: both recorded as small cluster and chilled brood; the eight combs with dead brood
// stay with their verdict.
TEST_F(DeadOutCards, DeadBroodIsStillHeldByItsVerdictOnceItIsRecorded) {
    // As the bench leaves them.
    const auto frames = file().where<Frame>({is("box", box("D1").id)});
    ASSERT_TRUE(season.perform({"check-frames", "{}", {}, {}}, [&](Write& write) -> Result<void> {
        for (std::size_t n = 0; n < 8; ++n) {
            Frame frame = frames[n];
            frame.faults = "D";
            frame.verdict = Verdict::Hold;
            write.change(frame);
        }
        return {};
    }));
    for (const char* hive : {"O1", "O2"})
        done(R"({"do":"record-dead-out","on":"2027-04-06","hive":")" + std::string(hive) +
             R"(","cluster":"small","brood_seen":"chilled","ropy":false,"scale":false,)"
             R"("cause":"too few bees","by":"the keeper"})");
    const HeldThings held = heldThings(file(), day("2027-04-06"));
    std::map<FrameUse, int> uses;
    for (const Frame& frame : file().all<Frame>()) ++uses[useOf(frame, held.holds(frame))];
    EXPECT_TRUE(held.boxes.empty());
    EXPECT_EQ(cards("2027-04-06").front().reading.causes,
              std::vector<LooksLike>{LooksLike::Chilled});
    EXPECT_EQ(uses[FrameUse::Held], 8);
    EXPECT_EQ(uses[FrameUse::Drawn], 42);
}

TEST_F(DeadOutCards, OnceSuspectedStaysWrittenDown) {
    done(R"({"do":"record-dead-out","on":"2027-04-05","hive":"O1","scale":true})");
    DeadOutCard card = cards().front();
    EXPECT_EQ(card.hold->why, HoldWhy::SuspectedDisease);
    EXPECT_EQ(card.reading.combs, CombUse::Quarantine);
    EXPECT_EQ(card.reading.today.front(), DoToday::CallInspector);
    EXPECT_EQ(card.reading.sample, SampleToKeep::LeaveToInspector);
    starved("O1");
    card = *deadOutCard(file(), card.colony.id, day("2027-04-05"));
    EXPECT_EQ(card.reading.combs, CombUse::Quarantine) << "a later no does not lower it";
    done(R"({"do":"release-hold","on":"2027-04-20","hold":"#)" +
         std::to_string(card.hold->id.number) +
         R"(","lifted_by":"laboratory","grounds":"negative"})");
    card = *deadOutCard(file(), card.colony.id, day("2027-04-20"));
    EXPECT_FALSE(card.hold);
    EXPECT_TRUE(card.everSuspected);
    const QString text = pageText(deadOutPage(file(), card, day("2027-04-20")));
    EXPECT_TRUE(text.contains(QStringLiteral("by laboratory: negative"))) << text.toStdString();
    EXPECT_TRUE(text.contains(QStringLiteral("suspected once"))) << text.toStdString();
}

TEST_F(DeadOutCards, ThePageIsBlankUntilItIsAnswered) {
    const auto tick = [](const DeadOutCard& card, const Read& read) {
        return pageText(deadOutPage(read, card, day("2027-04-05"))).count(QChar(0x2612));
    };
    const auto open = cards();
    EXPECT_EQ(tick(open.front(), file()), 0);
    starved("O1");
    const auto card = *deadOutCard(file(), open.front().colony.id, day("2027-04-05"));
    EXPECT_EQ(tick(card, file()), 5) << "five questions were answered";
    const QString text = pageText(deadOutPage(file(), card, day("2027-04-05")));
    EXPECT_TRUE(text.contains(QStringLiteral("What it looks like\nLooks like starvation.")))
        << text.toStdString();
    EXPECT_TRUE(text.contains(noDiagnosis().left(40))) << "never a diagnosis";
}

/// Each row of the table: what the card says it looks like.
struct LooksRow {
    const char* called;
    const char* answers;
    LooksLike cause;
};
class EachLook : public DeadOutCards, public testing::WithParamInterface<LooksRow> {};

// Source: /trade colonies-and-pests 11, dead-outs, row by row.
INSTANTIATE_TEST_SUITE_P(
    ColoniesAndPests11, EachLook,
    testing::Values(LooksRow{"starvation", R"("cluster":"heads in cells","stores_near":"none")",
                             LooksLike::Starvation},
                    LooksRow{"varroa", R"("cluster":"small","queen":true,"frass":true)",
                             LooksLike::VarroaAndVirus},
                    LooksRow{"moisture", R"("cluster":"large","wet":true)", LooksLike::Damp},
                    LooksRow{"queen_loss", R"("cluster":"small","brood_seen":"drone only")",
                             LooksLike::QueenLoss},
                    LooksRow{"dysentery", R"("droppings":true)", LooksLike::Dysentery},
                    LooksRow{"gone_in_autumn", R"("cluster":"none")", LooksLike::MitesOrDwindling},
                    LooksRow{"ropy", R"("ropy":true)", LooksLike::Foulbrood},
                    LooksRow{"twisted", R"("brood_seen":"twisted larvae")",
                             LooksLike::EuropeanFoulbrood},
                    LooksRow{"mouse", R"("mouse":true)", LooksLike::Mouse}),
    [](const auto& row) { return std::string(row.param.called); });

TEST_P(EachLook, SaysWhatItLooksLike) {
    done(R"({"do":"record-dead-out","on":"2027-04-05","hive":"O1",)" +
         std::string(GetParam().answers) + "}");
    const auto answered = cards();
    const auto card = std::find_if(answered.begin(), answered.end(),
                                   [](const DeadOutCard& each) { return !each.given.empty(); });
    ASSERT_NE(card, answered.end());
    ASSERT_FALSE(card->reading.causes.empty());
    EXPECT_EQ(card->reading.causes.front(), GetParam().cause);
    EXPECT_GE(card->reading.combs, CombUse::Hold) << "scale and rope were not both looked for";
}

}  // namespace
}  // namespace combwright
