#include <QCoreApplication>
#include <QIODevice>

#include "app/cli/command.h"
#include "app/system_clock.h"

int main(int argc, char** argv) {
    const QCoreApplication application(argc, argv);
    QCoreApplication::setApplicationName(QStringLiteral("combwright-cli"));
    QTextStream in(stdin, QIODevice::ReadOnly);
    QTextStream out(stdout, QIODevice::WriteOnly);
    QTextStream err(stderr, QIODevice::WriteOnly);
    const combwright::SystemClock clock;
    return combwright::cli::run(QCoreApplication::arguments().mid(1), {in, out, err}, clock);
}
