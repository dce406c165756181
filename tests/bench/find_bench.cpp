// What the box that finds anything takes from one keystroke to the next in a season of a million
// rows that say something, typed letter by letter: words every other row has, marks thousands bear,
// words nobody wrote. Gathering them and following one line are told beside it.
#include <benchmark/benchmark.h>

#include <QFileInfo>
#include <QTemporaryDir>
#include <algorithm>
#include <random>
#include <string>
#include <vector>

#include "core/model/honey/going_out.h"
#include "core/model/yard/visit.h"
#include "core/places/find/find.h"
#include "core/storage/season.h"
#include "tests/bench/benches.h"
#include "tests/bench/ratio_table.h"
#include "tests/bench/stopwatch.h"
#include "tests/support/support.h"

namespace combwright::bench {
namespace {

constexpr int foundRows = 1'000'000;
constexpr int foundInStep = 50'000;
constexpr int foundHives = 500;
constexpr int foundVisits = 4'000;
constexpr double findGoalMs = 100;
constexpr std::size_t findShown = 5;

/// Words of a keeper and a long tail of others, the frequent ones first.
class WordsOfNotes {
  public:
    WordsOfNotes() : m_random(20270611) {
        m_words = {"honey", "eggs",   "brood",  "calm",  "queen",  "seen",   "room",   "gave",
                   "swarm", "cells",  "super",  "full",  "capped", "stores", "light",  "heavy",
                   "mites", "board",  "split",  "nuc",   "drone",  "pollen", "nectar", "flow",
                   "wasps", "robbed", "feeder", "empty", "strip",  "formic", "oxalic", "heather"};
        const std::string consonants = "bdfghklmnprstvwz";
        const std::string vowels = "aeiou";
        while (m_words.size() < 8000) {
            std::string word;
            for (unsigned i = 2 + m_random() % 3; i > 0; --i) {
                word += consonants[m_random() % consonants.size()];
                word += vowels[m_random() % vowels.size()];
            }
            m_words.push_back(word);
        }
    }
    std::string note(int words) {
        std::string text;
        for (int i = 0; i < words; ++i) text += (i ? " " : "") + word();
        return text;
    }
    unsigned pick(unsigned among) { return m_random() % among; }

  private:
    /// Half of all are the first thirty.
    const std::string& word() {
        const std::size_t among = m_random() % 2 == 0 ? 32 : m_words.size();
        return m_words[m_random() % among];
    }
    std::mt19937 m_random;
    std::vector<std::string> m_words;
};

struct MillionRows {
    QTemporaryDir folder;
    test::FakeClock clock{"2077-09-01"};
    std::optional<Season> season;
    WordsOfNotes words;
    std::vector<Id<Hive>> hives;
    std::vector<Id<Visit>> visits;

    MillionRows() {
        auto made = Season::create(
            folder.filePath(QStringLiteral("million.combwright")).toStdString(), clock);
        if (!made) return;
        season.emplace(*std::move(made));
        bool whole = step([this](Write& file) { begin(file); });
        for (int row = 0; whole && row < foundRows; row += foundInStep)
            whole = step([this](Write& file) {
                for (int i = 0; i < foundInStep; ++i) add(file);
            });
        if (!whole) season.reset();
    }
    std::string cachePath() const {
        return folder.filePath(QStringLiteral("million.words")).toStdString();
    }

