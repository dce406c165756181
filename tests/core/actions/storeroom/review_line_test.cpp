// A box on the bench as it is typed: what is read, what is refused, and that nothing is guessed.
#include "core/actions/storeroom/review_line.h"

#include <gtest/gtest.h>

#include "core/words/units.h"

namespace combwright {
namespace {

/// "7 keep|1 W refit|…": frames, comb, letters, verdict, other kind of each part; the refusal else.
std::string readBack(std::string_view line) {
    const auto read = parseReviewLine(line, BareMass::SmallUnit);
    if (!read) return std::string(key(read.error().code));
    std::string text;
    for (const ReviewTally& each : read->tallies) {
        text += (text.empty() ? "" : "|") + std::to_string(each.frames.value());
        if (each.comb) text += " " + std::string(word(*each.comb));
        if (!each.faults.empty()) text += " " + each.faults;
        if (each.verdict) text += " " + std::string(word(*each.verdict));
        if (!each.frameKind.empty()) text += " of " + each.frameKind;
    }
    return text;
}

ReviewLine lineOf(std::string_view text) {
    auto read = parseReviewLine(text, BareMass::SmallUnit);
    EXPECT_TRUE(read) << text << ": "
                      << (read ? std::string() : std::string(read.error().value("value")));
    return read ? *read : ReviewLine{};
}

TEST(ReviewLine, IsReadInWordsLettersAndDigits) {
    EXPECT_EQ(readBack("7 keep, 1 web, 1 broken"), "7 keep|1 W|1 V");
    EXPECT_EQ(readBack("7 keep, 1 W, 1 V"), "7 keep|1 W|1 V");
    EXPECT_EQ(readBack("7 KEEP,1 Web ,1 w"), "7 keep|1 W|1 W");
    EXPECT_EQ(readBack("1 W burn, 2 V 3, 1 W6"), "1 W burn|2 V repair|1 W melt");
    EXPECT_EQ(readBack("4 melt"), "4 melt");
    EXPECT_EQ(readBack("4 6"), "4 melt");
    EXPECT_EQ(readBack("1 WV"), "1 WV");
    EXPECT_EQ(readBack("1 V W"), "1 WV") << "in the order they are listed";
    EXPECT_EQ(readBack("1 dead brood hold, 2 web of moth"), "1 D hold|2 W");
    EXPECT_EQ(readBack("5 drawn, 2 part drawn, 1 foundation, 1 bare, 1 drawn fat"),
              "5 drawn|2 part drawn|1 foundation|1 bare|1 drawn fat");
    EXPECT_EQ(readBack("9"), "9 drawn");
    EXPECT_EQ(readBack("8 keep, 1 broken of shallow"), "8 keep|1 V of shallow");
    EXPECT_EQ(readBack("2 fat W 6"), "2 drawn fat W melt");
    EXPECT_EQ(readBack("2 V 3,1 W"), "2 V repair|1 W") << "a digit of a verdict is no decimal";
    EXPECT_EQ(readBack("empty"), "0");
    EXPECT_EQ(readBack("8 good"), "8 keep");
}

TEST(ReviewLine, RefusesWhatItCannotReadForCertain) {
    EXPECT_EQ(readBack("6,5 keep"), "wrong_type") << "no six and five";
    EXPECT_EQ(readBack("6.5 keep"), "wrong_type");
    EXPECT_EQ(readBack("7,1 W"), "wrong_type");
    EXPECT_EQ(readBack("keep 7"), "wrong_type") << "the number first";
    EXPECT_EQ(readBack("~7 keep"), "wrong_type");
    EXPECT_EQ(readBack("-1 keep"), "wrong_type");
    EXPECT_EQ(readBack("101 keep"), "out_of_range");
    EXPECT_EQ(readBack("1 cold"), "not_a_choice") << "four letters of faults make a word";
    EXPECT_EQ(readBack("1 COLD"), "not_a_choice");
    EXPECT_EQ(readBack("1 no web"), "not_a_choice");
    EXPECT_EQ(readBack("1 M\u00e4use"), "not_a_choice") << "a word of another language";
    EXPECT_EQ(readBack("1 \u00df"), "not_a_choice");
    EXPECT_EQ(readBack("1 W9"), "not_a_choice");
    EXPECT_EQ(readBack("1 keep burn"), "duplicate");
    EXPECT_EQ(readBack("1 W6 burn"), "duplicate");
    EXPECT_EQ(readBack("1 drawn bare"), "duplicate");
    EXPECT_EQ(readBack("1 broken of"), "wrong_type");
    const auto unknown = parseReviewLine("1 gold");
    ASSERT_FALSE(unknown);
    EXPECT_EQ(unknown.error().value("value"), "gold");
    for (const char* known : {"broken", "refit", "1 to 8", "W, S"})
        EXPECT_NE(std::string(unknown.error().value("choices")).find(known), std::string::npos);
}

TEST(ReviewLine, TakesWhatElseWasSeenBehindTheSemicolon) {
    const ReviewLine line = lineOf(
        "7 keep, 1 web; web, scraped, wax 70 g, propolis 12 g, years 24x3 25x5, wood 1 bottom bar, "
        "no paint, \"smells; of smoke, keep apart\"");
    EXPECT_EQ(line.counts, "7 keep, 1 web");
    EXPECT_EQ(line.found(), Count(8));
    EXPECT_EQ(line.web, true);
    EXPECT_EQ(line.scraped, true);
    EXPECT_EQ(line.wantsPaint, false);
    EXPECT_EQ(line.scrapings->value, Mass::grams(70));
    EXPECT_EQ(line.scrapings->how, How::Weighed);
    EXPECT_EQ(line.propolis->value, Mass::grams(12));
    EXPECT_EQ(line.combYears, "24x3 25x5");
    EXPECT_EQ(line.wood, "1 bottom bar");
    EXPECT_EQ(line.note, "smells; of smoke, keep apart");
    EXPECT_EQ(lineOf("7 keep; No Web; not scraped").web, false);
    EXPECT_EQ(lineOf("7 keep; No Web; not scraped").scraped, false);
    EXPECT_EQ(lineOf("7 keep; wax ~70,5 g").scrapings->how, How::ByEye);
    EXPECT_EQ(lineOf("7 keep; '24\u00d73 \u201925\u00d74").combYears, "24x3 25x4");
    EXPECT_EQ(lineOf("9 keep \u201eriecht nach Schimmel\u201c").note, "riecht nach Schimmel");
    EXPECT_EQ(readBack("7 keep; smoked"), "not_a_choice");
    EXPECT_EQ(readBack("7 keep; web, no web"), "duplicate");
    EXPECT_EQ(readBack("7 keep; wax much"), "wrong_type");
    EXPECT_EQ(readBack("7 keep; wax 1.240 g"), "wrong_type") << "1,240 or 1.24?";
    EXPECT_EQ(readBack("7 keep; years 24"), "wrong_type");
    EXPECT_EQ(readBack("7 keep; years 24x3 24x1"), "duplicate");
    EXPECT_EQ(readBack("7 keep \"no end"), "wrong_type");
}

TEST(ReviewLine, AMassWithoutUnitIsThePersonsSmallOneInTheWindowOnly) {
    EXPECT_EQ(lineOf("9; wax 70").scrapings->value, Mass::grams(70));
    {
        const UnitsWhile us(Units::UsCustomary);
        EXPECT_EQ(lineOf("9; wax 2.5").scrapings->value, Mass::grams(71)) << "ounces";
        EXPECT_EQ(lineOf("9; wax 70 g").scrapings->value, Mass::grams(70));
    }
    const auto script = parseReviewLine("9; wax 70");
    ASSERT_FALSE(script);
    EXPECT_EQ(script.error().code, Code::WrongType);
    EXPECT_TRUE(parseReviewLine("9; wax 70 g"));
}

TEST(ReviewLine, OneFrameIsTypedByLetterAndDigit) {
    const auto seen = parseFrameSeen("W6");
    ASSERT_TRUE(seen);
    EXPECT_EQ(seen->faults, "W");
    EXPECT_EQ(seen->verdict, Verdict::Melt);
    EXPECT_EQ(parseFrameSeen("web, broken 8")->faults, "WV");
    EXPECT_EQ(parseFrameSeen("web, broken 8")->verdict, Verdict::Burn);
    EXPECT_EQ(parseFrameSeen("foundation")->comb, Comb::Foundation);
    EXPECT_TRUE(parseFrameSeen("")->faults.empty());
    EXPECT_EQ(parseFrameSeen("gold").error().field, "faults");
    EXPECT_FALSE(parseFrameSeen("W of shallow"));
}

}  // namespace
}  // namespace combwright
