// A trace at the keyboard: of the bucket chosen, of whatever is typed, kept as it reads today and
// seen again when the records have moved on.
#include "ui/honey_room/trace_view.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/actions/boxes/looks.h"
#include "tests/ui/honey_room/vessel_hands.h"

namespace combwright {
namespace {

using testing::HasSubstr;
using testing::Not;

class TraceAtTheKeyboard : public test::VesselTest {
  protected:
    std::string more() const override {
        return R"({"do":"blend-honey","on":"2027-08-10","name":"Hill summer","parts":"B1 of 27-2 all, B3 of 27-2 6.2 kg"})"
               "\n";
    }
    static std::string words(const QDialog& form) {
        return form.findChild<PageBrowser*>()->toPlainText().toStdString();
    }
    static void ask(QDialog& form, const char* of) {
        fill(form, "trace_of", of);
        enter(form);
    }
};

TEST_F(TraceAtTheKeyboard, TellsBothWays) {
    walkTo("Hill summer");
    inForm([&](QDialog& form) {
        EXPECT_THAT(words(form), HasSubstr("B1 of 27-2"));
        EXPECT_THAT(words(form), HasSubstr("6.2"));
        ask(form, "B3 of 27-2");
        EXPECT_THAT(words(form), HasSubstr("Hill summer"));
        ask(form, "nothing of it");
        EXPECT_THAT(reason(form).toStdString(), HasSubstr("Nothing is called"));
        EXPECT_THAT(words(form), HasSubstr("Hill summer")) << "what stood there stays";
        ask(form, "27-2");
        EXPECT_EQ(reason(form), QString());
        expectReachable(form);
        form.reject();
    });
    key(Qt::Key_T);
}

TEST_F(TraceAtTheKeyboard, KeptSheetsAreSeenAgainAsTheyWere) {
    walkTo("Hill summer");
    inForm([&](QDialog& form) {
        EXPECT_FALSE(form.findChild<QComboBox*>(QStringLiteral("sheets"))->isVisible());
        QTest::keyClick(goTo(form, "keep_sheet"), Qt::Key_Space);
        form.reject();
    });
    key(Qt::Key_T);
    ASSERT_EQ(read().all<KeptSheet>().size(), 1U) << session.lastTold().toStdString();
    EXPECT_EQ(read().all<KeptSheet>().front().subject.text(), "Hill summer");
    DescribeHoney told;
    told.on = clock.today();
    told.lot = read().all<Lot>().front().id;
    told.traits.taste = "malty";
    ASSERT_TRUE(session.run(told));
    HoldBack hold;
    hold.on = clock.today();
    hold.reason = HoldWhy::Complaint;
    hold.lot = told.lot;
    ASSERT_TRUE(session.run(hold));
    inForm([&](QDialog& form) {
        EXPECT_THAT(words(form), HasSubstr("complaint"));
        choose(form, "sheets", QStringLiteral("as kept"));
        EXPECT_THAT(words(form), Not(HasSubstr("complaint"))) << "it reads as it did";
        EXPECT_THAT(words(form), HasSubstr("B1 of 27-2"));
        form.reject();
    });
    key(Qt::Key_T);
}

}  // namespace
}  // namespace combwright
