// A key pressed and let go, as a hand does it.
#pragma once

#include <QApplication>
#include <QKeyEvent>
#include <QWidget>

namespace combwright::bench {

inline void pressed(QWidget* at, const QString& text, int key = 0) {
    QKeyEvent press(QEvent::KeyPress, key, Qt::NoModifier, text);
    QApplication::sendEvent(at, &press);
    QKeyEvent release(QEvent::KeyRelease, key, Qt::NoModifier, text);
    QApplication::sendEvent(at, &release);
}

}  // namespace combwright::bench
