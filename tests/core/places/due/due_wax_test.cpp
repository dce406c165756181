// What is due at the wax bench: a pot at once, washed wax the same day, the next candle evening,
// what is set, comb jars week by week.
#include "core/places/due/due_wax.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/places/due/due_list.h"
#include "core/places/pages/due/due_calendar.h"
#include "core/places/pages/due/due_words.h"
#include "core/places/pages/due/half_done_words.h"
#include "core/places/today/half_done.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

using test::day;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

class DueWax : public test::DeedsTest {
  protected:
    void SetUp() override {
        clock.set("2027-12-20");
        done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H1","boxes":"deep D1, x, medium M1"}
{"do":"open-run","on":"2027-08-08","name":"27-1","yard":"Hill"})");
    }
    void cappings(const char* more) {
        done(
            R"({"do":"gather-wax","on":"2027-08-09","name":"A","source":"cappings","runs":"27-1","raw_g":9000)" +
            std::string(more) + "}");
    }
    std::vector<DueItem> wax(const char* on, std::optional<Id<Yard>> yard = std::nullopt) const {
        std::vector<DueItem> items;
        addDueWax(file(), day(on), yard, items);
        return items;
    }
    std::vector<std::string> sources(const char* on) const {
        std::vector<std::string> all;
        for (const DueItem& item : wax(on)) all.push_back(item.source);
        return all;
    }
    DueGroup groupOf(const char* on) const {
        const DueList list = dueList(file(), day(on));
        for (const DueTrip& trip : list.trips)
            if (trip.where == DueWhere::WaxBench) return trip.group;
        ADD_FAILURE() << "nothing at the wax bench";
        return DueGroup::Later;
    }
};

TEST_F(DueWax, APotOnHeatIsDueAtOnceAndHalfDoneFirst) {
    done(
        R"({"do":"heat-on","on":"2027-11-13","begun":"2027-11-13T13:00:00Z","what_heated":"wax pot"})");
    ASSERT_THAT(sources("2027-11-13"), ElementsAre("heat"));
    EXPECT_EQ(groupOf("2027-11-13"), DueGroup::Today);
    EXPECT_EQ(groupOf("2027-11-14"), DueGroup::Late);
    EXPECT_THAT(dueDoText(wax("2027-11-13").front()).toStdString(), HasSubstr("POT ON HEAT"));
    const auto half = halfDone(file(), day("2027-11-13"));
    ASSERT_FALSE(half.empty());
    EXPECT_EQ(half.front().what, HalfDone::What::Heat);
    EXPECT_THAT(halfDoneTitle(half.front()).toStdString(), HasSubstr("wax pot"));
    EXPECT_EQ(halfDoneLines(half.front(), day("2027-11-13")).size(), 2);
    done(R"({"do":"heat-off","on":"2027-11-13","off_at":"2027-11-13T15:00:00Z"})");
    EXPECT_THAT(wax("2027-11-13"), IsEmpty());
    for (const HalfDone& each : halfDone(file(), day("2027-11-13")))
        EXPECT_NE(each.what, HalfDone::What::Heat);
}

TEST_F(DueWax, WashedWaxIsDueThatDay) {
    cappings(R"(,"state":"drained","kept":"tight lid")");
    EXPECT_THAT(wax("2027-10-01"), IsEmpty()) << "under a tight lid it keeps";
    done(R"({"do":"work-wax","on":"2027-11-02","batch":"A","work":"washed"})");
    ASSERT_THAT(sources("2027-11-02"), ElementsAre("melt"));
    EXPECT_EQ(groupOf("2027-11-02"), DueGroup::Today);
    EXPECT_EQ(groupOf("2027-11-03"), DueGroup::Late);
    done(R"({"do":"work-wax","on":"2027-11-03","batch":"A","work":"melted"})");
    EXPECT_THAT(wax("2027-11-03"), IsEmpty());
}

TEST_F(DueWax, WetCappingsLeftOpenAreDueAfterAFortnight) {
    cappings(R"(,"state":"undrained")");
    ASSERT_THAT(sources("2027-08-10"), ElementsAre("wet"));
    EXPECT_EQ(wax("2027-08-10").front().from, day("2027-08-23"));
    EXPECT_EQ(wax("2027-08-30").front().count, 21);
    done(R"({"do":"keep-wax","on":"2027-08-30","batch":"A","kept":"frozen"})");
    EXPECT_THAT(wax("2027-09-30"), IsEmpty());
}

