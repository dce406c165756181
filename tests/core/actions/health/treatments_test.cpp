// Medicines bought, given to a yard at once, taken out and disposed of: what is left, which supers
// were on, and what is refused or asked about.
#include "core/actions/health/treatments.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/model/season_info.h"
#include "core/places/health/treatments.h"
#include "core/places/questions/questions.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::IsEmpty;
using ::testing::Not;
using ::testing::UnorderedElementsAre;

class Treated : public test::DeedsTest {
  protected:
    void SetUp() override {
        clock.set("2027-10-20");
        season.onChange([this](const Change& change) {
            for (const Question& question : questionsAfter(season.read(), change, clock.today()))
                asked.emplace_back(key(question.asked));
        });
        done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill","usual_super":"medium"}
{"do":"add-yard","on":"2027-04-01","yard_name":"Creek"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H1","boxes":"deep D1, x, medium M1 9 drawn, medium M2 9 drawn","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H2","boxes":"deep D2","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H3","boxes":"deep D3"}
{"do":"add-hive","on":"2027-04-01","yard":"Creek","mark":"C1","boxes":"deep D4, x, medium M4 9 drawn","origin":"overwintered"}
{"do":"buy-medicine","on":"2027-07-01","name":"Strips","active":"amitraz strips","batch":"A7","expires":"2028-06-30","supplier":"Farm shop","quantity":10,"unit":"strips","withdrawal":"none for honey with supers off","supers":"off","in_hive_from_days":42,"in_hive_to_days":56,"wait_days":14}
{"do":"buy-medicine","on":"2027-07-01","name":"Acid pads","active":"formic acid gel strips","quantity":20,"unit":"pads","supers":"may stay","in_hive_from_days":14,"in_hive_to_days":14,"wait_days":0,"warm_from_c":10,"warm_to_c":29.4})");
        asked.clear();
    }
    std::vector<std::string> after(std::string_view line) {
        asked.clear();
        EXPECT_EQ(outcome(line), "kept") << line;
        return asked;
    }
    std::vector<std::string> held() const {
        std::vector<std::string> marks;
        for (const TreatedBox& each : treatedBoxes(file(), test::day("2027-10-20")))
            marks.push_back(each.name);
        return marks;
    }
    std::optional<double> left(std::string_view name) const {
        for (const MedicineStock& each : medicinesOn(file(), test::day("2027-10-20")))
            if (each.medicine.name.text() == name) return each.use.left();
        return std::nullopt;
    }
    static std::string strips(const char* more, const char* on = "2027-08-10") {
        return R"({"do":"treat","on":")" + std::string(on) + R"(","medicine":"Strips")" + more +
               "}";
    }
    std::vector<std::string> asked;
};

TEST_F(Treated, AYardAtOnceWithAmountOffStockAndSupersOffTheStack) {
    EXPECT_THAT(after(strips(R"(,"yard":"Hill","amount":2,"given_by":"Ann")")),
                ElementsAre("supers_treated"))
        << "H1 has supers on";
    const auto given = file().all<Treatment>();
    ASSERT_EQ(given.size(), 3U) << "H3 has no colony written down, so nobody knows it is empty";
    EXPECT_EQ(given[0].supersOn, true);
    EXPECT_EQ(given[1].supersOn, false);
    EXPECT_TRUE(given[0].colony);
    EXPECT_FALSE(given[2].colony);
    EXPECT_EQ(given[0].withdrawal, "none for honey with supers off");
    EXPECT_EQ(left("Strips"), 4.0);
    EXPECT_THAT(held(), UnorderedElementsAre("M1", "M2"));
    for (const Hold& hold : file().all<Hold>()) EXPECT_EQ(hold.treatment, given[0].id);
    expectClean();
    // The batch is one step.
    ASSERT_TRUE(season.undo());
    EXPECT_THAT(file().all<Treatment>(), IsEmpty());
    EXPECT_THAT(file().all<Hold>(), IsEmpty());
    EXPECT_EQ(left("Strips"), 10.0);
    ASSERT_TRUE(season.redo());
    EXPECT_EQ(file().all<Treatment>().size(), 3U);
}

TEST_F(Treated, WhereTheLabelLetsSupersStayNothingIsHeld) {
    EXPECT_THAT(
        after(R"({"do":"treat","on":"2027-08-10","medicine":"Acid pads","hives":"H1","amount":2})"),
        IsEmpty());
    EXPECT_EQ(file().all<Treatment>().back().supersOn, true);
    EXPECT_THAT(held(), IsEmpty());
    // What nobody wrote down of supers is no leave to keep them on.
    done(R"({"do":"buy-medicine","on":"2027-07-01","name":"Old can"})");
    EXPECT_THAT(after(R"({"do":"treat","on":"2027-08-10","medicine":"Old can","hives":"C1"})"),
                ElementsAre("supers_treated"));
    EXPECT_THAT(held(), ElementsAre("M4"));
}

