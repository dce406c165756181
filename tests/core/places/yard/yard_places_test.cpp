// The yard's answers: what a figure is explained by, and what a hive's story tells.
#include <gtest/gtest.h>

#include <algorithm>

#include "core/places/explain/explain_yard.h"
#include "core/places/pages/yard/yard_story_text.h"
#include "core/storage/queries/names.h"
#include "core/words/working_words.h"
#include "tests/support/mill_lane.h"
#include "tests/support/support.h"

namespace combwright {
namespace {

class YardAnswers : public test::SeasonTest {
  protected:
    void SetUp() override {
        season.emplace(newSeason());
        playAll(*season, test::millLaneBefore());
        playAll(*season, test::millLaneVisit());
        yard = Id<Yard>{*findNamed(season->read(), Yard::table,
                                   NameQuery{.name = "Mill Lane", .on = clock.today()})};
    }
    Id<Hive> hive(const char* mark) const {
        return Id<Hive>{
            *findNamed(season->read(), Hive::table, NameQuery{.name = mark, .on = clock.today()})};
    }
    QStringList storyOf(const char* mark, const char* until = "2027-09-01") const {
        QStringList told;
        for (const StoryEntry& entry : hiveStory(season->read(), hive(mark), test::day(until)))
            told << storyKind(entry) + QStringLiteral(": ") + storySentence(entry);
        return told;
    }

