// Deeds on a season of the test's own: a line that must be kept, a line that must be refused and
// leave no trace, and what stands where afterwards.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/model/frames/box.h"
#include "core/storage/audit.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/yards.h"
#include "core/words/words.h"
#include "tests/support/support.h"

namespace combwright::test {

class DeedsTest : public SeasonTest {
  protected:
    Season season = newSeason();

    void done(std::string_view script) { playAll(season, script); }
    /// "kept", or the refusal's code and field; what was refused must have left no trace.
    std::string outcome(std::string_view line) {
        const std::string before = season.dump();
        const PlayResult result = play(season, line);
        if (!result.stopped) return "kept";
        EXPECT_EQ(season.dump(), before) << "refused, yet something was kept: " << line;
        const Refusal& refusal = result.stopped->refusal;
        return std::string(key(refusal.code)) + " " + refusal.field;
    }
    /// The refusal's code alone.
    std::string code(std::string_view line) {
        const std::string said = outcome(line);
        return said.substr(0, said.find(' '));
    }
    std::string refusalValue(std::string_view line, std::string_view value) {
        const PlayResult result = play(season, line);
        return result.stopped ? std::string(result.stopped->refusal.value(value)) : "kept";
    }

    /// What the person is told of a line that is refused.
    QString told(std::string_view line) {
        const PlayResult result = play(season, line);
        return result.stopped ? sentence(result.stopped->refusal) : QString();
    }

    const Read& file() const { return season.read(); }
    Id<Hive> hive(const char* mark, const char* on = "2027-06-01") const {
        return {*findNamed(file(), Hive::table, NameQuery{.name = mark, .on = day(on)})};
    }
    Box box(const char* mark) const {
        return *file().find(
            Id<Box>{*findNamed(file(), Box::table, NameQuery{.name = mark, .on = clock.today()})});
    }
    /// Marks on a hive from the floor up, "-" for none: "D1 M1 M2". Levels must have no gap.
    std::string stack(Id<Hive> id) const {
        std::string marks;
        std::int64_t level = 0;
        for (const Box& each : boxesOn(file(), id)) {
            EXPECT_EQ(each.level, Count(level++)) << "box " << each.mark;
            marks += (marks.empty() ? "" : " ") + (each.mark.empty() ? "-" : each.mark);
        }
        return marks;
    }
    std::string stack(const char* mark) const { return stack(hive(mark)); }
    /// Marks of a yard's hives in walking order: "H1 H2". Places must have no gap.
    std::string walk(const char* yard) const {
        const auto found =
            findNamed(file(), Yard::table, NameQuery{.name = yard, .on = clock.today()});
        std::string marks;
        std::int64_t place = 0;
        for (const Hive& each : openHives(file(), Id<Yard>{*found})) {
            EXPECT_EQ(each.standOrder, Count(++place)) << "hive " << each.mark.text();
            marks += (marks.empty() ? "" : " ") + each.mark.text();
        }
        return marks;
    }
    std::size_t movesOf(const char* mark) const {
        return file().where<BoxMove>({is("box", box(mark).id)}).size();
    }
    void expectClean() const {
        for (const AuditFinding& finding : audit(file()))
            ADD_FAILURE() << finding.about << ": " << finding.says;
    }
};

}  // namespace combwright::test
