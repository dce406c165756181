#include "core/exchange/import/import_plan.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QJsonDocument>
#include <QJsonObject>
#include <algorithm>
#include <thread>

#include "core/actions/import_rows.h"
#include "core/exchange/strict_json.h"
#include "core/model/honey/going_out.h"
#include "core/model/honey/pull.h"
#include "core/model/yard/weighing.h"
#include "core/storage/audit.h"
#include "core/storage/queries/yards.h"
#include "core/storage/sqlite/storage_error.h"
#include "tests/support/support.h"

namespace combwright {
namespace {

using test::day;

class Importing : public test::SeasonTest {
  protected:
    Importing() : season(newSeason()) {
        playAll(season, R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H1","boxes":"deep D1","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H2","boxes":"deep D2","origin":"overwintered"}
)");
    }
    ImportMap mapOf(const char* json) {
        const auto map = importMapOf(QJsonDocument::fromJson(QByteArray(json)).object(), kind);
        EXPECT_TRUE(map);
        return map ? *map : ImportMap{};
    }
    static QByteArray bytesOf(std::string_view text) {
        return {text.data(), static_cast<qsizetype>(text.size())};
    }
    ImportPlan plan(std::string_view table, const char* map = "{}") {
        auto made = planImport(season, kind, bytesOf(table), mapOf(map));
        EXPECT_TRUE(made);
        return made ? *std::move(made) : ImportPlan{};
    }
    std::int64_t keep(std::string_view table, const char* map = "{}",
                      RefusedRows refused = RefusedRows::HoldUpAll) {
        const auto kept = keepImport(season, plan(table, map), "table.csv", refused);
        EXPECT_TRUE(kept) << (kept ? "" : key(kept.error().code)) << " "
                          << (kept ? "" : kept.error().field);
        return kept ? *kept : -1;
    }
    static std::string verdicts(const ImportPlan& made) {
        std::string text;
        for (const PlannedRow& row : made.rows)
            text += (text.empty() ? "" : " ") + std::string(key(row.verdict));
        return text;
    }
    static std::string asked(const ImportPlan& made) {
        std::string text;
        for (const ImportQuestion& each : made.questions)
            text += (text.empty() ? "" : " ") + each.ask;
        return text;
    }

