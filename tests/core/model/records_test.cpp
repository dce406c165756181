// One test file over all record types: descriptions, structs and the migrated file say the same.
#include "core/model/records.h"

#include <gtest/gtest.h>

#include <random>

#include "core/actions/action.h"
#include "core/exchange/described_json.h"
#include "core/model/health/medicine.h"
#include "core/model/health/tables.h"
#include "core/model/honey/going_out.h"
#include "core/model/honey/pull.h"
#include "core/model/honey/room.h"
#include "core/model/honey/telling.h"
#include "core/model/photos/photo.h"
#include "core/model/season_info.h"
#include "core/model/storeroom/dead_out.h"
#include "core/model/storeroom/review.h"
#include "core/model/storeroom/season_plan.h"
#include "core/model/wax/candle.h"
#include "core/model/wax/hive_goods.h"
#include "core/model/yard/due.h"
#include "core/model/yard/feed.h"
#include "core/model/yard/moves.h"
#include "core/model/yard/queen.h"
#include "core/model/yard/weighing.h"
#include "core/storage/season_file.h"
#include "core/words/words.h"

namespace combwright {
namespace {

struct Anything {
    template <class T>
    operator T() const;
};

template <class T, class... Args>
concept BraceMadeFrom = requires {
    T{Args{}...};
};

/// How many members an aggregate has: the most initialisers it takes.
template <class T, class... Args>
consteval std::size_t memberCount() {
    if constexpr (BraceMadeFrom<T, Args..., Anything>)
        return memberCount<T, Args..., Anything>();
    else
        return sizeof...(Args);
}

template <class Record>
class EachRecord : public testing::Test {};

using AllRecords = testing::Types<
    SeasonInfo, FrameKind, BoxKind, Yard, Hive, Colony, Visit, Inspection, Finding, Feeding, Box,
    BoxMove, BoxLook, Frame, BoxCount, FrameCheck, Constant, PullPlan, PullLine, CropNote,
    Extraction, ExtractionBox, SpinLoad, LoadBox, Bucket, ClosingShare, Hold, BoxReview, RawWax,
    Equipment, EquipmentCount, FreezerRound, FreezerLoad, DeadOut, SetOut, SeasonPlan, PlanItem,
    FrameMove, Peg, SlotFrame, SetAside, GateOpening, ClearerBoard, RoomDay, Queen, QueenStay,
    QueenWait, QueenColour, HiveMove, ColonyMove, HiveWeighing, FeedStock, Task, Quiet, TruckItem,
    Medicine, Treatment, MedicineDisposal, MiteLine, PhaseDay, TableChoice, Lot, LotPart,
    WaterReading, HoneyStep, HoneyLeft, GoodsKind, PackingStock, GoodsCount, Bottling, BottledJars,
    Complaint, GoingOut, Fair, FairLine, LabelText, LabelOffset, KeptSheet, WaxBatch, WaxSource,
    WaxStep, HeatSession, WaxBlock, Mould, BurnTest, Pour, WaxUse, CandleWish, FreeEvening,
    WickStock, PropolisMove, HiveProject, ProjectLook, Photo>;
TYPED_TEST_SUITE(EachRecord, AllRecords);

TYPED_TEST(EachRecord, DescribesEveryMember) {
    EXPECT_EQ(TypeParam::fields().members, memberCount<TypeParam>());
}

TYPED_TEST(EachRecord, StandsInTheList) { EXPECT_NE(findRecordType(TypeParam::table), nullptr); }

Value randomValue(const FieldInfo& field, std::mt19937& random) {
    switch (field.kind) {
        case Kind::Choice:
            return std::string(field.choices[random() % field.choices.size()]);
        case Kind::Day:
            return isoText(Day(days(random() % 40000)));
        case Kind::Instant:
            return isoText(Instant(std::chrono::seconds(random())));
        case Kind::Text:
            return std::string("text \"") + std::to_string(random());
        case Kind::Flag:
            return static_cast<std::int64_t>(random() % 2);
        default:
            return static_cast<std::int64_t>(random() % 900 + 1);
    }
}

/// A value any field of that kind takes.
Value sampleOf(const FieldInfo& field) {
    std::mt19937 random(3);
    return field.kind == Kind::Changes ? Value{std::string(R"({"note":"x"})")}
                                       : randomValue(field, random);
}

/// A random record; a reading's upper end only with a value, never below it.
template <class Record>
Row randomRow(std::mt19937& random) {
    Row row;
    for (const FieldInfo& field : Record::fields()) {
        const bool absent = field.optional && random() % 3 == 0;
        Value value = absent ? Value{} : randomValue(field, random);
        if (field.part == ReadingPart::To) {
            const auto* low = std::get_if<std::int64_t>(&row.back());
            value = low && !absent ? Value{*low + 3} : Value{};
        }
        if (field.part == ReadingPart::How)
            value = std::string(word(static_cast<How>(random() % 5)));
        row.push_back(std::move(value));
    }
    return row;
}

TYPED_TEST(EachRecord, ComesBackFromRowAndJson) {
    std::mt19937 random(7);
    const Fields& fields = TypeParam::fields();
    for (int round = 0; round < 50; ++round) {
        const Row row = randomRow<TypeParam>(random);
        const auto record = fromRow<TypeParam>(row);
        ASSERT_TRUE(record);
        ASSERT_EQ(toRow(*record), row);
        QJsonObject object;
        for (std::size_t i = 0; i < row.size(); ++i)
            object.insert(fromUtf8(fields[i].key()), toJson(fields[i], row[i]));
        const auto back = readRow(fields, object, {}, [](const FieldInfo&, const QJsonValue& json) {
            return Result<std::int64_t>(json.toString().mid(1).toLongLong());
        });
        ASSERT_TRUE(back) << key(back.error().code) << " " << back.error().field;
        EXPECT_EQ(*back, row);
    }
}

TYPED_TEST(EachRecord, HasAWordForEveryField) {
    for (const FieldInfo& field : TypeParam::fields())
        EXPECT_TRUE(hasWord(field.name)) << TypeParam::table << "." << field.name;
}

class FileShape : public testing::Test {
  protected:
    Database file = createSeasonFile(":memory:");
};

TEST_F(FileShape, IsWhatTheDescriptionsSay) {
    for (const RecordType& type : recordTypes()) {
        Statement columns = file.prepare(
            "SELECT name, type, \"notnull\", pk FROM pragma_table_info(?) ORDER BY cid");
        columns.bind(type.table).run();
        for (const FieldInfo& field : type.fields()) {
            ASSERT_TRUE(columns.next()) << type.table << " has no column for " << field.name;
            EXPECT_EQ(columns.text(0), field.column()) << type.table;
            EXPECT_EQ(columns.text(1), spelling(field.kind).isText ? "TEXT" : "INTEGER")
                << field.name;
            const bool mayBeNull = columns.number(2) == 0 && columns.number(3) == 0;
            EXPECT_EQ(mayBeNull, field.optional) << type.table << "." << field.name;
        }
        EXPECT_FALSE(columns.next()) << type.table << " has a column nobody describes";
    }
}

TEST_F(FileShape, ReferencesLeadWhereTheDescriptionsSay) {
    for (const RecordType& type : recordTypes()) {
        Statement keys = file.prepare("SELECT \"from\", \"table\" FROM pragma_foreign_key_list(?)");
        keys.bind(type.table).run();
        std::map<std::string, std::string> present;
        while (keys.next()) present[keys.text(0)] = keys.text(1);
        std::map<std::string, std::string> described;
        for (const FieldInfo& field : type.fields())
            if (field.kind == Kind::Reference)
                described[field.column()] = std::string(field.refersTo);
        EXPECT_EQ(present, described) << type.table;
    }
}

TEST_F(FileShape, KeepsToWhatTheJournalNeeds) {
    for (const std::string& entry : schemaOf(file)) {
        EXPECT_FALSE(entry.starts_with("trigger ") || entry.starts_with("view ")) << entry;
        EXPECT_EQ(entry.find("CASCADE"), std::string::npos) << entry;
        EXPECT_EQ(entry.find(" UNIQUE"), std::string::npos) << entry;
    }
    for (const RecordType& type : recordTypes()) {
        Statement sql = file.prepare("SELECT sql FROM sqlite_schema WHERE name = ?");
        sql.bind(type.table).run();
        ASSERT_TRUE(sql.next());
        EXPECT_NE(sql.text(0).find("INTEGER PRIMARY KEY AUTOINCREMENT"), std::string::npos);
        EXPECT_NE(sql.text(0).find("STRICT"), std::string::npos);
    }
}

TEST(Actions, HaveAWordForEveryField) {
    for (const ActionType& type : actionTypes())
        for (const FieldInfo& field : type.fields())
            EXPECT_TRUE(hasWord(field.name)) << type.name << "." << field.name;
}

TEST(Actions, BeginWithTheDayAndHaveNamesOfTheirOwn) {
    std::set<std::string_view> names;
    for (const ActionType& type : actionTypes()) {
        EXPECT_EQ(type.fields()[0].key(), "on") << type.name;
        EXPECT_TRUE(names.insert(type.name).second) << type.name;
    }
}

TEST(Reading, ARangeTheWrongWayRoundIsRefusedByItsKeyInEveryAction) {
    int readings = 0;
    for (const ActionType& type : actionTypes()) {
        const Fields& fields = type.fields();
        for (std::size_t i = 0; i < fields.size(); ++i) {
            if (fields[i].part != ReadingPart::To) continue;
            ++readings;
            const auto read = [&](std::optional<std::int64_t> value, std::int64_t to) {
                // Whatever else the action needs is there, so that only the range can be wrong.
                QJsonObject object;
                for (const FieldInfo& each : fields)
                    if (!each.optional && each.part == ReadingPart::Whole)
                        object.insert(fromUtf8(each.key()), each.refersTo.empty()
                                                                ? toJson(each, sampleOf(each))
                                                                : QJsonValue(QStringLiteral("#1")));
                if (value)
                    object.insert(fromUtf8(fields[i - 1].key()),
                                  toJson(fields[i - 1], Value{*value}));
                object.insert(fromUtf8(fields[i].key()), toJson(fields[i], Value{to}));
                return readRow(fields, object, {}, [](const FieldInfo&, const QJsonValue&) {
                    return Result<std::int64_t>(1);
                });
            };
            const std::string named = std::string(type.name) + " " + fields[i].key();
            EXPECT_TRUE(read(50, 80)) << named;
            for (const auto& wrong : {read(80, 50), read(std::nullopt, 50)}) {
                ASSERT_FALSE(wrong) << named;
                EXPECT_EQ(wrong.error().code, Code::Contradiction) << named;
                EXPECT_EQ(wrong.error().field, fields[i].key()) << named;
                EXPECT_EQ(wrong.error().value("other"), fields[i - 1].key()) << named;
            }
        }
    }
    EXPECT_GE(readings, 15) << "weights, frames, shares of all sheets";
}

TEST(Reading, NeedsAHowWithAFigureAndIsNothingWithout) {
    Seen seen;
    const FieldInfo& value = *Seen::fields().find("brood");
    const FieldInfo& to = *(&value + 1);
    const FieldInfo& how = *(&value + 2);
    EXPECT_TRUE(value.setIn(&seen, Value{std::int64_t{70}}));
    EXPECT_TRUE(to.setIn(&seen, Value{}));
    EXPECT_FALSE(how.setIn(&seen, Value{}));
    EXPECT_TRUE(how.setIn(&seen, Value{std::string("counted")}));
    EXPECT_EQ(seen.brood->value, Frames::whole(7));
    EXPECT_FALSE(to.setIn(&seen, Value{std::int64_t{60}})) << "an upper end below the lower one";
    EXPECT_TRUE(value.setIn(&seen, Value{}));
    EXPECT_TRUE(how.setIn(&seen, Value{}));
    EXPECT_FALSE(seen.brood);
}

}  // namespace
}  // namespace combwright
