#include "core/words/typed_words.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>
#include <string>
#include <vector>

#include "core/words/kind_words.h"
#include "core/words/wax_figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

// What a line of the yard sheet reads besides marks. No other word of it is touched: the rest of a
// line is a note, and that is the person's own.
constexpr const char* sheetWords[] = {
    QT_TRANSLATE_NOOP("typed", "not opened"), QT_TRANSLATE_NOOP("typed", "top super not opened"),
    QT_TRANSLATE_NOOP("typed", "some brood"), QT_TRANSLATE_NOOP("typed", "some stores"),
    QT_TRANSLATE_NOOP("typed", "some bees"),  QT_TRANSLATE_NOOP("typed", "no queen cells"),
    QT_TRANSLATE_NOOP("typed", "no eggs"),    QT_TRANSLATE_NOOP("typed", "queen not seen"),
    QT_TRANSLATE_NOOP("typed", "queen seen"), QT_TRANSLATE_NOOP("typed", "wash"),
    QT_TRANSLATE_NOOP("typed", "roll"),       QT_TRANSLATE_NOOP("typed", "board"),
    QT_TRANSLATE_NOOP("typed", "light"),      QT_TRANSLATE_NOOP("typed", "heavy"),
};

// What else its cells, the lines of boxes and the bench read: a kind of frames and its faults, a
// verdict, what a box has above it.
constexpr const char* furtherWords[] = {
    QT_TRANSLATE_NOOP("typed", "yes"),        QT_TRANSLATE_NOOP("typed", "no"),
    QT_TRANSLATE_NOOP("typed", "dead"),       QT_TRANSLATE_NOOP("typed", "deep"),
    QT_TRANSLATE_NOOP("typed", "medium"),     QT_TRANSLATE_NOOP("typed", "shallow"),
    QT_TRANSLATE_NOOP("typed", "excluder"),   QT_TRANSLATE_NOOP("typed", "an excluder"),
    QT_TRANSLATE_NOOP("typed", "drawn"),      QT_TRANSLATE_NOOP("typed", "fat"),
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
    QT_TRANSLATE_NOOP("typed", "burn"),       QT_TRANSLATE_NOOP("typed", "of"),
};

// A mark of the sheet that is spelled in the language spoken; in English it stays a mark alone.
struct SpelledOut {
    const char* word;
    const char* mark;
};
constexpr SpelledOut spelledOut[] = {{QT_TRANSLATE_NOOP("typed", "eggs"), "e"},
                                     {QT_TRANSLATE_NOOP("typed", "eggs seen"), "e"}};

// What may be typed for another word too.
constexpr SpelledOut alsoTyped[] = {{QT_TRANSLATE_NOOP("typed", "moths"), "moth"}};

// What stands in a list of the words that may be typed and is not typed itself.
constexpr const char* listedWords[] = {QT_TRANSLATE_NOOP("typed", "or 1 to 8"),
                                       QT_TRANSLATE_NOOP("typed", "a note"),
                                       QT_TRANSLATE_NOOP("typed", "part")};

// "Dead" is of the colony only where it stands alone or one of these follows; see deadColony.
constexpr const char* afterDead[] = {QT_TRANSLATE_NOOP("typed", "robbed"),
                                     QT_TRANSLATE_NOOP("typed", "starved"),
                                     QT_TRANSLATE_NOOP("typed", "since")};

constexpr SpelledOut weekdayWords[] = {{QT_TRANSLATE_NOOP("typed", "mon"), "mon"},
                                       {QT_TRANSLATE_NOOP("typed", "tue"), "tue"},
                                       {QT_TRANSLATE_NOOP("typed", "wed"), "wed"},
                                       {QT_TRANSLATE_NOOP("typed", "thu"), "thu"},
                                       {QT_TRANSLATE_NOOP("typed", "fri"), "fri"},
                                       {QT_TRANSLATE_NOOP("typed", "sat"), "sat"},
                                       {QT_TRANSLATE_NOOP("typed", "sun"), "sun"},
                                       {QT_TRANSLATE_NOOP("typed", "monday"), "mon"},
                                       {QT_TRANSLATE_NOOP("typed", "tuesday"), "tue"},
                                       {QT_TRANSLATE_NOOP("typed", "wednesday"), "wed"},
                                       {QT_TRANSLATE_NOOP("typed", "thursday"), "thu"},
                                       {QT_TRANSLATE_NOOP("typed", "friday"), "fri"},
                                       {QT_TRANSLATE_NOOP("typed", "saturday"), "sat"},
                                       {QT_TRANSLATE_NOOP("typed", "sunday"), "sun"}};
