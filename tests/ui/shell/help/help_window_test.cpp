// F1 by keyboard: the page of the place one is in, the others in a list, a word found, the keys as
// the window has them, and what is new.
#include "ui/shell/help/help_window.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QAction>
#include <QScrollBar>
#include <QShortcut>
#include <QTextDocumentFragment>
#include <functional>
#include <set>

#include "tests/ui/shell/shell_season.h"
#include "ui/shell/help/keys_sheet.h"
#include "ui/shell/help/release_list.h"
#include "ui/shell/help/sample_pictures.h"

namespace combwright {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::Not;

class Help : public test::ShellTest {
  protected:
    /// F1, then what is done in it; it must close itself.
    void inHelp(const std::function<void()>& deed) {
        bool done = false;
        QTimer::singleShot(0, window.get(), [&] {
            help = dialog("help");
            ASSERT_NE(help, nullptr);
            EXPECT_TRUE(QTest::qWaitForWindowActive(help));
            EXPECT_TRUE(QTest::qWaitFor([&] { return QApplication::activeWindow() == help; }));
            deed();
            done = true;
            if (help) help->reject();
        });
        key(Qt::Key_F1);
        EXPECT_TRUE(done);
        help = nullptr;
    }
    void press(Qt::Key pressed, Qt::KeyboardModifiers with = Qt::NoModifier) const {
        ASSERT_TRUE(help && help->focusWidget());
        QTest::keyClick(help->focusWidget(), pressed, with);
    }
    void goToPage(const QString& word) const {
        auto* list = named<QListWidget>("help_pages", help);
        list->setFocus();
        press(Qt::Key_Home);
        while (list->currentItem()->text() != word && list->currentRow() + 1 < list->count())
            press(Qt::Key_Down);
        ASSERT_EQ(list->currentItem()->text(), word);
    }
    QLabel* text() const { return named<QLabel>("help_text", help); }
    std::string plain() const {
        return QTextDocumentFragment::fromHtml(text()->text()).toPlainText().toStdString();
    }
    int scrolled() const {
        return named<QScrollArea>("help_scroll", help)->verticalScrollBar()->value();
    }

