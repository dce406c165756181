#include "tests/trust/fuzz/fuzzed.h"

#include <QJsonDocument>
#include <QString>
#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <optional>
#include <string>
#include <string_view>

#include "core/actions/play.h"
#include "core/catalogue/csv_records.h"
#include "core/exchange/compute/computations.h"
#include "core/exchange/import/cell_readings.h"
#include "core/exchange/import/import_json.h"
#include "core/exchange/import/import_plan.h"
#include "core/exchange/import/row_line.h"
#include "core/exchange/strict_json.h"
#include "core/storage/audit.h"
#include "tests/support/support.h"

namespace combwright::test {
namespace {

void demand(bool holds, const char* promise) {
    if (holds) return;
    std::fprintf(stderr, "broken: %s\n", promise);
    std::abort();
}

/// A few hives to import to and to play with; in memory, the same for every input.
Season fuzzedSeason() {
    static const FakeClock clock;
    auto made = Season::create(":memory:", clock);
    const PlayResult played = play(*made, R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H1","boxes":"deep D1, x, medium","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H2","boxes":"deep","origin":"overwintered"}
)");
    demand(!played.stopped, "the season begins");
    return *std::move(made);
}

std::string_view textOf(const std::uint8_t* bytes, std::size_t size) {
    return {reinterpret_cast<const char*>(bytes), size};
}

void readCells(const TableRead& table, ImportKind kind) {
    for (std::size_t row = 0; row < table.rows.size(); ++row)
        for (const std::string& cell : table.record(row).cells) {
            const NumberInCell number = numberInCell(cell);
            const DayInCell onDay = dayInCell(cell);
            demand(onDay.minute < 24 * 60, "a time is within its day");
            for (const ImportField& field : importFields(kind))
                (void)readCell(field, cell,
                               {DecimalSign::Comma, DayOrder::MonthFirst, number.unit});
        }
}

/// Looked at only, or kept and taken back as well.
enum class Plan { Look, Keep };

void planAndKeep(ImportKind kind, const QByteArray& bytes, Plan upTo) {
    // A new season takes longer than all else: what is only looked at leaves it as it was.
    static Season looked = fuzzedSeason();
    std::optional<Season> own;
    if (upTo == Plan::Keep) own = fuzzedSeason();
    Season& season = own ? *own : looked;
    ImportMap map;
    map.decimal = DecimalSign::Point;
    map.days = DayOrder::DayFirst;
    map.unit = "kg";
    map.ofDay = OfDay::Last;
    map.origin = "overwintered";
    map.day = day("2027-06-01");
    map.addYards = true;
    const std::string before = season.dump();
    const auto plan = planImport(season, kind, bytes, map);
    demand(season.dump() == before, "a look changes nothing");
    if (!plan) return;
    (void)toJson(*plan);
    (void)rejectedRows(*plan, [](const PlannedRow&) { return std::string("why"); });
    if (upTo == Plan::Look || !plan->questions.empty()) return;
    const auto kept = keepImport(season, *plan, "table.csv", RefusedRows::StayOut);
    demand(kept.has_value(), "what was shown can be done");
    demand((*kept > 0) == (plan->count(RowVerdict::WillBeAdded) > 0 || !plan->first.empty()),
           "as many as were shown");
    demand(audit(season.read()).empty(), "the file agrees");
    if (*kept > 0) demand(season.undo().has_value() && season.dump() == before, "one step back");
}

}  // namespace

void readAnyTable(const std::uint8_t* bytes, std::size_t size, long keptOneIn) {
    if (size == 0) return;
    const unsigned choice = bytes[0];
    const std::string_view text = textOf(bytes + 1, size - 1);
    const QByteArray tableBytes(text.data(), static_cast<qsizetype>(text.size()));
    constexpr ImportKind kinds[] = {ImportKind::Hives,     ImportKind::Boxes,  ImportKind::Weights,
                                    ImportKind::CropNotes, ImportKind::Visits, ImportKind::Sales};
    const ImportKind kind = kinds[choice % std::size(kinds)];
    const auto knows = [](std::string_view heading, const void* about) {
        return fieldHeaded(*static_cast<const ImportKind*>(about), heading) != nullptr;
    };
    for (const char* encoding : {"", "utf-8", "utf-16", "windows-1252"}) {
        TableGiven given;
        if (*encoding) given.encoding = encoding;
        const auto table = readTable(tableBytes, given, knows, &kind);
        if (!table) continue;
        demand(table->headings.size() > 0 || table->rows.empty(), "columns have headings");
        if (!*encoding) readCells(*table, kind);
    }
    std::size_t line = 0;
    for (const CsvRecord& record : readCsvRecords(text)) {
        demand(record.line > line || line == 0, "lines go on");
        line = record.line;
    }
    (void)kindOfTable(tableBytes);
    if (choice < 0xE0) return;
    static long toPlan = 0;
    const long turn = toPlan++ % keptOneIn;
    const bool isLooked = turn % std::max(1L, keptOneIn / 8) == 0;
    if (isLooked)
        planAndKeep(kind, tableBytes, choice >= 0xF8 && turn == 0 ? Plan::Keep : Plan::Look);
}

void readAnyJson(const std::uint8_t* bytes, std::size_t size) {
    if (size == 0) return;
    const unsigned choice = bytes[0];
    const std::string_view text = textOf(bytes + 1, size - 1);
    const auto object = strictObject(text);
    if (object) {
        // What is taken strictly any reader takes, and says the same.
        const auto again =
            strictObject(QJsonDocument(*object).toJson(QJsonDocument::Compact).toStdString());
        demand(again && *again == *object, "read and written it is the same");
        const auto& all = computations();
        if (choice < 0x80) (void)all[choice % all.size()].run(*object);
        for (const ImportKind kind : {ImportKind::Hives, ImportKind::Weights})
            if (const auto map = importMapOf(*object, kind)) (void)toJson(*map);
    }
    if (choice < 0x80) return;
    static Season season = fuzzedSeason();
    static const std::string before = season.dump();
    static const std::size_t steps = season.history().size();
    const PlayResult played = play(season, text);
    if (played.steps.empty()) return;
    demand(audit(season.read()).empty(), "the file agrees");
    // Back to where it was: a line may have been an undo itself.
    season = fuzzedSeason();
    demand(season.dump() == before && season.history().size() == steps, "begun anew");
}

}  // namespace combwright::test
