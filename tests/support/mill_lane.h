// The yard visit of a worked example: twelve hives at Mill Lane on 9 June 2027, twenty mediums in
// the storeroom, one hive not opened for rain. All numbers are invented; what must follow from them
// was worked out by hand.
#pragma once

#include <array>
#include <string>

namespace combwright::test {

/// The lines of 9 June in walking order, as one would type them.
inline constexpr std::array<const char*, 12> millLaneLines{
    "e b7 s3 +1",      "e b8 s3 +1",       "e0 q? qc2c left1", "e b6 s2",
    "e b8 +1 w4/300",  "e b5 s1 light",    "x rain",           "e b9 s5 +2",
    "e b7 +1 w11/300", "e b7 s3 +1 cross", "e b8 s4 +1",       "e b6"};

/// Yard, hives, spare boxes and the visit of 2 June, as a play script.
inline std::string millLaneBefore() {
    std::string script =
        R"({"do":"add-yard","on":"2027-04-01","yard_name":"Mill Lane","usual_super":"medium"})"
        "\n";
    for (int n = 1; n <= 12; ++n) {
        const std::string mark = std::to_string(n);
        script += R"({"do":"add-hive","on":"2027-04-10","yard":"Mill Lane","mark":"ML)" + mark +
                  R"(","boxes":"deep D)" + std::to_string(30 + n) + ", x, medium M" +
                  std::to_string(30 + n) + R"( 9 drawn","origin":"overwintered"})" + "\n";
    }
    script +=
        R"({"do":"add-boxes","on":"2027-05-01","kind":"medium","first_mark":"M43","count":20})"
        "\n";
    for (int n = 1; n <= 12; ++n)
        script += R"({"do":"write-line","on":"2027-06-02","hive":"ML)" + std::to_string(n) +
                  R"(","line":"e b7 s3"})" + "\n";
    return script;
}

/// The visit of 9 June as a play script.
inline std::string millLaneVisit() {
    std::string script;
    for (std::size_t n = 0; n < millLaneLines.size(); ++n)
        script += R"({"do":"write-line","on":"2027-06-09","hive":"ML)" + std::to_string(n + 1) +
                  R"(","line":")" + millLaneLines[n] + "\"}\n";
    return script;
}

}  // namespace combwright::test
