#include <benchmark/benchmark.h>

#include <QCoreApplication>
#include <cstdio>

#include "tests/bench/benches.h"
#include "tests/bench/ratio_table.h"

int main(int argc, char** argv) {
    using namespace combwright::bench;
    const QCoreApplication application(argc, argv);
    addBalanceBenches();
    addPullBenches();
    addCommitBenches();
    addWindowBenches();
    benchmark::Initialize(&argc, argv);
    if (benchmark::ReportUnrecognizedArguments(argc, argv)) return 2;
    benchmark::RunSpecifiedBenchmarks();
    benchmark::Shutdown();
    if (table().empty()) {
        std::fprintf(stderr, "No benchmark was run.\n");
        return 1;
    }
    std::printf("\n");
    table().print();
    return table().allMeasured() ? 0 : 1;
}
