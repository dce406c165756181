// A scale's table of a hundred thousand rows looked at and taken in, against the same numbers put
// into a bare table by SQLite alone; and its preview, a million rows long, scrolled, against a
// table view that has nothing to say.
#include <benchmark/benchmark.h>
#include <sqlite3.h>

#include <QAbstractTableModel>
#include <QApplication>
#include <QHeaderView>
#include <QScrollBar>
#include <QTableView>
#include <QTemporaryDir>
#include <algorithm>

#include "core/actions/play.h"
#include "core/exchange/import/import_json.h"
#include "core/exchange/import/import_plan.h"
#include "tests/bench/benches.h"
#include "tests/bench/ratio_table.h"
#include "tests/bench/stopwatch.h"
#include "tests/support/support.h"
#include "ui/shell/import/import_preview.h"

namespace combwright::bench {
namespace {

constexpr int importedRows = 100'000;
constexpr int importedHives = 200;
constexpr double importGoal = 6;
constexpr int scrolledRows = 1'000'000;
constexpr double scrollGoal = 2;

/// The file in which the table's hives stand.
std::unique_ptr<Season> seasonOfHives(const std::string& path, const Clock& clock) {
    auto season = Season::create(path, clock);
    if (!season) return nullptr;
    std::string script =
        R"({"do":"add-yard","on":"2020-01-01","yard_name":"Hill","usual_super":"medium"})";
    for (int hive = 1; hive <= importedHives; ++hive)
        script += "\n{\"do\":\"add-hive\",\"on\":\"2020-01-01\",\"yard\":\"Hill\",\"mark\":\"H" +
                  std::to_string(hive) + "\",\"boxes\":\"deep, x, medium\"}";
    (void)play(*season, script);
    return std::make_unique<Season>(*std::move(season));
}

std::string tableOfWeights() {
    std::string text = "hive,date,weight kg\n";
    for (int row = 0; row < importedRows; ++row) {
        const Day day = *makeDay(2020, 2, 1) + days{row / importedHives};
        text += "H" + std::to_string(row % importedHives + 1) + ',' + isoText(day) + ',' +
                std::to_string(20 + row % 20) + '.' + std::to_string(row % 10) + "25\n";
    }
    return text;
}

/// The least it can be: the rows alone, prepared, in one transaction.
double bareInsertsMs(const std::string& path) {
    const Database file = Database::open(path, Database::Mode::ReadWrite, true);
    file.run(
        "CREATE TABLE weighing (id INTEGER PRIMARY KEY AUTOINCREMENT, hive INTEGER NOT NULL, "
        "on_day TEXT NOT NULL, whole_g INTEGER NOT NULL, how TEXT NOT NULL) STRICT");
    std::vector<std::string> onDays;
    for (int day = 0; day <= importedRows / importedHives; ++day)
        onDays.push_back(isoText(*makeDay(2020, 2, 1) + days{day}));
    const Stopwatch watch;
    Transaction transaction(file);
    Statement put =
        file.prepare("INSERT INTO weighing (hive, on_day, whole_g, how) VALUES (?, ?, ?, ?)");
    for (int row = 0; row < importedRows; ++row) {
        put.bind(std::int64_t{row % importedHives})
            .bind(std::string_view(onDays[static_cast<std::size_t>(row / importedHives)]))
            .bind(std::int64_t{20'000 + row % 20'000})
            .bind(std::string_view("weighed"))
            .run();
    }
    transaction.commit();
    return watch.ms();
}

void importOfAScale(benchmark::State& state) {
    const QByteArray text = QByteArray::fromStdString(tableOfWeights());
    ImportMap map;
    map.decimal = DecimalSign::Point;
    std::vector<double> bare;
    std::vector<double> looked;
    std::vector<double> whole;
    for (auto each : state) {
        (void)each;
        const QTemporaryDir folder;
        const test::FakeClock clock;
        const auto season =
            seasonOfHives(folder.filePath(QStringLiteral("s.combwright")).toStdString(), clock);
        bare.push_back(bareInsertsMs(folder.filePath(QStringLiteral("bare.sqlite")).toStdString()));
        const Stopwatch watch;
        const auto plan = planImport(*season, ImportKind::Weights, text, map);
        looked.push_back(watch.ms());
        const auto kept = plan ? keepImport(*season, *plan, "scale.csv", RefusedRows::HoldUpAll)
                               : Result<std::int64_t>(plan.error());
        whole.push_back(watch.ms());
        state.SetIterationTime(whole.back() / 1000);
        if (!kept || plan->count(RowVerdict::WillBeAdded) != std::size_t{importedRows}) {
            table().addUnmeasured("import of 100,000 rows", "it was not taken in");
            return;
        }
    }
    const std::string against = milliseconds(median(bare));
    table().add("import of 100,000 rows: looked at, each row tried", milliseconds(median(looked)),
                against, median(looked) / median(bare), {});
    table().add("import of 100,000 rows: looked at and kept as one step",
                milliseconds(median(whole)), against, median(whole) / median(bare),
                atMost(importGoal));
}

class BareRows : public QAbstractTableModel {
  public:
    int rowCount(const QModelIndex& = {}) const override { return scrolledRows; }
    int columnCount(const QModelIndex& = {}) const override { return 5; }
    QVariant data(const QModelIndex& at, int role) const override {
        return role == Qt::DisplayRole ? QVariant(QStringLiteral("%1").arg(at.row())) : QVariant();
    }
};

ImportPlan planOfAMillion() {
    QByteArray text("hive,date,weight kg\n");
    for (int row = 0; row < scrolledRows; ++row)
        text += "H" + QByteArray::number(row % 500) + ",2027-06-01,41.5\n";
    ImportPlan plan;
    plan.kind = ImportKind::Weights;
    plan.columns = {{"hive", "hive"}, {"date", "day"}, {"weight kg", "weight"}};
    if (auto table = readTable(
            text, {.header = true}, [](std::string_view, const void*) { return true; }, nullptr))
        plan.rows = PlannedRows(*std::move(table));
    return plan;
}

double scrolledMs(QTableView& view, int step) {
    QScrollBar* bar = view.verticalScrollBar();
    bar->setValue((bar->value() + step) % std::max(1, bar->maximum()));
    const Stopwatch watch;
    view.viewport()->repaint();
    return watch.ms();
}

void scrollOfAMillion(benchmark::State& state) {
    const Look look = lookFor(QFont(QStringLiteral("DejaVu Sans"), 10), false);
    BareRows bareRows;
    ImportPreview preview(look, nullptr);
    preview.show(std::make_shared<const ImportPlan>(planOfAMillion()));
    QTableView bare;
    QTableView ours;
    bare.setModel(&bareRows);
    ours.setModel(&preview);
    for (QTableView* view : {&bare, &ours}) {
        view->setWordWrap(false);
        view->verticalHeader()->hide();
        view->resize(1000, 600);
        view->show();
    }
    QApplication::processEvents();
    std::vector<double> bareMs;
    std::vector<double> oursMs;
    for (auto each : state) {
        (void)each;
        bareMs.push_back(scrolledMs(bare, 7919));
        oursMs.push_back(scrolledMs(ours, 7919));
        state.SetIterationTime(oursMs.back() / 1000);
    }
    std::vector<double> sorted = oursMs;
    std::sort(sorted.begin(), sorted.end());
    table().add("scroll a table of 1,000,000 rows", milliseconds(median(oursMs)),
                milliseconds(median(bareMs)), median(oursMs) / median(bareMs), atMost(scrollGoal));
    constexpr double frameMs = 16;
    table().add("scroll a table of 1,000,000 rows: 99 of 100",
                milliseconds(sorted[sorted.size() * 99 / 100]), milliseconds(frameMs),
                sorted[sorted.size() * 99 / 100] / frameMs, atMost(1));
}

}  // namespace

void addImportBenches() {
    benchmark::RegisterBenchmark("import/a_scale", importOfAScale)
        ->Iterations(3)
        ->UseManualTime()
        ->Unit(benchmark::kMillisecond);
    benchmark::RegisterBenchmark("import/scroll", scrollOfAMillion)
        ->Iterations(200)
        ->UseManualTime()
        ->Unit(benchmark::kMillisecond);
}

}  // namespace combwright::bench