  private:
    bool step(const std::function<void(Write&)>& deed) {
        return season
            ->perform({"bench", "{}", "", ""},
                      [&](Write& file) -> Result<void> {
                          deed(file);
                          return {};
                      })
            .has_value();
    }
    void begin(Write& file) {
        Yard yard;
        yard.name = test::name("Hill");
        yard.since = test::day("2027-04-01");
        const Id<Yard> hill = file.add(yard);
        for (int i = 0; i < foundHives; ++i) {
            Hive hive;
            hive.yard = hill;
            hive.mark = test::name("H" + std::to_string(i));
            hive.since = yard.since;
            hives.push_back(file.add(hive));
        }
        for (int i = 0; i < foundVisits; ++i) {
            Visit visit;
            visit.yard = hill;
            visit.on = test::day("2027-04-01") + days(i * 4);
            visits.push_back(file.add(visit));
        }
    }
    void add(Write& file) {
        const Day on = test::day("2027-04-01") + days(words.pick(18'000));
        const unsigned what = words.pick(10);
        if (what < 6) {
            Inspection look;
            look.visit = visits[words.pick(foundVisits)];
            look.hive = hives[words.pick(foundHives)];
            look.line = "e b" + std::to_string(words.pick(9)) + " \"" + words.note(6) + '"';
            file.add(look);
        } else if (what < 8) {
            Feeding feeding;
            feeding.hive = hives[words.pick(foundHives)];
            feeding.on = on;
            feeding.note = words.note(4);
            file.add(feeding);
        } else {
            GoingOut out;
            out.on = on;
            out.count = Count(1);
            out.buyer = words.note(2);
            out.note = words.note(4);
            file.add(out);
        }
    }
};

const std::vector<std::string>& typedAtTheBox() {
    static const std::vector<std::string> all{"honey",
                                              "h17",
                                              "h17 swarm",
                                              "queen seen calm",
                                              "swarm cells",
                                              "hill",
                                              "formic",
                                              "oxalic strip h3",
                                              "wasps robbed",
                                              "2077-08-01",
                                              "nobody wrote",
                                              "a",
                                              "heather honey",
                                              "feeding",
                                              "look h499 honey",
                                              "capped super",
                                              "zzzzzz",
                                              "e b6",
                                              "gone out eggs",
                                              "last tuesday",
                                              "kalimo",
                                              "honey room",
                                              "eggs brood calm queen seen room gave swarm"};
    return all;
}

void findBench(benchmark::State& state) {
    const std::string what = "find in a million rows, a keystroke";
    MillionRows made;
    if (!made.season) {
        state.SkipWithError("no file");
        table().addUnmeasured(what, "the file was not made");
        return;
    }
    const Read& file = made.season->read();
    FindCache cache(made.cachePath());
    const Stopwatch gathering;
    cache.bringUp(file);
    const double gatherMs = gathering.ms();
    std::vector<double> taken;
    std::string slowest;
    for (auto each : state) {
        (void)each;
        const Stopwatch round;
        for (const std::string& typed : typedAtTheBox())
            for (std::size_t letters = 1; letters <= typed.size(); ++letters) {
                const QString text = QString::fromStdString(typed.substr(0, letters));
                const Stopwatch watch;
                const auto groups = findRecords(cache, text, findShown);
                benchmark::DoNotOptimize(groups.data());
                if (const auto day = findDay(text, made.clock.today()))
                    benchmark::DoNotOptimize(findOnDay(cache, *day, findShown).data());
                taken.push_back(watch.ms());
                if (taken.back() >= largest(taken)) slowest = text.toStdString();
            }
        state.SetIterationTime(round.ms() / 1000);
    }
    std::vector<double> sorted = taken;
    std::sort(sorted.begin(), sorted.end());
    const double p99 = sorted[sorted.size() * 99 / 100];
    const std::string goal = milliseconds(findGoalMs);
    table().add(what + ": median", milliseconds(median(taken)), goal, median(taken) / findGoalMs,
                atMost(1));
    table().add(what + ": 99 of 100", milliseconds(p99), goal, p99 / findGoalMs, atMost(1));
    table().add(what + ": worst (" + slowest + ")", milliseconds(largest(taken)), goal,
                largest(taken) / findGoalMs, {});
    table().note(
        "gathered in " + milliseconds(gatherMs) + ", " +
        std::to_string(QFileInfo(QString::fromStdString(made.cachePath())).size() >> 20) +
        " MB beside a season of " +
        std::to_string(QFileInfo(QString::fromStdString(made.season->path())).size() >> 20) +
        " MB");
}

}  // namespace

void addFindBenches() {
    benchmark::RegisterBenchmark("find/a_million_rows", findBench)
        ->Iterations(5)
        ->UseManualTime()
        ->Unit(benchmark::kMillisecond);
}

}  // namespace combwright::bench
