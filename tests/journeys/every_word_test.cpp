// Every place and every form that a key opens, in a language nobody speaks: what is shown there
// wears accents, unless it is the keeper's own; and the sentences are known to the lists of words
// by the very names the program asks for them.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QComboBox>
#include <QDialog>
#include <QDir>
#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QLabel>
#include <QLineEdit>
#include <QTest>
#include <QTimer>
#include <QXmlStreamReader>
#include <map>
#include <set>

#include "core/actions/demo_season.h"
#include "core/exchange/export.h"
#include "tests/support/in_window.h"
#include "tests/support/painted_words.h"
#include "tests/support/pseudo_language.h"

namespace combwright {
namespace {

using test::PseudoLanguage;

/// The words on the screen that are nobody's sentence: units, keys, names of formats.
const std::set<QString>& wordsOfNobody() {
    static const std::set<QString> words{
        "combwright", "ctrl", "shift", "tab", "esc", "del", "enter", "alt", "ins", "home", "end",
        "pgup", "pgdown", "space", "return", "pdf", "csv", "png", "svg", "json", "letter", "hmf",
        "brix", "pfund", "min", "deutsch", "english",
        // Days and months come with the locale and not with the words.
        "mon", "tue", "wed", "thu", "fri", "sat", "sun", "jan", "feb", "mar", "apr", "may", "jun",
        "jul", "aug", "sep", "oct", "nov", "dec", "monday", "tuesday", "wednesday", "thursday",
        "friday", "saturday", "sunday", "january", "february", "march", "april", "june", "july",
        "august", "september", "october", "november", "december"};
    return words;
}

/// Every text in it, less the words of choices; a name is the keeper's, whatever it says.
void gatherTexts(const QJsonValue& value, const std::set<QString>& choices, QStringList& texts) {
    if (value.isString() && choices.count(value.toString()) == 0) texts << value.toString();
    for (const QJsonValue& each : value.toArray()) gatherTexts(each, choices, texts);
    const QJsonObject object = value.toObject();
    texts << object.value(QLatin1String("name")).toString();
    for (const QJsonValue& each : object) gatherTexts(each, choices, texts);
}

class EveryWord : public test::WindowTest, public testing::WithParamInterface<int> {
  protected:
    void SetUp() override {
        clock.set(isoText(demoSeasonDay()));
        {
            const auto made = makeDemoSeason(path(), clock);
            ASSERT_TRUE(made);
            keepersWords(*made);
        }
        QCoreApplication::installTranslator(&m_pseudo);
        setTextSize(1.0);
        ASSERT_TRUE(session.open(QString::fromStdString(path())));
        window = std::make_unique<MainWindow>(session);
        window->resize(1280, 800);
        window->show();
        window->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
    }
    void TearDown() override {
        window.reset();
        QCoreApplication::removeTranslator(&m_pseudo);
    }

    /// Names, marks and notes of the season, less the words of its choices.
    void keepersWords(const Season& season) {
        const QString folder = QString::fromStdString(path()) + QStringLiteral("-out");
        ASSERT_TRUE(exportSeason(season.read(), folder.toStdString()));
        QFile all(folder + QStringLiteral("/season.json"));
        ASSERT_TRUE(all.open(QIODevice::ReadOnly));
        const QJsonDocument json = QJsonDocument::fromJson(all.readAll());
        QStringList texts;
        gatherTexts(json.isArray() ? QJsonValue(json.array()) : QJsonValue(json.object()),
                    listed(QStringLiteral("choices")), texts);
        // Why something was amended stands in the history, and on paper beside what was revised.
        for (const JournalEntry& step : season.history())
            texts << QString::fromStdString(step.info.why);
        for (const QString& text : texts)
            for (const QString& word : PseudoLanguage::plainWords(text)) m_keepers.insert(word);
    }

    /// The sentences of a context in the list of words, or of all of them as "context|sentence".
    static std::set<QString> listed(const QString& ofContext) {
        QFile file(QStringLiteral(COMBWRIGHT_SOURCE_DIR "/resources/words/combwright_de.ts"));
        EXPECT_TRUE(file.open(QIODevice::ReadOnly));
        QXmlStreamReader xml(&file);
        std::set<QString> all;
        QString context;
        while (!xml.atEnd()) {
            if (xml.readNext() != QXmlStreamReader::StartElement) continue;
            if (xml.name() == QLatin1String("name")) context = xml.readElementText();
            if (xml.name() != QLatin1String("source")) continue;
            const QString source = xml.readElementText();
            if (ofContext.isEmpty()) all.insert(context + QLatin1Char('|') + source);
            if (ofContext == context) all.insert(source);
        }
        return all;
    }

    void lookAt(QWidget& shown, const QString& where) {
        QApplication::processEvents();
        QStringList texts = test::paintedWords(shown);
        for (const QWidget* each : shown.findChildren<QWidget*>()) {
            if (!each->isVisible()) continue;
            texts << each->accessibleName() << each->accessibleDescription() << each->toolTip();
            if (const auto* box = qobject_cast<const QComboBox*>(each))
                for (int i = 0; i < box->count(); ++i) texts << box->itemText(i);
        }
        texts << shown.windowTitle();
        for (const QString& text : texts)
            for (const QString& word : PseudoLanguage::plainWords(text))
                if (m_keepers.count(word) == 0 && wordsOfNobody().count(word) == 0)
                    m_plain[word].insert(where + QStringLiteral(": ") + text.left(90));
        lookForRoom(shown, where);
        const QString pictures = qEnvironmentVariable("COMBWRIGHT_PICTURES");
        if (!pictures.isEmpty() && QDir().mkpath(pictures))
            shown.grab().save(pictures + QLatin1Char('/') +
                              QString(where).replace(QLatin1Char(' '), QLatin1Char('-')) +
                              QStringLiteral(".png"));
    }