constexpr std::size_t shortWeekdays = 7;  ///< of them come first

struct TypedWord {
    QString spoken;
    QString english;
};
using TypedWordList = std::vector<TypedWord>;

QString spokenFor(const char* word) { return QCoreApplication::translate("typed", word); }

/// Kept where the two differ.
void addWord(TypedWordList& words, const QString& spoken, const char* word, const char* english) {
    if (spoken.compare(QLatin1String(word), Qt::CaseInsensitive) != 0)
        words.push_back({spoken, QLatin1String(english)});
}

/// A phrase before its beginning, and of two alike the one that was named first.
void longestFirst(TypedWordList& words) {
    std::stable_sort(words.begin(), words.end(), [](const TypedWord& a, const TypedWord& b) {
        return a.spoken.size() > b.spoken.size();
    });
}

TypedWordList wordsOfSheet() {
    TypedWordList words;
    for (const char* word : sheetWords) addWord(words, spokenFor(word), word, word);
    longestFirst(words);
    return words;
}

/// Each word in the order in which it is told, those of the sheet first.
TypedWordList wordsTold() {
    TypedWordList words;
    for (const char* word : sheetWords) addWord(words, spokenFor(word), word, word);
    for (const char* word : furtherWords) addWord(words, spokenFor(word), word, word);
    // As the letters and verdicts are told under the bench: "web of moth".
    for (const Fault& fault : faults()) {
        const std::string word(fault.word);
        addWord(words, faultText(fault), word.c_str(), word.c_str());
    }
    for (const std::string_view each : Choices<Verdict>::words) {
        const std::string word(each);
        addWord(words, choiceText(each), word.c_str(), word.c_str());
    }
    return words;
}

TypedWordList wordsOfAll() {
    TypedWordList words = wordsTold();
    for (const SpelledOut& each : spelledOut)
        addWord(words, spokenFor(each.word), each.word, each.mark);
    for (const SpelledOut& each : alsoTyped)
        addWord(words, spokenFor(each.word), each.word, each.mark);
    longestFirst(words);
    return words;
}

bool isPartOfWord(const QString& text, qsizetype at) {
    return at >= 0 && at < text.size() && text.at(at).isLetterOrNumber();
}

/// Whether the word stands there whole.
bool wordStandsAt(const QString& text, qsizetype at, const QString& word) {
    return !isPartOfWord(text, at - 1) && !isPartOfWord(text, at + word.size()) &&
           QStringView(text).mid(at, word.size()).compare(word, Qt::CaseInsensitive) == 0;
}

