// What was written behind the program's name. Help, version and wrong words are answered before the
// window system is asked for anything: they must be where there is no display.
#pragma once

#include <QCommandLineParser>
#include <QString>
#include <QStringList>
#include <optional>

namespace combwright::desktop {

class GivenWords {
  public:
    GivenWords();

    struct Answer {
        QString text;
        int exit = 0;  ///< 0 is said on standard output, anything else on standard error
    };
    /// What is to be said instead of opening a window, for help, version and words that are wrong;
    /// nothing where the program goes on. `words` with the program's own name in front.
    std::optional<Answer> answered(const QStringList& words);
    /// Takes the words as they are left when Qt has taken its own.
    void take(const QStringList& words) { m_parser.parse(words); }

    bool has(const char* option) const { return m_parser.isSet(QLatin1String(option)); }
    QString value(const char* option) const { return m_parser.value(QLatin1String(option)); }
    QStringList files() const { return m_parser.positionalArguments(); }

  private:
    QCommandLineParser m_parser;
};

}  // namespace combwright::desktop
