// The window: arguments, look, session and shell are put together here and nothing is decided.
#include <QApplication>
#include <QCommandLineParser>
#include <QScreen>
#include <QTextStream>

#include "app/desktop/life.h"
#include "app/desktop/pictures.h"
#include "app/desktop/prints.h"
#include "app/system_clock.h"
#include "ui/look/style.h"
#include "ui/print/print_dialog.h"
#include "ui/shell/main_window.h"
#include "ui/shell/preferences.h"

namespace {

using namespace combwright;

/// Today as the person said with --day, else as the machine says.
class ChosenClock : public Clock {
  public:
    explicit ChosenClock(std::optional<Day> day) : m_day(day) {}
    Day today() const override { return m_day.value_or(m_system.today()); }
    Instant now() const override { return m_system.now(); }

  private:
    SystemClock m_system;
    std::optional<Day> m_day;
};

int fail(const QString& text, int code) {
    QTextStream(stderr) << text << '\n';
    return code;
}

}  // namespace

int main(int argc, char** argv) {
    // Pictures and prints are made without a display.
    for (int i = 1; i < argc; ++i) {
        const QByteArray word(argv[i]);
        const bool headless = word == "--pictures" || word == "--print";
        if (headless && qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM"))
            qputenv("QT_QPA_PLATFORM", "offscreen");
    }
    QApplication application(argc, argv);
    QApplication::setApplicationName(QStringLiteral("combwright"));
    QApplication::setApplicationVersion(QStringLiteral(COMBWRIGHT_VERSION));
    QApplication::setDesktopFileName(QStringLiteral("combwright"));

    QCommandLineParser parser;
    parser.setApplicationDescription(
        QApplication::translate("main", "A sideline beekeeper's whole season."));
    parser.addHelpOption();
    parser.addVersionOption();
    const QCommandLineOption day(QStringLiteral("day"), QStringLiteral("what day it is today"),
                                 QStringLiteral("YYYY-MM-DD"));
    const QCommandLineOption pictures(QStringLiteral("pictures"),
                                      QStringLiteral("write a picture of every place into DIR"),
                                      QStringLiteral("DIR"));
    const QCommandLineOption print(QStringLiteral("print"),
                                   QStringLiteral("print a sheet ('list' lists them)"),
                                   QStringLiteral("NAME"));
    const QCommandLineOption to(QStringLiteral("to"),
                                QStringLiteral("where --print writes its PDF"),
                                QStringLiteral("OUT.pdf"));
    const QCommandLineOption units(QStringLiteral("units"),
                                   QStringLiteral("units shown: metric or us"),
                                   QStringLiteral("metric|us"));
    const QCommandLineOption another(
        QStringLiteral("another-window"),
        QStringLiteral("open a window of its own even where one has the file open"));
    const QCommandLineOption paper(QStringLiteral("paper"),
                                   QStringLiteral("paper of --print: a4 or letter"),
                                   QStringLiteral("a4|letter"));
    parser.addOptions({day, units, pictures, print, to, paper, another});
    parser.addPositionalArgument(QStringLiteral("FILE"), QStringLiteral("season file to open"),
                                 QStringLiteral("[FILE]"));
    parser.process(application);

    std::optional<Day> chosen;
    if (parser.isSet(day)) {
        chosen = parseDay(parser.value(day).toStdString());
        if (!chosen)
            return fail(
                QStringLiteral("--day %1 is no day; write year-month-day.").arg(parser.value(day)),
                2);
    }
    const bool atWindow = !parser.isSet(pictures) && !parser.isSet(print);
    // Prints and pictures are the same for everybody unless --units says otherwise.
    Preferences preferences = atWindow ? readPreferences() : Preferences{};
    if (parser.isSet(units)) {
        const auto named = unitsNamed(parser.value(units));
        if (!named)
            return fail(
                QStringLiteral("--units %1 is not known; metric or us.").arg(parser.value(units)),
                2);
        preferences.units = *named;
    }
    const auto sheet = paperNamed(parser.isSet(paper) ? parser.value(paper) : QStringLiteral("a4"));
    if (!sheet)
        return fail(
            QStringLiteral("--paper %1 is not known; a4 or letter.").arg(parser.value(paper)), 2);
    setShownUnits(preferences.units);
    const ChosenClock clock(chosen);
    Session session(clock);
    // Dark is told from the desktop's palette before it is ours.
    session.setLook(
        applyLook(application, isDark(QApplication::palette()), preferences.textFactor));
    if (!atWindow) session.leaveNoTrace();
    MainWindow window(session);
    window.resize(1280, 800);

    const QStringList files = parser.positionalArguments();
    if (files.size() > 1) return fail(QStringLiteral("Give one season file at most."), 2);
    if (!atWindow) {
        if (!files.isEmpty() && !session.open(files.front())) {
            const bool newer = session.notOpened() && session.notOpened()->newer;
            return fail(session.lastTold(), newer ? 4 : 3);
        }
        if (parser.isSet(print))
            return desktop::printSheet(window, parser.value(print), parser.value(to), *sheet,
                                       session);
        if (!session.hasSeason()) return fail(QStringLiteral("--pictures needs a season file."), 2);
        return desktop::writePictures(application, window, session, parser.value(pictures));
    }
    const auto keep = [&session] { keepPreferences({shownUnits(), session.look().factor}); };
    QObject::connect(&session, &Session::unitsChanged, keep);
    QObject::connect(&session, &Session::lookChanged, keep);
    const desktop::Life life(window, session);
    if (!files.isEmpty()) {
        if (!parser.isSet(another) && life.openElsewhere(files.front())) {
            QTextStream(stdout) << QStringLiteral(
                                       "%1 is open already; its window was asked to come forward.")
                                       .arg(files.front())
                                << '\n';
            return 0;
        }
        session.open(files.front());
    }
    // A screen no larger than the window would hide its foot behind the frame.
    const QSize screen = QGuiApplication::primaryScreen()->availableSize();
    if (screen.width() <= window.width() || screen.height() <= window.height() + 40)
        window.showMaximized();
    else
        window.show();
    return QApplication::exec();
}
