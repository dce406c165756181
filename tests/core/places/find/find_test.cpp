// What the box that finds anything says of a record, which days it understands, and where it leads.
#include "core/places/find/find.h"

#include <gtest/gtest.h>

#include "core/actions/demo_season.h"
#include "core/words/language.h"
#include "tests/support/support.h"

namespace combwright {
namespace {

using test::day;

class FindTest : public test::SeasonTest {
  protected:
    void SetUp() override {
        season.emplace(newSeason());
        playAll(*season, R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H1","boxes":"deep D1, x, medium M1","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H2","boxes":"deep D2","origin":"swarm"}
{"do":"add-boxes","on":"2027-04-10","kind":"medium","first_mark":"M7","count":1}
{"do":"write-line","on":"2027-05-10","hive":"H1","line":"e b6 \"gave room\""}
{"do":"close-hive","on":"2027-05-20","hive":"H2","boxes_to":"storeroom"})");
        cache.bringUp(season->read());
    }
    /// The first hit of that record.
    std::optional<FindHit> hit(const char* typed, std::string_view table) {
        for (const FindGroup& group : findRecords(cache, QString::fromUtf8(typed), 20))
            for (const FindHit& each : group.hits)
                if (each.table == table) return each;
        return std::nullopt;
    }
    FindLead lead(const char* typed, std::string_view table) {
        const auto found = hit(typed, table);
        EXPECT_TRUE(found) << typed << ' ' << table;
        const auto to = found ? findLead(season->read(), *found, clock.today()) : std::nullopt;
        EXPECT_TRUE(to) << typed << ' ' << table;
        return to.value_or(FindLead{});
    }

