#include <benchmark/benchmark.h>

#include <QApplication>
#include <cstdio>

#include "tests/bench/benches.h"
#include "tests/bench/ratio_table.h"

int main(int argc, char** argv) {
    using namespace combwright::bench;
    // Widgets are painted without a display; programs that are started choose their own.
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
    const QApplication application(argc, argv);
    addBalanceBenches();
    addPullBenches();
    addCommitBenches();
    addWindowBenches();
    addBoardBenches();
    addRoomBenches();
    addColoniesBenches();
    addTraceBenches();
    addFindBenches();
    addChartBenches();
    addImportBenches();
    addFileBenches();
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
