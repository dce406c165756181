#include "core/words/typed_words.h"

#include <QCoreApplication>
#include <QRegularExpression>
#include <algorithm>
#include <vector>

namespace combwright {
namespace {

// What the yard sheet, the lines of boxes and the bench read besides marks; a kind of frames and
// its faults, a verdict, what a box has above it.
constexpr const char* typedWords[] = {
    QT_TRANSLATE_NOOP("typed", "not opened"), QT_TRANSLATE_NOOP("typed", "top super not opened"),
    QT_TRANSLATE_NOOP("typed", "some brood"), QT_TRANSLATE_NOOP("typed", "some stores"),
    QT_TRANSLATE_NOOP("typed", "some bees"),  QT_TRANSLATE_NOOP("typed", "no queen cells"),
    QT_TRANSLATE_NOOP("typed", "no eggs"),    QT_TRANSLATE_NOOP("typed", "queen not seen"),
    QT_TRANSLATE_NOOP("typed", "queen seen"), QT_TRANSLATE_NOOP("typed", "yes"),
    QT_TRANSLATE_NOOP("typed", "no"),         QT_TRANSLATE_NOOP("typed", "wash"),
    QT_TRANSLATE_NOOP("typed", "roll"),       QT_TRANSLATE_NOOP("typed", "board"),
    QT_TRANSLATE_NOOP("typed", "dead"),       QT_TRANSLATE_NOOP("typed", "light"),
    QT_TRANSLATE_NOOP("typed", "heavy"),      QT_TRANSLATE_NOOP("typed", "deep"),
    QT_TRANSLATE_NOOP("typed", "medium"),     QT_TRANSLATE_NOOP("typed", "shallow"),
    QT_TRANSLATE_NOOP("typed", "excluder"),   QT_TRANSLATE_NOOP("typed", "drawn"),
    QT_TRANSLATE_NOOP("typed", "drawn fat"),  QT_TRANSLATE_NOOP("typed", "part drawn"),
    QT_TRANSLATE_NOOP("typed", "foundation"), QT_TRANSLATE_NOOP("typed", "bare"),
    QT_TRANSLATE_NOOP("typed", "broken"),     QT_TRANSLATE_NOOP("typed", "moth"),
    QT_TRANSLATE_NOOP("typed", "web"),        QT_TRANSLATE_NOOP("typed", "no web"),
    QT_TRANSLATE_NOOP("typed", "bent"),       QT_TRANSLATE_NOOP("typed", "slime"),
    QT_TRANSLATE_NOOP("typed", "mice"),       QT_TRANSLATE_NOOP("typed", "mold"),
    QT_TRANSLATE_NOOP("typed", "drone"),      QT_TRANSLATE_NOOP("typed", "propolis"),
    QT_TRANSLATE_NOOP("typed", "old"),        QT_TRANSLATE_NOOP("typed", "pollen"),
    QT_TRANSLATE_NOOP("typed", "capped"),     QT_TRANSLATE_NOOP("typed", "full"),
    QT_TRANSLATE_NOOP("typed", "scraped"),    QT_TRANSLATE_NOOP("typed", "not scraped"),
    QT_TRANSLATE_NOOP("typed", "paint"),      QT_TRANSLATE_NOOP("typed", "no paint"),
    QT_TRANSLATE_NOOP("typed", "wax"),        QT_TRANSLATE_NOOP("typed", "wood"),
    QT_TRANSLATE_NOOP("typed", "years"),      QT_TRANSLATE_NOOP("typed", "empty"),
    QT_TRANSLATE_NOOP("typed", "good"),       QT_TRANSLATE_NOOP("typed", "keep"),
    QT_TRANSLATE_NOOP("typed", "scrape"),     QT_TRANSLATE_NOOP("typed", "repair"),
    QT_TRANSLATE_NOOP("typed", "refit"),      QT_TRANSLATE_NOOP("typed", "freeze"),
    QT_TRANSLATE_NOOP("typed", "melt"),       QT_TRANSLATE_NOOP("typed", "hold"),
    QT_TRANSLATE_NOOP("typed", "burn"),
};

struct TypedWord {
    QString spoken;
    QString english;
};

/// Those that differ from the English word, the longest first: a phrase before its beginning.
std::vector<TypedWord> wordsSpoken() {
    std::vector<TypedWord> words;
    for (const char* word : typedWords) {
        const QString spoken = QCoreApplication::translate("typed", word);
        if (spoken.compare(QLatin1String(word), Qt::CaseInsensitive) != 0)
            words.push_back({spoken, QLatin1String(word)});
    }
    std::stable_sort(words.begin(), words.end(), [](const TypedWord& a, const TypedWord& b) {
        return a.spoken.size() > b.spoken.size();
    });
    return words;
}

/// A part without quotes, word for word; what became English is not read a second time.
QString partInEnglish(const QString& part, const std::vector<TypedWord>& words) {
    QString all;
    for (qsizetype at = 0; at < part.size();) {
        const bool begins = at == 0 || !part.at(at - 1).isLetterOrNumber();
        const auto found = std::find_if(words.begin(), words.end(), [&](const TypedWord& word) {
            const qsizetype end = at + word.spoken.size();
            return begins &&
                   QStringView(part)
                           .mid(at, word.spoken.size())
                           .compare(word.spoken, Qt::CaseInsensitive) == 0 &&
                   (end == part.size() || !part.at(end).isLetterOrNumber());
        });
        if (found == words.end()) {
            all += part.at(at++);
            continue;
        }
        all += found->english;
        at += found->spoken.size();
    }
    return all;
}

}  // namespace

QString typedInEnglish(const QString& line) {
    const std::vector<TypedWord> words = wordsSpoken();
    if (words.empty()) return line;
    const QChar quote = QLatin1Char('"');
    QStringList parts = line.split(quote);
    for (qsizetype i = 0; i < parts.size(); i += 2) parts[i] = partInEnglish(parts[i], words);
    return parts.join(quote);
}

}  // namespace combwright
