#include <QCoreApplication>
#include <QIODevice>
#include <QStringDecoder>
#include <cstdio>

#include "app/cli/command.h"
#include "app/system_clock.h"

int main(int argc, char** argv) {
    const QCoreApplication application(argc, argv);
    QCoreApplication::setApplicationName(QStringLiteral("combwright-cli"));
    QTextStream in(stdin, QIODevice::ReadOnly);
    QTextStream out(stdout, QIODevice::WriteOnly);
    QTextStream err(stderr, QIODevice::WriteOnly);
    // A name that is no text would be taken for another.
    for (int i = 1; i < argc; ++i) {
        QStringDecoder decoder(QStringDecoder::Utf8, QStringDecoder::Flag::Stateless);
        const QString word = decoder(argv[i]);
        if (!decoder.hasError()) continue;
        err << "What stands behind the program is not UTF-8: " << word << '\n';
        return combwright::cli::WrongUsage;
    }
    const combwright::SystemClock clock;
    const int code =
        combwright::cli::run(QCoreApplication::arguments().mid(1), {in, out, err}, clock);
    out.flush();
    const bool written = out.status() == QTextStream::Ok && std::fflush(stdout) == 0;
    if (written) return code;
    err << "The answer could not be written. What was kept in the file stays kept.\n";
    return code == combwright::cli::Done ? combwright::cli::FileTrouble : code;
}
