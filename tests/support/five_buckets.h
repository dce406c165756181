// Five buckets of one run: what honey after the gate is tested on. All numbers are invented; what
// must follow was worked out by hand.
#pragma once

#include <string>

namespace combwright::test {

/// Run 27-2 of 7 August 2027: B1 13,600 g at 17.2 %, B2 13,600 g at 18.6 %, B3 13,000 g at 19.4 %,
/// B4 12,800 g at 16.8 %, B5 9,000 g by eye, its water not read.
inline std::string fiveBuckets() {
    const auto bucket = [](const char* mark, int net, const char* more) {
        return R"({"do":"fill-bucket","on":"2027-08-07","run":"27-2","mark":")" +
               std::string(mark) + R"(","net_g":)" + std::to_string(net) + more + "}\n";
    };
    return R"({"do":"open-run","on":"2027-08-07","name":"27-2","room_c":30,"damp_share":0.5})"
           "\n"
           R"({"do":"weigh-box","on":"2027-08-07","run":"27-2","known_as":"T1","frames":9})"
           "\n" +
           bucket("B1", 13600, R"(,"net_how":"weighed","water_percent":17.2)") +
           bucket("B2", 13600, R"(,"net_how":"weighed","water_percent":18.6)") +
           bucket("B3", 13000, R"(,"net_how":"weighed","water_percent":19.4)") +
           bucket("B4", 12800, R"(,"net_how":"weighed","water_percent":16.8)") +
           bucket("B5", 9000, R"(,"net_how":"by eye")");
}

}  // namespace combwright::test
