// Supers before a pull: two yards, every reason a box can have to stay. All numbers are invented
// and round, so that what must follow can be worked out in one's head: a full medium frame holds
// 1600 g, a full deep frame 2500 g; Hill's hives need 20 kg, the others what the plan says.
//
//        nest    supers from the top down: honey, what it is for
//   H1  20.0 kg  M02 11.52 kg, 6.5 of 9 capped · M01 12.96 kg, may come off
//   H2  16.0 kg  M03 14.40 kg: with Hill's 20 kg needed, with 16 to spare to the gram
//   H3  20.0 kg  M04 13.68 kg, held back
//   H4  20.0 kg  M06 never looked into · M05 12.96 kg
//   C1  16.0 kg  M07  7.20 kg, to spare to the gram at 16 kg
//   C2  20.0 kg  M08 looked into 39 days ago
//   C3  20.0 kg  M09 looked into, then moved
//   C4  20.0 kg  M10 12.96 kg, its colony is held back
#pragma once

#include <string>

#include "core/model/honey/pull.h"

namespace combwright::test {

inline constexpr const char* pullDay = "2027-07-29";

/// 16 kg a hive, nothing fed, three quarters capped.
inline PlanLimits pullLimits() {
    PlanLimits limits;
    limits.winterNeed = Mass::grams(16000);
    limits.feedUpTo = Mass::grams(0);
    limits.minCapped = Share::percent(75);
    return limits;
}

inline std::string pullSeason() {
    std::string script =
        R"({"do":"set-constant","on":"2027-04-01","constant":"full_frame_g LANG-F-MED","value":1600}
{"do":"set-constant","on":"2027-04-01","constant":"full_frame_g LANG-F-DEEP","value":2500}
{"do":"set-constant","on":"2027-04-01","constant":"winter_need_g","value":16000}
{"do":"set-constant","on":"2027-04-01","constant":"min_capped_share","value":0.75}
{"do":"add-yard","on":"2027-04-02","yard_name":"Hill","winter_need_g":20000}
{"do":"add-yard","on":"2027-04-02","yard_name":"Creek"}
)";
    const auto hive = [&](const char* yard, const char* mark, const char* supers,
                          const char* stores) {
        script += R"({"do":"add-hive","on":"2027-04-12","yard":")" + std::string(yard) +
                  R"(","mark":")" + mark + R"(","boxes":"deep, x, )" + supers +
                  R"(","origin":"overwintered"})" + "\n" +
                  R"({"do":"write-line","on":"2027-07-25","hive":")" + mark + R"(","line":"e s)" +
                  stores + "\"}\n";
    };
    hive("Hill", "H1", "medium M01 9, medium M02 9", "8");
    hive("Hill", "H2", "medium M03 9", "6.4");
    hive("Hill", "H3", "medium M04 9", "8");
    hive("Hill", "H4", "medium M05 9, medium M06 9", "8");
    hive("Creek", "C1", "medium M07 9", "6.4");
    hive("Creek", "C2", "medium M08 9", "8");
    hive("Creek", "C3", "medium M09 9", "8");
    hive("Creek", "C4", "medium M10 9", "8");
    const auto look = [&](const char* on, const char* box, const char* contents) {
        script += R"({"do":"look-box","on":")" + std::string(on) + R"(","box":")" + box +
                  R"(","contents":")" + contents + "\"}\n";
    };
    look("2027-07-25", "M01", "9 drawn; 8 capped, 90 % full");
    look("2027-07-25", "M02", "9 drawn; 6.5 capped, 80 % full");
    look("2027-07-25", "M03", "9 drawn; 9 capped, 100 % full");
    look("2027-07-25", "M04", "9 drawn; 9 capped, 95 % full");
    look("2027-07-25", "M05", "9 drawn; 9 capped, 90 % full");
    look("2027-07-25", "M07", "9 drawn; 9 capped, 50 % full");
    look("2027-06-20", "M08", "9 drawn; 9 capped, 90 % full");
    look("2027-07-20", "M09", "9 drawn; 9 capped, 90 % full");
    look("2027-07-25", "M10", "9 drawn; 9 capped, 90 % full");
    return script +
           R"({"do":"move-box","on":"2027-07-26","box":"M09","to":"storeroom"}
{"do":"move-box","on":"2027-07-27","box":"M09","to":"on hive","hive":"C3"}
{"do":"hold-back","on":"2027-05-20","box":"M04","reason":"treated while on"}
{"do":"hold-back","on":"2027-05-20","hive":"C4","reason":"suspected disease"}
)";
}

}  // namespace combwright::test
