#include <benchmark/benchmark.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "tests/bench/benches.h"
#include "tests/bench/ratio_table.h"
#include "tests/bench/stopwatch.h"
#include "tests/support/yard_case.h"

namespace combwright::bench {
namespace {

constexpr unsigned firstSeed = 101;
constexpr int pullCases = 20;
constexpr int hivesOfCase = 80;

/// A limit all hives share, set to half of what would be taken without it.
struct SharedLimit {
    const char* name;
    void (*set)(YardCase& yard, const PullChoice& free);
    double withinMs;
    int mustBeProven;  ///< 0: no goal
};

std::int64_t hivesTakenFrom(const PullChoice& choice) {
    std::set<std::size_t> hives;
    for (const auto& each : choice.take) hives.insert(each.hive);
    return static_cast<std::int64_t>(hives.size());
}

void halfCarry(YardCase& yard, const PullChoice& free) {
    yard.limits.carryG = std::floor(0.5 * grossTaken(yard, free));
}
void halfBoxes(YardCase& yard, const PullChoice& free) {
    yard.limits.boxes = static_cast<std::int64_t>(free.take.size()) / 2;
}
void halfFrames(YardCase& yard, const PullChoice& free) {
    yard.limits.frames = framesTaken(yard, free) / 2;
}
void halfBoards(YardCase& yard, const PullChoice& free) {
    yard.limits.clearerBoards = hivesTakenFrom(free) / 2;
}

const SharedLimit sharedLimits[] = {
    {"no shared limit", [](YardCase&, const PullChoice&) {}, 50, pullCases},
    {"half of what could be carried", halfCarry, 500, 14},
    {"half of the boxes", halfBoxes, 500, 14},
    {"half of the frames", halfFrames, 500, 14},
    {"half of the boards", halfBoards, 500, 14},
    {"all four at once",
     [](YardCase& yard, const PullChoice& free) {
         halfCarry(yard, free);
         halfBoxes(yard, free);
         halfFrames(yard, free);
         halfBoards(yard, free);
     },
     500, 0},
};

std::string ofTwenty(int count) {
    return std::to_string(count) + " of " + std::to_string(pullCases);
}

void choosePulls(benchmark::State& state, const SharedLimit& limit) {
    std::vector<double> times;
    int inTime = 0;
    int proven = 0;
    double widestGap = 0;
    unsigned seed = firstSeed;
    for (auto each : state) {
        (void)each;
        YardCase yard = yardCase(seed++, hivesOfCase);
        const PullChoice free = choosePull(yard.hives, yard.limits);
        limit.set(yard, free);
        const Stopwatch watch;
        const PullChoice choice = choosePull(yard.hives, yard.limits);
        times.push_back(watch.ms());
        state.SetIterationTime(times.back() / 1000);
        proven += choice.proven ? 1 : 0;
        inTime += choice.proven && times.back() <= limit.withinMs ? 1 : 0;
        widestGap = std::max(widestGap, 1 - choice.honeyG / choice.boundG);
    }
    state.counters["proven"] = proven;
    state.counters["in_time"] = inTime;
    const std::string what = std::string("pull, 80 hives, ") + limit.name;
    if (limit.mustBeProven)
        table().add(what + ": proven within " + milliseconds(limit.withinMs), ofTwenty(inTime),
                    ofTwenty(limit.mustBeProven), double(inTime) / limit.mustBeProven, atLeast(1));
    else
        table().add(what + ": proven within " + milliseconds(limit.withinMs), ofTwenty(inTime),
                    ofTwenty(pullCases), double(inTime) / pullCases, std::nullopt);
    char gap[32];
    std::snprintf(gap, sizeof gap, "%.3f", 100 * widestGap);
    table().note("proven at all " + ofTwenty(proven) + "; median " + milliseconds(median(times)) +
                 ", worst " + milliseconds(largest(times)) + "; at most " + gap +
                 " % under the bound");
}

}  // namespace

void addPullBenches() {
    for (const SharedLimit& limit : sharedLimits)
        benchmark::RegisterBenchmark((std::string("pull/") + limit.name).c_str(), choosePulls,
                                     limit)
            ->Iterations(pullCases)
            ->UseManualTime()
            ->Unit(benchmark::kMillisecond);
}

}  // namespace combwright::bench
