// Work on frames by the forms of the storeroom, by keyboard.
#include "ui/storeroom/frame_forms.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "core/model/storeroom/review.h"
#include "tests/ui/storeroom/form_hands.h"

namespace combwright {
namespace {

using testing::HasSubstr;

class FrameForms : public test::FormTest {
  protected:
    static QLabel* label(QDialog& form, const char* name) {
        return form.findChild<QLabel*>(QLatin1String(name));
    }
    static bool isShown(QDialog& form, const char* name) {
        return form.findChild<QWidget*>(QLatin1String(name))->isVisible();
    }
};

TEST_F(FrameForms, SayWhatWaitsAndTickIt) {
    inForm([&](QDialog& form) {
        EXPECT_EQ(form.focusWidget()->objectName(), QStringLiteral("work"));
        EXPECT_THAT(label(form, "waits")->text().toStdString(), HasSubstr("2 "));
        EXPECT_THAT(label(form, "waits")->text().toStdString(), HasSubstr("M11 2"));
        EXPECT_TRUE(isShown(form, "comb"));
        EXPECT_THAT(form.findChild<QComboBox*>(QStringLiteral("comb"))->currentText().toStdString(),
                    HasSubstr("bare wood"))
            << "the likely answer first";
        EXPECT_FALSE(isShown(form, "clean"));
        expectReachable(form);
        choose(form, "comb", QStringLiteral("drawn"));
        enter(form);
    });
    EXPECT_TRUE(askToWorkFrames(window.get(), session, FrameWork::Repaired, {}, today));
    for (const Frame& frame : framesOf("M11"))
        EXPECT_NE(frame.verdict, Verdict::Repair) << "ticked";
    EXPECT_EQ(session.lastTold(), QStringLiteral("2 frames repaired."));
}

TEST_F(FrameForms, WeighTheWaxOfThePotAndCaution) {
    inForm([&](QDialog& form) {
        EXPECT_THAT(label(form, "caution")->text().toStdString(), HasSubstr("over water"));
        EXPECT_THAT(label(form, "caution")->text().toStdString(),
                    HasSubstr("never leave it alone"));
        EXPECT_THAT(label(form, "caution")->text().toStdString(), HasSubstr("suspected disease"));
        fill(form, "clean", "a lot");
        enter(form);
        EXPECT_THAT(reason(form).toStdString(), HasSubstr("\"a lot\" is no weight"));
        EXPECT_EQ(form.focusWidget()->objectName(), QStringLiteral("clean")) << "it stays typed";
        fill(form, "clean", "60 g");
        enter(form);
    });
    EXPECT_TRUE(
        askToWorkFrames(window.get(), session, FrameWork::Melted, QStringLiteral("M11"), today));
    const auto wax = read().all<RawWax>();
    const auto melted = std::find_if(wax.begin(), wax.end(), [](const RawWax& each) {
        return each.source == RawWaxSource::OldComb;
    });
    ASSERT_NE(melted, wax.end());
    EXPECT_EQ(melted->clean->value, Mass::grams(60));
    EXPECT_EQ(melted->clean->how, How::Weighed);
}

TEST_F(FrameForms, RefusedStaysTypedAndEscapeLeaves) {
    const auto before = steps();
    inForm([&](QDialog& form) {
        fill(form, "boxes", "M99");
        enter(form);
        EXPECT_THAT(reason(form).toStdString(), HasSubstr("M99"));
        EXPECT_EQ(form.findChild<QLineEdit*>(QStringLiteral("boxes"))->text(),
                  QStringLiteral("M99"));
        QTest::keyClick(&form, Qt::Key_Escape);
    });
    EXPECT_FALSE(askToWorkFrames(window.get(), session, FrameWork::Scraped, {}, today));
    EXPECT_EQ(steps(), before);
}

TEST_F(FrameForms, AVerdictIsGivenByItsDigit) {
    inForm([&](QDialog& form) {
        QTest::keyClick(form.focusWidget(), Qt::Key_6);  // melt
        fill(form, "seen", "P");
        fill(form, "how_many", "1");
        expectReachable(form);
        enter(form);
    });
    EXPECT_TRUE(askToJudge(window.get(), session, Verdict::Keep, QStringLiteral("M12"), today));
    const auto frames = framesOf("M12");
    EXPECT_EQ(std::count_if(frames.begin(), frames.end(),
                            [](const Frame& each) { return each.verdict == Verdict::Melt; }),
              1);
    EXPECT_EQ(session.lastTold(), QStringLiteral("1 frame: melt from now on."));
}

TEST_F(FrameForms, FramesComeAndGo) {
    inForm([&](QDialog& form) {
        enter(form);
        EXPECT_FALSE(reason(form).isEmpty()) << "nobody said how many";
        fill(form, "count", "4");
        choose(form, "comb", QStringLiteral("foundation"));
        fill(form, "stack", "3");
        expectReachable(form);
        enter(form);
    });
    EXPECT_TRUE(askToAddFrames(window.get(), session, {}, today));
    const auto loose = [this] {
        return read().where<Frame>({isUnknown("box"), isUnknown("retired")});
    };
    ASSERT_EQ(loose().size(), 4U);
    EXPECT_EQ(loose().front().comb, Comb::Foundation);
    EXPECT_EQ(loose().front().stack, "3");
    inForm([&](QDialog& form) {
        EXPECT_EQ(form.focusWidget()->objectName(), QStringLiteral("how_many"));
        QTest::keyClicks(form.focusWidget(), QStringLiteral("3"));
        fill(form, "to_stack", "4");
        expectReachable(form);
        enter(form);
    });
    EXPECT_TRUE(askToMoveFrames(window.get(), session, QStringLiteral("M13"), today));
    EXPECT_EQ(framesOf("M13").size(), 6U);
    EXPECT_EQ(loose().size(), 7U);
}

TEST_F(FrameForms, BoxesAreMendedAndPainted) {
    inForm([&](QDialog& form) {
        EXPECT_EQ(form.focusWidget()->objectName(), QStringLiteral("boxes"));
        choose(form, "condition", QStringLiteral("as it is"));
        enter(form);
        EXPECT_FALSE(reason(form).isEmpty()) << "neither wood nor paint";
        choose(form, "wants_paint", QStringLiteral("wants paint"));
        expectReachable(form);
        enter(form);
    });
    EXPECT_TRUE(askToMendBoxes(window.get(), session, QStringLiteral("M11, M12"), today));
    EXPECT_EQ(box("M12").wantsPaint, true);
    EXPECT_EQ(box("M13").wantsPaint, std::nullopt);
}

}  // namespace
}  // namespace combwright
