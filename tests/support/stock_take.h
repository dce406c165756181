// The worked example of an April stock-take: twelve living hives in two yards and two dead ones,
// four splits to come. All numbers are invented; what must follow from them was worked out by hand.
#pragma once

#include <string>

namespace combwright::test {

/// Yards, hives and the shed; both dead hives held back, as nobody has looked them through.
inline std::string stockTakeBefore() {
    std::string script =
        R"({"do":"add-yard","on":"2026-04-01","yard_name":"Orchard","usual_super":"medium"})"
        "\n"
        R"({"do":"add-yard","on":"2026-04-01","yard_name":"Quarry","usual_super":"medium"})"
        "\n";
    const auto hive = [&script](const char* yard, const std::string& mark) {
        script += R"({"do":"add-hive","on":"2026-04-10","yard":")" + std::string(yard) +
                  R"(","mark":")" + mark +
                  R"(","boxes":"deep 10, deep 10","origin":"overwintered"})" + "\n";
    };
    for (int n = 1; n <= 8; ++n) hive("Orchard", "O" + std::to_string(n));
    for (int n = 1; n <= 6; ++n) hive("Quarry", "Q" + std::to_string(n));
    for (const char* dead : {"O8", "Q6"}) {
        script += R"({"do":"hold-back","on":"2027-03-20","hive":")" + std::string(dead) +
                  R"(","reason":"dead-out unexplained"})" + "\n";
        script += R"({"do":"end-colony","on":"2027-03-20","hive":")" + std::string(dead) +
                  R"(","ending":"winter loss"})" + "\n";
    }
    // 33 sound mediums and 2 to repair, in them 262 drawn, 31 on foundation, 24 bare.
    const auto boxes = [&script](const char* first, int count, const char* contents) {
        script += R"({"do":"add-boxes","on":"2026-05-01","kind":"medium","first_mark":")" +
                  std::string(first) + R"(","count":)" + std::to_string(count) +
                  R"(,"contents":")" + contents + R"("})" + "\n";
    };
    boxes("M01", 29, "9 drawn");
    boxes("M30", 1, "1 drawn, 8 foundation");
    boxes("M31", 2, "9 foundation");
    boxes("M33", 1, "5 foundation, 4 bare");
    boxes("M34", 2, "10 bare");
    for (const char* mark : {"M34", "M35"})
        script += R"({"do":"amend","on":"2027-04-05","box":")" + std::string(mark) +
                  R"(","set":{"condition":"needs repair"},"why":"side split"})" + "\n";
    script +=
        R"({"do":"count-equipment","on":"2027-04-05","item":"floor","on_hand":0})"
        "\n"
        R"({"do":"count-equipment","on":"2027-04-05","item":"lid","on_hand":0})"
        "\n"
        R"({"do":"plan-season","on":"2027-04-05","year":2027,"splits":4,"super_kind":"medium",)"
        R"("supers_per_colony":3,"frames_per_super":9,"undrawn_per_super":9,"spare_share":0.1,)"
        R"("brood_kind":"deep","brood_per_split":1,"frames_per_split":10,"frame_pack":10,)"
        R"("foundation_pack":10,"items":"floor 1 1, lid 1 1"})"
        "\n";
    return script;
}

/// Both dead hives looked through: starved, no scale, not ropy. Of their 40 combs 22 keep, 11 are
/// to be melted out of sound wood, 7 are no use.
inline std::string stockTakeDeadOuts() {
    std::string script;
    const auto review = [&script](const char* hive, int place, const char* line) {
        script += R"({"do":"review-box","on":"2027-04-05","box":{"hive":")" + std::string(hive) +
                  R"(","place":)" + std::to_string(place) + R"(},"contents":")" + line + R"("})" +
                  "\n";
    };
    review("O8", 1, "8 keep, 2 refit");
    review("O8", 2, "10 keep");
    review("Q6", 1, "3 refit, 7 burn");
    review("Q6", 2, "4 keep, 6 refit");
    for (const char* hold : {"#1", "#2"})
        script += R"({"do":"release-hold","on":"2027-04-05","hold":")" + std::string(hold) +
                  R"(","lifted_by":"the keeper","grounds":"starved; no scale, not ropy"})" + "\n";
    return script;
}

}  // namespace combwright::test
