#include <benchmark/benchmark.h>

#include "core/trade/extractor/balance.h"
#include "tests/bench/benches.h"
#include "tests/bench/ratio_table.h"
#include "tests/bench/stopwatch.h"
#include "tests/core/trade/extractor/ring_oracle.h"

namespace combwright::bench {
namespace {

constexpr int loadSets = 200;
constexpr double balanceGoalMs = 20;

std::vector<LoadedFrame> framesOfSet(unsigned seed, std::size_t frames) {
    std::mt19937 generator(seed);
    std::vector<LoadedFrame> made;
    for (const RingItem& item : randomItems(generator, frames, frames))
        made.push_back({item.start, item.end});
    return made;
}

/// So many frames in a machine of 12 slots, another set each time.
void balanceSets(benchmark::State& state, std::size_t frames) {
    const std::string what = "balance of " + std::to_string(frames) + " frames in 12 slots";
    std::vector<double> times;
    unsigned seed = 0;
    for (auto each : state) {
        (void)each;
        const auto set = framesOfSet(++seed, frames);
        const Stopwatch watch;
        const auto balance = balanceLoad(12, set);
        times.push_back(watch.ms());
        state.SetIterationTime(times.back() / 1000);
        if (!balance || !balance->proven) {
            state.SkipWithError("a load was not proven");
            table().addUnmeasured(what, "set " + std::to_string(seed) + " was not proven");
            return;
        }
    }
    const std::string goal = milliseconds(balanceGoalMs);
    state.counters["worst_ms"] = largest(times);
    table().add(what + ", proven: median of " + std::to_string(loadSets) + " sets",
                milliseconds(median(times)), goal, median(times) / balanceGoalMs, atMost(1));
    table().add(what + ", proven: worst", milliseconds(largest(times)), goal,
                largest(times) / balanceGoalMs, atMost(1));
}

}  // namespace

void addBalanceBenches() {
    for (const std::size_t frames : {std::size_t{12}, std::size_t{9}})
        benchmark::RegisterBenchmark(("balance/" + std::to_string(frames)).c_str(), balanceSets,
                                     frames)
            ->Iterations(loadSets)
            ->UseManualTime()
            ->Unit(benchmark::kMillisecond);
}

}  // namespace combwright::bench
