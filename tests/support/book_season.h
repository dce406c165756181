// Three years of two yards for the season book: 2025 noted from paper, 2026 and 2027 with runs of
// weighed boxes. All numbers are invented.
#pragma once

#include <string>

namespace combwright::test {

inline std::string bookLine(const std::string& what, const std::string& on,
                            const std::string& rest) {
    return R"({"do":")" + what + R"(","on":")" + on + "\"," + rest + "}\n";
}

/// Hill with H1 to H3, Creek with C1 and C2, each with a medium of nine frames.
inline std::string bookYards() {
    std::string script;
    for (const char* yard : {"Hill", "Creek"})
        script += bookLine("add-yard", "2025-04-01", R"("yard_name":")" + std::string(yard) + '"');
    const auto hive = [&](const char* yard, const std::string& mark) {
        script += bookLine("add-hive", "2025-04-01",
                           R"("yard":")" + std::string(yard) + R"(","mark":")" + mark +
                               R"(","boxes":"deep, x, medium )" + mark +
                               R"(a 9 drawn","origin":"overwintered")");
    };
    for (const char* mark : {"H1", "H2", "H3"}) hive("Hill", mark);
    for (const char* mark : {"C1", "C2"}) hive("Creek", mark);
    return script + bookLine("set-constant", "2025-04-01",
                             R"("constant":"full_frame_g LANG-F-MED","value":1600)");
}

/// One box of nine frames from each hive named, 85 % full, 14.4 kg of honey out of each.
inline std::string bookRun(const std::string& run, const std::string& yard, const std::string& on,
                           const std::string& hives, int buckets, int cappings) {
    std::string script =
        bookLine("open-run", on, R"("name":")" + run + R"(","yard":")" + yard + '"');
    const std::string of = R"("run":")" + run + "\",";
    std::size_t at = 0;
    while (at < hives.size()) {
        const std::string mark = hives.substr(at, 2);
        script += bookLine("weigh-box", on,
                           of + R"("box":")" + mark +
                               R"(a","filled_share":0.85,"filled_how":"by eye","gross_g":19500,)" +
                               R"("wet_g":5100)");
        at += 3;
    }
    script += bookLine("spin-load", on, of + R"("spun_min":13,"ran":"smooth")");
    script += bookLine("weigh-cappings", on, of + R"("cappings_g":)" + std::to_string(cappings));
    script += bookLine(
        "fill-bucket", on,
        of + R"("mark":"B","net_g":)" + std::to_string(buckets) + R"(,"water_percent":17.4)");
    script += bookLine("close-run", on, R"("run":")" + run + '"');
    for (at = 0; at < hives.size(); at += 3)
        script += bookLine("move-box", on,
                           R"("box":")" + hives.substr(at, 2) + R"(a","to":"on hive","hive":")" +
                               hives.substr(at, 2) + '"');
    return script;
}

inline std::string bookYears() {
    std::string script = bookYards();
    script += bookLine("note-crop", "2025-10-01",
                       R"("year":2025,"hive":"H1","mass_g":20000,"mass_how":"weighed")");
    script += bookLine("note-crop", "2025-10-01",
                       R"("year":2025,"hive":"H2","mass_g":12000,"mass_how":"by eye")");
    script += bookLine("note-crop", "2025-10-01",
                       R"("year":2025,"yard":"Creek","mass_g":30000,"mass_how":"by eye")");
    script += bookRun("26-1", "Hill", "2026-07-30", "H1 H2", 25000, 3400);
    script += bookRun("26-2", "Creek", "2026-08-10", "C1", 12800, 1500);
    // Paper beside a run: shown, never counted.
    script += bookLine("note-crop", "2026-10-01",
                       R"("year":2026,"hive":"H1","mass_g":13000,"mass_how":"by eye")");
    script += bookRun("27-1", "Hill", "2027-06-24", "H1 H2", 25200, 3000);
    script += bookRun("27-2", "Creek", "2027-08-07", "C1 C2", 25600, 2900);
    script += bookRun("27-3", "Hill", "2027-08-08", "H1 H2 H3", 38000, 4400);
    return script;
}

}  // namespace combwright::test