    std::optional<Season> season;
    FindCache cache{":memory:"};
};

TEST_F(FindTest, SaysWhatItIsInOneLine) {
    const auto hive = hit("h1", "hive");
    ASSERT_TRUE(hive);
    EXPECT_EQ(hive->title, QStringLiteral("H1"));
    EXPECT_EQ(hive->context, QStringLiteral("hive · Hill · Sat 10 Apr 2027"));
    EXPECT_TRUE(hive->byMark);
    const auto look = hit("gave room", "inspection");
    ASSERT_TRUE(look);
    EXPECT_EQ(look->title, QStringLiteral("H1"));
    EXPECT_TRUE(look->context.startsWith(QStringLiteral("look · Mon 10 May 2027 · ")));
    EXPECT_TRUE(look->context.contains(QStringLiteral("gave room")));
    EXPECT_FALSE(look->byMark);
}

TEST_F(FindTest, KnowsARecordByTheWordItIsShownUnder) {
    // Kept as an inspection, shown as a look.
    EXPECT_TRUE(hit("look h1", "inspection"));
    EXPECT_TRUE(hit("inspection h1", "inspection"));
    const auto swarm = hit("swarm", "colony");
    ASSERT_TRUE(swarm);
    EXPECT_EQ(swarm->context, QStringLiteral("colony · swarm · Sat 10 Apr 2027"));
}

TEST_F(FindTest, LeadsWhereItIsShown) {
    const FindLead hive = lead("h1", "hive");
    EXPECT_EQ(hive.where, FindLead::Where::Yard);
    EXPECT_EQ(hive.page, FindLead::Page::Story);
    EXPECT_EQ(hive.hive, Id<Hive>{1});
    EXPECT_EQ(hive.yard, Id<Yard>{1});
    EXPECT_FALSE(hive.on) << "it stands";
    // A closed hive is shown as it last stood.
    EXPECT_EQ(lead("h2", "hive").on, day("2027-04-10"));
    EXPECT_EQ(lead("look h1", "inspection").hive, Id<Hive>{1});
    const FindLead visit = lead("visit hill", "visit");
    EXPECT_EQ(visit.page, FindLead::Page::Sheet);
    EXPECT_EQ(visit.on, day("2027-05-10"));
    EXPECT_EQ(lead("m1", "box").where, FindLead::Where::Yard) << "it stands on a hive";
    EXPECT_EQ(lead("m7", "box").where, FindLead::Where::Storeroom);
    EXPECT_EQ(lead("hill", "yard").page, FindLead::Page::Front);
}

TEST_F(FindTest, LeadsNowhereWhereItIsGone) {
    const auto box = hit("m7", "box");
    ASSERT_TRUE(box);
    FindHit gone = *box;
    gone.row = 4711;
    EXPECT_FALSE(findLead(season->read(), gone, clock.today()));
}

TEST(Find, EveryRecordOfTheSampleLeadsSomewhere) {
    QTemporaryDir folder;
    test::FakeClock clock;
    const auto season =
        makeDemoSeason(folder.filePath(QStringLiteral("s.combwright")).toStdString(), clock);
    ASSERT_TRUE(season);
    for (const FindTable& table : findTables()) {
        Statement statement =
            season->read().database().prepare(findQuestion(table, " ORDER BY t.id LIMIT 50"));
        statement.run();
        while (statement.next()) {
            FindHit hit;
            hit.kind = table.kind;
            hit.table = table.table;
            hit.row = statement.number(0);
            hit.on = parseDay(statement.text(5));
            const auto lead = findLead(season->read(), hit, demoSeasonDay());
            ASSERT_TRUE(lead) << table.table;
            const bool ofHive = lead->page == FindLead::Page::Story;
            EXPECT_TRUE(!ofHive || lead->hive || table.table == "queen")
                << table.table << ' ' << hit.row;
        }
    }
}

TEST(FindDays, AreUnderstoodAsTheyAreSaid) {
    const Day today = day("2027-06-09");  // a Wednesday
    const auto on = [&](const char* typed) { return findDay(QString::fromUtf8(typed), today); };
    EXPECT_EQ(on("9 jun"), day("2027-06-09"));
    EXPECT_EQ(on("2026-06-09"), day("2026-06-09"));
    EXPECT_EQ(on("tuesday"), day("2027-06-08"));
    EXPECT_EQ(on("last tuesday"), day("2027-06-08"));
    EXPECT_EQ(on("Last Wednesday"), day("2027-06-02"));
    EXPECT_EQ(on("wed"), day("2027-06-09"));
    EXPECT_EQ(on("yesterday"), day("2027-06-08"));
    EXPECT_EQ(on("3 days ago"), day("2027-06-06"));
    EXPECT_EQ(on("9.6."), day("2027-06-09"));
    for (const char* word : {"", "mo", "su", "12", "ml3", "last", "last 9 jun", "honey", "27-2"})
        EXPECT_EQ(on(word), std::nullopt) << word;
}

TEST(FindDays, AreUnderstoodInGermanToo) {
    const Speaking german(Language::German);
    const Day today = day("2027-06-09");  // a Wednesday
    const auto on = [&](const char* typed) { return findDay(QString::fromUtf8(typed), today); };
    for (const char* typed : {"letzten Dienstag", "letzter Dienstag", "Letzten Di.", "dienstag",
                              "last tuesday", "gestern", "vor einem Tag", "yesterday", "8. Juni"})
        EXPECT_EQ(on(typed), day("2027-06-08")) << typed;
    EXPECT_EQ(on("letzten Mittwoch"), day("2027-06-02"));
    EXPECT_EQ(on("vorgestern"), day("2027-06-07"));
    EXPECT_EQ(on("vor 3 Tagen"), day("2027-06-06"));
    EXPECT_EQ(on("vor 2 Wochen"), day("2027-05-26"));
    for (const char* word : {"letzten", "letzten 9. Juni", "vor", "honig", "vor 3"})
        EXPECT_EQ(on(word), std::nullopt) << word;
}

/// The place goes to the first of these it lists.
TEST_F(FindTest, LeadsToTheRowAndWhatItIsOf) {
    playAll(*season, R"({"do":"open-run","on":"2027-06-01","name":"R1"}
{"do":"fill-bucket","on":"2027-06-01","run":"R1","mark":"B1","net_g":12000})");
    cache.bringUp(season->read());
    const FindLead bucket = lead("b1", "bucket");
    EXPECT_EQ(bucket.page, FindLead::Page::Honey);
    ASSERT_EQ(bucket.records.size(), 2U);
    EXPECT_EQ(bucket.records[0], (std::pair<std::string_view, std::int64_t>{"bucket", 1}));
    EXPECT_EQ(bucket.records[1], (std::pair<std::string_view, std::int64_t>{"extraction", 1}));
}

}  // namespace
}  // namespace combwright
