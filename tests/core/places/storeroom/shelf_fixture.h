// A shed in winter, for the tests of the freezer, of combs in danger and of wet boxes.
#pragma once

#include <functional>

#include "core/model/frames/frame.h"
#include "core/model/storeroom/equipment.h"
#include "tests/support/support.h"

namespace combwright::test {

class ShelfTest : public SeasonTest {
  protected:
    /// Writes past the actions, what others of them do.
    static void write(Season& season, const std::function<void(Write&)>& deed) {
        const auto done =
            season.perform(StepInfo{"test", "{}", {}, {}}, [&](Write& file) -> Result<void> {
                deed(file);
                return {};
            });
        ASSERT_TRUE(done);
    }
    static Box box(const Season& season, const char* mark) {
        return season.read().first<Box>({is("mark", std::string(mark))}).value();
    }
    static std::vector<Frame> frames(const Season& season, const char* mark) {
        return season.read().where<Frame>({is("box", box(season, mark).id)});
    }
    /// The first `many` frames of a box that bear no verdict yet get one, and faults.
    static void judge(Season& season, const char* mark, int many, Verdict verdict,
                      const char* faults = "") {
        write(season, [&](Write& file) {
            for (Frame& frame : file.where<Frame>({is("box", box(season, mark).id)})) {
                if (many == 0) break;
                if (frame.verdict) continue;
                frame.verdict = verdict;
                frame.faults = faults;
                file.change(frame);
                --many;
            }
        });
        ASSERT_EQ(many, 0);
    }
    static FrameKind kindOf(const Season& season, const char* mark) {
        return season.read().find(frames(season, mark).front().kind).value();
    }
    /// A freezer of so many litres, or that holds so many frames of that box's kind.
    static void addFreezer(Season& season, std::optional<int> litres, std::optional<int> holds = {},
                           const char* like = nullptr, const char* name = "chest") {
        write(season, [&](Write& file) {
            Equipment freezer;
            freezer.item = EquipmentItem::Freezer;
            freezer.name = name;
            freezer.onHand = Count(1);
            if (litres) freezer.litres = Count(*litres);
            if (holds) freezer.holds = Count(*holds);
            if (like) freezer.frameKind = kindOf(season, like).id;
            freezer.since = day("2027-01-01");
            file.add(freezer);
        });
    }
    static std::size_t frozen(const Season& season, const char* mark) {
        std::size_t many = 0;
        for (const Frame& frame : frames(season, mark)) many += frame.frozen.has_value();
        return many;
    }
    /// The refusal of a line; fails where it was done.
    static Refusal refused(Season& season, const std::string& line) {
        const PlayResult result = play(season, line);
        if (!result.stopped) {
            ADD_FAILURE() << "done: " << line;
            return Refusal{Code::NothingToDo, {}};
        }
        return result.stopped->refusal;
    }
};

}  // namespace combwright::test
