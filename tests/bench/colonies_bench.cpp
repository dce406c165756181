// The year's work in a file of a usual keeper and in one of fifty years with five hundred hives:
// the places one begins the day with, opened and painted; what is due, reckoned; a letter typed in
// the yard sheet until it is painted, against a bare table with the same rows; a row kept there,
// against the least a commit can be.
#include <benchmark/benchmark.h>

#include <QApplication>
#include <QLineEdit>
#include <QStandardItemModel>
#include <QTableView>
#include <QTemporaryDir>
#include <filesystem>
#include <stdexcept>

#include "core/actions/yard/sheet.h"
#include "core/places/due/due_list.h"
#include "core/storage/queries/yards.h"
#include "tests/bench/bare_file.h"
#include "tests/bench/benches.h"
#include "tests/bench/long_season.h"
#include "tests/bench/measuring.h"
#include "tests/bench/pressed.h"
#include "tests/bench/ratio_table.h"
#include "ui/look/style.h"
#include "ui/shell/main_window.h"
#include "ui/yard/sheet_view.h"
#include "ui/yard/yard_place.h"

namespace combwright::bench {
namespace {

constexpr int opened = 21;
constexpr int typedRows = 9;
constexpr int keptRows = 60;
constexpr double letterGoal = 3;
constexpr double deedGoal = 1.5;
constexpr double rowGoal = 2;

/// What opening a place may take.
double boundMs(const LongSeason& kind) { return kind.years > 10 ? 1000 : 200; }

std::string about(const LongSeason& kind) {
    return std::to_string(kind.years) + " years × " + std::to_string(kind.hives) + " hives, ";
}

/// A copy of such a file, so that what is kept in it is not there the next time.
struct SeasonCopy {
    explicit SeasonCopy(const LongSeason& kind) {
        std::filesystem::copy_file(longSeasonFile(kind), path.toStdString());
    }
    QTemporaryDir folder{QStringLiteral(COMBWRIGHT_BENCH_DIR "/colonies-XXXXXX")};
    QString path = folder.filePath(QStringLiteral("long.combwright"));
};

/// The window with the season open, large enough for a yard.
class OpenWindow {
  public:
    explicit OpenWindow(const LongSeason& kind) : m_file(kind), m_session(m_clock) {
        m_session.leaveNoTrace();
        m_session.setLook(applyLook(*qApp, false, 1.0));
        const Stopwatch watch;
        if (!m_session.open(m_file.path)) throw std::runtime_error("the season was not opened");
        m_openedMs = watch.ms();
        m_window = std::make_unique<MainWindow>(m_session);
        m_window->resize(1280, 800);
        m_window->show();
        QCoreApplication::processEvents();
    }
    /// How long the file itself took to open.
    double openedMs() const { return m_openedMs; }
    Session& session() { return m_session; }
    template <class Wanted>
    int indexOf() const {
        const auto& places = m_window->places();
        for (std::size_t i = 0; i < places.size(); ++i)
            if (qobject_cast<Wanted*>(places[i])) return static_cast<int>(i);
        throw std::runtime_error("the window has no such place");
    }
    template <class Wanted>
    Wanted& place() const {
        return *qobject_cast<Wanted*>(
            m_window->places()[static_cast<std::size_t>(indexOf<Wanted>())]);
    }
    const std::vector<Place*>& places() const { return m_window->places(); }
    /// From the key until the place is painted.
    double wentToMs(int index) {
        const Stopwatch watch;
        m_window->goTo(index);
        QCoreApplication::processEvents();
        return watch.ms();
    }

