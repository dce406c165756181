// The searches of core/trade and the planner of the pull in several threads at once, as the window
// asks for them beside its own, with nothing of Qt: built with ThreadSanitizer by
// tests/trust/checks/run. Every thread must find the answers one thread finds alone, to the last
// bit.
#include <cstdio>
#include <random>
#include <string>
#include <thread>
#include <vector>

#include "core/trade/extractor/balance.h"
#include "core/trade/extractor/spin_loads.h"
#include "core/trade/plan/pull_choice.h"
#include "core/trade/pull/day_plan.h"

namespace combwright {
namespace {

using Dice = std::mt19937_64;

double between(Dice& dice, double low, double high) {
    return low + (high - low) * static_cast<double>(dice() >> 11) * 0x1p-53;
}

void put(std::string& text, double value) {
    char figure[40];
    std::snprintf(figure, sizeof figure, "%a ", value);
    text += figure;
}

void put(std::string& text, const FrameSlots& places) {
    for (const auto& place : places) text += place ? std::to_string(*place) + ' ' : "- ";
}

LoadedFrame someFrame(Dice& dice) {
    const double end = between(dice, 250, 450);
    return {end + between(dice, 300, 2200), end};
}

std::string pulls(Dice& dice) {
    std::vector<PullHive> hives(6 + dice() % 6);
    int mark = 0;
    for (PullHive& hive : hives) {
        hive.mark = std::to_string(++mark);
        hive.nestStoresG = between(dice, 4000, 16000);
        hive.boxes.resize(1 + dice() % 4);
        for (PullBox& box : hive.boxes) {
            box.honeyG = between(dice, 2000, 14000);
            box.frames = 9;
            box.grossG = *box.honeyG + 5000;
        }
    }
    PullLimits limits;
    limits.winterNeedG = 15000;
    limits.frames = 60;
    limits.carryG = 150000;
    const PullChoice choice = choosePull(hives, limits);
    std::string text;
    for (const auto& place : choice.take)
        text += std::to_string(place.hive) + ':' + std::to_string(place.box) + ' ';
    put(text, choice.honeyG);
    put(text, choice.boundG);
    return text;
}

std::string balances(Dice& dice) {
    const std::int64_t slots = 6 + static_cast<std::int64_t>(dice() % 9);
    std::vector<LoadedFrame> frames(static_cast<std::size_t>(slots) - dice() % 3);
    for (LoadedFrame& frame : frames) frame = someFrame(dice);
    const auto balance = balanceLoad(slots, frames);
    if (!balance.has_value()) return "refused";
    std::string text;
    put(text, balance.value().places);
    put(text, balance.value().offset.startG);
    put(text, balance.value().offset.endG);
    return text;
}

std::string loads(Dice& dice) {
    SpinRules rules;
    rules.slotsOfKind = {{"medium", 9}};
    std::vector<SpinFrame> frames(20 + dice() % 16);
    for (std::size_t i = 0; i < frames.size(); ++i)
        frames[i] = {std::to_string(i / 9), "medium", {}, someFrame(dice)};
    const auto plan = planSpinLoads(frames, rules);
    if (!plan.has_value()) return "refused";
    std::string text;
    for (const PlannedLoad& load : plan.value()) put(text, load.places);
    return text;
}

std::string days(Dice& dice) {
    RoomRates rates;
    rates.slotsOfKind = {{"medium", 9}};
    rates.uncapMinPerFrame = between(dice, 1, 3);
    rates.spinMinPerLoad = between(dice, 8, 20);
    rates.swapMin = 3;
    rates.strainKgPerH = between(dice, 20, 80);
    rates.bucketG = 20000;
    const auto plan =
        planDay({{"spring", "medium", 40, 60000}, {"summer", "medium", 70, 99000}}, rates);
    if (!plan.has_value()) return "refused";
    std::string text;
    put(text, plan.value().dayMin);
    put(text, plan.value().doneMin);
    return text;
}

std::vector<std::string> answers(unsigned rounds) {
    std::vector<std::string> all;
    for (unsigned round = 0; round < rounds; ++round) {
        Dice dice(round);
        for (const auto ask : {pulls, balances, loads, days}) all.push_back(ask(dice));
    }
    return all;
}

}  // namespace
}  // namespace combwright

int main(int count, char** words) {
    const unsigned rounds = count > 1 ? static_cast<unsigned>(std::stoul(words[1])) : 3;
    const std::vector<std::string> alone = combwright::answers(rounds);
    std::size_t refused = 0;
    for (const std::string& answer : alone) refused += answer == "refused";
    std::vector<std::vector<std::string>> together(4);
    std::vector<std::thread> threads;
    for (auto& place : together)
        threads.emplace_back([&place, rounds] { place = combwright::answers(rounds); });
    for (std::thread& thread : threads) thread.join();
    std::size_t differ = 0;
    for (const auto& found : together)
        for (std::size_t i = 0; i < alone.size(); ++i) differ += found[i] != alone[i];
    std::printf("%zu answers, %zu refused, in %zu threads: %zu differ\n", alone.size(), refused,
                together.size(), differ);
    return differ == 0 && refused == 0 ? 0 : 1;
}