TEST_F(Treated, ASuperPutOnMeanwhileIsAskedAboutAndHeldWhenItComesOut) {
    done(R"({"do":"add-boxes","on":"2027-07-01","kind":"medium","first_mark":"M7","count":3})");
    EXPECT_THAT(after(strips(R"(,"hives":"H2","amount":2)")), IsEmpty());
    EXPECT_THAT(
        after(R"({"do":"move-box","on":"2027-08-20","box":"M7","to":"on hive","hive":"H2"})"),
        ElementsAre("super_too_early"));
    EXPECT_THAT(held(), IsEmpty());
    EXPECT_EQ(outcome(R"({"do":"take-out-medicine","on":"2027-09-25","hives":"H2"})"), "kept");
    EXPECT_THAT(held(), ElementsAre("M7"));
    EXPECT_EQ(file().all<Hold>().back().since, test::day("2027-08-20"));
    // Out on 25 September and 14 days to wait: not before 9 October.
    EXPECT_THAT(
        after(R"({"do":"move-box","on":"2027-10-08","box":"M8","to":"on hive","hive":"H2"})"),
        ElementsAre("super_too_early"));
    EXPECT_THAT(
        after(R"({"do":"move-box","on":"2027-10-09","box":"M9","to":"on hive","hive":"H2"})"),
        IsEmpty());
    EXPECT_THAT(held(), ElementsAre("M7"));
}

TEST_F(Treated, MoreThanThereIsExpiredOrGoesIntoAnEmptyHiveIsAskedAbout) {
    EXPECT_THAT(after(strips(R"(,"hives":"H2","amount":12)")),
                ElementsAre("more_medicine_than_there"));
    EXPECT_EQ(left("Strips"), -2.0);
    EXPECT_THAT(after(strips(R"(,"hives":"H2","amount":1)", "2027-08-20")),
                UnorderedElementsAre("more_medicine_than_there", "already_treated"));
    EXPECT_THAT(
        after(R"({"do":"treat","on":"2028-07-02","medicine":"Strips","hives":"H3","amount":1})"),
        Contains("medicine_expired"));
    done(R"({"do":"end-colony","on":"2027-06-01","hive":"C1"})");
    EXPECT_THAT(
        after(R"({"do":"treat","on":"2027-08-10","medicine":"Acid pads","hives":"C1","amount":1})"),
        ElementsAre("nobody_lives"));
    EXPECT_THAT(
        after(R"({"do":"treat","on":"2027-06-10","medicine":"Acid pads","hives":"H2","amount":1})"),
        ElementsAre("before_bought"));
}

TEST_F(Treated, AnAmountNobodyWroteDownLeavesTheRestUnknown) {
    done(strips(R"(,"hives":"H2")"));
    EXPECT_EQ(left("Strips"), std::nullopt);
    done(
        R"({"do":"dispose-medicine","on":"2027-10-01","medicine":"Acid pads","amount":5,"how":"to the depot"})");
    EXPECT_EQ(left("Acid pads"), 15.0);
}

TEST_F(Treated, ATreatmentWithoutAnEndStaysOpen) {
    done(strips(R"(,"hives":"H2","amount":2)"));
    done(R"({"do":"buy-medicine","on":"2027-07-01","name":"Trickle"}
{"do":"treat","on":"2027-08-12","medicine":"Trickle","hives":"C1"})");
    const auto running = runningTreatments(file(), {}, test::day("2027-10-20"));
    ASSERT_EQ(running.size(), 2U);
    // colonies-and-pests 2.3, a year on: in on 10 August, out between 21 September and 5 October.
    ASSERT_TRUE(running[0].dueOut);
    EXPECT_EQ(running[0].dueOut->from, test::day("2027-09-21"));
    EXPECT_EQ(running[0].dueOut->to, test::day("2027-10-05"));
    EXPECT_FALSE(running[1].dueOut);
    EXPECT_FALSE(running[1].supersBack);
    done(R"({"do":"take-out-medicine","on":"2027-10-01"})");
    EXPECT_THAT(runningTreatments(file(), {}, test::day("2027-10-20")), IsEmpty());
    EXPECT_THAT(treatmentList(file(), {}, test::day("2027-10-01"), test::day("2027-10-20")),
                testing::SizeIs(2));
}

