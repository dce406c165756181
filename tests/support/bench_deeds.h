// Boxes on the bench, for tests: what is in a box in short, and lines of the storeroom's actions.
#pragma once

#include <map>
#include <string>

#include "core/model/storeroom/equipment.h"
#include "core/model/storeroom/review.h"
#include "core/places/questions/questions.h"
#include "core/places/storeroom/bench.h"
#include "core/places/storeroom/frame_ledger.h"
#include "tests/support/deeds.h"

namespace combwright::test {

class BenchTest : public DeedsTest {
  protected:
    static std::string line(const std::string& verb, const char* on, const std::string& more) {
        return R"({"do":")" + verb + R"(","on":")" + on + "\"," + more + "}";
    }
    static std::string review(const char* mark, const std::string& contents,
                              const char* on = "2027-11-18", const std::string& more = {}) {
        return line("review-box", on,
                    R"("box":")" + std::string(mark) + R"(","contents":")" + contents + '"' + more);
    }
    static std::string work(const char* what, const std::string& more = {},
                            const char* on = "2027-12-01") {
        return line("work-frames", on, R"("work":")" + std::string(what) + '"' + more);
    }
    /// "7 drawn keep, 1 drawn W refit": frames in use of a box, or the loose ones.
    std::string frames(const char* mark) const {
        return mark ? inShort(file().where<Frame>({is("box", box(mark).id)}))
                    : inShort(file().where<Frame>({isUnknown("box")}));
    }
    static std::string inShort(const std::vector<Frame>& all) {
        std::map<std::string, int> classes;
        for (const Frame& frame : all) {
            if (frame.retired) continue;
            std::string said = frame.comb ? std::string(word(*frame.comb)) : "?";
            if (!frame.faults.empty()) said += " " + frame.faults;
            if (frame.verdict) said += " " + std::string(word(*frame.verdict));
            if (frame.position) said += " at " + std::to_string(frame.position->value());
            ++classes[said];
        }
        std::string text;
        for (const auto& [said, n] : classes)
            text += (text.empty() ? "" : ", ") + std::to_string(n) + " " + said;
        return text;
    }
    /// "in 27 = 24 + 1 melted + 0 burnt + 0 sold + 2 missing", and those gone where there are any.
    std::string ledger() const {
        const FrameLedger all = frameLedger(file());
        EXPECT_TRUE(all.conserved());
        const FrameLedgerRow& t = all.total;
        const auto n = [](int number) { return std::to_string(number); };
        return "in " + n(t.in) + " = " + n(t.kept) + " + " + n(t.melted) + " melted + " +
               n(t.burnt) + " burnt + " + n(t.sold) + " sold + " + n(t.missing) + " missing" +
               (t.gone > 0 ? " + " + n(t.gone) + " gone" : "");
    }
    /// What the last step that was kept makes one ask: "frames_differ two_depths".
    std::string asked(const std::string& script) {
        season.onChange([this](const Change& told) { m_told = told; });
        done(script);
        std::string keys;
        for (const Question& question : questionsAfter(file(), m_told, clock.today()))
            keys += (keys.empty() ? "" : " ") + std::string(key(question.asked));
        return keys;
    }
    BoxReview lastReview(const char* mark) const {
        return file().where<BoxReview>({is("box", box(mark).id)}).back();
    }

  private:
    Change m_told;
};

}  // namespace combwright::test
