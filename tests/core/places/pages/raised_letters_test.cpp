// How a number is known never stands as a plain letter behind it: raised in a table, a word in a
// sentence.
#include <gtest/gtest.h>

#include <QRegularExpression>

#include "core/places/due/due_list.h"
#include "core/places/explain/explain_yard.h"
#include "core/places/health/mites.h"
#include "core/places/pages/due/due_page.h"
#include "core/places/pages/due/due_words.h"
#include "core/places/pages/health/health_pages.h"
#include "core/places/pages/page_text.h"
#include "core/places/pages/stores/stores_page.h"
#include "core/places/stores/stores.h"
#include "core/words/figures.h"
#include "tests/support/deeds.h"
#include "tests/support/mill_lane.h"

namespace combwright {
namespace {

using test::day;

/// The first figure with a plain letter of how it is known behind it; empty where there is none.
std::string plainLetter(const QString& text) {
    static const QRegularExpression shape(
        QStringLiteral("\\d( (kg|lb|g|oz))?\\)?( ?)[wceda?](?![\\w.])"));
    return shape.match(text).captured(0).toStdString();
}

class RaisedLetters : public test::DeedsTest {
  protected:
    void SetUp() override {
        done(test::millLaneBefore() + test::millLaneVisit());
        clock.set("2027-11-20");
        done(R"({"do":"weigh-hive","on":"2027-10-20","hive":"ML1","whole_g":36000,"without_g":20000}
{"do":"write-line","on":"2027-10-20","hive":"ML2","line":"light s2"})");
    }
};

TEST(PlainLetter, IsFoundWhereItStands) {
    EXPECT_EQ(plainLetter(QStringLiteral("19 kg a, and more")), "9 kg a");
    EXPECT_EQ(plainLetter(QStringLiteral("24.1e  8 frames")), "1e");
    EXPECT_EQ(plainLetter(QStringLiteral("(1.4 to 5.6)e")), "6)e");
    EXPECT_EQ(plainLetter(QStringLiteral("4.0 a day")), "0 a") << "so such sentences are not asked";
    EXPECT_EQ(plainLetter(QStringLiteral("19 kg, assumed; 4 ended")), "");
}

TEST_F(RaisedLetters, OnThePagesOfStoresAndMites) {
    const Stores all = stores(file(), {Id<Yard>{1}}, day("2027-11-20"));
    const QString told = pageText(storesPage(file(), all));
    EXPECT_EQ(plainLetter(told), "") << told.toStdString();
    EXPECT_TRUE(told.contains(QChar(0x1d43))) << "assumed, raised: " << told.toStdString();
    EXPECT_EQ(plainLetter(pageText(feedingSheetPage(file(), all))), "");
    const auto hives = mites(file(), {}, day("2027-06-10"));
    EXPECT_EQ(plainLetter(pageText(mitesPage(file(), hives, day("2027-06-10")))), "");
}

TEST_F(RaisedLetters, InSentencesAndFiguresExplained) {
    EXPECT_EQ(massInWords(19000, How::Assumed), QStringLiteral("19 kg, assumed"));
    int asked = 0;
    for (const char* on : {"2027-06-10", "2027-10-21", "2027-11-20"}) {
        const DueList due = dueList(file(), day(on));
        for (const DueItem* item : due.items()) {
            EXPECT_EQ(plainLetter(dueDoText(*item)), "");
            EXPECT_EQ(plainLetter(dueWhyText(*item)), "") << dueWhyText(*item).toStdString();
            ++asked;
        }
    }
    EXPECT_GT(asked, 10);
    const Stores all = stores(file(), {Id<Yard>{1}}, day("2027-11-20"));
    const auto explained = explainStores(file(), all);
    ASSERT_FALSE(explained.empty());
    for (const Explained& each : explained)
        EXPECT_EQ(plainLetter(each.answer), "") << each.answer.toStdString();
    for (const Explained& each :
         explainYard(file(), yardSheet(file(), Id<Yard>{1}, day("2027-06-09")), {}))
        EXPECT_EQ(plainLetter(each.answer), "") << each.answer.toStdString();
}

}  // namespace
}  // namespace combwright
