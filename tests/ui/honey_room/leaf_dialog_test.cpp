// The leaf of a jar by keyboard: what is ticked is told, the caution always, medicines only if
// wished.
#include "ui/honey_room/leaf_dialog.h"

#include "core/places/pages/goods/label_pages.h"
#include "core/words/words.h"
#include "tests/ui/honey_room/goods_in_room.h"

namespace combwright {
namespace {

using testing::HasSubstr;
using testing::Not;

class LeafInRoom : public test::GoodsInRoom {};

TEST_F(LeafInRoom, TheKeeperTicksWhatIsTold) {
    ASSERT_NE(openRoom<JarsPage>(GoTo::Page::Jars, test::sixtyJars), nullptr);
    inForm([&](QDialog& form) {
        auto& leaf = dynamic_cast<LeafDialog&>(form);
        EXPECT_THAT(leaf.text().toStdString(), HasSubstr("The bees stood at Hill"));
        EXPECT_THAT(leaf.text().toStdString(), HasSubstr("L27-1-1"));
        EXPECT_THAT(leaf.text().toStdString(), Not(HasSubstr("medicine")));
        QTest::keyClick(goTo(form, "place"), Qt::Key_Space);
        EXPECT_THAT(leaf.text().toStdString(), Not(HasSubstr("Hill")));
        QTest::keyClick(goTo(form, "medicines"), Qt::Key_Space);
        EXPECT_THAT(leaf.text().toStdString(), HasSubstr("No medicine of its hives"));
        for (const char* each : {"weeks", "hives", "work", "water", "colour", "taste"})
            QTest::keyClick(goTo(form, each), Qt::Key_Space);
        EXPECT_THAT(leaf.text().toStdString(), HasSubstr(infantCaution().toStdString()));
        for (const char* each : {"words", "close", "print"}) goTo(form, each);
        QTest::keyClick(&form, Qt::Key_Escape);
    });
    key(Qt::Key_J);
}

}  // namespace
}  // namespace combwright
