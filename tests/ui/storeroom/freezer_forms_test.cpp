// Rounds of the freezer by its forms, by keyboard.
#include "ui/storeroom/freezer_forms.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/actions/storeroom/equipment.h"
#include "core/places/storeroom/freezer.h"
#include "tests/ui/storeroom/form_hands.h"

namespace combwright {
namespace {

using testing::HasSubstr;

class FreezerForms : public test::FormTest {
  protected:
    void addChest(int litres) {
        DescribeEquipment chest;
        chest.on = test::day("2027-10-01");
        chest.item = EquipmentItem::Freezer;
        chest.called = "chest";
        chest.litres = Count(litres);
        ASSERT_TRUE(session.run(chest));
    }
    static std::string outlook(QDialog& form) {
        return form.findChild<QLabel*>(QStringLiteral("outlook"))->text().toStdString();
    }
    std::size_t frozenOf(const char* mark) const {
        std::size_t many = 0;
        for (const Frame& each : framesOf(mark)) many += each.frozen.has_value();
        return many;
    }
};

TEST_F(FreezerForms, AskForAFreezerFirstThenTheFirstRoundStandsThere) {
    inForm([&](QDialog& form) {
        EXPECT_EQ(form.focusWidget()->objectName(), QStringLiteral("called"));
        QTest::keyClicks(form.focusWidget(), QStringLiteral("chest"));
        enter(form);
        EXPECT_THAT(reason(form).toStdString(), HasSubstr("litres"));
        EXPECT_EQ(form.focusWidget()->objectName(), QStringLiteral("litres"));
        QTest::keyClicks(form.focusWidget(), QStringLiteral("60"));
        fill(form, "coldest", "cold");
        enter(form);
        EXPECT_THAT(reason(form).toStdString(), HasSubstr("\"cold\" is no temperature"));
        fill(form, "coldest", "-20");
        expectReachable(form);
        inForm([&](QDialog& next) {
            const FreezerLane lane = freezerLane(read(), today);
            EXPECT_EQ(next.focusWidget()->objectName(), QStringLiteral("boxes"));
            const auto* boxes = next.findChild<QLineEdit*>(QStringLiteral("boxes"));
            std::string typed;
            for (const FreezerFrames& each : lane.next.rounds.front().loads)
                typed +=
                    (typed.empty() ? "" : ", ") + each.name + " " + std::to_string(each.frames);
            EXPECT_EQ(boxes->text().toStdString(), typed);
            EXPECT_FALSE(typed.empty());
            EXPECT_THAT(outlook(next), HasSubstr("Cold enough"));
            fill(next, "temperature", "0");
            EXPECT_THAT(outlook(next), HasSubstr("nothing is killed"));
            fill(next, "temperature", "-18");
            fill(next, "hours", "2");
            EXPECT_THAT(outlook(next), HasSubstr("Not long enough"));
            fill(next, "hours", "48");
            choose(next, "measured", QStringLiteral("a thermometer inside"));
            expectReachable(next);
            enter(next);
        });
        enter(form);
    });
    EXPECT_TRUE(askToFreeze(window.get(), session, today));
    const auto rounds = read().all<FreezerRound>();
    ASSERT_EQ(rounds.size(), 1U);
    EXPECT_EQ(rounds.front().hours, Count(48));
    EXPECT_EQ(rounds.front().measured, true);
    EXPECT_EQ(rounds.front().temperature, Temperature::tenths(-180));
}

TEST_F(FreezerForms, OfferThatKindsShareARound) {
    addChest(90);
    playAll(session.season(),
            R"({"do":"review-box","on":"2028-01-09","box":"M13","contents":"9 L"})");
    ASSERT_TRUE(freezerLane(read(), today).shared) << "deeps and mediums share the last round";
    inForm([&](QDialog& form) {
        auto* plan = form.findChild<QComboBox*>(QStringLiteral("plan"));
        ASSERT_NE(plan, nullptr);
        EXPECT_EQ(form.focusWidget(), plan);
        const auto* boxes = form.findChild<QLineEdit*>(QStringLiteral("boxes"));
        QTest::keyClick(plan, Qt::Key_Down);
        std::string typed;
        const FreezerLane lane = freezerLane(read(), today);
        for (const FreezerFrames& each : lane.shared->rounds.front().loads)
            typed += (typed.empty() ? "" : ", ") + each.name + " " + std::to_string(each.frames);
        EXPECT_EQ(boxes->text().toStdString(), typed);
        fill(form, "boxes", "D99 4");
        enter(form);
        EXPECT_THAT(reason(form).toStdString(), HasSubstr("D99"));
        QTest::keyClick(&form, Qt::Key_Escape);
    });
    EXPECT_FALSE(askToFreeze(window.get(), session, today));
    EXPECT_TRUE(read().all<FreezerRound>().empty());
}

TEST_F(FreezerForms, SayWhatTakingOutComesTo) {
    EXPECT_FALSE(askToTakeOut(window.get(), session, today)) << "nothing is in";
    EXPECT_THAT(session.lastTold().toStdString(), HasSubstr("Nothing is in the freezer"));
    addChest(90);
    inForm([&](QDialog& form) {
        fill(form, "boxes", "D11 10");
        enter(form);
    });
    ASSERT_TRUE(askToFreeze(window.get(), session, today));
    inForm([&](QDialog& form) {
        EXPECT_EQ(form.focusWidget()->objectName(), QStringLiteral("round"));
        EXPECT_THAT(outlook(form), HasSubstr("wait again"));
        QTest::keyClick(&form, Qt::Key_Escape);
    });
    EXPECT_FALSE(askToTakeOut(window.get(), session, today));
    clock.set("2028-01-12");
    inForm([&](QDialog& form) {
        EXPECT_THAT(outlook(form), HasSubstr("Its 10 frames count as frozen"));
        enter(form);
    });
    EXPECT_TRUE(askToTakeOut(window.get(), session, test::day("2028-01-12")));
    EXPECT_EQ(frozenOf("D11"), 10U);
    inForm([&](QDialog& form) {
        enter(form);
        EXPECT_THAT(reason(form).toStdString(), HasSubstr("what happened"));
        QTest::keyClicks(form.focusWidget(), QStringLiteral("opened"));
        enter(form);
    });
    EXPECT_TRUE(askToSpoil(window.get(), session, QStringLiteral("D11"), test::day("2028-01-12")));
    EXPECT_EQ(frozenOf("D11"), 0U);
}

TEST_F(FreezerForms, LooseFramesOfThePlanAreReadBackAsTheyStand) {
    addChest(90);
    playAll(session.season(),
            R"({"do":"freeze-frames","on":"2028-01-06","boxes":"D11, D12 5"}
{"do":"take-out-frozen","on":"2028-01-08"}
{"do":"freeze-frames","on":"2028-01-08","boxes":"D12 5"}
{"do":"take-out-frozen","on":"2028-01-10"}
{"do":"add-frames","on":"2028-01-09","frame_kind":"LANG-F-DEEP","count":4,"comb":"drawn"})");
    inForm([&](QDialog& form) {
        EXPECT_EQ(form.findChild<QLineEdit*>(QStringLiteral("boxes"))->text(),
                  QStringLiteral("loose LANG-F-DEEP 4"));
        enter(form);
    });
    EXPECT_TRUE(askToFreeze(window.get(), session, today));
    EXPECT_EQ(freezerLane(read(), today).in.size(), 1U);
}

TEST_F(FreezerForms, TheGreyTemperatureIsTheOneReckonedWith) {
    addChest(90);
    playAll(
        session.season(),
        R"({"do":"describe-equipment","on":"2027-10-02","item":"freezer","name":"chest","coldest_c":-21})");
    inForm([&](QDialog& form) {
        const auto* degrees = form.findChild<QLineEdit*>(QStringLiteral("temperature"));
        EXPECT_THAT(degrees->placeholderText().toStdString(), HasSubstr("21"));
        EXPECT_THAT(outlook(form), testing::AllOf(HasSubstr("21"), HasSubstr("nobody measured"),
                                                  testing::Not(HasSubstr("(measured)"))));
        fill(form, "temperature", "-19");
        EXPECT_THAT(outlook(form), HasSubstr("by the dial"));
        QTest::keyClick(&form, Qt::Key_Escape);
    });
    EXPECT_FALSE(askToFreeze(window.get(), session, today));
}

TEST_F(FreezerForms, AFreezerKnowsWhatItTakesOfEachKind) {
    addChest(90);
    const auto chest = [&] { return freezerLane(read(), today).freezers.front(); };
    for (const char* many : {"16", "10"}) {
        const QString kind = many[1] == '6' ? QStringLiteral("medium") : QStringLiteral("deep");
        inForm([&](QDialog& form) {
            auto* kinds = form.findChild<QComboBox*>(QStringLiteral("frame_kind"));
            EXPECT_TRUE(kinds->isEnabled());
            kinds->setCurrentIndex(kinds->findText(kind, Qt::MatchContains));
            ASSERT_GT(kinds->currentIndex(), 0);
            fill(form, "holds", many);
            enter(form);
        });
        ASSERT_TRUE(askToDescribeFreezer(window.get(), session, chest(), today));
    }
    EXPECT_EQ(freezerLane(read(), today).freezers.size(), 1U);
    std::vector<std::int64_t> holds;
    for (const Equipment& each : read().all<Equipment>())
        if (each.holds) holds.push_back(each.holds->value());
    EXPECT_EQ(holds, (std::vector<std::int64_t>{16, 10}));
}

}  // namespace
}  // namespace combwright