  private:
    LongSeasonClock m_clock;
    SeasonCopy m_file;
    Session m_session;
    double m_openedMs = 0;
    std::unique_ptr<MainWindow> m_window;
};

void placesOpened(benchmark::State& state, const LongSeason& kind) {
    measuring(state, about(kind) + "places opened", [&] {
        OpenWindow window(kind);
        const std::vector<Place*>& places = window.places();
        std::vector<std::vector<double>> opening(places.size());
        std::vector<double> due;
        window.wentToMs(static_cast<int>(places.size()) - 1);
        for (auto each : state) {
            (void)each;
            const Stopwatch all;
            for (std::size_t i = 0; i < places.size(); ++i)
                opening[i].push_back(window.wentToMs(static_cast<int>(i)));
            const Stopwatch reckoned;
            benchmark::DoNotOptimize(dueList(window.session().read(), longSeasonDay()));
            due.push_back(reckoned.ms());
            state.SetIterationTime(all.ms() / 1000);
        }
        const double bound = boundMs(kind);
        const std::string against = "a bound of " + milliseconds(bound);
        const auto add = [&](const std::string& what, const std::vector<double>& times) {
            table().add(about(kind) + what, milliseconds(median(times)), against,
                        median(times) / bound, atMost(1));
        };
        for (std::size_t i = 0; i < places.size(); ++i)
            add(places[i]->railWord().toStdString() + " opened until it is painted", opening[i]);
        add("due, reckoned", due);
        table().add(about(kind) + "the file opened", milliseconds(window.openedMs()), against,
                    window.openedMs() / bound, {});
    });
}

/// The rows of the sheet in a table that knows nothing but their texts.
class BareTable {
  public:
    explicit BareTable(const SheetTable& like)
        : m_model(like.model()->rowCount(), like.model()->columnCount()) {
        for (int row = 0; row < m_model.rowCount(); ++row)
            for (int column = 0; column < m_model.columnCount(); ++column)
                m_model.setItem(
                    row, column,
                    new QStandardItem(like.model()->index(row, column).data().toString()));
        m_view.setModel(&m_model);
        m_view.setFont(like.font());
        m_view.resize(like.size());
        m_view.show();
        for (int column = 0; column < m_model.columnCount(); ++column)
            m_view.setColumnWidth(column, like.columnWidth(column));
        QCoreApplication::processEvents();
    }
    QLineEdit* edit(int row) {
        const QModelIndex at = m_model.index(row, SheetModel::LineColumn);
        m_view.setCurrentIndex(at);
        m_view.edit(at);
        auto* line = qobject_cast<QLineEdit*>(m_view.indexWidget(at));
        // What is typed stands in the row at once, as in ours.
        if (line)
            QObject::connect(line, &QLineEdit::textEdited, &m_model,
                             [this, row](const QString& text) {
                                 m_model.item(row, SheetModel::ReadBackColumn)->setText(text);
                             });
        QCoreApplication::processEvents();
        return line;
    }

