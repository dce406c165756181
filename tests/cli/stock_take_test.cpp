// The worked example of an April stock-take (tests/support/stock_take.h), through play lines and
// the two commands: what is short of everything, before and after the dead-outs are explained and
// the repairs are ticked, to the last piece.
#include "tests/support/stock_take.h"

#include <gtest/gtest.h>

#include "tests/cli/run_cli.h"

namespace combwright {
namespace {

using test::CliAnswer;

class StockTake : public test::CliTest {
  protected:
    void SetUp() override {
        clock.set("2027-04-05");
        makeSeason();
        played(test::stockTakeBefore());
    }
    void played(std::string_view script) const {
        const CliAnswer answer = on("play", {}, script);
        ASSERT_EQ(answer.exit, cli::Done) << answer;
    }
    QJsonObject json(const char* command, const QStringList& more = {}) const {
        const CliAnswer answer = on(command, QStringList{QStringLiteral("--json")} + more);
        EXPECT_EQ(answer.exit, cli::Done) << answer;
        return answer.object();
    }
    static QJsonObject line(const QJsonObject& object, const char* list, const char* key,
                            const char* named) {
        for (const QJsonValue& each : object.value(QLatin1String(list)).toArray())
            if (each.toObject().value(QLatin1String(key)) == QLatin1String(named))
                return each.toObject();
        ADD_FAILURE() << "no " << named << " among " << list;
        return {};
    }
    static int number(const QJsonObject& object, const char* key) {
        const QJsonValue value = object.value(QLatin1String(key));
        EXPECT_TRUE(value.isDouble()) << key << " is not known";
        return value.toInt(-1);
    }
    QJsonObject box(const char* code) const { return line(json("needs"), "boxes", "box", code); }
    QJsonObject frame(const char* code) const {
        return line(json("needs"), "frames", "frame", code);
    }
    QJsonObject item(const char* item) const { return line(json("needs"), "items", "item", item); }