    Season season;
    ImportKind kind = ImportKind::Weights;
};

TEST_F(Importing, ThePreviewIsWhatIsCarriedOut) {
    const std::string before = season.dump();
    const std::string table = "Hive;Date;Weight (kg)\nH1;2027-06-01;41,25\nH2;2027-06-01;38,5\n";
    const ImportPlan made = plan(table);
    EXPECT_EQ(verdicts(made), "will_be_added will_be_added");
    EXPECT_EQ(made.rows[1].line, 3u);
    EXPECT_EQ(made.parter, ';');
    EXPECT_EQ(season.dump(), before);  // a look changes nothing

    EXPECT_GT(keep(table), 0);
    const auto weighed = season.read().all<HiveWeighing>();
    ASSERT_EQ(weighed.size(), 2u);
    EXPECT_EQ(weighed[0].whole->value, Mass::grams(41250));
    EXPECT_EQ(weighed[0].whole->how, How::Weighed);
    EXPECT_EQ(weighed[0].on, day("2027-06-01"));
    EXPECT_TRUE(audit(season.read()).empty());
}

TEST_F(Importing, TheSameTableTwiceAddsNothing) {
    const std::string table = "hive,day,kg\nH1,2027-06-01,41.25\nH2,2027-06-01,38.5\n";
    const char* map = R"({"columns":{"kg":"weight"}})";
    keep(table, map);
    const std::string dump = season.dump();
    const std::size_t steps = season.history().size();
    EXPECT_EQ(verdicts(plan(table, map)), "already_there already_there");
    EXPECT_EQ(keep(table, map), 0);
    EXPECT_EQ(season.dump(), dump);
    EXPECT_EQ(season.history().size(), steps);
    // Another weighing of that day is not written over.
    const ImportPlan other = plan("hive,day,weight kg\nH1,2027-06-01,40\n");
    EXPECT_EQ(verdicts(other), "refused");
    EXPECT_EQ(other.rows[0].why->code, Code::Taken);
}

TEST_F(Importing, OneStepTakesItBackWeeksLaterToo) {
    const std::string before = season.dump();
    const std::int64_t step = keep("hive,day,weight kg\nH1,2027-06-01,41\nH2,2027-06-01,38\n");
    EXPECT_EQ(season.history().front().seq, step);
    ASSERT_TRUE(season.undo(step));
    EXPECT_EQ(season.dump(), before);
    ASSERT_TRUE(season.redo());

    playAll(season, R"({"do":"note-task","on":"2027-07-01","text":"paint"})");
    const auto taken = play(season, R"({"do":"take-back-import","on":"2027-07-20","import_step":)" +
                                        std::to_string(step) + "}");
    ASSERT_FALSE(taken.stopped);
    EXPECT_TRUE(season.read().all<HiveWeighing>().empty());
    // That, too, can be taken back.
    ASSERT_TRUE(season.undo());
    EXPECT_EQ(season.read().all<HiveWeighing>().size(), 2u);
}

TEST_F(Importing, WhatStandsOnAnImportHoldsIt) {
    kind = ImportKind::Hives;
    const std::int64_t step = keep("Hive,Yard,Since,Origin\nH3,Hill,2027-05-01,swarm\n");
    playAll(season, R"({"do":"write-line","on":"2027-05-20","hive":"H3","line":"e b3"})");
    const std::string dump = season.dump();
    const auto taken = play(season, R"({"do":"take-back-import","on":"2027-07-20","import_step":)" +
                                        std::to_string(step) + "}");
    ASSERT_TRUE(taken.stopped);
    EXPECT_EQ(taken.stopped->refusal.code, Code::MovedOn);
    EXPECT_EQ(season.dump(), dump);
    for (const char* wrong : {"1", "999"}) {
        const auto none =
            play(season, R"({"do":"take-back-import","on":"2027-07-20","import_step":)" +
                             std::string(wrong) + "}");
        EXPECT_TRUE(none.stopped) << wrong;
    }
}

TEST_F(Importing, TheScriptOfAnImportGivesTheSameFile) {
    keep("hive,day,weight kg\nH1,2027-06-01,41\nH2,2027-06-01,38\n");
    auto copy = Season::create(path("copy.combwright"), clock);
    ASSERT_TRUE(copy);
    playAll(*copy, scriptOf(season));
    EXPECT_EQ(copy->dump(), season.dump());
}

TEST_F(Importing, WhatCanBeReadInTwoWaysIsAsked) {
    const std::string table = "Hive,Date,Weight\nH1,3/4/2027,\"1,240\"\nH2,5/6/2027,\"1,180\"\n";
    const ImportPlan made = plan(table);
    EXPECT_EQ(verdicts(made), "asked asked");
    EXPECT_EQ(asked(made), "dates decimal");
    EXPECT_EQ(made.questions[1].example, "1,240");
    EXPECT_EQ(made.questions[1].lines, (std::vector<std::size_t>{2, 3}));
    EXPECT_FALSE(keepImport(season, made, "t", RefusedRows::StayOut));
    // Answered one by one, the next question shows.
    EXPECT_EQ(asked(plan(table, R"({"decimal":"comma","dates":"day first"})")), "unit");
    const ImportPlan answered =
        plan(table, R"({"decimal":"point","dates":"day first","unit":"g"})");
    EXPECT_EQ(verdicts(answered), "will_be_added will_be_added");
    EXPECT_NE(answered.rows[0].play.find("\"on\":\"2027-04-03\""), std::string::npos);
    EXPECT_NE(answered.rows[0].play.find("\"whole_g\":1240"), std::string::npos);
}

TEST_F(Importing, ACleanColumnAnswersForItself) {
    const ImportPlan made = plan("Hive;Date;Weight kg\nH1;3/4/2027;1,240\nH2;23/4/2027;12,5\n");
    EXPECT_EQ(asked(made), "");
    EXPECT_NE(made.rows[0].play.find("\"whole_g\":1240,"), std::string::npos);
    EXPECT_NE(made.rows[0].play.find("2027-04-03"), std::string::npos);
}

TEST_F(Importing, RefusedRowsHoldUpAllOrStayOut) {
    const std::string table =
        "Hive,Date,Weight kg\nH1,2027-06-01,41\nH9,2027-06-01,38\nH2,2027-02-29,39\n"
        "H2,2027-06-01,heavy\n";
    const ImportPlan made = plan(table);
    EXPECT_EQ(verdicts(made), "will_be_added refused refused refused");
    EXPECT_EQ(made.rows[1].why->code, Code::NotFound);
    EXPECT_EQ(made.rows[2].why->code, Code::NotADay);
    EXPECT_EQ(made.rows[3].why->code, Code::WrongType);
    EXPECT_EQ(made.rows[3].why->field, "weight");
    const std::string before = season.dump();
    const auto none = keepImport(season, made, "t", RefusedRows::HoldUpAll);
    ASSERT_FALSE(none);
    EXPECT_EQ(none.error().value("import_line"), "3");
    EXPECT_EQ(season.dump(), before);

    ASSERT_TRUE(keepImport(season, made, "t", RefusedRows::StayOut));
    EXPECT_EQ(season.read().all<HiveWeighing>().size(), 1u);
    EXPECT_EQ(rejectedRows(made, [](const PlannedRow&) { return "=why"; }),
              "Hive,Date,Weight kg,line,field,reason\r\n"
              "H9,2027-06-01,38,3,hive,'=why\r\n"
              "H2,2027-02-29,39,4,day,'=why\r\n"
              "H2,2027-06-01,heavy,5,weight,'=why\r\n");
}

TEST_F(Importing, OneWeighingADayIsAskedFor) {
    const std::string table =
        "Hive,Timestamp,Weight kg\nH1,2027-06-01 20:00,42\nH1,2027-06-01 06:00,41\n"
        "H1,2027-06-02 06:00,43\n";
    EXPECT_EQ(asked(plan(table)), "of_day");
    EXPECT_EQ(verdicts(plan(table)), "asked asked will_be_added");
    EXPECT_EQ(verdicts(plan(table, R"({"of_day":"last"})")),
              "will_be_added left_out will_be_added");
    EXPECT_EQ(verdicts(plan(table, R"({"of_day":"first"})")),
              "left_out will_be_added will_be_added");
}

TEST_F(Importing, WeightsInPounds) {
    keep("hive,date,weight (lb)\nH1,2027-06-01,90.5\n");
    EXPECT_EQ(season.read().all<HiveWeighing>().front().whole->value, Mass::grams(41050));
    keep("hive,date,weight\nH2,2027-06-01,90.5 lb\n");
    EXPECT_EQ(season.read().all<HiveWeighing>().back().whole->value, Mass::grams(41050));
}

TEST_F(Importing, HivesWithTheirYards) {
    kind = ImportKind::Hives;
    const std::string table =
        "Mark,Apiary,Set up,Boxes,Origin\nC1,Creek,2027-05-02,deep D11,swarm\n"
        "C2,Creek,2027-05-01,deep D12,split\nH1,Hill,2027-05-01,,\n";
    EXPECT_EQ(asked(plan(table)), "day origin add_yards");
    const char* map = R"({"add_yards":true,"origin":"not known","columns":{"Set up":"day"}})";
    const ImportPlan made = plan(table, map);
    EXPECT_EQ(verdicts(made), "will_be_added will_be_added already_there");
    EXPECT_EQ(made.first.size(), 1u);
    keep(table, map);
    const auto yards = openYards(season.read());
    ASSERT_EQ(yards.size(), 2u);
    EXPECT_EQ(yards[1].name.text(), "Creek");
    EXPECT_EQ(yards[1].since, day("2027-05-01"));
    EXPECT_EQ(openHives(season.read(), yards[1].id).size(), 2u);
    EXPECT_TRUE(audit(season.read()).empty());
    EXPECT_EQ(keep(table, map), 0);
}

TEST_F(Importing, BoxesVisitsCropsAndSales) {
    kind = ImportKind::Boxes;
    const std::string boxes =
        "Box,Size,Contents,Shelf\nM41,medium,9 drawn,A\n,medium,,A\n,medium,,A\nM42,huge,,\n";
    const char* from = R"({"day":"2027-05-01"})";
    EXPECT_EQ(asked(plan(boxes)), "day");
    EXPECT_EQ(verdicts(plan(boxes, from)), "will_be_added will_be_added will_be_added refused");
    keep(boxes, from, RefusedRows::StayOut);
    EXPECT_EQ(season.read().all<Box>().size(), 5u);
    EXPECT_EQ(keep(boxes, from, RefusedRows::StayOut), 0);

    kind = ImportKind::Visits;
    const std::string visits =
        "Hive,Date,Queen seen,Eggs,Brood frames,Temper,Notes\n"
        "H1,2027-06-01,no,yes,7,2,\"calm, light\"\nH2,2027-06-01,maybe,,,,\n";
    EXPECT_EQ(verdicts(plan(visits)), "will_be_added refused");
    keep(visits, "{}", RefusedRows::StayOut);
    const auto seen = season.read().all<Inspection>();
    ASSERT_EQ(seen.size(), 1u);
    EXPECT_EQ(seen[0].seen.queenSeen, false);
    EXPECT_EQ(seen[0].seen.eggs, true);
    EXPECT_EQ(seen[0].seen.note, "calm, light");
    EXPECT_FALSE(seen[0].seen.stores);
    EXPECT_EQ(keep(visits, "{}", RefusedRows::StayOut), 0);

    kind = ImportKind::CropNotes;
    const std::string crops = "Year,Yard,Honey kg,How\n2024,Hill,31,by eye\n2023,Hill,28,\n";
    keep(crops, from);
    ASSERT_EQ(season.read().all<CropNote>().size(), 2u);
    EXPECT_EQ(season.read().all<CropNote>()[1].mass->how, How::Unknown);
    EXPECT_EQ(keep(crops, from), 0);

    kind = ImportKind::Sales;
    playAll(season,
            R"({"do":"add-goods","on":"2027-05-01","name":"wax wrap","what":"other","price":6}
{"do":"count-goods","on":"2027-05-01","goods_kind":"wax wrap","count":20}
)");
    const std::string sales =
        "Date,What,Pieces,Each,Buyer\n2027-05-20,wax wrap,3,€ 5.50,Mill\n"
        "2027-05-20,wax wrap,3,€ 5.50,Mill\n2027-05-21,wax wrap,30,,\n";
    EXPECT_EQ(verdicts(plan(sales)), "will_be_added will_be_added refused");
    keep(sales, "{}", RefusedRows::StayOut);
    ASSERT_EQ(season.read().all<GoingOut>().size(), 2u);
    EXPECT_EQ(season.read().all<GoingOut>()[0].each, Money::hundredths(550));
    EXPECT_EQ(keep(sales, "{}", RefusedRows::StayOut), 0);
    EXPECT_TRUE(audit(season.read()).empty());
}

TEST_F(Importing, WhatWasAmendedSinceIsToldAndNotAddedAgain) {
    kind = ImportKind::Sales;
    playAll(season,
            R"({"do":"add-goods","on":"2027-05-01","name":"wax wrap","what":"other","price":6}
{"do":"count-goods","on":"2027-05-01","goods_kind":"wax wrap","count":20}
)");
    const std::string sales =
        "Date,What,Pieces,Each,Buyer\n2027-05-20,wax wrap,3,€ 5.50,Mill\n"
        "2027-05-20,wax wrap,3,€ 5.50,Mill\n2027-05-21,wax wrap,2,€ 5.50,Inn\n";
    const std::int64_t step = keep(sales);
    const auto out = season.read().all<GoingOut>();
    ASSERT_EQ(out.size(), 3u);
    const auto amended = play(season, R"({"do":"amend","on":"2027-06-01","going_out":"#)" +
                                          std::to_string(out[2].id.number) +
                                          R"(","set":{"count":4},"why":"counted again"})");
    ASSERT_FALSE(amended.stopped) << amended.stopped->refusal.field;
    EXPECT_EQ(verdicts(plan(sales)), "already_there already_there changed_since");
    EXPECT_EQ(keep(sales), 0);
    EXPECT_EQ(season.read().all<GoingOut>().size(), 3u);
    // One more of the same is one more, and what was taken back may come again.
    EXPECT_EQ(verdicts(plan(sales + "2027-05-21,wax wrap,2,€ 5.50,Inn\n")),
              "already_there already_there changed_since will_be_added");
    ASSERT_TRUE(season.undo());
    ASSERT_TRUE(season.undo(step));
    EXPECT_EQ(verdicts(plan(sales)), "will_be_added will_be_added will_be_added");

