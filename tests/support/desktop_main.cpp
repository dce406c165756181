#include <QLineEdit>
#include <QTest>
#include <cstdio>

#include "app/desktop/life.h"
#include "tests/support/support.h"
#include "tests/support/typist.h"
#include "tests/support/ui_program.h"
#include "ui/look/style.h"

namespace {

using namespace combwright;

void say(const char* what, int number) {
    std::printf("%s %d\n", what, number);
    std::fflush(stdout);
}

/// Line by line down the sheet, letter by letter.
int fillSheet() {
    for (int row = 1; row <= test::typistHives; ++row) {
        int letters = 0;
        for (const char* letter = test::typedLine; *letter; ++letter) {
            if (!qobject_cast<QLineEdit*>(QApplication::focusWidget())) return 4;
            QTest::keyClick(QApplication::focusWidget(), *letter);
            say("letter", ++letters);
            QTest::qWait(test::msPerLetter);
        }
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
        say("kept", row);
    }
    return 0;
}

/// Opens the sheet, types a line, says so, and waits to be ended.
int typeUntilEnded() {
    qputenv("XDG_STATE_HOME", qgetenv(test::typistState));
    const test::FakeClock clock;
    Session session(clock);
    session.setLook(applyLook(*qobject_cast<QApplication*>(QApplication::instance()), false));
    MainWindow window(session);
    const desktop::Life life(window, session);
    window.resize(1280, 800);
    window.show();
    window.activateWindow();
    if (!QTest::qWaitForWindowActive(&window)) return 2;
    if (!session.open(qEnvironmentVariable(test::typistSeason))) return 3;
    // The second place is the yard.
    QTest::keyClick(&window, Qt::Key_2, Qt::ControlModifier);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_S);
    auto* line = qobject_cast<QLineEdit*>(QApplication::focusWidget());
    if (!line) return 4;
    if (qEnvironmentVariableIsSet(test::typistGoesOn)) return fillSheet();
    QTest::keyClicks(line, QStringLiteral("e b7 s3"));
    std::puts("typed");
    std::fflush(stdout);
    QApplication::exec();
    std::puts("ended well");
    return 0;
}

}  // namespace

int main(int argc, char** argv) {
    const test::UiProgram program(argc, argv);
    return qEnvironmentVariableIsSet(test::typistSeason) ? typeUntilEnded() : RUN_ALL_TESTS();
}
