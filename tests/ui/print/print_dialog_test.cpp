// A place that pins several sheets to its wall lets one choose among them above the preview.
#include "ui/print/print_dialog.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QComboBox>
#include <QPrintPreviewDialog>
#include <QTest>
#include <QTimer>
#include <set>
#include <vector>

#include "tests/support/hill_and_creek.h"
#include "tests/support/in_window.h"
#include "ui/honey_room/honey_room_place.h"

namespace combwright {
namespace {

class SheetsOfAPlace : public test::WindowTest {};

TEST_F(SheetsOfAPlace, AreChosenAboveThePreviewByKeyboard) {
    clock.set("2027-08-08");
    openWindow(test::hillAndCreekBefore());
    auto* room = goToPlace<HoneyRoomPlace>(3);
    ASSERT_NE(room, nullptr);
    std::vector<QString> titles;
    int offered = 0;
    QTimer look;
    QObject::connect(&look, &QTimer::timeout, [&] {
        auto* preview = qobject_cast<QPrintPreviewDialog*>(QApplication::activeModalWidget());
        if (!preview) return;
        look.stop();
        auto* sheet = preview->findChild<QComboBox*>(QStringLiteral("sheet"));
        EXPECT_NE(sheet, nullptr);
        if (sheet) {
            offered = sheet->count();
            titles.push_back(preview->windowTitle());
            sheet->setFocus();
            while (sheet->currentIndex() + 1 < sheet->count()) {
                QTest::keyClick(sheet, Qt::Key_Down);
                titles.push_back(preview->windowTitle());
            }
        }
        preview->reject();
    });
    look.start(5);
    QTest::keyClick(window->focusWidget(), Qt::Key_P, Qt::ControlModifier);
    EXPECT_EQ(offered, static_cast<int>(room->sheets().size()));
    EXPECT_GT(offered, 4) << "loads, tags, sign, extraction sheet, labels, log";
    const std::set<QString> different(titles.begin(), titles.end());
    EXPECT_EQ(different.size(), titles.size()) << "each is shown when it is chosen";
}

}  // namespace
}  // namespace combwright
