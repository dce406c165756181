#include "app/desktop/given_words.h"

#include <QCommandLineOption>
#include <QCoreApplication>
#include <algorithm>
#include <array>

#include "core/support/version.h"

namespace combwright::desktop {
namespace {

/// Words the window system takes for itself, with one dash or two; from the documentation of
/// QGuiApplication and QApplication.
constexpr std::array systemWithValue{"platform",
                                     "platformpluginpath",
                                     "platformtheme",
                                     "plugin",
                                     "qwindowgeometry",
                                     "geometry",
                                     "icon",
                                     "qwindowicon",
                                     "qwindowtitle",
                                     "title",
                                     "session",
                                     "display",
                                     "fontengine",
                                     "style",
                                     "stylesheet",
                                     "qmljsdebugger"};
constexpr std::array systemAlone{"reverse", "widgetcount", "nograb", "dograb", "sync"};

QStringList withoutSystemWords(const QStringList& words) {
    QStringList ours;
    for (qsizetype i = 0; i < words.size(); ++i) {
        QString name = words[i];
        if (i > 0 && name.startsWith(QLatin1Char('-'))) {
            name.remove(0, name.startsWith(QLatin1String("--")) ? 2 : 1);
            const bool joined = name.contains(QLatin1Char('='));
            name = name.section(QLatin1Char('='), 0, 0);
            const auto is = [&name](const char* each) { return name == QLatin1String(each); };
            if (std::any_of(systemAlone.begin(), systemAlone.end(), is)) continue;
            if (std::any_of(systemWithValue.begin(), systemWithValue.end(), is)) {
                if (!joined) ++i;
                continue;
            }
        }
        ours << words[i];
    }
    return ours;
}

}  // namespace

GivenWords::GivenWords() {
    m_parser.setApplicationDescription(
        QCoreApplication::translate("main", "A sideline beekeeper's whole season."));
    m_parser.addHelpOption();
    m_parser.addVersionOption();
    m_parser.addOptions({
        {QStringLiteral("day"), QStringLiteral("what day it is today"),
         QStringLiteral("YYYY-MM-DD")},
        {QStringLiteral("units"), QStringLiteral("units shown: metric or us"),
         QStringLiteral("metric|us")},
        {QStringLiteral("language"), QStringLiteral("language spoken: en or de"),
         QStringLiteral("en|de")},
        {QStringLiteral("pictures"), QStringLiteral("write a picture of every place into DIR"),
         QStringLiteral("DIR")},
        {QStringLiteral("print"), QStringLiteral("print a sheet ('list' lists them)"),
         QStringLiteral("NAME")},
        {QStringLiteral("to"), QStringLiteral("where --print writes its PDF"),
         QStringLiteral("OUT.pdf")},
        {QStringLiteral("paper"), QStringLiteral("paper of --print: a4 or letter"),
         QStringLiteral("a4|letter")},
        {QStringLiteral("large"), QStringLiteral("--print in large type")},
        {QStringLiteral("another-window"),
         QStringLiteral("open a window of its own even where one has the file open")},
    });
    m_parser.addPositionalArgument(QStringLiteral("FILE"), QStringLiteral("season file to open"),
                                   QStringLiteral("[FILE]"));
}

std::optional<GivenWords::Answer> GivenWords::answered(const QStringList& words) {
    if (!m_parser.parse(withoutSystemWords(words)))
        return Answer{
            m_parser.errorText() + QStringLiteral(" combwright --help lists the options."), 2};
    if (m_parser.isSet(QStringLiteral("version")))
        return Answer{QStringLiteral("combwright ") +
                          QString::fromUtf8(programVersion.data(),
                                            static_cast<qsizetype>(programVersion.size())),
                      0};
    if (!m_parser.isSet(QStringLiteral("help")) && !m_parser.isSet(QStringLiteral("help-all")))
        return std::nullopt;
    // The text names the program, which the parser asks of an application: one without a window.
    if (QCoreApplication::instance()) return Answer{m_parser.helpText().trimmed(), 0};
    QByteArray name("combwright");
    std::array<char*, 2> arguments{name.data(), nullptr};
    int count = 1;
    const QCoreApplication windowless(count, arguments.data());
    return Answer{m_parser.helpText().trimmed(), 0};
}

}  // namespace combwright::desktop
