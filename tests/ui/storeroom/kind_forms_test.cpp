// Home-made kinds measured, comb set out in the open, and a dead colony's card, by keyboard.
#include "ui/storeroom/kind_forms.h"

#include <gtest/gtest.h>

#include "core/model/storeroom/dead_out.h"
#include "tests/ui/storeroom/form_hands.h"
#include "ui/storeroom/dead_out_form.h"

namespace combwright {
namespace {

class KindForms : public test::FormTest {};

TEST_F(KindForms, AHomeMadeBoxIsMeasuredAndWhatIsLeftOutStaysUnknown) {
    inForm([&](QDialog& form) {
        fill(form, "called", "old hive");
        fill(form, "frames", "9");
        fill(form, "height", "0");
        enter(form);
        EXPECT_TRUE(form.isVisible()) << "a box of no height is a slip";
        fill(form, "height", "240 mm");
        enter(form);
    });
    EXPECT_TRUE(askToMeasureBox(window.get(), session, today));
    const auto kind = session.read().first<BoxKind>({is("name", std::string("old hive"))});
    ASSERT_TRUE(kind);
    EXPECT_EQ(kind->outerHeight, Length::mm(240));
    EXPECT_EQ(kind->framesNominal, Count(9));
    EXPECT_FALSE(kind->innerWidth);
}

TEST_F(KindForms, AFrameNeedsANameOnly) {
    inForm([&](QDialog& form) {
        enter(form);
        EXPECT_TRUE(form.isVisible()) << "without a name it could not be chosen";
        fill(form, "called", "old frame");
        enter(form);
    });
    EXPECT_TRUE(askToMeasureFrame(window.get(), session, today));
    EXPECT_TRUE(session.read().first<FrameKind>({is("name", std::string("old frame"))}));
}

TEST_F(KindForms, CombSetOutIsWrittenDownAndTakenIn) {
    inForm([&](QDialog& form) {
        fill(form, "boxes", "M11");
        enter(form);
    });
    EXPECT_TRUE(askToSetOut(window.get(), session, {}, today));
    ASSERT_EQ(session.read().all<SetOut>().size(), 1U);
    inForm([&](QDialog& form) {
        choose(form, "what", QStringLiteral("take in"));
        enter(form);
    });
    EXPECT_TRUE(askToSetOut(window.get(), session, {}, today));
    EXPECT_EQ(session.read().all<SetOut>().front().takenIn, today);
}

TEST_F(KindForms, ADeadColonysCardFreesItsCombsOnlyWhenDiseaseWasLookedFor) {
    const auto hive = session.read().all<Hive>().front();
    {
        QString line =
            QStringLiteral(
                R"({"do":"end-colony","on":"2028-01-09","hive":"%1","ending":"winter loss"})")
                .arg(QString::fromStdString(hive.mark.text()));
        ASSERT_TRUE(play(session.season(), line.toStdString()).stopped == std::nullopt);
    }
    inForm([&](QDialog& form) {
        choose(form, "cluster", QStringLiteral("heads in cells"));
        choose(form, "ropy", QStringLiteral("no"));
        enter(form);
        EXPECT_TRUE(deadOuts(session.read(), today).front().hold) << "scale was not looked for";
        choose(form, "scale", QStringLiteral("no"));
        fill(form, "cause", "starved");
        fill(form, "by", "me");
        enter(form);
        EXPECT_FALSE(deadOuts(session.read(), today).front().hold)
            << session.lastTold().toStdString() << reason(form).toStdString()
            << form.findChild<QLabel*>(QStringLiteral("reading"))->text().toStdString();
        form.reject();
    });
    EXPECT_TRUE(askAboutDeadOuts(window.get(), session, today));
    inForm([&](QDialog& form) {
        choose(form, "ropy", QStringLiteral("yes"));
        enter(form);
        EXPECT_TRUE(form.findChild<QLabel*>(QStringLiteral("reading"))
                        ->text()
                        .contains(QStringLiteral("inspector")));
        form.reject();
    });
    EXPECT_TRUE(askAboutDeadOuts(window.get(), session, today));
    EXPECT_EQ(deadOuts(session.read(), today).front().hold->why, HoldWhy::SuspectedDisease);
}

}  // namespace
}  // namespace combwright
