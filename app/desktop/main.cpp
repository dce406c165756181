// The window: arguments, look, session and shell are put together here and nothing is decided.
#include <QScreen>
#include <QTemporaryDir>
#include <QTextStream>
#include <optional>

#include "app/desktop/given_words.h"
#include "app/desktop/life.h"
#include "app/desktop/pictures.h"
#include "app/desktop/prints.h"
#include "app/desktop/slow_events.h"
#include "app/system_clock.h"
#include "core/words/language.h"
#include "ui/look/style.h"
#include "ui/print/page_painter.h"
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
    std::int64_t steadyMs() const override { return m_system.steadyMs(); }

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
    desktop::GivenWords words;
    QStringList given;
    for (int i = 0; i < argc; ++i) given << QString::fromLocal8Bit(argv[i]);
    if (const auto answer = words.answered(given)) {
        QTextStream(answer->exit == 0 ? stdout : stderr) << answer->text << '\n';
        return answer->exit;
    }
    // Pictures and prints are made without a display.
    const bool atWindow = !words.has("pictures") && !words.has("print");
    if (!atWindow && qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM"))
        qputenv("QT_QPA_PLATFORM", "offscreen");
    // Without a home, what is remembered would be kept at the root of the disk.
    std::optional<QTemporaryDir> home;
    if (qEnvironmentVariableIsEmpty("HOME")) qputenv("HOME", home.emplace().path().toLocal8Bit());
    desktop::WatchedApplication application(argc, argv);
    QApplication::setApplicationName(QStringLiteral("combwright"));
    QApplication::setApplicationVersion(QStringLiteral(COMBWRIGHT_VERSION));
    QApplication::setDesktopFileName(QStringLiteral("combwright"));
    words.take(QApplication::arguments());

    std::optional<Day> chosen;
    if (words.has("day")) {
        chosen = parseDay(words.value("day").toStdString());
        if (!chosen)
            return fail(
                QStringLiteral("--day %1 is no day; write year-month-day.").arg(words.value("day")),
                2);
    }
    // Prints and pictures are the same for everybody unless --units or --language says otherwise.
    Preferences preferences = atWindow ? readPreferences() : Preferences{};
    if (words.has("units")) {
        const auto named = unitsNamed(words.value("units"));
        if (!named)
            return fail(
                QStringLiteral("--units %1 is not known; metric or us.").arg(words.value("units")),
                2);
        preferences.units = *named;
    }
    auto language = preferences.language;
    if (words.has("language")) {
        language = languageNamed(words.value("language"));
        if (!language)
            return fail(QStringLiteral("--language %1 is not known; en or de.")
                            .arg(words.value("language")),
                        2);
    }
    const Speaking speaking(
        language.value_or(atWindow ? languageOfTheDesktop() : Language::English));
    const auto sheet = paperNamed(words.has("paper") ? words.value("paper") : QStringLiteral("a4"));
    if (!sheet)
        return fail(
            QStringLiteral("--paper %1 is not known; a4 or letter.").arg(words.value("paper")), 2);
    setShownUnits(preferences.units);
    const ChosenClock clock(chosen);
    Session session(clock);
    // Dark is told from the desktop's palette before it is ours.
    session.setLook(
        applyLook(application, isDark(QApplication::palette()), preferences.textFactor));
    if (!atWindow) session.leaveNoTrace();
    MainWindow window(session);
    window.resize(1280, 800);

    const QStringList files = words.files();
    if (files.size() > 1) return fail(QStringLiteral("Give one season file at most."), 2);
    if (!atWindow) {
        if (!files.isEmpty() && !session.open(files.front())) {
            const bool newer = session.notOpened() && session.notOpened()->newer;
            return fail(session.lastTold(), newer ? 4 : 3);
        }
        if (words.has("print"))
            return desktop::printSheet(window, words.value("print"), words.value("to"), *sheet,
                                       words.has("large") ? largeType : 1.0, session);
        if (!session.hasSeason()) return fail(QStringLiteral("--pictures needs a season file."), 2);
        return desktop::writePictures(application, window, session, words.value("pictures"));
    }
    const auto keep = [&session] {
        Preferences kept = readPreferences();
        kept.units = shownUnits();
        kept.textFactor = session.look().factor;
        keepPreferences(kept);
    };
    QObject::connect(&session, &Session::unitsChanged, keep);
    QObject::connect(&session, &Session::lookChanged, keep);
    const desktop::Life life(window, session);
    if (!files.isEmpty()) {
        if (!words.has("another-window") && life.openElsewhere(files.front())) {
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
