#include "core/words/language.h"

#include <gtest/gtest.h>

#include <QCoreApplication>

#include "core/words/day_words.h"
#include "core/words/figures.h"
#include "core/words/typed_words.h"
#include "core/words/words.h"

namespace combwright {
namespace {

std::string wordHeard(const char* context, const char* text) {
    return QCoreApplication::translate(context, text).toStdString();
}

TEST(Language, IsNamedAsItIsTyped) {
    EXPECT_EQ(languageNamed(QStringLiteral("de")), Language::German);
    EXPECT_EQ(languageNamed(QStringLiteral("en")), Language::English);
    EXPECT_FALSE(languageNamed(QStringLiteral("German")));
    EXPECT_EQ(languageName(Language::German).toStdString(), "de");
    EXPECT_EQ(languageItself(Language::German).toStdString(), "Deutsch");
}

TEST(Language, OfTestsIsEnglish) {
    EXPECT_EQ(languageOfTheDesktop(), Language::English);
    const Speaking english(Language::English);
    EXPECT_EQ(wordHeard("words", "brood"), "brood");
    EXPECT_EQ(massText(27'500, How::Weighed).toStdString(), "27.5 kg");
}

TEST(Language, EnglishSaysOneOtherwiseThanMany) {
    const Speaking english(Language::English);
    const auto said = [](int count) {
        return QCoreApplication::translate("account", "in %n runs", nullptr, count).toStdString();
    };
    EXPECT_EQ(said(1), "in 1 run");
    EXPECT_EQ(said(3), "in 3 runs");
}

TEST(Language, GermanHasACommaAndNeverPartsThousands) {
    const Speaking german(Language::German);
    EXPECT_EQ(massText(27'500, How::Weighed).toStdString(), "27,5 kg");
    EXPECT_EQ(massText(1'240'000, How::Weighed).toStdString(), "1240,0 kg");
    EXPECT_EQ(QLocale().toString(1240).toStdString(), "1240");
    EXPECT_EQ(typedMass(QStringLiteral("13,5")), Mass::grams(13'500));
    EXPECT_EQ(typedMass(QStringLiteral("13.5")), Mass::grams(13'500));
    EXPECT_FALSE(typedMass(QStringLiteral("1.240")));
    EXPECT_FALSE(typedMass(QStringLiteral("1,240")));
    // What is shown can be typed again.
    EXPECT_EQ(typedMass(massTyped(Mass::grams(21'350))), Mass::grams(21'350));
}

TEST(Language, GermanDaysAreReadBesideEnglishOnes) {
    const Speaking german(Language::German);
    const Day today = *makeDay(2027, 7, 29);
    EXPECT_EQ(dayText(today).toStdString(), "Do 29. Juli 2027");
    for (const char* typed :
         {"9. März", "9 mär", "9.3.", "9 mar", "2027-03-09", "Di, 9. März 2027"})
        EXPECT_EQ(dayInWords(typed, today), makeDay(2027, 3, 9)) << typed;
    for (const char* typed : {"mittwoch", "mi.", "wed", "gestern", "Gestern", "yesterday"})
        EXPECT_EQ(dayInWords(typed, today), makeDay(2027, 7, 28)) << typed;
    for (const char* typed : {"today", "heute", ""}) EXPECT_EQ(dayInWords(typed, today), today);
    for (const char* typed : {"vor 3 Tagen", "3 days ago", "-3"})
        EXPECT_EQ(dayInWords(typed, today), makeDay(2027, 7, 26)) << typed;
    for (const char* typed : {"vorgestern", "vor 2 Tagen", "day before yesterday"})
        EXPECT_EQ(dayInWords(typed, today), makeDay(2027, 7, 27)) << typed;
    for (const char* typed : {"vor einer Woche", "vor 1 Woche", "vor 7 Tagen", "a week ago"})
        EXPECT_EQ(dayInWords(typed, today), makeDay(2027, 7, 22)) << typed;
    EXPECT_EQ(dayInWords("vor 2 Wochen", today), makeDay(2027, 7, 15));
    EXPECT_EQ(dayInWords("vor einem Tag", today), makeDay(2027, 7, 28));
    for (const char* typed : {"vor Tagen", "vor drei Tagen", "vor 3"})
        EXPECT_EQ(dayInWords(typed, today), std::nullopt) << typed;
    // As it is shown, too.
    EXPECT_EQ(dayInWords(dayText(today).toStdString(), today), today);
    EXPECT_EQ(dayInWords(shortDayText(today).toStdString(), today), today);
}

TEST(Language, WordsOfALineMayBeGermanToo) {
    const auto english = [](const char* typed) {
        return typedInEnglish(QString::fromUtf8(typed)).toStdString();
    };
    EXPECT_EQ(english("nicht geöffnet"), "nicht geöffnet");
    const Speaking german(Language::German);
    EXPECT_EQ(english("nicht geöffnet"), "not opened");
    EXPECT_EQ(english("7 ausgebaut, 1 Mittelwand, 1 gebrochen"), "7 drawn, 1 foundation, 1 broken");
    EXPECT_EQ(english("3 dick ausgebaut; kein Gespinst"), "3 drawn fat; no web");
    EXPECT_EQ(english("ganz, x, zweidrittel B4 9 ausgebaut"), "deep, x, medium B4 9 drawn");
    // English and marks stay, a longer word is another, and a note is the person's own.
    EXPECT_EQ(english("9 drawn; 7 capped, 85 % full"), "9 drawn; 7 capped, 85 % full");
    EXPECT_EQ(english("e b7 s3 +1"), "e b7 s3 +1");
    EXPECT_EQ(english("altes"), "altes");
    EXPECT_EQ(english("7 alt \"alt und voll\""), "7 old \"alt und voll\"");
}

TEST(Language, EndsWithItsSpeaker) {
    { const Speaking german(Language::German); }
    EXPECT_EQ(massText(27'500, How::Weighed).toStdString(), "27.5 kg");
    EXPECT_EQ(wordHeard("words", "brood"), "brood");
}

}  // namespace
}  // namespace combwright
