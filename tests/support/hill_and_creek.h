// The honey room of a worked example: seven mediums of Hill and five of Creek, nine frames each,
// kept apart. One tag was lost, one box was not weighed full. All numbers are invented; what must
// follow was worked out by hand.
#pragma once

#include <array>
#include <string>

namespace combwright::test {

struct WeighedBox {
    const char* box;  ///< nullptr: its tag was lost
    const char* hive;
    int gross;  ///< 0: not weighed
    int wet;
};

inline constexpr std::array<WeighedBox, 7> hillBoxes{{{"H1a", "H1", 21400, 5200},
                                                      {"H1b", "H1", 19800, 5000},
                                                      {"H2a", "H2", 22100, 5300},
                                                      {"H3a", "H3", 18300, 4900},
                                                      {"H3b", "H3", 20600, 5100},
                                                      {"H5a", "H5", 17000, 5000},
                                                      {nullptr, nullptr, 19500, 5100}}};
inline constexpr std::array<WeighedBox, 5> creekBoxes{{{"C1a", "C1", 20000, 5100},
                                                       {"C2a", "C2", 23000, 5400},
                                                       {"C2b", "C2", 18900, 5000},
                                                       {"C4a", "C4", 0, 5200},
                                                       {"C4b", "C4", 19200, 5100}}};

/// Yards, hives and supers before the pull.
inline std::string hillAndCreekBefore() {
    std::string script;
    for (const char* yard : {"Hill", "Creek"})
        script += R"({"do":"add-yard","on":"2027-04-01","yard_name":")" + std::string(yard) +
                  R"(","usual_super":"medium"})" + "\n";
    const auto hive = [&](const char* yard, const char* mark, const char* supers) {
        script += R"({"do":"add-hive","on":"2027-04-01","yard":")" + std::string(yard) +
                  R"(","mark":")" + mark + R"(","boxes":"deep, x, )" + supers +
                  R"(","origin":"overwintered"})" + "\n";
    };
    hive("Hill", "H1", "medium H1a 9 drawn, medium H1b 9 drawn");
    hive("Hill", "H2", "medium H2a 9 drawn");
    hive("Hill", "H3", "medium H3a 9 drawn, medium H3b 9 drawn");
    hive("Hill", "H5", "medium H5a 9 drawn");
    hive("Creek", "C1", "medium C1a 9 drawn");
    hive("Creek", "C2", "medium C2a 9 drawn, medium C2b 9 drawn");
    hive("Creek", "C4", "medium C4a 9 drawn, medium C4b 9 drawn");
    return script +
           R"({"do":"set-constant","on":"2027-04-01","constant":"full_frame_g LANG-F-MED","value":1600})"
           "\n";
}

/// A run with its boxes; `weighed` false leaves every weight out.
template <std::size_t n>
std::string runScript(const char* run, const char* yard, const char* on,
                      const std::array<WeighedBox, n>& boxes, int buckets, int cappings,
                      bool weighed = true) {
    const std::string head = R"("on":")" + std::string(on) + R"(","run":")" + run + '"';
    std::string script = R"({"do":"open-run","on":")" + std::string(on) + R"(","name":")" + run +
                         R"(","yard":")" + yard + "\"}\n";
    for (const WeighedBox& each : boxes) {
        script += R"({"do":"weigh-box",)" + head;
        script += each.box ? R"(,"box":")" + std::string(each.box) + '"'
                           : std::string(R"(,"known_as":"tag lost","frames":9)");
        if (weighed && each.gross) script += R"(,"gross_g":)" + std::to_string(each.gross);
        if (weighed) script += R"(,"wet_g":)" + std::to_string(each.wet);
        script += "}\n";
    }
    if (weighed)
        script += R"({"do":"weigh-cappings",)" + head + R"(,"cappings_g":)" +
                  std::to_string(cappings) + "}\n";
    script += R"({"do":"fill-bucket",)" + head + R"(,"mark":"all","net_g":)" +
              std::to_string(buckets) + "}\n";
    return script + R"({"do":"close-run",)" + head + "}\n";
}

}  // namespace combwright::test
