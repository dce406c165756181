// One sentence for each rule, whole, whatever of its members is known.
#include "core/places/pages/due/due_words.h"

#include <gtest/gtest.h>

#include "core/places/pages/due/due_calendar.h"
#include "tests/support/support.h"

namespace combwright {
namespace {

using test::day;

std::vector<DueItem> variants(DueRule rule) {
    DueItem bare;
    bare.rule = rule;
    bare.id = "x";
    bare.since = bare.from = day("2027-06-01");
    DueItem full = bare;
    full.by = day("2027-06-20");
    full.other = day("2027-06-10");
    full.about = "M03";
    full.count = 2;
    full.value = 0.5;
    full.mass = Mass::grams(5000);
    full.rate = MiteRate{2.0, 0.7, 4.3};
    DueItem shut = full;
    shut.leaveShut = true;
    DueItem in = full;
    in.about = "in";
    DueItem away = full;
    away.where = DueWhere::Storeroom;
    DueItem pulled = full;
    pulled.where = DueWhere::Pull;
    return {bare, full, shut, in, away, pulled};
}

TEST(DueWords, EveryRuleHasItsSentence) {
    for (std::size_t n = 0; n < Choices<DueRule>::words.size(); ++n)
        for (const DueItem& item : variants(static_cast<DueRule>(n))) {
            const QString why = dueWhyText(item);
            const auto name = std::string(Choices<DueRule>::words[n]);
            EXPECT_TRUE(why.endsWith(QLatin1Char('.'))) << name << ": " << why.toStdString();
            EXPECT_FALSE(why.contains(QLatin1String("%1"))) << name << ": " << why.toStdString();
            EXPECT_FALSE(why.contains(QLatin1Char('!'))) << name << ": nobody is urged";
            const bool named = !dueDoText(item).isEmpty() || item.rule == DueRule::Task;
            EXPECT_TRUE(named) << name;
            EXPECT_FALSE(ruleText(item.rule).isEmpty()) << name;
        }
}

TEST(DueWords, ADeadOutWithoutCombsHoldsNone) {
    DueItem item;
    item.rule = DueRule::DeadOut;
    item.since = item.from = day("2027-02-10");
    EXPECT_EQ(dueWhyText(item),
              QStringLiteral("Dead since Wed 10 Feb; no comb of it is held any more."));
    item.count = 1;
    EXPECT_EQ(dueWhyText(item),
              QStringLiteral("Dead since Wed 10 Feb; 1 frame held until foulbrood is ruled out."));
    item.count = 10;
    item.value = 2;
    EXPECT_EQ(dueWhyText(item),
              QStringLiteral("Dead since Wed 10 Feb; 10 frames, and the combs of 2 boxes nobody "
                             "counted, held until foulbrood is ruled out."));
    item.count.reset();
    EXPECT_EQ(
        dueWhyText(item),
        QStringLiteral("Dead since Wed 10 Feb; the combs of 2 boxes nobody counted held until "
                       "foulbrood is ruled out."));
}

TEST(DueWords, ATripCountsWhatIsAlike) {
    DueTrip trip;
    trip.yard = Id<Yard>{1};
    trip.yardName = "Hill";
    trip.day = day("2027-06-10");
    for (int n = 1; n <= 3; ++n) {
        DueItem item;
        item.rule = n == 3 ? DueRule::Feed : DueRule::Look;
        item.hive = Id<Hive>{n};
        trip.hives.push_back({item.hive, "H" + std::to_string(n), {item}});
    }
    DueItem shut;
    shut.leaveShut = true;
    shut.from = day("2027-07-01");
    trip.shut.push_back({Id<Hive>{4}, "H4", {shut}});
    trip.take = {{"feeder", 2, std::nullopt}, {"syrup", 1, Mass::grams(5000)}};
    EXPECT_EQ(tripText(trip).toStdString(),
              "Hill: 2 to look at, 1 to feed, H4 leave shut to 30 Jun");
    EXPECT_EQ(tripNoteText(trip).toStdString(), "take 2 feeders, 5 kg syrup");
}

TEST(DueWords, ACalendarEntryIsOnTheLastGoodDayAndNeverPast) {
    DueList list;
    list.on = day("2027-06-10");
    DueTrip trip;
    trip.yard = Id<Yard>{1};
    trip.yardName = "Hill";
    const auto with = [&](const char* id, const char* from, std::optional<Day> by) {
        DueItem item;
        item.rule = DueRule::Feed;
        item.id = id;
        item.from = item.since = day(from);
        item.by = by;
        item.hive = Id<Hive>{1};
        return item;
    };
    trip.hives.push_back(
        {Id<Hive>{1},
         "H1",
         {with("late", "2027-06-01", day("2027-06-05")),
          with("window", "2027-06-01", day("2027-06-20")),
          with("ahead", "2027-06-15", std::nullopt), with("open", "2027-06-01", std::nullopt)}});
    list.trips.push_back(trip);
    const auto entries = dueCalendar(list);
    ASSERT_EQ(entries.size(), 4U);
    EXPECT_EQ(entries[0].from, list.on);
    EXPECT_EQ(entries[1].from, day("2027-06-20"));
    EXPECT_NE(entries[1].description.find("From Thu 10 Jun to Sun 20 Jun."), std::string::npos)
        << entries[1].description;
    EXPECT_EQ(entries[2].from, day("2027-06-15"));
    EXPECT_EQ(entries[3].from, list.on);
    EXPECT_EQ(entries[0].id, "late@combwright");
    EXPECT_EQ(entries[0].summary, "H1: feed");
    EXPECT_EQ(entries[0].location, "Hill");
}

}  // namespace
}  // namespace combwright