/// A part without quotes, word for word; what was exchanged is not read a second time.
QString wordsExchanged(const QString& part, const TypedWordList& words) {
    QString all;
    for (qsizetype at = 0; at < part.size();) {
        const auto found = std::find_if(words.begin(), words.end(), [&](const TypedWord& word) {
            return wordStandsAt(part, at, word.spoken);
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

QString lineInEnglish(const QString& line, const TypedWordList& words) {
    if (words.empty()) return line;
    const QChar quote = QLatin1Char('"');
    QStringList parts = line.split(quote);
    for (qsizetype i = 0; i < parts.size(); i += 2) parts[i] = wordsExchanged(parts[i], words);
    return parts.join(quote);
}

/// A word that is neither a mark nor one the sheet reads: beside it a spelled mark is part of a
/// note, "kaum Stifte" or "Stifte nicht gesehen".
bool isOfANote(QString word, const TypedWordList& known) {
    if (word.endsWith(QLatin1Char(',')) || word.endsWith(QLatin1Char(';'))) word.chop(1);
    const bool letters =
        std::all_of(word.begin(), word.end(), [](QChar each) { return each.isLetter(); });
    const bool english = std::any_of(known.begin(), known.end(), [&](const TypedWord& each) {
        return each.english.split(QLatin1Char(' ')).contains(word, Qt::CaseInsensitive);
    });
    return letters && word.size() > 2 && !english;
}

/// The marks that are spelled out, once the rest of the line is English.
QString withSpelledMarks(const QString& line, const TypedWordList& known) {
    QString text = line;
    for (const SpelledOut& each : spelledOut) {
        const QString spoken = spokenFor(each.word);
        if (spoken.compare(QLatin1String(each.word), Qt::CaseInsensitive) == 0) continue;
        for (qsizetype at = 0; at + spoken.size() <= text.size(); ++at) {
            if (!wordStandsAt(text, at, spoken)) continue;
            const QString before =
                text.left(at).section(QLatin1Char(' '), -1, -1, QString::SectionSkipEmpty);
            const QString behind = text.mid(at + spoken.size());
            const bool ends = behind.isEmpty() || behind.startsWith(QLatin1Char(',')) ||
                              behind.startsWith(QLatin1Char(';'));
            const bool parted =
                before.endsWith(QLatin1Char(',')) || before.endsWith(QLatin1Char(';'));
            const QString next = behind.section(QLatin1Char(' '), 0, 0, QString::SectionSkipEmpty);
            const bool note = (!before.isEmpty() && !parted && isOfANote(before, known)) ||
                              (!ends && (!behind.startsWith(QLatin1Char(' ')) ||
                                         (!next.isEmpty() && isOfANote(next, known))));
            if (!note) text.replace(at, spoken.size(), QLatin1String(each.mark));
        }
    }
    return text;
}

/// "tot", "tot, ausgeraubt", "tot seit März": of the colony, as the line's first word. Anything
/// else that begins so ("tot gemeldet") is a note and stays.
QString withDead(const QString& line) {
    const QString spoken = spokenFor("dead");
    if (spoken == QLatin1String("dead") || !wordStandsAt(line, 0, spoken)) return line;
    const QString behind = line.mid(spoken.size()).trimmed();
    if (behind.isEmpty()) return QStringLiteral("dead");
    if (!behind.front().isLetterOrNumber()) return QStringLiteral("dead") + line.mid(spoken.size());
    const QString next = behind.section(QLatin1Char(' '), 0, 0).section(QLatin1Char(','), 0, 0);
    for (const char* each : afterDead)
        if (next.compare(spokenFor(each), Qt::CaseInsensitive) == 0)
            return QStringLiteral("dead, ") + behind;
    return line;
}

}  // namespace

QString typedInEnglish(const QString& line) { return lineInEnglish(line, wordsOfAll()); }

QString sheetInEnglish(const QString& line) {
    const TypedWordList words = wordsOfSheet();
    if (words.empty()) return line;
    return withDead(withSpelledMarks(lineInEnglish(line, words), words));
}

QString typedAsSpoken(const QString& words) {
    TypedWordList back;
    for (const TypedWord& each : wordsTold()) back.push_back({each.english, each.spoken});
    for (const char* word : listedWords) back.push_back({QLatin1String(word), spokenFor(word)});
    longestFirst(back);
    const QString parted = QStringLiteral("; ");
    const QString listed = QStringLiteral(", ");
    QStringList parts = words.split(parted);
    for (QString& part : parts) {
        if (const QString kind = kindText(part.toStdString()); kind != part) {
            part = kind;
            continue;
        }
        QStringList each = part.split(listed);
        for (QString& word : each) {
            const QString kind = kindText(word.toStdString());
            word = kind == word ? wordsExchanged(word, back) : kind;
        }
        part = each.join(listed);
    }
    return parts.join(parted);
}

QString weekdaysInEnglish(const QString& line) {
    TypedWordList words;
    for (const SpelledOut& each : weekdayWords) {
        const QString spoken = spokenFor(each.word);
        addWord(words, spoken, each.word, each.mark);
        // Cut short it may have its stop.
        addWord(words, spoken + QLatin1Char('.'), (each.word + std::string(".")).c_str(),
                each.mark);
    }
    longestFirst(words);
    return lineInEnglish(line, words);
}

QString weekdaysAsSpoken(const QString& english) {
    QString shown = english;
    for (std::size_t n = 0; n < shortWeekdays; ++n) {
        const QLatin1String mark(weekdayWords[n].mark);
        const QString spoken = spokenFor(weekdayWords[n].word);
        // As they stand where they are the same: a board writes them with capitals.
        if (spoken.compare(mark, Qt::CaseInsensitive) != 0)
            shown.replace(mark, spoken, Qt::CaseInsensitive);
    }
    return shown;
}

QString shadesAsSpoken(const QString& english) {
    QStringList shades = english.split(QStringLiteral(", "));
    for (QString& shade : shades) shade = shadeText(shade.toStdString());
    return shades.join(QStringLiteral(", "));
}

QString shadesInEnglish(const QString& line) {
    TypedWordList words;
    for (std::size_t n = 0; n < Choices<WaxShade>::words.size(); ++n) {
        const std::string word(Choices<WaxShade>::words[n]);
        addWord(words, shadeText(static_cast<WaxShade>(n)), word.c_str(), word.c_str());
    }
    return lineInEnglish(line, words);
}

}  // namespace combwright