TEST_F(Treated, ADayMistypedIsAmendedAndWhatWasOnFollows) {
    done(R"({"do":"move-box","on":"2027-08-05","box":"M2","to":"cleared"})");
    done(strips(R"(,"hives":"H1","amount":2)"));
    EXPECT_THAT(held(), ElementsAre("M1"));
    const std::string treatment = R"("treatment":{"treatment":"2027-08-10","hive":"H1"})";
    const auto amend = [&](const char* set) {
        return outcome(R"({"do":"amend","on":"2027-10-20",)" + treatment + R"(,"set":)" + set +
                       R"(,"why":"misread"})");
    };
    EXPECT_EQ(amend(R"({"out_day":"2027-08-01"})"), "contradiction set.out_day");
    EXPECT_EQ(amend(R"({"amount":0})"), "out_of_range set.amount");
    EXPECT_EQ(amend(R"({"hive":"H2"})"), "fixed set.hive");
    EXPECT_EQ(amend(R"({"on_day":"2027-03-01"})"), "before_it_began set.on_day");
    // On the 4th M2 still stood there.
    EXPECT_EQ(amend(R"({"on_day":"2027-08-04"})"), "kept");
    EXPECT_THAT(held(), UnorderedElementsAre("M1", "M2"));
    EXPECT_EQ(
        outcome(
            R"({"do":"amend","on":"2027-10-20","medicine":"Acid pads","set":{"supers":"off","quantity":-1},"why":"x"})"),
        "negative set.quantity");
    done(R"({"do":"treat","on":"2027-08-10","medicine":"Acid pads","hives":"C1","amount":2})");
    EXPECT_THAT(held(), UnorderedElementsAre("M1", "M2"));
    done(
        R"({"do":"amend","on":"2027-10-20","medicine":"Acid pads","set":{"supers":"off"},"why":"another label"})");
    EXPECT_THAT(held(), UnorderedElementsAre("M1", "M2", "M4"));
    expectClean();
}

TEST_F(Treated, BadInputIsRefusedAndChangesNothing) {
    done(strips(R"(,"hives":"H2","amount":2)"));
    const std::vector<std::pair<std::string, std::string>> table{
        {strips(R"(,"hives":"H2","amount":2)"), "duplicate hives"},
        {strips(R"(,"hives":"H1, H1")"), "duplicate hives"},
        {strips(R"(,"hives":"H9")"), "not_found hives"},
        {strips(R"(,"hives":"C1","yard":"Hill")"), "not_found hives"},
        {strips(""), "missing hives"},
        {strips(R"(,"hives":"H1","amount":0)"), "out_of_range amount"},
        {strips(R"(,"hives":"H1","amount":-2)"), "out_of_range amount"},
        {strips(R"(,"hives":"H1","out_day":"2027-08-01")"), "contradiction out_day"},
        {strips(R"(,"hives":"H1")", "2027-03-01"), "before_it_began on"},
        {R"({"do":"treat","on":"2027-08-10","medicine":"No such","hives":"H1"})",
         "not_found medicine"},
        {R"({"do":"take-out-medicine","on":"2027-08-01","hives":"H2"})", "before_it_began on"},
        {R"({"do":"take-out-medicine","on":"2027-08-20","hives":"H1"})", "not_found hives"},
        {R"({"do":"take-out-medicine","on":"2027-08-20","yard":"Creek"})", "not_found hives"},
        {R"({"do":"buy-medicine","on":"2027-08-01","name":""})", "missing name"},
        {R"({"do":"buy-medicine","on":"2027-08-01","name":"X","quantity":5})", "missing unit"},
        {R"({"do":"buy-medicine","on":"2027-08-01","name":"X","quantity":-5,"unit":"g"})",
         "negative quantity"},
        {R"({"do":"buy-medicine","on":"2027-08-01","name":"X","wait_days":-1})",
         "negative wait_days"},
        {R"({"do":"buy-medicine","on":"2027-08-01","name":"X","wait_days":99999})",
         "out_of_range wait_days"},
        {R"({"do":"buy-medicine","on":"2027-08-01","name":"X","in_hive_from_days":9,"in_hive_to_days":7})",
         "contradiction in_hive_to_days"},
        {R"({"do":"buy-medicine","on":"2027-08-01","name":"X","warm_from_c":30,"warm_to_c":10})",
         "contradiction warm_to_c"},
        {R"({"do":"buy-medicine","on":"2027-08-01","name":"X","supers":"maybe"})",
         "not_a_choice supers"},
        {R"({"do":"dispose-medicine","on":"2027-06-01","medicine":"Strips","how":"depot"})",
         "before_it_began on"},
        {R"({"do":"dispose-medicine","on":"2027-09-01","medicine":"Strips","amount":0,"how":"depot"})",
         "out_of_range amount"},
    };
    for (const auto& [line, refused] : table) EXPECT_EQ(outcome(line), refused) << line;
}

