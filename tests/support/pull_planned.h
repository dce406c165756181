// The pull reckoned on a season whose numbers can be worked out in one's head, with the limits and
// decisions a test sets.
#pragma once

#include <stdexcept>
#include <string>
#include <vector>

#include "core/places/pull/pull_sheet.h"
#include "tests/support/deeds.h"
#include "tests/support/pull_season.h"

namespace combwright::test {

class PullPlanned : public DeedsTest {
  protected:
    void SetUp() override {
        clock.set(pullDay);
        done(pullSeason());
    }
    PullSheet sheet(const char* on = pullDay) const {
        std::vector<Id<Yard>> yards;
        for (const Yard& yard : openYards(file())) yards.push_back(yard.id);
        return reckonPull(pullInput(file(), day(on), {yards, forDay, limits, forced, supposed}));
    }
    void force(const char* mark, PullVerdict verdict) { forced[box(mark).id.number] = verdict; }

    static const PullHiveRow& hiveIn(const PullSheet& sheet, const char* mark) {
        for (const PullYardRow& yard : sheet.yards)
            for (const PullHiveRow& hive : yard.hives)
                if (hive.hive.mark.text() == mark) return hive;
        throw std::out_of_range(mark);
    }
    static const PullBoxRow& boxIn(const PullSheet& sheet, const char* mark) {
        for (const PullYardRow& yard : sheet.yards)
            for (const PullHiveRow& hive : yard.hives)
                for (const PullBoxRow& box : hive.boxes)
                    if (box.box.mark == mark) return box;
        throw std::out_of_range(mark);
    }
    /// "take", "leave: held", "look first: look first", with "!" where the keeper decided.
    static std::string verdict(const PullSheet& sheet, const char* mark) {
        const PullBoxRow& box = boxIn(sheet, mark);
        std::string said(Choices<PullVerdict>::words[static_cast<std::size_t>(box.verdict)]);
        if (box.why) said += ": " + std::string(key(*box.why));
        return said + (box.forced ? "!" : "");
    }
    /// "M01 M07", in the order the sheet shows them.
    static std::string taken(const PullSheet& sheet) {
        std::string marks;
        for (const PullYardRow& yard : sheet.yards)
            for (const PullHiveRow& hive : yard.hives)
                for (const PullBoxRow& box : hive.boxes)
                    if (box.verdict == PullVerdict::Take)
                        marks += (marks.empty() ? "" : " ") + box.box.mark;
        return marks;
    }

    PlanLimits limits = pullLimits();
    PullForced forced;
    PullSupposed supposed;
    Day forDay = day("2027-08-06");
};

}  // namespace combwright::test
