// The watch over slow events: what is felt is named, a dialog's wait is not laid to the key that
// opened it, and what goes while it is told is told all the same.
#include "app/desktop/slow_events.h"

#include <gtest/gtest.h>

#include <QKeyEvent>
#include <QThread>
#include <QWidget>
#include <memory>
#include <vector>

namespace combwright::desktop {
namespace {

struct SlowlyDone : testing::Test {
    std::vector<SlowEvent> told;
    SlowEvents slow{[this](const SlowEvent& each) { told.push_back(each); }};
    QKeyEvent press{QEvent::KeyPress, Qt::Key_F, Qt::NoModifier};
    QEvent timer{QEvent::Timer};

    static bool wait(unsigned long ms) {
        QThread::msleep(ms);
        return true;
    }
};

TEST_F(SlowlyDone, IsNamedWithItsKeyAndItsWayFromTheWindow) {
    QWidget window;
    window.setObjectName(QStringLiteral("window"));
    auto* board = new QWidget(&window);
    board->setObjectName(QStringLiteral("board"));
    EXPECT_TRUE(slow.watch(board, &press, [] { return wait(SlowEvents::feltFromMs + 30); }));
    ASSERT_EQ(told.size(), 1u);
    EXPECT_GT(told.front().ms, SlowEvents::feltFromMs);
    EXPECT_EQ(told.front().event, QStringLiteral("KeyPress %1").arg(int{Qt::Key_F}));
    EXPECT_EQ(told.front().receiver, QLatin1String("QWidget window/board"));
}

TEST_F(SlowlyDone, IsNotSaidOfWhatNobodyFeels) {
    QWidget window;
    EXPECT_FALSE(slow.watch(&window, &timer, [] { return false; }));
    EXPECT_TRUE(told.empty());
}

TEST_F(SlowlyDone, IsLaidToTheEventWithinAndNotToTheOneAround) {
    QWidget window;
    slow.watch(&window, &press, [&] {
        slow.watch(&window, &timer, [] { return wait(SlowEvents::feltFromMs + 30); });
        return true;
    });
    ASSERT_EQ(told.size(), 1u);
    EXPECT_EQ(told.front().event, QLatin1String("Timer"));
}

TEST_F(SlowlyDone, IsToldOfAReceiverThatWentMeanwhile) {
    auto gone = std::make_unique<QWidget>();
    gone->setObjectName(QStringLiteral("gone"));
    QWidget* receiver = gone.get();
    slow.watch(receiver, &timer, [&] {
        gone.reset();
        return wait(SlowEvents::feltFromMs + 30);
    });
    ASSERT_EQ(told.size(), 1u);
    EXPECT_EQ(told.front().receiver, QLatin1String("QWidget"));
}

}  // namespace
}  // namespace combwright::desktop