TEST_F(Treated, ALabelsWarmthIsHeldAgainstADay) {
    const auto stocks = medicinesOn(file(), test::day("2027-08-01"));
    ASSERT_EQ(stocks.size(), 2U);
    const auto pads = stocks[0].medicine.name.text() == "Acid pads" ? stocks[0] : stocks[1];
    // 10 to 29.4 °C is 50 to 85 °F.
    EXPECT_EQ(suits(pads.medicine, 10.0), InWindow::Suits);
    EXPECT_EQ(suits(pads.medicine, 9.9), InWindow::TooCold);
    EXPECT_EQ(suits(pads.medicine, (92 - 32) / 1.8), InWindow::TooWarm);
    EXPECT_FALSE(pads.published) << "no region is chosen";
    done(R"({"do":"choose-tables","on":"2027-07-01","medicines_region":"US"})");
    const auto chosen = medicinesOn(file(), test::day("2027-08-01"));
    for (const MedicineStock& each : chosen) ASSERT_TRUE(each.published);
    // Beside the label, never in it.
    EXPECT_FALSE(chosen[0].medicine.warmFrom && chosen[1].medicine.warmFrom);
}

/// Treated too early: the box keeps it through pull, run and bucket.
TEST_F(Treated, TooEarlyTheBoxIsFlaggedThroughTheHoneyRoom) {
    done(strips(R"(,"hives":"H1","amount":2)", "2027-07-20"));
    EXPECT_THAT(after(R"({"do":"move-box","on":"2027-08-01","box":"M1","to":"cleared"})"),
                IsEmpty());
    EXPECT_THAT(held(), UnorderedElementsAre("M1", "M2"));
    done(R"({"do":"open-run","on":"2027-08-02","name":"27-1","yard":"Hill"})");
    EXPECT_THAT(
        after(
            R"({"do":"weigh-box","on":"2027-08-02","run":"27-1","box":"M1","gross_g":15000,"wet_g":5000})"),
        ElementsAre("treated_honey"));
    EXPECT_THAT(
        after(R"({"do":"fill-bucket","on":"2027-08-02","run":"27-1","mark":"B1","net_g":9900})"),
        ElementsAre("treated_honey"));
    const Id<Extraction> run = file().all<Extraction>().front().id;
    ASSERT_EQ(treatedInRun(file(), run).size(), 1U);
    const auto behind = treatmentsBehind(file(), run);
    ASSERT_EQ(behind.size(), 1U);
    EXPECT_TRUE(behind[0].boxWasOn);
    EXPECT_EQ(behind[0].medicine.active, "amitraz strips");
    // Cleared by the keeper, on grounds he writes down.
    done(
        R"({"do":"release-hold","on":"2027-08-03","hold":{"box":"M1"},"lifted_by":"me","grounds":"empty comb only"})");
    EXPECT_THAT(
        after(R"({"do":"fill-bucket","on":"2027-08-03","run":"27-1","mark":"B2","net_g":100})"),
        testing::Not(Contains("treated_honey")));
    EXPECT_EQ(treatmentsBehind(file(), run).size(), 1U) << "the lot inherits it all the same";
}

TEST_F(Treated, OutBeforeItsDaysIsAskedAbout) {
    done(strips(R"(,"yard":"Hill","hives":"H2")"));
    const std::string out = R"({"do":"take-out-medicine","medicine":"Strips","hives":"H2","on":)";
    EXPECT_THAT(after(out + R"("2027-08-10"})"), Contains("out_too_early"));
    EXPECT_TRUE(file().all<Treatment>().front().out) << "kept all the same";
    ASSERT_TRUE(season.undo());
    EXPECT_THAT(after(out + R"("2027-09-21"})"), IsEmpty()) << "42 days";
}

TEST_F(Treated, WhoIsLeftOutOfAllIsSaid) {
    done(R"({"do":"end-colony","on":"2027-08-01","hive":"H1","ending":"absconded"})");
    EXPECT_THAT(after(strips(R"(,"yard":"Hill")")), Contains("left_untreated"));
    ASSERT_TRUE(season.undo());
    EXPECT_THAT(after(strips(R"(,"yard":"Hill","hives":"H2")")), Not(Contains("left_untreated")));
    // A hive that was closed since stood there that day.
    ASSERT_TRUE(season.undo());
    done(
        R"({"do":"close-hive","on":"2027-09-20","hive":"H3","ending":"sold","boxes_to":"storeroom"})");
    done(strips(R"(,"yard":"Hill")"));
    EXPECT_TRUE(file().first<Treatment>({is("hive", hive("H3"))}));
}

}  // namespace
}  // namespace combwright