    kind = ImportKind::CropNotes;
    const std::string crops = "Year,Date,Yard,Honey kg,How\n2024,2027-05-01,Hill,31,by eye\n";
    keep(crops);
    const auto mended =
        play(season, R"({"do":"amend","on":"2027-06-01","crop_note":"#)" +
                         std::to_string(season.read().all<CropNote>()[0].id.number) +
                         R"(","set":{"mass_g":30000,"mass_how":"by eye"},)"
                         R"("why":"read wrong"})");
    ASSERT_FALSE(mended.stopped) << mended.stopped->refusal.field;
    EXPECT_EQ(verdicts(plan(crops)), "changed_since");
}

TEST_F(Importing, StoppedAnywhereNothingIsKept) {
    std::string table = "hive,day,weight kg,note\n";
    for (int row = 0; row < 1000; ++row)
        table += "H" + std::to_string(row % 2 + 1) + ',' +
                 isoText(day("2020-01-01") + days{row / 2}) + ",41.5,\n";
    playAll(season, R"({"do":"add-yard","on":"2019-04-01","yard_name":"Old"}
{"do":"add-hive","on":"2019-04-01","yard":"Old","mark":"O1","boxes":"deep","origin":"overwintered"}
{"do":"add-hive","on":"2019-04-01","yard":"Old","mark":"O2","boxes":"deep","origin":"overwintered"}
)");
    std::replace(table.begin(), table.end(), 'H', 'O');
    const std::string before = season.dump();
    const std::size_t steps = season.history().size();
    const ImportMap map = mapOf(R"({"decimal":"point"})");
    /// Another thread that gives it up once it has come that far.
    const auto stoppedAt = [](Progress& progress, int percent) {
        return std::thread([&progress, percent] {
            while (progress.percent() < percent) std::this_thread::yield();
            progress.stop();
        });
    };
    for (const int percent : {0, 10, 40}) {
        Progress progress;
        std::thread other = stoppedAt(progress, percent);
        const auto made = planImport(season, kind, bytesOf(table), map, &progress);
        other.join();
        ASSERT_FALSE(made) << percent;
        EXPECT_EQ(made.error().code, Code::Stopped);
    }
    const auto made = planImport(season, kind, bytesOf(table), map);
    ASSERT_TRUE(made);
    ASSERT_EQ(made->count(RowVerdict::WillBeAdded), 1000u);
    Progress progress;
    std::thread other = stoppedAt(progress, 30);
    const auto kept = keepImport(season, *made, "t", RefusedRows::HoldUpAll, &progress);
    other.join();
    ASSERT_FALSE(kept);
    EXPECT_EQ(kept.error().code, Code::Stopped);
    EXPECT_EQ(season.dump(), before);
    EXPECT_EQ(season.history().size(), steps);
    // And the same plan can still be carried out.
    EXPECT_TRUE(keepImport(season, *made, "t", RefusedRows::HoldUpAll));
    EXPECT_EQ(season.history().size(), steps + 1);
}

