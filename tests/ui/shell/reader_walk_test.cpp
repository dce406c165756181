// What somebody hears who cannot see the window: every place and page of the sample season, gone
// through by Tab. Each control says what it is and what it is called, each drawing a sentence, and
// Tab comes round again. Asked of the interfaces Qt gives a screen reader; the way from there over
// the bus of the desktop is not tested.
#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QAbstractScrollArea>
#include <QAccessible>
#include <QApplication>
#include <QPointer>
#include <QPushButton>
#include <QScrollArea>
#include <QTest>
#include <algorithm>
#include <functional>
#include <set>

#include "core/actions/demo_season.h"
#include "tests/support/in_window.h"
#include "ui/honey_room/honey_room_place.h"
#include "ui/shell/page_words.h"
#include "ui/yard/yard_place.h"

namespace combwright {
namespace {

class ReaderWalk : public test::WindowTest {
  protected:
    void SetUp() override {
        clock.set(isoText(demoSeasonDay()));
        ASSERT_TRUE(makeDemoSeason(path(), clock));
        setTextSize(1.0);
        ASSERT_TRUE(session.open(QString::fromStdString(path())));
        window = std::make_unique<MainWindow>(session);
        window->resize(1280, 800);
        window->show();
        window->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
    }

    /// Brings every page of every place to the front, one after the other.
    void onEveryPage(const std::function<void(const std::string& where)>& look) {
        for (std::size_t i = 0; i < window->places().size(); ++i) {
            Place& place = *window->places()[i];
            window->goTo(static_cast<int>(i));
            const auto shown = [&](const QString& page) {
                place.settle();
                QApplication::processEvents();
                ++pages;
                look((place.railWord() + QStringLiteral(", ") + page).toStdString());
            };
            if (const auto* yard = qobject_cast<YardPlace*>(&place)) {
                for (const PlacePage& page : yard->pagesToGo()) {
                    window->goFor(page.where);
                    shown(page.word);
                }
                continue;
            }
            std::vector<PageWord*> words;
            for (auto* word : window->findChildren<PageWord*>())
                if (word->isVisible()) words.push_back(word);
            if (words.empty()) shown(QStringLiteral("its page"));
            for (PageWord* word : words) {
                word->click();
                shown(word->text());
            }
        }
    }

    /// What Tab may come to now. A field within another, as that of a spin box, is its owner's.
    std::set<QWidget*> reached() const {
        std::set<QWidget*> all;
        for (QWidget* each : window->findChildren<QWidget*>()) {
            const bool byTab = (each->focusPolicy() & Qt::TabFocus) == Qt::TabFocus;
            if (byTab && each->isVisible() && each->isEnabled() && !each->focusProxy() &&
                each->window() == window.get())
                all.insert(each);
        }
        return all;
    }

    static std::string named(const QWidget* widget) {
        if (!widget) return "nothing";
        return std::string(widget->metaObject()->className()) + " '" +
               widget->objectName().toStdString() + "' \"" +
               widget->accessibleName().toStdString() + "\"";
    }

