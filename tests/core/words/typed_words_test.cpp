// What is typed in the language spoken, put into the English that is read and kept.
#include "core/words/typed_words.h"

#include <gtest/gtest.h>

#include <QCoreApplication>

#include "core/actions/storeroom/review_line.h"
#include "core/places/copies/value_words.h"
#include "core/words/language.h"
#include "core/words/read_back.h"
#include "core/words/sheet_cells.h"
#include "core/words/shorthand.h"
#include "core/words/words.h"

namespace combwright {
namespace {

std::string sheetRead(const char* typed) {
    return sheetInEnglish(QString::fromUtf8(typed)).toStdString();
}
std::string backOf(const char* typed) { return readBackTyped({}, sheetRead(typed)).toStdString(); }

TEST(SheetTyped, StaysAsItIsInEnglish) {
    const Speaking english(Language::English);
    for (const char* line : {"e b7 s3", "eggs", "dead, robbed", "light", "old comb", "stiff"})
        EXPECT_EQ(sheetRead(line), line);
}

TEST(SheetTyped, GermanWordsAreReadAsTheyAreKept) {
    const Speaking german(Language::German);
    EXPECT_EQ(sheetRead("leicht"), "light");
    EXPECT_EQ(backOf("leicht"), backOf("light"));
    EXPECT_EQ(sheetRead("Stifte b7 s3"), "e b7 s3");
    EXPECT_EQ(sheetRead("b7, Stifte, schwer"), "b7, e, heavy");
    EXPECT_EQ(sheetRead("Stifte gesehen"), "e");
    EXPECT_EQ(sheetRead("keine Stifte"), "no eggs");
    EXPECT_EQ(backOf("Stifte"), backOf("e"));
    EXPECT_EQ(sheetRead("tot"), "dead");
    EXPECT_EQ(sheetRead("Tot, Futter leer"), "dead, Futter leer");
    EXPECT_EQ(sheetRead("tot seit März"), "dead, seit März");
    EXPECT_EQ(readShorthand(sheetRead("tot verhungert")).seen.looked, Looked::FoundDead);
}

TEST(SheetTyped, ANoteStaysThePersonsOwn) {
    const Speaking german(Language::German);
    for (const char* note : {"kaum Stifte", "Stifte nicht gesehen", "Stifte?", "Brut gut", "alt",
                             "tote Bienen am Boden", "tot gemeldet", "Propolis abgekratzt"})
        EXPECT_EQ(sheetRead(note), note);
}

TEST(SheetTyped, ACellTakesItToo) {
    const Speaking german(Language::German);
    const auto line = withCell({}, SheetCell::Eggs, QStringLiteral("Stifte"));
    ASSERT_TRUE(line);
    EXPECT_EQ(writeShorthand(*line), "e");
}

TEST(BenchTyped, WordsOfTheLegendAreRead) {
    const Speaking german(Language::German);
    const auto read = [](const char* typed) {
        return typedInEnglish(QString::fromUtf8(typed)).toStdString();
    };
    EXPECT_EQ(read("7 behalten, 1 Mottengespinst, 1 Holz gebrochen"),
              "7 keep, 1 web of moth, 1 broken wood");
    EXPECT_EQ(read("2 Motten verbrennen"), "2 moth burn");
    EXPECT_EQ(read("3 behalten von flach"), "3 keep of shallow");
    for (const char* line :
         {"7 behalten, 1 Gespinst, 1 gebrochen; abgekratzt, Wachs 70, Propolis 12, Jahre 24x3 25x5",
          "1 Mottengespinst, 2 Motten, 3 Holz gebrochen, 4 tote Brut einschmelzen"}) {
        const auto parsed = parseReviewLine(read(line), BareMass::SmallUnit);
        EXPECT_TRUE(parsed) << line << ": "
                            << (parsed ? "" : sentence(parsed.error()).toStdString());
    }
    for (const Fault& fault : faults()) {
        const std::string line =
            "1 " +
            QCoreApplication::translate("faults", std::string(fault.word).c_str()).toStdString();
        EXPECT_TRUE(parseReviewLine(read(line.c_str()))) << line;
    }
}

TEST(BenchTyped, ARefusalListsTheWordsThatMayBeTyped) {
    const Speaking german(Language::German);
    const auto refused = parseReviewLine("7 gold", BareMass::SmallUnit);
    ASSERT_FALSE(refused);
    const std::string said = sentence(refused.error()).toStdString();
    EXPECT_NE(said.find("ausgebaut, dick, dick ausgebaut"), std::string::npos) << said;
    EXPECT_NE(said.find("behalten, abkratzen"), std::string::npos) << said;
    EXPECT_NE(said.find("oder 1 bis 8"), std::string::npos) << said;
    EXPECT_EQ(said.find("keep"), std::string::npos) << said;
    EXPECT_EQ(said.find("foundation"), std::string::npos) << said;
}

TEST(WeekdaysTyped, AreReadAndShown) {
    const auto read = [](const char* typed) {
        return weekdaysInEnglish(QString::fromUtf8(typed)).toStdString();
    };
    EXPECT_EQ(read("mon wed fri"), "mon wed fri");
    EXPECT_EQ(weekdaysAsSpoken(QStringLiteral("mon, wed")), QStringLiteral("mon, wed"));
    EXPECT_EQ(weekdaysAsSpoken(QStringLiteral("Mon, Wed")), QStringLiteral("Mon, Wed"));
    const Speaking german(Language::German);
    EXPECT_EQ(read("Mo Mi Fr"), "mon wed fri");
    EXPECT_EQ(read("mo., di, Do"), "mon, tue, thu");
    EXPECT_EQ(read("Samstag, Sonntag"), "sat, sun");
    EXPECT_EQ(read("mon, wed"), "mon, wed");
    EXPECT_EQ(weekdaysAsSpoken(QStringLiteral("mon, wed, sun")), QStringLiteral("Mo, Mi, So"));
    EXPECT_EQ(weekdaysAsSpoken(QStringLiteral("Mon, Wed, Sun")), QStringLiteral("Mo, Mi, So"));
}

TEST(ShadesTyped, AreRead) {
    EXPECT_EQ(shadesInEnglish(QStringLiteral("light, mid")), QStringLiteral("light, mid"));
    const Speaking german(Language::German);
    EXPECT_EQ(shadesInEnglish(QStringLiteral("hell, Mittel, dunkel")),
              QStringLiteral("light, mid, dark"));
    EXPECT_EQ(shadesInEnglish(QStringLiteral("light")), QStringLiteral("light"));
}

std::string choiceSaid(const char* field, const char* choice) {
    return choiceInWords(field, choice).toStdString();
}

TEST(ChoiceInWords, FollowsItsField) {
    EXPECT_EQ(choiceSaid("shade", "light"), "light");
    EXPECT_EQ(choiceSaid("went", "given"), "given");
    const Speaking german(Language::German);
    EXPECT_EQ(choiceSaid("shade", "light"), "hell");
    EXPECT_EQ(choiceSaid("heft", "light"), "leicht");
    EXPECT_EQ(choiceSaid("went", "given"), "verschenkt");
    EXPECT_EQ(choiceSaid("ending", "winter loss"), "Winterverlust");
}

}  // namespace
}  // namespace combwright