    QDialog* help = nullptr;
};

TEST_F(Help, OpensAtThePlaceOneIsInAndTheKeyboardGoesBack) {
    openSeason();
    QWidget* before = focus();
    ASSERT_NE(before, nullptr);
    inHelp([&] {
        EXPECT_EQ(help->windowTitle(), place->railWord());
        EXPECT_THAT(plain(), HasSubstr("Bees sting"));
        for (const KeyHint& hint : place->hints())
            EXPECT_THAT(plain(), HasSubstr(hint.what.toStdString()));
        EXPECT_FALSE(named<QPushButton>("help_print", help)->isVisible());
        press(Qt::Key_Escape);
        EXPECT_FALSE(help->isVisible());
    });
    comeBack();
    EXPECT_EQ(focus(), before);
}

TEST_F(Help, HasAPageForEveryPlaceAlsoWithoutASeason) {
    inHelp([&] {
        EXPECT_EQ(help->windowTitle().toStdString(), "Your seasons");
        for (const Place* each : window->places()) {
            goToPage(each->railWord());
            EXPECT_EQ(help->windowTitle(), each->railWord());
            EXPECT_GT(plain().size(), 300U) << each->railWord().toStdString();
        }
    });
}

TEST_F(Help, PagesTurnFromTheTextTheListAndTheSearchLine) {
    openSeason();
    inHelp([&] {
        help->resize(help->width(), 300);
        QCoreApplication::processEvents();
        press(Qt::Key_PageDown);
        const int one = scrolled();
        EXPECT_GT(one, 0);
        press(Qt::Key_F, Qt::ControlModifier);
        EXPECT_EQ(help->focusWidget()->objectName(), QStringLiteral("help_find"));
        press(Qt::Key_PageUp);
        EXPECT_LT(scrolled(), one);
        named<QListWidget>("help_pages", help)->setFocus();
        press(Qt::Key_PageDown);
        EXPECT_GT(scrolled(), 0);
        press(Qt::Key_Return);
        EXPECT_TRUE(help->isVisible()) << "Enter goes to the text, it closes nothing";
        EXPECT_EQ(help->focusWidget()->objectName(), QStringLiteral("help_scroll"));
    });
}

TEST_F(Help, FindsInThePageAndNamesThePagesThatHaveItElse) {
    openSeason();
    inHelp([&] {
        help->resize(help->width(), 300);
        QCoreApplication::processEvents();
        press(Qt::Key_F, Qt::ControlModifier);
        ASSERT_EQ(help->focusWidget(), named<QLineEdit>("help_find", help));
        QTest::keyClicks(help->focusWidget(), QStringLiteral("walking order"));
        EXPECT_EQ(text()->selectedText().toStdString(), "walking order");
        EXPECT_GT(scrolled(), 0) << "it stands further down";
        const int first = text()->selectionStart();
        named<QLineEdit>("help_find", help)->selectAll();
        QTest::keyClicks(help->focusWidget(), QStringLiteral("hive"));
        const int hive = text()->selectionStart();
        press(Qt::Key_Return);
        EXPECT_GT(text()->selectionStart(), hive);
        press(Qt::Key_Return, Qt::ShiftModifier);
        EXPECT_EQ(text()->selectionStart(), hive);
        press(Qt::Key_Return, Qt::ShiftModifier);
        EXPECT_GT(text()->selectionStart(), first) << "round to the last";

        auto* told = named<QLabel>("help_told", help);
        EXPECT_FALSE(told->isVisible());
        named<QLineEdit>("help_find", help)->selectAll();
        QTest::keyClicks(help->focusWidget(), QStringLiteral("spin clock"));
        EXPECT_FALSE(text()->hasSelectedText());
        EXPECT_TRUE(told->isVisible());
        EXPECT_THAT(told->text().toStdString(), HasSubstr("Honey room"));
        QTest::keyClicks(help->focusWidget(), QStringLiteral("zz"));
        EXPECT_THAT(told->text().toStdString(), Not(HasSubstr("Honey room")));
        EXPECT_TRUE(told->isVisible());
    });
}

TEST_F(Help, EveryKeyOfTheWindowStandsOnThePageOfKeysAndOnItsSheet) {
    openSeason();
    // One that nobody told the help of.
    auto* late = new QAction(QStringLiteral("Tap the barometer"), window.get());
    late->setShortcut(QKeySequence(Qt::CTRL | Qt::ALT | Qt::Key_F9));
    window->addAction(late);
    const Page sheet = keysPage(keysOf(*window, window->places()));
    std::string printed;
    for (const Block& block : sheet.blocks)
        if (const auto* table = std::get_if<TableBlock>(&block))
            for (const TableRow& row : table->rows)
                printed +=
                    (row.cells[0].text + QLatin1Char('|') + row.cells[1].text).toStdString() + "\n";
    inHelp([&] {
        goToPage(QStringLiteral("Keys"));
        EXPECT_TRUE(named<QPushButton>("help_print", help)->isVisible());
        int keyed = 0;
        for (const QAction* action : window->actions()) {
            if (action->shortcut().isEmpty()) continue;
            ++keyed;
            const std::string shortcut =
                action->shortcut().toString(QKeySequence::NativeText).toStdString();
            const std::string name = action->text().toStdString();
            for (const std::string& shown : {plain(), printed}) {
                EXPECT_THAT(shown, HasSubstr(shortcut));
                EXPECT_THAT(shown, HasSubstr(name));
            }
        }
        EXPECT_GT(keyed, 20);
        for (const Place* each : window->places())
            for (const KeyHint& hint : each->hints())
                EXPECT_THAT(plain(), HasSubstr(hint.what.toStdString()));
    });
    EXPECT_THAT(printed, HasSubstr("Ctrl+Alt+F9|Tap the barometer\n"));
    EXPECT_THAT(printed, HasSubstr("Ctrl++, Ctrl+=|Larger text\n")) << "one line for one thing";
}

/// Keys of one line of the sheet.
QStringList keysIn(const HelpLine& line) { return line.keys.split(QStringLiteral(", ")); }

TEST_F(Help, NoKeyOfTheWindowIsMissingFromItsSheetAndNoneIsThereTwice) {
    openSeason();
    for (const int at : {0, 1, 2, 3, 4, 5, 6}) {
        window->goTo(at);
        const auto groups = keysOf(*window, window->places());
        ASSERT_FALSE(groups.empty());
        std::set<QString> everywhere;
        for (const HelpGroup& group : groups) {
            std::set<QString> keys;
            for (const HelpLine& line : group.lines)
                for (const QString& key : keysIn(line)) {
                    EXPECT_TRUE(keys.insert(key).second)
                        << key.toStdString() << " twice under " << group.head.toStdString();
                    EXPECT_FALSE(everywhere.contains(key))
                        << key.toStdString() << " is the whole window's, and stands under "
                        << group.head.toStdString() << " too";
                    EXPECT_FALSE(line.what.isEmpty()) << key.toStdString();
                }
            if (&group == &groups.front()) everywhere = keys;
        }
        const auto placeOf = [&](const QObject* in) -> const Place* {
            for (; in; in = in->parent())
                if (const auto* of = qobject_cast<const Place*>(in)) return of;
            return nullptr;
        };
        const auto stands = [&](const QObject& of, const QList<QKeySequence>& keys) {
            const auto* widget = qobject_cast<const QWidget*>(of.parent());
            if (widget && widget->window() != window.get()) return;
            const Place* in = placeOf(&of);
            const QString head = in ? in->railWord() : groups.front().head;
            for (const QKeySequence& key : keys) {
                const QString text = key.toString(QKeySequence::NativeText);
                const bool found =
                    std::any_of(groups.begin(), groups.end(), [&](const HelpGroup& group) {
                        return (group.head == head || group.head == groups.front().head) &&
                               std::any_of(group.lines.begin(), group.lines.end(),
                                           [&](const HelpLine& line) {
                                               return keysIn(line).contains(text);
                                           });
                    });
                EXPECT_TRUE(found || key.isEmpty())
                    << text.toStdString() << " is missing under " << head.toStdString();
            }
        };
        int shortcuts = 0;
        for (const QShortcut* each : window->findChildren<QShortcut*>()) {
            EXPECT_FALSE(each->whatsThis().isEmpty())
                << each->key().toString().toStdString() << " says nothing of itself";
            stands(*each, each->keys());
            ++shortcuts;
        }
        for (const QAction* each : window->findChildren<QAction*>())
            stands(*each, each->shortcuts());
        EXPECT_GT(shortcuts, 40);
    }
}

TEST_F(Help, EveryPlaceNamesTheFewKeysThatAreWorthKnowingAnywhere) {
    openSeason();
    inHelp([&] {
        for (const Place* each : window->places()) {
            goToPage(each->railWord());
            for (const char* key : {"Ctrl+K", "Ctrl+H", "Ctrl+I", "Ctrl+E"})
                EXPECT_THAT(plain(), HasSubstr(key)) << each->railWord().toStdString();
            for (const HelpLine& line : keysEverywhere(*window).lines)
                EXPECT_THAT(plain(), HasSubstr(line.what.toStdString()));
        }
    });
    EXPECT_EQ(keysEverywhere(*window).lines.size(), 4U);
}

TEST_F(Help, APlaceHasItsPictureFromTheSampleSeasonSoonAfterItsWords) {
    openSeason();
    const QString before = session.path();
    inHelp([&] {
        auto* picture = named<HelpPicture>("help_picture", help);
        ASSERT_NE(picture, nullptr);
        for (const Place* each : window->places()) {
            goToPage(each->railWord());
            const std::string where = each->railWord().toStdString();
            EXPECT_GT(plain().size(), 300U) << "the words are there before the picture";
            EXPECT_TRUE(picture->isVisible());
            EXPECT_GT(picture->accessibleName().size(), 60) << where;
            EXPECT_THAT(picture->accessibleName().toStdString(), HasSubstr(where));
            EXPECT_THAT(picture->accessibleDescription().toStdString(), HasSubstr("invented"));
            ASSERT_TRUE(QTest::qWaitFor([&] { return picture->hasPicture(); }, 60000)) << where;
            const QImage image = picture->picture()->toImage();
            EXPECT_GE(image.width(), 1000);
            // A place at work has words and drawings all over: no part of it is of one colour.
            std::set<QRgb> colours;
            for (int y = 0; y < image.height(); y += 2)
                for (int x = image.width() / 6; x < image.width(); x += 2)
                    colours.insert(image.pixel(x, y));
            EXPECT_GT(colours.size(), 200U) << where << " is as good as blank";
            // What is painted in the help is that picture.
            const QImage shown = picture->grab().toImage();
            std::set<QRgb> painted;
            for (int y = 0; y < shown.height(); ++y)
                for (int x = 0; x < shown.width(); ++x) painted.insert(shown.pixel(x, y));
            EXPECT_GT(painted.size(), 100U) << where;
        }
        goToPage(QStringLiteral("Keys"));
        EXPECT_FALSE(picture->isVisible());
    });
    EXPECT_EQ(session.path(), before) << "it was painted beside the season that is open";
    // Once painted it is at hand; in other colours it is painted anew.
    EXPECT_TRUE(window->samplePictures().of(*place));
    session.setLook(applyLook(*qobject_cast<QApplication*>(QApplication::instance()), true));
    EXPECT_FALSE(window->samplePictures().of(*place));
    EXPECT_TRUE(
        QTest::qWaitFor([&] { return window->samplePictures().of(*place).has_value(); }, 60000));
}

TEST_F(Help, APageIsOpenBeforeItsPictureIsBegun) {
    openSeason();
    HelpWindow opened(*window, session);
    opened.show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(&opened));
    EXPECT_FALSE(named<HelpPicture>("help_picture", &opened)->hasPicture());
    EXPECT_EQ(opened.windowTitle(), place->railWord());
}