/// Whatever is written in a cell, the journal has the line any other way of playing would leave.
TEST_F(Importing, TheLineOfAnImportIsTheOneOfItsAction) {
    keep("hive,day,weight kg,note\nH1,2027-06-01,41,\"a \"\"b\"\" \\ \tgrüß\r\n\x01 z\"\n");
    const std::string line = season.history().front().info.line;
    const auto done = strictObject(line);
    ASSERT_TRUE(done);
    ImportRows rows;
    rows.on = clock.today();
    rows.rowsOf = *Name::of("weights");
    rows.fileName = "table.csv";
    rows.lines = done->value("lines").toString().toStdString();
    EXPECT_EQ(line, playLine(*findActionType(ImportRows::name), toRow(rows), {}));
    EXPECT_EQ(season.read().all<HiveWeighing>()[0].note, "a \"b\" \\ \tgrüß\r\n\x01 z");
}

/// The season opened a second time, as another thread does: what that keeps is seen here.
TEST_F(Importing, ASecondConnectionKeepsAndTheFirstFollows) {
    const auto made = plan("hive,day,weight kg\nH1,2027-06-01,41\n");
    int told = 0;
    season.onChange([&told](const Change& change) {
        if (change.everything) ++told;
    });
    std::int64_t step = 0;
    const SeasonSeen seen = season.seen();
    std::thread other([&] {
        Season own = Season::openBeside(seen, clock, Database::Mode::ReadWrite);
        const auto kept = keepImport(own, made, "t", RefusedRows::HoldUpAll);
        step = kept ? *kept : -1;
    });
    other.join();
    ASSERT_GT(step, 0);
    season.follow(step);
    EXPECT_EQ(told, 1);
    EXPECT_FALSE(season.lookAgain());
    EXPECT_EQ(season.read().all<HiveWeighing>().size(), 1u);
    ASSERT_TRUE(season.undo(step));
    EXPECT_TRUE(season.read().all<HiveWeighing>().empty());
    // Another file in its place is not ours.
    SeasonSeen another = season.seen();
    another.digest = "other";
    EXPECT_THROW(Season::openBeside(another, clock, Database::Mode::ReadOnly), StorageError);
}