TEST_F(DueWax, TheNextEveningAndWhatIsSet) {
    done(R"({"do":"add-goods","on":"2027-10-01","name":"skep","what":"candle","net_g":45}
{"do":"add-mould","on":"2027-10-01","name":"Skeps","goods_kind":"skep","cavities":4,"volume_ml":47,"set_hours":2}
{"do":"cast-block","on":"2027-11-01","name":"L","shade":"light","mass_g":3400}
{"do":"set-evenings","on":"2027-11-10","from_day":"2027-11-15","to_day":"2027-11-19","weekdays":"mon wed fri","last_finishing":true}
{"do":"wish-candles","on":"2027-11-10","goods_kind":"skep","count":8,"wanted_by":"2027-11-20","what_for":"fair"})");
    ASSERT_THAT(sources("2027-11-12"), ElementsAre("pour", "finish"));
    EXPECT_EQ(wax("2027-11-12").front().from, day("2027-11-15"));
    EXPECT_EQ(wax("2027-11-12").front().id, "candles-2027-11-15");
    EXPECT_EQ(dueDoText(wax("2027-11-12").front()), QStringLiteral("Pour 4 skep"));
    const auto entries = dueCalendar(file(), dueList(file(), day("2027-11-12")));
    std::vector<std::string> ids;
    for (const CalendarEntry& entry : entries) ids.push_back(entry.id);
    EXPECT_THAT(ids,
                ElementsAre("candles-2027-11-15@combwright", "candles-finish-2027-11-20@combwright",
                            "candles-2027-11-17@combwright"))
        << "each evening once";
    done(R"({"do":"pour-candles","on":"2027-11-15","mould":"Skeps","good":4,"blocks":"L 180 g"})");
    EXPECT_THAT(sources("2027-11-16"), ElementsAre("pour", "finish", "out"));
    EXPECT_EQ(wax("2027-11-16").front().from, day("2027-11-17")) << "four are still wanted";
    done(R"({"do":"finish-candles","on":"2027-11-16","pour":"Skeps","candle_work":"released"})");
    EXPECT_THAT(sources("2027-11-16"), ElementsAre("pour", "finish"));
}

TEST_F(DueWax, CombJarsAreLookedAtWeeklyAndComeOffWhenBuilt) {
    done(
        R"({"do":"start-project","on":"2027-05-01","name":"Jars","pieces":8,"hive":"H1","wanted_by":"2027-07-10"})");
    ASSERT_THAT(sources("2027-05-02"), ElementsAre("on"));
    EXPECT_EQ(wax("2027-05-02").front().by, day("2027-06-12")) << "28 days before they are wanted";
    EXPECT_EQ(wax("2027-05-02").front().hive, hive("H1"));
    done(R"({"do":"work-project","on":"2027-06-01","project":"Jars","project_work":"put on"})");
    ASSERT_THAT(sources("2027-06-02"), ElementsAre("look"));
    EXPECT_EQ(wax("2027-06-02").front().from, day("2027-06-08"));
    done(
        R"({"do":"look-at-project","on":"2027-06-09","project":"Jars","built":8,"filled_pieces":3})");
    EXPECT_EQ(wax("2027-06-10").front().from, day("2027-06-16"));
    done(
        R"({"do":"look-at-project","on":"2027-06-16","project":"Jars","built":8,"filled_pieces":8})");
    EXPECT_THAT(sources("2027-06-16"), ElementsAre("off"));
    done(R"({"do":"work-project","on":"2027-06-17","project":"Jars","project_work":"taken off"})");
    EXPECT_THAT(sources("2027-06-17"), ElementsAre("lid"));
    EXPECT_EQ(wax("2027-06-17").front().where, DueWhere::WaxBench);
    done(
        R"({"do":"work-project","on":"2027-06-18","project":"Jars","project_work":"lidded","good":7,"net_g":2100})");
    EXPECT_THAT(wax("2027-06-18"), IsEmpty());
}

TEST_F(DueWax, TheNextDayIsPouredForWhenTheFirstIsProvidedFor) {
    done(R"({"do":"add-goods","on":"2027-10-01","name":"skep","what":"candle","net_g":45}
{"do":"add-mould","on":"2027-10-01","name":"Skeps","goods_kind":"skep","cavities":4,"volume_ml":47,"set_hours":2}
{"do":"cast-block","on":"2027-11-01","name":"L","shade":"light","mass_g":3400}
{"do":"set-evenings","on":"2027-11-10","from_day":"2027-11-15","to_day":"2027-11-26","weekdays":"mon wed fri"}
{"do":"wish-candles","on":"2027-11-10","goods_kind":"skep","count":8,"wanted_by":"2027-11-20","what_for":"fair"}
{"do":"wish-candles","on":"2027-11-10","goods_kind":"skep","count":4,"wanted_by":"2027-11-27","what_for":"gifts"})");
    ASSERT_THAT(sources("2027-11-12"), ElementsAre("pour"));
    EXPECT_EQ(wax("2027-11-12").front().other, day("2027-11-20"));
    done(R"({"do":"drop-wish","on":"2027-11-11","candle_wish":"#1"})");
    ASSERT_THAT(sources("2027-11-12"), ElementsAre("pour"));
    EXPECT_EQ(wax("2027-11-12").front().other, day("2027-11-27"));
}

}  // namespace
}  // namespace combwright