    int pages = 0;
};

/// Painted by us, and no button: what it shows is only in its description.
bool isDrawing(const QWidget& widget) {
    const QMetaObject* base = widget.metaObject();
    while (base && QLatin1String(base->className()).startsWith(QLatin1String("combwright::")))
        base = base->superClass();
    return base == &QWidget::staticMetaObject || base == &QAbstractScrollArea::staticMetaObject;
}

/// A text longer than its room: come to so that it can be scrolled, and read as its description.
bool isLongText(const QWidget& widget) { return qobject_cast<const QScrollArea*>(&widget); }

/// Of several of which one is chosen Tab comes to that one, the arrows go to the others.
bool isLeftToArrows(const QWidget& widget) {
    const auto* button = qobject_cast<const QAbstractButton*>(&widget);
    return button && button->isCheckable() && button->autoExclusive() && !button->isChecked();
}

TEST_F(ReaderWalk, EveryControlSaysWhatItIsAndIsCalled) {
    std::size_t asked = 0;
    onEveryPage([&](const std::string& where) {
        for (QWidget* each : reached()) {
            ++asked;
            QAccessibleInterface* reader = QAccessible::queryAccessibleInterface(each);
            ASSERT_NE(reader, nullptr) << where << ": " << named(each);
            EXPECT_NE(reader->role(), QAccessible::NoRole) << where << ": " << named(each);
            EXPECT_TRUE(isLongText(*each) || reader->role() != QAccessible::Client)
                << where << ": " << named(each) << " says not what it is";
            EXPECT_FALSE(reader->text(QAccessible::Name).trimmed().isEmpty())
                << where << ": " << named(each) << " has no name";
            EXPECT_TRUE(reader->state().focusable) << where << ": " << named(each);
            if (!isDrawing(*each) && !isLongText(*each)) continue;
            EXPECT_FALSE(each->accessibleDescription().trimmed().isEmpty())
                << where << ": " << named(each) << " has no sentence";
        }
    });
    EXPECT_GE(pages, 15);
    EXPECT_GE(asked, 100U);
}

/// Round both ways, to every control of the page, and back the way it came.
TEST_F(ReaderWalk, TabIsNeverTrapped) {
    auto* first = window->findChild<QPushButton*>(QStringLiteral("in_and_out"));
    ASSERT_NE(first, nullptr);
    onEveryPage([&](const std::string& where) {
        std::vector<QPointer<QWidget>> ways[2];
        for (const Qt::Key key : {Qt::Key_Tab, Qt::Key_Backtab}) {
            const bool forward = key == Qt::Key_Tab;
            const std::string by = forward ? ": Tab" : ": Shift+Tab";
            const std::set<QWidget*> all = reached();
            // A table or a row of fields may take several presses within itself.
            const std::size_t most = 4 * all.size() + 40;
            first->setFocus(Qt::TabFocusReason);
            std::vector<QPointer<QWidget>>& way = ways[forward ? 0 : 1];
            std::size_t presses = 0;
            do {
                if (std::find(way.begin(), way.end(), focus()) == way.end()) way.push_back(focus());
                QTest::keyClick(focus(), key, forward ? Qt::NoModifier : Qt::ShiftModifier);
                ASSERT_NE(focus(), nullptr) << where << ": the focus is lost";
            } while (focus() != first && ++presses < most);
            EXPECT_EQ(focus(), first)
                << where << by << " does not come round; it ends at " << named(focus());
            for (QWidget* each : reached()) {
                // A table may hand the keyboard on to the field of its row.
                const bool inside = std::any_of(way.begin(), way.end(), [each](const QWidget* at) {
                    return at == each || each->isAncestorOf(at);
                });
                if (inside || all.count(each) == 0 || isLeftToArrows(*each)) continue;
                ADD_FAILURE() << where << by << " does not come to " << named(each);
            }
        }
        // Both begin at the same control. By name: the field of a row is made anew each time.
        std::vector<std::string> there;
        std::vector<std::string> back;
        for (const auto& each : ways[0]) there.push_back(named(each));
        for (const auto& each : ways[1]) back.push_back(named(each));
        std::reverse(back.begin() + 1, back.end());
        EXPECT_EQ(there, back) << where;
    });
    EXPECT_GE(pages, 15);
}

/// A painted button is pressed by a reader as it is by hand, and says which one is chosen.
TEST_F(ReaderWalk, AWordOfTheRailIsOneOfSeveral) {
    window->goTo(0);
    QAbstractButton* second = nullptr;
    for (auto* each : window->findChildren<RailItem*>())
        if (each->text() == window->places()[1]->railWord()) second = each;
    ASSERT_NE(second, nullptr);
    QAccessibleInterface* reader = QAccessible::queryAccessibleInterface(second);
    ASSERT_NE(reader, nullptr);
    EXPECT_EQ(reader->role(), QAccessible::RadioButton);
    EXPECT_TRUE(reader->state().checkable);
    EXPECT_FALSE(reader->state().checked);
    ASSERT_NE(reader->actionInterface(), nullptr);
    const QString press = QAccessibleActionInterface::pressAction();
    ASSERT_TRUE(reader->actionInterface()->actionNames().contains(press));
    reader->actionInterface()->doAction(press);
    EXPECT_TRUE(QTest::qWaitFor([&] { return window->current() == window->places()[1]; }, 3000));
    EXPECT_TRUE(reader->state().checked);
}

}  // namespace
}  // namespace combwright