  private:
    QStandardItemModel m_model;
    QTableView m_view;
};

/// Each letter until it is painted.
void typeInto(QLineEdit* line, std::vector<double>& letters) {
    if (!line) throw std::runtime_error("no line to type in");
    line->clear();
    QCoreApplication::processEvents();
    for (const QChar letter : QStringLiteral("e b7 s3 qc0 +1 w4/300 cross")) {
        const Stopwatch one;
        pressed(line, letter);
        QCoreApplication::processEvents();
        letters.push_back(one.ms());
    }
}

SheetTable& openedSheet(OpenWindow& window) {
    window.wentToMs(window.indexOf<YardPlace>());
    auto& yard = window.place<YardPlace>();
    yard.openSheet();
    QCoreApplication::processEvents();
    auto* table = yard.findChild<SheetTable*>();
    if (!table || table->model()->rowCount() < 10)
        throw std::runtime_error("the yard has too few rows");
    return *table;
}

void lettersInSheet(benchmark::State& state, const LongSeason& kind) {
    measuring(state, about(kind) + "a letter typed in the yard sheet", [&] {
        OpenWindow window(kind);
        SheetTable& sheet = openedSheet(window);
        BareTable bare(sheet);
        std::vector<double> ours, least, warm;
        int row = 2;
        const auto editOurs = [&] {
            sheet.editRow(row);
            QCoreApplication::processEvents();
            return qobject_cast<QLineEdit*>(sheet.indexWidget(sheet.currentIndex()));
        };
        typeInto(bare.edit(1), warm);
        typeInto(editOurs(), warm);
        for (auto each : state) {
            (void)each;
            const Stopwatch all;
            typeInto(bare.edit(row), least);
            typeInto(editOurs(), ours);
            // Nothing of it is kept: this is about the hand, not the disk.
            qobject_cast<SheetModel*>(sheet.model())->discard(row);
            row = row % 9 + 1;
            state.SetIterationTime(all.ms() / 1000);
        }
        table().add(about(kind) + "a letter typed in the yard sheet until it is painted: median",
                    milliseconds(median(ours)), "bare table " + milliseconds(median(least)),
                    median(ours) / median(least), atMost(letterGoal));
        table().add(about(kind) + "a letter typed in the yard sheet: the slowest",
                    milliseconds(largest(ours)), "bare table " + milliseconds(largest(least)),
                    largest(ours) / largest(least), {});
    });
}

void rowsKept(benchmark::State& state, const LongSeason& kind) {
    measuring(state, about(kind) + "a row kept", [&] {
        OpenWindow window(kind);
        SheetTable& sheet = openedSheet(window);
        const QTemporaryDir folder(QStringLiteral(COMBWRIGHT_BENCH_DIR "/bare-XXXXXX"));
        BareFile file(folder.filePath(QStringLiteral("bare.db")).toStdString());
        SeasonCopy copy(kind);
        const LongSeasonClock clock;
        Season season = Season::open(copy.path.toStdString(), clock);
        const auto hives = openHives(season.read(), openYards(season.read()).front().id);
        std::vector<double> bare, deeds, rows;
        std::size_t at = 0;
        const int most = sheet.model()->rowCount() - 2;
        for (auto each : state) {
            (void)each;
            bare.push_back(file.insertedMs());
            {
                const auto day = longSeasonDay() + days(static_cast<int>(at / hives.size()));
                const WriteLine line{day, hives[at % hives.size()].id, "e b7 s3 qc0 w2/300"};
                const Stopwatch watch;
                if (!perform(season, line)) throw std::runtime_error("a line was refused");
                deeds.push_back(watch.ms());
            }
            const int row = static_cast<int>(at) % most + 1;
            sheet.editRow(row);
            QCoreApplication::processEvents();
            auto* edit = qobject_cast<QLineEdit*>(sheet.indexWidget(sheet.currentIndex()));
            if (!edit) throw std::runtime_error("no line to type in");
            edit->clear();
            // Another line the second time round, or nothing would be kept.
            for (const QChar letter :
                 QStringLiteral("e b%1 s3 w2/300").arg(3 + static_cast<int>(at) / most % 5))
                pressed(edit, letter);
            QCoreApplication::processEvents();
            const Stopwatch watch;
            pressed(edit, QStringLiteral("\r"), Qt::Key_Return);
            QCoreApplication::processEvents();
            rows.push_back(watch.ms());
            state.SetIterationTime(rows.back() / 1000);
            ++at;
        }
        const double least = median(bare);
        const std::string against = "bare commit " + milliseconds(least);
        table().add(about(kind) + "one recorded line", milliseconds(median(deeds)), against,
                    median(deeds) / least, atMost(deedGoal));
        table().add(about(kind) + "a row kept in the yard sheet until the next is painted",
                    milliseconds(median(rows)), against, median(rows) / least, atMost(rowGoal));
    });
}

}  // namespace

void addColoniesBenches() {
    const auto timed = [](const std::string& name, auto bench, const LongSeason& kind, int runs) {
        benchmark::RegisterBenchmark(
            ("colonies/" + name + "/" + std::to_string(kind.years)).c_str(), bench, kind)
            ->Iterations(runs)
            ->UseManualTime()
            ->Unit(benchmark::kMillisecond);
    };
    for (const LongSeason& kind : {usualKeeper, longest}) {
        timed("places", placesOpened, kind, opened);
        timed("letters", lettersInSheet, kind, typedRows);
        timed("rows", rowsKept, kind, keptRows);
    }
}

}  // namespace combwright::bench
