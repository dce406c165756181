// The sheets of the honey room: every box has its tag and every stack its sign, lines stand in the
// order they are typed back, and what is known stands on them already.
#include <gtest/gtest.h>

#include <map>
#include <set>

#include "core/places/pages/honey/bucket_labels_page.h"
#include "core/places/pages/honey_room/day_log_page.h"
#include "core/places/pages/honey_room/extraction_sheet_page.h"
#include "core/places/pages/honey_room/room_tags_page.h"
#include "core/places/pages/honey_room/waiting_sign_page.h"
#include "core/places/pages/page_text.h"
#include "core/words/clock_words.h"
#include "tests/support/deeds.h"
#include "tests/support/hill_and_creek.h"

namespace combwright {
namespace {

const std::vector<Card>& cardsOf(const Page& page) {
    for (const Block& block : page.blocks)
        if (const auto* cards = std::get_if<CardsBlock>(&block)) return cards->cards;
    static const std::vector<Card> none;
    return none;
}

std::string pegOn(const Card& card) {
    const auto* peg = std::get_if<PegDrawn>(&card.drawing);
    return peg ? peg->number.toStdString() : "no peg drawn";
}

/// Labels of the lines in the order they are written.
std::string linesOf(const Card& card) {
    QStringList labels;
    for (const auto& row : card.rows)
        for (const CardField& field : row) labels << field.label;
    return labels.join(QStringLiteral(", ")).toStdString();
}

const CardField* fieldOf(const Card& card, const char* label) {
    for (const auto& row : card.rows)
        for (const CardField& field : row)
            if (field.label == QLatin1String(label)) return &field;
    return nullptr;
}

class RoomSheets : public test::DeedsTest {
  protected:
    void SetUp() override {
        clock.set("2027-08-06");
        done(test::hillAndCreekBefore());
    }
    void pulled(int peg, const char* box) {
        done(R"({"do":"clip-peg","on":"2027-08-06","peg":)" + std::to_string(peg) + R"(,"box":")" +
             box + "\"}");
    }
    Day today() const { return clock.today(); }
    /// In lines that do not break.
    std::string text(const Page& page) const { return pageText(page, 2000).toStdString(); }
    Id<Extraction> run(const char* name) const {
        return {*findNamed(file(), Extraction::table, NameQuery{.name = name, .on = today()})};
    }
    std::vector<LoadSheet> loads(const char* name) const {
        return {*loadSheet(file(), {run(name)}, today())};
    }
};

TEST_F(RoomSheets, EachBoxHasItsTagAndTwoAreForBoxesNobodyKnows) {
    pulled(8, "C1a");
    pulled(9, "C2a");
    const Page page = roomTagsPage(file(), today());
    const auto& tags = cardsOf(page);
    ASSERT_EQ(tags.size(), 4U);
    EXPECT_EQ(pegOn(tags[0]), "8");
    EXPECT_EQ(tags[0].about[0].text, QStringLiteral("C1a"));
    EXPECT_EQ(tags[0].about[1].text, QStringLiteral("C1, Creek"));
    EXPECT_EQ(tags[0].about[2].text, QStringLiteral("Fri 6 Aug 2027"));
    EXPECT_EQ(linesOf(tags[0]), "full, wet, water") << "as they are typed";
    for (const std::size_t last : {2U, 3U}) {
        EXPECT_EQ(pegOn(tags[last]), "") << "to write the number in";
        EXPECT_EQ(tags[last].about[0].text, QStringLiteral("unknown box"));
        EXPECT_EQ(linesOf(tags[last]), "yard, full, wet, water");
    }
}

TEST_F(RoomSheets, AWeightThatIsKnownIsNotWeighedAgain) {
    pulled(8, "C1a");
    done(R"({"do":"open-run","on":"2027-08-06","name":"27-3","yard":"Creek"}
{"do":"weigh-box","on":"2027-08-06","run":"27-3","box":"C1a","gross_g":20000})");
    const Page page = roomTagsPage(file(), today());
    const auto* full = fieldOf(cardsOf(page).front(), "full");
    ASSERT_NE(full, nullptr);
    EXPECT_EQ(full->value.toStdString(), "20.0\u00a0w");
    EXPECT_EQ(fieldOf(cardsOf(page).front(), "wet")->value, QString());
    EXPECT_NE(text(page).find("peg 8; C1a; C1, Creek"), std::string::npos) << text(page);
}

TEST_F(RoomSheets, ABoxWithoutAMarkIsCalledThat) {
    done(
        R"({"do":"add-hive","on":"2027-05-01","yard":"Creek","mark":"C9","boxes":"deep, x, medium 9","origin":"overwintered"}
{"do":"clip-peg","on":"2027-08-06","peg":15,"box":{"hive":"C9","place":2}})");
    const Page page = roomTagsPage(file(), today());
    EXPECT_EQ(cardsOf(page).front().about[0].text, QStringLiteral("no mark"));
    EXPECT_EQ(cardsOf(page).front().about[1].text, QStringLiteral("C9, Creek"));
}

TEST_F(RoomSheets, BoxesStillToComeHaveTheNextFreePegs) {
    pulled(2, "C1a");
    done(
        R"({"do":"look-box","on":"2027-08-05","box":"H1a","contents":"9 drawn; 9 capped, 95 % full"}
{"do":"look-box","on":"2027-08-05","box":"H1b","contents":"9 drawn; 2 capped, 40 % full"}
{"do":"look-box","on":"2027-08-05","box":"H2a","contents":"9 drawn; 9 capped, 95 % full"}
{"do":"write-line","on":"2027-08-05","hive":"H1","line":"e s8"}
{"do":"write-line","on":"2027-08-05","hive":"H2","line":"e s8"}
{"do":"keep-plan","on":"2027-08-06","for_day":"2027-08-07","yards":"Hill","winter_need_g":1000,"feed_up_to_g":0,"min_capped_share":0.75})");
    std::string pegs;
    const Page page = roomTagsPage(file(), today());
    for (const Card& tag : cardsOf(page))
        pegs += tag.about[0].text.toStdString() + "=" + pegOn(tag) + " ";
    EXPECT_EQ(pegs, "C1a=2 H1a=1 H2a=3 unknown box= unknown box= ");
}

TEST_F(RoomSheets, TheSignSaysUntilWhenWhichAndWhatNotToDo) {
    for (const auto& [peg, box] : {std::pair{8, "C1a"}, {9, "C2a"}, {10, "C2b"}, {12, "C4b"}})
        pulled(peg, box);
    pulled(20, "H1a");
    const Page page = waitingSignPage(file(), today());
    const auto& signs = cardsOf(page);
    ASSERT_EQ(signs.size(), 2U) << "one to a yard";
    const Card& creek =
        signs[0].lines[0].text.startsWith(QStringLiteral("Creek")) ? signs[0] : signs[1];
    EXPECT_EQ(creek.name.text, QStringLiteral("Extract by\nMon 9 Aug"));
    EXPECT_EQ(creek.name.size, PaperSize::Wall);
    const std::string said = text(page);
    EXPECT_NE(said.find("Creek: 4 boxes, pegs 8 to 10, 12; off the hives since Fri 6 Aug; 3 days "
                        "at most ("),
              std::string::npos)
        << said;
    EXPECT_NE(said.find("Hill: 1 box, peg 20;"), std::string::npos) << said;
    EXPECT_NE(said.find("Over 23 kg: two people."), std::string::npos);
    EXPECT_NE(said.find("together with boxes of Hill"), std::string::npos) << said;
    const auto* drawn = std::get_if<StacksDrawn>(&creek.drawing);
    ASSERT_NE(drawn, nullptr);
    ASSERT_EQ(drawn->stacks.size(), 1U);
    QStringList boxes;
    for (const StacksDrawn::Box& each : drawn->stacks[0]) boxes << each.mark + each.peg;
    boxes.sort();
    EXPECT_EQ(boxes.join(QLatin1Char(' ')).toStdString(), "C1a8 C2a9 C2b10 C4b12");
}

TEST_F(RoomSheets, NothingIsPaintedOnABoxWithoutAMark) {
    done(
        R"({"do":"add-hive","on":"2027-05-01","yard":"Creek","mark":"C9","boxes":"deep, x, medium 9","origin":"overwintered"}
{"do":"clip-peg","on":"2027-08-06","peg":15,"box":{"hive":"C9","place":2}})");
    const Page page = waitingSignPage(file(), today());
    const auto& drawn = std::get<StacksDrawn>(cardsOf(page).front().drawing);
    EXPECT_EQ(drawn.stacks[0][0].mark, QString());
    EXPECT_EQ(drawn.stacks[0][0].peg, QStringLiteral("15"));
}

TEST_F(RoomSheets, ManyBoxesAreDrawnInSeveralStacks) {
    int peg = 30;
    for (const char* box : {"H1a", "H1b", "H2a", "H3a", "H3b", "H5a"}) pulled(peg++, box);
    done(
        R"({"do":"add-hive","on":"2027-05-01","yard":"Hill","mark":"H9","boxes":"deep, x, medium A 9, medium B 9, medium C 9","origin":"overwintered"})");
    for (const char* box : {"A", "B", "C"}) pulled(peg++, box);
    const Page page = waitingSignPage(file(), today());
    const auto& drawn = std::get<StacksDrawn>(cardsOf(page).front().drawing);
    ASSERT_EQ(drawn.stacks.size(), 2U);
    EXPECT_EQ(drawn.stacks[0].size() + drawn.stacks[1].size(), 9U) << "none is left out";
}

TEST_F(RoomSheets, WithoutBoxesTheSignIsToBeFilledIn) {
    const Page page = waitingSignPage(file(), today());
    ASSERT_EQ(cardsOf(page).size(), 1U);
    EXPECT_EQ(linesOf(cardsOf(page)[0]), "by, yard, boxes, pegs, off the hives since");
}

TEST_F(RoomSheets, TheExtractionSheetShowsTheLoadsAsTheyAreLaidOut) {
    done(test::runScript("27-3", "Creek", "2027-08-06", test::creekBoxes, 66000, 0, false));
    const auto sheets = loads("27-3");
    const Page page = extractionSheetPage(file(), sheets, today());
    const auto& cards = cardsOf(page);
    ASSERT_EQ(sheets[0].loads.size(), 4U) << "45 frames in twelve slots";
    ASSERT_EQ(cards.size(), 6U) << "two empty ones fill the second sheet";
    for (std::size_t i = 0; i < 4; ++i) {
        const SheetLoad& load = sheets[0].loads[i];
        const auto* drum = std::get_if<DrumDrawn>(&cards[i].drawing);
        ASSERT_NE(drum, nullptr);
        ASSERT_EQ(drum->places.size(), load.places.size());
        std::int64_t frames = 0;
        for (std::size_t slot = 0; slot < load.places.size(); ++slot) {
            frames += drum->places[slot].startG.has_value();
            if (!load.places[slot]) continue;
            EXPECT_EQ(drum->places[slot].label, fromUtf8(load.places[slot]->box));
            EXPECT_EQ(drum->places[slot].startG, load.places[slot]->startG);
            const std::string label = std::to_string(slot + 1) + " " + load.places[slot]->box;
            EXPECT_NE(fieldOf(cards[i], label.c_str()), nullptr) << label;
        }
        EXPECT_EQ(frames, load.frames);
    }
    const std::string empty = linesOf(cards[5]);
    EXPECT_NE(empty.find("1, 5, 9, 2, 6, 10"), std::string::npos) << "down, then the next column";
    EXPECT_NE(empty.find("min, smooth, walked, stopped, set aside, why, gate opened, at"),
              std::string::npos)
        << empty;
}

TEST_F(RoomSheets, WithoutARunThereIsASheetOfEmptyLoads) {
    const Page page = extractionSheetPage(file(), {}, today());
    ASSERT_EQ(cardsOf(page).size(), 3U);
    const auto& drum = std::get<DrumDrawn>(cardsOf(page)[0].drawing);
    EXPECT_EQ(drum.places.size(), 12U);
    EXPECT_TRUE(drum.toWrite) << "blank circles, not an empty drum";
    EXPECT_TRUE(cardsOf(page)[0].about[1].text.startsWith(QStringLiteral("not weighed yet")));
}

TEST_F(RoomSheets, ALoadOfBoxesNobodyWeighedIsThereToWriteIn) {
    done(R"({"do":"open-run","on":"2027-08-06","name":"27-3","yard":"Creek"}
{"do":"weigh-box","on":"2027-08-06","run":"27-3","box":"C1a"}
{"do":"weigh-box","on":"2027-08-06","run":"27-3","box":"C2a"})");
    const auto first = [&] {
        return cardsOf(extractionSheetPage(file(), loads("27-3"), today())).front();
    };
    EXPECT_TRUE(std::get<DrumDrawn>(first().drawing).toWrite);
    EXPECT_TRUE(first().about[1].text.startsWith(QStringLiteral("not weighed yet")))
        << first().about[1].text.toStdString();
    done(
        R"({"do":"weigh-box","on":"2027-08-06","run":"27-3","box":"C1a","gross_g":20000}
{"do":"weigh-box","on":"2027-08-06","run":"27-3","box":"C2a","gross_g":23000})");
    EXPECT_FALSE(std::get<DrumDrawn>(first().drawing).toWrite);
    EXPECT_TRUE(first().about[1].text.startsWith(QStringLiteral("off ")));
}

TEST_F(RoomSheets, BucketLabelsGoOnFromTheLastNumber) {
    done(R"({"do":"open-run","on":"2027-08-06","name":"27-3","yard":"Creek"}
{"do":"fill-bucket","on":"2027-08-06","run":"27-3","mark":"B9","net_g":13000,"water_percent":18.9})");
    const Page page = bucketLabelsPage(file(), run("27-3"), today());
    const auto& labels = cardsOf(page);
    ASSERT_EQ(labels.size(), 8U);
    EXPECT_EQ(labels[0].name.text, QStringLiteral("B9"));
    EXPECT_EQ(labels[0].about[0].text, QStringLiteral("Creek, lot 27-3"));
    EXPECT_EQ(fieldOf(labels[0], "full")->value.toStdString(), "13.0\u00a0w");
    EXPECT_EQ(fieldOf(labels[0], "water")->value, QStringLiteral("18.9"));
    EXPECT_TRUE(fieldOf(labels[0], "do not bottle:")->ticked);
    EXPECT_EQ(labels[1].name.text, QStringLiteral("B10"));
    EXPECT_EQ(labels[7].name.text, QStringLiteral("B16"));
    EXPECT_EQ(linesOf(labels[7]), "full, water, loads, taste, do not bottle:");
    EXPECT_FALSE(fieldOf(labels[7], "do not bottle:")->ticked);
}

TEST_F(RoomSheets, EveryOpenLotHasItsLabelsAndNoNumberTwice) {
    done(R"({"do":"open-run","on":"2027-08-06","name":"27-2","yard":"Hill"}
{"do":"open-run","on":"2027-08-06","name":"27-3","yard":"Creek"}
{"do":"weigh-box","on":"2027-08-06","run":"27-2","box":"H1a","gross_g":21400}
{"do":"weigh-box","on":"2027-08-06","run":"27-3","box":"C1a","gross_g":20000}
{"do":"fill-bucket","on":"2027-08-06","run":"27-2","mark":"B4","net_g":13000})");
    std::set<QString> numbers;
    std::map<QString, int> lots;
    const Page page = bucketLabelsPage(file(), run("27-3"), today());
    for (const Card& label : cardsOf(page)) {
        EXPECT_TRUE(numbers.insert(label.name.text).second) << label.name.text.toStdString();
        ++lots[label.about[0].text];
    }
    EXPECT_EQ(cardsOf(page).front().about[0].text, QStringLiteral("Creek, lot 27-3"))
        << "the one shown first";
    EXPECT_GE(lots[QStringLiteral("Creek, lot 27-3")], 1);
    EXPECT_GE(lots[QStringLiteral("Hill, lot 27-2")], 2) << "the one filled, and the next";
    EXPECT_EQ(numbers.size() % 8, 0U);
    done(R"({"do":"fill-bucket","on":"2027-08-06","run":"27-3","mark":"B5","net_g":12000}
{"do":"close-run","on":"2027-08-06","run":"27-3"})");
    const Page closed = bucketLabelsPage(file(), run("27-3"), today());
    for (const Card& label : cardsOf(closed))
        EXPECT_EQ(label.about[0].text, QStringLiteral("Creek, lot 27-3"));
}

TEST_F(RoomSheets, WithoutARunLabelsAreForTheNextLot) {
    const Page page = bucketLabelsPage(file(), std::nullopt, today());
    ASSERT_EQ(cardsOf(page).size(), 8U);
    EXPECT_EQ(cardsOf(page)[0].name.text, QStringLiteral("B1"));
    EXPECT_EQ(cardsOf(page)[0].about[0].text, QStringLiteral("lot 27-1"));
}

TEST_F(RoomSheets, TheDaysLogCarriesTheSafetyLineAndWhatIsKnown) {
    done(
        R"({"do":"log-room-day","on":"2027-08-06","who":"Ann, Ben","hands":2,"begun":"2027-08-06T07:30:00Z","room_cleaned":true,"machine_dry":false}
{"do":"open-run","on":"2027-08-06","name":"27-2","yard":"Hill","room_c":27,"damp_share":0.54})");
    const Page page = dayLogPage(file(), today());
    const std::string said = text(page);
    for (const char* caution :
         {"off when it is laid down", "hands out until it stands", "sockets dry",
          "children behind the table", "over 23 kg: two people, or frame by frame"})
        EXPECT_NE(said.find(caution), std::string::npos) << caution;
    const auto& logs = cardsOf(page);
    ASSERT_EQ(logs.size(), 2U);
    EXPECT_EQ(fieldOf(logs[0], "who")->value, QStringLiteral("Ann, Ben"));
    EXPECT_EQ(fieldOf(logs[0], "began")->value, clockText(*parseInstant("2027-08-06T07:30:00Z")));
    EXPECT_TRUE(fieldOf(logs[0], "room cleaned")->ticked);
    EXPECT_FALSE(fieldOf(logs[0], "hands washed")->ticked) << "nobody said so";
    EXPECT_FALSE(fieldOf(logs[0], "machine dry before: no")->ticked);
    EXPECT_EQ(fieldOf(logs[0], "room")->value, QStringLiteral("27.0"));
    EXPECT_EQ(fieldOf(logs[0], "damp")->value, QStringLiteral("54"));
    EXPECT_EQ(fieldOf(logs[1], "damp")->value, QString());
    EXPECT_EQ(fieldOf(logs[1], "who")->value, QString()) << "a day that is not written yet";
}

TEST_F(RoomSheets, SaysWhenTheSeasonIsInvented) {
    done(R"({"do":"name-season","on":"2027-08-06","season":"Three Yards","invented":true})");
    for (const Page& page : {roomTagsPage(file(), today()), waitingSignPage(file(), today()),
                             extractionSheetPage(file(), {}, today()),
                             bucketLabelsPage(file(), {}, today()), dayLogPage(file(), today())})
        EXPECT_TRUE(page.invented) << page.title.toStdString();
}

}  // namespace
}  // namespace combwright
