// The lists of words in other languages say what the program says: gathered anew they are the same,
// nothing is said past the gatherer, and what a translation puts into its sentence is what the
// sentence has.
#include <gtest/gtest.h>

#include <QFile>
#include <QProcess>
#include <QRegularExpression>
#include <QTemporaryDir>
#include <QXmlStreamReader>
#include <algorithm>
#include <set>
#include <vector>

#include "tests/layout/source_tree.h"

namespace combwright::layout {
namespace {

/// Sentences nobody has put into German yet; the number only ever shrinks.
constexpr std::size_t leftInEnglish = 0;

struct ListedWord {
    QString context;
    QString source;
    QString comment;
    QStringList translations;  ///< one; of a numbered sentence its plurals
    bool finished = false;
};

std::vector<ListedWord> wordsListed(const QString& path) {
    QFile file(path);
    EXPECT_TRUE(file.open(QIODevice::ReadOnly)) << path.toStdString();
    QXmlStreamReader xml(&file);
    std::vector<ListedWord> list;
    QString context;
    while (!xml.atEnd()) {
        if (xml.readNext() != QXmlStreamReader::StartElement) continue;
        if (xml.name() == QLatin1String("name")) {
            context = xml.readElementText();
        } else if (xml.name() == QLatin1String("message")) {
            list.push_back({context, {}, {}, {}, true});
        } else if (xml.name() == QLatin1String("source")) {
            list.back().source = xml.readElementText();
        } else if (xml.name() == QLatin1String("comment")) {
            list.back().comment = xml.readElementText();
        } else if (xml.name() == QLatin1String("translation")) {
            list.back().finished = !xml.attributes().hasAttribute(QLatin1String("type"));
            // Of a numbered sentence only blanks stand around its plurals.
            QString plain;
            while (!xml.atEnd() && xml.readNext() != QXmlStreamReader::EndElement) {
                if (xml.isCharacters()) plain += xml.text();
                if (xml.isStartElement()) list.back().translations << xml.readElementText();
            }
            if (list.back().translations.isEmpty()) list.back().translations << plain;
        }
    }
    EXPECT_FALSE(xml.hasError()) << path.toStdString();
    return list;
}

QString germanList() {
    return QStringLiteral(COMBWRIGHT_SOURCE_DIR "/resources/words/combwright_de.ts");
}

std::set<QStringList> keysOf(const std::vector<ListedWord>& words) {
    std::set<QStringList> keys;
    for (const ListedWord& each : words) keys.insert({each.context, each.source, each.comment});
    return keys;
}

/// What the program printed.
QString answerOf(const QString& program, const QStringList& arguments) {
    QProcess process;
    process.setProcessChannelMode(QProcess::MergedChannels);
    process.start(program, arguments);
    EXPECT_TRUE(process.waitForFinished(60'000)) << program.toStdString();
    EXPECT_EQ(process.exitCode(), 0) << program.toStdString();
    return QString::fromUtf8(process.readAll());
}

/// "%1", "%2", "%n": each as often as it stands there.
QStringList placesIn(const QString& text) {
    static const QRegularExpression place(QStringLiteral("%(?:\\d{1,2}|n)|\\{\\w+\\}"));
    QStringList found;
    for (auto each = place.globalMatch(text); each.hasNext();) found << each.next().captured();
    std::sort(found.begin(), found.end());
    return found;
}

TEST(Words, TheListHasEverySentenceTheProgramSaysAndNoOther) {
    const QTemporaryDir folder;
    const QString laidOut = folder.filePath(QStringLiteral("tree"));
    const QString anew = folder.filePath(QStringLiteral("combwright_de.ts"));
    answerOf(QStringLiteral(COMBWRIGHT_BIN_DIR "/words_laid_out"),
             {QStringLiteral(COMBWRIGHT_SOURCE_DIR), laidOut});
    const QString said =
        answerOf(QStringLiteral(COMBWRIGHT_LUPDATE),
                 {QStringLiteral("-silent"), QStringLiteral("-no-obsolete"), QStringLiteral("-I"),
                  laidOut, laidOut + QStringLiteral("/core"), laidOut + QStringLiteral("/ui"),
                  laidOut + QStringLiteral("/app"), QStringLiteral("-ts"), anew});
    // "Class … lacks Q_OBJECT macro": it would be gathered under a name nobody asks for.
    EXPECT_EQ(said.toStdString(), "");
    const auto now = keysOf(wordsListed(anew));
    const auto listed = keysOf(wordsListed(germanList()));
    EXPECT_GT(now.size(), 5000U);
    std::vector<QStringList> apart;
    std::set_symmetric_difference(now.begin(), now.end(), listed.begin(), listed.end(),
                                  std::back_inserter(apart));
    QString some;
    for (std::size_t i = 0; i < std::min<std::size_t>(apart.size(), 8); ++i)
        some += apart[i].join(QStringLiteral(" | ")) + QLatin1Char('\n');
    EXPECT_EQ(apart.size(), 0U) << "cmake --build build/ci --target words; first of them:\n"
                                << some.toStdString();
}

/// English has only what is said of one otherwise than of many.
TEST(Words, TheEnglishListHasEveryNumberedSentenceAndNoOther) {
    const QString english =
        QStringLiteral(COMBWRIGHT_SOURCE_DIR "/resources/words/combwright_en.ts");
    std::set<QStringList> numbered;
    for (const ListedWord& each : wordsListed(germanList()))
        if (each.translations.size() > 1)
            numbered.insert({each.context, each.source, each.comment});
    EXPECT_GT(numbered.size(), 100U);
    EXPECT_EQ(keysOf(wordsListed(english)), numbered);
    for (const ListedWord& each : wordsListed(english)) {
        EXPECT_TRUE(each.finished) << each.source.toStdString();
        EXPECT_EQ(each.translations.value(1), each.source);
        EXPECT_EQ(placesIn(each.translations.value(0)), placesIn(each.source));
    }
}

TEST(Words, FewerAndFewerAreLeftInEnglish) {
    const auto words = wordsListed(germanList());
    const auto left = static_cast<std::size_t>(std::count_if(
        words.begin(), words.end(), [](const ListedWord& each) { return !each.finished; }));
    EXPECT_LE(left, leftInEnglish);
}

/// The letter behind "&", where there is one: with Alt it presses the button.
QChar keyOf(const QString& text) {
    static const QRegularExpression marked(QStringLiteral("&(\\w)"),
                                           QRegularExpression::UseUnicodePropertiesOption);
    const auto match = marked.match(text);
    return match.hasMatch() && !text.contains(QLatin1Char('<')) ? match.captured(1).at(0).toLower()
                                                                : QChar();
}

TEST(Words, AKeyWithAltIsGivenToOneButtonOfAPlace) {
    std::set<std::pair<QString, QChar>> english, german;
    int keys = 0;
    for (const ListedWord& each : wordsListed(germanList())) {
        if (keyOf(each.source).isNull()) continue;
        ++keys;
        EXPECT_TRUE(english.insert({each.context, keyOf(each.source)}).second)
            << each.source.toStdString();
        for (const QString& text : each.translations)
            EXPECT_TRUE(german.insert({each.context, keyOf(text)}).second) << text.toStdString();
    }
    EXPECT_GT(keys, 30);
}

TEST(Words, ATranslationHasThePlacesOfItsSentence) {
    for (const ListedWord& each : wordsListed(germanList())) {
        if (!each.finished) continue;
        for (const QString& text : each.translations) {
            EXPECT_FALSE(text.isEmpty()) << each.source.toStdString();
            EXPECT_EQ(placesIn(text), placesIn(each.source)) << each.source.toStdString() << "\n"
                                                             << text.toStdString();
            // What is set before or behind other words keeps its blanks.
            EXPECT_EQ(text.startsWith(QLatin1Char(' ')), each.source.startsWith(QLatin1Char(' ')))
                << each.source.toStdString();
            EXPECT_EQ(text.endsWith(QLatin1Char(' ')), each.source.endsWith(QLatin1Char(' ')))
                << each.source.toStdString();
        }
    }
}

TEST(Words, WhatIsSaidThroughAFunctionOfTheFileIsFound) {
    // A sentence of each way there is: a file's own function, one of a header's, a table.
    const auto listed = keysOf(wordsListed(germanList()));
    for (const auto& [context, source] :
         {std::pair{"pad_line", "“%1” is no weight in %2; nothing was written down."},
          std::pair{"faults", "web of moth"}, std::pair{"due", "%1 wet boxes"},
          std::pair{"words", "boxes added"}, std::pair{"combwright::YardPlace", "Yard"}})
        EXPECT_TRUE(
            listed.count({QString::fromUtf8(context), QString::fromUtf8(source), QString()}))
            << context << ": " << source;
}

}  // namespace
}  // namespace combwright::layout
