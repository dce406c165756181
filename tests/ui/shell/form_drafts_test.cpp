// What is half typed in the long forms comes back, until it is kept or begun
// afresh.
#include "ui/shell/form_drafts.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/model/storeroom/dead_out.h"
#include "core/model/storeroom/equipment.h"
#include "tests/ui/storeroom/form_hands.h"
#include "ui/storeroom/dead_out_form.h"
#include "ui/storeroom/plan_form.h"
#include "ui/storeroom/stock_take_form.h"

namespace combwright {
namespace {

class LongForms : public test::FormTest {
  protected:
    static QString text(QDialog& form, const char* name) {
        return form.findChild<QLineEdit*>(QLatin1String(name))->text();
    }
    static bool isBack(QDialog& form) {
        return form.findChild<QLabel*>(QStringLiteral("draft_is_back"))->isVisible();
    }
    static void escape(QDialog& form) { QTest::keyClick(&form, Qt::Key_Escape); }
    /// The program was ended and begun again.
    void openAgain() {
        session.drafts().flush();
        session.close();
        ASSERT_TRUE(session.open(file()));
    }
};

TEST_F(LongForms, APlanHalfTypedIsThereAgainAndReckoned) {
    inForm([&](QDialog& form) {
        EXPECT_FALSE(isBack(form));
        fill(form, "splits", "4");
        auto* kind = qobject_cast<QComboBox*>(goTo(form, "super_kind"));
        kind->setCurrentIndex(kind->findData(static_cast<qlonglong>(box("M11").kind.number)));
        fill(form, "supers_per_colony", "3");
        escape(form);
    });
    EXPECT_FALSE(askToPlanSeason(window.get(), session, 2028, today));
    openAgain();
    inForm([&](QDialog& form) {
        EXPECT_TRUE(isBack(form));
        EXPECT_EQ(text(form, "splits"), QStringLiteral("4"));
        EXPECT_EQ(text(form, "supers_per_colony"), QStringLiteral("3"));
        EXPECT_EQ(form.findChild<QTableWidget*>(QStringLiteral("follows"))->item(0, 1)->text(),
                  QStringLiteral("6"))
            << "two colonies, three each";
        goTo(form, "colonies");
        enter(form);
        EXPECT_FALSE(isBack(form));
        escape(form);
    });
    EXPECT_TRUE(askToPlanSeason(window.get(), session, 2028, today));
    inForm([&](QDialog& form) {
        EXPECT_FALSE(isBack(form)) << "kept, it is no draft any more";
        fill(form, "splits", "9");
        escape(form);
    });
    EXPECT_FALSE(askToPlanSeason(window.get(), session, 2028, today));
    inForm([&](QDialog& form) {
        EXPECT_EQ(text(form, "splits"), QStringLiteral("9"));
        QTest::keyClick(goTo(form, "begin_afresh"), Qt::Key_Space);
        EXPECT_EQ(text(form, "splits"), QStringLiteral("4"));
        EXPECT_EQ(form.focusWidget()->objectName(), QStringLiteral("colonies"));
        escape(form);
    });
    EXPECT_FALSE(askToPlanSeason(window.get(), session, 2028, today));
    EXPECT_TRUE(session.drafts().of(QStringLiteral("season-plan 2028")).empty());
}

TEST_F(LongForms, AStockTakeGoesOnWhereItStood) {
    inForm([&](QDialog& form) {
        QTest::keyClicks(form.focusWidget(), QStringLiteral("14"));
        choose(form, "item", QStringLiteral("feeder"));
        fill(form, "called", "4 l tray");
        enter(form);
        QTest::keyClicks(form.focusWidget(), QStringLiteral("6"));
        escape(form);
    });
    EXPECT_FALSE(askToTakeStock(window.get(), session, today));
    EXPECT_TRUE(read().all<Equipment>().empty());
    openAgain();
    inForm([&](QDialog& form) {
        EXPECT_TRUE(isBack(form));
        QStringList filled;
        for (const QLineEdit* cell : form.findChildren<QLineEdit*>(QStringLiteral("cell")))
            if (!cell->text().isEmpty())
                filled << QStringLiteral("%1 %2").arg(cell->accessibleName(), cell->text());
        filled.sort();
        EXPECT_EQ(filled.join(QStringLiteral("; ")).toStdString(),
                  "feeder, 4 l tray, sound 6; floor, sound 14");
        QTest::keyClick(form.focusWidget(), Qt::Key_Return, Qt::ControlModifier);
    });
    EXPECT_TRUE(askToTakeStock(window.get(), session, today));
    EXPECT_EQ(read().all<Equipment>().size(), 2U);
    EXPECT_TRUE(session.drafts().of(QStringLiteral("stock-take")).empty());
}

TEST_F(LongForms, ACardHalfAnsweredIsThatColonys) {
    playAll(session.season(),
            R"({"do":"end-colony","on":"2028-01-08","hive":"H1","ending":"winter loss"}
{"do":"end-colony","on":"2028-01-08","hive":"H2","ending":"winter loss"})");
    inForm([&](QDialog& form) {
        choose(form, "wet", QStringLiteral("yes"));
        fill(form, "cause", "leaking lid");
        escape(form);
    });
    EXPECT_FALSE(askAboutDeadOuts(window.get(), session, today));
    openAgain();
    inForm([&](QDialog& form) {
        EXPECT_TRUE(isBack(form));
        EXPECT_EQ(text(form, "cause"), QStringLiteral("leaking lid"));
        auto* colony = form.findChild<QComboBox*>(QStringLiteral("colony"));
        const int first = colony->currentIndex();
        colony->setCurrentIndex(1 - first);
        EXPECT_EQ(text(form, "cause"), QString()) << "not the other one's";
        EXPECT_FALSE(isBack(form));
        colony->setCurrentIndex(first);
        EXPECT_EQ(text(form, "cause"), QStringLiteral("leaking lid"));
        goTo(form, "cause");
        enter(form);
        escape(form);
    });
    EXPECT_TRUE(askAboutDeadOuts(window.get(), session, today));
    ASSERT_EQ(read().all<DeadOut>().size(), 1U);
    EXPECT_EQ(read().all<DeadOut>().front().cause, "leaking lid");
}

}  // namespace
}  // namespace combwright
