#include "core/words/language.h"

#include <QCoreApplication>
#include <QLibraryInfo>

namespace combwright {
namespace {

struct Spoken {
    Language language;
    const char* name;
    const char* itself;
    QLocale::Language of;
};
constexpr Spoken spokenLanguages[] = {
    {Language::English, "en", "English", QLocale::English},
    {Language::German, "de", "Deutsch", QLocale::German},
};

const Spoken& spoken(Language language) {
    return spokenLanguages[static_cast<std::size_t>(language)];
}

/// The desktop's own where it fits the language, for it knows the person's country.
QLocale localeOf(Language language) {
    const QLocale desktop = QLocale::system();
    QLocale locale = desktop;
    if (language == Language::German && desktop.language() != QLocale::German)
        locale = QLocale(QLocale::German, QLocale::Germany);
    // Else an English sentence would name its day in French, or count it in Arabic digits.
    if (language == Language::English && desktop.language() != QLocale::English &&
        desktop.language() != QLocale::C)
        locale = QLocale(QLocale::English, QLocale::UnitedKingdom);
    locale.setNumberOptions(locale.numberOptions() | QLocale::OmitGroupSeparator);
    return locale;
}

}  // namespace

std::optional<Language> languageNamed(const QString& name) {
    for (const Spoken& each : spokenLanguages)
        if (name == QLatin1String(each.name)) return each.language;
    return std::nullopt;
}

QString languageName(Language language) { return QLatin1String(spoken(language).name); }
QString languageItself(Language language) { return QLatin1String(spoken(language).itself); }

Language languageOfTheDesktop() {
    for (const QString& each : QLocale::system().uiLanguages())
        if (const auto known = languageNamed(each.section(QLatin1Char('-'), 0, 0))) return *known;
    return Language::English;
}

Speaking::Speaking(Language language) {
    QLocale::setDefault(localeOf(language));
    const QString name = languageName(language);
    const QString folders[] = {QStringLiteral(":/combwright/words"),
                               QLibraryInfo::path(QLibraryInfo::TranslationsPath)};
    const QString files[] = {QStringLiteral("combwright_"), QStringLiteral("qtbase_")};
    for (std::size_t i = 0; i < m_translators.size(); ++i)
        if (m_translators[i].load(files[i] + name, folders[i]))
            QCoreApplication::installTranslator(&m_translators[i]);
}

Speaking::~Speaking() {
    for (QTranslator& each : m_translators) QCoreApplication::removeTranslator(&each);
    QLocale::setDefault(m_before);
}

}  // namespace combwright
