// Pouring together by keyboard: the most honey under a line to the gram, by hand with what comes of
// it while one types, and what is refused.
#include "ui/honey_room/blend_form.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/actions/boxes/looks.h"
#include "tests/ui/honey_room/vessel_hands.h"

namespace combwright {
namespace {

using testing::HasSubstr;
using testing::Not;

class PourTogether : public test::VesselTest {
  protected:
    /// The field of a bucket's line.
    std::string pourOf(const char* mark) const {
        return "pour_" + std::to_string(bucket(mark).id.number * 2);
    }
    void pour(QDialog& form, const char* mark, const char* text) {
        fill(form, pourOf(mark).c_str(), text);
    }
    QString poured(const QDialog& form, const char* mark) const {
        return form.findChild<QLineEdit*>(QString::fromStdString(pourOf(mark)))->text();
    }
    static void press(QDialog& form, const char* button) {
        QWidget* at = goTo(form, button);
        QTest::keyClick(at, Qt::Key_Space);
    }
    Mass sumOfParts() const {
        Mass sum;
        for (const LotPart& part : read().all<LotPart>()) sum += part.mass;
        return sum;
    }
};

TEST_F(PourTogether, ProposesTheMostThereIsToTheGram) {
    // Under 18 %: B1 13,600 · 0.8 + B4 12,800 · 1.2 = 26,240; B2 takes 13,600 · 0.6 = 8,160; the
    // 18,080 left are 12,914 g of B3 at 1.4.
    inForm([&](QDialog& form) {
        expectReachable(form);
        fill(form, "target", "18");
        press(form, "most");
        EXPECT_EQ(poured(form, "B1"), QStringLiteral("all"));
        EXPECT_EQ(poured(form, "B2"), QStringLiteral("all"));
        // With a digit more than it needs: 12.914 could be read as twelve thousand.
        EXPECT_EQ(poured(form, "B3"), QStringLiteral("12.9140"));
        EXPECT_EQ(poured(form, "B4"), QStringLiteral("all"));
        EXPECT_EQ(poured(form, "B5"), QString()) << "nobody read its water";
        EXPECT_THAT(said(form, "says"), HasSubstr("52.9 kg<sup>w</sup>"));
        EXPECT_THAT(said(form, "says"), HasSubstr("within your 18.0 %"));
        fill(form, "lot", "Hill summer");
        enter(form);
    });
    key(Qt::Key_B);
    ASSERT_EQ(read().all<Lot>().size(), 1U) << session.lastTold().toStdString();
    EXPECT_EQ(sumOfParts(), Mass::grams(13600 + 13600 + 12914 + 12800));
    EXPECT_EQ(page->current()->view.name, "Hill summer");
    EXPECT_EQ(ledger("B3").left, Mass::grams(86));
    EXPECT_THAT(card(), HasSubstr("B3 of 27-2"));
}

TEST_F(PourTogether, KeepsTheGramsInPoundsToo) {
    session.setUnits(Units::UsCustomary);
    inForm([&](QDialog& form) {
        press(form, "most");
        fill(form, "lot", "Pounds");
        enter(form);
    });
    key(Qt::Key_B);
    EXPECT_EQ(sumOfParts(), Mass::grams(52914));
    session.setUnits(Units::Metric);
}

TEST_F(PourTogether, FillsATankWithItsHeadroom) {
    inForm([&](QDialog& form) {
        fill(form, "tank_holds", "20");
        press(form, "most");
        // A twentieth stays free.
        EXPECT_THAT(said(form, "says"), HasSubstr("19.0 kg"));
        EXPECT_THAT(said(form, "warns"), Not(HasSubstr("does not fit")));
        pour(form, "B1", "all");
        pour(form, "B2", "all");
        EXPECT_THAT(said(form, "warns"), HasSubstr("does not fit"));
        form.reject();
    });
    key(Qt::Key_B);
    EXPECT_TRUE(read().all<Lot>().empty());
}

TEST_F(PourTogether, SaysWhileOneTypesWhatComesOfIt) {
    inForm([&](QDialog& form) {
        pour(form, "B1", "all");
        pour(form, "B3", "6.2");
        // (13,600 · 17.2 + 6,200 · 19.4) ÷ 19,800 = 17.889
        EXPECT_THAT(said(form, "says"), HasSubstr("19.8 kg"));
        EXPECT_THAT(said(form, "says"), HasSubstr("17.9 %"));
        pour(form, "B3", "20");
        EXPECT_THAT(reason(form).toStdString(), HasSubstr("B3 of 27-2"));
        pour(form, "B3", "much");
        EXPECT_THAT(reason(form).toStdString(), HasSubstr("no weight"));
        fill(form, "lot", "Trial");
        enter(form);
        EXPECT_TRUE(form.isVisible()) << "not kept while a line cannot be read";
        pour(form, "B3", "6.2");
        pour(form, "B5", "1");
        EXPECT_THAT(said(form, "warns"), HasSubstr("Water not read"));
        pour(form, "B5", "");
        goTo(form, "lot");
        enter(form);
    });
    key(Qt::Key_B);
    EXPECT_EQ(sumOfParts(), Mass::grams(19800)) << session.lastTold().toStdString();
}

TEST_F(PourTogether, WhatIsHeldGoesOnOnlyWithAReason) {
    HoldBack hold;
    hold.on = clock.today();
    hold.reason = HoldWhy::Complaint;
    hold.bucket = bucket("B1").id;
    ASSERT_TRUE(session.run(hold));
    inForm([&](QDialog& form) {
        press(form, "most");
        EXPECT_EQ(poured(form, "B1"), QString()) << "held honey is not proposed";
        EXPECT_FALSE(form.findChild<QLineEdit*>(QStringLiteral("reason_for_held"))->isVisible());
        pour(form, "B1", "all");
        EXPECT_THAT(said(form, "warns"), HasSubstr("Held back: B1 of 27-2"));
        fill(form, "lot", "Held");
        enter(form);
        EXPECT_TRUE(form.isVisible());
        EXPECT_FALSE(reason(form).isEmpty());
        fill(form, "reason_for_held", "cleared with the buyer");
        enter(form);
    });
    key(Qt::Key_B);
    ASSERT_EQ(read().all<Lot>().size(), 1U) << session.lastTold().toStdString();
    EXPECT_EQ(read().all<Lot>().front().reason, "cleared with the buyer");
    EXPECT_THAT(row(), HasSubstr("held since")) << "the hold went along";
}

TEST_F(PourTogether, NothingIsCutInLargeType) {
    session.setLook(applyLook(*qApp, false, 2.0));
    inForm([&](QDialog& form) {
        pour(form, "B1", "all");
        pour(form, "B3", "6.2");
        QApplication::processEvents();
        EXPECT_LE(form.width(), window->width());
        EXPECT_LE(form.height(), window->height());
        for (QPushButton* each : form.findChildren<QPushButton*>())
            if (each->isVisible()) {
                EXPECT_GE(each->width(), each->minimumSizeHint().width())
                    << each->text().toStdString();
            }
        const auto* scroll = form.findChild<QScrollArea*>();
        EXPECT_LE(scroll->widget()->width(), scroll->viewport()->width() + 1);
        form.reject();
    });
    key(Qt::Key_B);
    session.setLook(applyLook(*qApp, false, 1.0));
}

TEST_F(PourTogether, HalfTypedItIsThereAgain) {
    inForm([&](QDialog& form) {
        pour(form, "B1", "3.5");
        form.reject();
    });
    key(Qt::Key_B);
    inForm([&](QDialog& form) {
        EXPECT_EQ(poured(form, "B1"), QStringLiteral("3.5"));
        form.reject();
    });
    key(Qt::Key_B);
    EXPECT_TRUE(read().all<Lot>().empty());
}

}  // namespace
}  // namespace combwright