    /// Both dead hives looked through, their combs sorted: 22 keep, 11 melt with sound wood, 7
    /// gone.
    void recordDeadOuts() const { played(test::stockTakeDeadOuts()); }
};

TEST_F(StockTake, HoldsWhatCameOfTheDeadUntilTheyAreExplained) {
    const QJsonObject needs = json("needs");
    EXPECT_EQ(number(needs, "colonies"), 12) << "as live now";
    EXPECT_EQ(number(box("LANG10-DEEP"), "short"), 4);
    EXPECT_EQ(number(box("LANG10-DEEP"), "held"), 4);
    EXPECT_EQ(number(item("floor"), "short"), 4);
    EXPECT_EQ(number(item("lid"), "short"), 4);
    EXPECT_EQ(number(item("lid"), "held"), 2);
    EXPECT_EQ(number(frame("LANG-F-DEEP"), "need"), 40);
    EXPECT_EQ(number(frame("LANG-F-DEEP"), "short"), 40);
    EXPECT_EQ(number(frame("LANG-F-DEEP"), "held"), 40);
}

TEST_F(StockTake, SaysWhatIsShortToTheLastPiece) {
    recordDeadOuts();
    const QJsonObject supers = box("LANG10-MED");
    EXPECT_EQ(number(supers, "need"), 40);
    EXPECT_EQ(number(supers, "there"), 33);
    EXPECT_EQ(number(supers, "short"), 7);
    EXPECT_EQ(number(supers, "short_after_repairs"), 5);
    const QJsonObject mediums = frame("LANG-F-MED");
    EXPECT_EQ(number(mediums, "need"), 360);
    EXPECT_EQ(number(mediums, "drawn"), 262);
    EXPECT_EQ(number(mediums, "foundation_sheets"), 67) << "43 bought and 24 bare";
    EXPECT_EQ(number(mediums, "usable"), 317);
    EXPECT_EQ(number(mediums, "buy"), 43);
    EXPECT_EQ(number(mediums, "packs"), 5);
    EXPECT_EQ(number(mediums, "foundation_packs"), 7);
    EXPECT_EQ(number(box("LANG10-DEEP"), "short"), 0);
    EXPECT_EQ(number(item("floor"), "short"), 2);
    EXPECT_EQ(number(item("lid"), "short"), 2);
    const QJsonObject deeps = frame("LANG-F-DEEP");
    EXPECT_EQ(number(deeps, "usable"), 33);
    EXPECT_EQ(number(deeps, "buy"), 7);
    EXPECT_EQ(number(deeps, "foundation_sheets"), 18);
}

TEST_F(StockTake, TicksRepairsAndTakesThemBack) {
    recordDeadOuts();
    const std::string before = dump();
    played(R"({"do":"mend-boxes","on":"2027-04-05","boxes":"M34-M35"})");
    EXPECT_EQ(number(box("LANG10-MED"), "short"), 5);
    EXPECT_EQ(number(box("LANG10-MED"), "short_after_repairs"), 5);
    ASSERT_EQ(on("undo").exit, cli::Done);
    EXPECT_EQ(dump(), before);
    EXPECT_EQ(number(box("LANG10-MED"), "short"), 7);
}

TEST_F(StockTake, PrintsTheOrderListAndTheWorkingBehindIt) {
    recordDeadOuts();
    const CliAnswer answer = on("needs", {QStringLiteral("--why")});
    ASSERT_EQ(answer.exit, cli::Done) << answer;
    for (const char* says : {"Order list for 2027", "12 colonies", "4 splits", "supplier", "5 × 10",
                             "7 × 10", "spare", "medium boxes", "foundation, medium frames"})
        EXPECT_TRUE(answer.out.contains(QString::fromUtf8(says))) << says << "\n" << answer;
}

TEST_F(StockTake, KeepsItsKeys) {
    recordDeadOuts();
    const auto keys = [](const QJsonObject& object) {
        return object.keys().join(QLatin1Char(' ')).toStdString();
    };
    const QJsonObject needs = json("needs");
    EXPECT_EQ(keys(needs),
              "as_of boxes colonies colonies_planned comb_spares cull frames items planned_on "
              "season splits to_enter");
    EXPECT_EQ(keys(box("LANG10-MED")),
              "box for_splits for_supers held in_repair name need short short_after_repairs "
              "short_after_repairs_at_most short_at_most there to_scrape");
    EXPECT_EQ(keys(item("floor")),
              "held in_repair in_use item need pack packs shed_counted short short_after_repairs "
              "short_after_repairs_at_most short_at_most there");
    const QJsonObject stock = json("stock");
    EXPECT_EQ(keys(stock), "as_of boxes colonies equipment frames stacks");
    EXPECT_EQ(keys(stock.value(QLatin1String("stacks")).toArray().first().toObject()),
              "boxes boxes_not_measured boxes_not_weighed caution full_box heaviest height_mm "
              "litres mass_g place stack");
    EXPECT_EQ(keys(line(stock, "boxes", "box", "LANG10-MED")),
              "box held in_all in_freezer in_nests in_store lent name needs_repair not_counted "
              "on_empty_hives sound supers_on to_scrape usable usable_once_repaired "
              "wants_paint");
    const QJsonObject todo = json("stock", {QStringLiteral("--todo")});
    EXPECT_EQ(keys(todo),
              "as_of boxes_to_paint boxes_to_repair boxes_to_scrape frames held materials "
              "not_frozen stacks");
}

TEST_F(StockTake, CallsWhatNobodyCountedUnknown) {
    played(R"({"do":"plan-season","on":"2027-04-05","year":2028,"items":"feeder 1"})");
    const QJsonObject needs = json("needs", {QStringLiteral("--season"), QStringLiteral("2028")});
    const QJsonObject feeder = line(needs, "items", "item", "feeder");
    EXPECT_TRUE(feeder.value(QLatin1String("short")).isNull());
    EXPECT_EQ(number(feeder, "short_at_most"), 12);
    EXPECT_TRUE(line(json("stock"), "equipment", "item", "feeder")
                    .value(QLatin1String("on_hand"))
                    .isNull());
    const QJsonObject none = json("needs", {QStringLiteral("--season"), QStringLiteral("2030")});
    EXPECT_EQ(none.value(QLatin1String("to_enter")).toArray(),
              QJsonArray{QStringLiteral("plan-season")});
    EXPECT_TRUE(none.value(QLatin1String("boxes")).toArray().isEmpty());
}

TEST_F(StockTake, SheetListsEveryItemInTheOrderItIsTypedBack) {
    const CliAnswer answer = on("stock", {QStringLiteral("--sheet")});
    ASSERT_EQ(answer.exit, cli::Done) << answer;
    qsizetype at = 0;
    for (const char* item : {"\nfloor ", "\nlid ", "\ncrown board", "\nfeeder", "\nfreezer"}) {
        const qsizetype found = answer.out.indexOf(QLatin1String(item), at);
        EXPECT_GE(found, at) << item << "\n" << answer;
        at = found;
    }
    EXPECT_TRUE(answer.out.contains(QLatin1String("not counted")));
}

TEST_F(StockTake, FramesOfABoxThatIsGoneAreNoStock) {
    EXPECT_EQ(number(frame("LANG-F-MED"), "drawn"), 262);
    played(R"({"do":"move-box","on":"2027-04-05","box":"M01","to":"gone"})");
    EXPECT_EQ(number(frame("LANG-F-MED"), "drawn"), 253);
    const QJsonObject mediums = line(json("stock"), "frames", "frame", "LANG-F-MED");
    EXPECT_EQ(number(mediums, "gone"), 9);
    EXPECT_EQ(number(mediums, "ever"), number(mediums, "kept") + 9);
    EXPECT_TRUE(on("stock").out.contains(QLatin1String("+ 9 gone."))) << on("stock");
    played(R"({"do":"move-box","on":"2027-04-06","box":"M01","to":"storeroom"})");
    EXPECT_EQ(number(frame("LANG-F-MED"), "drawn"), 262);
}

TEST_F(StockTake, WhereOnlySomeAreMissingTheSumIsShownToo) {
    played(R"({"do":"review-box","on":"2027-04-05","box":"M02","contents":"8 keep"})");
    EXPECT_TRUE(on("stock").out.contains(QLatin1String("+ 1 missing"))) << on("stock");
}

TEST_F(StockTake, AFloorUnderALivingHiveIsNotThereForASplit) {
    recordDeadOuts();
    played(R"({"do":"plan-season","on":"2027-04-05","year":2028,"splits":4,"items":"floor 0 1"})");
    const QJsonObject needs = json("needs", {QStringLiteral("--season"), QStringLiteral("2028")});
    const QJsonObject floors = line(needs, "items", "item", "floor");
    EXPECT_EQ(number(floors, "need"), 4);
    EXPECT_EQ(number(floors, "there"), 2) << "of the two dead hives";
    EXPECT_EQ(number(floors, "short"), 2);
}

TEST_F(StockTake, TextsSayWhatIsLeftToDoAndNothingBefore) {
    recordDeadOuts();
    EXPECT_TRUE(on("stock", {QStringLiteral("--todo")})
                    .out.contains(QLatin1String("comb into the pot, new foundation")));
    played(R"({"do":"work-frames","on":"2027-04-05","work":"melted"})");
    const CliAnswer todo = on("stock", {QStringLiteral("--todo")});
    EXPECT_FALSE(todo.out.contains(QLatin1String("comb into the pot"))) << todo;
    EXPECT_TRUE(todo.out.contains(QLatin1String("refit: new foundation"))) << todo;
    played(R"({"do":"add-boxes","on":"2027-04-05","kind":"shallow","first_mark":"S1","count":35})"
           "\n"
           R"({"do":"plan-season","on":"2027-04-05","year":2027,"splits":4,"super_kind":"shallow",)"
           R"("supers_per_colony":3,"frames_per_super":9})");
    const CliAnswer needs = on("needs");
    EXPECT_TRUE(needs.out.contains(QLatin1String("35 boxes not counted"))) << needs;
    EXPECT_FALSE(needs.out.contains(QLatin1String("; 35 boxes"))) << needs;
}

}  // namespace
}  // namespace combwright
