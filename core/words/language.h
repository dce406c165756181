// The language the program speaks. Its sentences stand in the sources in English; another language
// is a list of them (resources/words/*.ts) that is compiled in. JSON and what is kept in a file are
// English always, whatever is spoken.
#pragma once

#include <QLocale>
#include <QString>
#include <QTranslator>
#include <array>
#include <optional>

namespace combwright {

enum class Language { English, German };

/// "en" and "de", as typed behind --language; nothing for any other word.
std::optional<Language> languageNamed(const QString& name);
QString languageName(Language language);
/// What it calls itself: "English", "Deutsch".
QString languageItself(Language language);
/// The first of the person's languages that the program speaks (LANGUAGE, LC_ALL, LC_MESSAGES,
/// LANG); English where there is none.
Language languageOfTheDesktop();

/// Speaks a language, with its decimal mark and its names of days and months, for as long as it
/// lives. Needs an application. Thousands are never parted: "1.240" would mean two things.
class Speaking {
  public:
    explicit Speaking(Language language);
    ~Speaking();
    Speaking(const Speaking&) = delete;
    Speaking& operator=(const Speaking&) = delete;

  private:
    QLocale m_before;
    // Our own sentences, and those of the window system's buttons.
    std::array<QTranslator, 2> m_translators;
};

}  // namespace combwright
