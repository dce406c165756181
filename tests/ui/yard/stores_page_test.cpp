// Stores of a yard by keyboard: two hives weighed, one of them from one side first, a yard fed and
// the sugar off the shelf, feed counted, the truck.
#include "ui/yard/stores_page.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QHeaderView>

#include "core/places/stores/feed_shelf.h"
#include "tests/ui/storeroom/form_hands.h"
#include "ui/shell/foot_bar.h"

namespace combwright {
namespace {

using testing::HasSubstr;

class StoresInYard : public test::FormTest {
  protected:
    void SetUp() override {
        FormTest::SetUp();
        playAll(session.season(),
                R"({"do":"buy-feed","on":"2027-08-01","kind":"dry sugar","bought_g":50000})");
        place = test::openPlace<YardPlace>(*window);
        ASSERT_NE(place, nullptr);
        key(Qt::Key_F);
        ASSERT_EQ(focus(), &place->storesPage().table());
    }
    /// The window has the keyboard again before the next form is waited for.
    void inForm(const std::function<void(QDialog&)>& hands) const {
        comeBack();
        FormTest::inForm(hands);
    }
    static std::string said(QDialog& form, const char* label) {
        return form.findChild<QLabel*>(QLatin1String(label))->text().toStdString();
    }
    Hive hive(const char* mark) const {
        return *read().first<Hive>({is("mark", std::string(mark))});
    }
    QByteArray weighed(const char* mark) const {
        return QStringLiteral("weighed_%1").arg(hive(mark).id.number).toLatin1();
    }
};

TEST_F(StoresInYard, WeighsTwoHivesARowEach) {
    key(Qt::Key_A);
    inForm([&](QDialog& form) {
        fill(form, weighed("H1").constData(), "20+21");
        fill(form, weighed("H2").constData(), "heavy");
        enter(form);
        enter(form);
        EXPECT_FALSE(reason(form).isEmpty());
        EXPECT_TRUE(read().all<HiveWeighing>().empty()) << "bad input changes nothing";
        fill(form, weighed("H2").constData(), "17.5+");
        expectReachable(form);
        goTo(form, weighed("H2").constData());
        enter(form);
        enter(form);
    });
    key(Qt::Key_W);
    const auto first = read().first<HiveWeighing>({is("hive", hive("H1").id)});
    const auto second = read().first<HiveWeighing>({is("hive", hive("H2").id)});
    ASSERT_TRUE(first && second);
    EXPECT_EQ(first->left->value, Mass::grams(20000));
    EXPECT_EQ(first->right->value, Mass::grams(21000));
    EXPECT_EQ(second->left->value, Mass::grams(17500));
    EXPECT_FALSE(second->right);
    EXPECT_EQ(
        place->storesPage().table().rows()[0].cells[0].note.contains(QStringLiteral("weighed")),
        true);
    EXPECT_THAT(place->storesPage().table().rows()[1].cells[0].note.toStdString(),
                HasSubstr("only one side weighed"));
}

/// Without a tick all hives stand there in walking order; Enter walks on and keeps at the end.
TEST_F(StoresInYard, WeighsTheYardHiveByHiveByEnter) {
    const std::size_t before = steps();
    inForm([&](QDialog& form) {
        EXPECT_EQ(form.windowTitle(), QStringLiteral("2 hives of Hill weighed, Mon 10 Jan 2028"));
        ASSERT_EQ(form.focusWidget()->objectName(), QString::fromLatin1(weighed("H1")));
        QTest::keyClicks(form.focusWidget(), QStringLiteral("41"));
        enter(form);
        ASSERT_EQ(form.focusWidget()->objectName(), QString::fromLatin1(weighed("H2")));
        QTest::keyClicks(form.focusWidget(), QStringLiteral("18+19 without 17.5"));
        enter(form);
        EXPECT_EQ(steps(), before) << "going on keeps nothing yet";
        EXPECT_NE(qobject_cast<QPushButton*>(form.focusWidget()), nullptr);
        enter(form);
    });
    key(Qt::Key_W);
    EXPECT_EQ(read().all<HiveWeighing>().size(), 2U);
    EXPECT_EQ(read().first<HiveWeighing>({is("hive", hive("H2").id)})->without->value,
              Mass::grams(17500));
}

TEST_F(StoresInYard, AHiveLeftEmptyWasNotWeighed) {
    key(Qt::Key_Down);
    inForm([&](QDialog& form) {
        EXPECT_EQ(form.focusWidget()->objectName(), QString::fromLatin1(weighed("H2")))
            << "begins at the hive one is at";
        QTest::keyClicks(form.focusWidget(), QStringLiteral("35"));
        enter(form);
        enter(form);
    });
    key(Qt::Key_W);
    ASSERT_EQ(read().all<HiveWeighing>().size(), 1U);
    EXPECT_EQ(read().all<HiveWeighing>().front().hive, hive("H2").id);
}

/// Without a tick the hive one is at is meant, and the title says which.
TEST_F(StoresInYard, FeedsOnlyTheHiveOneIsAt) {
    key(Qt::Key_Down);
    inForm([&](QDialog& form) {
        auto* hives = form.findChild<QLineEdit*>("hives");
        EXPECT_EQ(hives->text(), QStringLiteral("H2"));
        EXPECT_EQ(form.windowTitle(), QStringLiteral("Feed H2, Mon 10 Jan 2028"));
        fill(form, "hives", "all");
        EXPECT_EQ(form.windowTitle(), QStringLiteral("Feed all 2 hives of Hill, Mon 10 Jan 2028"));
        fill(form, "hives", "H1, H2");
        EXPECT_EQ(form.windowTitle(), QStringLiteral("Feed 2 hives (H1, H2), Mon 10 Jan 2028"));
        fill(form, "hives", "");
        EXPECT_EQ(form.windowTitle(), QStringLiteral("Feed: no hive named, Mon 10 Jan 2028"));
        fill(form, "given", "2");
        enter(form);
        EXPECT_THAT(reason(form).toStdString(), HasSubstr("No hive is named"));
        EXPECT_TRUE(read().all<Feeding>().empty()) << "an empty line is not all hives";
        fill(form, "hives", "H2");
        enter(form);
    });
    key(Qt::Key_G);
    ASSERT_EQ(read().all<Feeding>().size(), 1U);
    EXPECT_EQ(read().all<Feeding>().front().hive, hive("H2").id);
}

/// What is ticked now is newer than what was typed in the form and left.
TEST_F(StoresInYard, ATickIsNewerThanWhatWasTypedBefore) {
    inForm([&](QDialog& form) {
        fill(form, "hives", "all");
        fill(form, "given", "3");
        QTest::keyClick(&form, Qt::Key_Escape);
    });
    key(Qt::Key_G);
    key(Qt::Key_Down);
    key(Qt::Key_Space);
    inForm([&](QDialog& form) {
        EXPECT_EQ(form.findChild<QLineEdit*>("given")->text(), QStringLiteral("3"));
        EXPECT_EQ(form.findChild<QLineEdit*>("hives")->text(), QStringLiteral("H2"));
        EXPECT_EQ(form.windowTitle(), QStringLiteral("Feed H2, Mon 10 Jan 2028"));
        QTest::keyClick(&form, Qt::Key_Escape);
    });
    key(Qt::Key_G);
    EXPECT_TRUE(read().all<Feeding>().empty());
}

/// A refusal is about the form: with it, it goes from the foot.
TEST_F(StoresInYard, ARefusalGoesWithItsForm) {
    const auto* foot = window->findChild<FootBar*>(QStringLiteral("foot"));
    ASSERT_NE(foot, nullptr);
    inForm([&](QDialog& form) {
        fill(form, "given", "sweet");
        enter(form);
        EXPECT_FALSE(foot->told().isEmpty());
        QTest::keyClick(&form, Qt::Key_Escape);
    });
    key(Qt::Key_G);
    EXPECT_TRUE(foot->told().isEmpty()) << foot->told().toStdString();
}

TEST_F(StoresInYard, FeedsTheYardOffTheShelf) {
    key(Qt::Key_A);
    inForm([&](QDialog& form) {
        EXPECT_EQ(form.findChild<QLineEdit*>("hives")->text(), QStringLiteral("all"));
        choose(form, "kind", QStringLiteral("syrup 2:1"));
        fill(form, "given", "5");
        EXPECT_THAT(said(form, "outlook"), HasSubstr("2 hives take 10.0 kg of sugar."));
        EXPECT_THAT(said(form, "outlook"), HasSubstr("Then 40.0 kg"));
        EXPECT_THAT(said(form, "caution"), HasSubstr("Supers are on H1"));
        fill(form, "given", "30");
        EXPECT_THAT(said(form, "outlook"), HasSubstr("10.0 kg more than is written down"));
        fill(form, "given", "5");
        expectReachable(form);
        enter(form);
    });
    key(Qt::Key_G);
    EXPECT_EQ(read().all<Feeding>().size(), 2U);
    EXPECT_EQ(feedShelf(read(), today).front().leftG(), 40000);
    EXPECT_THAT(place->storesPage().cardText().toStdString(), HasSubstr("40.0 kg"));

    inForm([&](QDialog& form) {
        fill(form, "sugar", "38");
        expectReachable(form);
        enter(form);
    });
    key(Qt::Key_C);
    EXPECT_EQ(feedShelf(read(), today).front().leftG(), 38000);
}

TEST_F(StoresInYard, SaysOfOneSuperThatItWasNotLookedInto) {
    const QString note = place->storesPage().table().rows()[0].cells[4].note;
    EXPECT_TRUE(note.contains(QStringLiteral("its super was not looked into")))
        << note.toStdString();
}

TEST_F(StoresInYard, KeepsTareAndTruck) {
    inForm([&](QDialog& form) {
        fill(form, "tare", "14.5");
        enter(form);
    });
    key(Qt::Key_E);
    EXPECT_EQ(hive("H1").tare->value, Mass::grams(14500));
    inForm([&](QDialog& form) {
        enter(form);
        EXPECT_THAT(reason(form).toStdString(), HasSubstr("Nothing was typed"));
        fill(form, "put_in", "smoker, 2 hive tool");
        expectReachable(form);
        enter(form);
    });
    key(Qt::Key_T);
    EXPECT_THAT(place->storesPage().cardText().toStdString(), HasSubstr("smoker"));
    EXPECT_EQ(place->sheets().front().id, QStringLiteral("kit-list"));
    EXPECT_EQ(place->head().title, QStringLiteral("Stores"));
}

TEST_F(StoresInYard, StacksItsCellsInLargeTypeWithoutCuttingOff) {
    const auto nothingCut = [&](WorkPage& page) {
        QApplication::processEvents();
        HiveTable& table = page.table();
        EXPECT_LE(table.horizontalHeader()->length(), table.viewport()->width() + 1);
        for (int c = 0; c < table.columnCount(); ++c) {
            // As it is painted: a head drawn in body size was measured in a smaller one.
            const QFontMetrics metrics(session.look().font(TextSize::Body));
            EXPECT_LE(metrics.horizontalAdvance(table.horizontalHeaderItem(c)->text()),
                      table.columnWidth(c))
                << c;
        }
    };
    for (const double factor : {1.0, 2.0}) {
        session.setLook(applyLook(*qApp, false, factor));
        window->resize(1280, 800);
        place->openPage(Qt::Key_F);
        nothingCut(place->storesPage());
        place->openPage(Qt::Key_V);
        nothingCut(place->health());
    }
    session.setLook(applyLook(*qApp, false, 1.0));
}

TEST_F(StoresInYard, ARowOfLargeTypeIsAsCompactAsOneOfSmall) {
    playAll(session.season(),
            R"({"do":"look-box","on":"2028-01-08","box":"M1","contents":"9 drawn; 0 % full"}
{"do":"weigh-hive","on":"2028-01-08","readings":"H1 41, H2 35"})");
    double small = 0;
    for (const double factor : {1.0, 2.0}) {
        session.setLook(applyLook(*qApp, false, factor));
        window->resize(1280, 800);
        place->openPage(Qt::Key_F);
        QApplication::processEvents();
        const HiveTable& table = place->storesPage().table();
        EXPECT_EQ(table.isNarrow(), factor > 1);
        ASSERT_NE(table.rows()[0].cells[0].how, 0) << "the letter is apart from the figure";
        EXPECT_FALSE(table.rows()[0].cells[0].text.endsWith(QStringLiteral(" w")));
        if (factor > 1)
            EXPECT_LE(table.rowHeight(0), small * factor * 1.25)
                << "more than the letters have grown";
        else
            small = table.rowHeight(0);
    }
    session.setLook(applyLook(*qApp, false, 1.0));
}

/// What is typed in the field and left by Escape stands there when the form is opened again, and is
/// gone for good when one begins afresh.
TEST_F(StoresInYard, WhatWasTypedInTheShortFormsComesBack) {
    for (const auto& [form, field, typed] :
         {std::tuple{Qt::Key_E, "tare", "14.5"}, std::tuple{Qt::Key_T, "put_in", "smoker"}}) {
        inForm([&](QDialog& open) {
            fill(open, field, typed);
            QTest::keyClick(&open, Qt::Key_Escape);
        });
        key(form);
        inForm([&](QDialog& open) {
            EXPECT_EQ(open.findChild<QLineEdit*>(QLatin1String(field))->text(),
                      QLatin1String(typed))
                << field;
            QTest::keyClick(goTo(open, "begin_afresh"), Qt::Key_Space);
            EXPECT_TRUE(open.findChild<QLineEdit*>(QLatin1String(field))->text().isEmpty());
            QTest::keyClick(&open, Qt::Key_Escape);
        });
        key(form);
    }
    EXPECT_FALSE(hive("H1").tare);
}

}  // namespace
}  // namespace combwright