TEST_F(Importing, ColumnsNobodyNamesAreAskedFor) {
    const ImportPlan made = plan("a,b,c\nH1,2027-06-01,41\n");
    EXPECT_EQ(asked(made), "columns columns columns");
    EXPECT_EQ(verdicts(made), "asked");
    EXPECT_EQ(made.questions[0].choices, (std::vector<std::string>{"a", "b", "c"}));
    EXPECT_EQ(verdicts(plan("a,b,c\nH1,2027-06-01,41\n",
                            R"({"columns":{"a":"hive","b":"day","c":"weight"},"unit":"kg"})")),
              "will_be_added");
    // Two columns for one field: which is meant is asked.
    EXPECT_EQ(asked(plan("hive,mark,date,weight kg\nH1,H1,2027-06-01,41\n")), "columns");
}

TEST_F(Importing, GermanHeadingsAreReadWhateverIsSpoken) {
    const ImportPlan made =
        plan("Datum;Stand;Beute;Gewicht (kg);Bemerkung\n1.6.2027;Hill;H1;41,5;trocken\n");
    std::vector<std::string> fields;
    for (const PlannedColumn& column : made.columns) fields.push_back(column.field);
    EXPECT_EQ(fields, (std::vector<std::string>{"day", "yard", "hive", "weight", "note"}));
    // Alone a stand is what one hive stands on.
    EXPECT_EQ(plan("Datum;Stand;Gewicht (kg)\n1.6.2027;H1;41,5\n").columns[1].field, "hive");
}

