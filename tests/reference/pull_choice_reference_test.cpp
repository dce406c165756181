// Which boxes to take, against another solver: the `cbc` program (Debian package coinor-cbc) is
// given each case as a plain integer program, a variable a box. Source of the values: cbc's own
// answer.
#include <gtest/gtest.h>
#include <unistd.h>

#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <optional>
#include <string>

#include "core/trade/plan/pull_choice.h"
#include "tests/support/yard_case.h"

namespace combwright {
namespace {

namespace fs = std::filesystem;

/// A folder of its own that goes when the test does.
class SolverFolder {
  public:
    SolverFolder() {
        std::string name = (fs::temp_directory_path() / "pull-choice-XXXXXX").string();
        if (mkdtemp(name.data())) m_path = name;
    }
    ~SolverFolder() {
        std::error_code ignored;
        if (!m_path.empty()) fs::remove_all(m_path, ignored);
    }
    SolverFolder(const SolverFolder&) = delete;
    SolverFolder& operator=(const SolverFolder&) = delete;
    const fs::path& path() const { return m_path; }

  private:
    fs::path m_path;
};

std::string variableOf(std::size_t hive, std::size_t box) {
    return "x" + std::to_string(hive) + "_" + std::to_string(box);
}

/// The case in the LP format: boxes x, hives taken from y.
void writeProgram(const YardCase& given, const fs::path& file) {
    std::ofstream out(file);
    const auto sumOver = [&](auto coefficient) {
        for (std::size_t h = 0; h < given.hives.size(); ++h)
            for (std::size_t b = 0; b < given.hives[h].boxes.size(); ++b)
                out << " + " << static_cast<std::int64_t>(coefficient(given.hives[h].boxes[b]))
                    << " " << variableOf(h, b) << "\n";
    };
    out << "Maximize\n honey:";
    sumOver([](const PullBox& box) { return *box.honeyG; });
    out << "Subject To\n";
    for (std::size_t h = 0; h < given.hives.size(); ++h) {
        const PullHive& hive = given.hives[h];
        double spare = *hive.nestStoresG + hive.expectedChangeG + given.limits.feedUpToG -
                       given.limits.winterNeedG;
        for (const PullBox& box : hive.boxes) spare += *box.honeyG;
        out << " spare" << h << ":";
        for (std::size_t b = 0; b < hive.boxes.size(); ++b)
            out << " + " << static_cast<std::int64_t>(*hive.boxes[b].honeyG) << " "
                << variableOf(h, b);
        out << " <= " << static_cast<std::int64_t>(std::max(spare, 0.0)) << "\n";
        for (std::size_t b = 0; b < hive.boxes.size(); ++b)
            out << " board" << h << "_" << b << ": " << variableOf(h, b) << " - y" << h
                << " <= 0\n";
    }
    if (given.limits.frames) {
        out << " frames:";
        sumOver([](const PullBox& box) { return static_cast<double>(box.frames); });
        out << " <= " << *given.limits.frames << "\n";
    }
    if (given.limits.carryG) {
        out << " carry:";
        sumOver([](const PullBox& box) { return *box.grossG; });
        out << " <= " << static_cast<std::int64_t>(*given.limits.carryG) << "\n";
    }
    if (given.limits.boxes) {
        out << " boxes:";
        sumOver([](const PullBox&) { return 1.0; });
        out << " <= " << *given.limits.boxes << "\n";
    }
    if (given.limits.clearerBoards) {
        out << " boards:";
        for (std::size_t h = 0; h < given.hives.size(); ++h) out << " + y" << h;
        out << " <= " << *given.limits.clearerBoards << "\n";
    }
    out << "Binary\n";
    for (std::size_t h = 0; h < given.hives.size(); ++h) {
        for (std::size_t b = 0; b < given.hives[h].boxes.size(); ++b)
            out << " " << variableOf(h, b);
        out << " y" << h << "\n";
    }
    out << "End\n";
}

/// What cbc takes at most; nothing, and a failed test, where it does not say that it is optimal.
std::optional<std::int64_t> solvedByCbc(const YardCase& given) {
    const SolverFolder folder;
    if (folder.path().empty()) {
        ADD_FAILURE() << "no temporary folder";
        return std::nullopt;
    }
    const fs::path program = folder.path() / "yard.lp";
    const fs::path solution = folder.path() / "yard.txt";
    writeProgram(given, program);
    const std::string command =
        "cbc '" + program.string() + "' ratioGap 0 allowableGap 0 sec 60 solve solu '" +
        solution.string() + "' quit > '" + (folder.path() / "log.txt").string() + "' 2>&1";
    if (std::system(command.c_str()) != 0) {
        ADD_FAILURE() << "cbc could not be run: install the package coinor-cbc";
        return std::nullopt;
    }
    std::ifstream in(solution);
    std::string line;
    std::getline(in, line);  // "Optimal - objective value 1234567.00000000"
    const auto at = line.find("objective value ");
    if (line.rfind("Optimal", 0) != 0 || at == std::string::npos) {
        ADD_FAILURE() << "cbc: " << line;
        return std::nullopt;
    }
    return std::llabs(std::llround(std::strtod(line.c_str() + at + 16, nullptr)));
}

void expectAsCbc(const YardCase& given, const char* what) {
    const auto best = solvedByCbc(given);
    if (!best) return;
    const PullChoice choice = choosePull(given.hives, given.limits);
    EXPECT_LE(choice.honeyG, static_cast<double>(*best) + 0.5) << what << ": better than the best";
    EXPECT_GE(choice.boundG, static_cast<double>(*best) - 0.5) << what << ": the bound is wrong";
    EXPECT_GE(choice.honeyG, 0.999 * choice.boundG) << what;
    EXPECT_TRUE(choice.proven) << what;
    EXPECT_NEAR(choice.honeyG, static_cast<double>(*best), 0.5) << what;
}

TEST(PullChoiceReference, WithoutSharedLimits) {
    for (unsigned seed = 1; seed <= 4; ++seed) expectAsCbc(yardCase(seed, 80), "free");
}

TEST(PullChoiceReference, BoardsFramesAndBoxes) {
    for (unsigned seed = 11; seed <= 13; ++seed) {
        YardCase given = yardCase(seed, 40);
        const PullChoice free = choosePull(given.hives, given.limits);
        given.limits.clearerBoards = 22;
        expectAsCbc(given, "boards");
        given.limits.boxes = static_cast<std::int64_t>(free.take.size()) / 2;
        expectAsCbc(given, "boards and boxes");
        given.limits.frames = framesTaken(given, free) / 2;
        expectAsCbc(given, "boards, boxes and frames");
    }
}

TEST(PullChoiceReference, WhatCanBeCarried) {
    for (unsigned seed = 21; seed <= 25; ++seed) {
        YardCase given = yardCase(seed, 25);
        given.limits.carryG =
            std::floor(0.5 * grossTaken(given, choosePull(given.hives, given.limits)));
        expectAsCbc(given, "carry");
        given.limits.clearerBoards = 14;
        given.limits.boxes = 40;
        expectAsCbc(given, "carry, boards, boxes");
    }
}

// --- The size of a sideliner's whole yard list: 80 hives of 4 boxes ------------------------------

struct YardTally {
    int proven = 0;
    double worstGap = 0;
    double worstMs = 0;
};

/// How the 20 cases go; times are recorded for the report, not judged: the machine may be busy.
YardTally twentyCases(void (*limit)(YardCase&, const PullChoice& free), const char* name) {
    YardTally tally;
    for (unsigned seed = 101; seed <= 120; ++seed) {
        YardCase given = yardCase(seed, 80);
        limit(given, choosePull(given.hives, given.limits));
        const auto begun = std::chrono::steady_clock::now();
        const PullChoice choice = choosePull(given.hives, given.limits);
        const std::chrono::duration<double, std::milli> took =
            std::chrono::steady_clock::now() - begun;
        tally.proven += choice.proven ? 1 : 0;
        tally.worstGap = std::max(tally.worstGap, 1 - choice.honeyG / choice.boundG);
        tally.worstMs = std::max(tally.worstMs, took.count());
    }
    testing::Test::RecordProperty(std::string(name) + "_proven", tally.proven);
    testing::Test::RecordProperty(std::string(name) + "_worst_ms", std::to_string(tally.worstMs));
    std::printf("%s: %d of 20 proven, worst gap %.4f %%, worst %.1f ms\n", name, tally.proven,
                100 * tally.worstGap, tally.worstMs);
    return tally;
}

TEST(PullChoiceReference, EightyHives) {
    EXPECT_EQ(twentyCases([](YardCase&, const PullChoice&) {}, "free").proven, 20);
    const YardTally carried = twentyCases(
        [](YardCase& given, const PullChoice& free) {
            given.limits.carryG = std::floor(0.5 * grossTaken(given, free));
        },
        "carry");
    EXPECT_GE(carried.proven, 14);
    EXPECT_LT(carried.worstGap, 0.001);
    const YardTally all = twentyCases(
        [](YardCase& given, const PullChoice& free) {
            given.limits.carryG = std::floor(0.5 * grossTaken(given, free));
            given.limits.frames = framesTaken(given, free) / 2;
            given.limits.boxes = static_cast<std::int64_t>(free.take.size()) / 2;
            given.limits.clearerBoards = 50;
        },
        "all limits");
    EXPECT_LT(all.worstGap, 0.001);
}

}  // namespace
}  // namespace combwright
