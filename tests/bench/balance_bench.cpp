#include <benchmark/benchmark.h>

#include <algorithm>
#include <cstdio>
#include <random>
#include <string>

#include "core/trade/extractor/balance.h"
#include "core/trade/extractor/heft.h"
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

/// What a plain descent by exchanges of two with fresh starts reached at worst of ten loads in 100
/// ms on one core (measured by us once, frames as `randomItems` makes them), grams: all slots
/// filled, and a quarter of them empty.
struct PlainDescent {
    std::int64_t slots;
    double fullG;
    double quarterEmptyG;
};
constexpr PlainDescent plainDescents[] = {
    {13, 6.3, 24.1}, {14, 4.7, 13.6}, {16, 4.0, 6.9}, {18, 2.9, 3.8}, {20, 3.0, 4.4},
    {24, 2.0, 3.2},  {33, 1.5, 2.6},  {48, 1.0, 1.5}, {60, 1.0, 1.2}, {72, 0.9, 1.1}};
constexpr int largeSets = 10;
constexpr double largeGoalMs = 100;

/// A machine of more than 12 slots: what is left at worst, and how long it takes.
void largeMachine(benchmark::State& state, const PlainDescent& plain, bool full) {
    const std::int64_t empty = full ? 0 : plain.slots / 4;
    const std::string what = "balance of " + std::to_string(plain.slots - empty) + " frames in " +
                             std::to_string(plain.slots) + " slots";
    std::vector<double> times, left;
    int proven = 0;
    unsigned seed = 0;
    for (auto each : state) {
        (void)each;
        const auto set = framesOfSet(++seed, static_cast<std::size_t>(plain.slots - empty));
        const Stopwatch watch;
        const auto balance = balanceLoad(plain.slots, set);
        times.push_back(watch.ms());
        state.SetIterationTime(times.back() / 1000);
        if (!balance) {
            state.SkipWithError("a load was refused");
            table().addUnmeasured(what, "a load was refused");
            return;
        }
        left.push_back(balance->offset.largerG());
        proven += balance->proven;
    }
    const double goalG = full ? plain.fullG : plain.quarterEmptyG;
    const auto grams = [](double g) {
        char text[32];
        std::snprintf(text, sizeof text, "%.3f g", g);
        return std::string(text);
    };
    table().add(what + ": worst of " + std::to_string(largeSets), grams(largest(left)),
                "plain descent " + grams(goalG), largest(left) / goalG, atMost(1));
    table().add(what + ": longest", milliseconds(largest(times)), milliseconds(largeGoalMs),
                largest(times) / largeGoalMs, atMost(1));
    if (proven) table().note("proven: " + std::to_string(proven));
}

/// One frame of the screen.
constexpr double screenFrameMs = 16;
constexpr int typedSets = 200;

void tellTyped(benchmark::State& state, const std::string& what, const std::vector<double>& times) {
    const std::string goal = milliseconds(screenFrameMs);
    state.counters["worst_ms"] = largest(times);
    table().add(what + ": median", milliseconds(median(times)), goal, median(times) / screenFrameMs,
                atMost(1));
    table().add(what + ": worst of " + std::to_string(times.size()), milliseconds(largest(times)),
                goal, largest(times) / screenFrameMs, atMost(1));
}

/// A load arranged anew after each frame that comes off the fork, 1 to 12.
template <class Next, class Arrange>
void typedFrames(benchmark::State& state, const std::string& what, Next nextFrame,
                 Arrange arrange) {
    std::mt19937 generator(20270729);
    std::vector<double> times;
    for (auto each : state) {
        (void)each;
        std::vector<LoadedFrame> frames;
        double all = 0;
        for (int n = 0; n < 12; ++n) {
            frames.push_back(nextFrame(generator));
            const Stopwatch watch;
            const auto balance = arrange(frames);
            times.push_back(watch.ms());
            all += times.back();
            if (balance) continue;
            state.SkipWithError("a load was refused");
            table().addUnmeasured(what, "a load was refused");
            return;
        }
        state.SetIterationTime(all / 1000);
    }
    tellTyped(state, what, times);
}

void typedBenches() {
    const auto proof = [](const std::vector<LoadedFrame>& frames) {
        return balanceLoad(12, frames);
    };
    const auto atOnce = [](const std::vector<LoadedFrame>& frames) {
        return balanceAtOnce(12, frames);
    };
    // Honey 1450 ± 360 g a frame.
    const auto letter =
        [classes = *heftClasses({1450, 360}, 1450 * heftDoubtShare)](std::mt19937& generator) {
            return framesOfLetters(std::string(1, "hml"[generator() % 3]), classes, {600, 30, {}})
                ->front();
        };
    const auto weighed = [](std::mt19937& generator) {
        const double honey = std::normal_distribution<double>(1450, 360)(generator);
        return LoadedFrame{600 + std::max(0.0, honey), 600};
    };
    const auto add = [](const char* name, auto run) {
        benchmark::RegisterBenchmark(name, run)->Iterations(typedSets)->UseManualTime()->Unit(
            benchmark::kMillisecond);
    };
    add("balance/letters", [=](benchmark::State& state) {
        typedFrames(state, "after each letter, with the proof", letter, proof);
    });
    add("balance/weighed_at_once", [=](benchmark::State& state) {
        typedFrames(state, "after each mass typed, first answer", weighed, atOnce);
    });
    add("balance/weighed", [=](benchmark::State& state) {
        typedFrames(state, "after each mass typed, with the proof", weighed, proof);
    });
}

}  // namespace

void addBalanceBenches() {
    typedBenches();
    for (const std::size_t frames : {std::size_t{12}, std::size_t{9}})
        benchmark::RegisterBenchmark(("balance/" + std::to_string(frames)).c_str(), balanceSets,
                                     frames)
            ->Iterations(loadSets)
            ->UseManualTime()
            ->Unit(benchmark::kMillisecond);
    for (const PlainDescent& plain : plainDescents)
        for (const bool full : {true, false})
            benchmark::RegisterBenchmark(("balance/large/" + std::to_string(plain.slots) +
                                          (full ? "/full" : "/quarter_empty"))
                                             .c_str(),
                                         largeMachine, plain, full)
                ->Iterations(largeSets)
                ->UseManualTime()
                ->Unit(benchmark::kMillisecond);
}

}  // namespace combwright::bench
