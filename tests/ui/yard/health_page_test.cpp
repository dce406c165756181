// Health of a yard by keyboard: many hives treated in one form and the amount off stock, taken out
// again, a wash and field signs written down, the keeper's own line.
#include "ui/yard/health_page.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QScreen>
#include <QScrollArea>
#include <QScrollBar>

#include "core/places/pages/health/health_words.h"
#include "tests/ui/storeroom/form_hands.h"

namespace combwright {
namespace {

using testing::HasSubstr;

class HealthInYard : public test::FormTest {
  protected:
    void SetUp() override {
        FormTest::SetUp();
        playAll(
            session.season(),
            R"({"do":"buy-medicine","on":"2027-12-01","name":"formic strips","active":"formic acid","quantity":40,"unit":"strips","supers":"off","in_hive_from_days":7,"in_hive_to_days":14,"wait_days":14,"warm_from_c":10,"warm_to_c":29.4})");
        place = test::openPlace<YardPlace>(*window);
        ASSERT_NE(place, nullptr);
        key(Qt::Key_V);
        ASSERT_EQ(focus(), &place->health().table());
    }
    /// The window has the keyboard again before the next form is waited for.
    void inForm(const std::function<void(QDialog&)>& hands) const {
        comeBack();
        FormTest::inForm(hands);
    }
    static std::string said(QDialog& form, const char* label) {
        return form.findChild<QLabel*>(QLatin1String(label))->text().toStdString();
    }
    MedicineStock strips() const { return medicinesOn(read(), today).front(); }
    std::string cell(std::size_t row, std::size_t column) const {
        return place->health().table().rows()[row].cells[column].text.toStdString();
    }
};

TEST_F(HealthInYard, TreatsTheWholeYardAndTakesTheAmountOffStock) {
    place->choose(*place->yard(), test::day("2027-12-20"));
    key(Qt::Key_A);
    inForm([&](QDialog& form) {
        EXPECT_EQ(form.findChild<QLineEdit*>("hives")->text(), QStringLiteral("all"));
        EXPECT_EQ(form.windowTitle(), QStringLiteral("Treat all 2 hives of Hill, Mon 20 Dec 2027"));
        fill(form, "amount", "2");
        EXPECT_THAT(said(form, "outlook"), HasSubstr("2 hives take 4 strips of 40 strips: 36"));
        EXPECT_THAT(said(form, "outlook"), HasSubstr("7 to 14 days in the hive"));
        EXPECT_THAT(said(form, "caution"), HasSubstr("Supers are on H1"));
        EXPECT_THAT(said(form, "caution"), HasSubstr(labelIsLaw().toStdString()));
        fill(form, "warmth", "2");
        EXPECT_THAT(said(form, "caution"), HasSubstr("too cold"));
        expectReachable(form);
        enter(form);
    });
    key(Qt::Key_T);
    ASSERT_EQ(read().all<Treatment>().size(), 2U);
    EXPECT_EQ(strips().use.left(), 36);
    EXPECT_THAT(place->health().cardText().toStdString(), HasSubstr("36 of 40 strips left"));
    EXPECT_THAT(cell(0, 3), HasSubstr("formic strips since"));
    EXPECT_EQ(place->head().title, QStringLiteral("Health"));
    EXPECT_THAT(place->head().under.toStdString(), HasSubstr("2 with a medicine in"));

    place->choose(*place->yard(), today);
    inForm([&](QDialog& form) {
        EXPECT_THAT(said(form, "outlook"), HasSubstr("H1: formic strips since"));
        expectReachable(form);
        enter(form);
    });
    key(Qt::Key_O);
    for (const Treatment& each : read().all<Treatment>()) EXPECT_EQ(each.out, today);
    EXPECT_THAT(cell(1, 3), HasSubstr("supers from"));
    const std::size_t before = steps();
    key(Qt::Key_O);
    EXPECT_EQ(steps(), before) << "none is in any more, so nothing opens";
}

TEST_F(HealthInYard, TreatsOnlyWhatIsTickedAndKeepsWhatWasTyped) {
    key(Qt::Key_Down);
    key(Qt::Key_Space);
    inForm([&](QDialog& form) {
        EXPECT_EQ(form.findChild<QLineEdit*>("hives")->text(), QStringLiteral("H2"));
        fill(form, "amount", "50");
        EXPECT_THAT(said(form, "outlook"), HasSubstr("only 40 strips are written down"));
        QTest::keyClick(&form, Qt::Key_Escape);
    });
    key(Qt::Key_T);
    EXPECT_TRUE(read().all<Treatment>().empty());
    inForm([&](QDialog& form) {
        EXPECT_EQ(form.findChild<QLineEdit*>("amount")->text(), QStringLiteral("50"));
        fill(form, "amount", "many");
        enter(form);
        EXPECT_THAT(reason(form).toStdString(), HasSubstr("\"many\" is no number"));
        fill(form, "amount", "");
        enter(form);
    });
    key(Qt::Key_T);
    ASSERT_EQ(read().all<Treatment>().size(), 1U);
    EXPECT_FALSE(strips().use.left()) << "an amount that was not said leaves the rest unknown";
    EXPECT_THAT(place->health().cardText().toStdString(), HasSubstr("not known"));
    key(Qt::Key_A);
    EXPECT_EQ(place->health().table().ticked().size(), 2U);
    key(Qt::Key_A);
    EXPECT_TRUE(place->health().table().ticked().empty());
}

TEST_F(HealthInYard, ShowsAWashWithItsInterval) {
    EXPECT_EQ(cell(0, 0), "not sampled");
    inForm([&](QDialog& form) {
        choose(form, "what", QStringLiteral("varroa"));
        choose(form, "method", QStringLiteral("wash"));
        EXPECT_TRUE(form.findChild<QComboBox*>("ropes")->isHidden());
        fill(form, "mites", "6");
        fill(form, "bees", "300");
        EXPECT_THAT(said(form, "outlook"), HasSubstr("2.0 in 100 bees (between 0.7 and 4.3)"));
        expectReachable(form);
        enter(form);
    });
    key(Qt::Key_L);
    ASSERT_EQ(read().all<Finding>().size(), 1U);
    EXPECT_EQ(cell(0, 0), "2.0 (0.7 to 4.3)");
    EXPECT_EQ(place->health().table().rows()[0].cells[0].how, 'c');
    const auto above = [&] { return named<QLabel>("health_above")->text().toStdString(); };
    EXPECT_THAT(above(), HasSubstr("Line in force: act at"));
    for (const HiveTableRow& row : place->health().table().rows())
        EXPECT_TRUE(row.cells[1].note.isEmpty()) << "said once, not in every row";

    inForm([&](QDialog& form) {
        fill(form, "per_100", "9");
        fill(form, "source", "my own hives");
        expectReachable(form);
        enter(form);
    });
    key(Qt::Key_I);
    ASSERT_EQ(read().all<MiteLine>().size(), 1U);
    EXPECT_THAT(above(), HasSubstr("act at 9 in 100"));
    EXPECT_THAT(cell(0, 1), HasSubstr("under the line"));
    EXPECT_THAT(cell(0, 2), HasSubstr("a planning guess, sample again"));
}

TEST_F(HealthInYard, TicksSignsAndNamesNoDisease) {
    inForm([&](QDialog& form) {
        choose(form, "what", QStringLiteral("brood disease suspected"));
        choose(form, "method", QStringLiteral("seen"));
        EXPECT_THAT(said(form, "duty"), HasSubstr(reportingDuty().toStdString()));
        EXPECT_TRUE(form.findChild<QLineEdit*>("mites")->isHidden());
        choose(form, "ropes", QStringLiteral("seen"));
        choose(form, "spotty", QStringLiteral("looked for"));
        expectReachable(form);
        enter(form);
    });
    key(Qt::Key_L);
    const auto findings = read().all<Finding>();
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings.front().signs.ropes, true);
    EXPECT_EQ(findings.front().signs.spotty, false);
    EXPECT_FALSE(findings.front().signs.sunkenCaps) << "not looked for is no answer";
    EXPECT_THAT(cell(0, 4), HasSubstr("held"));
    EXPECT_THAT(place->health().table().rows()[0].cells[4].note.toStdString(),
                HasSubstr("draws a thread"));
}

TEST_F(HealthInYard, BuysAMedicineAsItsLabelSays) {
    inForm([&](QDialog& form) {
        fill(form, "medicine", "oxalic crystals");
        fill(form, "quantity", "35 g");
        fill(form, "expires", "2029-02");
        fill(form, "in_hive", "21 to 42");
        fill(form, "warmth", "-5 to 10");
        choose(form, "supers", QStringLiteral("may stay"));
        expectReachable(form);
        enter(form);
    });
    key(Qt::Key_B);
    ASSERT_EQ(read().all<Medicine>().size(), 2U);
    const Medicine bought = read().all<Medicine>().back();
    EXPECT_EQ(bought.unit, "g");
    EXPECT_EQ(bought.quantity->value(), 35);
    EXPECT_EQ(bought.expires, test::day("2029-02-28"));
    EXPECT_EQ(bought.inHiveTo, Count(42));
    EXPECT_EQ(bought.warmFrom, Temperature::tenths(-50));
    EXPECT_FALSE(bought.waitDays);
}

TEST_F(HealthInYard, LetsTheKeyboardGoOnAndPrintsWhatItShows) {
    EXPECT_EQ(place->sheets().front().id, QStringLiteral("mites"));
    QWidget* before = focus();
    key(Qt::Key_Tab);
    EXPECT_NE(focus(), before);
    key(Qt::Key_Tab, Qt::ShiftModifier);
    EXPECT_EQ(focus(), before);
    key(Qt::Key_Tab, Qt::ShiftModifier);
    EXPECT_NE(qobject_cast<QPushButton*>(focus()), nullptr);
    place->setFocus();
    key(Qt::Key_Down);
    key(Qt::Key_Return);
    EXPECT_EQ(focus(), &place->board());
    ASSERT_NE(place->board().currentHive(), nullptr);
    EXPECT_EQ(place->board().current(), 1);
    key(Qt::Key_V);
    key(Qt::Key_F);
    EXPECT_EQ(focus(), &place->storesPage().table());
    key(Qt::Key_Escape);
    EXPECT_EQ(focus(), &place->board());
}

TEST_F(HealthInYard, ASampleOfAnotherYearSaysItsYear) {
    playAll(
        session.season(),
        R"({"do":"record-finding","on":"2027-09-12","hive":"H1","what":"varroa","method":"wash","mites":3,"bees":300}
{"do":"record-finding","on":"2028-01-09","hive":"H2","what":"varroa","method":"wash","mites":1,"bees":300})");
    place->reload();
    const auto note = [&](std::size_t row) {
        return place->health().table().rows()[row].cells[0].note.toStdString();
    };
    EXPECT_THAT(note(0), HasSubstr("12 Sep 2027"));
    EXPECT_THAT(note(1), testing::Not(HasSubstr("2028"))) << "this year's is plain";
    // The year is not cut off: the row is as high as its words need at that width.
    HiveTable& table = place->health().table();
    QApplication::processEvents();
    FlowingWords words{{table.rows()[0].cells[0].text}};
    addHow(words, table.rows()[0].cells[0].how);
    words.push_back({QLatin1Char('\n') + table.rows()[0].cells[0].note, TextSize::Note});
    EXPECT_GE(
        table.rowHeight(0),
        flowingHeight(words, table.columnWidth(1) - session.look().space(12), session.look()));
}

/// The dialog grows with what it says; where the screen is too low for it, it scrolls by keyboard.
TEST_F(HealthInYard, TheNotesOfATreatmentAreNotClipped) {
    place->choose(*place->yard(), test::day("2027-12-20"));
    for (const double factor : {1.0, 2.0}) {
        session.setLook(applyLook(*qApp, false, factor));
        inForm([&](QDialog& form) {
            fill(form, "amount", "50");
            fill(form, "warmth", "2");
            QApplication::processEvents();
            for (const char* name : {"outlook", "caution"}) {
                const auto* words = form.findChild<QLabel*>(QLatin1String(name));
                EXPECT_GE(words->height(), words->heightForWidth(words->width())) << name;
            }
            const auto* scroll = form.findChild<QScrollArea*>();
            ASSERT_NE(scroll, nullptr);
            QScrollBar* bar = scroll->verticalScrollBar();
            if (form.height() < form.screen()->availableSize().height() * 9 / 10 - 1) {
                EXPECT_EQ(bar->maximum(), 0) << "there was room to grow, at " << factor;
            }
            if (bar->maximum() > 0) {
                bar->setValue(0);
                QTest::keyClick(form.focusWidget(), Qt::Key_PageDown);
                EXPECT_GT(bar->value(), 0);
            }
            QTest::keyClick(&form, Qt::Key_Escape);
        });
        key(Qt::Key_T);
    }
    session.setLook(applyLook(*qApp, false, 1.0));
}

TEST_F(HealthInYard, ARowOfLargeTypeStaysShort) {
    playAll(
        session.season(),
        R"({"do":"record-finding","on":"2028-01-09","hive":"H1","what":"varroa","method":"wash","mites":6,"bees":300})");
    double small = 0;
    for (const double factor : {1.0, 2.0}) {
        session.setLook(applyLook(*qApp, false, factor));
        window->resize(1280, 800);
        place->openPage(Qt::Key_V);
        QApplication::processEvents();
        const HiveTable& table = place->health().table();
        if (factor > 1) {
            EXPECT_LE(table.rowHeight(0), small * factor * 1.25)
                << "more than the letters have grown";
        } else {
            small = table.rowHeight(0);
        }
    }
    session.setLook(applyLook(*qApp, false, 1.0));
}

TEST_F(HealthInYard, WhatWasTypedInTheShortFormsComesBack) {
    playAll(session.season(),
            R"({"do":"treat","on":"2028-01-02","medicine":"formic strips","yard":"Hill"})");
    const auto comesBack = [&](Qt::Key opens, const char* field, const char* typed) {
        inForm([&](QDialog& form) {
            fill(form, field, typed);
            QTest::keyClick(&form, Qt::Key_Escape);
        });
        key(opens);
        const std::size_t before = steps();
        inForm([&](QDialog& form) {
            EXPECT_EQ(form.findChild<QLineEdit*>(QLatin1String(field))->text(),
                      QLatin1String(typed))
                << field;
            QTest::keyClick(goTo(form, "begin_afresh"), Qt::Key_Space);
            EXPECT_NE(form.findChild<QLineEdit*>(QLatin1String(field))->text(),
                      QLatin1String(typed));
            QTest::keyClick(&form, Qt::Key_Escape);
        });
        key(opens);
        EXPECT_EQ(steps(), before) << "nothing was kept";
    };
    comesBack(Qt::Key_O, "hives", "H2");
    comesBack(Qt::Key_D, "how", "back to the vet");
    comesBack(Qt::Key_I, "per_100", "9");
    comesBack(Qt::Key_P, "day", "15 aug");

    QString chosen;
    inForm([&](QDialog& form) {
        auto* lines = qobject_cast<QComboBox*>(goTo(form, "lines"));
        ASSERT_NE(lines, nullptr);
        const QString before = lines->currentText();
        QTest::keyClick(lines, Qt::Key_End);
        chosen = lines->currentText();
        EXPECT_NE(chosen, before);
        QTest::keyClick(&form, Qt::Key_Escape);
    });
    key(Qt::Key_C);
    inForm([&](QDialog& form) {
        EXPECT_EQ(form.findChild<QComboBox*>("lines")->currentText(), chosen);
        QTest::keyClick(goTo(form, "begin_afresh"), Qt::Key_Space);
        EXPECT_NE(form.findChild<QComboBox*>("lines")->currentText(), chosen);
        QTest::keyClick(&form, Qt::Key_Escape);
    });
    key(Qt::Key_C);
}

}  // namespace
}  // namespace combwright
