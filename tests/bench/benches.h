// The groups of benchmarks. Each registers with Google Benchmark, which runs and times them, and
// each puts its ratios into the table when it has run.
#pragma once

namespace combwright::bench {

void addBalanceBenches();
void addPullBenches();
void addCommitBenches();
void addWindowBenches();
void addBoardBenches();
void addRoomBenches();
void addColoniesBenches();
void addTraceBenches();
void addFindBenches();
void addChartBenches();
void addImportBenches();
void addFileBenches();

}  // namespace combwright::bench
