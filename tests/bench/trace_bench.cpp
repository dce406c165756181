// The way of one lot both ways in a file of ten thousand lots, against one SQL query that asks the
// file for the same figures: grams by hive behind it, jars and buyers beyond it. What the trace
// adds to that, names, boxes, treatments, holds and what cannot be known, is in the ratio.
#include <benchmark/benchmark.h>

#include <QTemporaryDir>
#include <cmath>
#include <string>
#include <vector>

#include "core/model/honey/going_out.h"
#include "core/places/trace/trace.h"
#include "core/storage/season.h"
#include "tests/bench/benches.h"
#include "tests/bench/ratio_table.h"
#include "tests/bench/stopwatch.h"
#include "tests/support/support.h"

namespace combwright::bench {
namespace {

constexpr int tracedLots = 10000;
constexpr int lotsInChain = 10;  ///< each takes of the one before it
constexpr int tracedRuns = 500;
constexpr int bucketsInRun = 10;
constexpr int hivesInRun = 4;
constexpr int traceRuns = 200;
constexpr double traceGoal = 10;
constexpr double traceFrameMs = 16;

Known<Mass> weighedGrams(std::int64_t grams) {
    return {Mass::grams(grams), std::nullopt, How::Weighed};
}

std::string benchName(const char* of, int number) { return of + std::to_string(number); }

struct TracedFile {
    QTemporaryDir folder;
    test::FakeClock clock{"2037-11-20"};
    std::optional<Season> season;
    std::vector<Id<Lot>> lots;

    TracedFile() {
        auto made =
            Season::create(folder.filePath(QStringLiteral("lots.combwright")).toStdString(), clock);
        if (!made) return;
        season.emplace(*std::move(made));
        const auto done =
            season->perform({"bench", "{}", "", ""}, [this](Write& file) -> Result<void> {
                fill(file);
                return {};
            });
        if (!done) season.reset();
    }