TEST_F(Help, SaysWhatIsNewFromTheListThatIsInstalled) {
    QFile installed(QStringLiteral(COMBWRIGHT_SOURCE_DIR
                                   "/resources/install/org.combwright.Combwright.metainfo.xml"));
    ASSERT_TRUE(installed.open(QIODevice::ReadOnly));
    const auto releases = releasesIn(installed.readAll(), QStringLiteral("en"));
    ASSERT_TRUE(releases);
    ASSERT_FALSE(releases->empty());
    EXPECT_EQ(releases->front().version.toStdString(), COMBWRIGHT_VERSION);
    inHelp([&] {
        goToPage(QStringLiteral("What's new"));
        for (const Release& release : *releases) {
            EXPECT_THAT(plain(), HasSubstr(release.version.toStdString()));
            EXPECT_TRUE(release.on.isValid());
            for (const QString& each : release.says)
                EXPECT_THAT(plain(), HasSubstr(each.toStdString()));
        }
    });
}

TEST(ReleaseList, TakesTheLanguageSpokenAndFailsOnBrokenXml) {
    const QByteArray xml = R"(<component><name>C</name><releases>
<release version="2" date="2027-05-01"><url>x</url><description>
<p>New</p><p xml:lang="de">Neu</p><ul><li>One  thing</li></ul><ul xml:lang="de"><li>Eins</li></ul>
</description></release><release version="1"><description><p>First</p></description></release>
</releases></component>)";
    const auto english = releasesIn(xml, QStringLiteral("en"));
    ASSERT_TRUE(english);
    ASSERT_EQ(english->size(), 2U);
    EXPECT_THAT((*english)[0].says,
                ElementsAre(QStringLiteral("New"), QStringLiteral("• One thing")));
    EXPECT_FALSE((*english)[1].on.isValid());
    const auto german = releasesIn(xml, QStringLiteral("de"));
    ASSERT_TRUE(german);
    EXPECT_THAT((*german)[0].says, ElementsAre(QStringLiteral("Neu"), QStringLiteral("• Eins")));
    EXPECT_THAT((*german)[1].says, ElementsAre(QStringLiteral("First"))) << "not translated yet";
    EXPECT_FALSE(releasesIn("<component><releases><release", QStringLiteral("en")));
}

}  // namespace
}  // namespace combwright
