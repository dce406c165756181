#include <benchmark/benchmark.h>

#include <algorithm>
#include <cstdio>
#include <random>
#include <string>

#include "core/trade/extractor/balance.h"
#include "core/trade/extractor/heft.h"
#include "tests/bench/benches.h"
#include "tests/bench/plain_descent.h"
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

constexpr std::int64_t largeMachines[] = {13, 14, 16, 18, 20, 24, 33, 48, 60, 72};
constexpr int largeSets = 10;
constexpr double largeGoalMs = 100;

std::string gramsText(double g) {
    char text[32];
    std::snprintf(text, sizeof text, "%.3f g", g);
    return text;
}

/// A machine of more than 12 slots: what is left at worst, and how long it takes, against a plain
/// descent on the same loads that has as long as ours may take.
void largeMachine(benchmark::State& state, std::int64_t slots, bool full) {
    const std::int64_t frames = slots - (full ? 0 : slots / 4);
    const std::string what =
        "balance of " + std::to_string(frames) + " frames in " + std::to_string(slots) + " slots";
    std::vector<double> times, left, plain;
    int proven = 0;
    unsigned seed = 0;
    for (auto each : state) {
        (void)each;
        const auto set = framesOfSet(++seed, static_cast<std::size_t>(frames));
        const Stopwatch watch;
        const auto balance = balanceLoad(slots, set);
        times.push_back(watch.ms());
        state.SetIterationTime(times.back() / 1000);
        if (!balance) {
            state.SkipWithError("a load was refused");
            table().addUnmeasured(what, "a load was refused");
            return;
        }
        left.push_back(balance->offset.largerG());
        proven += balance->proven;
        std::vector<RingItem> items(static_cast<std::size_t>(slots));
        for (std::size_t i = 0; i < set.size(); ++i) items[i] = {set[i].startG, set[i].endG};
        plain.push_back(plainDescentG(items, largeGoalMs, seed));
    }
    table().add(what + ": worst of " + std::to_string(largeSets), gramsText(largest(left)),
                "plain descent " + gramsText(largest(plain)), largest(left) / largest(plain),
                atMost(1));
    table().add(what + ": median of " + std::to_string(largeSets), gramsText(median(left)),
                "plain descent " + gramsText(median(plain)), median(left) / median(plain), {});
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
    for (const std::int64_t slots : largeMachines)
        for (const bool full : {true, false})
            benchmark::RegisterBenchmark(
                ("balance/large/" + std::to_string(slots) + (full ? "/full" : "/quarter_empty"))
                    .c_str(),
                largeMachine, slots, full)
                ->Iterations(largeSets)
                ->UseManualTime()
                ->Unit(benchmark::kMillisecond);
}

}  // namespace combwright::bench