  private:
    void fill(Write& file) {
        const std::vector<Id<Hive>> hives = hivesOf(file);
        std::vector<Id<Bucket>> buckets;
        for (int run = 0; run < tracedRuns; ++run) fillRun(file, run, hives, buckets);
        GoodsKind jar;
        jar.name = test::name("454 g jar");
        jar.net = Mass::grams(454);
        const Id<GoodsKind> kind = file.add(jar);
        for (int i = 0; i < tracedLots; ++i) {
            Lot lot;
            lot.name = test::name(benchName("Lot ", i));
            lot.on = test::day("2030-09-01") + days(i % 700);
            const Id<Lot> id = file.add(lot);
            const auto at = static_cast<std::size_t>(i);
            file.add(LotPart{
                {}, id, buckets[at % buckets.size()], {}, lot.on, Mass::grams(900), How::Weighed});
            if (i % lotsInChain != 0)
                file.add(LotPart{{}, id, {}, lots.back(), lot.on, Mass::grams(300), How::Weighed});
            lots.push_back(id);
            fillJars(file, id, lot.on, kind, i);
        }
    }
    static std::vector<Id<Hive>> hivesOf(Write& file) {
        Yard yard;
        yard.name = test::name("Hill");
        yard.since = test::day("2029-04-01");
        const Id<Yard> hill = file.add(yard);
        std::vector<Id<Hive>> hives;
        for (int i = 0; i < 40; ++i) {
            Hive hive;
            hive.yard = hill;
            hive.mark = test::name(benchName("H", i));
            hive.since = yard.since;
            hives.push_back(file.add(hive));
        }
        return hives;
    }
    static void fillRun(Write& file, int number, const std::vector<Id<Hive>>& hives,
                        std::vector<Id<Bucket>>& buckets) {
        Extraction run;
        run.name = test::name(benchName("R", number));
        run.on = test::day("2030-07-01") + days(number % 60);
        run.closed = run.on;
        run.cappings = weighedGrams(0);
        const Id<Extraction> id = file.add(run);
        for (int i = 0; i < hivesInRun; ++i) {
            const auto at = static_cast<std::size_t>(number * hivesInRun + i);
            ExtractionBox box;
            box.extraction = id;
            box.hive = hives[at % hives.size()];
            box.knownAs = benchName("box ", i);
            box.gross = weighedGrams(20000 + 1000 * i);
            box.wet = weighedGrams(5000);
            file.add(box);
            file.add(ClosingShare{{}, id, box.hive, Mass::grams(15000 + 1000 * i), How::Weighed});
        }
        for (int i = 0; i < bucketsInRun; ++i) {
            Bucket bucket;
            bucket.extraction = id;
            bucket.mark = test::name(benchName("B", i));
            bucket.net = weighedGrams(6600);
            buckets.push_back(file.add(bucket));
        }
    }
    static void fillJars(Write& file, Id<Lot> lot, Day on, Id<GoodsKind> kind, int number) {
        Bottling bottling;
        bottling.lot = lot;
        bottling.on = on;
        bottling.code = test::name(benchName("L", number));
        const Id<Bottling> id = file.add(bottling);
        BottledJars jars;
        jars.bottling = id;
        jars.kind = kind;
        jars.count = Count(2);
        file.add(jars);
        GoingOut out;
        out.on = on;
        out.kind = kind;
        out.bottling = id;
        out.count = Count(1);
        out.buyer = "Ann";
        file.add(out);
    }
};

/// Grams by hive behind a lot and jars gone beyond it, all in one.
constexpr std::string_view traceInOneQuery =
    "WITH RECURSIVE "
    "near(lot) AS (SELECT ?1 UNION SELECT from_lot_id FROM near JOIN lot_part ON lot_id = near.lot "
    "WHERE from_lot_id IS NOT NULL), "
    "whole(lot, grams) AS (SELECT lot_id, sum(mass_g) FROM lot_part WHERE lot_id IN "
    "(SELECT lot FROM near) GROUP BY lot_id), "
    "back(lot, bucket, part) AS (SELECT ?1, NULL, 1.0 UNION ALL "
    "SELECT lot_part.from_lot_id, lot_part.bucket_id, back.part * lot_part.mass_g / whole.grams "
    "FROM back JOIN lot_part ON lot_part.lot_id = back.lot JOIN whole ON whole.lot = back.lot "
    "WHERE back.lot IS NOT NULL), "
    "beyond(lot) AS (SELECT ?1 UNION SELECT lot_part.lot_id FROM beyond JOIN lot_part ON "
    "lot_part.from_lot_id = beyond.lot) "
    "SELECT closing_share.hive_id, CAST(round(1e9 * sum(back.part * closing_share.mass_g / "
    "(SELECT sum(mass_g) FROM closing_share all_of WHERE all_of.extraction_id = "
    "closing_share.extraction_id))) AS INTEGER), 0 FROM back JOIN bucket ON bucket.id = "
    "back.bucket "
    "JOIN closing_share ON closing_share.extraction_id = bucket.extraction_id "
    "GROUP BY closing_share.hive_id "
    "UNION ALL SELECT NULL, sum(going_out.count), 1 FROM beyond JOIN bottling ON "
    "bottling.lot_id = beyond.lot JOIN going_out ON going_out.bottling_id = bottling.id";

struct AskedAtOnce {
    double parts = 0;  ///< of all hives: 1
    std::int64_t jars = 0;
};

AskedAtOnce askAtOnce(const Read& file, Id<Lot> lot) {
    AskedAtOnce asked;
    Statement& statement = file.prepared(traceInOneQuery);
    statement.bind(lot.number).run();
    while (statement.next()) {
        // Parts come as billionths: values are whole numbers or text.
        if (statement.number(2) == 1)
            asked.jars = statement.number(1);
        else
            asked.parts += static_cast<double>(statement.number(1)) / 1e9;
    }
    return asked;
}

/// Whether both say the same of one lot.
bool agree(const Trace& traced, const AskedAtOnce& asked) {
    std::int64_t jars = 0;
    Mass hives;
    for (const TracedFilling& filling : traced.forward.fillings)
        for (const TracedJars& each : filling.jars) jars += each.gone;
    for (const TraceRun& run : traced.back->runs)
        for (const TraceHive& each : run.hives) hives += each.mass.value_or(Mass{});
    return jars == asked.jars && hives == traced.back->mass && std::abs(asked.parts - 1) < 1e-6;
}

void traceBench(benchmark::State& state) {
    const std::string what = "way of one of 10,000 lots, both ways";
    TracedFile made;
    if (!made.season) {
        state.SkipWithError("no file");
        table().addUnmeasured(what, "the file was not made");
        return;
    }
    const Read& file = made.season->read();
    std::vector<double> traced, asked;
    std::size_t next = 5;
    for (auto each : state) {
        (void)each;
        const Id<Lot> lot = made.lots[next % made.lots.size()];
        next += 137;
        const Stopwatch watch;
        const auto answer = trace(file, {.lot = lot}, made.clock.today());
        traced.push_back(watch.ms());
        state.SetIterationTime(traced.back() / 1000);
        const Stopwatch sql;
        const AskedAtOnce atOnce = askAtOnce(file, lot);
        asked.push_back(sql.ms());
        if (answer && agree(*answer, atOnce)) continue;
        state.SkipWithError("trace and query do not agree");
        table().addUnmeasured(what, "trace and query do not agree");
        return;
    }
    table().add(what + ": median", milliseconds(median(traced)),
                milliseconds(median(asked)) + " in one query", median(traced) / median(asked),
                atMost(traceGoal));
    table().add(what + ": worst", milliseconds(largest(traced)),
                milliseconds(largest(asked)) + " in one query", largest(traced) / largest(asked),
                {});
    table().add(what + ", within a frame of the screen: median", milliseconds(median(traced)),
                milliseconds(traceFrameMs), median(traced) / traceFrameMs, atMost(1));
}

}  // namespace

void addTraceBenches() {
    benchmark::RegisterBenchmark("trace/one_of_10000_lots", traceBench)
        ->Iterations(traceRuns)
        ->UseManualTime()
        ->Unit(benchmark::kMillisecond);
}

}  // namespace combwright::bench