TEST_F(Importing, WhatIsOddIsSaidBeforeItIsKept) {
    const ImportPlan made = plan("hive,date,weight kg\nH1,2027-06-01,41\nH1,2027-06-02,4250.5\n",
                                 R"({"decimal":"point"})");
    ASSERT_EQ(verdicts(made), "will_be_added will_be_added");
    EXPECT_TRUE(made.rows[0].odd.empty());
    ASSERT_EQ(made.rows[1].odd.size(), 1u);
    EXPECT_THAT(made.rows[1].odd.front(), testing::HasSubstr("4250.5 kg"));
    EXPECT_EQ(made.countOdd(), 1u);
}

TEST_F(Importing, AMapIsReadStrictly) {
    const auto refusedFor = [this](const char* json) {
        const auto map = importMapOf(QJsonDocument::fromJson(QByteArray(json)).object(), kind);
        EXPECT_FALSE(map) << json;
        return map ? std::string() : std::string(key(map.error().code)) + ' ' + map.error().field;
    };
    EXPECT_EQ(refusedFor(R"({"decimals":"comma"})"), "unknown_key decimals");
    EXPECT_EQ(refusedFor(R"({"decimal":"dot"})"), "not_a_choice decimal");
    EXPECT_EQ(refusedFor(R"({"day":"2027-02-29"})"), "not_a_day day");
    EXPECT_EQ(refusedFor(R"({"columns":{"a":"wing"}})"), "not_a_choice columns.a");
    EXPECT_EQ(refusedFor(R"({"header":"yes"})"), "wrong_type header");
    EXPECT_EQ(refusedFor(R"({"kind":"hives"})"), "contradiction kind");
    const char* whole =
        R"({"add_yards":true,"columns":{"a":"hive","b":null},"dates":"month first","day":"2027-05-01","decimal":"comma","delimiter":";","encoding":"utf-8","header":false,"of_day":"last","origin":"swarm","unit":"lb","yard":"Hill"})";
    EXPECT_EQ(QJsonDocument(toJson(mapOf(whole))).toJson(QJsonDocument::Compact).toStdString(),
              whole);
}

TEST_F(Importing, ALineThatIsNoRowIsRefused) {
    for (const char* line :
         {R"({\"do\":\"import-rows\",\"on\":\"2027-06-01\",\"rows_of\":\"x\",\"lines\":\"y\"})",
          R"({\"do\":\"note-task\",\"text\":\"no day\"})", "nonsense"}) {
        const auto result = play(
            season,
            std::string(R"({"do":"import-rows","on":"2027-06-01","rows_of":"weights","lines":")") +
                line + "\"}");
        EXPECT_TRUE(result.stopped) << line;
    }
}

}  // namespace
}  // namespace combwright