    std::optional<Season> season;
    Id<Yard> yard;
};

TEST_F(YardAnswers, MorningAndEveningOfADayAreBothTold) {
    playAll(*season, R"({"do":"write-line","on":"2027-06-20","hive":"ML1","line":"e b7 s3"}
{"do":"write-line","on":"2027-06-20","hive":"ML1","line":"b6 s4 light"})");
    const QString told = storyOf("ML1").join(QLatin1Char('\n'));
    EXPECT_TRUE(told.contains(QStringLiteral("Written anew; it was: “e b7 s3”.")))
        << told.toStdString();
    EXPECT_TRUE(told.contains(QStringLiteral("6 brood, 4 stores. Light."))) << told.toStdString();
    const YardSheet next = yardSheet(season->read(), yard, test::day("2027-06-21"));
    ASSERT_TRUE(next.rows.front().lastBrood);
    EXPECT_EQ(next.rows.front().lastBrood->value.value, Frames::tenths(60)) << "the later counts";
}

TEST_F(YardAnswers, EveryFigureIsExplainedToItself) {
    const YardSheet sheet = yardSheet(season->read(), yard, test::day("2027-06-09"));
    const auto figures = explainYard(season->read(), sheet, hive("ML3"));
    const auto last = [&](const QString& what) {
        const auto found = std::find_if(figures.begin(), figures.end(), [&](const Explained& each) {
            return each.what.contains(what);
        });
        EXPECT_NE(found, figures.end()) << what.toStdString();
        return found == figures.end() ? -1.0 : found->working.steps.back().value;
    };
    EXPECT_TRUE(figures.front().what.contains(QStringLiteral("ML3"))) << "the chosen hive first";
    EXPECT_NEAR(last(QStringLiteral("Brood")), sheet.brood->value, 1e-12);
    EXPECT_NEAR(last(QStringLiteral("Stores")), sheet.stores->value, 1e-12);
    EXPECT_EQ(last(QStringLiteral("Supers")), static_cast<double>(sheet.supersStanding));
    EXPECT_EQ(last(QStringLiteral("storeroom")), static_cast<double>(*sheet.supersInStore));
    int dates = 0;
    int washes = 0;
    for (const YardSheetRow& row : sheet.rows)
        for (const Mind& mind : row.minds) {
            const QString mark = QString::fromStdString(row.hive.mark.text());
            if (mind.mitesPer100) {
                ++washes;
                EXPECT_NEAR(last(QStringLiteral("Mites in ") + mark), *mind.mitesPer100, 1e-12);
            }
            if (!mind.queen) continue;
            ++dates;
            EXPECT_EQ(last(QStringLiteral("queen in ") + mark),
                      static_cast<double>((mind.queen->actBy - mind.since).count()));
        }
    EXPECT_EQ(dates, 1);
    EXPECT_EQ(washes, 2);
    for (const Explained& each : figures)
        for (const Working::Step& step : each.working.steps)
            EXPECT_TRUE(hasStepWord(step.what)) << step.what;
}

TEST_F(YardAnswers, TheKeepersOwnPatienceIsSaidToBeTheirs) {
    playAll(
        *season,
        R"({"do":"set-constant","on":"2027-04-01","constant":"act_after_days","value":30,"source":"own habit"})");
    const YardSheet sheet = yardSheet(season->read(), yard, test::day("2027-06-09"));
    const auto figures = explainYard(season->read(), sheet, hive("ML3"));
    const auto& steps = figures.front().working.steps;
    const auto own = std::find_if(steps.begin(), steps.end(), [](const Working::Step& step) {
        return step.what == "act_after_days";
    });
    ASSERT_NE(own, steps.end());
    EXPECT_EQ(own->value, 30);
    EXPECT_EQ(own->source, "own habit");
    EXPECT_EQ(steps.back().value, 38) << "out after eight days at the latest, then thirty";
}

TEST_F(YardAnswers, TheStoryTellsWhatWasDoneWithBoxes) {
    playAll(
        *season,
        R"({"do":"look-box","on":"2027-06-20","box":"M33","contents":"9 drawn; 7 capped, 85 % full"}
{"do":"count-box","on":"2027-06-21","box":"M33","contents":"8 drawn, 1 broken","occasion":"visit"}
{"do":"hold-back","on":"2027-06-22","box":"M33","reason":"treated while on","note":"strip"}
{"do":"move-box","on":"2027-07-01","box":"M33","to":"on hive","hive":"ML4"}
{"do":"move-box","on":"2027-07-02","box":"M60","to":"on hive","hive":"ML3"})");
    const QStringList told = storyOf("ML3");
    EXPECT_EQ(told.value(0), QStringLiteral("box: M60 on, from: storeroom."));
    EXPECT_EQ(told.value(1), QStringLiteral("box: M33 off, onto ML4."));
    EXPECT_EQ(told.value(2), QStringLiteral("hold: M33 held back: treated while on; strip."));
    EXPECT_EQ(told.value(3),
              QStringLiteral("box: M33 counted: 8 drawn, 1 ") +
                  QString::fromStdString(
                      std::string(std::find_if(faults().begin(), faults().end(),
                                               [](const Fault& each) { return each.letter == 'V'; })
                                      ->word)) +
                  QStringLiteral("."));
    EXPECT_EQ(told.value(4), QStringLiteral("box: M33: 9 frames, 7 capped, 85 % full."));
    EXPECT_TRUE(told.contains(QStringLiteral("box: Set up with D33, M33 with 9 drawn.")));
    EXPECT_EQ(storyOf("ML4").value(0),
              QStringLiteral("box: M33 with 8 drawn, 1 broken wood on, from ML3.")
                  .replace(QStringLiteral("broken wood"),
                           told.value(3).section(QStringLiteral("1 "), 1).chopped(1)));
    EXPECT_TRUE(storyOf("ML1").contains(
        QStringLiteral("opened: Eggs. 7 brood, 3 stores. 1 super on. On: M43.")));
    EXPECT_EQ(storyOf("ML3", "2027-06-08").size(), 3) << "nothing of later days";
}

TEST_F(YardAnswers, TheStoryTellsMedicinesFindingsScaleAndFeed) {
    playAll(
        *season,
        R"({"do":"buy-medicine","on":"2027-07-01","name":"Strips","quantity":10,"unit":"strips","supers":"may stay"}
{"do":"treat","on":"2027-07-02","medicine":"Strips","hives":"ML3","amount":2,"given_by":"Ann"}
{"do":"take-out-medicine","on":"2027-07-20","hives":"ML3"}
{"do":"record-finding","on":"2027-07-21","hive":"ML3","what":"varroa","method":"wash","mites":6,"bees":300}
{"do":"record-finding","on":"2027-07-22","hive":"ML3","what":"nosema","method":"seen","level":"some","note":"soiled front"}
{"do":"weigh-hive","on":"2027-07-23","hive":"ML3","left_g":20000,"right_g":21000}
{"do":"feed","on":"2027-07-24","hives":"ML3","given_g":6000,"kind":"syrup 2:1"})");
    const QStringList told = storyOf("ML3");
    EXPECT_EQ(told.value(0), QStringLiteral("fed: Fed 6.0 kg of sugar as syrup 2:1."));
    EXPECT_EQ(told.value(1),
              QStringLiteral("scale: Weighed at one side: 20.0 kg; at the other: 21.0 kg."));
    EXPECT_EQ(told.value(2), QStringLiteral("found: Nosema; some; soiled front."));
    EXPECT_TRUE(
        told.value(3).startsWith(QStringLiteral("found: Varroa; wash, 6 of 300: 2.0 in 100 bees")))
        << told.value(3).toStdString();
    EXPECT_EQ(told.value(4), QStringLiteral("medicine: Strips out."));
    EXPECT_TRUE(told.value(5).startsWith(QStringLiteral("medicine: Strips in; 2 strips; by Ann")))
        << told.value(5).toStdString();
}

TEST_F(YardAnswers, ALineWrittenAnewSaysWhatItWas) {
    playAll(*season,
            R"({"do":"write-line","on":"2027-06-20","hive":"ML3","line":"e b7 +1"}
{"do":"write-line","on":"2027-06-20","hive":"ML3","line":"e b8","why":"miscounted"}
{"do":"write-line","on":"2027-06-21","hive":"ML3","line":"e b8"})");
    const QStringList told = storyOf("ML3");
    EXPECT_EQ(told.value(0), QStringLiteral("opened: Eggs. 8 brood."));
    EXPECT_EQ(told.value(1), QStringLiteral("opened: Eggs. 8 brood. Written anew, because: "
                                            "miscounted; it was: “e b7 +1”."));
    ASSERT_TRUE(season->undo());
    ASSERT_TRUE(season->undo());
    EXPECT_FALSE(storyOf("ML3").value(0).contains(QStringLiteral("Written anew")));
}

TEST_F(YardAnswers, WithinADayTheNewestIsToldFirst) {
    playAll(*season,
            R"({"do":"hold-back","on":"2027-06-22","hive":"ML3","reason":"other","note":"first"}
{"do":"move-box","on":"2027-06-22","box":"M60","to":"on hive","hive":"ML3"}
{"do":"move-box","on":"2027-06-22","box":"M33","to":"on hive","hive":"ML4"})");
    const QStringList told = storyOf("ML3");
    const auto at = [&](const char* what) {
        for (int i = 0; i < told.size(); ++i)
            if (told[i].contains(QLatin1String(what))) return i;
        return -1;
    };
    EXPECT_LT(at("M33 off"), at("M60 on"));
    EXPECT_GE(at("M33 off"), 0);
}

TEST_F(YardAnswers, ALookOfAnotherHiveSaysNothingHere) {
    playAll(
        *season,
        R"({"do":"look-box","on":"2027-06-20","box":"M33","contents":"9 drawn; 7 capped, 85 % full"}
{"do":"move-box","on":"2027-07-01","box":"M33","to":"on hive","hive":"ML4"})");
    const Box box = *season->read().find(Id<Box>{*findNamed(
        season->read(), Box::table, NameQuery{.name = "M33", .on = test::day("2027-07-01")})});
    EXPECT_FALSE(newestLookHere(season->read(), box, test::day("2027-07-02")));
    const auto inside = boxInside(season->read(), box.id, test::day("2027-07-02"));
    ASSERT_TRUE(inside);
    EXPECT_FALSE(inside->look);
    EXPECT_FALSE(inside->nest);
    ASSERT_FALSE(inside->frames.empty());
    EXPECT_FALSE(inside->frames.front().filledA) << "nothing that was not recorded";
    EXPECT_FALSE(boxInside(season->read(), Id<Box>{9999}, clock.today()));
}

TEST_F(YardAnswers, AWaitThatIsOverIsNotLeftShut) {
    const auto takes = [&](const char* on) {
        std::vector<TakeAlong::What> what;
        for (const TakeAlong& each : yardSheet(season->read(), yard, test::day(on)).takeAlong)
            what.push_back(each.what);
        return what;
    };
    const auto has = [](const std::vector<TakeAlong::What>& list, TakeAlong::What what) {
        return std::find(list.begin(), list.end(), what) != list.end();
    };
    EXPECT_TRUE(has(takes("2027-06-09"), TakeAlong::What::LeaveShut));
    EXPECT_FALSE(has(takes("2027-07-05"), TakeAlong::What::LeaveShut));
    EXPECT_TRUE(has(takes("2027-07-05"), TakeAlong::What::EggFrame));
}

TEST_F(YardAnswers, WithinADayAStoryGoesAsTheDayWent) {
    playAll(*season,
            R"({"do":"add-boxes","on":"2027-05-01","kind":"medium","first_mark":"Z1","count":3}
{"do":"add-hive","on":"2027-05-02","yard":"Mill Lane","mark":"NEW","boxes":"deep Z9","origin":"swarm"}
{"do":"move-box","on":"2027-05-02","box":"Z1","to":"on hive","hive":"NEW"}
{"do":"move-box","on":"2027-05-02","box":"Z1","to":"wet"}
{"do":"write-line","on":"2027-05-02","hive":"NEW","line":"e +1"}
{"do":"end-colony","on":"2027-05-20","hive":"NEW","ending":"queenless"}
{"do":"start-colony","on":"2027-05-20","hive":"NEW","origin":"nucleus","reason":"laying worker, combs clean"})");
    std::vector<StoryEntry::What> told;
    for (const StoryEntry& entry : hiveStory(season->read(), hive("NEW"), test::day("2027-06-01")))
        told.push_back(entry.what);
    using What = StoryEntry::What;
    EXPECT_EQ(told, (std::vector{What::ColonyCame, What::ColonyEnded, What::HeldBack, What::Look,
                                 What::BoxesOff, What::BoxesOn, What::ColonyCame, What::Began}))
        << "newest first";
}

}  // namespace
}  // namespace combwright
