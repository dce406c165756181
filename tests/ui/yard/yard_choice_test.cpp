// The yard one is at: no name cut by a letter; one too long for the head ends in an ellipsis.
#include "ui/yard/yard_choice.h"

#include <gtest/gtest.h>

#include <QAbstractItemView>
#include <QImage>
#include <QStyleOptionComboBox>

#include "tests/support/in_window.h"
#include "ui/yard/yard_place.h"

namespace combwright {
namespace {

class YardNames : public test::WindowTest {
  protected:
    void openWith(const std::string& name) {
        openWindow(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"add-yard","on":"2027-04-01","yard_name":")" +
                   name + R"("}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H1","boxes":"deep D1"})");
        place = open<YardPlace>();
        choice = window->findChild<YardChoice*>(QStringLiteral("yard"));
        ASSERT_NE(choice, nullptr);
    }
    int room() const {
        QStyleOptionComboBox option;
        option.initFrom(choice);
        option.rect = choice->rect();
        return choice->style()
            ->subControlRect(QStyle::CC_ComboBox, &option, QStyle::SC_ComboBoxEditField, choice)
            .width();
    }
    int needs(const QString& name) const {
        return QFontMetrics(choice->font()).horizontalAdvance(name);
    }
    YardPlace* place = nullptr;
    YardChoice* choice = nullptr;
};

TEST_F(YardNames, HaveRoomForTheWidest) {
    openWith("Mill Lane under the Wood");
    for (const double factor : {1.0, 2.0}) {
        setTextSize(factor);
        place->reload();
        QApplication::processEvents();
        for (int i = 0; i < choice->count(); ++i)
            EXPECT_GE(room(), needs(choice->itemText(i)))
                << choice->itemText(i).toStdString() << " at " << factor;
    }
    setTextSize(1.0);
}

TEST_F(YardNames, OneTooLongIsReadInTheListAndTheTip) {
    const QString name(QStringLiteral("The orchard behind the old school at the upper mill road"));
    openWith(name.toStdString());
    ASSERT_EQ(choice->count(), 2);
    choice->setFocus();
    QTest::keyClick(choice, Qt::Key_Down);
    ASSERT_EQ(choice->currentText(), name);
    EXPECT_EQ(choice->toolTip(), name);
    EXPECT_LT(choice->width(), window->width() / 3) << "the day and the words keep their room";
    EXPECT_LT(room(), needs(name));
    EXPECT_GE(choice->view()->minimumWidth(), needs(name)) << "whole in the open list";
}

}  // namespace
}  // namespace combwright