    /// A label or button that is narrower than its words.
    void lookForRoom(QWidget& shown, const QString& where) {
        for (QWidget* each : shown.findChildren<QWidget*>()) {
            if (!each->isVisible()) continue;
            QString text;
            if (const auto* label = qobject_cast<const QLabel*>(each)) {
                if (label->wordWrap() || label->text().isEmpty()) continue;
                text = label->text();
            } else if (const auto* button = qobject_cast<const QAbstractButton*>(each)) {
                text = button->text();
            }
            if (text.isEmpty() || each->width() >= each->minimumSizeHint().width()) continue;
            m_tight.insert(QStringLiteral("%1: %2 of %3 px: %4")
                               .arg(where)
                               .arg(each->width())
                               .arg(each->minimumSizeHint().width())
                               .arg(text.left(70)));
        }
    }

    /// Presses the key; whatever opens is looked at and left.
    void press(Qt::Key key, Qt::KeyboardModifiers with, const QString& where) {
        QTimer look;
        int left = 0;
        QObject::connect(&look, &QTimer::timeout, [&] {
            QWidget* opened = QApplication::activeModalWidget();
            if (!opened) opened = QApplication::activePopupWidget();
            if (!opened) return;
            // A choice of files has the machine's folders and Qt's own words.
            if (left == 0 && !opened->inherits("QFileDialog")) lookAt(*opened, where);
            // One that asks before it closes is closed the hard way.
            if (auto* dialog = qobject_cast<QDialog*>(opened); dialog && left < 3)
                dialog->reject();
            else
                opened->close();
            ++left;
        });
        look.start(10);
        QWidget* at = QApplication::focusWidget();
        QTest::keyClick(at && window->isAncestorOf(at) ? at : window->current(), key, with);
        QTest::qWait(15);
    }

    static std::string list(const std::set<QString>& lines, std::size_t most) {
        QString all;
        for (const QString& each : lines)
            if (most-- > 0) all += each + QLatin1Char('\n');
        return all.toStdString();
    }

    PseudoLanguage m_pseudo;
    std::set<QString> m_keepers;
    std::map<QString, std::set<QString>> m_plain;
    std::set<QString> m_tight;
};

/// One test each, for the walk through one takes seconds.
constexpr std::size_t placesThere = 7;

TEST_P(EveryWord, OfAPlaceAndItsFormsGoesThroughTheTranslatorsAndHasRoom) {
    const int i = GetParam();
    ASSERT_EQ(window->places().size(), placesThere) << "another place wants its walk";
    Place& place = *window->places()[static_cast<std::size_t>(i)];
    window->goTo(i);
    place.settle();
    const QString name = QString::fromLatin1(place.metaObject()->className()).mid(12);
    lookAt(*window, name);
    for (int key = Qt::Key_A; key <= Qt::Key_Z; ++key) {
        window->goTo(i);
        place.settle();
        press(static_cast<Qt::Key>(key), Qt::NoModifier, name + QLatin1Char(' ') + QChar(key));
        if (window->current() == &place)
            lookAt(*window, name + QStringLiteral(" after ") + QChar(key));
        press(Qt::Key_Escape, Qt::NoModifier, name + QStringLiteral(" Esc"));
    }
    window->goTo(i);
    for (const auto& [key, with] :
         {std::pair{Qt::Key_F1, Qt::KeyboardModifiers(Qt::NoModifier)},
          std::pair{Qt::Key_E, Qt::KeyboardModifiers(Qt::ControlModifier)},
          std::pair{Qt::Key_L, Qt::ControlModifier | Qt::ShiftModifier}})
        press(key, with, name + QStringLiteral(" key %1").arg(key));
    EXPECT_EQ(window->size(), QSize(1280, 800));
    std::set<QString> plain;
    for (const auto& [word, where] : m_plain)
        plain.insert(word + QStringLiteral("  — ") + *where.begin());
    EXPECT_EQ(plain.size(), 0U) << list(plain, 300);
    EXPECT_EQ(m_tight.size(), 0U) << list(m_tight, 100);
    const std::set<QString> known = listed({});
    std::set<QString> unknown;
    for (const auto& [context, text] : m_pseudo.asked())
        if (!context.startsWith(QLatin1Char('Q')) &&
            known.count(context + QLatin1Char('|') + text) == 0)
            unknown.insert(context + QLatin1Char('|') + text);
    EXPECT_EQ(unknown.size(), 0U) << list(unknown, 60);
    EXPECT_GT(m_pseudo.asked().size(), 100U);
}

INSTANTIATE_TEST_SUITE_P(Places, EveryWord, testing::Range(0, static_cast<int>(placesThere)));

}  // namespace
}  // namespace combwright
