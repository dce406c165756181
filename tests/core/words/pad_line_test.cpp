// The honey room by the number pad, key by key: what each entry asks, what it comes to, what is
// read back, and what a slip leaves alone.
#include "core/words/pad_line.h"

#include <gtest/gtest.h>

#include <map>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include "core/words/units.h"

namespace combwright {
namespace {

using PadWhat = PadDeed::What;

/// A line and its keys: `\n` is Enter, `\b` Backspace; what acts at once does, the rest is typed.
struct Pad {
    Pad(const Pad&) = delete;
    Pad& operator=(const Pad&) = delete;
    PadLine line;
    PadRoom room;
    QString typed;
    std::vector<PadDeed> done;
    std::map<int, PadBox> clipped;
    std::optional<PadBox> loose;  ///< the box without a peg that is to be weighed wet

    Pad() {
        clipped[14] = {14, QStringLiteral("M07"), true, Mass::grams(19800), std::nullopt, false};
        clipped[9] = {9, QStringLiteral("M14"), true, Mass::grams(21400), std::nullopt, true};
        clipped[12] = {12, QStringLiteral("M18"), true, std::nullopt, std::nullopt, false};
        room.onPeg = [this](int peg) -> std::optional<PadBox> {
            if (peg == 0) return loose;
            const auto at = clipped.find(peg);
            return at == clipped.end() ? std::nullopt : std::optional(at->second);
        };
        room.heavyForWet = [](const PadBox& box, Mass wet) {
            return wet.grams() * 10 > box.gross->grams() * 6;
        };
        room.withoutPeg = QStringLiteral("without a peg");
    }
    Pad& keys(const char* typing) {
        for (const char* at = typing; *at; ++at) {
            const QChar key = QLatin1Char(*at);
            if (line.acts(key, typed)) {
                done.push_back(line.press(key));
            } else if (key == QLatin1Char('\n')) {
                done.push_back(line.enter(typed, room));
                typed.clear();
            } else if (key == QLatin1Char('\b')) {
                typed.chop(1);
            } else {
                typed += key;
            }
        }
        return *this;
    }
    const PadDeed& last() const { return done.back(); }
};

TEST(PadLines, EveryEntryComesToItsDeed) {
    const struct {
        const char* typing;
        PadWhat what;
        PadAsk::What asked;  ///< afterwards
    } rows[] = {
        {"14\n", PadWhat::Asks, PadAsk::What::Wet},
        {"12\n", PadWhat::Asks, PadAsk::What::Full},
        {"12\n21.4\n", PadWhat::Weigh, PadAsk::What::Nothing},
        {"12\n21,4\n", PadWhat::Weigh, PadAsk::What::Nothing},
        {"12\n\n", PadWhat::Weigh, PadAsk::What::Nothing},
        {"12\n.\n", PadWhat::Left, PadAsk::What::Nothing},
        {"12\n\b", PadWhat::Left, PadAsk::What::Nothing},
        {"9\n\n", PadWhat::Left, PadAsk::What::Nothing},
        {"0\n", PadWhat::Asks, PadAsk::What::Full},
        {"/3\n", PadWhat::Asks, PadAsk::What::BucketMass},
        {"/3\n13.0\n", PadWhat::Bucket, PadAsk::What::BucketWater},
        {"/3\n13.0\n17.2\n", PadWhat::Bucket, PadAsk::What::Nothing},
        {"/3\n\n", PadWhat::Asks, PadAsk::What::BucketWater},
        {"/3\n\n\n", PadWhat::Left, PadAsk::What::Nothing},
        {"/0\n", PadWhat::Asks, PadAsk::What::Cappings},
        {"/0\n11\n", PadWhat::Cappings, PadAsk::What::Nothing},
        {"/00\n.4\n", PadWhat::Scrapings, PadAsk::What::Nothing},
        {"/\n", PadWhat::Gate, PadAsk::What::Nothing},
        {"00\n", PadWhat::Seen, PadAsk::What::Nothing},
        {"000\n", PadWhat::NextRun, PadAsk::What::Nothing},
        {"\n", PadWhat::Clock, PadAsk::What::Nothing},
        {"+", PadWhat::Plus, PadAsk::What::Nothing},
        {"-", PadWhat::Walked, PadAsk::What::Nothing},
        {"--", PadWhat::Stopped, PadAsk::What::Nothing},
        {"---", PadWhat::Walked, PadAsk::What::Nothing},
        {"-+", PadWhat::Plus, PadAsk::What::Nothing},
        {"-\n-", PadWhat::Walked, PadAsk::What::Nothing},
        {"*", PadWhat::Aside, PadAsk::What::Nothing},
        {".", PadWhat::TakeBack, PadAsk::What::Nothing},
        {"\b", PadWhat::TakeBack, PadAsk::What::Nothing},
        {"//3213\n", PadWhat::Feel, PadAsk::What::Nothing},
        {"//\n", PadWhat::Feel, PadAsk::What::Nothing},
        {"//34\n", PadWhat::NotRead, PadAsk::What::Nothing},
        {"/3x\n", PadWhat::NotRead, PadAsk::What::Nothing},
        {"/3\n13.0.0\n", PadWhat::NotRead, PadAsk::What::BucketMass},
        {"12\n1.240\n", PadWhat::NotRead, PadAsk::What::Full},
        // Another entry begun lets go of what is asked.
        {"12\n/3\n", PadWhat::Asks, PadAsk::What::BucketMass},
        {"12\n+", PadWhat::Plus, PadAsk::What::Nothing},
        // Lines of the letter keyboard are not the pad's.
        {"M07 21.4\n", PadWhat::NotPad, PadAsk::What::Nothing},
        {"21.4\n", PadWhat::NotPad, PadAsk::What::Nothing},
        {"?\n", PadWhat::NotPad, PadAsk::What::Nothing},
        // Not half a mass: a name.
        {"/3\n7 o\n", PadWhat::NotRead, PadAsk::What::BucketMass},
    };
    for (const auto& row : rows) {
        const std::string shown = QString::fromLatin1(row.typing)
                                      .replace(QLatin1Char('\n'), QStringLiteral("⏎ "))
                                      .toStdString();
        Pad pad;
        pad.keys(row.typing);
        EXPECT_EQ(pad.last().what, row.what) << shown;
        EXPECT_EQ(pad.line.ask().what, row.asked) << shown;
        EXPECT_EQ(pad.last().notRead.isEmpty(), row.what != PadWhat::NotRead) << shown;
    }
}

TEST(PadLines, ABoxIsWeighedFullFirstAndWetWhenItWasSpun) {
    Pad pad;
    pad.keys("12\n21.4\n");
    EXPECT_FALSE(pad.last().wet);
    EXPECT_EQ(pad.last().mass->value, Mass::grams(21400));
    EXPECT_EQ(pad.last().box.mark, QStringLiteral("M18"));
    pad.keys("9\n5.2\n");
    EXPECT_TRUE(pad.last().wet);
    pad.keys("14\n5.0\n");
    EXPECT_TRUE(pad.last().wet) << "its full weight is there";
    pad.keys("14\n21.4\n");
    EXPECT_FALSE(pad.last().wet) << "nearly its full weight: that is put right";
    EXPECT_EQ(weighedText(pad.last().box, *pad.last().mass, pad.last().wet),
              QStringLiteral("M07 on peg 14, 21.4 kg full; was 19.8"));
    pad.keys("12\n\n");
    EXPECT_FALSE(pad.last().mass->value);
    EXPECT_EQ(pad.last().mass->how, How::Unknown);
}

TEST(PadLines, AWetWeightNearTheFullOneOfASpunBoxIsAskedAbout) {
    Pad pad;
    pad.keys("9\n20.9\n");
    EXPECT_EQ(pad.last().what, PadWhat::Asks);
    EXPECT_EQ(askedText(pad.line.ask()),
              QStringLiteral("M14 on peg 9: 20.9 kg wet, when it weighed 21.4 kg full?"));
    pad.keys("5.2\n");
    EXPECT_EQ(pad.last().what, PadWhat::Weigh);
    EXPECT_EQ(pad.last().mass->value, Mass::grams(5200));
    EXPECT_TRUE(pad.last().wet);
    pad.keys("9\n20.9\n\n");
    EXPECT_EQ(pad.last().what, PadWhat::Weigh);
    EXPECT_EQ(pad.last().mass->value, Mass::grams(20900)) << "said again it is kept";
    pad.room.spinning = true;
    pad.keys("9\n20.9\n");
    EXPECT_EQ(pad.last().what, PadWhat::NotRead) << "nothing is asked while a load spins";
    EXPECT_EQ(pad.line.ask().what, PadAsk::What::Wet);
}

TEST(PadLines, ABoxWithoutAPegIsTheNextOneOrTheOneToWeighWet) {
    Pad pad;
    pad.keys("0\n19.5\n");
    EXPECT_FALSE(pad.last().wet);
    EXPECT_EQ(pad.last().box.mark, QStringLiteral("without a peg"));
    pad.loose = PadBox{0, QStringLiteral("without a peg"), false, Mass::grams(19500), {}, true};
    pad.room.withoutPeg = QStringLiteral("without a peg 2");
    pad.keys("0\n5.1\n");
    EXPECT_TRUE(pad.last().wet);
    EXPECT_EQ(pad.last().box.mark, QStringLiteral("without a peg"));
    pad.keys("0\n18.8\n");
    EXPECT_FALSE(pad.last().wet) << "too heavy to be the same one wet";
    EXPECT_EQ(pad.last().box.mark, QStringLiteral("without a peg 2"));
    pad.keys("77\n18.0\n\n");
    EXPECT_EQ(pad.last().what, PadWhat::Weigh);
    EXPECT_FALSE(pad.last().box.known);
    EXPECT_EQ(pad.last().box.mark, QStringLiteral("peg 77")) << "nobody knows which box has it";
}

TEST(PadLines, AWetWeightWithFramesNotSpunIsAskedAbout) {
    Pad pad;
    pad.clipped[9].unspun = 6;
    pad.keys("9\n5.2\n");
    EXPECT_EQ(pad.last().what, PadWhat::Asks);
    EXPECT_EQ(askedText(pad.line.ask()),
              QStringLiteral("6 frames of M14 on peg 9 are not spun: is 5.2 kg its wet weight?"));
    pad.keys("\n");
    EXPECT_EQ(pad.last().what, PadWhat::Weigh);
    EXPECT_TRUE(pad.last().wet);
    EXPECT_EQ(pad.last().mass->value, Mass::grams(5200));
    pad.keys("9\n5.2\n.\n");
    EXPECT_EQ(pad.last().what, PadWhat::Left) << "a point takes it back";
    pad.room.spinning = true;
    pad.keys("9\n5.2\n");
    EXPECT_EQ(pad.last().what, PadWhat::NotRead) << "nothing is asked while a load spins";
    pad.room.spinning = false;
    pad.keys("\b");
    pad.keys("14\n40\n");
    EXPECT_TRUE(pad.last().wet) << "no full weight is put right to twice what it was";
}

TEST(PadLines, APegNobodyClippedIsAskedAboutBeforeABoxIsMadeOfIt) {
    Pad pad;
    pad.keys("99\n20\n");
    EXPECT_EQ(pad.last().what, PadWhat::Asks);
    EXPECT_EQ(askedText(pad.line.ask()),
              QStringLiteral("No box carries peg 99: 20 kg full, a box nobody knows?"));
    pad.keys("9\n");
    EXPECT_EQ(pad.line.ask().what, PadAsk::What::Wet) << "the peg that was meant";
    EXPECT_EQ(pad.line.ask().box.mark, QStringLiteral("M14"));
    pad.keys("\b99\n20\n20.5\n");
    EXPECT_EQ(pad.last().what, PadWhat::Asks) << "its weight put right is asked about again";
    pad.keys("\n");
    EXPECT_EQ(pad.last().what, PadWhat::Weigh);
    EXPECT_EQ(pad.last().mass->value, Mass::grams(20500));
    EXPECT_EQ(pad.last().box.peg, 99);
}

TEST(PadLines, WhatNoBoxAndNoBucketWeighsIsAskedAbout) {
    Pad pad;
    pad.room.bucketHolds = Mass::grams(14300);
    pad.keys("12\n2.1\n");
    EXPECT_EQ(askedText(pad.line.ask()),
              QStringLiteral("M18 on peg 12: 2.1 kg full, no more than an empty box?"));
    pad.keys("\n");
    EXPECT_EQ(pad.last().what, PadWhat::Weigh);
    EXPECT_EQ(pad.last().mass->value, Mass::grams(2100));
    pad.keys("12\n2.1\n21\n");
    EXPECT_EQ(pad.last().what, PadWhat::Weigh);
    EXPECT_EQ(pad.last().mass->value, Mass::grams(21000));
    pad.clipped[12].empty = Mass::grams(5000);
    pad.keys("12\n4.9\n");
    EXPECT_EQ(pad.line.ask().what, PadAsk::What::StillFull);
    pad.keys("\b/3\n130\n");
    EXPECT_EQ(askedText(pad.line.ask()),
              QStringLiteral("Bucket 3: 130 kg, when a bucket holds 14.3 kg?"));
    pad.keys("13.0\n");
    EXPECT_EQ(pad.last().mass->value, Mass::grams(13000));
    EXPECT_EQ(pad.line.ask().what, PadAsk::What::BucketWater);
    pad.keys("\b/3\n130\n\n");
    EXPECT_EQ(pad.last().what, PadWhat::Bucket);
    EXPECT_EQ(pad.last().mass->value, Mass::grams(130000)) << "said again it is kept";
    EXPECT_EQ(pad.line.ask().what, PadAsk::What::BucketWater);
}

TEST(PadLines, WhyAFrameIsSetAsideIsOneDigitAndMayBeLeft) {
    PadAsk why;
    why.what = PadAsk::What::AsideWhy;
    Pad pad;
    const auto asked = [&](const char* typing) {
        pad.line.setAsk(why);
        return pad.keys(typing).last();
    };
    EXPECT_EQ(asked("4\n").what, PadWhat::AsideWhy);
    EXPECT_EQ(asked("4\n").number, 4);
    EXPECT_EQ(asked("\n").what, PadWhat::Left);
    EXPECT_EQ(asked("7\n").what, PadWhat::NotRead);
    EXPECT_EQ(asked("12\n").what, PadWhat::Asks) << "two digits are a peg";
    EXPECT_EQ(asked("*").what, PadWhat::Aside);
    EXPECT_EQ(asked(".").what, PadWhat::Left);
}

TEST(PadLines, TheDayIsClosedByPlusSaidTwice) {
    PadAsk close;
    close.what = PadAsk::What::Close;
    Pad pad;
    pad.line.setAsk(close);
    EXPECT_EQ(pad.keys("+").last().what, PadWhat::Close);
    pad.line.setAsk(close);
    EXPECT_EQ(pad.keys("\n").last().what, PadWhat::Left);
    pad.line.setAsk(close);
    EXPECT_EQ(pad.keys("12\n").last().what, PadWhat::Asks) << "work goes on";
}

TEST(PadLines, FramesByFeelAreDigitsOrLetters) {
    EXPECT_EQ(feltLetters(QStringLiteral("//3213"), 12), QStringLiteral("hmlh"));
    EXPECT_EQ(feltLetters(QStringLiteral("//hM l"), 12), QStringLiteral("hml"));
    EXPECT_EQ(feltLetters(QStringLiteral("//"), 12), QString());
    EXPECT_FALSE(feltLetters(QStringLiteral("//3x"), 12));
    EXPECT_FALSE(feltLetters(QStringLiteral("//333333333333") + QLatin1Char('3'), 12))
        << "thirteen in twelve slots";
    EXPECT_FALSE(feltLetters(QStringLiteral("/3"), 12));
}

TEST(PadLines, ABareNumberIsThePegUnlessABoxWasChosenOtherwise) {
    Pad pad;
    pad.room.bareIsMass = true;
    EXPECT_EQ(pad.keys("12\n").last().what, PadWhat::NotPad);
    EXPECT_EQ(pad.keys("0\n").last().what, PadWhat::Asks) << "no box weighs nothing";
    EXPECT_EQ(pad.keys("\b/3\n").last().what, PadWhat::Asks);
}

TEST(PadKeys, BothEntersAreOneAndThePadWorksWithNumLockOff) {
    EXPECT_EQ(padKey(Qt::Key_Enter, true, QStringLiteral("\r")), QLatin1Char('\n'));
    EXPECT_EQ(padKey(Qt::Key_Return, false, QStringLiteral("\r")), QLatin1Char('\n'));
    const std::pair<int, char> off[] = {
        {Qt::Key_Insert, '0'}, {Qt::Key_End, '1'},    {Qt::Key_Down, '2'},  {Qt::Key_PageDown, '3'},
        {Qt::Key_Left, '4'},   {Qt::Key_Clear, '5'},  {Qt::Key_Right, '6'}, {Qt::Key_Home, '7'},
        {Qt::Key_Up, '8'},     {Qt::Key_PageUp, '9'}, {Qt::Key_Delete, '.'}};
    for (const auto& [key, digit] : off) {
        EXPECT_EQ(padKey(key, true, {}), QLatin1Char(digit));
        EXPECT_FALSE(padKey(key, false, {})) << "the other arrows stay arrows";
    }
    EXPECT_EQ(padKey(Qt::Key_7, true, QStringLiteral("7")), QLatin1Char('7'));
    EXPECT_EQ(padKey(Qt::Key_Comma, true, QStringLiteral(",")), QLatin1Char('.'));
    EXPECT_FALSE(padKey(Qt::Key_H, false, QStringLiteral("h")));
}

TEST(PadWords, WhatIsLeftIsSaidWithItsSubject) {
    PadAsk ask;
    ask.what = PadAsk::What::Frames;
    ask.box.mark = QStringLiteral("no peg");
    EXPECT_EQ(leftText(ask), QStringLiteral("no peg: how many frames it has stays unknown."));
    ask.what = PadAsk::What::Settle;
    ask.about = QStringLiteral("1 frame of M05, broke: what became of it?");
    EXPECT_EQ(leftText(ask), QStringLiteral("1 frame of M05, broke: it lies there still."));
}

TEST(PadWords, WhatIsAskedAndReadBackIsSaidWhole) {
    Pad pad;
    pad.keys("12\n");
    EXPECT_EQ(askedText(pad.line.ask()), QStringLiteral("M18 on peg 12 full, kg"));
    pad.keys("\b9\n");
    EXPECT_EQ(askedText(pad.line.ask()), QStringLiteral("M14 on peg 9 wet, kg"));
    pad.keys("\b/3\n13.0\n");
    EXPECT_EQ(askedText(pad.line.ask()), QStringLiteral("Bucket 3, water %"));
    const UnitsWhile pounds(Units::UsCustomary);
    pad.keys("/0\n");
    EXPECT_EQ(askedText(pad.line.ask()), QStringLiteral("Cappings tub, lb"));
}

TEST(PadLines, TheWaterOfATagStandsBehindAStroke) {
    Pad pad;
    pad.keys("12\n21.4/17.2\n");
    EXPECT_EQ(pad.last().what, PadWhat::Weigh);
    EXPECT_EQ(pad.last().mass->value, Mass::grams(21400));
    EXPECT_EQ(pad.last().water, 17.2);
    pad.keys("12\n/16.8\n");
    EXPECT_EQ(pad.last().what, PadWhat::Weigh);
    EXPECT_FALSE(pad.last().mass) << "only its water";
    EXPECT_EQ(pad.last().water, 16.8);
    EXPECT_EQ(pad.line.ask().what, PadAsk::What::Full) << "its weight is asked on";
    pad.keys("/3\n");
    EXPECT_EQ(pad.line.ask().what, PadAsk::What::BucketMass) << "a whole number is a bucket";
    pad.keys("\n\n12\n21.4/172\n");
    EXPECT_EQ(pad.last().what, PadWhat::NotRead);
    EXPECT_EQ(pad.line.ask().what, PadAsk::What::Full);
    // Asked about first, it is kept with what was asked about.
    pad.keys("2.1/17.0\n");
    ASSERT_EQ(pad.line.ask().what, PadAsk::What::StillFull);
    pad.keys("\n");
    EXPECT_EQ(pad.last().mass->value, Mass::grams(2100));
    EXPECT_EQ(pad.last().water, 17.0);
}

TEST(PadLines, WhoseFrameWasSetAsideIsSaidByItsPeg) {
    Pad pad;
    PadAsk which;
    which.what = PadAsk::What::AsideBox;
    for (const auto& [peg, mark, row] :
         {std::tuple{9, "M14", 31}, std::tuple{12, "M18", 32}, std::tuple{0, "no peg", 33}}) {
        PadBox box;
        box.peg = peg;
        box.mark = QLatin1String(mark);
        box.row = row;
        which.among.push_back(box);
    }
    EXPECT_TRUE(answersText(which).contains(QStringLiteral("9 M14  12 M18  0 no peg")))
        << answersText(which).toStdString();
    for (const auto& [typing, row] :
         {std::pair{"12\n", 32}, std::pair{"0\n", 33}, std::pair{"m14\n", 31}}) {
        pad.line.setAsk(which);
        pad.keys(typing);
        EXPECT_EQ(pad.last().what, PadWhat::AsideBox) << typing;
        EXPECT_EQ(pad.last().box.row, row) << typing;
    }
    pad.line.setAsk(which);
    pad.keys("14\n");
    EXPECT_EQ(pad.last().what, PadWhat::NotRead) << "that box hangs in no slot";
    EXPECT_EQ(pad.line.ask().what, PadAsk::What::AsideBox);
    pad.keys("\n");
    EXPECT_EQ(pad.last().what, PadWhat::Left);
    EXPECT_EQ(pad.line.ask().what, PadAsk::What::Nothing);
}

TEST(PadLines, EnterOrTheGateAnswersWhetherTheDrumIsRunEmpty) {
    for (const auto& [typing, what] :
         {std::pair{"\n", PadWhat::Clock}, std::pair{"+", PadWhat::Plus},
          std::pair{"/\n", PadWhat::Gate}, std::pair{".", PadWhat::Left}}) {
        Pad pad;
        PadAsk empty;
        empty.what = PadAsk::What::RunEmpty;
        pad.line.setAsk(empty);
        pad.keys(typing);
        EXPECT_EQ(pad.last().what, what) << typing;
        EXPECT_EQ(pad.line.ask().what, PadAsk::What::Nothing) << typing;
    }
}

}  // namespace
}  // namespace combwright
