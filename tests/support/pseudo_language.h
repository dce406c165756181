// A language nobody speaks: every letter of a translated sentence wears an accent and the sentence
// is two fifths longer. What stands on the screen without accents was said past the translators;
// what is cut off there would be cut off in a language of long words.
#pragma once

#include <QRegularExpression>
#include <QString>
#include <QTranslator>
#include <set>
#include <utility>

namespace combwright::test {

class PseudoLanguage : public QTranslator {
  public:
    using Said = std::pair<QString, QString>;  ///< context and sentence

    bool isEmpty() const override { return false; }

    QString translate(const char* context, const char* source, const char* /*comment*/,
                      int /*number*/) const override {
        const QString text = QString::fromUtf8(source);
        m_asked.insert({QString::fromUtf8(context), text});
        return accented(text);
    }

    /// What the program asked for so far.
    const std::set<Said>& asked() const { return m_asked; }

    static QString accented(const QString& text) {
        // A pattern of a date is no sentence.
        static const QRegularExpression pattern(QStringLiteral("^[dMy. ]+$"));
        if (pattern.match(text).hasMatch()) return text;
        // Places, HTML and {names} are the machine's.
        static const QRegularExpression kept(
            QStringLiteral("%\\d{1,2}|%n|<[^>]*>|&[a-z]+;|\\{\\w+\\}"));
        QString all;
        qsizetype letters = 0;
        qsizetype at = 0;
        const auto accent = [&](qsizetype to) {
            for (; at < to; ++at) {
                const QChar each = text.at(at);
                all += accentedLetter(each);
                if (each.isLetter()) ++letters;
            }
        };
        for (auto found = kept.globalMatch(text); found.hasNext();) {
            const auto match = found.next();
            accent(match.capturedStart());
            all += match.captured();
            at = match.capturedEnd();
        }
        accent(text.size());
        // Longer by two fifths, before the blank or mark it may end with.
        qsizetype end = all.size();
        while (end > 0 && !all.at(end - 1).isLetter()) --end;
        if (end > 0 && letters > 1) all.insert(end, QString((letters * 2 + 4) / 5, QChar(0x0167)));
        return all;
    }

    /// The words of a text that wear no accent: three letters and more.
    static QStringList plainWords(const QString& text) {
        static const QRegularExpression word(
            QStringLiteral("(?<![\\p{L}\\p{N}_.-])[A-Za-z]{3,}(?![\\p{L}\\p{N}_])"));
        QStringList words;
        for (auto found = word.globalMatch(text); found.hasNext();)
            words << found.next().captured().toLower();
        return words;
    }

  private:
    static QChar accentedLetter(QChar letter) {
        static const QString plain =
            QStringLiteral("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ");
        static const QString worn =
            QString::fromUtf8("ȧƀƈḓḗƒɠħīĵķŀḿƞǿƥɋřşŧŭṽẇẋẏẑȦƁƇḒḖƑƓĦĪĴĶĿḾȠǾƤɊŘŞŦŬṼẆẊẎẐ");
        const auto at = plain.indexOf(letter);
        return at < 0 ? letter : worn.at(at);
    }

    mutable std::set<Said> m_asked;
};

}  // namespace combwright::test
