// Frames in boxes of the file. Gaps against the worked examples of the equipment notes (1.4): a
// shallow frame in a medium box leaves 31.75 mm, a medium in a deep 85.73, a deep in a medium none.
// The file keeps tenths of a millimetre, so up to 0.3 mm off the inch.
#include "core/places/storeroom/box_fit.h"

#include <algorithm>

#include "tests/support/deeds.h"

namespace combwright {
namespace {

class BoxFit : public test::DeedsTest {
  protected:
    FitTable tableOf(const char* code) {
        const auto kind = file().first<BoxKind>({is("code", std::string(code))});
        return fitTable(file(), *kind);
    }
    static const FitRow& row(const FitTable& table, std::string_view code) {
        const auto found =
            std::find_if(table.rows.begin(), table.rows.end(),
                         [&](const FitRow& each) { return each.frame.code.text() == code; });
        EXPECT_NE(found, table.rows.end()) << code;
        return *found;
    }
};

TEST_F(BoxFit, PutsWhatTheBoxIsMadeForFirstAndWhatDoesNotHangLast) {
    const FitTable table = tableOf("LANG10-MED");
    ASSERT_FALSE(table.rows.empty());
    EXPECT_EQ(table.rows.front().frame.code.text(), "LANG-F-MED");
    EXPECT_EQ(table.frames, 10);
    EXPECT_FALSE(table.rows.back().hangs());
    const auto broken = std::is_partitioned(table.rows.begin(), table.rows.end(),
                                            [](const FitRow& each) { return each.hangs(); });
    EXPECT_TRUE(broken);
}

TEST_F(BoxFit, HasTheGapsOfTheWorkedExamples) {
    const FitTable medium = tableOf("LANG10-MED");
    EXPECT_NEAR(*row(medium, "LANG-F-MED").fit->gapMm, 9.53, 0.3);
    EXPECT_EQ(row(medium, "LANG-F-MED").fit->verdict, GapVerdict::Passage);
    EXPECT_NEAR(*row(medium, "LANG-F-SHAL").fit->gapMm, 31.75, 0.3);
    EXPECT_EQ(row(medium, "LANG-F-SHAL").fit->verdict, GapVerdict::BurrComb);
    EXPECT_EQ(row(medium, "LANG-F-DEEP").fit->misfit, Misfit::TooTall);
    const FitTable deep = tableOf("LANG10-DEEP");
    EXPECT_NEAR(*row(deep, "LANG-F-MED").fit->gapMm, 85.73, 0.3);
    EXPECT_EQ(row(deep, "LANG-F-DEEP").fit->verdict, GapVerdict::WideButUsual);
}

TEST_F(BoxFit, TellsAShortFrameInADeepBoxBeforeItBecomesBurrComb) {
    done(
        R"({"do":"add-boxes","on":"2027-11-02","kind":"medium","first_mark":"M1","contents":"7 drawn"})");
    EXPECT_TRUE(mixedBoxes(file()).empty());
    done(
        R"({"do":"add-frames","on":"2027-11-02","frame_kind":"LANG-F-SHAL","count":2,"comb":"drawn","box":"M1"})");
    const auto mixed = mixedBoxes(file());
    ASSERT_EQ(mixed.size(), 1U);
    EXPECT_EQ(mixed.front().name, "M1");
    EXPECT_EQ(mixed.front().frames, 2);
    EXPECT_TRUE(fitText(mixed.front().row).contains(QStringLiteral("build comb")))
        << fitText(mixed.front().row).toStdString();
}

TEST_F(BoxFit, OfABoxNobodyMeasuredIsNotKnown) {
    done(R"({"do":"measure-box-kind","on":"2027-11-01","called":"grandfather's"})");
    const FitTable table = tableOf("grandfather's");
    EXPECT_FALSE(row(table, "LANG-F-MED").fit);
    EXPECT_TRUE(fitText(row(table, "LANG-F-MED")).contains(QStringLiteral("never measured")));
}

}  // namespace
}  // namespace combwright
