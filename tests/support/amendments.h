// Amendments in tests: a record, what is set in it, and the reason; two hives of a yard to amend.
#pragma once

#include <gtest/gtest.h>

#include "core/actions/amend/amend.h"
#include "core/places/yard/yard_sheet.h"
#include "tests/support/deeds.h"

namespace combwright::test {

class Amended : public DeedsTest {
  protected:
    /// "record":… and "set":{…}, amended in November.
    static std::string amend(const std::string& record, const std::string& set,
                             const char* on = "2027-11-20") {
        return R"({"do":"amend","on":")" + std::string(on) + R"(",)" + record + R"(,"set":{)" +
               set + R"(},"why":"misread"})";
    }
    template <class Record>
    Record only() const {
        const auto all = file().all<Record>();
        EXPECT_EQ(all.size(), 1U);
        return all.back();
    }
    std::size_t steps() const { return season.history().size(); }
    /// The season played from its own journal holds the same.
    void expectReplays() {
        auto copy = Season::create(path("copy.combwright"), clock);
        ASSERT_TRUE(copy);
        playAll(*copy, scriptOf(season));
        EXPECT_EQ(copy->dump(), season.dump());
    }
};

class AmendedYard : public Amended {
  protected:
    void SetUp() override {
        done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill","usual_super":"medium"}
{"do":"add-yard","on":"2027-04-01","yard_name":"Creek"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H1","boxes":"deep D1, x, medium M1 9 drawn","origin":"swarm","tare_g":9000}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H2","boxes":"deep D2, x","origin":"split","mother":"H1"}
{"do":"add-boxes","on":"2027-04-10","kind":"medium","first_mark":"S1","count":3,"stack":"shelf"}
{"do":"write-line","on":"2027-06-01","hive":"H1","line":"e b7 s3 +1 w4/300 cross"})");
    }
    static std::string yard(const std::string& set) { return amend(R"("yard":"Hill")", set); }
    static std::string hiveOf(const char* mark, const std::string& set) {
        return amend(R"("hive":")" + std::string(mark) + '"', set);
    }
    static std::string colonyOf(const char* mark, const std::string& set) {
        return amend(R"("colony":{"hive":")" + std::string(mark) + "\"}", set);
    }
    static std::string look(const std::string& set, const char* mark = "H1",
                            const char* day = "2027-06-01") {
        return amend(
            R"("inspection":{"hive":")" + std::string(mark) + R"(","inspection":")" + day + "\"}",
            set);
    }
    static std::string visit(const std::string& set, const char* day = "2027-06-01") {
        return amend(R"("visit":{"yard":"Hill","visit":")" + std::string(day) + "\"}", set);
    }
    Inspection inspection() const { return file().all<Inspection>().front(); }
    YardSheetRow row(const char* on = "2027-06-01") const {
        return yardSheet(file(), file().all<Yard>().front().id, day(on)).rows.front();
    }
};

}  // namespace combwright::test
